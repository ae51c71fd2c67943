package footprint

import (
	"math"

	"pitgate/server/physics/elementary"
)

// fading is a value that goes to another exponentially, from half step to half step, and may creep on.
type fading struct {
	to, gap   float64
	keep      float64 // share of the gap left after half a step
	over      float64 // mean of the gap over a step, over the gap at its beginning
	creep     float64 // over half a step
	unchanged bool
}

// fade returns an approach in steps.
func (a *approach) fade(step float64) fading {
	f := fading{to: a.to, creep: float64(a.creep * step / 2), unchanged: a.constant()}
	if a.from != a.to && a.time > 0 {
		f.gap = a.from - a.to
		f.keep = elementary.Exp(-step / (2 * a.time))
		f.over = a.time / step * (1 - float64(f.keep*f.keep))
	}
	return f
}

// move goes on by half a step and returns the change.
func (f *fading) move() float64 {
	gap := float64(f.gap * f.keep)
	change := gap - f.gap + f.creep
	f.gap, f.to = gap, f.to+f.creep
	return change
}

// push returns the acceleration by thrust over the airspeed, 1/s: as flight.push.
func (c *course) push(share, speed float64) float64 {
	thrust := c.thrust.to + float64(c.thrust.gap*share)
	if thrust == 0 {
		return 0
	}
	if c.slope > 0 {
		thrust -= float64(thrust * c.slope * (speed - c.base))
	}
	return max(0, thrust) / max(speed, leastSpeed)
}

// runDown goes on by a step with the thrust; the last ten-thousandth of the weight is left out.
func (c *course) runDown(gravity float64) {
	c.thrust.gap = float64(c.thrust.gap * c.thrust.keep * c.thrust.keep)
	if math.Abs(c.thrust.gap) < float64(1e-4*gravity) {
		c.thrust.gap = 0
	}
}

// turnBank goes on by half a step with the bank and its sine and cosine.
//
// Small changes turn both by the first terms of their series.
func (c *course) turnBank() {
	if c.bank.unchanged {
		return
	}
	change := c.bank.move()
	if bank := c.bank.to + c.bank.gap; math.Abs(change) > 0.3 || math.Abs(bank) > steepest {
		bank = limitBank(bank)
		c.sin, c.cos = elementary.Sin(bank), elementary.Cos(bank)
		return
	}
	square := float64(change * change)
	sine, cosine := float64(change*(1-float64(square*sixth))), 1-float64(square*(0.5-float64(square*(1.0/24))))
	c.sin, c.cos = float64(c.sin*cosine)+float64(c.cos*sine), float64(c.cos*cosine)-float64(c.sin*sine)
}
