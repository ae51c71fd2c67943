package assess

import "pitgate/server/physics/motion"

// fastestRoll stands in for a speed at which the nose never lifts, m/s.
const fastestRoll = 300.0

// controlSpeed returns the airspeed at which full pitch control lifts the nose wheel against the thrust at a speed (m/s), and whether it was
// computed: it needs a nose wheel, the pitch control and the balance point.
func (p *pass) controlSpeed(speed float64) (float64, bool) {
	if p.launch.method != motion.Wheels || p.in.Model.Gear.Kind != GearKindTricycle || !p.trimmable() || len(p.stall.missing)+len(p.drag.missing)+len(p.engine.missing) > 0 {
		return 0, false
	}
	n, mark := p.need(), p.mark()
	height, push := p.balanceHeight(&n), p.push(&n)
	if !n.met() {
		return 0, false
	}
	push.Thrust = orElse(p.launchPlan().ThrustSettingRatio, 1) * p.thrust(speed, p.engine.spool)
	roll, ok := p.nosewheelRoll(push, height, speed)
	if !ok {
		return 0, false
	}
	lifts, found, err := roll.RotationSpeed()
	switch {
	case err != nil:
		return 0, false
	case !found:
		return fastestRoll, true
	}
	p.tell("launch.rotation_speed", lifts, p.since(mark)...)
	return min(lifts, fastestRoll), true
}
