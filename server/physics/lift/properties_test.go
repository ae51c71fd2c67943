package lift

import (
	"math"
	"testing"

	"pitgate/server/physics/planform"
)

func TestMoreSweepLowersTheLiftSlope(t *testing.T) {
	t.Parallel()
	for _, aspect := range []float64{4, 7, 12} {
		last := math.Inf(1)
		for _, sweep := range []float64{0, 10, 20, 30, 40, 50} {
			s := mustSolve(t, []planform.Surface{tapered(aspect, 0.6, sweep)}, Grid{})
			if s.LiftSlope >= last {
				t.Errorf("aspect ratio %v, sweep %v: slope %v, want below %v", aspect, sweep, s.LiftSlope, last)
			}
			last = s.LiftSlope
		}
	}
}

func TestForwardBalanceRaisesTheMarginOneToOne(t *testing.T) {
	t.Parallel()
	s := mustSolve(t, wingAndTail(0.1), Grid{})
	margin := func(x float64) float64 { return -s.MomentSlopeAt(x) / s.LiftSlope }
	for _, forward := range []float64{0.01, 0.05, 0.3} {
		near(t, "margin", margin(0.1-forward)-margin(0.1), forward/s.Reference.Chord, 1e-12)
	}
}

func TestWashoutMovesTheStallInboard(t *testing.T) {
	t.Parallel()
	for _, taper := range []float64{0.3, 0.5, 0.7} {
		last, incidence := 2.0, 0.0
		for _, washout := range []float64{0, 2, 4, 6} {
			wing := tapered(8, taper, 0)
			wing.Stations[1].Twist = -degrees(washout)
			m := mustSolve(t, []planform.Surface{wing}, Grid{}).MaximumLift(steadyReynolds, 1)
			if m.SpanRatio > last || m.Incidence < incidence-degrees(1) {
				t.Errorf("taper %v, washout %v: stall at %v, want not outboard of %v", taper, washout, m.SpanRatio, last)
			}
			last, incidence = m.SpanRatio, m.Incidence
		}
		if last > 0.45 {
			t.Errorf("taper %v: 6 degrees of washout leave the stall at %v", taper, last)
		}
	}
}

// Strips of a loading and its limit: the states at the incidence of the maximum are the maximum.
func TestStripStatesAgreeWithTheMaximum(t *testing.T) {
	t.Parallel()
	s := mustSolve(t, trimModel(), Grid{})
	m := s.MaximumLift(steadyReynolds, 1)
	least, place := math.Inf(1), 0.0
	for _, state := range s.StripStates(m.Incidence, nil, steadyReynolds, 1) {
		if state.Role == planform.RoleWing && state.MarginIncidence < least {
			least, place = state.MarginIncidence, state.SpanRatio
		}
	}
	near(t, "margin of the first strip", least, 0, 1e-9)
	near(t, "its place", place, m.SpanRatio, 1e-12)
	lower := s.StripStates(m.Incidence-0.05, nil, steadyReynolds, 1)
	for i, state := range s.StripStates(m.Incidence, nil, steadyReynolds, 1) {
		near(t, "slope of the strip", state.Coefficient-lower[i].Coefficient, 0.05*s.Strips[i].LiftSlope, 1e-12)
	}
}

// A flap beyond 12 degrees keeps only a part of its linear effect, an all-moving surface all of it.
func TestLargeAnglesKeepLess(t *testing.T) {
	t.Parallel()
	surfaces := trimModel()
	surfaces = append(surfaces, rectangle(planform.RoleCanard, 0.4, 0.1, -0.5, 0))
	surfaces[2].AllMoving = true
	s := mustSolve(t, surfaces, Grid{})
	if s.Controls[1].Surface != planform.RoleCanard {
		t.Fatalf("controls %+v", s.Controls)
	}
	near(t, "small", s.SettingsLift([]Setting{{0, degrees(10)}}), s.Controls[0].LiftSlope*degrees(10), 1e-12)
	if got, linear := s.SettingsLift([]Setting{{0, degrees(30)}}), s.Controls[0].LiftSlope*degrees(30); got >= 0.8*linear || got <= 0.5*linear {
		t.Errorf("30 degrees give %v of a linear %v", got, linear)
	}
	near(t, "whole surface", s.SettingsLift([]Setting{{1, degrees(15)}}), s.Controls[1].LiftSlope*degrees(15), 1e-12)
	near(t, "commands and their inverse", func() float64 {
		table := s.commandsOf([]Setting{{0, 1}})
		command, _ := table.commandFor(table.effectOf(degrees(-23.4)))
		return command
	}(), degrees(-23.4), 1e-9)
}
