package document_test

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"pitgate/server/document"
	"pitgate/server/physics/assess"
)

func TestEdits(t *testing.T) {
	t.Parallel()
	text, err := os.ReadFile("../../testdata/demo/redshank_quarry_top.json")
	if err != nil {
		t.Fatal(err)
	}
	read := func() assess.Input {
		in, err := document.Decode(text)
		if err != nil {
			t.Fatal(err)
		}
		return in
	}
	for _, row := range []struct {
		name   string
		change func(*assess.Input)
		want   string
	}{
		{"nothing", func(*assess.Input) {}, ""},
		{"a quantity", func(in *assess.Input) { *in.LaunchPlan.Ramp.LengthMeters.Value = 9.5 }, "launchPlan.ramp.lengthMeters.value=9.5"},
		{"yes or no", func(in *assess.Input) { yes := true; in.LaunchPlan.StripReversed = &yes }, "launchPlan.stripReversed=true"},
		{"a word", func(in *assess.Input) { in.Day.SurfaceState = assess.SurfaceStateSnow }, "day.surfaceState=" + string(assess.SurfaceStateSnow)},
		{"taken away", func(in *assess.Input) { in.Day.TemperatureCelsius.Spread = nil; in.Day.SurfaceState = "" }, "day.temperatureCelsius.spread gone; day.surfaceState gone"},
		{"a row taken away", func(in *assess.Input) { in.Model.Mass.BallastPlaces = in.Model.Mass.BallastPlaces[:1] }, "model.mass.ballastPlaces[1] gone"},
		{"a new row", func(in *assess.Input) {
			x := 0.2
			in.Model.Mass.BallastPlaces = append(in.Model.Mass.BallastPlaces, assess.BallastPlace{Name: "new", XMeters: &x})
		}, "model.mass.ballastPlaces[2].name=new; model.mass.ballastPlaces[2].xMeters=0.2"},
	} {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			changed := read()
			row.change(&changed)
			edits := document.Edits(read(), changed)
			if got := editWords(edits); got != row.want {
				t.Errorf("edits %q, want %q", got, row.want)
			}
		})
	}
}

// editWords writes edits in a line.
func editWords(edits []assess.InputEdit) string {
	list := make([]string, 0, len(edits))
	for _, e := range edits {
		switch {
		case e.Number != nil:
			list = append(list, fmt.Sprintf("%s=%g", e.Input, *e.Number))
		case e.Text != nil:
			list = append(list, fmt.Sprintf("%s=%s", e.Input, *e.Text))
		case e.Flag != nil:
			list = append(list, fmt.Sprintf("%s=%v", e.Input, *e.Flag))
		default:
			list = append(list, e.Input+" gone")
		}
	}
	return strings.Join(list, "; ")
}

// TestRemediesAreEdits makes every remedy's document from its edits and wants the finding to hold there with the probability told.
func TestRemediesAreEdits(t *testing.T) {
	t.Parallel()
	text, err := os.ReadFile("../../testdata/demo/redshank_quarry_top.json")
	if err != nil {
		t.Fatal(err)
	}
	in, err := document.Decode(text)
	if err != nil {
		t.Fatal(err)
	}
	list, err := document.Remedies(in, assess.RemedyOptions{FindingID: "launch.end_speed", Workers: 2})
	if err != nil {
		t.Fatal(err)
	}
	tried := 0
	for i := range list {
		changed, helps := list[i].Changed()
		if helps != (len(list[i].Changes) > 0) || helps != (len(list[i].Edits) > 0) {
			t.Errorf("%+v has %d edits", list[i].Changes, len(list[i].Edits))
		}
		if !helps {
			continue
		}
		tried++
		report, err := document.Assess(changed)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range report.Findings {
			if f.ID == list[i].FindingID && f.Verdict == assess.VerdictFails {
				t.Errorf("%s fails with %s", f.ID, editWords(list[i].Edits))
			}
		}
		for _, edit := range list[i].Edits {
			if !slices.ContainsFunc(list[i].Changes, func(c assess.RemedyChange) bool {
				return slices.ContainsFunc(c.Inputs, func(path string) bool { return strings.HasPrefix(edit.Input, path) })
			}) {
				t.Errorf("%s is changed without being named by %+v", edit.Input, list[i].Changes)
			}
		}
	}
	if tried == 0 {
		t.Error("no remedy was found")
	}
}
