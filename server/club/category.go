package club

import (
	"fmt"
	"slices"
)

// categoryNames are the occurrence categories and what they stand for.
// Source: CAST/ICAO Common Taxonomy Team, Aviation Occurrence Categories, as in the ECCAIRS value list 430, version
// 5.0.1.1.
var categoryNames = map[string]string{
	"ADRM": "aerodrome", "AMAN": "abrupt manoeuvre", "ARC": "abnormal runway contact", "ATM": "air traffic management",
	"BIRD": "bird", "CABIN": "cabin safety", "CFIT": "controlled flight into terrain",
	"CTOL": "collision with obstacle at take-off or landing", "EVAC": "evacuation", "EXTL": "external load",
	"F-NI": "fire or smoke, not from impact", "F-POST": "fire or smoke after impact", "FUEL": "fuel related",
	"GCOL": "ground collision", "GTOW": "glider towing", "ICE": "icing", "LALT": "low altitude operations",
	"LOC-G": "loss of control on the ground", "LOC-I": "loss of control in flight", "LOLI": "loss of lifting conditions",
	"MAC": "airprox, near miss or collision in the air", "MED": "medical", "NAV": "navigation", "OTHR": "other",
	"RAMP": "ground handling", "RE": "runway excursion", "RI": "runway incursion", "SCF-NP": "failure of a part other than the powerplant",
	"SCF-PP": "powerplant failure", "SEC": "security", "TURB": "turbulence", "UIMC": "unintended flight without view",
	"UNK": "unknown", "USOS": "undershoot or overshoot", "WILD": "wildlife", "WSTRW": "wind shear or thunderstorm",
}

// forbiddenPair is two categories that the coding rules do not let stand together, and why.
type forbiddenPair struct {
	one, other, why string
}

// forbiddenPairs follow the usage notes of the categories.
var forbiddenPairs = []forbiddenPair{
	{"ARC", "USOS", "a touch-down short of or beyond the strip is an undershoot or overshoot, not an abnormal contact"},
	{"ARC", "LOC-I", "a contact after control was lost in the air is not an abnormal landing"},
	{"CTOL", "CFIT", "an obstacle the pilot knew of is not controlled flight into terrain"},
	{"CTOL", "LOC-I", "once control was lost, the obstacle is not the category"},
	{"CTOL", "SCF-PP", "once the engine had failed, the obstacle is not the category"},
	{"CFIT", "LALT", "hitting the ground in control during a low pass is a low altitude operation"},
	{"CFIT", "LOC-I", "flight into terrain is controlled, or it is loss of control"},
	{"FUEL", "SCF-PP", "an engine that stopped for want of fuel did not fail"},
	{"BIRD", "WILD", "birds are never wildlife"},
}

// CheckCategories returns Invalid for a code that is not an occurrence category.
func CheckCategories(codes []string) error {
	for i, code := range codes {
		if _, ok := categoryNames[code]; !ok {
			return RefuseField(fmt.Sprintf("incident.occurrence_categories[%d]", i), "UNKNOWN_CATEGORY", "%q is not an occurrence category", code)
		}
	}
	return nil
}

// CategoryWarnings tells, in words, which of the codes the coding rules do not let stand together or alone.
func CategoryWarnings(codes []string) []string {
	var warnings []string
	for _, pair := range forbiddenPairs {
		if slices.Contains(codes, pair.one) && slices.Contains(codes, pair.other) {
			warnings = append(warnings, fmt.Sprintf("%s and %s do not go together: %s", pair.one, pair.other, pair.why))
		}
	}
	if len(codes) > 0 && !slices.ContainsFunc(codes, func(code string) bool { return code != "F-POST" }) {
		warnings = append(warnings, "F-POST does not stand alone: say what led to the impact")
	}
	return warnings
}
