package document_test

import (
	"fmt"
	"os"
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
		{"taken away", func(in *assess.Input) { in.Day.TemperatureCelsius.Spread = nil; in.Day.SurfaceState = "" }, "day.surfaceState gone; day.temperatureCelsius.spread gone"},
		{"a new row", func(in *assess.Input) {
			x := 0.2
			in.Model.Mass.BallastPlaces = append(in.Model.Mass.BallastPlaces, assess.BallastPlace{Name: "new", XMeters: &x})
		}, "model.mass.ballastPlaces[2].name=new; model.mass.ballastPlaces[2].xMeters=0.2"},
	} {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			changed := read()
			row.change(&changed)
			edits, err := document.Edits(read(), changed)
			if err != nil {
				t.Fatal(err)
			}
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
