package metar

import (
	"slices"
	"strings"
)

// readWindShear takes wind shear as text: WS R24, WS RWY24, WS ALL RWY, WS TKOF RWY20.
func readWindShear(d *decoder, g group) (bool, error) {
	if g.text != "WS" {
		return false, nil
	}
	words := []string{g.text}
	for slices.Contains([]string{"ALL", "TKOF", "LDG"}, d.peek()) {
		words = append(words, d.take().text)
	}
	if place := d.peek(); place != "RWY" && !isRunwayName(place) {
		return true, fault(g, "wind shear names a runway, such as WS R24 or WS ALL RWY")
	}
	words = append(words, d.take().text)
	d.report.WindShear = append(d.report.WindShear, strings.Join(words, " "))
	return true, nil
}

// isRunwayName reports whether a group is a runway, such as R24 or RWY09L.
func isRunwayName(text string) bool {
	text = strings.TrimPrefix(strings.TrimPrefix(text, "R"), "WY")
	if len(text) < 2 || !allDigits(text[:2]) {
		return false
	}
	return len(text) == 2 || len(text) == 3 && strings.Contains("LCR", text[2:])
}

// readSurface takes sea state and runway state as text: W15/S4, W19/H20, R06L/590230, R12/CLRD70, 24421594, R/SNOCLO.
func readSurface(d *decoder, g group) (bool, error) {
	rest, isRunway := cutRunway(g.text)
	taken := isRunway && isRunwayState(rest) || isSeaState(g.text) ||
		len(g.text) == 8 && isRunwayState(g.text[2:]) && allDigits(g.text[:2]) ||
		slices.Contains([]string{"SNOCLO", "R/SNOCLO"}, g.text)
	if taken {
		d.report.Surface = append(d.report.Surface, g.text)
	}
	return taken, nil
}

// isRunwayState reports whether a text is deposit, extent, depth and friction of a runway, or says it is clear.
func isRunwayState(text string) bool {
	if friction, cleared := strings.CutPrefix(text, "CLRD"); cleared {
		return slashes(friction, 2) || len(friction) == 2 && allDigits(friction)
	}
	return len(text) == 6 && strings.Trim(text, "0123456789/") == ""
}

// isSeaState reports whether a text is the temperature of the sea and its state (S) or height of waves (H).
func isSeaState(text string) bool {
	temperature, state, found := strings.Cut(strings.TrimPrefix(text, "W"), "/")
	if strings.HasPrefix(text, "W///") {
		temperature, state = "//", text[4:]
	}
	if !found || !strings.HasPrefix(text, "W") || len(state) < 2 {
		return false
	}
	_, isTemperature := parseCelsius(temperature)
	figures := strings.Trim(state[1:], "0123456789/") == "" && len(state) <= 4
	return isTemperature && temperature != "" && figures && (state[0] == 'S' || state[0] == 'H')
}

// colours are the military colour states.
var colours = []string{"BLU+", "BLU", "WHT", "GRN", "YLO1", "YLO2", "YLO", "AMB1", "AMB2", "AMB", "RED", "BLACK"}

// readColour takes a military colour state as text.
func readColour(d *decoder, g group) (bool, error) {
	if !slices.Contains(colours, strings.TrimPrefix(g.text, "BLACK")) && g.text != "BLACK" {
		return false, nil
	}
	d.report.Colour = g.text
	return true, nil
}
