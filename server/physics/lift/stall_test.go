package lift

import (
	"testing"

	"pitgate/server/physics/planform"
)

func TestMaximumLift(t *testing.T) {
	t.Parallel()
	steady := func(float64) float64 { return 1e6 }
	wing := tapered(7, 0.5, 0)
	plain := mustSolve(t, []planform.Surface{wing}, Grid{}).MaximumLift(steady, 1)
	wing.Stations[1].Twist = degrees(-4)
	washed := mustSolve(t, []planform.Surface{wing}, Grid{}).MaximumLift(steady, 1)
	if washed.SpanRatio >= plain.SpanRatio {
		t.Errorf("wash-out must move the stall inboard: %v, was %v", washed.SpanRatio, plain.SpanRatio)
	}
	pointed := mustSolve(t, []planform.Surface{tapered(7, 0.4, 0)}, Grid{})
	byChord := pointed.MaximumLift(func(chord float64) float64 { return 2e5 * chord }, 1)
	if byChord.SpanRatio <= pointed.MaximumLift(steady, 1).SpanRatio {
		t.Errorf("local Reynolds number must move the stall outboard: %v", byChord.SpanRatio)
	}
	if rough := pointed.MaximumLift(steady, 0.9); rough.Coefficient >= pointed.MaximumLift(steady, 1).Coefficient {
		t.Error("a factor below one must lower the greatest lift")
	}
	canard := []planform.Surface{wingAndTail(0)[0], rectangle(planform.RoleCanard, 0.6, 0.15, -0.7, 0)}
	canard[1].Incidence = degrees(3)
	if got := mustSolve(t, canard, Grid{}).MaximumLift(steady, 1); got.Surface != planform.RoleCanard {
		t.Errorf("%q stalls first, want the canard set at the greater angle", got.Surface)
	}
}

func TestFlapsRaiseTheGreatestLift(t *testing.T) {
	t.Parallel()
	wing := tapered(7, 0.6, 0)
	wing.Controls = []planform.Control{{Name: "flap", Role: planform.ControlFlap, Outer: 0.6, ChordRatio: 0.25}}
	s := mustSolve(t, []planform.Surface{wing}, Grid{})
	steady := func(float64) float64 { return 3e5 }
	up, down := s.MaximumLift(steady, 1), s.MaximumLiftSet(steady, 1, []Setting{{0, degrees(30)}})
	if down.Coefficient <= up.Coefficient || down.Incidence >= up.Incidence {
		t.Errorf("flap down: %+v, want more lift at less incidence than %+v", down, up)
	}
	near(t, "no angle, no change", s.MaximumLiftSet(steady, 1, []Setting{{0, 0}}).Coefficient, up.Coefficient, 1e-12)
}

func TestMinimumLift(t *testing.T) {
	t.Parallel()
	steady := func(float64) float64 { return 3e5 }
	plain := mustSolve(t, []planform.Surface{tapered(7, 0.6, 0)}, Grid{})
	up, down := plain.MaximumLift(steady, 1), plain.MinimumLift(steady, 1)
	near(t, "symmetrical section", down.Coefficient, -up.Coefficient, 1e-12)
	near(t, "symmetrical incidence", down.Incidence, -up.Incidence, 1e-12)
	cambered := tapered(7, 0.6, 0)
	for i := range cambered.Stations {
		cambered.Stations[i].Section = planform.Section{Family: planform.FamilyFourDigit, Designation: "4412"}
	}
	s := mustSolve(t, []planform.Surface{cambered}, Grid{})
	if low, high := s.MinimumLift(steady, 1), s.MaximumLift(steady, 1); low.Coefficient >= 0 || -low.Coefficient >= high.Coefficient {
		t.Errorf("cambered: %v down and %v up, want less down", low.Coefficient, high.Coefficient)
	}
}
