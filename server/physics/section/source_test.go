package section

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"pitgate/server/physics/planform"
)

const degree = math.Pi / 180

// rowSection returns the section that a row describes.
func rowSection(t *testing.T, in inputs) planform.Section {
	t.Helper()
	s := planform.Section{Family: in["family"], Designation: in["designation"]}
	for name, field := range map[string]*float64{"thickness": &s.Thickness, "camber": &s.Camber, "position": &s.CamberPosition} {
		if in[name] != "" {
			*field = in.number(t, name)
		}
	}
	if in["outline"] != "" {
		s.Outline = readOutline(t, in["outline"])
	}
	return s
}

// readOutline reads a file of points in per cent of the chord and asks that Check passes it.
func readOutline(t *testing.T, name string) []planform.OutlinePoint {
	t.Helper()
	file, err := os.Open(filepath.Join("..", "..", "..", "testdata", "published", "section_ordinates", name))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []planform.OutlinePoint
	for _, row := range rows[1:] {
		x, errX := strconv.ParseFloat(row[0], 64)
		z, errZ := strconv.ParseFloat(row[1], 64)
		if errX != nil || errZ != nil {
			t.Fatalf("%s: %v", name, row)
		}
		out = append(out, planform.OutlinePoint{X: x / 100, Z: z / 100})
	}
	if err := Check(out); err != nil {
		t.Fatal(err)
	}
	return out
}

// figure returns a formula of a row's section.
func figure(f func(planform.Section) float64) formula {
	return func(t *testing.T, _ string, in inputs) float64 { return f(rowSection(t, in)) }
}

// byReynolds returns a formula of a row's section and Reynolds number.
func byReynolds(f func(s planform.Section, reynolds float64) float64) formula {
	return func(t *testing.T, _ string, in inputs) float64 { return f(rowSection(t, in), in.number(t, "reynolds")) }
}

// Formulas that several sources share.
var (
	limitRows = byReynolds(func(s planform.Section, re float64) float64 { return MaximumLift(s, re, Roughness{}).Value })
	slopeRows = byReynolds(func(s planform.Section, re float64) float64 { return LiftSlope(s, re).PerRadian })
	zeroRows  = figure(func(s planform.Section) float64 { return ZeroLiftAngle(s) / degree })
	tapeRows  = func(t *testing.T, _ string, in inputs) float64 {
		return Roughness{Insects: true}.Effect(in.number(t, "reynolds")).Limit
	}
	dragRowsOf = func(t *testing.T, _ string, in inputs) float64 {
		return ProfileDrag(rowSection(t, in), in.number(t, "reynolds"), in.number(t, "lift"), Roughness{}).Value
	}
)

func TestSectionTables(t *testing.T) {
	t.Parallel()
	checkPublished(t, "sand80_2114", map[string]formula{
		"limit": limitRows, "drag": dragRowsOf,
		"per-decade": figure(func(s planform.Section) float64 {
			at := func(re float64) float64 { return MaximumLift(s, re, Roughness{}).Value }
			return (at(1e6) - at(8e4)) / math.Log10(1e6/8e4)
		}),
	})
	checkPublished(t, "low_reynolds_bands", map[string]formula{"band": limitRows})
	checkPublished(t, "airfoils_at_low_speeds", map[string]formula{
		"limit": limitRows, "slope": slopeRows, "drag": dragRowsOf,
		"flap-turn": func(t *testing.T, _ string, in inputs) float64 {
			turn := func(name string) float64 {
				return FlapTurn(in.number(t, "chord"), in.number(t, name)*degree, false) / degree
			}
			return turn("to") - turn("from")
		},
		"flap-limit": func(t *testing.T, _ string, in inputs) float64 {
			return FlapLimitGain(in.number(t, "chord"), in.number(t, "angle")*degree)
		},
	})
	checkPublished(t, "ladson_tm4074", map[string]formula{"slope": slopeRows})
	checkPublished(t, "timmer_roughness", map[string]formula{"tape-limit": tapeRows})
}

func TestMeasuredSections(t *testing.T) {
	t.Parallel()
	checkPublished(t, "low_speed_airfoil_data", map[string]formula{
		"limit": limitRows, "slope": slopeRows, "zero-lift": zeroRows, "drag": dragRowsOf, "tape-limit": tapeRows,
		"tape-drag": func(t *testing.T, _ string, in inputs) float64 {
			return Roughness{Insects: true}.Effect(in.number(t, "reynolds")).Drag
		},
		"break": byReynolds(func(s planform.Section, re float64) float64 { return StallBreak(s, re).Remaining }),
	})
}

func TestPublishedOrdinates(t *testing.T) {
	t.Parallel()
	checkPublished(t, "section_ordinates", map[string]formula{
		"thickness":          figure(func(s planform.Section) float64 { return Shape(s).Thickness }),
		"thickness-position": figure(func(s planform.Section) float64 { return Shape(s).ThicknessPosition }),
		"camber":             figure(func(s planform.Section) float64 { return Shape(s).Camber }),
		"camber-position":    figure(func(s planform.Section) float64 { return Shape(s).CamberPosition }),
		"nose-radius":        figure(func(s planform.Section) float64 { return Shape(s).NoseRadius }),
		"edge":               figure(func(s planform.Section) float64 { return Shape(s).TrailingEdgeThickness }),
		"zero-lift":          zeroRows, "moment": figure(Moment), "limit": limitRows,
	})
}

// lines are mean lines that no four-digit section has.
var lines = map[string]func(x float64) float64{
	"arc": func(x float64) float64 { return 0.08 * x * (1 - x) },
	"23012": func(x float64) float64 {
		if x <= 0.2025 {
			return 2.6595 * (x*x*x - 0.6075*x*x + 0.11471*x)
		}
		return 0.02208 * (1 - x)
	},
}

func TestThinAerofoilTheory(t *testing.T) {
	t.Parallel()
	line := func(f func(planform.Section) float64) formula {
		return func(_ *testing.T, _ string, in inputs) float64 {
			return f(planform.Section{Family: planform.FamilyOwn, Outline: outlineOf(0.12, lines[in["line"]], 120)})
		}
	}
	checkPublished(t, "thin_aerofoil", map[string]formula{
		"zero-lift": zeroRows, "section-moment": figure(Moment),
		"mean-line-zero-lift": line(func(s planform.Section) float64 { return ZeroLiftAngle(s) / degree }),
		"mean-line-moment":    line(Moment),
		"flap-effectiveness":  func(t *testing.T, _ string, in inputs) float64 { return FlapEffectiveness(in.number(t, "chord")) },
		"flap-moment":         func(t *testing.T, _ string, in inputs) float64 { return FlapMoment(in.number(t, "chord")) },
	})
}
