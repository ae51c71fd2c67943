package engine

import (
	"math"
	"testing"
)

func TestPropulsionTextbooks(t *testing.T) {
	t.Parallel()
	inflow := func(in inputs) float64 { return PropellerInflow(in["density"], in["area"], in["power"], in["speed"]) }
	thrust := func(in inputs) float64 { return FanThrust(in["density"], in["area"], in["power"], in["speed"]) }
	checkPublished(t, "propulsion_textbooks", map[string]method{
		"ram-drag":             func(in inputs) float64 { return SimpleNetThrust(in["static"], in["flow"], in["speed"]) },
		"propeller-thrust":     func(in inputs) float64 { return PropellerThrust(in["density"], in["area"], in["power"], in["speed"]) },
		"propeller-slipstream": func(in inputs) float64 { return in["speed"] + 2*inflow(in) },
		"propeller-efficiency": func(in inputs) float64 { return in["speed"] / (in["speed"] + inflow(in)) },
		"jet-speed":            func(in inputs) float64 { return FanExitSpeed(in["density"], in["area"], in["power"], in["speed"]) },
		"jet-thrust":           thrust,
		"jet-efficiency":       func(in inputs) float64 { return thrust(in) * in["speed"] / in["power"] },
	})
}

func TestMomentumTheory(t *testing.T) {
	t.Parallel()
	checkPublished(t, "momentum_theory", map[string]method{
		"propeller-thrust": func(in inputs) float64 { return PropellerThrust(in["density"], in["area"], in["power"], in["speed"]) },
		"propeller-inflow": func(in inputs) float64 { return PropellerInflow(in["density"], in["area"], in["power"], in["speed"]) },
		"propeller-static": func(in inputs) float64 {
			return PropellerStaticThrust(in["density"], math.Pi*in["diameter"]*in["diameter"]/4, in["power"])
		},
		"fan-thrust":     func(in inputs) float64 { return FanThrust(in["density"], in["area"], in["power"], in["speed"]) },
		"fan-exit-speed": func(in inputs) float64 { return FanExitSpeed(in["density"], in["area"], in["power"], in["speed"]) },
	})
}

func TestTurbineCorrections(t *testing.T) {
	t.Parallel()
	corrected := func(in inputs) Run {
		day := Air{Temperature: in["temperature"], Pressure: in["pressure"]}
		run := Run{Thrust: in["thrust"], Speed: in["speed"], ExhaustTemperature: in["exhaust"], FuelFlow: in["fuel"], MassFlow: in["flow"]}
		return run.Corrected(day.Against(Standard))
	}
	spooling := func(in inputs) Engine {
		return Engine{
			Kind: Turbine, StaticThrust: 1, IdleThrust: ThrustShare(in["idle"], in["exponent"]),
			ThrustExponent: in["exponent"], SpoolTime: in["spool"],
		}
	}
	checkPublished(t, "turbine_corrections", map[string]method{
		"fixed-rpm": func(in inputs) float64 {
			c := Corrections{Delta: in["delta"], Theta: in["temperature"] / StandardTemperature}
			return FixedSpeedThrustRatio(c, in["exponent"])
		},
		"corrected-thrust":  func(in inputs) float64 { return corrected(in).Thrust },
		"corrected-speed":   func(in inputs) float64 { return corrected(in).Speed },
		"corrected-exhaust": func(in inputs) float64 { return corrected(in).ExhaustTemperature - 273.15 },
		"corrected-fuel":    func(in inputs) float64 { return corrected(in).FuelFlow },
		"corrected-flow":    func(in inputs) float64 { return corrected(in).MassFlow },
		"thrust-share":      func(in inputs) float64 { return ThrustShare(in["ratio"], in["exponent"]) },
		"spool-share":       func(in inputs) float64 { return spooling(in).Thrust(0, in["time"], Standard) },
		"time-to-share":     func(in inputs) float64 { return spooling(in).FullTime(in["share"]) },
		"mean-share":        func(in inputs) float64 { return MeanShare(in["idle"], in["exponent"]) },
		"simple-thrust":     func(in inputs) float64 { return SimpleNetThrust(in["static"], in["flow"], in["speed"]) },
		"ram-thrust": func(in inputs) float64 {
			return RamNetThrust(in["static"], in["flow"], in["speed"], StandardTemperature, in["exhaust"], in["recovery"])
		},
		"ram-flow": func(in inputs) float64 {
			return RamMassFlow(in["flow"], in["speed"], in["temperature"], in["recovery"])
		},
		"fuel-share": func(in inputs) float64 { return LinearFuelFlow(1, in["share"]) },
	})
}

// turbine is a turbine of the 120 N class, fan a ducted fan, propeller an open one.
var (
	turbine = Engine{
		Kind: Turbine, StaticThrust: 120, IdleThrust: 5, MassFlow: 0.33, SpoolTime: 4, FullFuelFlow: 0.0052, IdleFuelFlow: 0.0014,
	}
	fan       = Engine{Kind: DuctedFan, StaticThrust: 30, JetArea: 0.0042, SpoolTime: 0.5}
	propeller = Engine{Kind: Propeller, StaticThrust: 40, JetArea: 0.1, SpoolTime: 0.5, Rated: Air{Density: 1.225}}
)

func TestThrustStatesWhatTheEngineIsRatedAt(t *testing.T) {
	t.Parallel()
	for _, e := range []Engine{turbine, fan, propeller} {
		if err := e.Check(); err != nil {
			t.Fatal(err)
		}
		if got := e.Thrust(0, 10, e.Rated); math.Abs(got-e.StaticThrust) > 1e-9 {
			t.Errorf("kind %d: full static thrust %g, rated %g", e.Kind, got, e.StaticThrust)
		}
		if got := e.Thrust(0, 0, e.Rated); math.Abs(got-e.IdleThrust) > 1e-9 {
			t.Errorf("kind %d: idle thrust %g, rated %g", e.Kind, got, e.IdleThrust)
		}
	}
}

func TestThrustFallsWithSpeedAndRisesWithTime(t *testing.T) {
	t.Parallel()
	for _, e := range []Engine{turbine, fan, propeller} {
		for v := 0.0; v < 100; v += 5 {
			if e.Thrust(v+5, 10, Standard) >= e.Thrust(v, 10, Standard) {
				t.Errorf("kind %d: thrust does not fall from %g m/s", e.Kind, v)
			}
		}
		for s := 0.0; s < e.SpoolTime-0.01; s += e.SpoolTime / 10 {
			if e.Thrust(0, s+e.SpoolTime/10, Standard) <= e.Thrust(0, s, Standard) {
				t.Errorf("kind %d: thrust does not rise from %g s", e.Kind, s)
			}
		}
	}
}

func TestIdleThrustTurnsNegativeWithSpeed(t *testing.T) {
	t.Parallel()
	e := Engine{Kind: Turbine, StaticThrust: 80, IdleThrust: 3.2, MassFlow: 0.217294, ThrustExponent: 2.8}
	ratio := math.Pow(0.04, 1/2.8)
	for _, v := range []float64{0, 20, 40, 60} {
		if want := 3.2 - 0.217294*ratio*v; math.Abs(e.IdleThrustAt(v, Standard)-want) > 1e-12 {
			t.Errorf("idle thrust at %g m/s is %g, want %g", v, e.IdleThrustAt(v, Standard), want)
		}
	}
	if e.IdleThrustAt(60, Standard) >= 0 {
		t.Error("idle thrust at 60 m/s is not negative")
	}
	day := Air{Temperature: 308.15, Pressure: 98500}
	if want := 0.217294 * (98500.0 / 101325) / (308.15 / 288.15); math.Abs(e.DayMassFlow(day)-want) > 1e-12 {
		t.Errorf("mass flow of the day is %g, want %g", e.DayMassFlow(day), want)
	}
}

func TestRamFormIsTheGreater(t *testing.T) {
	t.Parallel()
	for v := 5.0; v <= 100; v += 5 {
		if turbine.TopThrust(v, Standard) <= turbine.Thrust(v, 10, Standard) {
			t.Errorf("ram form is not above the simple form at %g m/s", v)
		}
	}
}

func TestInstallationLossAndHotDayCostThrust(t *testing.T) {
	t.Parallel()
	lossy := turbine
	lossy.InstallationLoss = 0.05
	if got := lossy.Thrust(0, 10, Standard); math.Abs(got-114) > 1e-9 {
		t.Errorf("thrust with 5 %% loss is %g, want 114", got)
	}
	hot := Air{Temperature: 308.15, Pressure: 100000}
	for _, e := range []Engine{turbine, fan, propeller} {
		if e.Thrust(10, 10, hot) >= e.Thrust(10, 10, Standard) {
			t.Errorf("kind %d: hot day costs nothing", e.Kind)
		}
	}
}

func TestFuelFlow(t *testing.T) {
	t.Parallel()
	run := turbine
	run.FuelRun = []FuelPoint{{5, 0.0014}, {60, 0.003}, {120, 0.0052}}
	bare := Engine{Kind: Turbine, StaticThrust: 100, FullFuelFlow: 0.004}
	cases := []struct {
		name   string
		engine Engine
		thrust float64
		expect float64
	}{
		{"line at idle", turbine, 5, 0.0014},
		{"line at full", turbine, 120, 0.0052},
		{"line half way", turbine, 62.5, 0.0033},
		{"run at a point", run, 60, 0.003},
		{"run between points", run, 90, 0.0041},
		{"run below its points", run, 1, 0.0014},
		{"run above its points", run, 200, 0.0052},
		{"share of full", bare, 100, 0.004},
	}
	for _, c := range cases {
		if got := c.engine.FuelFlow(c.thrust); math.Abs(got-c.expect) > 1e-12 {
			t.Errorf("%s: got %g, want %g", c.name, got, c.expect)
		}
	}
}

func TestCheckNamesTheField(t *testing.T) {
	t.Parallel()
	cases := []struct {
		change func(*Engine)
		expect string
	}{
		{func(e *Engine) { e.Kind = 0 }, "engine kind: not one of turbine, ducted fan, propeller"},
		{func(e *Engine) { e.StaticThrust = -1 }, "engine static thrust: -1 is outside 0 to 100000"},
		{func(e *Engine) { e.IdleThrust = 200 }, "engine idle thrust: 200 is outside 0 to 120"},
		{func(e *Engine) { e.MassFlow = math.NaN() }, "engine mass flow: NaN is outside 0 to 1000"},
		{func(e *Engine) { e.Kind = Propeller }, "engine jet area: must be above zero for a fan or propeller"},
	}
	for _, c := range cases {
		e := turbine
		c.change(&e)
		if err := e.Check(); err == nil || err.Error() != c.expect {
			t.Errorf("got %v, want %s", err, c.expect)
		}
	}
}

func FuzzThrust(f *testing.F) {
	f.Add(1, 120.0, 5.0, 0.33, 900.0, 0.004, 4.0, 20.0, 2.0, 300.0, 1e5)
	f.Add(2, 30.0, 0.0, 0.0, 0.0, 0.004, 0.5, 300.0, 0.2, 280.0, 9e4)
	f.Add(3, 0.0, 0.0, 0.0, 0.0, 1e-5, 0.5, 0.0, 0.2, 280.0, 9e4)
	f.Fuzz(func(t *testing.T, kind int, static, idle, flow, exhaust, area, spool, speed, time, temperature, pressure float64) {
		e := Engine{
			Kind: Kind(kind), StaticThrust: static, IdleThrust: idle, MassFlow: flow, ExhaustTemperature: exhaust, JetArea: area,
			SpoolTime: spool,
		}
		sane := speed >= -100 && speed <= 1000 && time >= -10 && time < 1e4 && temperature > 100 && temperature < 400 && pressure > 1e3 && pressure < 2e5
		if e.Check() != nil || !sane || (area != 0 && area < 1e-6) {
			return
		}
		day := Air{Temperature: temperature, Pressure: pressure}
		for _, got := range []float64{e.Thrust(speed, time, day), e.TopThrust(speed, day), e.IdleThrustAt(speed, day), e.FullTime(0.9)} {
			if math.IsNaN(got) || math.IsInf(got, 0) {
				t.Errorf("not finite: %g for %+v", got, e)
			}
		}
	})
}
