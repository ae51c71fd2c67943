package footprint

import (
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/field"
)

// course is a fall in long steps: the way through the air and what the wind adds to it.
type course struct {
	sample  int
	from    field.Point // place of the release
	elapsed float64     // before the fall, s

	x, y, z      float64 // way through the air and height, m
	u, v, w      float64 // velocity through the air, m/s
	windX, windY float64 // wind at the reference height, m/s
	factor       float64 // of the wind in which u and v count
	drift        float64 // integral of the factor, s
	time         float64 // s

	laws  [3]law
	count int     // of laws
	law   int     // at hand
	step  float64 // s
	left  int     // steps of the law to come
	begun bool    // a step of the law is made
	last  pull    // in the middle of the step before

	cd0, induced, stopped, tumble float64 // as of flight
	lift, drag                    float64 // coefficients times rho S/(2 m), 1/m
	bank                          fading
	sin, cos                      float64 // of the bank now
	thrust                        fading  // over the mass
	slope                         float64 // thrust lost with airspeed, over thrust
	base                          float64 // airspeed at the release, m/s
	wild                          float64 // square of the airspeed that no fall comes to, m2/s2

	half half
}

// half is what the first half of a step leaves to the second.
type half struct {
	u, v       float64 // velocity at the beginning
	mu, mv, mw float64 // and in the middle
	first      pull
}

// follow begins with the next law and reports whether there is one.
func (c *course) follow(s *falls) bool {
	for c.law++; c.law < c.count; c.law++ {
		if part := &c.laws[c.law]; part.lasts > 0 {
			c.take(part, s)
			return true
		}
	}
	return false
}

// take sets the law from now on.
func (c *course) take(part *law, s *falls) {
	c.step, c.left, c.begun = s.longest, mostSteps, false
	if part.bank.from != part.bank.to && part.bank.time > 0 {
		c.step = min(c.step, part.bank.time)
	}
	if part.lasts < untilGround {
		c.left = int(math.Ceil(part.lasts / c.step))
		c.step = part.lasts / float64(c.left)
	}
	drag := c.cd0 + float64(c.induced*part.lift*part.lift)
	switch {
	case part.lift == 0:
		drag = c.tumble
	case part.stopped:
		drag += c.stopped
	}
	c.lift, c.drag = float64(s.perMass*part.lift), float64(s.perMass*drag)
	c.bank, c.thrust = part.bank.fade(c.step), part.thrust.fade(c.step)
	c.thrust.to, c.thrust.gap = c.thrust.to/s.plan.Model.Mass, c.thrust.gap/s.plan.Model.Mass
	bank := limitBank(c.bank.to + c.bank.gap)
	c.sin, c.cos = elementary.Sin(bank), elementary.Cos(bank)
}

// halfway makes the first half of a step.
//
//	K = 3/2 K0 - 1/2 K', v(1/2) = v(0) grown under K for h/2
//	K = (7 K1 - 2 K0 + K')/6, v(1) = v(0) grown under K for h, way = h (v(0) + 4 v(1/2) + v(1))/6
//
// where K0 is the pull at the beginning, K1 that in the middle and K' that in the middle of the step before (K0 in a first step): means of the parabola
// through the three, over half the step and the whole. The wind is that at the height of the middle; its change from step to step is taken off the
// velocity through the air, half of it before K0. Valid for: steps of up to about a radian of turn.
// Source: Magnus, Communications on Pure and Applied Mathematics 7 (1954) 649, first term; Simpson's rule.
func (c *course) halfway(s *falls) {
	factor := s.wind.factor(max(c.z+float64(0.5*c.step*c.w), 0.5*c.z))
	change := float64(0.5 * (factor - c.factor))
	kickX, kickY := float64(c.windX*change), float64(c.windY*change)
	c.factor = factor
	u, v := c.u-kickX, c.v-kickY
	first, speed := c.pulled(u, v, c.w, s.gravity)
	if !c.begun {
		c.begun, c.last = true, first
	}
	f := &c.half
	f.u, f.v, f.first = u-kickX, v-kickY, first
	under := first.mixed(1.5, c.last, -0.5, pull{}, 0)
	under.along += c.push(1, speed)
	f.mu, f.mv, f.mw = under.grown(f.u, f.v, c.w, float64(0.5*c.step))
	c.turnBank()
}

// onward makes the second half of a step and reports whether the ground was reached in it.
func (c *course) onward(s *falls) bool {
	f := &c.half
	middle, speed := c.pulled(f.mu, f.mv, f.mw, s.gravity)
	under := middle.mixed(7*sixth, f.first, -third, c.last, sixth)
	under.along += c.push(c.thrust.over, speed)
	c.last = middle
	u, v, w := under.grown(f.u, f.v, c.w, c.step)
	c.turnBank()
	c.runDown(s.gravity)
	part := float64(c.step * sixth)
	dx, dy, dz := float64(part*(f.u+float64(4*f.mu)+u)), float64(part*(f.v+float64(4*f.mv)+v)), float64(part*(c.w+float64(4*f.mw)+w))
	share, landed := 1.0, c.z+dz <= 0
	if landed {
		share = c.touch(w, dz)
		dx, dy = hermite(0, f.u, dx, u, share, c.step), hermite(0, f.v, dy, v, share, c.step)
		u, v, w = f.u+float64(share*(u-f.u)), f.v+float64(share*(v-f.v)), c.w+float64(share*(w-c.w))
	}
	c.x, c.y, c.z = c.x+dx, c.y+dy, c.z+dz
	c.u, c.v, c.w = u, v, w
	passed := float64(share * c.step)
	c.drift, c.time, c.left = c.drift+float64(passed*c.factor), c.time+passed, c.left-1
	return landed
}

// touch returns the share of a step after which the height is zero, from the rate at its end and the change of height.
//
// Source: cubic of Hermite; bisection, then straight between the ends of what is left.
func (c *course) touch(after, change float64) float64 {
	low, high := 0.0, 1.0
	over, under := c.z, c.z+change
	for range 4 {
		middle := float64(0.5 * (low + high))
		if height := c.z + hermite(0, c.w, change, after, middle, c.step); height > 0 {
			low, over = middle, height
		} else {
			high, under = middle, height
		}
	}
	return low + float64((high-low)*over)/(over-under)
}
