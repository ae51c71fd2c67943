package assess

import (
	"math"
	"strings"

	"pitgate/server/physics/elementary"
)

const radioGroup = "Radio"

var benchRadioRows = []benchRow{
	{id: "bench.radio.failsafe", group: radioGroup, title: "Fail-safe, timed", input: "model.radio.failSafeDelaySeconds", unit: "s", applies: hasRadio,
		how: "Model held, engine stopped, servos moving: switch the transmitter off and time it until the throttle has closed. Three times, the longest counts.",
		why: "Until then the model flies on as it was.", findings: []string{"radio.failsafe", "link_loss.footprint"},
		wanted: func(v *benchView, _ *benchSubject) benchWanted {
			return most(v.limitOf("radio.failsafe"), "from transmitter off to throttle closed")
		}},
	{id: "bench.radio.action", group: radioGroup, title: "What the fail-safe does", input: "model.radio.failSafeAction", photo: true, applies: hasRadio,
		how: "Look at every surface and at the throttle after it has acted, and write it down. Switch on again: control returns.",
		why: "The place where the model comes down was computed for this action.", findings: []string{"radio.failsafe", "link_loss.footprint"}, wanted: wantedAction},
	{id: "bench.radio.range", group: radioGroup, title: "Range check", input: "model.radio.rangeCheckMeters", unit: "m", applies: hasRadio,
		how: "By the card of the range check: model on a stand, reduced power, walk away until control stutters; then once more with the engine running.",
		why: "It shows the margin at its own distance, and by it that of the farthest corner.", findings: []string{"radio.range_check", "radio.margin"}, wanted: wantedRange},
	{id: "bench.radio.antenna", group: radioGroup, title: "Antenna", each: benchAntennas, photo: true,
		how: "Find its active end. Measure its direction, look what stands in front of it, hold a piece of its surroundings against the light: carbon is black and conducts.",
		why: "Carbon, metal and fuel swallow the link.", findings: []string{"radio.margin"}, wanted: wantedAntenna},
	{id: "bench.radio.angle", group: radioGroup, title: "Angle between the antennas", unit: "deg",
		how: "Hold a square against both active ends.", why: "Where one points at the pilot the other must not.", findings: []string{"radio.margin"},
		applies: func(v *benchView, _ *benchSubject) bool { _, known := v.antennaAngle(); return known }, wanted: wantedAngle},
	{id: "bench.radio.receivers", group: radioGroup, title: "Each receiver alone", input: "model.radio.receiverCount", unit: "1",
		how: "Switch one off, then the other: all surfaces go on moving each time.", why: "A second receiver that does not take over is none.",
		findings: []string{"radio.redundancy"}, applies: hasTwoReceivers,
		wanted: func(v *benchView, _ *benchSubject) benchWanted {
			return exactly(v.model.Radio.ReceiverCount, "each keeps control alone")
		}},
	{id: "bench.radio.telemetry", group: radioGroup, title: "Warning when the way back is lost", input: "model.radio.telemetryLossWarned", applies: hasRadio,
		how: "Cover the model's antenna or walk away until the transmitter speaks.", why: "It is the first sign of a link that fails.",
		findings: []string{"radio.telemetry"}, wanted: state("the transmitter warns within seconds")},
	{id: "bench.radio.interference", group: radioGroup, title: "Interference", input: "model.radio.interference", applies: hasRadio,
		how: "Everything on: pumps, controllers, telemetry, lights. Watch the surfaces for a minute, engine stopped and running.", why: "A twitch on the bench is a loss in the air.",
		findings: []string{"radio.interference"}, wanted: state("nothing twitches; what did is written down with its cause")},
}

func hasRadio(v *benchView, _ *benchSubject) bool { return v.model.Radio != nil }

func hasTwoReceivers(v *benchView, _ *benchSubject) bool {
	return v.model.Radio != nil && v.model.Radio.ReceiverCount != nil && *v.model.Radio.ReceiverCount > 1
}

func wantedAction(v *benchView, _ *benchSubject) benchWanted {
	if words := v.text["link_loss.action"]; words != "" {
		return benchWanted{text: words}
	}
	return benchWanted{text: "throttle closed at once; the document does not say what the surfaces do"}
}

func wantedRange(v *benchView, _ *benchSubject) benchWanted {
	text := "control everywhere up to here"
	if q := v.model.Radio.RangeCheckReductionDecibels; q != nil && q.Value != nil {
		text += sayNumbers(", power reduced by %.0f dB", *q.Value)
	}
	return least(v.number("radio.check_needed"), text)
}

func benchAntennas(v *benchView) []benchSubject {
	if v.model.Radio == nil {
		return nil
	}
	out := make([]benchSubject, len(v.model.Radio.Antennas))
	for i := range v.model.Radio.Antennas {
		out[i] = benchSubject{name: v.model.Radio.Antennas[i].Name, path: at("model.radio.antennas", i), index: i}
	}
	return out
}

func wantedAntenna(v *benchView, s *benchSubject) benchWanted {
	a := &v.model.Radio.Antennas[s.index]
	var parts []string
	if a.AzimuthDegrees != nil && a.ElevationDegrees != nil {
		parts = append(parts, sayNumbers("axis %.0f deg from ahead, %.0f deg up", *a.AzimuthDegrees, *a.ElevationDegrees))
	}
	if len(a.ShadedBy) > 0 {
		parts = append(parts, "behind "+strings.Join(a.ShadedBy, ", ")+" as the document says, behind nothing else")
	} else {
		parts = append(parts, "nothing before it")
	}
	return benchWanted{text: strings.Join(append(parts, "outside carbon"), ", ")}
}

// antennaAngle is the angle between the axes of the first two antennas, degrees; axes have no sense, so it is 90 at most.
func (v *benchView) antennaAngle() (float64, bool) {
	if v.model.Radio == nil || len(v.model.Radio.Antennas) < 2 {
		return 0, false
	}
	var axes [2][3]float64
	for i := range axes {
		a := &v.model.Radio.Antennas[i]
		if a.AzimuthDegrees == nil || a.ElevationDegrees == nil {
			return 0, false
		}
		around, up := radians(*a.AzimuthDegrees), radians(*a.ElevationDegrees)
		level := elementary.Cos(up)
		axes[i] = [3]float64{level * elementary.Cos(around), level * elementary.Sin(around), elementary.Sin(up)}
	}
	dot := float64(axes[0][0]*axes[1][0]) + float64(axes[0][1]*axes[1][1]) + float64(axes[0][2]*axes[1][2])
	dot = math.Min(1, math.Abs(dot))
	return degrees(elementary.Atan2(math.Sqrt(1-float64(dot*dot)), dot)), true
}

// leastAntennaAngle is the angle under which two antennas no longer fade together, degrees.
//
// Source: common practice, no source.
const leastAntennaAngle = 60.0

func wantedAngle(v *benchView, _ *benchSubject) benchWanted {
	angle, _ := v.antennaAngle()
	low := leastAntennaAngle
	return benchWanted{text: sayNumbers("near a right angle; the document gives %.0f deg", angle), low: &low}
}
