package radio

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// inputs are the named values of a published row.
type inputs map[string]float64

// method computes what the rows of one kind expect.
type method func(in inputs) float64

// checkPublished compares the rows of a source with the method of their kind, the part of the id before the slash. A row without a method, a
// method without a row and an input no method could read are failures.
func checkPublished(t *testing.T, source string, methods map[string]method) {
	t.Helper()
	used := map[string]bool{}
	for _, record := range readPublished(t, source) {
		kind, _, _ := strings.Cut(record[0], "/")
		compute, known := methods[kind]
		if !known {
			t.Fatalf("%s: no method for row %s", source, record[0])
		}
		used[kind] = true
		t.Run(record[0], func(t *testing.T) {
			t.Parallel()
			compare(t, compute(parseInputs(t, record[1])), parse(t, record[2]), record[3])
		})
	}
	for kind := range methods {
		if !used[kind] {
			t.Errorf("%s: no row of kind %s", source, kind)
		}
	}
}

// readPublished returns the rows of a source without its head.
func readPublished(t *testing.T, source string) [][]string {
	t.Helper()
	file, err := os.Open(filepath.Join("..", "..", "..", "testdata", "published", source, "values.csv"))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	records, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return records[1:]
}

// parseInputs reads "name=value name=value".
func parseInputs(t *testing.T, text string) inputs {
	t.Helper()
	in := inputs{}
	for _, pair := range strings.Fields(text) {
		name, value, _ := strings.Cut(pair, "=")
		in[name] = parse(t, value)
	}
	return in
}

// parse reads a number.
func parse(t *testing.T, text string) float64 {
	t.Helper()
	value, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return value
}

// compare fails when got is farther from want than the tolerance, "1e-6 rel" or "0.01 abs".
func compare(t *testing.T, got, want float64, tolerance string) {
	t.Helper()
	size, kind, _ := strings.Cut(tolerance, " ")
	allowed := parse(t, size)
	if kind == "rel" {
		allowed *= math.Abs(want)
	}
	if !(math.Abs(got-want) <= allowed) {
		t.Errorf("got %.9g, published %.9g, tolerance %s", got, want, tolerance)
	}
}

// degrees turns degrees into radians.
func degrees(value float64) float64 { return value * math.Pi / 180 }

// path is that of two antennas.
func (in inputs) path() Path { return Path{in["along"], in["h1"], in["h2"]} }

func TestLossInFreeSpaceAgainstPublishedValues(t *testing.T) {
	t.Parallel()
	checkPublished(t, "free_space_loss", map[string]method{
		"free-space":     func(in inputs) float64 { return FreeSpaceLoss(in["frequency"], in["distance"]) },
		"wavelength":     func(in inputs) float64 { return Wavelength(in["frequency"]) },
		"carried":        func(in inputs) float64 { return CarriedMargin(in["reduction"], in["checked"], in["wanted"]) },
		"check-distance": func(in inputs) float64 { return RequiredCheckDistance(in["wanted"], in["margin"], in["reduction"]) },
		"range":          func(in inputs) float64 { return FreeSpaceRange(in["frequency"], in["loss"]) },
		"fresnel":        func(in inputs) float64 { return FresnelRadius(in["frequency"], in["d1"], in["d2"]) },
		"knife-edge":     func(in inputs) float64 { return KnifeEdgeLoss(in["v"]) },
		"sensitivity":    func(in inputs) float64 { return Sensitivity(in["bandwidth"], in["noise"], in["ratio"]) },
	})
}

func TestTwoRaysAgainstPublishedValues(t *testing.T) {
	t.Parallel()
	checkPublished(t, "two_ray_ground", map[string]method{
		"breakpoint": func(in inputs) float64 { return Breakpoint(in["frequency"], in["h1"], in["h2"]) },
		"last-peak":  func(in inputs) float64 { return LastPeak(in["frequency"], in["h1"], in["h2"]) },
		"null": func(in inputs) float64 {
			x, ok := NullDistance(in["frequency"], in["h1"], in["h2"], int(in["number"]))
			if !ok {
				return math.NaN()
			}
			return x
		},
		"two-ray": func(in inputs) float64 { return TwoRayLoss(in["frequency"], in.path(), Reflection{Real: in["real"]}) },
		"ground":  func(in inputs) float64 { return GroundLoss(in["frequency"], in.path(), Reflection{Real: in["real"]}) },
		"far":     func(in inputs) float64 { return FarLoss(in.path()) },
	})
}

func TestReflectionAgainstPublishedValues(t *testing.T) {
	t.Parallel()
	reflect := func(polarization Polarization) method {
		return func(in inputs) float64 {
			return Ground{Permittivity: in["er"], Conductivity: in["sigma"]}.Reflect(2.44e9, degrees(in["angle"]), polarization).Magnitude()
		}
	}
	checkPublished(t, "ground_reflection", map[string]method{"horizontal": reflect(Horizontal), "vertical": reflect(Vertical)})
}

func TestGroundsAgainstPublishedValues(t *testing.T) {
	t.Parallel()
	permittivity := func(ground func(float64) Ground) method {
		return func(in inputs) float64 { return ground(in["frequency"]).Permittivity }
	}
	conductivity := func(ground func(float64) Ground) method {
		return func(in inputs) float64 { return ground(in["frequency"]).Conductivity }
	}
	checkPublished(t, "ground_constants", map[string]method{
		"dry-permittivity": permittivity(DryGround), "medium-permittivity": permittivity(MediumGround), "wet-permittivity": permittivity(WetGround),
		"dry-conductivity": conductivity(DryGround), "medium-conductivity": conductivity(MediumGround), "wet-conductivity": conductivity(WetGround),
	})
}

// TestGroundsBelowTheirTable keep the permittivity of 1 GHz, and conduct less the lower the frequency.
func TestGroundsBelowTheirTable(t *testing.T) {
	t.Parallel()
	for name, ground := range map[string]func(float64) Ground{"dry": DryGround, "medium": MediumGround, "wet": WetGround} {
		least := ground(1e9)
		for _, frequency := range []float64{868e6, 433e6, 35e6} {
			lower := ground(frequency)
			if lower.Permittivity != least.Permittivity || !(lower.Conductivity > 0 && lower.Conductivity < least.Conductivity) {
				t.Errorf("%s at %g Hz: %+v after %+v", name, frequency, lower, least)
			}
			least = lower
		}
	}
}

// halfPowerWidth returns the width between half powers by bisection, degrees.
func halfPowerWidth(level float64) float64 {
	low, high := 0.0, math.Pi/2
	for range 60 {
		if middle := (low + high) / 2; HalfWavePattern(math.Cos(middle)) < level {
			low = middle
		} else {
			high = middle
		}
	}
	return 2 * (90 - low*180/math.Pi)
}

// directivity integrates the pattern over the sphere.
func directivity() float64 {
	const steps = 20000
	sum := 0.0
	for i := range steps {
		sum += HalfWavePattern(-1 + 2*(float64(i)+0.5)/steps)
	}
	return steps / sum
}

func TestAntennasAgainstPublishedValues(t *testing.T) {
	t.Parallel()
	axes := []Vector{{X: 1}, {Z: 1}, {Y: 1}}
	checkPublished(t, "wire_antennas", map[string]method{
		"half-wave":        func(in inputs) float64 { return Decibels(HalfWavePattern(math.Cos(degrees(in["angle"])))) },
		"short":            func(in inputs) float64 { return Decibels(ShortDipolePattern(math.Cos(degrees(in["angle"])))) },
		"half-power-width": func(in inputs) float64 { return halfPowerWidth(in["level"]) },
		"directivity":      func(in inputs) float64 { return in["level"] * directivity() },
		"polarization":     func(in inputs) float64 { return PolarizationLoss(degrees(in["angle"])) },
		"attitudes": func(in inputs) float64 {
			var antennas []Mounted
			for _, axis := range axes[:int(in["count"])] {
				antennas = append(antennas, Mounted{Axis: axis, Short: true})
			}
			a := OverAttitudes(antennas)
			return a.ShareDeeper(in["loss"])
		},
		"two-crossed": func(in inputs) float64 { return PatternLoss(axes[:int(in["count"])], Vector{X: 1, Z: 1}) },
		"skin":        func(in inputs) float64 { return SkinShielding(in["resistance"]) },
		"skin-depth":  func(in inputs) float64 { return 1000 * SkinDepth(in["frequency"], in["conductivity"]) },
	})
}

func TestFadingAndFailSafeAgainstPublishedValues(t *testing.T) {
	t.Parallel()
	failSafe := func(in inputs) FailSafeResult {
		r, err := CheckFailSafe(FailSafe{CutNeutral, in["delay"], in["decay"]}, FailSafeLimit{in["limit"], true}, in["speed"])
		if err != nil {
			return FailSafeResult{Spare: math.NaN(), Flown: math.NaN()}
		}
		return r
	}
	checkPublished(t, "fading_and_fail_safe", map[string]method{
		"rayleigh":        func(in inputs) float64 { return DiversityOutage(RayleighOutage(in["margin"]), int(in["branches"])) },
		"rayleigh-margin": func(in inputs) float64 { return RayleighMargin(in["outage"]) },
		"flown":           func(in inputs) float64 { return failSafe(in).Flown },
	})
}
