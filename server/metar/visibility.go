package metar

import (
	"slices"
	"strings"
)

// compass are the eight points a visibility may be reported towards.
var compass = []string{"N", "NE", "E", "SE", "S", "SW", "W", "NW"}

// furthestMiles is the visibility above which statute miles are taken for a misprint.
const furthestMiles = 150

// readVisibility takes the prevailing visibility: metres, statute miles, CAVOK or slashes.
func readVisibility(d *decoder, g group) (bool, error) {
	switch {
	case g.text == "CAVOK":
		d.report.FineWeather = true
		d.report.Visibility = Visibility{Meters: metersReportedAsTenOrMore, Known: true, AtLeast: true}
		return true, nil
	case slashes(g.text, 4), g.text == "////SM", g.text == "////NDV":
		return true, nil
	case strings.HasSuffix(g.text, "SM"):
		return true, d.readMiles(g, 0)
	case len(g.text) <= 2 && allDigits(g.text) && isFraction(d.peek()):
		return true, d.readMiles(d.take(), number(g.text))
	}
	return readMeters(d, g)
}

// readMeters takes a visibility of four digits, with NDV where the sensor knows no directions.
func readMeters(d *decoder, g group) (bool, error) {
	digits, noDirection := strings.CutSuffix(g.text, "NDV")
	if len(digits) != 4 || !allDigits(digits) {
		return false, nil
	}
	d.report.Visibility = metric(number(digits))
	d.report.Visibility.NoDirection = noDirection
	return true, nil
}

// metric returns the visibility of four digits: 9999 is 10 km or more, 0000 less than 50 m.
func metric(count int) Visibility {
	v := Visibility{Meters: float64(count), Known: true}
	switch count {
	case 9999:
		v.Meters, v.AtLeast = metersReportedAsTenOrMore, true
	case 0:
		v.Meters, v.LessThan = metersReportedAsLessThanThis, true
	}
	return v
}

// isFraction reports whether a group is a fraction of a statute mile, such as 1/2SM.
func isFraction(text string) bool {
	_, _, found := strings.Cut(text, "/")
	return found && strings.HasSuffix(text, "SM") && isDigit(text[0])
}

// readMiles takes statute miles: a whole number read before, and this group of a number or a fraction.
func (d *decoder) readMiles(g group, whole int) error {
	text := strings.TrimSuffix(g.text, "SM")
	below, above := strings.HasPrefix(text, "M"), strings.HasPrefix(text, "P")
	if below || above {
		text = text[1:]
	}
	miles, problem := parseMiles(text)
	if problem != "" {
		return fault(g, "%s", problem)
	}
	d.report.Visibility = Visibility{
		Meters: (float64(whole) + miles) * metersPerStatuteMile, Known: true, LessThan: below, AtLeast: above,
	}
	return nil
}

// parseMiles reads a whole number or a fraction of statute miles.
func parseMiles(text string) (miles float64, problem string) {
	const form = "statute miles are a number or a fraction, such as 10SM, 1/2SM or 1 1/2SM"
	top, bottom, isFraction := strings.Cut(text, "/")
	if !allDigits(top) || len(top) > 3 {
		return 0, form
	}
	miles = float64(number(top))
	if !isFraction {
		if miles > furthestMiles {
			return 0, "no visibility of so many miles is reported"
		}
		return miles, ""
	}
	if !slices.Contains([]string{"2", "4", "8", "16"}, bottom) || number(top) == 0 || number(top) >= number(bottom) {
		return 0, form
	}
	return miles / float64(number(bottom)), ""
}

// readDirectional takes the visibility towards a point of the compass, such as 0900NW.
func readDirectional(d *decoder, g group) (bool, error) {
	if len(g.text) < 5 || !allDigits(g.text[:4]) || !slices.Contains(compass, g.text[4:]) {
		return false, nil
	}
	towards := metric(number(g.text[:4]))
	v := &d.report.Visibility
	if !v.Known {
		v.Meters, v.Known, v.AtLeast, v.LessThan = towards.Meters, true, towards.AtLeast, towards.LessThan
	}
	v.Directions = append(v.Directions, DirectionalVisibility{Meters: towards.Meters, Towards: g.text[4:]})
	return true, nil
}

// readRunwayRange takes a runway visual range as text: R12/1000U, R27L/P1500, R10/M0050, R36/0600V1200FT/D, R09///// or RVRNO.
func readRunwayRange(d *decoder, g group) (bool, error) {
	rest, isRunway := cutRunway(g.text)
	if g.text != "RVRNO" && (!isRunway || !isRange(rest)) {
		return false, nil
	}
	d.report.RunwayRange = append(d.report.RunwayRange, g.text)
	return true, nil
}

// cutRunway takes a runway such as R12 or R27L and the slash off a group.
func cutRunway(text string) (rest string, found bool) {
	runway, rest, found := strings.Cut(text, "/")
	if !found || len(runway) < 3 || len(runway) > 4 || runway[0] != 'R' || !allDigits(runway[1:3]) {
		return "", false
	}
	return rest, len(runway) == 3 || strings.Contains("LCR", runway[3:])
}

// isRange reports whether what follows the runway is a visual range, or the slashes of one that is missing.
func isRange(text string) bool {
	if missing, found := strings.CutPrefix(text, "////"); found {
		return slices.Contains([]string{"", "/", "FT", "N"}, missing)
	}
	text, fine := cutDistance(text)
	if !fine {
		return false
	}
	if rest, varies := strings.CutPrefix(text, "V"); varies {
		if text, fine = cutDistance(rest); !fine {
			return false
		}
	}
	text = strings.TrimPrefix(strings.TrimPrefix(text, "FT"), "/")
	return text == "" || slices.Contains([]string{"U", "D", "N"}, text)
}

// cutDistance takes four digits, with P for beyond or M for below, off a text.
func cutDistance(text string) (rest string, fine bool) {
	if text != "" && (text[0] == 'P' || text[0] == 'M') {
		text = text[1:]
	}
	if leadingDigits(text) != 4 {
		return "", false
	}
	return text[4:], true
}
