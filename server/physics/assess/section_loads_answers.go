package assess

import (
	"pitgate/server/physics/loads"
	"pitgate/server/physics/structure"
)

const noTopSpeed = "There is no top speed: full thrust stays below drag."

// proven returns the load factor of a sandbag test, which replaces the calculation, and whether there was one.
func (p *pass) proven() (float64, bool) {
	value, ok := p.read(proofPath, p.structure().ProofLoadFactor)
	return value, ok && value > 0
}

// answerWing answers for the wing's spar.
func (p *pass) answerWing() {
	n, mark := p.need(), p.mark()
	n.lack(p.loads.missing...)
	wing := answer{id: "loads.wing", limit: askedOnce}
	proof, tested := p.proven()
	if n.met() && !tested && p.top > 0 {
		n.lack(p.carried().missing...)
	}
	switch {
	case !n.met():
	case !(p.top > 0):
		wing.never = noTopSpeed
	case tested:
		p.loads.stands = proof
		wing.note = p.provenNote(proof)
	default:
		p.computeWing(&n, &wing)
	}
	wing.missing, p.loads.lacking = n.missing, n.missing
	if n.met() && p.loads.stands > 0 {
		wing.value = p.loads.stands / p.loads.asked
		wing.from = p.since(mark)
		p.tell("loads.stands", p.loads.stands, union(p.carryingRead(tested), wing.from)...)
		p.tellPermitted(tested)
	}
	p.conclude(wing)
}

func (p *pass) carryingRead(tested bool) []string {
	if tested || !p.tells() {
		return nil
	}
	return p.carried().sparRead
}

// computeWing computes what the spar stands.
func (p *pass) computeWing(n *need, wing *answer) {
	c, s := p.carried(), p.sparStands()
	switch {
	case s.failed:
		n.lack(sparPath)
	case s.result.ShearUncarried:
		n.lack(at(sparPath, s.index) + ".parts[].webThicknessMeters")
	default:
		p.loads.stands = max(0, s.value*p.strength(sparMethod, c.spar, spreadStrength, sizePower))
		wing.note = p.wingNote(s)
		p.tell("loads.root_bending", p.rootLoad(s).Bending.At(p.loads.asked))
		p.tell("loads.root_shear", p.rootLoad(s).Shear.At(p.loads.asked))
	}
}

// rootLoad returns what the root carries.
func (p *pass) rootLoad(s standing) loads.Load {
	if at, err := p.wingLoads(p.top, nil); err == nil {
		return at[0]
	}
	return s.load
}

// askedWords says what is asked for and why.
func (p *pass) askedWords() string {
	l, why := &p.loads, "no one said what it was designed for"
	if p.structure().DesignLoadFactor != nil {
		why = "as designed for"
	}
	return say("asked for are %.1f: %.1f in a pull-up (%s), %.1f in the circuit's turn with a gust of %.1f m/s", l.asked, l.manoeuvre, why, l.circuit, l.gust)
}

// wingNote says what governs, and what would raise it where it is short.
func (p *pass) wingNote(s standing) string {
	if !p.tells() {
		return ""
	}
	note := say("The spar stands a load factor of %.1f: part %d at %.0f %% of the half span is %s; %s.", max(0, s.value), s.result.Checks[s.result.Governs].Part+1,
		200*s.result.Y/p.wing.span, s.result.Checks[s.result.Governs].Mode, p.askedWords())
	if s.result.SkinBuckles {
		note += p.inWords(" The skin buckles at %.1f and the rest then stands alone.", s.result.SkinBucklesAt)
	}
	if s.value < p.loads.asked {
		note += p.raiseNote(s)
	}
	return note
}

// raiseNote names the thickness that would make the governing station stand what is asked.
func (p *pass) raiseNote(s standing) string {
	c := p.carried()
	changes, err := structure.Raise(c.stations[s.index], s.load, c.twisted, p.loads.asked)
	if err != nil {
		return ""
	}
	for _, change := range changes {
		if change.Found {
			return say(" A %s of %.1f mm in place of %.1f mm in part %d there would reach it.", change.Field, 1000*change.To, 1000*change.From, change.Part+1)
		}
	}
	return " No thicker wall or cap of one part there would reach it."
}

// answerJoiner answers for what joins the wing panels.
func (p *pass) answerJoiner() {
	if yes(p.structure().OnePieceWing) {
		return
	}
	n, mark := p.need(), p.mark()
	n.lack(p.loads.missing...)
	joiner := answer{id: "loads.joiner", limit: askedOnce}
	stands, tested := p.proven()
	if n.met() && !tested && p.top > 0 {
		n.lack(p.carried().joinerMissing...)
	}
	switch {
	case !n.met():
	case !(p.top > 0):
		joiner.never = noTopSpeed
	case tested:
		joiner.note = say("A sandbag test held a load factor of %.1f; %s.", stands, p.askedWords())
	default:
		stands = p.computeJoiner(&n, &joiner)
	}
	joiner.missing = n.missing
	if n.met() && p.top > 0 {
		joiner.value, joiner.from = stands/p.loads.asked, p.since(mark)
		p.tell("loads.joiner_stands", stands, union(p.joinerRead(tested), joiner.from)...)
	}
	p.conclude(joiner)
}

func (p *pass) joinerRead(tested bool) []string {
	if tested || !p.tells() {
		return nil
	}
	return p.carried().joinerRead
}

func (p *pass) computeJoiner(n *need, joiner *answer) float64 {
	s := p.joinerStands()
	if s.failed || s.result.ShearUncarried {
		n.lack(joinerPath + ".part")
		return 0
	}
	if p.tells() {
		joiner.note = say("The joiner stands a load factor of %.1f with %.0f mm in each panel: %s; %s.", s.value, 1000*p.carried().joiner.Engaged,
			s.result.Checks[s.result.Governs].Mode, p.askedWords())
	}
	return max(0, s.value*p.strength(joinMethod, p.carried().joint, spreadStrength, sizePower))
}

// answerGustLoad answers for a gust at top speed.
func (p *pass) answerGustLoad() {
	gust := answer{id: "loads.gust", limit: askedOnce}
	n := p.need()
	n.lack(p.loads.missing...)
	n.lack(p.loads.lacking...)
	gust.missing = n.missing
	switch {
	case !n.met():
	case !(p.top > 0):
		gust.never = noTopSpeed
	default:
		gust.value = p.loads.stands / p.loads.gustLoad
		gust.note = p.inWords("An up-gust of %.1f m/s at %.1f m/s loads the wing %.1f times; it stands %.1f, stalls at %.1f.",
			p.loads.gust, p.top, p.loads.gustLoad, p.loads.stands, p.stallLoad(p.top))
	}
	p.conclude(gust)
}
