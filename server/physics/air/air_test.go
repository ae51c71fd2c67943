package air

import (
	"math"
	"testing"
)

func kelvin(t *testing.T, in inputs) float64 { return in.number(t, "celsius") + FreezingPoint }

func TestStandardAtmosphere(t *testing.T) {
	t.Parallel()
	state := func(pick func(State) float64) formula {
		return func(t *testing.T, _ string, in inputs) float64 { return pick(Standard(in.number(t, "height"))) }
	}
	checkPublished(t, "standard_atmosphere", map[string]formula{
		"temperature": state(func(s State) float64 { return s.Temperature }),
		"pressure":    state(func(s State) float64 { return s.Pressure }),
		"density":     state(func(s State) float64 { return s.Density }),
		"sound":       state(func(s State) float64 { return s.SoundSpeed }),
		"viscosity":   state(func(s State) float64 { return s.Viscosity }),
		"geopotential": func(t *testing.T, _ string, in inputs) float64 {
			return Geopotential(in.number(t, "height"))
		},
		"geometric-pressure": func(t *testing.T, _ string, in inputs) float64 {
			return StandardPressure(Geopotential(in.number(t, "height")))
		},
		"sutherland": func(t *testing.T, _ string, in inputs) float64 { return Viscosity(kelvin(t, in)) },
	})
}

func TestHumidAir(t *testing.T) {
	t.Parallel()
	three := func(f func(p, temperature, humidity float64) float64) formula {
		return func(t *testing.T, _ string, in inputs) float64 {
			return f(in.number(t, "pressure"), kelvin(t, in), in.number(t, "humidity"))
		}
	}
	checkPublished(t, "cipm_2007", map[string]formula{
		"humid-density":   three(HumidDensity),
		"mixture-density": three(MixtureDensity),
		"vapour-fraction": three(VapourFraction),
		"compressibility": three(func(p, temperature, humidity float64) float64 {
			return Compressibility(p, temperature, VapourFraction(p, temperature, humidity))
		}),
		"enhancement": three(func(p, temperature, _ float64) float64 { return EnhancementFactor(p, temperature) }),
		"saturation": func(t *testing.T, _ string, in inputs) float64 {
			return SaturationPressure(kelvin(t, in))
		},
	})
}

func TestMoistAirTables(t *testing.T) {
	t.Parallel()
	checkPublished(t, "ashrae_fundamentals", map[string]formula{
		"ratio-density": func(t *testing.T, _ string, in inputs) float64 {
			return RatioDensity(in.number(t, "pressure"), kelvin(t, in), in.number(t, "ratio"))
		},
		"saturation": func(t *testing.T, _ string, in inputs) float64 { return SaturationPressure(kelvin(t, in)) },
	})
}

func TestAltimeterSetting(t *testing.T) {
	t.Parallel()
	day := func(f func(pressure, temperature, humidity float64) float64) formula {
		return func(t *testing.T, _ string, in inputs) float64 {
			pressure := StationPressure(100*in.number(t, "qnh"), in.number(t, "elevation"))
			return f(pressure, kelvin(t, in), in.number(t, "humidity"))
		}
	}
	checkPublished(t, "altimeter_setting", map[string]formula{
		"station-pressure":     day(func(p, _, _ float64) float64 { return p }),
		"pressure-altitude":    day(func(p, _, _ float64) float64 { return PressureAltitude(p) }),
		"dry-density":          day(func(p, temperature, _ float64) float64 { return MixtureDensity(p, temperature, 0) }),
		"dry-density-altitude": day(func(p, temperature, _ float64) float64 { return DensityAltitude(MixtureDensity(p, temperature, 0)) }),
		"humid-density":        day(HumidDensity),
		"density-altitude":     day(func(p, temperature, h float64) float64 { return At(p, temperature, h).DensityAltitude }),
	})
}

func TestMethodIsNamedAndChangesLittleAtItsEdges(t *testing.T) {
	t.Parallel()
	cases := []struct {
		pressure, celsius float64
		want              string
	}{
		{101325, 20, MethodHumid}, {101325, 14.9, MethodMixture}, {101325, 27.1, MethodMixture}, {59000, 20, MethodMixture},
		{110100, 20, MethodMixture}, {60000, 15, MethodHumid},
	}
	for _, c := range cases {
		if got := At(c.pressure, c.celsius+FreezingPoint, 0.5).Method; got != c.want {
			t.Errorf("%v Pa, %v C: method %q, want %q", c.pressure, c.celsius, got, c.want)
		}
	}
	inside, outside := At(101325, 27+FreezingPoint, 0.8), At(101325, 27.0001+FreezingPoint, 0.8)
	if step := math.Abs(inside.Density/outside.Density - 1); step > 5e-4 {
		t.Errorf("density steps by %v at the edge of the method, want below 5e-4", step)
	}
}

func TestPropertiesOfTheAir(t *testing.T) {
	t.Parallel()
	for h := -500.0; h <= 5000; h += 250 {
		s := Standard(h)
		if got := PressureAltitude(s.Pressure); math.Abs(got-h) > 1e-6 {
			t.Errorf("pressure altitude of %v m is %v", h, got)
		}
		if got := DensityAltitude(s.Density); math.Abs(got-h) > 0.01 {
			t.Errorf("density altitude of %v m is %v", h, got)
		}
		if got := StationPressure(SeaLevelPressure, h); math.Abs(got-s.Pressure) > 1e-6 {
			t.Errorf("station pressure at %v m is %v, want %v", h, got, s.Pressure)
		}
	}
	for c := -20.0; c <= 45; c += 5 {
		dry, wet := At(98000, c+FreezingPoint, 0), At(98000, c+FreezingPoint, 1)
		if wet.Density >= dry.Density || wet.DensityAltitude <= dry.DensityAltitude || wet.SoundSpeed <= dry.SoundSpeed {
			t.Errorf("%v C: humid air must be thinner and faster: %+v, %+v", c, dry, wet)
		}
		if over := At(98000, c+FreezingPoint, 1.4); over != wet {
			t.Errorf("%v C: humidity above one is not held at one", c)
		}
	}
}
