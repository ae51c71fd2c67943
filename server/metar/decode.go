package metar

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// group is one word of the text.
type group struct {
	text string // in capitals
	at   int    // character it begins with, counted from 1
}

// element is one part of the code form.
type element struct {
	name string
	// read reports whether a group is of the element, and takes it into the report.
	read func(d *decoder, g group) (bool, error)
	// once is set for an element that cannot be repeated.
	once bool
}

// order is the body of the code form: an element never stands before an earlier one.
var order = []element{
	{"modifier", readModifier, false},
	{"wind", readWind, true},
	{"sector of wind direction", readSector, true},
	{"visibility", readVisibility, true},
	{"visibility in one direction", readDirectional, false},
	{"runway visual range", readRunwayRange, false},
	{"present weather", readWeather, false},
	{"cloud", readCloud, false},
	{"temperature and dew point", readTemperature, true},
	{"pressure", readPressure, false},
	{"recent weather", readRecent, false},
	{"wind shear", readWindShear, false},
	{"sea or runway state", readSurface, false},
	{"colour state", readColour, true},
}

// decoder walks over the groups of one text.
type decoder struct {
	groups []group
	next   int // group to be read
	stage  int // element of order the text has come to
	report Report
}

// Decode reads one report. The error is a *GroupError that names the group, its place and what was expected. A forecast (TAF), more than one
// report and impossible values are refused.
func Decode(text string) (Report, error) {
	if len(text) > MaximumLength {
		return Report{}, &GroupError{At: MaximumLength + 1, Problem: "the text is longer than a report; give one report"}
	}
	d := decoder{groups: split(text)}
	if err := d.readHead(); err != nil {
		return Report{}, err
	}
	for d.next < len(d.groups) && !d.readTail() {
		if err := d.readBody(d.take()); err != nil {
			return Report{}, err
		}
	}
	return d.report, nil
}

// split cuts a text into groups, in capitals, without the sign that ends a report.
func split(text string) []group {
	var groups []group
	start, at, begin := -1, 0, 0
	cut := func(end int) {
		if start >= 0 {
			groups = append(groups, group{text: capitals(text[start:end]), at: begin})
		}
		start = -1
	}
	text = strings.TrimRight(strings.TrimRightFunc(text, unicode.IsSpace), "=")
	for i, r := range text {
		at++
		switch {
		case unicode.IsSpace(r):
			cut(i)
		case start < 0:
			start, begin = i, at
		}
	}
	cut(len(text))
	return groups
}

// capitals turns letters a to z into capitals and leaves every other byte.
func capitals(text string) string {
	return strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' {
			return r - 'a' + 'A'
		}
		return r
	}, text)
}

// take returns the next group and steps past it.
func (d *decoder) take() group {
	g := d.groups[d.next]
	d.next++
	return g
}

// peek returns the text of the next group, empty at the end.
func (d *decoder) peek() string {
	if d.next < len(d.groups) {
		return d.groups[d.next].text
	}
	return ""
}

// end returns the error of a text that stops too early.
func (d *decoder) end(problem string) error {
	at := 1
	if n := len(d.groups); n > 0 {
		last := d.groups[n-1]
		at = last.at + utf8.RuneCountInString(last.text)
	}
	return &GroupError{At: at, Problem: problem}
}

// readBody takes a group into the first element, from the present one on, that it belongs to.
func (d *decoder) readBody(g group) error {
	if d.report.Nil {
		return fault(g, "nothing may follow NIL")
	}
	if problem := foreign(g.text); problem != "" {
		return fault(g, "%s", problem)
	}
	for stage := d.stage; stage < len(order); stage++ {
		taken, err := order[stage].read(d, g)
		if err != nil {
			return err
		}
		if taken {
			d.stage = stage
			if order[stage].once {
				d.stage++
			}
			return nil
		}
	}
	return d.unread(g)
}

// unread returns the error of a group that no element from the present one on took.
func (d *decoder) unread(g group) error {
	for _, earlier := range order[:min(d.stage, len(order))] {
		probe := decoder{groups: d.groups, next: d.next}
		if taken, err := earlier.read(&probe, g); taken && err == nil {
			return fault(g, "%s stands twice or too late in the report", earlier.name)
		}
	}
	if d.stage >= len(order) {
		return fault(g, "not understood; expected NOSIG, BECMG, TEMPO, RMK or the end")
	}
	return fault(g, "not understood; expected %s or what follows it", order[d.stage].name)
}

// foreign returns what is wrong with a word that belongs to another kind of text.
func foreign(text string) string {
	switch {
	case text == string(Routine) || text == string(Special):
		return "a second report begins; give one report"
	case text == "TAF" || isValidity(text):
		return "this is a forecast (TAF), not a report; give a METAR or SPECI"
	case strings.Contains(text, "="):
		return "the report ends here; give one report"
	}
	return ""
}

// isValidity reports whether a group is the period of a forecast, such as 2218/2324.
func isValidity(text string) bool {
	from, to, found := strings.Cut(text, "/")
	return found && len(from) == 4 && len(to) == 4 && allDigits(from) && allDigits(to)
}

// tailWords begin the trend.
var tailWords = []string{"NOSIG", "BECMG", "TEMPO"}

// readTail takes the trend and the remarks as text, and reports whether they have begun.
func (d *decoder) readTail() bool {
	word := d.peek()
	if word != "RMK" && !slices.Contains(tailWords, word) && !isRainfall(word) {
		return false
	}
	var trend, remarks []string
	into := &trend
	if isRainfall(word) {
		into = &remarks
	}
	for d.next < len(d.groups) {
		g := d.take()
		if g.text == "RMK" && into == &trend {
			into = &remarks
			continue
		}
		*into = append(*into, g.text)
	}
	d.report.Trend, d.report.Remarks = strings.Join(trend, " "), strings.Join(remarks, " ")
	return true
}

// isRainfall reports whether a group is the rainfall that Australian reports give without RMK before it, such as RF00.2/001.4.
func isRainfall(text string) bool {
	return len(text) > 3 && text[:2] == "RF" && isDigit(text[2]) && strings.Trim(text[2:], "0123456789./") == ""
}
