package planform

import (
	"errors"
	"math"
	"strings"
	"testing"
)

// tapered returns a wing of root chord 1, the taper and aspect ratio given, and the quarter-chord sweep in degrees.
func tapered(aspect, taper, sweep float64) Surface {
	half := aspect * (1 + taper) / 4
	x := 0.25 + half*math.Tan(sweep*math.Pi/180) - 0.25*taper
	return Surface{Name: "wing", Role: RoleWing, Mirrored: true, Stations: []Station{{Chord: 1}, {X: x, Y: half, Chord: taper}}}
}

func mustMeasure(t *testing.T, s Surface) Measures {
	t.Helper()
	m, err := Measure(s)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %.8g, want %.8g within %g", what, got, want, tolerance)
	}
}

func TestMeasuresOfTaperedWings(t *testing.T) {
	t.Parallel()
	cases := []struct{ sweep, edge float64 }{{0, 0.05556}, {25, 0.59958}}
	for _, c := range cases {
		m := mustMeasure(t, tapered(7, 0.5, c.sweep))
		near(t, "area", m.Area, 3.9375, 1e-9)
		near(t, "span", m.Span, 5.25, 1e-9)
		near(t, "aspect ratio", m.AspectRatio, 7, 1e-9)
		near(t, "mean aerodynamic chord", m.MeanAerodynamicChord, 0.77778, 1e-5)
		near(t, "its leading edge", m.LeadingEdgeX, c.edge, 1e-5)
		near(t, "quarter-chord sweep", m.QuarterChordSweep*180/math.Pi, c.sweep, 1e-9)
		near(t, "taper", m.TaperRatio, 0.5, 1e-12)
		near(t, "exposed", m.ExposedArea, m.Area, 1e-9)
	}
}

func TestRootIsCarriedThroughTheBody(t *testing.T) {
	t.Parallel()
	s := tapered(6, 1, 0)
	s.Stations[0].Y = 0.3
	m := mustMeasure(t, s)
	near(t, "reference area", m.Area, 6, 1e-9)
	near(t, "exposed area", m.ExposedArea, 5.4, 1e-9)
	near(t, "span", m.Span, 6, 1e-9)
	s.Stations[0].Y = 2
	near(t, "outer panels alone", mustMeasure(t, s).Area, 2, 1e-9)
}

func TestDihedralAndFins(t *testing.T) {
	t.Parallel()
	s := tapered(6, 1, 0)
	s.Stations[1].Z = 3 * math.Tan(0.1)
	m := mustMeasure(t, s)
	near(t, "dihedral", m.Dihedral, 0.1, 1e-9)
	near(t, "projected area", m.Area, 6, 1e-9)
	near(t, "true area", m.ExposedArea, 6/math.Cos(0.1), 1e-9)
	fin := Surface{Name: "fin", Role: RoleFin, Stations: []Station{{Chord: 0.4}, {X: 0.1, Z: 0.3, Chord: 0.2}}}
	f := mustMeasure(t, fin)
	near(t, "fin area", f.Area, 0.09, 1e-12)
	near(t, "fin height", f.Span, 0.3, 1e-12)
	near(t, "fin aspect ratio", f.AspectRatio, 1, 1e-12)
	fin.Mirrored = true
	fin.Stations[0].Y, fin.Stations[1].Y = 0.2, 0.2
	twin := mustMeasure(t, fin)
	near(t, "twin fins' area", twin.Area, 0.18, 1e-12)
	near(t, "twin fins' aspect ratio", twin.AspectRatio, 1, 1e-12)
}

func TestScaleLeavesRatios(t *testing.T) {
	t.Parallel()
	base := mustMeasure(t, tapered(7, 0.4, 20))
	for _, k := range []float64{0.1, 2, 7.3} {
		s := tapered(7, 0.4, 20)
		for i := range s.Stations {
			s.Stations[i].X *= k
			s.Stations[i].Y *= k
			s.Stations[i].Chord *= k
		}
		m := mustMeasure(t, s)
		near(t, "area", m.Area, k*k*base.Area, 1e-9*k*k)
		near(t, "chord", m.MeanAerodynamicChord, k*base.MeanAerodynamicChord, 1e-9*k)
		near(t, "aspect", m.AspectRatio, base.AspectRatio, 1e-9)
		near(t, "wetted", m.WettedArea, k*k*base.WettedArea, 1e-9*k*k)
	}
}

func TestAStationOnTheLineChangesNothing(t *testing.T) {
	t.Parallel()
	s := tapered(7, 0.5, 25)
	whole := mustMeasure(t, s)
	a, b := s.Stations[0], s.Stations[1]
	middle := Station{X: 0.3*b.X + 0.7*a.X, Y: 0.3 * b.Y, Chord: 0.3*b.Chord + 0.7*a.Chord}
	s.Stations = []Station{a, middle, b}
	split := mustMeasure(t, s)
	near(t, "area", split.Area, whole.Area, 1e-12)
	near(t, "chord", split.MeanAerodynamicChord, whole.MeanAerodynamicChord, 1e-12)
	near(t, "edge", split.LeadingEdgeX, whole.LeadingEdgeX, 1e-12)
	near(t, "wetted", split.WettedArea, whole.WettedArea, 1e-12)
}

func TestImpossibleSurfacesAreNamed(t *testing.T) {
	t.Parallel()
	cases := []struct {
		name   string
		change func(*Surface)
		want   string
	}{
		{"one station", func(s *Surface) { s.Stations = s.Stations[:1] }, "at least two"},
		{"turns back", func(s *Surface) { s.Stations = append(s.Stations, Station{Y: 1, Chord: 0.5}) }, "crosses itself"},
		{"no width", func(s *Surface) { s.Stations = append(s.Stations, s.Stations[1]) }, "no width"},
		{"zero chord", func(s *Surface) { s.Stations[1].Chord = 0 }, "stations[1].chord"},
		{"negative chord", func(s *Surface) { s.Stations[0].Chord = -1 }, "stations[0].chord"},
		{"not a number", func(s *Surface) { s.Stations[0].X = math.NaN() }, "leading_edge_x"},
		{"infinite", func(s *Surface) { s.Stations[1].Z = math.Inf(1) }, "leading_edge_z"},
		{"across the middle", func(s *Surface) { s.Stations[0].Y = -0.1 }, "plane of symmetry"},
		{"incidence", func(s *Surface) { s.Incidence = 4 }, "incidence"},
		{"control ends", func(s *Surface) { s.Controls = []Control{{Name: "aileron", Inner: 0.9, Outer: 0.4}} }, `controls["aileron"]`},
		{"control chord", func(s *Surface) { s.Controls = []Control{{Name: "flap", Outer: 1, ChordRatio: 1.2}} }, "chord_ratio"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			s := tapered(6, 0.5, 0)
			c.change(&s)
			_, err := Measure(s)
			if !errors.Is(err, ErrImpossible) || !strings.Contains(err.Error(), c.want) || !strings.Contains(err.Error(), `"wing"`) {
				t.Errorf("got %v, want impossible geometry naming %q", err, c.want)
			}
		})
	}
}

func TestTailVolumes(t *testing.T) {
	t.Parallel()
	near(t, "tailplane", HorizontalTailVolume(0.09, 0.70, 0.5, 0.25), 0.504, 1e-12)
	near(t, "aeroplane of general aviation", HorizontalTailVolume(43, 16, 184, 5.7), 0.6560, 1e-4)
	near(t, "fin", VerticalTailVolume(0.05, 0.8, 0.5, 2), 0.04, 1e-12)
	near(t, "no wing", HorizontalTailVolume(1, 1, 0, 1), 0, 0)
	near(t, "canard is negative", HorizontalTailVolume(0.09, -0.70, 0.5, 0.25), -0.504, 1e-12)
}

func TestSectionFigures(t *testing.T) {
	t.Parallel()
	cases := []struct {
		section                     Section
		thickness, camber, position float64
	}{
		{Section{Designation: "2412"}, 0.12, 0.02, 0.4},
		{Section{Family: FamilyFourDigit, Designation: "0015"}, 0.15, 0, 0.4},
		{Section{Family: FamilyFlatPlate, Camber: 0.05}, 0.03, 0, 0.4},
		{Section{Family: FamilyCurvedSheet, Camber: 0.05}, 0.03, 0.05, 0.5},
		{Section{Family: FamilyOwn, Thickness: 0.09, Camber: 0.03, CamberPosition: 0.35}, 0.09, 0.03, 0.35},
		{Section{}, 0.12, 0, 0.4},
		{Section{Designation: "24x2"}, 0.12, 0, 0.4},
	}
	for _, c := range cases {
		camber, position := c.section.EffectiveCamber()
		near(t, "thickness", c.section.EffectiveThickness(), c.thickness, 1e-12)
		near(t, "camber", camber, c.camber, 1e-12)
		near(t, "camber position", position, c.position, 1e-12)
	}
}

func TestMainWing(t *testing.T) {
	t.Parallel()
	small, large := tapered(6, 1, 0), tapered(10, 1, 0)
	small.Role, large.Role = RoleWing, RoleCanard
	fin := Surface{Role: RoleFin, Stations: []Station{{Chord: 9}, {Z: 9, Chord: 9}}}
	if got := MainWing([]Surface{fin, large, small}); got != 2 {
		t.Errorf("main wing is %d, want the surface of role wing", got)
	}
	if got := MainWing([]Surface{fin, large}); got != 1 {
		t.Errorf("main wing is %d, want the only horizontal surface", got)
	}
	if got := MainWing([]Surface{fin}); got != -1 {
		t.Errorf("main wing is %d, want none", got)
	}
}

func FuzzMeasure(f *testing.F) {
	f.Add(0.0, 0.0, 0.0, 1.0, 0.5, 3.0, 0.1, 0.5, true)
	f.Add(0.0, 0.0, 0.0, 0.2, 0.0, 0.0, 0.4, 0.1, false)
	f.Fuzz(func(t *testing.T, x0, y0, z0, c0, x1, y1, z1, c1 float64, fin bool) {
		s := Surface{Role: RoleWing, Mirrored: true, Stations: []Station{{X: x0, Y: y0, Z: z0, Chord: c0}, {X: x1, Y: y1, Z: z1, Chord: c1}}}
		if fin {
			s.Role = RoleFin
		}
		m, err := Measure(s)
		if err != nil {
			return
		}
		sum := m.Area + m.WettedArea + m.Span + m.AspectRatio + m.MeanAerodynamicChord + m.LeadingEdgeX + m.HalfChordSweep + m.Thickness
		if math.IsNaN(sum) || math.IsInf(sum, 0) || m.WettedArea < 0 {
			t.Fatalf("%+v gives %+v", s, m)
		}
	})
}
