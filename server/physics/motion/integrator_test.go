package motion

import (
	"errors"
	"math"
	"testing"
)

// oscillator is a spring of unit frequency: place and speed.
func oscillator(_ float64, s State) State { return State{s[1], -s[0]} }

func TestIntegratorAgainstTheOscillator(t *testing.T) {
	t.Parallel()
	for _, tolerance := range []float64{1e-6, 1e-9, 1e-12} {
		s, err := Integrator{Tolerance: tolerance}.Solve(oscillator, 0, State{1}, 20)
		if err != nil {
			t.Fatal(err)
		}
		for at := 0.0; at <= 20; at += 0.37 {
			if off := math.Abs(s.At(at)[0] - math.Cos(at)); off > 300*tolerance {
				t.Errorf("tolerance %g: off by %g at %g", tolerance, off, at)
			}
		}
	}
}

func TestMethodIsOfFifthOrder(t *testing.T) {
	t.Parallel()
	off := func(steps int) float64 {
		s, h := State{1}, 4/float64(steps)
		var k stages
		for i := range steps {
			k[0] = oscillator(0, s)
			s, _ = attempt(oscillator, float64(i)*h, &s, h, &k, Dimensions, 1)
		}
		return math.Abs(s[0]-math.Cos(4)) + math.Abs(s[1]+math.Sin(4))
	}
	for _, steps := range []int{20, 40, 80} {
		if ratio := off(steps) / off(2*steps); ratio < 28 || ratio > 37 {
			t.Errorf("halving the step of %d divides the error by %.1f, want about 32", steps, ratio)
		}
	}
}

func TestDenseOutputIsOfFourthOrder(t *testing.T) {
	t.Parallel()
	off := func(h float64) float64 {
		from := State{1}
		k := stages{oscillator(0, from)}
		to, _ := attempt(oscillator, 0, &from, h, &k, 2, 1)
		p := piece{places: 2}
		p.prepare(0, h, &from, &to, &k)
		worst := 0.0
		for i := 1; i < 20; i++ {
			at := h * float64(i) / 20
			worst = max(worst, math.Abs(p.at(at)[0]-math.Cos(at)))
		}
		return worst
	}
	if ratio := off(0.4) / off(0.2); ratio < 28 || ratio > 70 {
		t.Errorf("halving the step divides the error within it by %.1f, want at least the 32 of a local fourth-order method", ratio)
	}
}

func TestEventsAreFoundToTheMicrosecond(t *testing.T) {
	t.Parallel()
	events := []Event{
		{Value: func(_ float64, s State) float64 { return s[0] }, Direction: Falling},
		{Value: func(_ float64, s State) float64 { return s[0] - 0.5 }},
		{Value: func(_ float64, s State) float64 { return s[1] - 0.999 }, Direction: Rising, Terminal: true},
	}
	s, err := Integrator{Tolerance: 1e-11}.Solve(oscillator, 0, State{1}, 40, events...)
	if err != nil {
		t.Fatal(err)
	}
	want := []struct {
		event int
		time  float64
	}{
		{1, math.Pi / 3},
		{0, math.Pi / 2},
		{2, math.Pi + math.Asin(0.999)},
	}
	if len(s.Crossings) != len(want) {
		t.Fatalf("met %d events, want %d: %+v", len(s.Crossings), len(want), s.Crossings)
	}
	for i, w := range want {
		c := s.Crossings[i]
		if c.Event != w.event || math.Abs(c.Time-w.time) > 1e-9 {
			t.Errorf("event %d at %.12f, want event %d at %.12f", c.Event, c.Time, w.event, w.time)
		}
	}
	if end, state := s.End(); end != s.Crossings[2].Time || state != s.Crossings[2].State {
		t.Errorf("solution ends at %g, not at its terminal event", end)
	}
	if event, stopped := s.Stopped(); !stopped || event != 2 {
		t.Errorf("stopped by %d (%t), want event 2", event, stopped)
	}
}

func TestIntegratorStopsAtTheEndTime(t *testing.T) {
	t.Parallel()
	s, err := Integrator{}.Solve(oscillator, 1, State{1}, 3)
	if err != nil {
		t.Fatal(err)
	}
	if end, _ := s.End(); end != 3 {
		t.Errorf("ends at %g, want 3", end)
	}
	if _, stopped := s.Stopped(); stopped {
		t.Error("no event, yet stopped by one")
	}
	if s.At(0) != s.At(1) || s.At(9) != s.At(3) {
		t.Error("times outside do not give the nearest end")
	}
}

func TestIntegratorRefusesWhatIsNotFinite(t *testing.T) {
	t.Parallel()
	blowsUp := func(_ float64, s State) State { return State{s[0] * s[0]} }
	if _, err := (Integrator{}).Solve(blowsUp, 0, State{1}, 2); err == nil {
		t.Error("solution through a pole")
	}
	notANumber := func(_ float64, _ State) State { return State{math.NaN()} }
	if _, err := (Integrator{}).Solve(notANumber, 0, State{1}, 2); !errors.Is(err, ErrStepTooSmall) {
		t.Errorf("got %v, want %v", err, ErrStepTooSmall)
	}
	if _, err := (Integrator{MaxSteps: 3}).Solve(oscillator, 0, State{1}, 100); !errors.Is(err, ErrTooManySteps) {
		t.Errorf("got %v, want %v", err, ErrTooManySteps)
	}
}
