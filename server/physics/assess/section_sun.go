package assess

import (
	"math"

	"pitgate/server/physics/air"
	"pitgate/server/physics/sun"
)

// sunAt finds where the sun stands at the time of the day and names what that lacks.
func (p *pass) sunAt() (position sun.Position, daylight sun.Daylight, missing []string) {
	n := p.need()
	now, _ := p.now(&n)
	field := p.in.Field
	if field == nil {
		field = &FieldDescription{}
	}
	place := sun.Place{
		Latitude: radians(n.number("field.datumLatitudeDegrees", field.DatumLatitudeDegrees)), Longitude: radians(n.number("field.datumLongitudeDegrees", field.DatumLongitudeDegrees)),
	}
	if len(p.air.missing) == 0 {
		place.Pressure, place.Temperature = p.air.state.Pressure, p.air.state.Temperature
	} else {
		place.Temperature = air.FreezingPoint + 10
	}
	if !n.met() {
		return sun.Position{}, sun.Daylight{}, n.missing
	}
	position, err := sun.At(now, place)
	if err == nil {
		daylight, err = sun.Day(now, place)
	}
	if err != nil {
		return sun.Position{}, sun.Daylight{}, []string{"day.time"}
	}
	return position, daylight, nil
}

// answerSun answers for a low sun in the eyes of the pilot at the landing, and for the light of the day.
func (p *pass) answerSun() {
	position, daylight, missing := p.sunAt()
	n := p.need()
	n.lack(missing...)
	n.lack(p.launch.placeMissing...)
	glare := answer{id: "weather.sun", missing: n.missing, limit: p.limit(sunFigure)}
	if n.met() {
		p.glare(position, &glare)
	}
	p.conclude(glare)
	light := answer{id: "weather.light", missing: missing, limit: limit{value: degrees(sun.RisingElevation), set: true, rule: coreDefault}}
	if len(missing) == 0 {
		p.light(position, daylight, &light)
	}
	p.conclude(light)
}

// glare compares the sun with both lines of sight of the landing, for which the launch's direction stands where the plan gives none.
func (p *pass) glare(position sun.Position, glare *answer) {
	direction := p.launch.heading
	if plan := p.launchPlan().Landing; plan != nil && plan.HeadingDegrees != nil {
		direction = radians(*plan.HeadingDegrees)
	}
	approach, forward := position.Landing(direction, sun.LowSun, math.Pi)
	elevation := degrees(position.Elevation)
	if !approach.InEyes && !forward.InEyes {
		glare.none = true
		glare.note = p.inWords("The sun stands %.0f degrees high, where it is in nobody's eyes.", elevation)
		return
	}
	least := min(math.Abs(approach.Offset), math.Abs(forward.Offset))
	glare.value = degrees(least)
	glare.note = p.inWords("The sun stands %.0f degrees high at %.0f degrees, %.0f degrees beside the line of sight of a landing to %.0f degrees.",
		elevation, degrees(position.Azimuth), glare.value, compass(direction))
}

// light tells how high the sun stands and how long it stays.
func (p *pass) light(position sun.Position, daylight sun.Daylight, light *answer) {
	light.value = degrees(position.True)
	light.note = p.inWords("The sun stands %.1f degrees over the horizon.", degrees(position.Elevation))
	p.tell("sun.elevation", degrees(position.Elevation))
	p.tell("sun.elevation_true", degrees(position.True))
	p.tell("sun.azimuth", degrees(position.Azimuth))
	ignored := p.need()
	now, _ := p.now(&ignored)
	if span := daylight.Sun; !span.Always && !span.Never {
		left := (span.End - now) / secondsPerMinute
		p.tell("sun.time_to_sunset", left)
		if left > 0 && left < 120 {
			light.note += p.inWords(" It sets in %.0f minutes.", left)
		}
	}
}
