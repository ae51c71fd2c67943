package footprint

import "math"

// pull is what changes a velocity through the air: a rate along it and of turning to the right, 1/s, and an acceleration upward, m/s2.
//
//	dv/dt = along v + turn (vy, -vx) + up z
type pull struct{ along, turn, up float64 }

// pulled returns the pull at a velocity, without the thrust, and the airspeed.
//
//	along = -k CD V - k CL cos(b) w V/h, turn = k CL sin(b) V^2/h, up = k CL cos(b) V^3/h - g
//
// where V is the airspeed, h its level part, w its upward part, b the bank and k = rho S/(2 m); V/h is at most 10. They are the equations of Loss.From
// with lift and drag taken apart along the velocity, across it and upward. Valid for: as flight.addLift. Source: vector algebra.
func (c *course) pulled(u, v, w, gravity float64) (pull, float64) {
	level := float64(u*u) + float64(v*v)
	square := level + float64(w*w)
	speed, steep := math.Sqrt(square), 1/uprightShare
	if level > float64(uprightShare*uprightShare*square) {
		steep = speed / math.Sqrt(level)
	}
	lift := float64(c.lift * steep)
	upward := float64(lift * c.cos)
	return pull{-float64(c.drag*speed) - float64(upward*w), float64(lift * c.sin * speed), float64(upward*square) - gravity}, speed
}

// mixed returns the sum of a pull, a second and a third so many times each.
func (p pull) mixed(a float64, q pull, b float64, r pull, c float64) pull {
	return pull{
		float64(a*p.along) + float64(b*q.along) + float64(c*r.along), float64(a*p.turn) + float64(b*q.turn) + float64(c*r.turn),
		float64(a*p.up) + float64(b*q.up) + float64(c*r.up),
	}
}

// grown returns the velocity after a time under one pull.
//
//	(vx - i vy) e^((a + i t) h), w e^(a h) + g (e^(a h) - 1)/a
//
// as series to the fifth power. Valid for: |a| h and |t| h up to about 1. Source: linear differential equation.
func (p pull) grown(u, v, w, time float64) (float64, float64, float64) {
	a, b := float64(p.along*time), float64(p.turn*time)
	a2, b2 := float64(a*a)-float64(b*b), 2*float64(a*b)
	a3, b3 := float64(a2*a)-float64(b2*b), float64(a2*b)+float64(b2*a)
	x, y := sixth+float64(a*(1.0/24))+float64(a2*(1.0/120)), float64(b*(1.0/24))+float64(b2*(1.0/120))
	x, y = (1+a+float64(0.5*a2))+(float64(a3*x)-float64(b3*y)), (b+float64(0.5*b2))+(float64(a3*y)+float64(b3*x))
	rise := (1 + float64(0.5*a)) + float64(float64(a*a)*(sixth+float64(a*(1.0/24))))
	return float64(x*u) + float64(y*v), float64(x*v) - float64(y*u), w + float64((float64(a*w)+float64(p.up*time))*rise)
}

const third, sixth = 1.0 / 3, 1.0 / 6
