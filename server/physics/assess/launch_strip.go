package assess

import (
	"math"

	"pitgate/server/physics/motion"
)

// stripProfile returns the ground along a wheeled launch from its start, level before and beyond what was surveyed; nothing where the strip has no
// profile.
func (p *pass) stripProfile(strip *Strip, reversed bool) []motion.ProfilePoint {
	if len(strip.GroundProfile) < 2 || !(p.launch.length > 0) {
		return nil
	}
	points := make([]motion.ProfilePoint, 0, len(strip.GroundProfile)+3)
	for _, point := range strip.GroundProfile {
		points = append(points, profilePoint(point))
	}
	if reversed {
		points = turned(points, p.launch.length)
	}
	points = padded(points, p.launch.length)
	start := heightOn(points, 0)
	for i := range points {
		points[i].Height -= start
	}
	return points
}

// turned returns a profile as it lies from the other end of a length (m).
func turned(points []motion.ProfilePoint, length float64) []motion.ProfilePoint {
	out := make([]motion.ProfilePoint, 0, len(points)+3)
	for i := len(points) - 1; i >= 0; i-- {
		out = append(out, motion.ProfilePoint{Distance: length - points[i].Distance, Height: points[i].Height})
	}
	return out
}

// padded returns a profile from zero to beyond a length (m), level where it was not given: what lies before zero is cut off.
func padded(points []motion.ProfilePoint, length float64) []motion.ProfilePoint {
	out := []motion.ProfilePoint{{Height: heightOn(points, 0)}}
	for _, point := range points {
		if point.Distance > 0 {
			out = append(out, point)
		}
	}
	last := out[len(out)-1]
	if last.Distance < length {
		last.Distance = length
		out = append(out, last)
	}
	return append(out, motion.ProfilePoint{Distance: last.Distance + 1, Height: last.Height})
}

// heightOn returns the height of a profile at a distance, straight between its points and level outside.
func heightOn(points []motion.ProfilePoint, distance float64) float64 {
	for i, b := range points {
		if distance > b.Distance {
			continue
		}
		if i == 0 {
			return b.Height
		}
		a := points[i-1]
		return a.Height + float64((b.Height-a.Height)*((distance-a.Distance)/(b.Distance-a.Distance)))
	}
	return points[len(points)-1].Height
}

// rolledAlong returns the heights of a profile by the travel along it.
func rolledAlong(points []motion.ProfilePoint) []motion.ProfilePoint {
	out := make([]motion.ProfilePoint, len(points))
	travel := 0.0
	for i, point := range points {
		if i > 0 {
			level, rise := point.Distance-points[i-1].Distance, point.Height-points[i-1].Height
			travel += root(level, rise)
		}
		out[i] = motion.ProfilePoint{Distance: travel, Height: point.Height}
	}
	return out
}

// raiseTail lets a tail-dragger roll with its tail down until full nose-down control lifts it, and level from there. Where that speed is not below the
// one at which it is rotated, it stays on three points.
func (p *pass) raiseTail(launch *motion.Launch, aircraft *motion.Aircraft) {
	speed, ok := p.tailSpeed(launch.LiftoffSpeed)
	if !ok {
		return
	}
	level := p.groundLift(0)
	if planned := p.rotationSpeed(level, launch.ClimbLift); speed < planned {
		launch.LiftoffSpeed, launch.TailUpSpeed, launch.CLTailDown = planned, speed, aircraft.CLGround
		aircraft.CLGround = level
	}
}

// tailSpeed returns the airspeed at which full pitch control lifts the tail against the thrust at a speed (m/s), and whether it was computed: it needs a
// tail wheel, main wheels ahead of the balance point, the pitch control and the balance point.
func (p *pass) tailSpeed(speed float64) (float64, bool) {
	if p.in.Model.Gear.Kind != GearKindTailwheel || !p.trimmable() || len(p.stall.missing)+len(p.drag.missing)+len(p.engine.missing) > 0 {
		return 0, false
	}
	n, mark := p.need(), p.mark()
	height, push := p.balanceHeight(&n), p.push(&n)
	wheel := p.foremostWheel()
	if !n.met() || wheel == nil {
		return 0, false
	}
	push.Thrust = orElse(p.launchPlan().ThrustSettingRatio, 1) * p.thrust(speed, p.engine.spool)
	roll := p.rollOn(push, height, speed)
	roll.WheelX = *wheel.XMeters
	roll = roll.Standing(p.launch.standing, *wheel.ZMeters, orElse(wheel.DiameterMeters, 0)/2)
	if roll.WheelX >= roll.X {
		return 0, false
	}
	lifts, found, err := roll.TailUpSpeed()
	if err != nil || !found {
		return 0, false
	}
	p.tell("launch.tail_up_speed", lifts, append(p.since(mark), "model.gear.wheels", "model.gear.groundAttitudeDegrees")...)
	return lifts, true
}

// foremostWheel returns the wheel farthest forward whose place is known.
func (p *pass) foremostWheel() *Wheel {
	var found *Wheel
	first := math.Inf(1)
	for i := range p.in.Model.Gear.Wheels {
		wheel := &p.in.Model.Gear.Wheels[i]
		if wheel.XMeters != nil && wheel.ZMeters != nil && *wheel.XMeters < first {
			found, first = wheel, *wheel.XMeters
		}
	}
	return found
}
