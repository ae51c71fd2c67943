package metar

import "strings"

// fastest is the speed above which a wind is taken for a misprint, m/s.
const fastest = 130.0

// windForm says what a wind group looks like.
const windForm = "the wind is direction and speed, such as 24015G27KT, VRB02KT or 00000KT"

// windUnits are the units a wind may have and their size in m/s.
var windUnits = []struct {
	name string
	size float64
}{{"KT", metersPerSecondPerKnot}, {"MPS", 1}, {"KMH", metersPerSecondPerKilometer}}

// readWind takes the mean wind.
func readWind(d *decoder, g group) (bool, error) {
	if slashes(g.text, 5) {
		return true, nil
	}
	body, size := windUnit(g.text)
	if size == 0 {
		return false, nil
	}
	wind, problem := parseWind(body, size)
	if problem != "" {
		return true, fault(g, "%s", problem)
	}
	d.report.Wind = wind
	return true, nil
}

// windUnit splits the unit off a group; the size is zero when it ends with none.
func windUnit(text string) (body string, size float64) {
	for _, unit := range windUnits {
		if body, found := strings.CutSuffix(text, unit.name); found {
			return body, unit.size
		}
	}
	return text, 0
}

// parseWind reads direction, speed and gust in a unit of some m/s.
func parseWind(body string, size float64) (wind Wind, problem string) {
	if len(body) < 5 {
		return wind, windForm
	}
	mean, gust, hasGust := strings.Cut(body[3:], "G")
	speed, speedFine := parseSpeed(mean, size)
	peak, gustFine := parseSpeed(gust, size)
	if !speedFine || hasGust && !gustFine {
		return wind, windForm
	}
	wind.Speed, wind.SpeedAtLeast = speed.value, speed.atLeast
	if hasGust {
		wind.Gust, wind.GustAtLeast = peak.value, peak.atLeast
	}
	if problem := wind.setDirection(body[:3]); problem != "" {
		return wind, problem
	}
	return wind, wind.impossible()
}

// reading is a speed as the report gives it.
type reading struct {
	value   Value
	atLeast bool
}

// parseSpeed reads two or three digits, P and digits for a speed beyond them, or two slashes.
func parseSpeed(text string, size float64) (speed reading, fine bool) {
	if slashes(text, 2) {
		return reading{}, true
	}
	digits, beyond := strings.CutPrefix(text, "P")
	if !allDigits(digits) || len(digits) < 2 || len(digits) > 3 {
		return reading{}, false
	}
	count := number(digits)
	if beyond {
		count++
	}
	return reading{value: known(float64(count) * size), atLeast: beyond}, true
}

// setDirection reads the direction: three digits, VRB or slashes.
func (w *Wind) setDirection(text string) (problem string) {
	w.Calm = w.Speed.Known && w.Speed.Number == 0
	switch {
	case slashes(text, 3):
	case text == "VRB":
		w.Variable = !w.Calm
	case !allDigits(text):
		return windForm
	case number(text) > 360:
		return "a direction is at most 360 degrees"
	case number(text) == 0 && !w.Calm:
		return "direction 000 is for calm alone; north is 360"
	case !w.Calm:
		w.Direction = known(float64(number(text)))
	}
	return ""
}

// impossible returns what cannot be about a wind.
func (w Wind) impossible() string {
	switch {
	case w.Speed.Number > fastest || w.Gust.Number > fastest:
		return "no wind of that speed has been measured"
	case w.Gust.Known && w.Speed.Known && w.Gust.Number <= w.Speed.Number && !w.GustAtLeast:
		return "the gust is not above the mean wind"
	}
	return ""
}

// readSector takes the extremes of direction, such as 180V250.
func readSector(d *decoder, g group) (bool, error) {
	from, to, found := strings.Cut(g.text, "V")
	if !found || len(from) != 3 || len(to) != 3 || !allDigits(from) || !allDigits(to) {
		return false, nil
	}
	if number(from) > 360 || number(to) > 360 {
		return true, fault(g, "a direction is at most 360 degrees")
	}
	if from == to {
		return true, fault(g, "the two extremes of direction are the same")
	}
	wind := &d.report.Wind
	wind.SectorFrom, wind.SectorTo, wind.HasSector = float64(number(from)), float64(number(to)), true
	return true, nil
}
