package assess_test

import (
	"slices"
	"testing"

	"pitgate/server/physics/assess"
)

// worse names the findings whose verdict is worse in one report than in another, in the order of their ids.
func worse(got, base assess.Report) []string {
	order := map[assess.Verdict]int{assess.VerdictHolds: 0, assess.VerdictTight: 1, assess.VerdictUnknown: 2, assess.VerdictFails: 3}
	was := map[string]assess.Verdict{}
	for i := range base.Findings {
		was[base.Findings[i].ID] = base.Findings[i].Verdict
	}
	var ids []string
	for i := range got.Findings {
		if f := &got.Findings[i]; order[f.Verdict] > order[was[f.ID]] {
			ids = append(ids, f.ID)
		}
	}
	slices.Sort(ids)
	return ids
}

// frosty is a day of minus six degrees on which the packs lay in the open for two hours.
func frosty(in *assess.Input) {
	in.Day.TemperatureCelsius, in.Day.Metar = quantity(-6), ""
	for i := range in.Model.Packs {
		in.Model.Packs[i].WaitInOpenMinutes = quantity(120)
	}
}

// plantedLinks are faults of link and packs, each alone in a sound model, and the findings that get worse by it: no other may.
var plantedLinks = []struct {
	name, document string
	ground         func(*assess.Input) // the sound model's own day
	plant          func(*assess.Input)
	want           []string
}{
	{"one antenna in carbon", "dabchick_long_acre", nil, func(in *assess.Input) {
		carbon := true
		in.Model.Radio.Antennas[1].InsideCarbon = &carbon
	}, []string{"radio.margin"}},
	{"every antenna in carbon", "sandmartin_long_acre", nil, func(in *assess.Input) {
		carbon := true
		for i := range in.Model.Radio.Antennas {
			in.Model.Radio.Antennas[i].InsideCarbon = &carbon
		}
	}, []string{"radio.margin", "radio.range_check"}},
	{"fail-safe holds", "sandmartin_long_acre", nil, func(in *assess.Input) {
		in.Model.Radio.FailSafeAction = assess.FailSafeActionHold
	}, []string{"link_loss.footprint", "radio.failsafe"}},
	{"fail-safe after five seconds", "sandmartin_long_acre", nil, func(in *assess.Input) {
		in.Model.Radio.FailSafeDelaySeconds = quantity(5)
	}, []string{"link_loss.footprint", "radio.failsafe"}},
	{"turbine left idling", "sandmartin_long_acre", nil, func(in *assess.Input) {
		in.Model.Radio.FailSafeAction = assess.FailSafeActionIdleNeutral
	}, []string{"link_loss.footprint", "radio.failsafe"}},
	{"pack 40 % charged in the cold", "dabchick_long_acre", frosty, func(in *assess.Input) {
		in.Model.Packs[1].ChargeRatio = quantity(0.4)
	}, []string{"packs.cold", "packs.energy"}},
	{"flight pack 40 % charged in the cold", "dabchick_long_acre", frosty, func(in *assess.Input) {
		in.Model.Packs[0].ChargeRatio = quantity(0.4)
	}, []string{"packs.current", "packs.endurance", "packs.reserve"}},
	{"range check too near", "dabchick_long_acre", nil, func(in *assess.Input) {
		in.Model.Radio.RangeCheckMeters = quantity(12)
	}, []string{"radio.range_check"}},
	{"twitch without a cause", "redshank_quarry_top", nil, func(in *assess.Input) {
		in.Model.Radio.Interference[0].Cause = ""
	}, []string{"radio.interference"}},
	{"worn receiver pack", "nightjar_long_acre", nil, func(in *assess.Input) {
		in.Model.Packs[0].LoadedVoltageVolts = quantity(7.7)
	}, []string{"packs.check"}},
	{"thin leads", "sandmartin_long_acre", nil, func(in *assess.Input) {
		in.Model.Packs[0].LeadAreaSquareMillimeters, in.Model.Packs[0].LeadLengthMeters = quantity(0.25), quantity(0.6)
	}, []string{"packs.current", "packs.voltage"}},
}

func TestPlantedFaultsOfLinkAndPacks(t *testing.T) {
	t.Parallel()
	for _, row := range plantedLinks {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			sound, faulty := demoInput(t, row.document), demoInput(t, row.document)
			if row.ground != nil {
				row.ground(&sound)
				row.ground(&faulty)
			}
			row.plant(&faulty)
			if got := worse(assessed(t, faulty), assessed(t, sound)); !slices.Equal(got, row.want) {
				t.Errorf("worse by it: %v, want %v", got, row.want)
			}
		})
	}
}
