package assess

import (
	"math"

	"pitgate/server/physics/loads"
	"pitgate/server/physics/structure"
)

// seat is what holds the wing on the fuselage.
type seat struct {
	known   bool
	missing []string
	bolts   structure.Bolts
	lever   float64 // between front and rear fastening, m
	sizes   sizes
	read    []string
}

// bolted reports whether the wing sits on bolts: it says so, or there is no joiner from which its panels hang.
func (p *pass) bolted() bool {
	s := p.structure()
	if s.WingBoltCount != nil && *s.WingBoltCount == 0 {
		return false
	}
	given := s.WingBoltCount != nil || s.WingBoltDiameterMeters != nil || s.WingBoltMaterial != "" || s.WingBoltLeverMeters != nil
	return given || s.Joiner == nil
}

// seat returns what holds the wing, read once.
func (p *pass) seat() *seat {
	s, d := &p.fittings().seat, p.structure()
	if s.known {
		return s
	}
	p.aside = true
	defer func() { p.aside = false }()
	n, mark := p.need(), p.mark()
	s.bolts.Diameter = n.size(&s.sizes, boltDiameterPath, d.WingBoltDiameterMeters)
	s.lever = n.size(&s.sizes, boltLeverPath, d.WingBoltLeverMeters)
	if d.WingBoltCount == nil {
		n.lack(boltCountPath)
	} else {
		s.bolts.Count = int(*d.WingBoltCount)
	}
	material, known := structure.FindMaterial(d.WingBoltMaterial)
	if s.bolts.Material = material; !known {
		n.lack(boltMaterialPath)
	}
	p.note(boltCountPath)
	p.note(boltMaterialPath)
	s.known, s.missing, s.read = true, n.missing, p.since(mark)
	return s
}

// pull returns what the seat is pulled with: lift of both panels less their weight, and what their twist pulls at one end of the lever.
//
// Formula: P = 2 V + |2 T|/l; where V and T shear and twist at the root, l distance between front and rear fastening, m.
// Valid for: a wing that sits on its fastenings alone.
// Source: statics.
func (s *seat) pull(root loads.Load, asked float64) loads.Line {
	twist := root.Torsion.Times(2 / s.lever)
	if twist.At(asked) < 0 {
		twist = twist.Times(-1)
	}
	return root.Shear.Times(2).Plus(twist)
}

// answerBolts answers for the wing's seat.
func (p *pass) answerBolts() {
	a, n := p.partAnswer("loads.bolts")
	proof, tested := p.proven()
	times := 0.0
	if n.met() && a.never == "" {
		switch {
		case tested:
			times, a.note = proof/p.loads.asked, p.provenNote(proof)
			p.tell("loads.bolts_stand", proof, proofPath)
		default:
			times = p.boltsTimes(&n, &a)
		}
	}
	p.finishPart(a, n, times)
}

// boltsTimes returns what the bolts stand over what is asked.
func (p *pass) boltsTimes(n *need, a *answer) float64 {
	s := p.seat()
	n.lack(s.missing...)
	if !n.met() {
		return 0
	}
	if !(s.lever > 0) {
		n.lack(boltLeverPath)
		return 0
	}
	stands, pull := structure.Unlimited, 0.0
	for _, root := range p.rootLoads() {
		line := s.pull(root, p.loads.asked)
		check, err := s.bolts.Assess(line)
		if err != nil {
			n.lack(boltDiameterPath)
			return 0
		}
		stands, pull = min(stands, check.Upper), max(pull, line.At(p.loads.asked))
	}
	stands = max(0, stands) * p.partStrength(s.sizes)
	a.note = say("The seat is pulled with %.0f N at a load factor of %.1f; %d of %.1f mm (%s) stand %.1f, the worst with half as much again as its share.",
		pull, p.loads.asked, s.bolts.Count, 1000*s.bolts.Diameter, s.bolts.Material.Name, stands)
	if p.base() && stands < p.loads.asked {
		a.note += p.thickerBolt(s, stands)
	}
	p.tell("loads.seat_pull", pull, boltLeverPath)
	p.tell("loads.bolts_stand", stands, s.read...)
	return stands / p.loads.asked
}

// thickerBolt names the diameter that would stand what is asked: a strength goes with the area.
func (p *pass) thickerBolt(s *seat, stands float64) string {
	if !(stands > 0) {
		return ""
	}
	return p.inWords(" Of %.1f mm they would reach it.", 1000*s.bolts.Diameter*math.Sqrt(p.loads.asked/stands))
}
