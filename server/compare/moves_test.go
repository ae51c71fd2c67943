package compare

import (
	"slices"
	"testing"

	"pitgate/server/document"
	"pitgate/server/physics/assess"
)

// compared computes two documents and compares them.
func compared(t testing.TB, a, b assess.Input) Comparison {
	t.Helper()
	ra, err := document.Assess(a)
	if err != nil {
		t.Fatal(err)
	}
	rb, err := document.Assess(b)
	if err != nil {
		t.Fatal(err)
	}
	return Of(a, b, ra, rb)
}

func find(t *testing.T, moves []Move, id string) Move {
	t.Helper()
	i := slices.IndexFunc(moves, func(m Move) bool { return m.FindingID == id })
	if i < 0 {
		t.Fatalf("no finding %s", id)
	}
	return moves[i]
}

func TestNothingMovesAgainstItself(t *testing.T) {
	t.Parallel()
	a := demoDocument(t, "redshank_quarry_top")
	got := compared(t, a, a)
	if got.MovedCount != 0 || len(got.Differences) != 0 || len(got.Moves) < 40 || len(got.Cautions) == 0 {
		t.Errorf("%d moved of %d, %d differences, %d cautions", got.MovedCount, len(got.Moves), len(got.Differences), len(got.Cautions))
	}
}

// TestLongerRampMovesTheLaunch compares the Redshank as it is with its remedy.
func TestLongerRampMovesTheLaunch(t *testing.T) {
	t.Parallel()
	got := compared(t, demoDocument(t, "redshank_quarry_top"), demoDocument(t, "redshank_quarry_top_long_ramp"))
	launch := find(t, got.Moves, "launch.end_speed")
	if !launch.Moved || *launch.MarginChange <= 0 || !slices.Contains(launch.ChangedInputs, "launchPlan.ramp.lengthMeters") {
		t.Errorf("end speed: %+v", launch)
	}
	if stall := find(t, got.Moves, "stall.speed"); stall.Moved || *stall.ValueChange != 0 {
		t.Errorf("stall speed moved with the ramp: %+v", stall)
	}
}

// TestMovesMirror compares the other way round: the same findings move, by the opposite of each change.
func TestMovesMirror(t *testing.T) {
	t.Parallel()
	a, b := demoDocument(t, "sandmartin_long_acre"), demoDocument(t, "sandmartin_long_acre_wet")
	there, back := compared(t, a, b), compared(t, b, a)
	if there.MovedCount == 0 || there.MovedCount != back.MovedCount || len(there.Moves) != len(back.Moves) {
		t.Fatalf("%d moved there, %d back", there.MovedCount, back.MovedCount)
	}
	for _, m := range there.Moves {
		o := find(t, back.Moves, m.FindingID)
		if o.Moved != m.Moved || !slices.Equal(o.ChangedInputs, m.ChangedInputs) || (m.ValueChange != nil && *o.ValueChange != -*m.ValueChange) {
			t.Errorf("%s: %+v against %+v", m.FindingID, m, o)
		}
	}
}

// TestMovedFindingsReadWhatChanged changes one input after the other far enough to move findings: every finding that moves must name it.
func TestMovedFindingsReadWhatChanged(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		path   string
		change func(*assess.Input)
	}{
		{"model.mass.emptyMassKg", func(in *assess.Input) { *in.Model.Mass.EmptyMassKg.Value *= 1.3 }},
		{"day.temperatureCelsius", func(in *assess.Input) { *in.Day.TemperatureCelsius.Value += 25 }},
		{"day.windSpeedMetersPerSecond", func(in *assess.Input) { *in.Day.WindSpeedMetersPerSecond.Value += 6 }},
		{"model.surfaces[0].stations[0].chordMeters", func(in *assess.Input) { *in.Model.Surfaces[0].Stations[0].ChordMeters *= 1.3 }},
		{"model.engines[0].staticThrustNewtons", func(in *assess.Input) { *in.Model.Engines[0].StaticThrustNewtons.Value *= 0.6 }},
		{"launchPlan.ramp.lengthMeters", func(in *assess.Input) { *in.LaunchPlan.Ramp.LengthMeters.Value *= 2 }},
		{"launchPlan.circuit.heightMeters", func(in *assess.Input) { *in.LaunchPlan.Circuit.HeightMeters.Value *= 2 }},
	} {
		t.Run(c.path, func(t *testing.T) {
			t.Parallel()
			a, b := demoDocument(t, "redshank_quarry_top"), demoDocument(t, "redshank_quarry_top")
			c.change(&b)
			got := compared(t, a, b)
			if got.MovedCount == 0 || len(got.Differences) != 1 || got.Differences[0].Path() != c.path {
				t.Fatalf("%d moved, differences %+v", got.MovedCount, got.Differences)
			}
			for _, m := range got.Moves {
				if m.Moved && !slices.Equal(m.ChangedInputs, []string{c.path}) {
					t.Errorf("%s moved and reads %v", m.FindingID, m.ChangedInputs)
				}
			}
		})
	}
}

// TestStepIsNeverFinerThanTheReading moves a value by more than half of a band that is narrower than anyone reads, and one without a band.
func TestStepIsNeverFinerThanTheReading(t *testing.T) {
	t.Parallel()
	number := func(v float64) *float64 { return &v }
	for _, c := range []struct {
		name         string
		from, to     float64
		limit, half  float64
		moved, known bool
	}{
		{"a thousandth of the limit", 0, 0.0009, 1.5, 0.0001, false, true},
		{"beyond it", 0, 0.0016, 1.5, 0.0001, true, true},
		{"half the band", 10, 10.4, 1.5, 0.5, false, true},
		{"beyond half the band", 10, 10.6, 1.5, 0.5, true, true},
		{"no band, within a hundredth", 10, 10.09, 1.5, 0, false, false},
		{"no band, beyond it", 10, 10.2, 1.5, 0, true, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			finding := func(v float64) assess.Finding {
				f := assess.Finding{ID: "x", Verdict: assess.VerdictHolds, Value: number(v), Limit: number(c.limit)}
				if c.known {
					f.BandLow, f.BandHigh = number(v-c.half), number(v+c.half)
				}
				return f
			}
			got := Moves(assess.Report{Findings: []assess.Finding{finding(c.from)}}, assess.Report{Findings: []assess.Finding{finding(c.to)}}, nil)
			if got[0].Moved != c.moved {
				t.Errorf("moved %v by %g with a step of %g", got[0].Moved, *got[0].ValueChange, *got[0].Step)
			}
		})
	}
}

// TestWorstChangeComesFirst builds reports by hand, one finding for each kind of change.
func TestWorstChangeComesFirst(t *testing.T) {
	t.Parallel()
	finding := func(id string, verdict assess.Verdict, margin, half float64) assess.Finding {
		value, low, high := 10+margin, 10+margin-half, 10+margin+half
		return assess.Finding{ID: id, Verdict: verdict, Value: &value, Margin: &margin, BandLow: &low, BandHigh: &high}
	}
	const holds, tight, fails, unknown = assess.VerdictHolds, assess.VerdictTight, assess.VerdictFails, assess.VerdictUnknown
	before := []assess.Finding{finding("still", holds, 5, 1), finding("better", fails, -1, 1), finding("less", holds, 9, 1), finding("tighter", holds, 3, 1),
		finding("fallen", holds, 2, 1), finding("half", tight, 1, 2), finding("more", holds, 5, 1), finding("gone", holds, 1, 1), finding("lost", holds, 1, 1)}
	after := []assess.Finding{finding("still", holds, 5.9, 0.5), finding("better", holds, 2, 1), finding("less", holds, 5, 1), finding("tighter", tight, 0.5, 1),
		finding("fallen", fails, -1, 1), finding("half", tight, -0.5, 2), finding("more", holds, 7, 1), {ID: "lost", Verdict: unknown}, finding("new", fails, -1, 1)}
	var got []string
	for _, m := range Moves(assess.Report{Findings: before}, assess.Report{Findings: after}, nil) {
		word := m.FindingID
		if !m.Moved {
			word = "(" + word + ")"
		}
		got = append(got, word)
	}
	want := []string{"fallen", "new", "lost", "tighter", "less", "gone", "more", "better", "(still)", "(half)"}
	if !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
}
