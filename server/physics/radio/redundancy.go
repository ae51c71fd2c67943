package radio

import "math"

// Equipment counts what a link and its supply have of each.
type Equipment struct {
	Receivers     int
	Antennas      int // outside carbon
	Packs         int // that feed receivers
	Switches      int // between packs and receivers; with two of them each on its own pack
	Buses         int // supplies that reach the servos by their own leads
	CrossFeed     bool
	SharedGround  bool // every pack returns by one lead
	TelemetryLink bool
}

// SingleFailures returns what one failure of ends control, in the order of how often it is met by common practice. CrossFeed says that each pack can
// feed every receiver; without it a pack lost takes its receiver along, which two receivers still stand.
//
// Valid for: receivers that take over from one another by themselves. Source: cut sets of order one of the supply and the link.
func (e Equipment) SingleFailures() []string {
	var out []string
	for _, part := range []struct {
		name  string
		fails bool
	}{
		{"pack", e.Packs < 2},
		{"switch", e.Switches < 2},
		{"return lead", e.SharedGround},
		{"supply bus", e.Buses < 2},
		{"antenna", e.Antennas < 2},
		{"receiver", e.Receivers < 2},
		{"pack and its receiver", e.Packs >= 2 && !e.CrossFeed && e.Receivers < 2},
	} {
		if part.fails {
			out = append(out, part.name)
		}
	}
	return out
}

// AllFail returns the chance that every one of several like parts fails in a flight, 0 to 1: beta p + (1 - beta) p^n.
//
// where chance p is that of one, count n of them, common beta the share of failures that hit all of them (0 to 1; a tenth is common practice).
// Valid for: p far below 1. Source: beta-factor model of functional reliability, recalled.
func AllFail(chance float64, count int, common float64) float64 {
	p, beta := clamp(chance, 0, 1), clamp(common, 0, 1)
	if count <= 1 {
		return p
	}
	return float64(beta*p) + float64((1-beta)*DiversityOutage(p, count))
}

// WayBack is the telemetry link.
type WayBack struct {
	RadiatedPower float64 // of the model, EIRP, dBm
	Sensitivity   float64 // of the transmitter's receiver, dBm
	AntennaGain   float64 // of the transmitter's antenna when it receives, against isotropic, dB
}

// WayBackResult is what the way back says of the way out.
type WayBackResult struct {
	Margin    float64 // of the way back where the way out has the margin given, dB
	Lead      float64 // margin the way out still has when the way back is lost, dB; negative: control is lost first
	FirstLost bool    // telemetry is lost before control: its loss is a warning
	RangeLost float64 // distance at which telemetry is lost, over the present distance, none
}

// TelemetryLoss returns the margin of the way back from that of the way out over the same path, by reciprocity.
//
//	M(back) = M(out) + (P(back) - P(out)) + (G(back) - G(model)) - (S(back) - S(out))
//
// where P is the power radiated, G the gain of the receiving antenna, S the sensitivity. Both ways lose the same by path, attitude and shade; the
// model's antenna is counted in its radiated power on the way back. Lead is how much the way out has left when the way back ends.
// Valid for: one band, one antenna for both. Source: reciprocity of antennas. Errors: ErrInput.
func TelemetryLoss(link Link, out float64, back WayBack) (WayBackResult, error) {
	for _, v := range []struct {
		field string
		value float64
	}{
		{"margin", out}, {"telemetry power", back.RadiatedPower}, {"telemetry sensitivity", back.Sensitivity}, {"telemetry antenna gain", back.AntennaGain},
	} {
		if err := within(v.field, v.value, -mostDecibels, mostDecibels); err != nil {
			return WayBackResult{}, err
		}
	}
	if err := link.check(); err != nil {
		return WayBackResult{}, err
	}
	lead := (link.RadiatedPower - back.RadiatedPower) + (HalfWaveGain - back.AntennaGain) + (back.Sensitivity - link.Sensitivity)
	result := WayBackResult{Margin: out - lead, Lead: lead, FirstLost: lead > 0}
	result.RangeLost = FreeSpaceFactor(math.Min(result.Margin, 200))
	return result, nil
}
