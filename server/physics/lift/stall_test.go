package lift

import (
	"math"
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

func TestSectionMaximum(t *testing.T) {
	t.Parallel()
	for _, designation := range []string{"0009", "0012", "0015", "0018", "0021", "2412", "4412"} {
		s := planform.Section{Designation: designation}
		last := SectionMaximum(s, 2e4).Value
		for re := 3e4; re < 5e6; re *= 1.3 {
			now := SectionMaximum(s, re)
			if now.Value < last || now.Spread <= 0 {
				t.Errorf("%s at Re %.3g: %+v, want not below %v", designation, re, now, last)
			}
			last = now.Value
		}
	}
	given := SectionMaximum(planform.Section{ClMax: 1.37}, 1)
	if given.Value != 1.37 || !given.Inside || given.Note != NoteGiven {
		t.Errorf("given value: %+v", given)
	}
	for _, c := range []struct {
		section  planform.Section
		reynolds float64
	}{
		{planform.Section{Designation: "0015"}, 3e4}, {planform.Section{Designation: "0015"}, 9e6}, {planform.Section{Designation: "0015"}, math.NaN()},
		{planform.Section{Thickness: 0.3}, 2e5}, {planform.Section{Thickness: 0.12, Camber: 0.09}, 2e5},
	} {
		if got := SectionMaximum(c.section, c.reynolds); got.Inside || got.Note != NoteExtrapolated || !(got.Value > 0) || got.Spread < 0.15 {
			t.Errorf("%+v at Re %v: %+v, want marked as outside", c.section, c.reynolds, got)
		}
	}
	if got := SectionMaximum(planform.Section{Designation: "0018"}, 3e5); !got.Inside || got.Note != NoteSymmetrical || got.Spread != spreadTable {
		t.Errorf("table row: %+v", got)
	}
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
