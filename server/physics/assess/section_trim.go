package assess

import (
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/stability"
)

const (
	// trimFloor is the slowest trimmed speed over the stall speed.
	trimFloor = 1.1
	// trimSpeeds is how many speeds are trimmed between it and the top speed.
	trimSpeeds = 7
)

// answerTrim answers for the pitch control at every speed, at the launch, and for its bite at top speed.
func (p *pass) answerTrim() {
	n := p.need()
	n.lack(p.pitch.missing...)
	n.lack(p.stall.missing...)
	n.lack(p.drag.missing...)
	n.lack(p.engine.missing...)
	n.lack(p.mass.fullMissing...)
	if n.met() {
		p.tellPitch()
	}
	p.answerReserve(n.missing)
	p.answerLaunchTrim()
	p.answerSensitivity(n.missing)
}

// trimmed is the pitch control at one speed and balance point.
type trimmed struct {
	speed, balance, control, reserve float64
}

// trimAt trims level flight at a speed with the balance point at x, power off.
func (p *pass) trimAt(speed, x float64) (trimmed, bool) {
	trim, err := p.pitchAt(x).TrimAt(p.stateAt(speed), 0)
	if err != nil {
		return trimmed{}, false
	}
	return trimmed{speed, x, trim.Control, p.pitch.throw.Reserve(trim.Control)}, true
}

// trimRange lists speeds from just over the stall to the top speed, evenly in their logarithm.
func (p *pass) trimRange() []float64 {
	low, high := trimFloor*p.stall.clean, p.top
	if !(high > low) {
		return []float64{low}
	}
	speeds := make([]float64, trimSpeeds)
	for i := range speeds {
		speeds[i] = low * elementary.Pow(high/low, float64(i)/(trimSpeeds-1))
	}
	return speeds
}

func (p *pass) answerReserve(missing []string) {
	trim := answer{id: "balance.trim", missing: missing, limit: p.limit(reserveFigure)}
	if len(missing) == 0 {
		worst := trimmed{reserve: math.Inf(1)}
		for _, speed := range p.trimRange() {
			for _, x := range []float64{p.mass.travel.Forward.X, p.mass.travel.Aft.X} {
				if state, ok := p.trimAt(speed, x); ok && state.reserve < worst.reserve {
					worst = state
				}
			}
		}
		trim.value = worst.reserve
		trim.note = say("Worst at %.1f m/s with the balance point at %.3f m: the %s stands %s.", worst.speed, worst.balance, p.pitch.name, angleWords(worst.control))
		p.tellTrim(worst)
		p.drawTrim()
	}
	p.conclude(trim)
}

func (p *pass) tellTrim(worst trimmed) {
	p.tell("trim.control_worst", degrees(worst.control), p.throwPaths()...)
	p.tell("trim.speed_worst", worst.speed)
	if circuit, ok := p.trimAt(p.stall.circuitSpeed, p.mass.fullBalance); ok {
		p.tell("trim.control_circuit", degrees(circuit.control))
	}
}

// throwPaths names the throws of the pitch control.
func (p *pass) throwPaths() []string {
	if !p.tells() {
		return nil
	}
	var paths []string
	for _, part := range p.strongest(p.controlsOf(ControlRoleElevator, ControlRoleElevon, ControlRoleRuddervator)) {
		paths = append(paths, part.path+".throwUpDegrees", part.path+".throwDownDegrees")
	}
	return paths
}

// drawTrim draws the control angle against speed with full and with empty tanks between the ends of the throw.
func (p *pass) drawTrim() {
	if !p.tells() || !(p.top > trimFloor*p.stall.clean) {
		return
	}
	low := trimFloor * p.stall.clean
	curve := ReportCurve{
		ID: "trim.elevator", Title: "Pitch control to trim", XTitle: "Airspeed", XUnit: "m/s", YTitle: "Angle of the " + p.pitch.name, YUnit: "deg",
		Note: "Trailing edge down positive, level flight, power off.",
	}
	for _, state := range []struct {
		name string
		x    float64
	}{{"Balance point foremost", p.mass.travel.Forward.X}, {"Balance point aftmost", p.mass.travel.Aft.X}} {
		curve.Series = append(curve.Series, CurveSeries{Name: state.name, Points: line(low, p.top, func(speed float64) float64 {
			trim, ok := p.trimAt(speed, state.x)
			if !ok {
				return math.NaN()
			}
			return degrees(trim.control)
		})})
	}
	for _, end := range []struct {
		name  string
		angle float64
	}{{"Full throw up", min(p.pitch.throw.NoseUp, p.pitch.throw.NoseDown)}, {"Full throw down", max(p.pitch.throw.NoseUp, p.pitch.throw.NoseDown)}} {
		curve.Series = append(curve.Series, CurveSeries{Name: end.name, Points: []CurvePoint{{X: low, Y: degrees(end.angle)}, {X: p.top, Y: degrees(end.angle)}}})
	}
	p.curves = append(p.curves, curve)
}

// answerSensitivity answers for the load factor that a degree of pitch control gives at top speed.
func (p *pass) answerSensitivity(missing []string) {
	bite := answer{id: "pitch.sensitivity", missing: missing, limit: p.limit(loadFigure)}
	if len(missing) == 0 {
		p.bite(&bite)
	}
	p.conclude(bite)
}

func (p *pass) bite(bite *answer) {
	if !(p.top > 0) {
		bite.never = "There is no top speed: full thrust stays below drag."
		return
	}
	x := p.mass.travel.Aft.X
	answer, err := p.pitchAt(x).Sensitivity(p.stateAt(p.top))
	switch {
	case err != nil:
		bite.value = math.NaN()
		return
	case answer.Reversed:
		bite.never = p.inWords("The balance point at %.3f m lies at or aft of the manoeuvre point: the model pitches up by itself.", x)
		return
	}
	bite.value = math.Abs(answer.LoadPerDegree)
	full := answer.LoadAtThrow(p.pitch.throw.NoseUp)
	bite.note = p.inWords("At %.1f m/s with the balance point at %.3f m; full throw would pull %.0f g if the wing could.", p.top, x, full)
	if factor := stability.ThrowReduction(bite.value, bite.limit.value); factor < 1 {
		bite.note += p.inWords(" Throws cut to %.0f %% bring it into range.", 100*factor)
	}
	p.tell("pitch.angle_per_load", degrees(answer.AnglePerLoad))
	p.tell("balance.manoeuvre_margin", answer.ManoeuvreMargin)
}

func (p *pass) tellPitch() {
	if !p.tells() {
		return
	}
	pitch := p.pitchAt(p.mass.fullBalance)
	p.tell("pitch.moment_zero", pitch.MomentZero)
	p.tell("pitch.moment_slope", pitch.MomentSlope)
	p.tell("pitch.moment_control", pitch.MomentControl)
	p.tell("pitch.lift_control", pitch.LiftControl)
	p.tell("pitch.damping_derivative", pitch.PitchDamping)
	p.tellTails()
}
