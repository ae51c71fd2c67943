package assess

import (
	"math"

	"pitgate/server/physics/motion"
	"pitgate/server/physics/weather"
)

// answerWeather answers the gates of the day.
func (p *pass) answerWeather() {
	p.answerCrosswind()
	p.answerGust()
	p.answerLater()
	p.answerVisibility()
	p.answerTemperature()
	if !p.base() {
		p.keepStill("weather.frost", "weather.age", "weather.sun", "weather.light", "weather.wake")
		return
	}
	p.answerFrost()
	p.answerAge()
	p.answerSun()
	p.answerWake()
}

// keepStill concludes findings that a moved pass does not answer, so that all passes have the same.
func (p *pass) keepStill(ids ...string) {
	for _, id := range ids {
		p.conclude(answer{id: id, value: math.NaN()})
	}
}

// today returns the conditions of the day, empty when there are none.
func (p *pass) today() *DayConditions {
	if p.in.Day == nil {
		return &DayConditions{}
	}
	return p.in.Day
}

// answerCrosswind holds the highest wind across the launch against the limit of the document, else against what the rudder holds.
func (p *pass) answerCrosswind() {
	n := p.need()
	n.lack(p.launch.placeMissing...)
	n.lack(p.air.windMissing...)
	cross := answer{id: "weather.crosswind", missing: n.missing, limit: p.optionalLimit(crosswindFigure)}
	if n.met() {
		high := p.air.wind + p.air.gustExcess
		cross.value = math.Abs(weather.Crosswind(high, p.air.from, p.launch.heading))
		cross.note = p.inWords("%.1f m/s from %.0f degrees across a launch to %.0f degrees.", high, degrees(p.air.from), compass(p.launch.heading))
		cross.from = p.launch.placeRead
		if !cross.limit.set {
			p.limitCrosswind(&cross)
		}
	}
	p.conclude(cross)
}

// compass returns a heading in degrees from 0 to below 360.
func compass(heading float64) float64 {
	return math.Mod(math.Mod(degrees(heading), 360)+360, 360)
}

// limitCrosswind takes what full rudder holds at lift-off for the limit of a launch on wheels.
func (p *pass) limitCrosswind(cross *answer) {
	wheels, known := p.onWheels()
	switch {
	case p.launch.method != motion.Wheels:
		cross.note += " No limit is given, and a launcher holds the model straight."
	case !known:
		cross.note += " No limit is given, and rudder, balance or lift-off are not known well enough to compute one."
	default:
		held := wheels.SlipLimit()
		cross.limit = limit{value: held.Speed, set: true, rule: coreDefault + ", what the rudder holds"}
		cross.note += p.inWords(" Full rudder holds the nose against %.1f m/s across at %.1f m/s.", held.Speed, wheels.Airspeed)
		cross.from = append(cross.from, "crosswind.limit")
		p.tell("yaw.rudder_power", wheels.RudderPower)
		p.tell("crosswind.limit", held.Speed, p.rudderPaths()...)
	}
}

// onWheels returns what holds the model straight as it leaves the ground; false when that is not known.
func (p *pass) onWheels() (weather.Wheels, bool) {
	rudders := p.controlsOf(ControlRoleRudder)
	if len(rudders) == 0 || !p.launch.flown || p.launch.result.NeverLiftsOff || p.whole.lateral == nil || len(p.mass.fullMissing) > 0 {
		return weather.Wheels{}, false
	}
	speed := p.launch.result.Airspeed
	wheels := weather.Wheels{
		Airspeed: speed, Density: p.air.state.Density, Area: p.wing.area, Span: p.wing.span, YawStiffness: p.yaw.parts.Total(),
		RudderPower: p.rudderPower(rudders, speed),
	}
	for i, rudder := range rudders {
		up, one := p.read(rudder.path+".throwUpDegrees", rudder.control.ThrowUpDegrees)
		down, other := p.read(rudder.path+".throwDownDegrees", rudder.control.ThrowDownDegrees)
		if !one && !other {
			return weather.Wheels{}, false
		}
		if throw := radians(greatestOf(up, one, down, other)); i == 0 || throw < wheels.RudderThrow {
			wheels.RudderThrow = throw
		}
	}
	return wheels, wheels.Check() == nil
}

// greatestOf returns the lesser of two throws, or the one that is known.
func greatestOf(up float64, one bool, down float64, other bool) float64 {
	switch {
	case !one:
		return down
	case !other:
		return up
	}
	return min(up, down)
}

// rudderPower returns the yawing moment by rudder at a speed, per rad, taken positive.
func (p *pass) rudderPower(rudders []placed, speed float64) float64 {
	power := 0.0
	for _, c := range p.whole.lateral.Controls(p.mass.travel.Aft.X, p.whole.wing.HeightZ, p.stateAt(speed).Lift) {
		if isPart(rudders, c) {
			power += c.Yaw
		}
	}
	return math.Abs(power) * p.factor("method: control power", spreadControl)
}

// rudderPaths names the throws of the rudders.
func (p *pass) rudderPaths() []string {
	var paths []string
	for _, rudder := range p.controlsOf(ControlRoleRudder) {
		paths = append(paths, rudder.path+".throwUpDegrees", rudder.path+".throwDownDegrees")
	}
	return paths
}

func (p *pass) answerGust() {
	gust := answer{id: "weather.gust", missing: p.air.windMissing, limit: p.optionalLimit(gustFigure)}
	gust.value = p.air.wind + p.air.gustExcess
	gust.note = p.inWords("%.1f m/s, %.1f m/s over the mean wind of %.1f m/s.", gust.value, p.air.gustExcess, p.air.wind)
	if p.today().GustSpeedMetersPerSecond == nil {
		gust.note += " The report names no gust: it is what the ground makes at least."
	}
	p.conclude(gust)
}

func (p *pass) answerVisibility() {
	n := p.need()
	seen := answer{id: "weather.visibility", limit: p.optionalLimit(visibilityFigure)}
	seen.value = n.quantity("day.visibilityMeters", p.today().VisibilityMeters)
	seen.missing = n.missing
	seen.note = p.inWords("%.1f km.", seen.value/1000)
	p.conclude(seen)
}

// coldest and hottest are the ends of what a document may hold, C.
const (
	coldest = -40.0
	hottest = 60.0
)

// answerTemperature holds the air's temperature between the limits given; where one alone is given the other is as far as a document may go.
func (p *pass) answerTemperature() {
	n := p.need()
	air := answer{id: "weather.temperature"}
	air.value = n.quantity("day.temperatureCelsius", p.today().TemperatureCelsius)
	air.missing = n.missing
	air.note = p.inWords("%.1f C.", air.value)
	cold, hot := p.optionalLimit(coldFigure), p.optionalLimit(hotFigure)
	switch {
	case cold.set:
		air.limit, air.upper = cold, hottest
		if hot.set {
			air.upper = hot.value
			air.from = []string{hot.path}
		}
	case hot.set:
		air.limit, air.upper = hot, hot.value
		air.limit.value = coldest
	}
	p.conclude(air)
}

func (p *pass) answerFrost() {
	frost := answer{id: "weather.frost", none: true}
	switch p.today().Frost {
	case FrostNone:
		frost.note = "Looked at and free of frost."
	case FrostPresent:
		frost.never = "Frost is on the model: take it off before the lift and drag of this report count."
	default:
		frost.missing = []string{"day.frost"}
	}
	if dew, warning := p.frostRisk(); warning && frost.missing == nil && frost.never == "" {
		frost.note += p.inWords(" Air no warmer than 3 C and within %.1f degrees of its dew point: look again before the launch.", dew)
	}
	p.conclude(frost)
}

// frostRisk returns how far the air lies above its dew point and whether frost may form: air to 3 C, dew point within 3 degrees.
func (p *pass) frostRisk() (gap float64, risk bool) {
	day := p.today()
	if day.TemperatureCelsius == nil || day.DewPointCelsius == nil {
		return 0, false
	}
	temperature := valueOr(day.TemperatureCelsius, 0)
	gap = temperature - valueOr(day.DewPointCelsius, temperature)
	return gap, temperature <= 3 && gap <= 3
}

// answerAge compares the time of the day with that of the report the weather was read from.
func (p *pass) answerAge() {
	day, n := p.today(), p.need()
	age := answer{id: "weather.age", limit: p.limit(ageFigure)}
	now, known := p.now(&n)
	age.missing = n.missing
	reported, dated := reportMoment(day.Metar, now)
	switch {
	case !known:
	case !dated:
		age.none = true
		age.note = "The weather was typed for this time and rests on no dated report."
	default:
		age.value = math.Abs(now-reported) / secondsPerMinute
		age.note = say("The report is %.0f minutes %s than the time of the day.", age.value, olderWord(now, reported))
	}
	p.conclude(age)
}

func olderWord(now, reported float64) string {
	if reported > now {
		return "later"
	}
	return "older"
}

// now returns the time of the day, s since 1970-01-01 UTC, and names it as missing when it is none.
func (p *pass) now(n *need) (float64, bool) {
	moment, err := weather.Moment(p.today().Time)
	if err != nil {
		n.lack("day.time")
	}
	return moment, err == nil
}
