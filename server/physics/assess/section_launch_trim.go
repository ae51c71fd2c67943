package assess

import (
	"math"

	"pitgate/server/physics/motion"
	"pitgate/server/physics/stability"
)

// answerLaunchTrim answers for the pitch control against the thrust line's moment as the model leaves ground or launcher.
func (p *pass) answerLaunchTrim() {
	n, mark := p.need(), p.mark()
	n.lack(p.pitch.missing...)
	n.lack(p.launch.missing...)
	n.lack(p.mass.fullMissing...)
	height := p.balanceHeight(&n)
	push := p.push(&n)
	trim := answer{id: "balance.launch_trim", limit: p.limit(reserveFigure)}
	trim.missing = n.missing
	if n.met() {
		p.launchTrim(push, height, &trim)
		trim.from = p.since(mark)
	}
	p.conclude(trim)
}

// balanceHeight returns the height of the balance point with full tanks, m.
func (p *pass) balanceHeight(n *need) float64 {
	if p.mass.travel.ZKnown {
		return p.mass.travel.Full.Z
	}
	m := p.massProperties()
	for i := range m.Tanks {
		n.number(at("model.mass.tanks", i)+".zMeters", m.Tanks[i].ZMeters)
	}
	if !p.mass.emptyHeight {
		n.lack("model.mass.emptyBalanceZMeters")
	}
	return 0
}

// push returns the thrust of all engines as one force at full thrust, its line weighted by thrust.
func (p *pass) push(n *need) stability.Push {
	sum := stability.Push{}
	if p.in.Model == nil {
		return sum
	}
	for i := range p.in.Model.Engines {
		engine, name := &p.in.Model.Engines[i], at("model.engines", i)
		told := thrustFigureOf(engine, name)
		thrust := p.optional(told.path, told.value, 0)
		sum.Thrust += thrust
		sum.X += float64(thrust * n.number(name+".xMeters", engine.XMeters))
		sum.Z += float64(thrust * n.number(name+".zMeters", engine.ZMeters))
		sum.Angle += float64(thrust * radians(p.optional(name+".thrustLineDegrees", engine.ThrustLineDegrees, 0)))
		p.note(name + ".zMeters")
	}
	if sum.Thrust > 0 {
		sum.X, sum.Z, sum.Angle = sum.X/sum.Thrust, sum.Z/sum.Thrust, sum.Angle/sum.Thrust
	}
	return sum
}

// launchTrim finds the least share of throw left: with the thrust at that moment of the spool-up and with full thrust.
func (p *pass) launchTrim(push stability.Push, height float64, out *answer) {
	r := &p.launch.result
	if !p.launch.flown || r.NeverLiftsOff {
		out.never = p.neverWords()
		return
	}
	worst, found := stability.LaunchTrim{Reserve: math.Inf(1)}, false
	for _, time := range []float64{p.launch.thrustTime + r.Time, p.launch.thrustTime + r.Time + p.engine.spool} {
		push.Thrust = p.launch.setting * p.thrust(r.Airspeed, time)
		for _, trim := range p.launchTrims(push, height, r.Airspeed) {
			if trim.Reserve < worst.Reserve {
				worst, found = trim, true
			}
		}
	}
	if !found {
		out.value = math.NaN()
		return
	}
	out.value = worst.Reserve
	out.note = p.launchTrimNote(push, height, worst)
	p.tell("launch.thrust_moment", push.MomentAbout(p.mass.fullBalance, height))
	p.tell("launch.thrust_arm", push.ArmAbout(p.mass.fullBalance, height))
	p.tell("launch.control_needed", degrees(worst.Control), p.throwPaths()...)
}

// launchTrims returns the trim in free flight at a speed, in the cradle's attitude after a ramp, and that which lifts the nose wheel.
func (p *pass) launchTrims(push stability.Push, height, speed float64) []stability.LaunchTrim {
	x := p.mass.fullBalance
	state, pitch := p.stateAt(speed), p.pitchAt(x)
	end := stability.RampEnd{State: state, Pitch: pitch, Throw: p.pitch.throw, Push: push, X: x, Z: height, Steady: true}
	var trims []stability.LaunchTrim
	add := func(trim stability.LaunchTrim, err error) {
		if err == nil {
			trims = append(trims, trim)
		}
	}
	add(end.LaunchTrim())
	switch {
	case p.launch.method == motion.Ramp:
		end.Steady, end.Held = false, p.launch.held-p.wing.zero
		add(end.LaunchTrim())
	case p.launch.method == motion.Wheels && p.in.Model.Gear.Kind == GearKindTricycle:
		if roll, ok := p.nosewheelRoll(push, height, speed); ok {
			add(roll.LaunchTrim())
		}
	}
	return trims
}

// nosewheelRoll returns the model on its main wheels with the nose wheel about to lift; false without wheels aft of the balance point.
func (p *pass) nosewheelRoll(push stability.Push, height, speed float64) (stability.Roll, bool) {
	x, ground := math.Inf(-1), math.Inf(1)
	for _, wheel := range p.in.Model.Gear.Wheels {
		if wheel.XMeters != nil && wheel.ZMeters != nil && *wheel.XMeters > x {
			x, ground = *wheel.XMeters, *wheel.ZMeters-float64(orElse(wheel.DiameterMeters, 0)/2)
		}
	}
	if !(x > p.mass.fullBalance) || !(ground < height) {
		return stability.Roll{}, false
	}
	roll := p.rollOn(push, height, speed)
	roll.WheelX, roll.GroundZ = x, ground
	return roll, true
}

// rollOn returns the model standing on its wheels at a speed (m/s); the wheels that it turns about are left to the caller.
func (p *pass) rollOn(push stability.Push, height, speed float64) stability.Roll {
	return stability.Roll{
		State: p.stateAt(speed), Pitch: p.pitchAt(p.mass.fullBalance), Throw: p.pitch.throw, Push: push, X: p.mass.fullBalance, Z: height,
		Incidence: p.launch.standing - p.wing.zero, Friction: p.launch.friction,
	}
}

func (p *pass) launchTrimNote(push stability.Push, height float64, worst stability.LaunchTrim) string {
	arm := push.ArmAbout(p.mass.fullBalance, height)
	place, turn := "below", "nose up"
	if arm < 0 {
		place, turn = "above", "nose down"
	}
	needed := "nose down"
	if worst.NoseUp {
		needed = "nose up"
	}
	return say("The thrust line passes %.0f mm %s the balance point and turns the %s with %.2f N m; the %s must hold the %s with %s.",
		1000*math.Abs(arm), place, turn, math.Abs(push.MomentAbout(p.mass.fullBalance, height)), p.pitch.name, needed, angleWords(worst.Control))
}
