package club

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"
)

// weighed is a report of two findings, of which a point of the bench list names the first.
const weighed = `{"findings":[{"id":"mass.class","title":"Take-off mass.","verdict":"VERDICT_HOLDS"},{"id":"height","verdict":"VERDICT_TIGHT"}],
	"benchItems":[{"id":"bench.mass","title":"Mass","input":"model.mass","wanted":"at most","unit":"kg","high":8.6,"why":"it is heavy","findingIds":["mass.class"]}]}`

func TestTouchedBetween(t *testing.T) {
	t.Parallel()
	for name, tt := range map[string]struct {
		old, new string
		want     []Gate
		says     string
	}{
		"nothing":                          {"", "", nil, ""},
		"a named finding worse":            {`"verdict":"VERDICT_HOLDS"`, `"verdict":"VERDICT_FAILS"`, []Gate{DeskGate, BenchGate}, "Take-off mass: holds, now fails"},
		"another finding worse":            {"VERDICT_TIGHT", "VERDICT_UNKNOWN", []Gate{DeskGate}, "height: tight, now unknown"},
		"another finding better":           {"VERDICT_TIGHT", "VERDICT_HOLDS", nil, ""},
		"a named finding gone":             {`{"id":"mass.class","title":"Take-off mass.","verdict":"VERDICT_HOLDS"},`, "", []Gate{BenchGate}, "holds, now not asked"},
		"another finding gone":             {`,{"id":"height","verdict":"VERDICT_TIGHT"}`, "", nil, ""},
		"a finding comes and holds":        {`"findings":[`, `"findings":[{"id":"new","verdict":"VERDICT_HOLDS"},`, []Gate{DeskGate}, "new: not asked, now holds"},
		"a verdict nobody knows":           {"VERDICT_TIGHT", "VERDICT_ODD", []Gate{DeskGate}, "now odd"},
		"a point comes":                    {`"benchItems":[`, `"benchItems":[{"id":"bench.new","title":"Vent"},`, []Gate{BenchGate}, "to be inspected now: Vent"},
		"a point for another part":         {`"input":"model.mass"`, `"input":"model.fuel"`, []Gate{BenchGate}, "no longer on the list: Mass"},
		"no points any more":               {`"benchItems":[`, `"others":[`, []Gate{BenchGate}, "no longer on the list: Mass"},
		"another figure":                   {"8.6", "8.5", []Gate{BenchGate}, "another figure is wanted: Mass"},
		"no figure":                        {`"high":8.6,`, "", []Gate{BenchGate}, "another figure"},
		"a figure at the other end":        {`"high":8.6`, `"low":8.6`, []Gate{BenchGate}, "another figure"},
		"another unit":                     {`"unit":"kg"`, `"unit":"g"`, []Gate{BenchGate}, "another figure"},
		"another state":                    {`"wanted":"at most"`, `"wanted":"less than"`, []Gate{BenchGate}, "another figure"},
		"a figure that nobody reads apart": {"8.6", "8.6000001", nil, ""},
		"other words of why":               {"it is heavy", "it is light", nil, ""},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			becomes := strings.Replace(weighed, tt.old, tt.new, 1)
			if tt.old != tt.new && becomes == weighed {
				t.Fatal("the case changes nothing")
			}
			touch, err := TouchedBetween(json.RawMessage(weighed), json.RawMessage(becomes))
			if err != nil {
				t.Fatal(err)
			}
			wantTouch(t, touch, tt.want, tt.says)
		})
	}
}

// wantTouch wants the gates desk and bench touched as said, and the field gate always.
func wantTouch(t *testing.T, touch Touch, want []Gate, says string) {
	t.Helper()
	var why []string
	for _, gate := range []Gate{DeskGate, BenchGate} {
		_, got := touch[gate]
		if got != slices.Contains(want, gate) {
			t.Errorf("%s touched: %v, want %v", gate, got, want)
		}
		why = append(why, touch[gate])
	}
	if touch[FieldGate] == "" {
		t.Error("the field gate is not said anew")
	}
	if !strings.Contains(strings.Join(why, " "), says) {
		t.Errorf("reasons %q do not say %q", why, says)
	}
}

func TestTouchNamesAFewAndCountsTheRest(t *testing.T) {
	t.Parallel()
	becomes := strings.Replace(weighed, `"findings":[`, `"findings":[{"id":"a","verdict":"x"},{"id":"b","verdict":"x"},{"id":"c","verdict":"x"},{"id":"d","verdict":"x"},`, 1)
	touch, err := TouchedBetween(json.RawMessage(weighed), json.RawMessage(becomes))
	if err != nil || !strings.HasSuffix(touch[DeskGate], "; and 1 more") || strings.Contains(touch[DeskGate], "d:") {
		t.Errorf("got %q, %v", touch[DeskGate], err)
	}
}

// TestOfficersAnswerIsTheInspection wants an officer's word on a rule to leave the bench gate, which asks for that word, and nothing else of the bench.
func TestOfficersAnswerIsTheInspection(t *testing.T) {
	t.Parallel()
	was := `{"findings":[{"id":"rule.club.helper","verdict":"VERDICT_UNKNOWN"},{"id":"mass","verdict":"VERDICT_HOLDS"}],
		"benchItems":[{"id":"bench.helper","findingIds":["rule.club.helper"]},{"id":"bench.mass","findingIds":["mass"]}]}`
	for name, tt := range map[string]struct {
		old, new string
		want     []Gate
	}{
		"a yes":                  {"VERDICT_UNKNOWN", "VERDICT_HOLDS", nil},
		"a no":                   {"VERDICT_UNKNOWN", "VERDICT_FAILS", []Gate{DeskGate}},
		"a yes and another mass": {`VERDICT_UNKNOWN"},{"id":"mass","verdict":"VERDICT_HOLDS"`, `VERDICT_HOLDS"},{"id":"mass","verdict":"VERDICT_TIGHT"`, []Gate{DeskGate, BenchGate}},
	} {
		touch, err := TouchedByAnswer(json.RawMessage(was), json.RawMessage(strings.Replace(was, tt.old, tt.new, 1)), "club.helper")
		if err != nil {
			t.Errorf("%s: %v", name, err)
		}
		wantTouch(t, touch, tt.want, "")
	}
}

func TestTouchedRefusesWhatIsNoReport(t *testing.T) {
	t.Parallel()
	for _, pair := range [][2]string{{`{`, weighed}, {weighed, `{"findings":1}`}} {
		if touch, err := TouchedBetween(json.RawMessage(pair[0]), json.RawMessage(pair[1])); err == nil {
			t.Errorf("%q: got %v", pair, touch)
		}
	}
}
