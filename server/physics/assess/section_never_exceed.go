package assess

import (
	"math"
	"strconv"
	"strings"

	"pitgate/server/physics/aeroelastic"
	"pitgate/server/physics/planform"
	"pitgate/server/physics/stability"
	"pitgate/server/physics/structure"
)

const (
	spreadDivergence = 0.10
	spreadPlate      = 0.10
	// throwAtTop is the share of the full throw that servos have to hold at top speed, throwAtSpeed that which they have to hold, with their usual
	// reserve, at the speed never to exceed, where a pilot only corrects: judgement.
	throwAtTop   = 0.5
	throwAtSpeed = 0.2
)

// twisting keeps the dynamic pressure of divergence per unit of stiffness and lift slope, a matter of the planform alone.
type twisting struct {
	happens, inside bool
	perStiffness    float64
}

// divergence returns the speed at which the wing twists off; false when it never does.
func (p *pass) divergence(stiffness float64) (aeroelastic.Term, bool) {
	if p.drawing.twisting == nil {
		p.drawing.twisting = p.unitDivergence()
	}
	t := p.drawing.twisting
	if !t.happens || !(stiffness > 0) {
		return aeroelastic.Term{}, false
	}
	speed := stability.SpeedOf(t.perStiffness*stiffness/p.wing.slope, p.air.state.Density) * p.factor(twistMethod, spreadDivergence)
	p.tell("speed.divergence", speed)
	return aeroelastic.Term{Kind: aeroelastic.KindDivergence, Name: p.whole.surfaces[p.whole.main].Name, Speed: speed, Sure: t.inside}, true
}

func (p *pass) unitDivergence() *twisting {
	const cuts = 9
	wing := aeroelastic.Wing{Stiffness: 1, HalfSpan: p.wing.span / 2, Axis: p.axisRatio(), LiftSlope: 1, Sweep: p.whole.wing.QuarterChordSweep}
	for i := range cuts {
		wing.Chords = append(wing.Chords, chordAt(&p.whole.surfaces[p.whole.main], float64(i)/(cuts-1)))
	}
	d, err := wing.Divergence()
	if err != nil {
		return &twisting{}
	}
	return &twisting{happens: d.Happens, inside: d.Inside, perStiffness: d.Pressure}
}

// plateFlutter returns the least speed of the plate fins; false where none is declared or the plate lacks something, which n then names.
func (p *pass) plateFlutter(n *need) (aeroelastic.Term, bool) {
	plate, term := p.structure().FinPlate, aeroelastic.Term{}
	if plate == nil {
		return term, false
	}
	var s sizes
	p.aside = true
	thickness := n.size(&s, finPath+".thicknessMeters", plate.ThicknessMeters)
	p.aside = false
	material, known := structure.FindMaterial(plate.Material)
	if !known {
		n.lack(finPath + ".material")
	}
	if !n.met() {
		return term, false
	}
	factor := p.strength(plateMethod, s, spreadPlate, 1.5)
	for i := range p.whole.surfaces {
		fin := &p.whole.surfaces[i]
		if fin.Role != planform.RoleFin {
			continue
		}
		first, last := fin.Stations[0], fin.Stations[len(fin.Stations)-1]
		f := aeroelastic.PlateFin{Root: first.Chord, Tip: last.Chord, Span: root(last.Z-first.Z, last.Y-first.Y), Thickness: thickness, ShearModulus: material.ShearModulus}
		flutter, err := f.Flutter(p.air.state.Pressure, p.air.state.SoundSpeed)
		if err != nil {
			n.lack(finPath + ".thicknessMeters")
			continue
		}
		if speed := flutter.Speed * factor; term.Name == "" || speed < term.Speed {
			term = aeroelastic.Term{Kind: aeroelastic.KindFlutter, Name: fin.Name, Speed: speed, Sure: flutter.Inside}
		}
	}
	if term.Name != "" {
		p.tell("speed.fin_flutter", term.Speed)
	}
	return term, term.Name != ""
}

// answerNeverExceed answers for the speed never to exceed.
func (p *pass) answerNeverExceed() {
	never := answer{id: "speed.never_exceed", limit: askedOnce}
	n, mark := p.need(), p.mark()
	n.lack(p.loads.missing...)
	stiffness := 0.0
	if n.met() {
		stiffness = p.twistStiffness(&n)
		if n.met() {
			n.lack(p.linkages().missing...)
		}
	}
	switch {
	case !n.met():
	case !(p.top > 0):
		never.never = noTopSpeed
	default:
		p.leastSpeed(p.terms(stiffness, &n), &never)
		never.from = p.since(mark)
	}
	never.missing = n.missing
	p.conclude(never)
}

// terms gathers all speeds not to pass that are known.
func (p *pass) terms(stiffness float64, n *need) []aeroelastic.Term {
	var terms []aeroelastic.Term
	if term, ok := p.divergence(stiffness); ok {
		terms = append(terms, term)
	}
	if stick := p.readAilerons(); len(stick.missing) == 0 {
		if pressure, ok := p.reversalPressure(stiffness, stick); ok && finite(pressure) {
			speed := stability.SpeedOf(pressure, p.air.state.Density) * p.factor("method: aileron reversal", spreadReversal)
			terms = append(terms, aeroelastic.Term{Kind: aeroelastic.KindReversal, Name: p.whole.surfaces[p.whole.main].Name, Speed: speed, Sure: true})
		}
	}
	if term, ok := p.plateFlutter(n); ok {
		terms = append(terms, term)
	}
	for _, h := range p.holdings(n, throwAtSpeed, true) {
		terms = append(terms, aeroelastic.Term{Kind: h.kind, Name: h.name, Speed: h.speed, Sure: h.sure})
	}
	if rule := p.optionalLimit(topSpeedFigure); rule.set {
		terms = append(terms, aeroelastic.Term{Kind: aeroelastic.KindRule, Name: rule.rule, Speed: rule.value, Sure: true})
	}
	return terms
}

func (p *pass) leastSpeed(terms []aeroelastic.Term, never *answer) {
	least, err := aeroelastic.NeverExceed(terms)
	switch {
	case err != nil:
		never.value = math.NaN()
	case !least.Known:
		never.none = true
		never.note = "Nothing that was declared sets a speed."
	default:
		never.value = least.Speed / p.top
		never.outside = !least.Sure
		never.note = p.neverNote(least)
		p.tell("speed.never_exceed", least.Speed, "method: aileron reversal")
		p.tellText("speed.never_exceed_term", string(least.Governs.Kind)+": "+least.Governs.Name)
		p.tell("speed.dive_reserve", never.value)
	}
}

// neverNote names the governing term, what is not covered, and the dive.
func (p *pass) neverNote(least aeroelastic.Limit) string {
	if !p.tells() {
		return ""
	}
	governs := least.Governs
	note := say("Not above %.0f m/s: %s (%s) at %.0f m/s.", least.Speed, governs.Kind, governs.Name, governs.Speed)
	if open := p.notCovered(); len(open) > 0 {
		note += " Not covered: " + strings.Join(open, ", ") + "."
	}
	if governs.Kind == aeroelastic.KindFlutter {
		note += " The boundary of the fin is " + aeroelastic.ScreeningOnly + "."
	}
	if reserve, ok := least.DiveReserve(p.top); ok && reserve < 1.25 {
		note += " A shallow dive at full thrust passes it."
	}
	if full := p.fullPullSpeed(); full > 0 && full < least.Speed {
		note += p.inWords(" In a dive pull gently: above %.0f m/s a full pull loads the wing beyond the %.1f that it stands.", full, p.loads.stands)
	}
	return note
}

// notCovered lists what no term stands for.
func (p *pass) notCovered() []string {
	var open []string
	if p.structure().FinPlate == nil {
		open = append(open, "flutter of built-up fins")
	}
	if without := len(p.linkages().without); without > 0 {
		open = append(open, "controls without a declared linkage or all-moving: "+strconv.Itoa(without))
	}
	return append(open, "flutter of controls")
}
