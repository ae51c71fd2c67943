package aeroelastic

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pitgate/server/physics/structure"
)

// near fails when two numbers differ by more than a tolerance.
func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %.9g, want %.9g within %.2g", what, got, want, tolerance)
	}
}

func glider() Wing {
	return Wing{Stiffness: 40, HalfSpan: 0.8, Chords: []float64{0.28, 0.22, 0.12}, Axis: 0.38, LiftSlope: 4.8}
}

func mustDiverge(t *testing.T, w Wing) Divergence {
	t.Helper()
	d, err := w.Divergence()
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// tipSlope integrates the twist from the root with a slope of 1 and returns the slope at the tip: 0 at divergence.
func tipSlope(w Wing, pressure float64) float64 {
	const steps = 4000
	h := w.HalfSpan / steps
	bend := func(y, theta float64) float64 {
		c := w.chordAt(y / w.HalfSpan)
		return -pressure * c * c * (w.Axis - aerodynamicCentre) * w.LiftSlope * theta / (w.Stiffness * w.HalfSpan)
	}
	theta, slope := 0.0, 1.0
	for i := range steps {
		y := (float64(i) + 0.5) * h
		middle := theta + slope*h/2
		slope += bend(y, middle) * h
		theta = middle + slope*h/2
	}
	return slope
}

// The iteration finds the pressure at which the differential equation of the twisting wing has a solution, which is another way to it.
func TestDivergenceAgainstTheDifferentialEquation(t *testing.T) {
	t.Parallel()
	tapered, straight := glider(), glider()
	straight.Chords = []float64{0.2, 0.2}
	for _, w := range []Wing{tapered, straight} {
		q := mustDiverge(t, w).Pressure
		low, high := 0.5*q, 2*q
		if tipSlope(w, low) <= 0 || tipSlope(w, high) >= 0 {
			t.Fatalf("no root between %v and %v", low, high)
		}
		for range 60 {
			if middle := (low + high) / 2; tipSlope(w, middle) > 0 {
				low = middle
			} else {
				high = middle
			}
		}
		near(t, "pressure over that of the equation", q/low, 1, 1e-3)
	}
}

func TestDivergenceFollowsStiffnessAxisAndSize(t *testing.T) {
	t.Parallel()
	base := mustDiverge(t, glider())
	stiff, back, large := glider(), glider(), glider()
	stiff.Stiffness *= 3
	near(t, "three times as stiff", mustDiverge(t, stiff).Pressure, 3*base.Pressure, 1e-6)
	back.Axis = 0.51
	near(t, "twice the arm", mustDiverge(t, back).Pressure, base.Pressure/2, 1e-6)
	large.HalfSpan, large.Chords, large.Stiffness = 1.6, []float64{0.56, 0.44, 0.24}, 320
	near(t, "twice as large, eight times as stiff", mustDiverge(t, large).Pressure, base.Pressure, 1e-6)
	near(t, "speed", base.Speed(1.225), math.Sqrt(2*base.Pressure/1.225), 1e-9)
	ahead := glider()
	ahead.Axis = 0.25
	if d := mustDiverge(t, ahead); d.Happens || d.Speed(1.2) != 0 || !d.Inside {
		t.Errorf("%+v: an axis on the aerodynamic centre never diverges", d)
	}
	forward := glider()
	forward.Sweep = -0.2
	if mustDiverge(t, forward).Inside {
		t.Error("swept forward is outside the method")
	}
	if _, happens := SectionDivergencePressure(10, 1, -0.1, 5); happens {
		t.Error("a section balanced ahead never diverges")
	}
}

func TestFinFlutterFollowsThicknessAndStiffness(t *testing.T) {
	t.Parallel()
	fin := PlateFin{0.2, 0.12, 0.18, 0.003, 3.5e9}
	speed := func(f PlateFin) float64 {
		r, err := f.Flutter(101325, 340)
		if err != nil {
			t.Fatal(err)
		}
		return r.Speed
	}
	base := speed(fin)
	thick, stiff, long, large := fin, fin, fin, fin
	thick.Thickness *= 2
	near(t, "twice as thick", speed(thick), base*math.Pow(2, 1.5), 1e-9*base)
	stiff.ShearModulus *= 4
	near(t, "four times as stiff", speed(stiff), 2*base, 1e-9*base)
	large.Root, large.Tip, large.Span, large.Thickness = 0.4, 0.24, 0.36, 0.006
	near(t, "same shape", speed(large), base, 1e-9*base)
	long.Span *= 1.5
	if speed(long) >= base {
		t.Error("a longer fin flutters sooner")
	}
	long.Span = 0.6
	if r, err := long.Flutter(101325, 340); err != nil || r.Inside {
		t.Errorf("%+v, %v: too slender for the method", r, err)
	}
}

// Slopes by quadrature of the loading of a flapped thin aerofoil: another way than the closed form.
func TestHingeSlopesByQuadrature(t *testing.T) {
	t.Parallel()
	const pieces = 20000
	for _, ratio := range []float64{0.12, 0.22, 0.35, 0.6} {
		f := math.Acos(2*ratio - 1)
		incidence, angle := 0.0, 0.0
		for i := range pieces {
			o := f + (math.Pi-f)*(float64(i)+0.5)/pieces
			arm, dx := (math.Cos(f)-math.Cos(o))/2, math.Sin(o)/2*(math.Pi-f)/pieces
			nose := (1 + math.Cos(o)) / math.Sin(o)
			incidence -= 4 * nose * arm * dx
			load := 4 * (1 - f/math.Pi) * nose
			load += 4 / math.Pi * math.Log(math.Abs(math.Sin((o+f)/2)/math.Sin((o-f)/2)))
			angle -= load * arm * dx
		}
		a, d := HingeSlopes(ratio)
		near(t, "incidence", a, incidence/(ratio*ratio), 2e-4)
		near(t, "angle", d, angle/(ratio*ratio), 2e-4)
	}
	a, d := HingeSlopes(1)
	near(t, "whole chord", a, -math.Pi/2, 1e-12)
	near(t, "whole chord, angle", d, -math.Pi/2, 1e-12)
	if a, d := HingeSlopes(0); a != 0 || d != 0 {
		t.Error("no flap, no moment")
	}
	near(t, "taper of none", TaperedMomentArea(0.4, 0.06, 0.06), 0.4*0.06*0.06, 1e-15)
	near(t, "taper to a point", TaperedMomentArea(3, 1, 0), 1, 1e-15)
}

func aileron() (Linkage, Control) {
	return Linkage{Torque: 0.3, Count: 1, ServoArm: 0.012, HornArm: 0.018},
		Control{MomentArea: 0.4 * 0.06 * 0.06, ChordRatio: 0.2, Throw: degrees(15), Incidence: degrees(5)}
}

func TestServoHoldsUpToItsSpeed(t *testing.T) {
	t.Parallel()
	l, c := aileron()
	h, err := l.Limits(c, 4, 1.225)
	if err != nil || !h.Travel.Reached || h.RodKnown {
		t.Fatalf("%+v, %v", h, err)
	}
	moment, err := c.HingeMoment(0.5*1.225*h.ServoStallSpeed*h.ServoStallSpeed, 4)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "torque at the stall", moment*h.Travel.Ratio, 0.3, 1e-9)
	near(t, "with reserve", h.ServoSpeed, h.ServoStallSpeed/math.Sqrt(TorqueReserve), 1e-9)
	two := l
	two.Count = 2
	twice, _ := two.Limits(c, 4, 1.225)
	near(t, "two servos", twice.ServoSpeed, h.ServoSpeed*math.Sqrt2, 1e-9)
	heavy := c
	heavy.MassMoment = 0.002
	loaded, _ := l.Limits(heavy, 10, 1.225)
	if loaded.ServoSpeed >= h.ServoSpeed {
		t.Error("a control that is not balanced takes from the servo")
	}
	heavy.MassMoment = 1
	if gone, err := l.Limits(heavy, 10, 1.225); err != nil || gone.ServoSpeed != 0 {
		t.Errorf("%+v, %v: its weight takes all", gone, err)
	}
}

func TestTravelOfALinkage(t *testing.T) {
	t.Parallel()
	even := Linkage{Torque: 1, Count: 1, ServoArm: 0.015, HornArm: 0.015}
	tr, err := even.Travel(degrees(30))
	if err != nil || !tr.Reached {
		t.Fatalf("%+v, %v", tr, err)
	}
	near(t, "angle", tr.ServoAngle, degrees(30), 1e-12)
	near(t, "ratio", tr.Ratio, 1, 1e-12)
	last := 1.0
	for _, throw := range []float64{5, 15, 25, 35} {
		l := Linkage{Torque: 1, Count: 1, ServoArm: 0.012, HornArm: 0.018}
		tr, err := l.Travel(degrees(throw))
		if err != nil || !tr.Reached || tr.Ratio >= last {
			t.Errorf("%+v after %v, %v", tr, last, err)
		}
		// Work in is work out: the ratio is the control's turn for the servo's.
		more, _ := l.Travel(degrees(throw) + 1e-6)
		near(t, "ratio by differences", 1e-6/(more.ServoAngle-tr.ServoAngle), tr.Ratio, 1e-5)
		last = tr.Ratio
	}
	if tr, err := (Linkage{Torque: 1, Count: 1, ServoArm: 0.005, HornArm: 0.02}).Travel(degrees(30)); err != nil || tr.Reached || tr.Ratio != 0.25 {
		t.Errorf("%+v, %v: an arm too short", tr, err)
	}
}

func TestSlenderRodsBuckleFirst(t *testing.T) {
	t.Parallel()
	steel, _ := structure.FindMaterial("steel wire")
	l, c := aileron()
	last := math.Inf(1)
	for _, length := range []float64{0.01, 0.1, 0.3, 0.9} {
		l.RodLength, l.RodDiameter, l.RodMaterial = length, 0.0015, steel
		h, err := l.Limits(c, 1, 1.225)
		if err != nil || !h.RodKnown || h.RodSpeed > last {
			t.Errorf("%v m: %+v, %v", length, h, err)
		}
		last = h.RodSpeed
	}
	// pi^3 E d^4/(64 L^2) for a rod of 1.5 mm and 0.9 m: 0.621 N.
	h, _ := l.Limits(c, 1, 1.225)
	near(t, "Euler's load", h.RodLoad, math.Pi*math.Pi*math.Pi*205e9*math.Pow(0.0015, 4)/(64*0.81), 1e-9)
	if h.RodSpeed >= h.ServoSpeed {
		t.Error("a rod as long and thin gives in before the servo")
	}
	l.RodDiameter = 0
	if _, err := l.Limits(c, 1, 1.225); !errors.Is(err, ErrInput) || !strings.Contains(err.Error(), "rodDiameter") {
		t.Errorf("%v", err)
	}
}

func TestFreePlay(t *testing.T) {
	t.Parallel()
	angle, err := FreePlay(0.001, 0.05)
	if err != nil || angle != 0.02 || angle < SlackLimit {
		t.Errorf("%v, %v", angle, err)
	}
	for field, err := range map[string]error{"freePlay": second(FreePlay(-1, 1)), "flap chord": second(FreePlay(1, 0))} {
		if !errors.Is(err, ErrInput) || !strings.Contains(err.Error(), field) {
			t.Errorf("%s: %v", field, err)
		}
	}
}

func second(_ float64, err error) error { return err }

func TestNeverExceedIsTheLeastWithItsMargin(t *testing.T) {
	t.Parallel()
	terms := []Term{
		{KindRule, "pack", 89, true}, {KindDivergence, "wing", 100, true}, {KindFlutter, "fin", 95, false}, {KindServo, "aileron", 78, true},
		{KindReversal, "aileron", 103, true},
	}
	l, err := NeverExceed(terms)
	if err != nil || !l.Known || l.Governs.Kind != KindFlutter || l.Sure {
		t.Fatalf("%+v, %v", l, err)
	}
	near(t, "speed", l.Speed, 0.8*95, 1e-12)
	for i := 1; i < len(l.Terms); i++ {
		if l.Terms[i].Permitted() < l.Terms[i-1].Permitted() {
			t.Errorf("%+v is out of order", l.Terms)
		}
	}
	without, err := NeverExceed(terms[3:])
	if err != nil || without.Governs.Kind != KindServo || !without.Sure || without.Speed != 78 {
		t.Errorf("%+v, %v", without, err)
	}
	reserve, known := l.DiveReserve(60)
	if !known {
		t.Error("reserve is known")
	}
	near(t, "reserve", reserve, 76.0/60, 1e-12)
	none, err := NeverExceed(nil)
	if _, known := none.DiveReserve(60); none.Known || known || err != nil {
		t.Errorf("%+v, %v", none, err)
	}
	if _, err := NeverExceed([]Term{{KindRod, "", math.NaN(), true}}); !errors.Is(err, ErrInput) || !strings.Contains(err.Error(), "pushrod") {
		t.Errorf("%v", err)
	}
}

// The linkage is told of up to a right angle and of nothing beyond.
func TestTravelUpToARightAngle(t *testing.T) {
	t.Parallel()
	even := Linkage{Torque: 1, Count: 1, ServoArm: 0.02, HornArm: 0.02}
	for throw, ok := range map[float64]bool{0: true, 85: true, 89.9: true, 90.1: false, 120: false} {
		tr, err := even.Travel(degrees(throw))
		if (err == nil) != ok {
			t.Errorf("%g degrees: %v", throw, err)
		}
		if ok {
			near(t, "arms alike turn alike", tr.Ratio, 1, 1e-9)
		}
	}
}
