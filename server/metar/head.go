package metar

import "time"

// Clock is the day of the month and the time of a report, UTC.
type Clock struct {
	Day, Hour, Minute int
	Known             bool // false when the report has no time
}

// readHead takes kind, correction, station and time.
func (d *decoder) readHead() error {
	if d.peek() == "TAF" {
		return fault(d.take(), "this is a forecast (TAF), not a report; give a METAR or SPECI")
	}
	if kind := Kind(d.peek()); kind == Routine || kind == Special {
		d.report.Kind = kind
		d.take()
	}
	if d.peek() == "COR" {
		d.report.Corrected = true
		d.take()
	}
	if err := d.readStation(); err != nil {
		return err
	}
	return d.readTime()
}

// readStation takes the location indicator.
func (d *decoder) readStation() error {
	const expected = "a location indicator of four letters, such as EGXX, comes first or after METAR or SPECI"
	if d.next >= len(d.groups) {
		return d.end(expected)
	}
	g := d.take()
	if !isStation(g.text) {
		return fault(g, expected)
	}
	d.report.Station = g.text
	return nil
}

// isStation reports whether a text is four capital letters or digits that begin with a letter.
func isStation(text string) bool {
	if len(text) != 4 || !isCapital(text[0]) {
		return false
	}
	for i := range len(text) {
		if !isCapital(text[i]) && !isDigit(text[i]) {
			return false
		}
	}
	return true
}

// readTime takes the time, such as 221630Z, when the next group is one. Slashes, and a text that goes on without, leave it unknown.
func (d *decoder) readTime() error {
	text := d.peek()
	if slashes(text, 6) || text == "//////Z" {
		d.take()
		return nil
	}
	n := leadingDigits(text)
	if n == 0 || text[n:] != "Z" {
		return nil
	}
	g := d.take()
	clock := Clock{Known: true}
	if n == 6 {
		clock.Day, clock.Hour, clock.Minute = number(text[:2]), number(text[2:4]), number(text[4:6])
	}
	if n != 6 || clock.Day < 1 || clock.Day > 31 || clock.Hour > 23 || clock.Minute > 59 {
		return fault(g, "the time is day, hour and minute, such as 221630Z")
	}
	d.report.Time = clock
	return nil
}

// readModifier takes AUTO, NIL and corrections that stand after the time.
func readModifier(d *decoder, g group) (bool, error) {
	switch {
	case g.text == "AUTO":
		d.report.Automatic = true
	case g.text == "NIL":
		d.report.Nil = true
	case g.text == "COR", len(g.text) == 3 && g.text[:2] == "CC" && isCapital(g.text[2]):
		d.report.Corrected = true
	default:
		return false, nil
	}
	return true, nil
}

// Near returns the moment of the clock, in seconds since 1970-01-01 UTC, that lies nearest to a reference in the same seconds: a report names
// the day but not the month. It is an error when the report has no time.
func (c Clock) Near(reference int64) (int64, error) {
	if !c.Known {
		return 0, errNoTime
	}
	around := time.Unix(reference, 0).UTC()
	best, least := int64(0), int64(-1)
	for shift := -2; shift <= 2; shift++ {
		moment := time.Date(around.Year(), around.Month()+time.Month(shift), c.Day, c.Hour, c.Minute, 0, 0, time.UTC)
		if moment.Day() != c.Day {
			continue
		}
		if distance := max(moment.Unix()-reference, reference-moment.Unix()); least < 0 || distance < least {
			best, least = moment.Unix(), distance
		}
	}
	return best, nil
}
