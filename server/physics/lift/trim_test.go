package lift

import (
	"math"
	"testing"

	"pitgate/server/physics/planform"
)

func steadyReynolds(float64) float64 { return 3e5 }

// trimModel is a wing with tail and elevator; its balance point lies ahead of the neutral point.
func trimModel() []planform.Surface {
	surfaces := wingAndTail(0.1)
	for i := range surfaces[0].Stations {
		surfaces[0].Stations[i].Section.Designation = "2412"
	}
	surfaces[1].Controls = []planform.Control{
		{Name: "elevator", Role: planform.ControlElevator, Outer: 1, ChordRatio: 0.35, ThrowUp: degrees(25), ThrowDown: degrees(20)},
	}
	return surfaces
}

// elevator is the balance by the first control about x.
func elevator(x float64) Balance { return Balance{X: x, Pitch: []Setting{{0, 1}}} }

func TestTrimBalancesLiftAndMoment(t *testing.T) {
	t.Parallel()
	s := mustSolve(t, trimModel(), Grid{})
	b := Balance{X: 0.07, Moment: 0.01, MomentSlope: 0.15, Pitch: []Setting{{0, 1}}}
	for _, lift := range []float64{-0.2, 0, 0.3, 0.7} {
		got := s.Trim(b, lift)
		if !got.Found || !got.WithinThrow {
			t.Fatalf("lift %v: %+v", lift, got)
		}
		angle := s.effectiveAngle(Setting{0, got.Command})
		near(t, "lift", s.Lift(got.Incidence)+s.Controls[0].LiftSlope*angle, lift, 1e-5)
		moment := s.MomentAt(b.X, got.Incidence) + b.Moment + b.MomentSlope*got.Incidence + s.Controls[0].MomentAt(b.X)*angle
		near(t, "moment", moment, 0, 1e-5)
	}
}

// The textbook slope of the trim curve: d(elevator)/dCL = -Cma/(Cmd CLa - Cma CLd).
func TestTrimSlopeIsTheTextbookOne(t *testing.T) {
	t.Parallel()
	s := mustSolve(t, trimModel(), Grid{})
	b := elevator(0.07)
	got := (s.Trim(b, 0.5).Command - s.Trim(b, 0.4).Command) / 0.1
	slope, power := s.MomentSlopeAt(b.X), s.Controls[0].MomentAt(b.X)
	near(t, "elevator per lift", got, -slope/(power*s.LiftSlope-slope*s.Controls[0].LiftSlope), 2e-4)
	if got >= 0 {
		t.Errorf("elevator per lift %v, want up for more lift", got)
	}
	at := s.Trim(elevator(s.NeutralPointX), 0.5).Command - s.Trim(elevator(s.NeutralPointX), 0.2).Command
	near(t, "at the neutral point the elevator does not move", at, 0, 1e-6)
}

func TestTrimWithoutPowerOrThrow(t *testing.T) {
	t.Parallel()
	s := mustSolve(t, trimModel(), Grid{})
	if got := s.Trim(Balance{X: 0.07}, 0.5); got.Found {
		t.Errorf("no control: %+v", got)
	}
	if got := s.Trim(elevator(-0.6), 0.9); !got.Found || got.WithinThrow {
		t.Errorf("balance point far forward: %+v, want a command beyond the throw", got)
	}
	strange := []Balance{
		{X: 0.07, Pitch: []Setting{{7, 1}}}, {X: 0.07, Pitch: []Setting{{-1, 1}}}, {X: 0.07, Pitch: []Setting{{0, math.NaN()}}},
		{X: math.NaN(), Pitch: []Setting{{0, 1}}}, {Moment: math.Inf(1), Pitch: []Setting{{0, 1}}}, {MomentSlope: math.NaN(), Pitch: []Setting{{0, 1}}},
	}
	for _, b := range strange {
		if s.Trim(b, 0.5).Found || s.TrimmedMaximum(steadyReynolds, 1, b).Found {
			t.Errorf("%+v must find nothing", b)
		}
	}
	near(t, "an unknown control is left out", s.SettingsLift([]Setting{{9, 1}, {0, 0.1}}), s.SettingsLift([]Setting{{0, 0.1}}), 0)
	if s.Trim(elevator(0.07), math.NaN()).Found {
		t.Error("lift that is no number must find nothing")
	}
	if got := s.TrimmedMaximum(steadyReynolds, 1, Balance{X: 0.07}); got.Found {
		t.Errorf("no control: %+v", got)
	}
}

func TestTrimmedMaximumEndsWhereItShould(t *testing.T) {
	t.Parallel()
	s := mustSolve(t, trimModel(), Grid{})
	b := elevator(0.07)
	trimmed, plain := s.TrimmedMaximum(steadyReynolds, 1, b), s.MaximumLift(steadyReynolds, 1)
	if trimmed.Reason != LimitWing || trimmed.Coefficient >= plain.Coefficient || trimmed.ControlAngle >= 0 {
		t.Errorf("trimmed %+v, untrimmed %+v: want the wing to stall with less lift as the tail pushes down", trimmed, plain)
	}
	check := s.Trim(b, trimmed.Coefficient)
	near(t, "same incidence as Trim", check.Incidence, trimmed.Incidence, 1e-5)
	near(t, "same command as Trim", check.Command, trimmed.ControlAngle, 1e-4)
	states := s.StripStates(trimmed.Incidence, []Setting{{0, trimmed.ControlAngle}}, steadyReynolds, 1)
	least := math.Inf(1)
	for _, state := range states {
		if state.Role == planform.RoleWing {
			least = min(least, state.Limit-state.Coefficient)
		}
	}
	near(t, "the first strip has nothing left", least, 0, 1e-4)
	last := plain.Coefficient
	for _, x := range []float64{0.08, 0.05, 0.02, -0.02} {
		now := s.TrimmedMaximum(steadyReynolds, 1, elevator(x))
		if now.Coefficient >= last {
			t.Errorf("balance point %v: trimmed maximum %v, want below %v", x, now.Coefficient, last)
		}
		last = now.Coefficient
	}
	if now := s.TrimmedMaximum(steadyReynolds, 1, elevator(-0.5)); now.Reason == LimitWing || now.Coefficient >= last {
		t.Errorf("far forward: %+v, want throw or tail to end the lift", now)
	}
}

func TestTailStallEndsTheLift(t *testing.T) {
	t.Parallel()
	surfaces := trimModel()
	surfaces[1].Controls = nil
	surfaces[1].AllMoving = true
	small := rectangle(planform.RoleTailplane, 0.35, 0.09, 0.725, 0.1)
	small.AllMoving = true
	s := mustSolve(t, []planform.Surface{surfaces[0], small}, Grid{})
	got := s.TrimmedMaximum(steadyReynolds, 1, elevator(-0.1))
	if got.Reason != LimitTailDownload || got.Surface != planform.RoleTailplane {
		t.Errorf("%+v, want the small tail to stall under download", got)
	}
	got = s.TrimmedMaximum(steadyReynolds, 1, Balance{X: 0.28, Moment: -0.3, MomentSlope: 1.5, Pitch: []Setting{{0, 1}}})
	if got.Reason != LimitTailUpload && got.Reason != LimitTailDownload {
		t.Errorf("%+v, want the tail to end the lift of an unstable model", got)
	}
}

func TestThrowEndsTheLift(t *testing.T) {
	t.Parallel()
	surfaces := trimModel()
	surfaces[1].Controls[0].ThrowUp, surfaces[1].Controls[0].ThrowDown = degrees(3), degrees(3)
	s := mustSolve(t, surfaces, Grid{})
	got := s.TrimmedMaximum(steadyReynolds, 1, elevator(0.02))
	if got.Reason != LimitThrow {
		t.Errorf("%+v, want the throw to end the lift", got)
	}
	near(t, "at its end", got.ControlAngle, -degrees(3), 1e-6)
}

func TestCanardEndsTheLift(t *testing.T) {
	t.Parallel()
	canard := rectangle(planform.RoleCanard, 0.7, 0.16, -0.8, 0.02)
	canard.Controls = []planform.Control{{Name: "canard flap", Role: planform.ControlElevator, Outer: 1, ChordRatio: 0.35}}
	s := mustSolve(t, []planform.Surface{wingAndTail(0)[0], canard}, Grid{})
	got := s.TrimmedMaximum(steadyReynolds, 1, elevator(s.NeutralPointX-0.08))
	if got.Reason != LimitCanard || got.ControlAngle <= 0 {
		t.Errorf("%+v, want the canard to stall with its flap down", got)
	}
}

func TestElevonsTrimATaillessModel(t *testing.T) {
	t.Parallel()
	wing := tapered(6, 0.6, 25)
	for i := range wing.Stations {
		wing.Stations[i].Section = planform.Section{Family: planform.FamilyReflexed, Camber: 0.015, Thickness: 0.1}
	}
	wing.Stations[1].Twist = degrees(-3)
	wing.Controls = []planform.Control{{Name: "elevon", Role: planform.ControlElevon, Inner: 0.4, Outer: 1, ChordRatio: 0.25}}
	s := mustSolve(t, []planform.Surface{wing}, Grid{})
	b := elevator(s.NeutralPointX - 0.08)
	got := s.TrimmedMaximum(steadyReynolds, 1, b)
	if got.Reason != LimitWing || got.ControlAngle >= 0 || got.Coefficient >= s.MaximumLift(steadyReynolds, 1).Coefficient {
		t.Errorf("%+v, want less lift than untrimmed with the elevons up", got)
	}
}

// Ruddervators count by projection: a V-tail needs more angle for the same moment than a flat tail of the same panels.
func TestRuddervatorsTrimByProjection(t *testing.T) {
	t.Parallel()
	command := func(dihedral float64) float64 {
		surfaces := trimModel()
		tail := &surfaces[1]
		tail.Role = planform.RoleVTail
		tip := &tail.Stations[1]
		tip.Y, tip.Z = 0.3*math.Cos(degrees(dihedral)), 0.1+0.3*math.Sin(degrees(dihedral))
		s := mustSolve(t, surfaces, Grid{})
		return -(s.Trim(elevator(s.NeutralPointX-0.05), 0.8).Command - s.Trim(elevator(s.NeutralPointX-0.05), 0.2).Command)
	}
	flat, raised := command(0), command(35)
	if raised < 1.05*flat || raised > 1.4*flat {
		t.Errorf("command of the V-tail %v, of the flat tail %v: want about 1/cos more", raised, flat)
	}
}

func TestTipMargin(t *testing.T) {
	t.Parallel()
	last := -1.0
	for _, washout := range []float64{0, 2, 4} {
		wing := tapered(8, 0.6, 0)
		wing.Stations[1].Twist = -degrees(washout)
		m := mustSolve(t, []planform.Surface{wing}, Grid{}).MaximumLift(steadyReynolds, 1)
		if m.TipMarginIncidence <= last {
			t.Errorf("washout %v: margin %v, want above %v", washout, m.TipMarginIncidence, last)
		}
		last = m.TipMarginIncidence
	}
	pointed := tapered(8, 0.25, 20)
	m := mustSolve(t, []planform.Surface{pointed}, Grid{}).MaximumLift(func(chord float64) float64 { return 2e5 * chord }, 1)
	if m.SpanRatio < 0.75 || m.TipMarginIncidence > degrees(0.3) {
		t.Errorf("a pointed swept wing stalls first at %v and has %v left at the tip, want the tip with it", m.SpanRatio, m.TipMarginIncidence)
	}
}

func TestDownwash(t *testing.T) {
	t.Parallel()
	surfaces := wingAndTail(0.1)
	surfaces[0].Incidence = degrees(3)
	s := mustSolve(t, surfaces, Grid{})
	slope, atZero, found := s.Downwash(planform.RoleTailplane)
	if !found || atZero <= 0 {
		t.Errorf("downwash %v and %v, want both down", slope, atZero)
	}
	near(t, "by the closed form", slope, DownwashSlope(8, 1, 0, 0.35, 0.05), 0.05)
	near(t, "by the tail's loss of lift", slope, 1-0.6731, 0.02)
	if _, _, found := s.Downwash("nothing"); found {
		t.Error("a surface that is not there has no downwash")
	}
	up, _, _ := s.Downwash(planform.RoleWing)
	if math.Abs(up) > 0.02 {
		t.Errorf("the tail turns the stream at the wing by %v", up)
	}
	low, _, _ := mustSolveAt(t, surfaces, 0.15).Downwash(planform.RoleTailplane)
	if low >= 0.8*slope {
		t.Errorf("near the ground %v, want much less than %v", low, slope)
	}
}
