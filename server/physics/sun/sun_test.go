package sun

import (
	"math"
	"strings"
	"testing"
)

// toDegrees turns radians into degrees.
func toDegrees(angle float64) float64 { return angle / radiansPerDegree }

// placeOf reads a place.
func placeOf(in inputs) Place {
	return Place{
		Latitude: in["latitude"] * radiansPerDegree, Longitude: in["longitude"] * radiansPerDegree,
		Pressure: in["pressure"], Temperature: in["temperature"],
	}
}

func TestPublishedPlaces(t *testing.T) {
	t.Parallel()
	position := func(in inputs) Position { return seen(in["moment"], placeOf(in)) }
	day := func(in inputs) Daylight {
		d, err := Day(in["moment"], placeOf(in))
		if err != nil {
			return Daylight{Noon: math.NaN()}
		}
		return d
	}
	checkPublished(t, "solar_position", map[string]method{
		"zenith":          func(in inputs) float64 { return 90 - toDegrees(position(in).Elevation) },
		"azimuth":         func(in inputs) float64 { return toDegrees(position(in).Azimuth) },
		"hour-angle":      func(in inputs) float64 { return toDegrees(position(in).HourAngle) },
		"declination":     func(in inputs) float64 { return toDegrees(Apparent(in["centuries"]).Declination) },
		"right-ascension": func(in inputs) float64 { return toDegrees(Apparent(in["centuries"]).RightAscension) },
		"longitude":       func(in inputs) float64 { return toDegrees(Apparent(in["centuries"]).Longitude) },
		"obliquity":       func(in inputs) float64 { return toDegrees(Apparent(in["centuries"]).Obliquity) },
		"distance":        func(in inputs) float64 { return Apparent(in["centuries"]).Distance },
		"true-longitude": func(in inputs) float64 {
			c := in["centuries"]
			return toDegrees(withinTurn(trueLongitude(c, equationOfCentre(c, meanAnomaly(c)))))
		},
		"sidereal": func(in inputs) float64 { return toDegrees(siderealAngle(in["days"])) },
		"refraction": func(in inputs) float64 {
			return 60 * toDegrees(Refraction(in["elevation"]*radiansPerDegree, in["pressure"], in["temperature"]))
		},
		"sunrise": func(in inputs) float64 { return day(in).Sun.Begin },
		"sunset":  func(in inputs) float64 { return day(in).Sun.End },
	})
}

func TestSeparateEphemeris(t *testing.T) {
	t.Parallel()
	day := func(in inputs) Daylight {
		d, err := Day(in["moment"], placeOf(in))
		if err != nil {
			return Daylight{Noon: math.NaN()}
		}
		return d
	}
	checkPublished(t, "separate_ephemeris", map[string]method{
		"true-elevation": func(in inputs) float64 { return toDegrees(seen(in["moment"], placeOf(in)).True) },
		"azimuth":        func(in inputs) float64 { return toDegrees(seen(in["moment"], placeOf(in)).Azimuth) },
		"noon":           func(in inputs) float64 { return day(in).Noon },
		"sunrise":        func(in inputs) float64 { return day(in).Sun.Begin },
		"sunset":         func(in inputs) float64 { return day(in).Sun.End },
		"dawn":           func(in inputs) float64 { return day(in).Twilight.Begin },
		"dusk":           func(in inputs) float64 { return day(in).Twilight.End },
	})
}

// midsummer is 2026-06-21 12:00 UTC.
const midsummer = 1782043200.0

// at is a place on the meridian of Greenwich.
func at(latitude float64) Place { return Place{Latitude: latitude * radiansPerDegree} }

func TestDayAndNightOfThePoles(t *testing.T) {
	t.Parallel()
	cases := []struct {
		latitude       float64
		always, never  bool
		twilightAlways bool
	}{
		{80, true, false, true}, {-80, false, true, false}, {62, false, false, true}, {52, false, false, false}, {0, false, false, false},
		{90, true, false, true}, {-90, false, true, false},
	}
	for _, c := range cases {
		day, err := Day(midsummer, at(c.latitude))
		if err != nil || day.Sun.Always != c.always || day.Sun.Never != c.never || day.Twilight.Always != c.twilightAlways {
			t.Errorf("latitude %g: %+v, %v", c.latitude, day, err)
		}
	}
}

func TestDayIsInOrder(t *testing.T) {
	t.Parallel()
	for latitude := -60.0; latitude <= 60; latitude += 7.5 {
		for longitude := -180.0; longitude <= 180; longitude += 45 {
			for month := range 12 {
				place := Place{Latitude: latitude * radiansPerDegree, Longitude: longitude * radiansPerDegree}
				checkDay(t, midsummer+float64(month)*30.4*secondsPerDay, place)
			}
		}
	}
}

// checkDay fails when the limits of a day are not in order or the sun is not at them.
func checkDay(t *testing.T, moment float64, place Place) {
	t.Helper()
	day, err := Day(moment, place)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(day.Noon-moment) > secondsPerDay/2+60 {
		t.Errorf("%+v: noon %g is not of the day of %g", place, day.Noon, moment)
	}
	if day.Twilight.Always {
		return
	}
	if !(day.Twilight.Begin < day.Sun.Begin && day.Sun.Begin < day.Noon && day.Noon < day.Sun.End && day.Sun.End < day.Twilight.End) {
		t.Errorf("%+v at %g: %+v is not in order", place, moment, day)
	}
	for limit, crossed := range map[float64]float64{RisingElevation: day.Sun.Begin, CivilElevation: day.Twilight.End} {
		if got := seen(crossed, place).True; math.Abs(got-limit) > 1e-6 {
			t.Errorf("%+v: elevation %g at the limit %g", place, got, limit)
		}
	}
	if !day.Sun.Contains(day.Noon) || day.Sun.Contains(day.Sun.Begin-60) || day.Sun.Contains(day.Sun.End+60) {
		t.Errorf("%+v: %+v does not contain its noon alone", place, day.Sun)
	}
}

func TestNoonIsTheHighestSun(t *testing.T) {
	t.Parallel()
	for _, latitude := range []float64{-45, -10, 30, 52, 66} {
		place := at(latitude)
		noon := noonNear(midsummer, place)
		highest := seen(noon, place)
		for _, minutes := range []float64{-300, -60, -10, 10, 60, 300} {
			if other := seen(noon+60*minutes, place); other.Elevation >= highest.Elevation {
				t.Errorf("latitude %g: %g minutes from noon the sun is higher", latitude, minutes)
			}
		}
		if north := math.Cos(highest.Azimuth) > 0; north != (latitude < 23.4) {
			t.Errorf("latitude %g: noon azimuth %g", latitude, toDegrees(highest.Azimuth))
		}
	}
}

func TestSouthMirrorsNorthAtTheEquinox(t *testing.T) {
	t.Parallel()
	for hour := range 24 {
		days := 9660.5 + float64(hour)/24
		sun := Apparent(days / daysPerCentury)
		up, azimuth := horizontal(1, sun.Declination, 0.7)
		down, mirrored := horizontal(1, -sun.Declination, -0.7)
		if math.Abs(up-down) > 1e-12 || math.Abs(math.Cos(azimuth)+math.Cos(mirrored)) > 1e-12 {
			t.Errorf("hour %d: %g and %g, %g and %g", hour, up, down, azimuth, mirrored)
		}
	}
}

func TestRefractionFallsWithElevation(t *testing.T) {
	t.Parallel()
	last := math.Inf(1)
	for h := -1.0; h <= 90; h += 0.5 {
		lift := Refraction(h*radiansPerDegree, standardPressure, standardTemperature)
		if lift > last || lift < 0 {
			t.Errorf("%g degrees: %g after %g", h, lift, last)
		}
		last = lift
	}
	if Refraction(-2*radiansPerDegree, standardPressure, standardTemperature) != 0 || Refraction(math.NaN(), 1e5, 280) != 0 {
		t.Error("a sun that has set is refracted")
	}
	thin := Refraction(0.1, standardPressure/2, standardTemperature)
	if full := Refraction(0.1, standardPressure, standardTemperature); math.Abs(full-2*thin) > 1e-15 {
		t.Errorf("half the pressure lifts %g of %g", thin, full)
	}
}

func TestDazzle(t *testing.T) {
	t.Parallel()
	west := Position{Elevation: 10 * radiansPerDegree, True: 10 * radiansPerDegree, Azimuth: 270 * radiansPerDegree}
	cases := []struct {
		name           string
		sun            Position
		direction      float64
		approach, roll bool
		angle          float64
	}{
		{"straight into it on the roll", west, 270, false, true, 10},
		{"model comes out of it", west, 90, true, false, 170},
		{"across", west, 180, false, false, 90},
		{"just within", west, 241, false, true, math.NaN()},
		{"just outside", west, 239, false, false, math.NaN()},
		{"high", Position{Elevation: 0.5, True: 0.5, Azimuth: west.Azimuth}, 270, false, false, 0.5 / radiansPerDegree},
		{"set", Position{Elevation: -0.02, True: -0.02, Azimuth: west.Azimuth}, 270, false, false, 0.02 / radiansPerDegree},
	}
	for _, c := range cases {
		approach, forward := c.sun.Landing(c.direction*radiansPerDegree, LowSun, NarrowOffset)
		if approach.InEyes != c.approach || forward.InEyes != c.roll {
			t.Errorf("%s: %+v, %+v", c.name, approach, forward)
		}
		if !math.IsNaN(c.angle) && math.Abs(toDegrees(forward.Angle)-c.angle) > 1e-9 {
			t.Errorf("%s: angle %g, want %g", c.name, toDegrees(forward.Angle), c.angle)
		}
		if math.Abs(approach.Angle+forward.Angle-math.Pi) > 1e-9 {
			t.Errorf("%s: the two lines do not make a straight one", c.name)
		}
	}
	if left := west.Along(math.Pi*1.5+0.2, 0, LowSun, NarrowOffset); math.Abs(left.Offset+0.2) > 1e-12 {
		t.Errorf("offset %g, want the sun 0.2 to the left", left.Offset)
	}
}

func TestLight(t *testing.T) {
	t.Parallel()
	for elevation, want := range map[float64]Light{0.1: DayLight, -0.01: DayLight, -0.02: TwilightLight, -0.1: TwilightLight, -0.11: Dark} {
		if got := (Position{True: elevation}).Light(); got != want {
			t.Errorf("%g: light %d, want %d", elevation, got, want)
		}
	}
}

func TestImpossibleIsNamed(t *testing.T) {
	t.Parallel()
	nan := math.NaN()
	for field, c := range map[string]struct {
		moment float64
		place  Place
	}{
		"time": {5e9, Place{}}, "time:": {nan, Place{}}, "latitude": {0, at(90.1)}, "latitude:": {0, Place{Latitude: nan}},
		"longitude": {0, Place{Longitude: 7}}, "pressure": {0, Place{Pressure: -1}}, "temperature": {0, Place{Temperature: 20}},
	} {
		if _, err := At(c.moment, c.place); err == nil || !strings.HasPrefix(err.Error(), field) {
			t.Errorf("%s: error %v", field, err)
		}
		if _, err := Day(c.moment, c.place); err == nil {
			t.Errorf("%s: a day of nothing", field)
		}
	}
}

func FuzzAt(f *testing.F) {
	f.Add(midsummer, 0.9, 0.0, 0.0, 0.0)
	f.Add(-2.2e9, math.Pi/2, -6.28, 101325.0, 288.0)
	f.Fuzz(func(t *testing.T, moment, latitude, longitude, pressure, temperature float64) {
		place := Place{latitude, longitude, pressure, temperature}
		position, err := At(moment, place)
		if err != nil {
			return
		}
		for _, value := range []float64{position.Elevation, position.True, position.Azimuth, position.HourAngle} {
			if math.IsNaN(value) || math.IsInf(value, 0) {
				t.Fatalf("%+v at %g: %+v", place, moment, position)
			}
		}
		if position.Azimuth < 0 || position.Azimuth >= fullCircle || math.Abs(position.True) > math.Pi/2+1e-4 {
			t.Errorf("%+v at %g: %+v", place, moment, position)
		}
		if day, err := Day(moment, place); err != nil || math.IsNaN(day.Noon+day.Sun.Begin+day.Twilight.End) {
			t.Errorf("%+v at %g: %+v, %v", place, moment, day, err)
		}
	})
}

func BenchmarkDay(b *testing.B) {
	for b.Loop() {
		if _, err := Day(midsummer, at(52)); err != nil {
			b.Fatal(err)
		}
	}
}
