package assess

import (
	"math"
	"strings"

	"pitgate/server/physics/field"
	"pitgate/server/physics/radio"
)

const (
	radioPath = "model.radio"
	// spreadRadio is how far a computed link may be off, dB: ground, shading and the model's own body.
	spreadRadio = 3.0
	// spreadInstalled is how far the loss of an installed receiver may be off, dB.
	spreadInstalled = 2.0
	// usualTransmitterHeight is how high a transmitter's antenna is held where nobody says, m.
	usualTransmitterHeight = 1.4
	spreadTransmitter      = 0.15
	// lowAntenna is the height of a model's antenna while it rolls or slides, m: judgement.
	lowAntenna      = 0.3
	lowAntennaRange = 0.1
	// leastAlong keeps a place off the transmitter itself, m.
	leastAlong = 1.0

	lowAntennaMethod = "method: height of the antenna over the strip"
	radioMethod      = "method: radio link"
	installedMethod  = "method: loss of an installed receiver"
)

// installed is what the antennas of a model do in all its attitudes.
type installed struct {
	missing []string
	list    []radio.Antenna
	all     radio.Installation
}

// install computes what the antennas of a document do.
func install(antennas []Antenna) installed {
	if len(antennas) == 0 {
		return installed{missing: []string{radioPath + ".antennas"}}
	}
	var out installed
	for i := range antennas {
		a, path := &antennas[i], at(radioPath+".antennas", i)
		if a.AzimuthDegrees == nil && a.ElevationDegrees == nil {
			out.missing = append(out.missing, path+".azimuthDegrees", path+".elevationDegrees")
		}
		out.list = append(out.list, radio.Antenna{
			Name: a.Name, Axis: radio.Axis(radians(orElse(a.AzimuthDegrees, 0)), radians(orElse(a.ElevationDegrees, 0))),
			ShadedBy: a.ShadedBy, InsideCarbon: yes(a.InsideCarbon),
		})
	}
	if len(out.missing) == 0 {
		out.all = radio.Install(out.list)
	}
	return out
}

// radioSection is the link with the places where it is asked for.
type radioSection struct {
	missing  []string
	link     radio.Link
	places   []radio.Place
	farthest float64 // slant range of the farthest corner, m
	wanted   limit
	read     []string
}

// answerRadio answers for the link: its margin, its range check, its fail-safe, and what is doubled and noted of it.
func (p *pass) answerRadio() {
	l := p.readRadio()
	p.answerRadioMargin(&l)
	p.answerRangeCheck(&l)
	p.answerFailSafe()
	p.answerRedundancy()
	p.answerTelemetry()
	p.answerInterference()
}

// radio returns the link of the document, empty when there is none.
func (p *pass) radio() *RadioLink {
	if p.in.Model == nil || p.in.Model.Radio == nil {
		return &RadioLink{}
	}
	return p.in.Model.Radio
}

func (p *pass) readRadio() radioSection {
	n, mark, r := p.need(), p.mark(), p.radio()
	l := radioSection{wanted: p.limit(radioMarginFigure)}
	frequency := n.quantity(radioPath+".frequencyMegahertz", r.FrequencyMegahertz)
	power := n.quantity(radioPath+".radiatedPowerMilliwatts", r.RadiatedPowerMilliwatts)
	l.link = radio.Link{
		Frequency: frequency * 1e6, Sensitivity: n.quantity(radioPath+".receiverSensitivityDbm", r.ReceiverSensitivityDbm),
		Antennas: p.whole.antennas.list, TransmitterHeight: p.transmitterHeight(r), Polarization: polarization(r),
		InstalledLoss: max(0, radio.InstalledPlan+p.factor(installedMethod, spreadInstalled)-1),
	}
	n.lack(p.whole.antennas.missing...)
	if n.met() {
		l.link.RadiatedPower = radio.PowerDBm(power)
		if !(frequency > 0) {
			n.lack(radioPath + ".frequencyMegahertz")
		}
		if !(power > 0) {
			n.lack(radioPath + ".radiatedPowerMilliwatts")
		}
	}
	n.lack(p.day.missing...)
	if p.in.Field == nil || p.in.Field.PilotPosition == nil {
		n.lack("field.pilotPosition")
	}
	if n.met() {
		l.places = p.radioPlaces(&l)
	}
	l.missing, l.read = n.missing, p.since(mark)
	return l
}

// transmitterHeight returns the height of the transmitter's antenna, m, as told or as it is usually held.
func (p *pass) transmitterHeight(r *RadioLink) float64 {
	name := radioPath + ".transmitterHeightMeters"
	if r.TransmitterHeightMeters != nil {
		return max(0.05, *r.TransmitterHeightMeters+p.offset(name, spreadTransmitter))
	}
	return p.assumed(name, usualTransmitterHeight, 2*spreadTransmitter)
}

// polarization of an antenna that is not told is upright.
func polarization(r *RadioLink) radio.Polarization {
	if r.TransmitterAntennaElevationDegrees != nil && math.Abs(*r.TransmitterAntennaElevationDegrees) < 45 {
		return radio.Horizontal
	}
	return radio.Vertical
}

// radioPlaces returns the farthest corner of the circuit and, low over the ground, the ends of launch and landing.
func (p *pass) radioPlaces(l *radioSection) []radio.Place {
	pilot := flat(p.in.Field.PilotPosition)
	along := func(point field.Point) float64 { return max(leastAlong, pilot.Distance(point)) }
	corner := radio.Place{Name: "the farthest corner of the circuit", Height: max(0, p.day.height)}
	for _, point := range p.day.circuit {
		corner.Along = max(corner.Along, along(point))
	}
	l.farthest = root(corner.Along, corner.Height-l.link.TransmitterHeight)
	places := []radio.Place{corner}
	low := max(radio.LowestHeight, lowAntenna+p.factor(lowAntennaMethod, lowAntennaRange)-1)
	add := func(name string, point field.Point) {
		places = append(places, radio.Place{Name: name, Along: along(point), Height: low})
	}
	add("the start of the launch", p.along(0, 0))
	if p.launch.length > 0 {
		add("the far end of the strip", p.along(p.launch.length, 0))
	}
	if place := p.placeLanding(); len(place.missing) == 0 {
		add("the landing's threshold", place.threshold)
		add("the far end of the landing", place.threshold.Plus(field.Ahead(place.heading).Times(place.length)))
	}
	return places
}

// answerRadioMargin answers for the place where the link has least left.
func (p *pass) answerRadioMargin(l *radioSection) {
	found := answer{id: "radio.margin", missing: l.missing, limit: l.wanted}
	if len(l.missing) > 0 {
		p.conclude(found)
		return
	}
	antennas := &p.whole.antennas.all
	least, err := radio.Tightest(l.link, antennas, l.places)
	switch {
	case antennas.Counted == 0:
		found.never = "Every antenna lies inside a closed part of carbon or metal: no margin can be given. Bring one out."
	case err != nil:
		found.missing = []string{radioPath}
	default:
		found.value, found.outside = least.Usual+p.factor(radioMethod, spreadRadio)-1, len(antennas.Unknown) > 0
		if p.base() {
			found.note = p.radioNote(l, &least)
			p.tellRadio(l, &least)
		}
		if len(antennas.Enclosed) > 0 {
			found.never = enclosedNote(antennas, &least)
		}
	}
	p.conclude(found)
}

// enclosedNote says which antennas hear next to nothing. That fails whatever the others keep: the receiver counts on what it was given.
func enclosedNote(antennas *radio.Installation, least *radio.Margin) string {
	return say("Inside a closed part of carbon or metal, and so as good as not there: %s. With %s left, 19 attitudes in 20 keep %.0f dB at %s. Bring every antenna out.",
		strings.Join(antennas.Enclosed, ", "), counted(antennas.Counted, "antenna"), least.Usual, least.Place.Name)
}

// radioNote says where the link has least left, what the antennas do and what would mend it.
func (p *pass) radioNote(l *radioSection, least *radio.Margin) string {
	antennas := &p.whole.antennas.all
	note := say("Least at %s, %.0f m away: 19 attitudes in 20 keep %.0f dB, the best %.0f dB, the worst %.0f dB.",
		least.Place.Name, least.SlantRange, least.Usual, least.Clear, least.Worst)
	if antennas.Counted == 1 {
		note += " One antenna alone has a null that no attitude of another fills."
	}
	for _, name := range antennas.Unknown {
		note += say(" What %q takes is not known and taken as %.0f dB.", name, radio.UnknownShade)
	}
	if least.Usual < l.wanted.value {
		note += radioRemedy(l, least)
	}
	return note
}

// radioWords say what turning a knob of the link means; what is written with figures takes the new one and the old one.
var radioWords = pairings[radio.Knob, string]{
	{radio.KnobPower, "%.0f dBm radiated in place of %.0f, or a receiver as much better"},
	{radio.KnobDistance, "no farther than %.0f m along the ground in place of %.0f"},
	{radio.KnobHeight, "the model's antenna %.1f m over the ground in place of %.1f"},
	{radio.KnobTransmitterHeight, "the transmitter %.1f m over the ground in place of %.1f"},
	{radio.KnobOutOfShade, "nothing in front of the antennas"},
	{radio.KnobSecondAntenna, "one more antenna at right angles: %.0f that count in place of %.0f"},
}

// radioOrder lists the knobs by what they ask of a builder, least first.
var radioOrder = []radio.Knob{
	radio.KnobOutOfShade, radio.KnobSecondAntenna, radio.KnobTransmitterHeight, radio.KnobDistance, radio.KnobHeight, radio.KnobPower,
}

// radioRemedy names the change that asks least of the builder.
func radioRemedy(l *radioSection, least *radio.Margin) string {
	changes, err := radio.Changes(l.link, least.Place, l.wanted.value)
	if err != nil {
		return ""
	}
	for _, knob := range radioOrder {
		for _, c := range changes {
			if c.Knob == knob && c.Holds {
				return " It holds with " + radioChange(c) + "."
			}
		}
	}
	return " No single change of antennas, place or power is enough."
}

// radioChange writes a change of the link.
func radioChange(c radio.Change) string {
	if c.Knob == radio.KnobOutOfShade {
		return radioWords.of(c.Knob)
	}
	return say(radioWords.of(c.Knob), c.To, c.From)
}

func (p *pass) tellRadio(l *radioSection, least *radio.Margin) {
	antennas := &p.whole.antennas.all
	p.tell("radio.farthest_range", l.farthest, l.read...)
	p.tellText("radio.tightest_place", least.Place.Name, "radio.farthest_range")
	p.tell("radio.slant_range", least.SlantRange, l.read...)
	p.tell("radio.free_space_loss", least.FreeSpace)
	p.tell("radio.ground_loss", least.Ground, l.read...)
	p.tell("radio.attitude_loss", antennas.Attitudes.Exceeded(radio.RareAttitude))
	p.tell("radio.deep_share", antennas.Attitudes.ShareDeeper(radio.LeastMargin))
	p.tell("radio.clear_margin", least.Clear)
	p.tell("radio.margin", least.Usual)
	p.tell("radio.worst_margin", least.Worst)
}
