package stability

import (
	"errors"
	"math"
	"strings"
	"testing"
)

// tailed is the pitch control of the model of jet, canard the same with the control ahead of the wing.
func tailed() Pitch {
	return Pitch{LiftSlope: 4.6, MomentSlope: -0.46, MomentZero: 0.02, LiftControl: 0.35, MomentControl: -0.9, PitchDamping: -9, LiftPitchRate: 5}
}

func canard() Pitch {
	p := tailed()
	p.MomentControl, p.LiftControl = 0.7, 0.2
	return p
}

func TestTrimTakesTheMomentAway(t *testing.T) {
	t.Parallel()
	for name, p := range map[string]Pitch{"tail": tailed(), "canard": canard()} {
		for _, lift := range []float64{-0.5, 0, 0.3, 1.2} {
			for _, extra := range []float64{-0.05, 0, 0.1} {
				trim := must(p.Trim(lift, extra))
				gotLift := p.LiftSlope*trim.Incidence + p.LiftControl*trim.Control
				moment := p.MomentZero + extra + p.MomentSlope*trim.Incidence + p.MomentControl*trim.Control
				if math.Abs(gotLift-lift) > 1e-12 || math.Abs(moment) > 1e-12 {
					t.Errorf("%s at %g, %g: lift %g, moment %g", name, lift, extra, gotLift, moment)
				}
			}
		}
	}
}

// Slower flight of a stable model needs more nose-up control; at zero margin the angle does not depend on lift.
func TestTrimFollowsSpeedByTheMargin(t *testing.T) {
	t.Parallel()
	state, _, _ := jet()
	slope := func(margin float64) float64 {
		p := tailed()
		p.MomentSlope = MomentSlope(p.LiftSlope, margin)
		state.Speed = 20
		slow := must(p.TrimAt(state, 0))
		state.Speed = 40
		return slow.Control - must(p.TrimAt(state, 0)).Control
	}
	if got := slope(0.1); !(got < 0) {
		t.Errorf("stable: slower flight changes the angle by %g", got)
	}
	if got := slope(0); math.Abs(got) > 1e-15 {
		t.Errorf("neutral: %g", got)
	}
	if got := slope(-0.1); !(got > 0) {
		t.Errorf("unstable: %g", got)
	}
}

func TestThrustBelowTheBalanceAsksForDownControl(t *testing.T) {
	t.Parallel()
	state, _, _ := jet()
	level, below := must(tailed().TrimAt(state, 0)), must(tailed().TrimAt(state, 3))
	if !(below.Control > level.Control) {
		t.Errorf("nose-up thrust: %g after %g", below.Control, level.Control)
	}
}

// The pull-up solved as two equations in incidence and control must give what Sensitivity gives.
func TestSensitivityAgainstThePullUpItself(t *testing.T) {
	t.Parallel()
	state, _, _ := jet()
	for name, p := range map[string]Pitch{"tail": tailed(), "canard": canard()} {
		weight := state.Mass * state.Gravity / (state.Pressure() * state.Area)
		pull := func(load float64) float64 {
			rate := (load - 1) * state.Gravity / state.Speed * state.Chord / (2 * state.Speed)
			return must(p.Trim(load*weight-p.LiftPitchRate*rate, p.PitchDamping*rate)).Control
		}
		s := must(p.Sensitivity(state))
		if want := pull(4) - pull(3); !near(s.AnglePerLoad, want, 1e-9) {
			t.Errorf("%s: %.8f rad a g, want %.8f", name, s.AnglePerLoad, want)
		}
		if up := math.Signbit(s.AnglePerLoad) == math.Signbit(p.MomentControl); s.Reversed || !up {
			t.Errorf("%s: %+v", name, s)
		}
		if !near(s.LoadPerDegree*math.Abs(s.AnglePerLoad)*180/math.Pi, 1, 1e-12) {
			t.Errorf("%s: %+v", name, s)
		}
		if !near(s.LoadAtThrow(-2*s.AnglePerLoad), 3, 1e-12) {
			t.Errorf("%s: load at two g of throw %g", name, s.LoadAtThrow(2*s.AnglePerLoad))
		}
	}
}

func TestManoeuvrePoint(t *testing.T) {
	t.Parallel()
	state, _, _ := jet()
	p := tailed()
	shift := must(p.ManoeuvreShift(state))
	if !(shift > 0) {
		t.Fatalf("manoeuvre point %g aft of the neutral point", shift)
	}
	p.MomentSlope = MomentSlope(p.LiftSlope, -shift*0.999)
	if s := must(p.Sensitivity(state)); s.Reversed || s.LoadPerDegree < 50 {
		t.Errorf("just ahead: %+v", s)
	}
	p.MomentSlope = MomentSlope(p.LiftSlope, -shift*1.001)
	if s := must(p.Sensitivity(state)); !s.Reversed || s.LoadPerDegree != 0 {
		t.Errorf("just behind: %+v", s)
	}
}

// Load per degree grows with the square of speed; a forward balance point makes it smaller.
func TestSensitivityFollowsSpeedAndMargin(t *testing.T) {
	t.Parallel()
	state, _, _ := jet()
	p := tailed()
	slow := must(p.Sensitivity(state))
	state.Speed *= 2
	fast := must(p.Sensitivity(state))
	if !near(fast.LoadPerDegree, 4*slow.LoadPerDegree, 1e-12) {
		t.Errorf("%g at twice the speed of %g", fast.LoadPerDegree, slow.LoadPerDegree)
	}
	p.MomentSlope *= 2
	if nose := must(p.Sensitivity(state)); nose.LoadPerDegree >= fast.LoadPerDegree {
		t.Errorf("nose heavy %g, before %g", nose.LoadPerDegree, fast.LoadPerDegree)
	}
}

func TestThrowReduction(t *testing.T) {
	t.Parallel()
	for _, test := range []struct{ load, limit, want float64 }{{8, 4, 0.5}, {4, 4, 1}, {1, 4, 1}, {0, 4, 1}, {8, 0, 1}, {math.NaN(), 4, 1}, {8, math.NaN(), 1}} {
		if got := ThrowReduction(test.load, test.limit); got != test.want {
			t.Errorf("%+v: %g", test, got)
		}
	}
}

func TestReserve(t *testing.T) {
	t.Parallel()
	tail, head := Throw{NoseUp: -0.4, NoseDown: 0.3}, Throw{NoseUp: 0.3, NoseDown: -0.25}
	for _, test := range []struct {
		throw Throw
		angle float64
		want  float64
		up    bool
	}{
		{tail, 0, 1, false}, {tail, -0.1, 0.75, true}, {tail, -0.4, 0, true}, {tail, -0.6, -0.5, true}, {tail, 0.15, 0.5, false}, {tail, -9, -1, true},
		{head, 0.15, 0.5, true}, {head, -0.05, 0.8, false}, {Throw{}, 0.1, -1, false}, {Throw{NoseUp: -0.3}, 0.1, -1, false},
	} {
		if got := test.throw.Reserve(test.angle); !near(got, test.want, 1e-12) {
			t.Errorf("%+v: %g", test, got)
		}
		if got := test.throw.UsesNoseUp(test.angle); test.throw != (Throw{}) && got != test.up {
			t.Errorf("%+v: nose up %v", test, got)
		}
	}
}

func TestControlWithoutPowerIsRefused(t *testing.T) {
	t.Parallel()
	state, _, _ := jet()
	p := tailed()
	p.MomentControl, p.LiftControl = 0, 0
	if _, err := p.Trim(0.3, 0); !errors.Is(err, ErrOutOfRange) {
		t.Errorf("trim: %v", err)
	}
	if _, err := p.Sensitivity(state); !errors.Is(err, ErrOutOfRange) {
		t.Errorf("sensitivity: %v", err)
	}
	state.Chord = 0
	if _, err := tailed().TrimAt(state, 0); !errors.Is(err, ErrInput) || !strings.Contains(err.Error(), "chord") {
		t.Errorf("chord: %v", err)
	}
	if _, err := tailed().ManoeuvreShift(state); !errors.Is(err, ErrInput) {
		t.Errorf("chord: %v", err)
	}
}

func FuzzControl(f *testing.F) {
	f.Add(4.6, -0.46, 0.02, 0.35, -0.9, -9.0, 5.0, 30.0)
	f.Add(0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 1e-9)
	f.Fuzz(func(t *testing.T, slope, moment, zero, liftControl, control, damping, rate, speed float64) {
		p := Pitch{slope, moment, zero, liftControl, control, damping, rate}
		state, _, _ := jet()
		state.Speed = speed
		if trim, err := p.TrimAt(state, 2); err == nil && checkResult(trim.Control, trim.Incidence) != nil {
			t.Errorf("%+v", trim)
		}
		if s, err := p.Sensitivity(state); err == nil && checkResult(s.AnglePerLoad, s.LoadPerDegree, s.ManoeuvreMargin) != nil {
			t.Errorf("%+v", s)
		}
		end := RampEnd{State: state, Pitch: p, Throw: Throw{-0.4, 0.3}, Push: Push{Thrust: 80, Z: 0.1}, Steady: true}
		if l, err := end.LaunchTrim(); err == nil && math.IsNaN(l.Control+l.Reserve+l.Acceleration+l.NoseUpLeft) {
			t.Errorf("%+v", l)
		}
		roll := Roll{State: state, Pitch: p, Throw: Throw{-0.4, 0.3}, Push: Push{Thrust: 80}, WheelX: 0.05, GroundZ: -0.3, Friction: 0.1}
		if l, err := roll.LaunchTrim(); err == nil && math.IsNaN(l.Control+l.Reserve+l.NoseDownLeft) {
			t.Errorf("%+v", l)
		}
		if v, _, err := roll.RotationSpeed(); err == nil && checkResult(v) != nil {
			t.Errorf("rotation at %g", v)
		}
	})
}
