package section

import (
	"math"
	"testing"

	"pitgate/server/physics/planform"
)

func TestMaximumLift(t *testing.T) {
	t.Parallel()
	for _, designation := range []string{"0009", "0012", "0015", "0018", "0021", "2412", "4412"} {
		s := planform.Section{Designation: designation}
		last := MaximumLift(s, 2e4, Roughness{}).Value
		for re := 3e4; re < 5e6; re *= 1.3 {
			now := MaximumLift(s, re, Roughness{})
			if now.Value < last || now.Spread <= 0 {
				t.Errorf("%s at Re %.3g: %+v, want not below %v", designation, re, now, last)
			}
			last = now.Value
		}
	}
	given := MaximumLift(planform.Section{ClMax: 1.37}, 1, Roughness{})
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
		if got := MaximumLift(c.section, c.reynolds, Roughness{}); got.Inside || got.Note != NoteExtrapolated || !(got.Value > 0) || got.Spread < 0.15 {
			t.Errorf("%+v at Re %v: %+v, want marked as outside", c.section, c.reynolds, got)
		}
	}
	if got := MaximumLift(planform.Section{Designation: "0018"}, 3e5, Roughness{}); !got.Inside || got.Note != NoteSymmetrical || got.Spread != sandia {
		t.Errorf("table row: %+v", got)
	}
}
