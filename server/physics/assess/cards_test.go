package assess_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pitgate/server/physics/assess"
)

// wantWholeCard wants every line to say something, every figure to be a number with its unit and to name where it is from, and every caution.
func wantWholeCard(t *testing.T, report assess.Report, card assess.ReportCard) {
	t.Helper()
	var cautions []string
	for _, line := range card.Lines {
		if line.Heading == "" || line.Text == "" && line.Value == nil {
			t.Errorf("%s: empty line %+v", card.ID, line)
		}
		if line.Heading == "Bear in mind" {
			cautions = append(cautions, line.Text)
		}
		if line.Value != nil && (line.Unit == "" || math.IsNaN(*line.Value) || math.IsInf(*line.Value, 0)) {
			t.Errorf("%s: %s: %v %q", card.ID, line.Heading, *line.Value, line.Unit)
		}
		if (line.Value != nil || line.From != "") && !isSource(report, line.From) {
			t.Errorf("%s: %s is from %q", card.ID, line.Heading, line.From)
		}
	}
	if !slices.Equal(cautions, assess.Cautions()) {
		t.Errorf("%s: cautions %v", card.ID, cautions)
	}
}

// isSource reports whether a name is a quantity or finding of the report or a field of the document.
func isSource(report assess.Report, name string) bool {
	return slices.ContainsFunc(report.Quantities, func(q assess.ReportQuantity) bool { return q.ID == name }) ||
		slices.ContainsFunc(report.Findings, func(f assess.Finding) bool { return f.ID == name }) || name != "" && isPath(name)
}

func cardOf(report assess.Report, id string) *assess.ReportCard {
	for i := range report.Cards {
		if report.Cards[i].ID == id {
			return &report.Cards[i]
		}
	}
	return nil
}

func lineOf(t *testing.T, report assess.Report, id, heading string) assess.CardLine {
	t.Helper()
	if card := cardOf(report, id); card != nil {
		for _, line := range card.Lines {
			if line.Heading == heading {
				return line
			}
		}
	}
	t.Fatalf("%s has no line %q", id, heading)
	return assess.CardLine{}
}

func TestCardsAreWholeAndThoseNeeded(t *testing.T) {
	t.Parallel()
	for name, want := range map[string][]string{
		"dabchick_long_acre":   {"card.static_run", "card.taxi", "card.range_check", "card.first_flight"},
		"sandmartin_long_acre": {"card.static_run", "card.taxi", "card.range_check", "card.first_flight"},
		"redshank_quarry_top":  {"card.static_run", "card.range_check", "card.first_flight"},
		"nightjar_long_acre":   {"card.static_run", "card.taxi", "card.range_check", "card.first_flight"},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			report := assessed(t, demoInput(t, name))
			var got []string
			for _, card := range report.Cards {
				got = append(got, card.ID)
				wantWholeCard(t, report, card)
			}
			if !slices.Equal(got, want) {
				t.Errorf("cards %v, want %v", got, want)
			}
		})
	}
}

// TestFirstFlightByHand holds the figures of the first flight against hand work.
func TestFirstFlightByHand(t *testing.T) {
	t.Parallel()
	report := assessed(t, demoInput(t, "sandmartin_long_acre"))
	of := func(id string) float64 { return toldNumber(t, report, id) }
	launch := findingOf(t, report, "launch.distance")
	for heading, want := range map[string]float64{
		"Landing call, at the latest":          math.Floor(of("fuel.landing_call")),
		"Planned flight":                       math.Ceil(of("launch.screen_time") + 5*of("fuel.circuit_time")),
		"Not turned back below":                of("engine_out.turn_back_height"),
		"Circuit at":                           70,
		"Never above":                          120,
		"Bank no steeper than":                 50,
		"Lift-off":                             of("liftoff.speed"),
		"Never faster than":                    of("speed.never_exceed"),
		"Abort point of the launch":            of("launch.ground_run") * *launch.BandHigh / *launch.Value,
		"Of it ahead, no less":                 of("launch.headwind"),
		"Across, gusts included, no more than": *findingOf(t, report, "weather.crosswind").Limit,
	} {
		if line := lineOf(t, report, "card.first_flight", heading); line.Value == nil || math.Abs(*line.Value-want) > 1e-9*math.Abs(want) {
			t.Errorf("%s: %v, want %v", heading, text(line.Value), want)
		}
	}
}

// TestTheLeastGovernsTheFlight charges the receiver pack less and less: from some charge on it governs, and never lengthens the flight.
func TestTheLeastGovernsTheFlight(t *testing.T) {
	t.Parallel()
	last, governed := math.Inf(1), ""
	for _, charge := range []float64{0.95, 0.3, 0.08, 0.03} {
		in := demoInput(t, "sandmartin_long_acre")
		in.Model.Packs[0].ChargeRatio = quantity(charge)
		line := lineOf(t, told(t, in), "card.first_flight", "Landing call, at the latest")
		if line.Value == nil || *line.Value > last {
			t.Fatalf("charged to %v: %v s after %v s", charge, text(line.Value), last)
		}
		last, governed = *line.Value, line.Text
	}
	if !strings.HasSuffix(governed, "governed by: receiver pack") {
		t.Error(governed)
	}
}

// TestBankYieldsToTheStall slows the circuit: the bank becomes less than planned, then none is left.
func TestBankYieldsToTheStall(t *testing.T) {
	t.Parallel()
	stall := toldNumber(t, told(t, demoInput(t, "sandmartin_long_acre")), "stall.speed")
	for _, speed := range []float64{40, 24, 22, 19.5} {
		in := demoInput(t, "sandmartin_long_acre")
		in.LaunchPlan.Circuit.AirspeedMetersPerSecond = quantity(speed)
		line := lineOf(t, told(t, in), "card.first_flight", "Bank no steeper than")
		ratio := 1.2 * stall / (speed - 1.5)
		cosine := ratio * ratio
		want := 0.0
		if cosine < 1 {
			want = min(50, math.Acos(cosine)*180/math.Pi)
		}
		if line.Value == nil || math.Abs(*line.Value-want) > 1e-6 {
			t.Errorf("at %v m/s %v deg, want %v", speed, text(line.Value), want)
		}
	}
}

// TestTaxiStopsOnTheStrip holds each abort point against the way to rest by hand, and wants it nearer the faster the run.
func TestTaxiStopsOnTheStrip(t *testing.T) {
	t.Parallel()
	report := told(t, demoInput(t, "sandmartin_long_acre"))
	liftoff, friction := toldNumber(t, report, "liftoff.speed"), toldNumber(t, report, "launch.rolling_friction")
	for i, share := range []float64{0.15, 0.4, 0.6, 0.8} {
		v := share * liftoff
		want := 285.002390165416 - v - v*v/(2*friction*9.80665)
		line := lineOf(t, report, "card.taxi", "Abort point of step "+string(rune('1'+i)))
		if line.Value == nil || math.Abs(*line.Value-want) > 1e-6 {
			t.Errorf("step %d: %v m, want %v m", i+1, text(line.Value), want)
		}
	}
}

// TestShortStripHasNoAbortPoint wants the fast run and the launch to be refused where the strip is too short to stop.
func TestShortStripHasNoAbortPoint(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "sandmartin_long_acre")
	strip := &in.Field.Strips[0]
	strip.End.XMeters, strip.End.YMeters = number(*strip.Start.XMeters+60), strip.Start.YMeters
	report := told(t, in)
	if line := lineOf(t, report, "card.taxi", "Abort point of step 4"); line.Value != nil || !strings.Contains(line.Text, "Do not do this step here") {
		t.Errorf("%+v", line)
	}
	if line := lineOf(t, report, "card.first_flight", "Abort point of the launch"); line.Value != nil {
		t.Errorf("%+v", line)
	}
}

// TestCardNamesWhatIsMissing takes an input away and wants the card to name it where its figure stood.
func TestCardNamesWhatIsMissing(t *testing.T) {
	t.Parallel()
	for _, row := range []struct {
		card, heading, names string
		drop                 func(*assess.Input)
	}{
		{"card.first_flight", "Landing call, at the latest", "", nil},
		{"card.first_flight", "Landing call", "model.engines[0].fullFuelFlowGramsPerMinute", func(in *assess.Input) { in.Model.Engines[0].FullFuelFlowGramsPerMinute = nil }},
		{"card.first_flight", "Stall", "model.surfaces", func(in *assess.Input) { in.Model.Surfaces = nil }},
		{"card.range_check", "Walk at least to", "model.radio.rangeCheckReductionDecibels", func(in *assess.Input) { in.Model.Radio.RangeCheckReductionDecibels = nil }},
		{"card.static_run", "2. Idle to full", "model.engines[0].spoolUpSeconds", func(in *assess.Input) { in.Model.Engines[0].SpoolUpSeconds = nil }},
		{"card.taxi", "Speeds and stopping places", "model.mass", func(in *assess.Input) { in.Model.Mass = nil }},
	} {
		t.Run(row.card+" "+row.heading, func(t *testing.T) {
			t.Parallel()
			in := demoInput(t, "sandmartin_long_acre")
			if row.drop == nil {
				if line := lineOf(t, told(t, in), row.card, row.heading); line.Value == nil {
					t.Errorf("%+v", line)
				}
				return
			}
			row.drop(&in)
			line := lineOf(t, told(t, in), row.card, row.heading)
			if line.Value != nil || !strings.Contains(line.Text, row.names) {
				t.Errorf("%+v", line)
			}
		})
	}
}
