package engine

// Day is an engine in the air of one day: what of its thrust changes neither with speed nor with power is worked out once.
type Day struct {
	engine    Engine
	air       Air
	installed float64
	exponent  float64
	static    float64 // full static thrust of a turbine before installation losses, N
	flow      float64 // full air mass flow of a turbine, kg/s
	idle      held
	full      held
}

// held is a speed ratio that is asked for often, with what follows from it.
type held struct {
	ratio, share float64
	power        float64 // of a fan or propeller, W
}

// In prepares the engine for a day's air.
func (e Engine) In(air Air) Day {
	d := Day{engine: e, air: air.orStandard(), installed: e.installed(), exponent: e.exponent()}
	if e.Kind == Turbine {
		d.static, d.flow = e.DayStaticThrust(d.air), e.DayMassFlow(d.air)
	}
	d.idle, d.full = d.hold(e.IdleRatio()), d.hold(1)
	return d
}

// hold works out what follows from a speed ratio.
func (d *Day) hold(ratio float64) held {
	h := held{ratio: ratio, share: ThrustShare(ratio, d.exponent)}
	if d.engine.Kind != Turbine {
		h.power = d.engine.power(h.share)
	}
	return h
}

// ThrustAtRatio returns what Engine.ThrustAtRatio does in the day's air, N.
func (d *Day) ThrustAtRatio(speed, ratio float64) float64 {
	speed = max(speed, 0)
	h := &d.full
	switch ratio {
	case d.full.ratio:
	case d.idle.ratio:
		h = &d.idle
	default:
		other := d.hold(ratio)
		h = &other
	}
	if d.engine.Kind != Turbine {
		return d.installed * d.engine.driven(h.power, speed, d.air.Density)
	}
	return float64(d.installed*float64(d.static*h.share)) - float64(d.flow*ratio*speed)
}
