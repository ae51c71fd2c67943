package assess

import (
	"math"

	"pitgate/server/physics/air"
	"pitgate/server/physics/engine"
	"pitgate/server/physics/motion"
)

// engineSection is the thrust of all engines together.
type engineSection struct {
	missing      []string
	spoolMissing []string
	engines      []engine.Engine
	days         []engine.Day // the same in the day's air
	idle         []float64    // speed ratio of each at idle
	air          engine.Air
	static       float64 // installed, in the day's air, N
	spool        float64 // time from idle to full, s
}

var engineKinds = pairings[EngineKind, engine.Kind]{
	{EngineKindTurbine, engine.Turbine}, {EngineKindDuctedFan, engine.DuctedFan}, {EngineKindPropeller, engine.Propeller},
}

func (p *pass) readEngines() {
	n, spool, mark := p.need(), p.need(), p.mark()
	n.lack(p.air.missing...)
	if p.in.Model == nil || len(p.in.Model.Engines) == 0 {
		n.lack("model.engines")
		p.engine.missing = n.missing
		return
	}
	state := p.air.state
	p.engine.air = engine.Air{Temperature: state.Temperature, Pressure: state.Pressure, Density: state.Density}
	for i := range p.in.Model.Engines {
		p.addEngine(i, &n, &spool)
	}
	p.engine.missing, p.engine.spoolMissing = n.missing, spool.missing
	if n.met() {
		p.engine.static = p.thrust(0, p.engine.spool)
		p.tell("thrust.static_day", p.engine.static, p.since(mark)...)
	}
	if spool.met() {
		p.tell("thrust.spool_up", p.engine.spool, p.spoolPaths()...)
	}
}

// addEngine reads one engine, a static run before the maker's figures. Turbines need their air flow, since without it thrust would not fall with
// speed. A scale behind the model measures what duct and tailpipe leave of the thrust, so that nothing is taken off it any more.
func (p *pass) addEngine(i int, n, spool *need) {
	e, name := &p.in.Model.Engines[i], at("model.engines", i)
	thrust, idle := thrustFigureOf(e, name), idleFigureOf(e, name)
	kind, ok := engineKinds.find(e.Kind)
	if !ok {
		n.lack(name + ".kind")
	}
	out := engine.Engine{
		Kind: kind, StaticThrust: max(0, n.figure(engineFigure(i, "static_thrust"), thrust)),
		Rated: engine.Air{
			Temperature: p.optional(name+".testTemperatureCelsius", e.TestTemperatureCelsius, engine.StandardTemperature-air.FreezingPoint) + air.FreezingPoint,
			Pressure:    p.optional(name+".testPressurePascals", e.TestPressurePascals, engine.StandardPressure),
		},
	}
	if !thrust.measured {
		out.InstallationLoss = min(1, max(0, p.optional(name+".installationLossRatio", e.InstallationLossRatio, 0)))
	}
	out.IdleThrust = min(out.StaticThrust, max(0, p.optional(idle.path, idle.value, 0)))
	out.SpoolTime = max(0, spool.quantity(name+".spoolUpSeconds", e.SpoolUpSeconds))
	if kind == engine.Turbine {
		out.MassFlow = max(0, n.quantity(name+".airMassFlowKgPerSecond", e.AirMassFlowKgPerSecond))
		out.ExhaustTemperature = p.exhaust(i, exhaustFigureOf(e, name))
	} else {
		out.JetArea = jetArea(n.number(name+".discDiameterMeters", e.DiscDiameterMeters), orElse(e.HubDiameterMeters, 0), kind)
	}
	p.engine.spool = max(p.engine.spool, out.SpoolTime)
	p.engine.engines, p.engine.idle = append(p.engine.engines, out), append(p.engine.idle, out.IdleRatio())
	p.engine.days = append(p.engine.days, out.In(p.engine.air))
}

// spoolPaths names the spool-up times of all engines.
func (p *pass) spoolPaths() []string {
	if !p.tells() {
		return nil
	}
	var paths []string
	for i := range p.in.Model.Engines {
		paths = append(paths, at("model.engines", i)+".spoolUpSeconds")
	}
	return paths
}

func (p *pass) exhaust(i int, told figureOf) float64 {
	celsius, ok := p.read(told.path, told.value)
	if !ok {
		return 0
	}
	p.tellFigure(engineFigure(i, "exhaust_temperature"), celsius, told)
	return celsius + air.FreezingPoint
}

// jetArea returns the exit area of a fan, m2, from disc and hub, or the whole disc of a propeller.
func jetArea(disc, hub float64, kind engine.Kind) float64 {
	if kind == engine.Propeller {
		hub = 0
	}
	return math.Pi / 4 * max(1e-9, float64(disc*disc)-float64(hub*hub))
}

// thrust returns the net thrust of all engines (N) at an airspeed (m/s) and a time since the throttle was opened (s).
func (p *pass) thrust(speed, time float64) float64 {
	sum := 0.0
	for i := range p.engine.engines {
		e := &p.engine.engines[i]
		sum += p.engine.days[i].ThrustAtRatio(speed, engine.SpoolRatio(time, p.engine.idle[i], e.SpoolTime))
	}
	return sum
}

// topThrust returns the net thrust of all engines at full power in the form for top speed.
func (p *pass) topThrust(speed float64) float64 {
	sum := 0.0
	for i := range p.engine.engines {
		sum += p.engine.engines[i].TopThrust(speed, p.engine.air)
	}
	return sum
}

// answerSpeeds answers for thrust and top speed.
func (p *pass) answerSpeeds() {
	p.answerTopSpeed()
	n := p.need()
	n.lack(p.engine.missing...)
	n.lack(p.mass.missing...)
	ratio := answer{id: "thrust.ratio", missing: n.missing}
	ratio.limit = p.limit(thrustFigure)
	if n.met() {
		weight := p.mass.takeoff * motion.Gravity
		ratio.value = p.engine.static / weight
		ratio.note = p.inWords("%.1f N installed in the day's air against %.1f N of weight.", p.engine.static, weight)
	}
	p.conclude(ratio)
}

func (p *pass) answerTopSpeed() {
	n := p.need()
	n.lack(p.engine.missing...)
	n.lack(p.mass.missing...)
	n.lack(p.drag.missing...)
	top := answer{id: "speed.top", missing: n.missing}
	p.topMissing = n.missing
	top.limit = p.optionalLimit(topSpeedFigure)
	if n.met() {
		model := p.polar()
		model.CD0 = p.drag.top
		speed, found := model.TopSpeed(p.conditions(0), p.topThrust)
		if found {
			top.value, p.top = speed, speed
			top.note = p.inWords("Full thrust of %.1f N at that speed meets a drag coefficient of %.4f without lift.", p.topThrust(speed), p.drag.top)
			p.tell("thrust.top_speed", p.topThrust(speed))
			p.tell("speed.top", speed)
			top.outside = speed > 0.3*p.air.state.SoundSpeed
		} else {
			top.never = "Full thrust stays below drag at every flying speed."
		}
	}
	p.conclude(top)
}
