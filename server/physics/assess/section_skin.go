package assess

import (
	"math"

	"pitgate/server/physics/structure"
)

// answerSkin answers for the skin that carries the wing's twist. A sandbag test bends a wing and does not twist it, so that it replaces nothing here.
func (p *pass) answerSkin() {
	a, n := p.partAnswer("loads.skin")
	times := 0.0
	if n.met() && a.never == "" {
		times = p.skinTimes(&n, &a)
	}
	p.finishPart(a, n, times)
}

// skinUse is how often the skin stands the greatest twist asked of it.
type skinUse struct{ shear, wrinkles, twist float64 }

// skinTimes returns how often the skin stands what is asked.
func (p *pass) skinTimes(n *need, a *answer) float64 {
	c := p.carried()
	n.lack(c.boxMissing...)
	if !n.met() {
		return 0
	}
	use, ok := p.skinUse(c)
	if !ok {
		n.lack(boxPath + ".skinThicknessMeters")
		return 0
	}
	times := use.shear * p.partStrength(c.skin)
	if p.base() {
		a.note = say("The root is twisted with up to %.1f N m at speeds to %.1f m/s; the skin (%s) is sheared at %s that.",
			use.twist, p.top, c.boxMaterial.Name, timesWords(use.shear))
		if use.wrinkles < 1 {
			a.note += say(" It wrinkles at %s and is softer from there on.", timesWords(use.wrinkles))
		}
	}
	p.tell("loads.root_twist", use.twist, axisPath)
	p.tell("loads.skin_stands", use.twist*times, c.boxRead...)
	return times
}

// timesWords writes a multiple; what nothing limits is not written as a figure.
func timesWords(times float64) string {
	if times >= 100 {
		return "more than 100 times"
	}
	return sayNumbers("%.1f times", times)
}

// skinUse returns the least multiples over the load factors and speeds asked.
func (p *pass) skinUse(c *carrying) (skinUse, bool) {
	out := skinUse{shear: structure.Unlimited, wrinkles: structure.Unlimited}
	for _, root := range p.rootLoads() {
		shear, wrinkles, err := structure.AssessBox(c.box, c.boxMaterial, 0, root.Torsion)
		if err != nil {
			return out, false
		}
		for _, load := range []float64{p.loads.asked, 1, invertedShare * p.loads.asked} {
			out.shear = min(out.shear, 1+shear.Margin(load))
			out.wrinkles = min(out.wrinkles, 1+wrinkles.Margin(load))
			out.twist = max(out.twist, math.Abs(root.Torsion.At(load)))
		}
	}
	return out, true
}
