package radio

import (
	"errors"
	"math"
	"strings"
	"testing"
)

// clearLink is a sound link: two crossed antennas clear of shade, one of them upright.
func clearLink() Link {
	return Link{
		Frequency: 2.44e9, RadiatedPower: 20, Sensitivity: -99, TransmitterHeight: 1.5, InstalledLoss: 3,
		Antennas: []Antenna{{Name: "left", Axis: Axis(0, 0)}, {Name: "fin", Axis: Axis(0, math.Pi/2)}},
	}
}

// usual returns the usual margin at a place.
func usual(t *testing.T, link Link, place Place) Margin {
	t.Helper()
	installation := Install(link.Antennas)
	m, err := MarginAt(link, &installation, place)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func TestMarginIsTheSumOfItsParts(t *testing.T) {
	t.Parallel()
	m := usual(t, clearLink(), Place{"corner", 400, 50})
	want := 20 + HalfWaveGain - m.FreeSpace - m.Ground - 3 + 99
	if math.Abs(m.Clear-want) > 1e-9 {
		t.Errorf("clear %g, parts give %g", m.Clear, want)
	}
	if !(m.Clear >= m.Usual && m.Usual >= m.Worst) {
		t.Errorf("order of margins: %+v", m)
	}
}

func TestMarginFallsWithDistanceAndShade(t *testing.T) {
	t.Parallel()
	link, last := clearLink(), math.Inf(1)
	for along := 700.0; along < 5000; along += 100 {
		m := usual(t, link, Place{"low", along, 2})
		if !(m.Usual < last) {
			t.Fatalf("at %g m %g dB, nearer %g", along, m.Usual, last)
		}
		last = m.Usual
	}
	place := Place{"corner", 300, 40}
	before := usual(t, link, place)
	for i := range link.Antennas {
		link.Antennas[i].ShadedBy = []string{"carbon tube"}
	}
	after := usual(t, link, place)
	if got := before.Usual - after.Usual; math.Abs(got-30) > 0.51 {
		t.Errorf("carbon before both takes %g dB, want 30", got)
	}
}

func TestLowOverGrassIsWorseThanHigh(t *testing.T) {
	t.Parallel()
	link := clearLink()
	low, high := Place{"grass", 600, 0.3}, Place{"corner", 600, 60}
	installation := Install(link.Antennas)
	m, err := Tightest(link, &installation, []Place{high, low})
	if err != nil || m.Place != low {
		t.Fatalf("tightest %+v, %v", m.Place, err)
	}
}

func TestAntennaInCarbonIsRefusedAndNamed(t *testing.T) {
	t.Parallel()
	link := clearLink()
	link.Antennas[0].InsideCarbon = true
	one := Install(link.Antennas)
	if one.Counted != 1 || len(one.Enclosed) != 1 || one.Enclosed[0] != "left" {
		t.Fatalf("%+v", one)
	}
	single := usual(t, link, Place{"corner", 400, 50})
	if both := usual(t, clearLink(), Place{"corner", 400, 50}); !(single.Usual < both.Usual-5) {
		t.Errorf("one antenna %g dB, two crossed %g dB", single.Usual, both.Usual)
	}
	link.Antennas[1].InsideCarbon = true
	none := Install(link.Antennas)
	if _, err := MarginAt(link, &none, Place{"corner", 400, 50}); !errors.Is(err, ErrInput) {
		t.Errorf("every antenna in carbon gave %v", err)
	}
	changes, err := Changes(link, Place{"corner", 400, 50}, 9)
	if err != nil || len(changes) == 0 || changes[0].Knob != KnobOutOfCarbon || !changes[0].Holds {
		t.Errorf("changes %+v, %v", changes, err)
	}
}

func TestSecondCrossedAntennaTurnsOneInThreeIntoOneInFifteen(t *testing.T) {
	t.Parallel()
	one := OverAttitudes([]Mounted{{Axis: Vector{X: 1}, Short: true}})
	two := OverAttitudes([]Mounted{{Axis: Vector{X: 1}, Short: true}, {Axis: Vector{Y: 1}, Short: true}})
	if a, b := 1/one.ShareDeeper(10), 1/two.ShareDeeper(10); math.Abs(a-3.2) > 0.2 || math.Abs(b-15) > 1.5 {
		t.Errorf("one in %.2f and one in %.2f", a, b)
	}
	parallel := OverAttitudes([]Mounted{{Axis: Vector{X: 1}}, {Axis: Vector{X: -2}}})
	single := OverAttitudes([]Mounted{{Axis: Vector{X: 1}}})
	if parallel != single {
		t.Error("a second wire along the first must change nothing")
	}
}

func TestAttitudesKeepTheirOrder(t *testing.T) {
	t.Parallel()
	a := OverAttitudes([]Mounted{{Axis: Vector{X: 1, Z: 1}, Loss: 7}, {Axis: Vector{Y: 1}, Loss: 2}})
	last := 1.0
	for loss := 0.0; loss <= 50; loss += 0.25 {
		share := a.ShareDeeper(loss)
		if share > last || share < 0 {
			t.Fatalf("share %g at %g dB after %g", share, loss, last)
		}
		last = share
	}
	if !(a.Exceeded(0.5) <= a.Exceeded(0.05) && a.Exceeded(0.05) <= a.Worst()) {
		t.Errorf("%g %g %g", a.Exceeded(0.5), a.Exceeded(0.05), a.Worst())
	}
	none := OverAttitudes(nil)
	if none.Worst() != NullFloor {
		t.Errorf("no antennas lose %g", none.Worst())
	}
}

func TestFlatAntennasHaveNoUprightPart(t *testing.T) {
	t.Parallel()
	flat := []Vector{Axis(0, 0), Axis(math.Pi/2, 0)}
	if v := VerticalPart(flat); v > 1e-12 {
		t.Errorf("flat antennas have %g", v)
	}
	if v := VerticalPart(append(flat, Axis(1, math.Pi/6))); math.Abs(v-0.5) > 1e-12 {
		t.Errorf("30 degrees up have %g", v)
	}
	if b := Between(flat); math.Abs(b-math.Pi/2) > 1e-12 {
		t.Errorf("between %g", b)
	}
	if b := Between(flat[:1]); b != 0 {
		t.Errorf("one antenna alone %g", b)
	}
}

func TestTwoRaysMeetTheirLimits(t *testing.T) {
	t.Parallel()
	for _, along := range []float64{10, 37, 200, 3000} {
		path := Path{along, 1.5, 1}
		if got, want := TwoRayLoss(2.44e9, path, Reflection{}), FreeSpaceLoss(2.44e9, path.Direct()); math.Abs(got-want) > 1e-12 {
			t.Errorf("no reflection at %g m: %g, free space %g", along, got, want)
		}
		swapped := Path{along, 1, 1.5}
		if TwoRayLoss(2.44e9, path, PerfectReflection) != TwoRayLoss(2.44e9, swapped, PerfectReflection) {
			t.Errorf("ends exchanged at %g m differ", along)
		}
		if p, g := PlanningGroundLoss(2.44e9, path, PerfectReflection), GroundLoss(2.44e9, path, PerfectReflection); p < g-1e-9 {
			t.Errorf("planning loss %g below %g at %g m", p, g, along)
		}
	}
	far := Path{2000, 1.5, 1}
	if d := TwoRayLoss(2.44e9, far, PerfectReflection) - FarLoss(far); math.Abs(d) > 0.1 {
		t.Errorf("far form differs by %g dB", d)
	}
	x, ok := NullDistance(2.44e9, 1.5, 1, 1)
	if null := GroundLoss(2.44e9, Path{x, 1.5, 1}, Reflection{Real: -1}); !ok || null < 30 {
		t.Errorf("null at %g m takes %g dB", x, null)
	}
	if _, ok := NullDistance(2.44e9, 0.1, 0.1, 3); ok {
		t.Error("a null where the detour never reaches three wavelengths")
	}
}

func TestReflectionStaysBelowOne(t *testing.T) {
	t.Parallel()
	for _, ground := range []Ground{DryGround(2.44e9), MediumGround(2.44e9), WetGround(868e6), {15, 0.1, 0.02}} {
		for angle := 0.0; angle <= math.Pi/2; angle += 0.01 {
			for _, p := range []Polarization{Vertical, Horizontal} {
				if m := ground.Reflect(2.44e9, angle, p).Magnitude(); !(m <= 1+1e-12) {
					t.Fatalf("%+v at %g rad: %g", ground, angle, m)
				}
			}
		}
		if m := ground.Reflect(2.44e9, 0, Vertical); m != PerfectReflection {
			t.Errorf("grazing: %+v", m)
		}
		v, h := ground.Reflect(2.44e9, math.Pi/2, Vertical), ground.Reflect(2.44e9, math.Pi/2, Horizontal)
		if math.Abs(v.Magnitude()-h.Magnitude()) > 1e-9 {
			t.Errorf("straight down the polarizations differ: %+v %+v", v, h)
		}
	}
	smooth, rough := Ground{15, 0.1, 0}, Ground{15, 0.1, 0.03}
	if !(rough.Reflect(2.44e9, 0.5, Horizontal).Magnitude() < smooth.Reflect(2.44e9, 0.5, Horizontal).Magnitude()) {
		t.Error("rough ground must reflect less")
	}
}

func TestShadesOfThings(t *testing.T) {
	t.Parallel()
	for name, want := range map[string]float64{"Carbon wing tube": 30, "fuel tank": 1, "ENGINE": 20, "parcel": UnknownShade} {
		s, known := ShadeOf(name)
		if s.Plan() != want || known == (name == "parcel") {
			t.Errorf("%s: %+v %v", name, s, known)
		}
	}
	loss, unknown := Shading([]string{"carbon", "engine", "parcel"})
	if loss != ShadingMost || len(unknown) != 1 {
		t.Errorf("%g %v", loss, unknown)
	}
}

func TestImpossibleLinksNameTheField(t *testing.T) {
	t.Parallel()
	for field, spoil := range map[string]func(*Link){
		"frequency":           func(l *Link) { l.Frequency = 0 },
		"radiated power":      func(l *Link) { l.RadiatedPower = math.NaN() },
		"sensitivity":         func(l *Link) { l.Sensitivity = math.Inf(-1) },
		"transmitter height":  func(l *Link) { l.TransmitterHeight = 0 },
		"antennas":            func(l *Link) { l.Antennas = nil },
		"installed loss":      func(l *Link) { l.InstalledLoss = -1 },
		"ground permittivity": func(l *Link) { l.Ground.Roughness = 0.01 },
	} {
		link := clearLink()
		spoil(&link)
		installation := Install(link.Antennas)
		_, err := MarginAt(link, &installation, Place{"corner", 100, 10})
		if !errors.Is(err, ErrInput) || !strings.Contains(err.Error(), field) {
			t.Errorf("%s: %v", field, err)
		}
	}
}

func BenchmarkInstall(b *testing.B) {
	link := clearLink()
	for b.Loop() {
		Install(link.Antennas)
	}
}

func BenchmarkMarginAt(b *testing.B) {
	link := clearLink()
	installation := Install(link.Antennas)
	for b.Loop() {
		if _, err := MarginAt(link, &installation, Place{"corner", 400, 50}); err != nil {
			b.Fatal(err)
		}
	}
}

func FuzzMarginAt(f *testing.F) {
	f.Add(2.44e9, 20.0, -95.0, 1.5, 300.0, 50.0, 0.1, 0.2, "carbon")
	f.Add(8.68e8, 14.0, -110.0, 0.01, 0.1, 0.0, 3.0, -1.5, "")
	f.Add(1e6, -40.0, 0.0, 1e5, 1e7, 1e5, 1e9, math.Inf(1), "engine fuel")
	f.Fuzz(func(t *testing.T, frequency, power, sensitivity, transmitter, along, height, azimuth, elevation float64, shade string) {
		link := Link{
			Frequency: frequency, RadiatedPower: power, Sensitivity: sensitivity, TransmitterHeight: transmitter,
			Antennas: []Antenna{{Axis: Axis(azimuth, elevation), ShadedBy: []string{shade}}},
		}
		installation := Install(link.Antennas)
		m, err := MarginAt(link, &installation, Place{"p", along, height})
		if err != nil {
			return
		}
		for _, v := range []float64{m.FreeSpace, m.Ground, m.Clear, m.Usual, m.Worst, m.SlantRange, installation.VerticalPart} {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Fatalf("%+v", m)
			}
		}
		if m.Worst > m.Clear+1e-9 {
			t.Fatalf("worst above clear: %+v", m)
		}
	})
}
