package assess_test

import (
	"slices"
	"strings"
	"testing"

	"pitgate/server/physics/assess"
)

// TestLinksNameWhatIsMissing takes away one input at a time and wants the finding that needs it to name it.
func TestLinksNameWhatIsMissing(t *testing.T) {
	t.Parallel()
	rows := []struct {
		path, finding string
		remove        func(*assess.Input)
	}{
		{"model.radio.frequencyMegahertz", "radio.margin", func(in *assess.Input) { in.Model.Radio.FrequencyMegahertz = nil }},
		{"model.radio.radiatedPowerMilliwatts", "radio.margin", func(in *assess.Input) { in.Model.Radio.RadiatedPowerMilliwatts = nil }},
		{"model.radio.receiverSensitivityDbm", "radio.margin", func(in *assess.Input) { in.Model.Radio.ReceiverSensitivityDbm = nil }},
		{"model.radio.antennas", "radio.margin", func(in *assess.Input) { in.Model.Radio.Antennas = nil }},
		{"model.radio.antennas[1].elevationDegrees", "radio.margin", func(in *assess.Input) {
			in.Model.Radio.Antennas[1].AzimuthDegrees, in.Model.Radio.Antennas[1].ElevationDegrees = nil, nil
		}},
		{"field.pilotPosition", "radio.margin", func(in *assess.Input) { in.Field.PilotPosition = nil }},
		{"model.radio.rangeCheckMeters", "radio.range_check", func(in *assess.Input) { in.Model.Radio.RangeCheckMeters = nil }},
		{"model.radio.rangeCheckReductionDecibels", "radio.range_check", func(in *assess.Input) { in.Model.Radio.RangeCheckReductionDecibels = nil }},
		{"model.radio.failSafeAction", "radio.failsafe", func(in *assess.Input) { in.Model.Radio.FailSafeAction = "" }},
		{"model.radio.failSafeDelaySeconds", "radio.failsafe", func(in *assess.Input) { in.Model.Radio.FailSafeDelaySeconds = nil }},
		{"model.radio.receiverCount", "radio.redundancy", func(in *assess.Input) { in.Model.Radio.ReceiverCount = nil }},
		{"model.radio.separateReceiverPacks", "radio.redundancy", func(in *assess.Input) { in.Model.Radio.SeparateReceiverPacks = nil }},
		{"model.packs", "radio.redundancy", func(in *assess.Input) { in.Model.Packs = nil }},
		{"model.radio", "radio.interference", func(in *assess.Input) { in.Model.Radio = nil }},
		{"model.packs", "packs.energy", func(in *assess.Input) { in.Model.Packs = nil }},
		{"model.packs", "packs.engine_control", func(in *assess.Input) { in.Model.Packs = in.Model.Packs[:2] }},
		{"model.engines", "packs.endurance", func(in *assess.Input) { in.Model.Engines = nil }},
		{"model.packs[0].chargeRatio", "packs.energy", func(in *assess.Input) { in.Model.Packs[0].ChargeRatio = nil }},
		{"model.packs[0].chemistry", "packs.voltage", func(in *assess.Input) { in.Model.Packs[0].Chemistry = "" }},
		{"model.packs[1].capacityAmpereHours", "packs.current", func(in *assess.Input) { in.Model.Packs[1].CapacityAmpereHours = nil }},
		{"model.packs[0].leadLengthMeters", "packs.voltage", func(in *assess.Input) { in.Model.Packs[0].LeadLengthMeters = nil }},
		{"model.packs[0].regulatorDropOutVolts", "packs.voltage", func(in *assess.Input) { in.Model.Packs[0].RegulatorDropOutVolts = nil }},
		{"model.packs[2].meanCurrentAmperes", "packs.engine_control", func(in *assess.Input) { in.Model.Packs[2].MeanCurrentAmperes = nil }},
		{"model.packs[0].waitInOpenMinutes", "packs.cold", func(in *assess.Input) { in.Model.Packs[0].WaitInOpenMinutes = nil }},
		{"model.packs[1].massKg", "packs.cold", func(in *assess.Input) { in.Model.Packs[1].MassKg = nil }},
		{"model.packs[0].loadedVoltageVolts", "packs.check", func(in *assess.Input) { in.Model.Packs[0].LoadedVoltageVolts = nil }},
		{"day.temperatureCelsius", "packs.energy", func(in *assess.Input) { in.Day.TemperatureCelsius = nil }},
		{"launchPlan.circuit.circuitCount", "packs.energy", func(in *assess.Input) { in.LaunchPlan.Circuit.CircuitCount = nil }},
	}
	for _, row := range rows {
		t.Run(row.finding+" "+row.path, func(t *testing.T) {
			t.Parallel()
			in := demoInput(t, "nightjar_long_acre")
			row.remove(&in)
			f := findingOf(t, unbanded(t, in), row.finding)
			if f.Verdict != assess.VerdictUnknown || !slices.Contains(f.Missing, row.path) {
				t.Errorf("%s, missing %v", f.Verdict, f.Missing)
			}
		})
	}
}

// TestLinksSayWhatWouldMend wants the note of a fault to name the change that mends it.
func TestLinksSayWhatWouldMend(t *testing.T) {
	t.Parallel()
	yes := true
	rows := []struct {
		name, document, finding, note string
		plant                         func(*assess.Input)
	}{
		{"antenna in carbon", "dabchick_long_acre", "radio.margin", "Bring every antenna out.", func(in *assess.Input) {
			in.Model.Radio.Antennas[1].InsideCarbon = &yes
		}},
		{"one antenna in the shade of carbon", "dabchick_long_acre", "radio.margin", "It holds with nothing in front of the antennas", func(in *assess.Input) {
			in.Model.Radio.Antennas[0].ShadedBy, in.Model.Radio.Antennas[1].ShadedBy = []string{"carbon spar"}, []string{"battery"}
		}},
		{"hold", "sandmartin_long_acre", "radio.failsafe", "Set the fail-safe to cut the engine.", func(in *assess.Input) {
			in.Model.Radio.FailSafeAction = assess.FailSafeActionHold
		}},
		{"slow", "sandmartin_long_acre", "radio.failsafe", "Shorten the delay by 3.0 s.", func(in *assess.Input) {
			in.Model.Radio.FailSafeDelaySeconds = quantity(5)
		}},
		{"half empty", "dabchick_long_acre", "packs.energy", "% charge in place of 25 %", func(in *assess.Input) {
			in.Model.Packs[1].ChargeRatio = quantity(0.25)
		}},
		{"check too near", "dabchick_long_acre", "radio.range_check", "Walk 25 m to show 10 dB there.", func(in *assess.Input) {
			in.Model.Radio.RangeCheckMeters = quantity(12)
		}},
		{"impossible check", "dabchick_long_acre", "radio.range_check", "an entry is wrong", func(in *assess.Input) {
			in.Model.Radio.RangeCheckMeters, in.Model.Radio.RadiatedPowerMilliwatts = quantity(400), quantity(0.001)
		}},
		{"impossible reading", "dabchick_long_acre", "packs.check", "cannot be", func(in *assess.Input) {
			in.Model.Packs[1].LoadedVoltageVolts = quantity(7.5)
		}},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			in := demoInput(t, row.document)
			row.plant(&in)
			f := findingOf(t, unbanded(t, in), row.finding)
			if f.Verdict != assess.VerdictFails || !strings.Contains(f.Note, row.note) {
				t.Errorf("%s: %q", f.Verdict, f.Note)
			}
		})
	}
}

// TestRuleAsksForSecondReceiver wants a published rule, and it alone, to make a limit of what else is only told.
func TestRuleAsksForSecondReceiver(t *testing.T) {
	t.Parallel()
	silent := false
	rows := []struct {
		name, document, finding string
		rule                    bool
		want                    assess.Verdict
	}{
		{"told", "sandmartin_long_acre", "radio.redundancy", false, assess.VerdictHolds},
		{"asked for", "sandmartin_long_acre", "radio.redundancy", true, assess.VerdictFails},
		{"asked for and there", "nightjar_long_acre", "radio.redundancy", true, assess.VerdictHolds},
		{"no warning", "sandmartin_long_acre", "radio.telemetry", false, assess.VerdictHolds},
		{"warning asked for", "sandmartin_long_acre", "radio.telemetry", true, assess.VerdictFails},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			in := demoInput(t, row.document)
			in.Model.Radio.TelemetryLossWarned = &silent
			if row.rule {
				in.Limits.Rules = append(in.Limits.Rules, assess.AppliedRule{FindingID: row.finding, Authority: "Larkmoor Model Flying Club"})
			}
			if f := findingOf(t, unbanded(t, in), row.finding); f.Verdict != row.want {
				t.Errorf("%s: %q", f.Verdict, f.Note)
			}
		})
	}
}
