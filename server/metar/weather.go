package metar

import (
	"slices"
	"strings"
)

// Weather is one group of present or recent weather.
type Weather struct {
	Text       string   // the group as reported
	Intensity  int      // -1 light, 0 moderate or none said, +1 heavy or well developed
	Vicinity   bool     // near the aerodrome, not at it
	Descriptor string   // MI, BC, PR, DR, BL, SH, TS, FZ or empty
	Phenomena  []string // RA, SN, FG and so on
}

// Codes of table 4678 of the Manual on Codes.
var (
	descriptors = []string{"MI", "BC", "PR", "DR", "BL", "SH", "TS", "FZ"}
	phenomena   = []string{
		"DZ", "RA", "SN", "SG", "IC", "PL", "GR", "GS", "UP",
		"BR", "FG", "FU", "VA", "DU", "SA", "HZ", "PY",
		"PO", "SQ", "FC", "SS", "DS",
	}
	// unscaled phenomena have no intensity.
	unscaled = []string{"BR", "FG", "FU", "VA", "HZ"}
)

// readWeather takes present weather, or slashes where the sensor failed.
func readWeather(d *decoder, g group) (bool, error) {
	if slashes(g.text, 2) {
		d.report.WeatherUnknown = true
		return true, nil
	}
	weather, isWeather := parseWeather(g.text)
	if !isWeather {
		return false, nil
	}
	if problem := weather.impossible(); problem != "" {
		return true, fault(g, "%s", problem)
	}
	d.report.Weather = append(d.report.Weather, weather)
	return true, nil
}

// readRecent takes weather of the last hour, such as RESHRA.
func readRecent(d *decoder, g group) (bool, error) {
	text, isRecent := strings.CutPrefix(g.text, "RE")
	if !isRecent {
		return false, nil
	}
	if slashes(text, 2) {
		return true, nil
	}
	weather, isWeather := parseWeather(text)
	if !isWeather || weather.Intensity != 0 || weather.Vicinity {
		return false, nil
	}
	d.report.Recent = append(d.report.Recent, weather)
	return true, nil
}

// parseWeather reads intensity or vicinity, a descriptor and phenomena.
func parseWeather(text string) (Weather, bool) {
	weather := Weather{Text: text}
	rest := weather.cutPrefix(text)
	if len(rest) < 2 || len(rest)%2 != 0 {
		return weather, false
	}
	if slices.Contains(descriptors, rest[:2]) {
		weather.Descriptor, rest = rest[:2], rest[2:]
	}
	for ; rest != ""; rest = rest[2:] {
		code := rest[:2]
		if !slices.Contains(phenomena, code) || slices.Contains(weather.Phenomena, code) {
			return weather, false
		}
		weather.Phenomena = append(weather.Phenomena, code)
	}
	return weather, true
}

// cutPrefix takes intensity and vicinity off a text.
func (w *Weather) cutPrefix(text string) string {
	switch {
	case strings.HasPrefix(text, "-"):
		w.Intensity = -1
		return text[1:]
	case strings.HasPrefix(text, "+"):
		w.Intensity = 1
		return text[1:]
	case strings.HasPrefix(text, "VC"):
		w.Vicinity = true
		return text[2:]
	}
	return text
}

// impossible returns what cannot be about a group of weather.
func (w Weather) impossible() string {
	alone := len(w.Phenomena) == 0
	switch {
	case alone && w.Descriptor != "TS" && (w.Descriptor != "SH" || !w.Vicinity):
		return "a descriptor needs what it describes, such as SHRA or FZFG"
	case w.Intensity != 0 && (alone || slices.ContainsFunc(w.Phenomena, func(code string) bool { return slices.Contains(unscaled, code) })):
		return "this weather has no intensity; leave the sign out"
	}
	return ""
}

// Has reports whether the present weather, at the aerodrome or near it, names a descriptor or phenomenon such as TS or FG.
func (r Report) Has(code string) bool {
	return slices.ContainsFunc(r.Weather, func(w Weather) bool {
		return w.Descriptor == code || slices.Contains(w.Phenomena, code)
	})
}

// Heavy reports whether any present weather is heavy or well developed.
func (r Report) Heavy() bool {
	return slices.ContainsFunc(r.Weather, func(w Weather) bool { return w.Intensity > 0 })
}
