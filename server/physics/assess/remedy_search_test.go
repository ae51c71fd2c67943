package assess_test

import (
	"encoding/json"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pitgate/server/physics/assess"
)

// TestNothingHelps wants two documents without a cure to be told so, one in which nothing that may be changed stands behind the finding and one in which
// everything that may be changed was tried.
func TestNothingHelps(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name, finding, note string
		spoil               func(in *assess.Input)
	}{
		{"permission ended", "field.permission", "nothing that may be changed", func(in *assess.Input) { in.Field.Permission.ValidToDate = "2026-05-01" }},
		{"stall speed out of reach", "stall.speed", "No single change helps, and no change of two among those tried", func(in *assess.Input) {
			in.Limits.MaximumStallSpeedMetersPerSecond = number(5)
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			in := demoInput(t, "redshank_quarry_top")
			c.spoil(&in)
			found := remediesOf(t, in, assess.RemedyOptions{FindingID: c.finding, Workers: 2})
			if len(found) != 1 || len(found[0].Changes) != 0 || found[0].Effort != "" || !strings.Contains(found[0].Note, c.note) {
				t.Errorf("got %+v", found)
			}
		})
	}
}

// TestRemedyHoldsAsAsked applies each of the launch's remedies to the document and wants the end of its band there, which is that of 95 %, on the limit.
func TestRemedyHoldsAsAsked(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "redshank_quarry_top")
	found := remediesOf(t, in, assess.RemedyOptions{FindingID: "launch.end_speed", Workers: 2})
	knobs := []string{}
	for _, remedy := range found {
		change := remedy.Changes[0]
		knobs = append(knobs, change.Knob)
		mended := demoInput(t, "redshank_quarry_top")
		switch change.Knob {
		case "ramp.length":
			mended.LaunchPlan.Ramp.LengthMeters.Value = change.To
		case "wind.head":
			gust := *change.To + 1
			mended.Day.WindSpeedMetersPerSecond.Value, mended.Day.WindDirectionDegrees.Value, mended.Day.GustSpeedMetersPerSecond.Value = change.To, number(250), &gust
		default:
			continue
		}
		f := findingOf(t, runWith(t, mended, assess.Options{Bands: true}), "launch.end_speed")
		if off, half := *f.BandLow-*f.Limit, (*f.BandHigh-*f.BandLow)/2; math.Abs(off) > 0.02*half {
			t.Errorf("%s to %g: the band ends %g from the limit, half of it is %g", change.Knob, *change.To, off, half)
		}
	}
	if !slices.Equal(knobs, []string{"wind.head", "ramp.length"}) {
		t.Errorf("got %v, want the headwind of another day before the longer ramp", knobs)
	}
}

// TestRemediesDoNotDependOnWorkers wants the same bytes from one worker and from three, and the document left as it was.
func TestRemediesDoNotDependOnWorkers(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "redshank_quarry_top")
	one, err := json.Marshal(remediesOf(t, in, assess.RemedyOptions{Workers: 1}))
	if err != nil {
		t.Fatal(err)
	}
	three, err := json.Marshal(remediesOf(t, in, assess.RemedyOptions{Workers: 3}))
	if err != nil {
		t.Fatal(err)
	}
	if string(one) != string(three) {
		t.Errorf("one worker:\n%s\nthree:\n%s", one, three)
	}
	if !reflect.DeepEqual(in, demoInput(t, "redshank_quarry_top")) {
		t.Error("the search changed the document")
	}
}

// TestKnobsAnswerAsTheCoreDoes turns every knob and wants what the search finds by walking only what a finding needs, on a geometry that is not solved
// anew, to be bit for bit what the core answers for the changed document.
func TestKnobsAnswerAsTheCoreDoes(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"redshank_quarry_top", "sandmartin_long_acre_wet"} {
		in := demoInput(t, name)
		in.Model.Radio.Antennas[0].InsideCarbon = yesPointer()
		geometry, err := assess.Prepare(in)
		if err != nil {
			t.Fatal(err)
		}
		list, err := assess.TryKnobs(in, geometry, askedAlone)
		if err != nil || len(list) < 40 {
			t.Fatalf("%d knobs, %v", len(list), err)
		}
		for _, tried := range list {
			t.Run(name+" "+tried.Name, func(t *testing.T) {
				t.Parallel()
				report := runWith(t, tried.Changed, assess.Options{})
				for id, got := range tried.Findings {
					want := findingOf(t, report, id)
					if got == nil || got.Verdict != want.Verdict || value(got.Value) != value(want.Value) && want.Value != nil {
						t.Errorf("%s: got %+v, want %s %v", id, got, want.Verdict, value(want.Value))
					}
				}
			})
		}
	}
}

// askedAlone are findings of every part of the core.
var askedAlone = []string{
	"stall.turn", "speed.top", "climb.clearance", "circuit.inside", "balance.margin_full", "balance.launch_trim", "roll.rate", "loads.wing", "servo.torque",
	"landing.distance", "engine_out.reach", "separation.people", "weather.wake", "radio.margin", "packs.voltage", "fuel.suction", "heat.skin",
}

func yesPointer() *bool {
	yes := true
	return &yes
}

// TestRemedyOptionsAreChecked wants options out of range to be refused and the watch to stop the search.
func TestRemedyOptionsAreChecked(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "redshank_quarry_top")
	geometry, err := assess.Prepare(in)
	if err != nil {
		t.Fatal(err)
	}
	found, err := geometry.Remedies(in, assess.RemedyOptions{FindingID: "launch.end_speed", Samples: 64, Seed: 1, Workers: 2})
	if err != nil || len(found) == 0 || !strings.Contains(found[0].Note, "of 64 samples") || *found[0].HoldsProbability < 0.85 {
		t.Errorf("sampled: got %+v, %v", found, err)
	}
	for _, options := range []assess.RemedyOptions{{Workers: -1}, {Workers: 65}, {Samples: 3}, {Watch: func(int, int) bool { return false }}} {
		if found, err := geometry.Remedies(in, options); err == nil {
			t.Errorf("%+v: got %d remedies", options, len(found))
		}
	}
}
