package assess

import (
	"math"

	"pitgate/server/physics/structure"
)

const (
	partMethod = "method: strength of fittings"
	// partGuess is the same for parts whose sizes are estimated.
	partGuess = "method: strength of fittings of estimated sizes"

	structurePath    = "model.structure."
	boltDiameterPath = structurePath + "wingBoltDiameterMeters"
	boltCountPath    = structurePath + "wingBoltCount"
	boltMaterialPath = structurePath + "wingBoltMaterial"
	boltLeverPath    = structurePath + "wingBoltLeverMeters"
	boomPath         = structurePath + "boom"
	boomCountPath    = structurePath + "boomCount"
	boomLengthPath   = structurePath + "boomLengthMeters"
	boxPath          = structurePath + "torsionBox"
	canardPath       = structurePath + "canardSpar"
	tailplanePath    = structurePath + "tailplaneSpar"
)

// fittings are the parts beside spar and joiner that carry, as the base pass read them: no pass moves a single size.
type fittings struct {
	seat seat
	boom boom
	tail map[string]*outer // by the path of the spar
}

// fittings returns them, each read when it is first asked for.
func (p *pass) fittings() *fittings {
	if p.drawing.fittings == nil {
		p.drawing.fittings = &fittings{tail: map[string]*outer{}}
	}
	return p.drawing.fittings
}

// partStrength returns 1, or 1 moved by the spread of a strength: one input for all fittings, each moved by its own spread.
func (p *pass) partStrength(s sizes) float64 {
	return p.partFactor(s, s.spread(spreadStrength, sizePower))
}

// partFactor returns 1, or 1 moved by a relative spread of what depends on the sizes of fittings.
func (p *pass) partFactor(s sizes, spread float64) float64 {
	name := partMethod
	if s.estimated {
		name = partGuess
	}
	p.meet(uncertain{name: name, spread: 1, estimated: s.estimated, method: true})
	return max(0, 1+float64(p.shift(name)*spread))
}

// answerParts answers for what carries beside spar and joiner; what a model does not have is not asked for.
func (p *pass) answerParts() {
	if p.bolted() {
		p.answerBolts()
	}
	if p.structure().TorsionBox != nil {
		p.answerSkin()
	}
	if p.boomed() {
		p.answerBoom()
	}
	if i := p.surfaceOf(SurfaceRoleCanard); i >= 0 {
		p.answerOuter("loads.canard", canardPath, i, p.structure().CanardSpar)
	}
	if i := p.surfaceOf(SurfaceRoleTailplane, SurfaceRoleVTail); i >= 0 {
		p.answerOuter("loads.tailplane", tailplanePath, i, p.structure().TailplaneSpar)
	}
}

// surfaceOf returns the index of the first surface of some roles, -1 without one.
func (p *pass) surfaceOf(roles ...SurfaceRole) int {
	if p.in.Model == nil {
		return -1
	}
	for i := range p.in.Model.Surfaces {
		for _, role := range roles {
			if p.in.Model.Surfaces[i].Role == role {
				return i
			}
		}
	}
	return -1
}

// partAnswer begins an answer for a part under the wing's load factors.
func (p *pass) partAnswer(id string) (answer, need) {
	n := p.need()
	n.lack(p.loads.missing...)
	a := answer{id: id, limit: askedOnce}
	if n.met() && !(p.top > 0) {
		a.never = noTopSpeed
	}
	return a, n
}

// finishPart concludes the answer for a part: how often it stands what is asked.
func (p *pass) finishPart(a answer, n need, times float64) {
	a.missing = n.missing
	if n.met() && a.never == "" {
		a.value = min(times, structure.Unlimited)
		if math.IsInf(times, 1) {
			a.none, a.note = true, "Nothing loads it."
		}
	}
	p.conclude(a)
}
