package stability

import (
	"math"
	"testing"
)

func TestRollSettlesAtItsRate(t *testing.T) {
	t.Parallel()
	state, _, _ := jet()
	r := Rolling{Power: 0.25, Damping: -0.45, Angle: 0.3}
	if want := 0.25 * 0.3 / 0.45; !near(r.Ratio(), want, 1e-12) || !near(r.Rate(30, 2), want*30, 1e-12) {
		t.Errorf("%g rad, %g rad/s", r.Ratio(), r.Rate(30, 2))
	}
	tau := must(r.TimeConstant(state))
	_, _, lateral := jet()
	state.Inertia.Product = 0
	if f := must(lateral.Dimensional(state)); !near(-1/tau, f.LP, 1e-12) {
		t.Errorf("time constant %g against %g", tau, -1/f.LP)
	}
	opposite := r
	opposite.Angle = -r.Angle
	if opposite.Ratio() != -r.Ratio() || must(opposite.TimeToBank(1, state)) != must(r.TimeToBank(1, state)) {
		t.Error("port and starboard differ")
	}
	if (Rolling{0.2, 0, 0.3}).Ratio() != 0 || r.Rate(30, 0) != 0 {
		t.Error("no damping or no span must give nothing")
	}
}

// The bank after the time found, by stepping the equation of motion, must be the bank asked for.
func TestTimeToBankByStepping(t *testing.T) {
	t.Parallel()
	state, _, _ := jet()
	r := Rolling{Power: 0.25, Damping: -0.45, Angle: 0.3}
	tau, rate := must(r.TimeConstant(state)), r.Rate(state.Speed, state.Span)
	last := 0.0
	for _, bank := range []float64{math.Pi / 4, math.Pi / 3, math.Pi} {
		want := must(r.TimeToBank(bank, state))
		const steps = 200000
		p, angle, dt := 0.0, 0.0, want/steps
		for range steps {
			half := p + (rate-p)/tau*dt/2
			angle += half * dt
			p += (rate - half) / tau * dt
		}
		if !near(angle, bank, 1e-6) || want <= last || want < bank/rate {
			t.Errorf("bank %g after %g s: %g", bank, want, angle)
		}
		last = want
	}
}

// uniform is a straight wing with an aileron over its outer part.
func uniform() TwistingWing {
	return TwistingWing{
		Stiffness: 60, HalfSpan: 0.95, Chords: []float64{0.35, 0.32, 0.25}, AileronFrom: 0.55, AileronTo: 0.95, LiftSlope: 5, LiftControl: 2.8,
		MomentControl: -0.5,
	}
}

func pressureOf(t *testing.T, w TwistingWing) float64 {
	t.Helper()
	q, happens, err := w.ReversalPressure()
	if err != nil || !happens {
		t.Fatalf("%v, %v", happens, err)
	}
	return q
}

func TestReversalFollowsStiffnessAndSize(t *testing.T) {
	t.Parallel()
	base := pressureOf(t, uniform())
	stiff := uniform()
	stiff.Stiffness *= 4
	if got := pressureOf(t, stiff); !near(got, 4*base, 1e-12) || !near(SpeedOf(got, 1.2), 2*SpeedOf(base, 1.2), 1e-12) {
		t.Errorf("four times as stiff: %g, before %g", got, base)
	}
	large := uniform()
	large.HalfSpan *= 2
	for i := range large.Chords {
		large.Chords[i] *= 2
	}
	if got := pressureOf(t, large); !near(got*8, base, 1e-9) {
		t.Errorf("twice the size at one stiffness: %g, before %g", got, base)
	}
	cut := uniform()
	cut.AileronFrom, cut.AileronTo = 0.5512, 0.9487
	if got := pressureOf(t, cut); !near(got, base, 5e-3) {
		t.Errorf("ends between the strips: %g, before %g", got, base)
	}
}

// A narrow aileron at share n of a wing of even chord: q = K c_l/(-c_m a c^2 s (1/2 - n^2/6)), so that it reverses later the further out it lies.
func TestReversalOfANarrowAileron(t *testing.T) {
	t.Parallel()
	for _, n := range []float64{0.2, 0.5, 0.9} {
		w := TwistingWing{50, 0.8, []float64{0.3, 0.3}, n - 0.005, n + 0.005, 5, 3, -0.6}
		want := 50 * 3 / (0.6 * 5 * 0.09 * 0.8 * (0.5 - n*n/6))
		if got := pressureOf(t, w); !near(got, want, 2e-3) {
			t.Errorf("at %g: %g, want %g", n, got, want)
		}
	}
}

// solveTwist solves the wing in strips with the lift that its twist makes, elastic axis at a share of the chord aft of the quarter chord, and returns the
// rolling moment over that of the rigid aileron. It goes another way than ReversalPressure: by iterating the twist along the span.
func solveTwist(w TwistingWing, pressure, aft float64) float64 {
	const strips = 120
	step, twist := w.HalfSpan/strips, [strips]float64{}
	inside := func(i int) float64 {
		if share := (float64(i) + 0.5) / strips; share > w.AileronFrom && share < w.AileronTo {
			return 1
		}
		return 0
	}
	chord := func(i int) float64 { return w.chordAt((float64(i) + 0.5) / strips) }
	for range 400 {
		torque, angle := [strips]float64{}, 0.0
		for i := strips - 1; i >= 0; i-- {
			c := chord(i)
			lift := w.LiftSlope*twist[i] + w.LiftControl*inside(i)
			torque[i] = pressure * c * c * (aft*lift + w.MomentControl*inside(i)) * step
			if i < strips-1 {
				torque[i] += torque[i+1]
			}
		}
		for i := range twist {
			angle += torque[i] * step / (w.Stiffness * w.HalfSpan)
			twist[i] = angle
		}
	}
	elastic, rigid := 0.0, 0.0
	for i := range twist {
		y := (float64(i) + 0.5) * step
		elastic += chord(i) * y * (w.LiftSlope*twist[i] + w.LiftControl*inside(i))
		rigid += chord(i) * y * w.LiftControl * inside(i)
	}
	return elastic / rigid
}

// The lift that the twist makes is left out of ReversalPressure: it must not cost more than 6 % of pressure, 3 % of speed.
func TestReversalAgainstTheWingThatTwists(t *testing.T) {
	t.Parallel()
	for _, aft := range []float64{0, 0.05, 0.1, 0.15} {
		w := uniform()
		q := pressureOf(t, w)
		low, high := 0.0, 1.6*q
		for range 50 {
			if middle := (low + high) / 2; solveTwist(w, middle, aft) > 0 {
				low = middle
			} else {
				high = middle
			}
		}
		if off := low/q - 1; math.Abs(off) > 0.06 || (aft == 0 && math.Abs(off) > 0.01) {
			t.Errorf("elastic axis %g aft: reversal at %.1f Pa, %.1f %% off %.1f", aft, low, 100*off, q)
		}
		if got := solveTwist(w, q/2, 0); !near(got, AileronEffectiveness(q/2, q, 0), 0.02) {
			t.Errorf("half the pressure leaves %g", got)
		}
	}
}

func TestWingsThatDoNotReverse(t *testing.T) {
	t.Parallel()
	for name, spoil := range map[string]func(*TwistingWing){
		"no moment": func(w *TwistingWing) { w.MomentControl = 0 }, "moment the other way": func(w *TwistingWing) { w.MomentControl = 0.5 },
	} {
		w := uniform()
		spoil(&w)
		if q, happens, err := w.ReversalPressure(); happens || err != nil {
			t.Errorf("%s: %g, %v", name, q, err)
		}
	}
	if _, happens := SectionReversalPressure(100, 1, 1, 5, 3, 0.2); happens {
		t.Error("a section with a helpful moment does not reverse")
	}
	for name, spoil := range map[string]func(*TwistingWing){
		"stiffness": func(w *TwistingWing) { w.Stiffness = 0 }, "one chord": func(w *TwistingWing) { w.Chords = w.Chords[:1] },
		"negative chord": func(w *TwistingWing) { w.Chords = []float64{0.3, -0.1} }, "chord": func(w *TwistingWing) { w.Chords = []float64{0.3, math.NaN()} },
		"endless chord": func(w *TwistingWing) { w.Chords = []float64{0.3, math.Inf(1)} },
		"aileron":       func(w *TwistingWing) { w.AileronTo = w.AileronFrom }, "beyond": func(w *TwistingWing) { w.AileronTo = 2.5 },
		"inside": func(w *TwistingWing) { w.AileronFrom = -2 }, "slope": func(w *TwistingWing) { w.LiftSlope = math.NaN() },
		"control": func(w *TwistingWing) { w.LiftControl = math.Inf(1) }, "no wing": func(w *TwistingWing) { w.Chords = []float64{0, 0} },
	} {
		w := uniform()
		spoil(&w)
		if q, _, err := w.ReversalPressure(); err == nil {
			t.Errorf("%s: %g without an error", name, q)
		}
	}
}

func TestEffectiveness(t *testing.T) {
	t.Parallel()
	for _, test := range []struct{ q, reversal, divergence, want float64 }{
		{0, 100, 0, 1}, {50, 100, 0, 0.5}, {100, 100, 0, 0}, {150, 100, 0, -0.5}, {50, 0, 0, 1}, {50, 100, 200, 0.5 / 0.75}, {200, 100, 200, 0},
		{300, 100, 200, 0}, {50, 100, 100, 1},
	} {
		if got := AileronEffectiveness(test.q, test.reversal, test.divergence); !near(got, test.want, 1e-12) {
			t.Errorf("%+v: %g", test, got)
		}
	}
	if SpeedOf(100, 0) != 0 || SpeedOf(-1, 1) != 0 {
		t.Error("no speed without air or pressure")
	}
}

func FuzzRolling(f *testing.F) {
	f.Add(0.25, -0.45, 0.3, 1.0, 60.0, 0.3, 0.2, -0.5)
	f.Fuzz(func(t *testing.T, power, damping, angle, bank, stiffness, chord, from, moment float64) {
		state, _, _ := jet()
		if v, err := (Rolling{power, damping, angle}).TimeToBank(bank, state); err == nil && checkResult(v) != nil {
			t.Errorf("time %g", v)
		}
		w := TwistingWing{stiffness, 1, []float64{chord, chord / 2}, from, from + 0.3, 5, 3, moment}
		if q, _, err := w.ReversalPressure(); err == nil && checkResult(q) != nil {
			t.Errorf("pressure %g", q)
		}
		if k, err := (Box{chord, bank, stiffness, 1e9}).TwistStiffness(1); err == nil && checkResult(k) != nil {
			t.Errorf("stiffness %g", k)
		}
	})
}
