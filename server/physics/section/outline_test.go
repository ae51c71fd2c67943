package section

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pitgate/server/physics/planform"
)

// halfThickness is the thickness polynomial of NACA Report 460 with its open trailing edge.
func halfThickness(t, x float64) float64 {
	return 5 * t * (0.2969*math.Sqrt(x) - 0.1260*x - 0.3516*x*x + 0.2843*x*x*x - 0.1015*x*x*x*x)
}

// outlineOf draws the thickness of four-digit sections on a mean line, half the points on each side, close together at both ends.
func outlineOf(t float64, line func(x float64) float64, half int) []planform.OutlinePoint {
	var top, bottom []planform.OutlinePoint
	for i := range half + 1 {
		x := (1 - math.Cos(math.Pi*float64(i)/float64(half))) / 2
		top = append(top, planform.OutlinePoint{X: x, Z: line(x) + halfThickness(t, x)})
		bottom = append(bottom, planform.OutlinePoint{X: x, Z: line(x) - halfThickness(t, x)})
	}
	var out []planform.OutlinePoint
	for i := half; i >= 0; i-- {
		out = append(out, top[i])
	}
	return append(out, bottom[1:]...)
}

// fourDigitLine is the mean line of NACA Report 460.
func fourDigitLine(m, p float64) func(x float64) float64 {
	return func(x float64) float64 {
		if x < p {
			return m / (p * p) * (2*p*x - x*x)
		}
		return m / ((1 - p) * (1 - p)) * (1 - 2*p + 2*p*x - x*x)
	}
}

func near(t *testing.T, name string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %v, want %v within %v", name, got, want, tolerance)
	}
}

func TestOutlineGivesBackTheDigits(t *testing.T) {
	t.Parallel()
	for _, digits := range []string{"0006", "0009", "0012", "0018", "1410", "2412", "2415", "4412", "6409", "4306"} {
		plain := planform.Section{Designation: digits}
		camber, position := plain.EffectiveCamber()
		line := func(float64) float64 { return 0 }
		if camber > 0 {
			line = fourDigitLine(camber, position)
		}
		for _, half := range []int{30, 60, 150} {
			own := planform.Section{Family: planform.FamilyOwn, Outline: outlineOf(plain.EffectiveThickness(), line, half)}
			if err := Check(own.Outline); err != nil {
				t.Fatalf("%s with %d points: %v", digits, half, err)
			}
			got, want := Shape(own), Shape(plain)
			near(t, digits+" thickness", got.Thickness, want.Thickness, 3e-4)
			near(t, digits+" thickness position", got.ThicknessPosition, 0.3, 0.01)
			near(t, digits+" camber", got.Camber, want.Camber, 3e-4)
			if camber > 0 {
				near(t, digits+" camber position", got.CamberPosition, position, 0.015)
			}
			near(t, digits+" nose radius", got.NoseRadius, want.NoseRadius, 0.05*want.NoseRadius+1e-4)
			near(t, digits+" nose rise", got.NoseRise, want.NoseRise, 0.03*want.NoseRise)
			near(t, digits+" trailing edge", got.TrailingEdgeThickness, want.TrailingEdgeThickness, 1e-4)
			near(t, digits+" edge angle", got.TrailingEdgeAngle, want.TrailingEdgeAngle, 0.03)
			near(t, digits+" zero lift", ZeroLiftAngle(own)/degree, ZeroLiftAngle(plain)/degree, 0.03)
			near(t, digits+" moment", Moment(own), Moment(plain), 1e-3)
			table, own2 := MaximumLift(plain, 2e5, Roughness{}), MaximumLift(own, 2e5, Roughness{})
			near(t, digits+" limit", own2.Value, table.Value, 0.02)
			if own2.Inside != table.Inside || (own2.Inside && own2.Note != NoteOutline) || own2.Spread <= table.Spread {
				t.Errorf("%s: %+v, want marked as an outline and wider than %v", digits, own2, table.Spread)
			}
		}
	}
}

func TestSharpNoseLowersTheLimit(t *testing.T) {
	t.Parallel()
	lens := func(float64) float64 { return 0 }
	round := outlineOf(0.12, lens, 60)
	sharp := make([]planform.OutlinePoint, len(round))
	for i, p := range round {
		sharp[i] = planform.OutlinePoint{X: p.X, Z: math.Copysign(0.24*p.X*(1-p.X), p.Z)}
	}
	a, b := planform.Section{Outline: round}, planform.Section{Outline: sharp}
	if got, want := MaximumLift(b, 5e5, Roughness{}).Value, MaximumLift(a, 5e5, Roughness{}).Value; !(got < 0.85*want) {
		t.Errorf("sharp nose: %v, want well below %v", got, want)
	}
	if Shape(b).NoseRadius > 0.1*Shape(a).NoseRadius {
		t.Errorf("nose radius of a wedge: %v", Shape(b).NoseRadius)
	}
}

func TestOutlineOfAPlateAndASheet(t *testing.T) {
	t.Parallel()
	sheet := planform.Section{Outline: outlineOf(0.025, lines["arc"], 60)}
	for i := range sheet.Outline {
		sheet.Outline[i].Z *= 2.5 // an arc of 5 %
	}
	if f := Prepare(sheet); f.family == planform.FamilyCurvedSheet {
		t.Errorf("a section of 6 %% is no sheet: %+v", f.Shape)
	}
	thin := planform.Section{Outline: outlineOf(0.03, lines["arc"], 60)}
	plate := planform.Section{Outline: outlineOf(0.03, func(float64) float64 { return 0 }, 60)}
	if Prepare(thin).family != planform.FamilyCurvedSheet || Prepare(plate).family != planform.FamilyFlatPlate {
		t.Errorf("thin outlines: %v and %v", Prepare(thin).family, Prepare(plate).family)
	}
	reflex := planform.Section{Outline: outlineOf(0.1, func(x float64) float64 { return 0.02 / 0.12085 * x * (1 - x) * (0.875 - x) }, 80)}
	f := Prepare(reflex)
	near(t, "moment of the line without moment", f.Moment, 0, 1e-3)
	near(t, "its zero-lift angle", f.ZeroLift, ZeroLiftAngle(planform.Section{Family: planform.FamilyReflexed, Thickness: 0.1, Camber: 0.02}), 1e-3)
	if f.family != planform.FamilyReflexed {
		t.Errorf("reflexed outline taken as %q", f.family)
	}
}

// change returns a good outline with one thing wrong.
func change(f func(o []planform.OutlinePoint) []planform.OutlinePoint) []planform.OutlinePoint {
	return f(outlineOf(0.12, fourDigitLine(0.02, 0.4), 20))
}

func TestCheckRefusesByName(t *testing.T) {
	t.Parallel()
	type points = []planform.OutlinePoint
	set := func(i int, p planform.OutlinePoint) func(points) points {
		return func(o points) points { o[i] = p; return o }
	}
	scale := func(x, z float64) func(points) points {
		return func(o points) points {
			for i := range o {
				o[i].X, o[i].Z = x*o[i].X, z*o[i].Z
			}
			return o
		}
	}
	for name, c := range map[string]struct {
		outline points
		want    string
	}{
		"none":         {nil, "outline: needs"},
		"few":          {change(func(o points) points { return o[:9] }), "outline: needs"},
		"many":         {make(points, 2000), "outline: needs"},
		"no number":    {change(set(7, planform.OutlinePoint{X: math.NaN()})), "outline[7].x"},
		"no height":    {change(set(3, planform.OutlinePoint{X: 0.9, Z: math.Inf(1)})), "outline[3].z"},
		"twice":        {change(func(o points) points { o[5] = o[4]; return o }), "outline[5]: repeats"},
		"in per cent":  {change(scale(100, 100)), "outline[0].x"},
		"half a chord": {change(scale(0.5, 1)), "must be the trailing edge"},
		"shifted": {change(func(o points) points {
			for i := range o {
				o[i].X -= 0.2
			}
			return o
		}), "the nose lies at"},
		"open":          {change(func(o points) points { o[len(o)-1].Z = -0.3; return o }), "the outline is open"},
		"bottom first":  {change(func(o points) points { return Inverted(planform.Section{Outline: o}).Outline[:] })[:], ""},
		"mirrored":      {change(scale(1, -1)), "bottom first"},
		"turns back":    {change(func(o points) points { o[6].X, o[7].X = o[7].X, o[6].X; return o }), "turns back"},
		"crosses":       {change(func(o points) points { o[28].Z = 0.2; return o }), "crosses itself"},
		"a line":        {change(scale(1, 0.01)), "is a line"},
		"a ball":        {change(scale(1, 5)), "greatest thickness"},
		"only a bottom": {change(func(o points) points { return append(points{{X: 1, Z: 0.1}}, o[20:]...) }), "fewer than three points"},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			err := Check(c.outline)
			if c.want == "" {
				if err != nil {
					t.Fatalf("must pass, gives %v", err)
				}
				return
			}
			if err == nil || !errors.Is(err, planform.ErrImpossible) || !strings.Contains(err.Error(), c.want) {
				t.Fatalf("got %v, want one naming %q", err, c.want)
			}
		})
	}
	banana := outlineOf(0.1, func(x float64) float64 { return 1.4 * x * (1 - x) }, 40)
	if err := Check(banana); err == nil || !strings.Contains(err.Error(), "camber") {
		t.Errorf("a banana: %v", err)
	}
	bad := planform.Section{Designation: "0012", Outline: banana}
	if MaximumLift(bad, 2e5, Roughness{}) != MaximumLift(planform.Section{Designation: "0012"}, 2e5, Roughness{}) {
		t.Error("an outline that does not pass must leave the family's figures")
	}
}

func TestInvertedMirrors(t *testing.T) {
	t.Parallel()
	own := planform.Section{Family: planform.FamilyOwn, Outline: outlineOf(0.12, fourDigitLine(0.04, 0.4), 60)}
	for _, s := range []planform.Section{own, {Designation: "4412"}, {Family: planform.FamilyReflexed, Camber: 0.02}, {Family: planform.FamilyCurvedSheet}} {
		up := Inverted(s)
		near(t, "zero lift", ZeroLiftAngle(up), -ZeroLiftAngle(s), 1e-9)
		near(t, "moment", Moment(up), -Moment(s), 1e-9)
		near(t, "camber", Shape(up).Camber, -Shape(s).Camber, 1e-9)
		near(t, "limits mirror", MinimumLift(up, 2e5, Roughness{}).Value, -MaximumLift(s, 2e5, Roughness{}).Value, 1e-9)
		if down := MinimumLift(s, 2e5, Roughness{}); !(down.Value < 0) || -down.Value > MaximumLift(s, 2e5, Roughness{}).Value {
			t.Errorf("%+v: %+v downward, want less than upright", s.Family, down)
		}
	}
}

func TestRoundedAndCoarseOutlines(t *testing.T) {
	t.Parallel()
	plain := planform.Section{Designation: "2412"}
	rounded := outlineOf(0.12, fourDigitLine(0.02, 0.4), 50)
	for i := range rounded {
		rounded[i].Z = math.Round(rounded[i].Z*1e4) / 1e4
	}
	own := planform.Section{Outline: rounded}
	near(t, "rounded zero lift", ZeroLiftAngle(own)/degree, ZeroLiftAngle(plain)/degree, 0.1)
	near(t, "rounded nose", Shape(own).NoseRadius, Shape(plain).NoseRadius, 0.15*Shape(plain).NoseRadius)
	near(t, "rounded limit", MaximumLift(own, 2e5, Roughness{}).Value, MaximumLift(plain, 2e5, Roughness{}).Value, 0.02)
	coarse := planform.Section{Outline: outlineOf(0.12, fourDigitLine(0.02, 0.4), 6)}
	if err := Check(coarse.Outline); err != nil {
		t.Fatal(err)
	}
	near(t, "coarse thickness", Shape(coarse).Thickness, 0.12, 0.006)
	near(t, "coarse zero lift", ZeroLiftAngle(coarse)/degree, ZeroLiftAngle(plain)/degree, 0.3)
}

func TestTurnedAndShiftedOutlineReadsTheSame(t *testing.T) {
	t.Parallel()
	straight := planform.Section{Outline: outlineOf(0.12, fourDigitLine(0.04, 0.4), 80)}
	turned := planform.Section{}
	c, s := math.Cos(0.05), math.Sin(0.05)
	for _, p := range straight.Outline {
		turned.Outline = append(turned.Outline, planform.OutlinePoint{X: 0.02 + 0.97*(c*p.X+s*p.Z), Z: 0.01 + 0.97*(c*p.Z-s*p.X)})
	}
	if err := Check(turned.Outline); err != nil {
		t.Fatal(err)
	}
	a, b := Prepare(straight), Prepare(turned)
	near(t, "thickness", b.Shape.Thickness, a.Shape.Thickness, 1e-9)
	near(t, "camber", b.Shape.Camber, a.Shape.Camber, 1e-9)
	near(t, "nose radius", b.Shape.NoseRadius, a.Shape.NoseRadius, 1e-9)
	near(t, "zero lift", b.ZeroLift, a.ZeroLift, 1e-9)
	near(t, "moment", b.Moment, a.Moment, 1e-9)
}
