package site

import (
	"fmt"

	"pitgate/server/physics/assess"
)

// Remark is something worth a second look.
type Remark struct {
	// Path within the description, e.g. "strips[0].end".
	Path string
	// Part is the name of the part it is about; empty for the field as a whole.
	Part string
	// Text says in words what and where.
	Text string
}

// remarks collects what is found.
type remarks struct{ list []Remark }

func (r *remarks) add(path, part, format string, args ...any) {
	r.list = append(r.list, Remark{Path: path, Part: part, Text: fmt.Sprintf(format, args...)})
}

// Remarks lists what is worth a second look in a description, in the order in which it reads the parts: the field as a whole, strips, launch
// spots, obstacles, areas, lines. It never fails: what it cannot judge (a strip without an end, an outline that crosses itself) it leaves to the
// document package.
func Remarks(field assess.FieldDescription) []Remark {
	found := &remarks{}
	s := newShapes(field)
	checkWhole(field, found)
	checkPlaces(field, found)
	checkPilot(field, s, found)
	for i := range field.Strips {
		checkStrip(field.Strips[i], fmt.Sprintf("strips[%d]", i), s, found)
	}
	for i := range field.LaunchSpots {
		checkSpot(field.LaunchSpots[i], fmt.Sprintf("launchSpots[%d]", i), s, found)
	}
	for i := range field.Obstacles {
		checkObstacle(field.Obstacles[i], fmt.Sprintf("obstacles[%d]", i), s, found)
	}
	checkAreas(field, s, found)
	checkLines(field, s, found)
	return found.list
}

// PartAt is the name of the part that a path of the document leads into, e.g. of "obstacles[2].points[0].xMeters"; empty when the path leads
// into none.
func PartAt(field assess.FieldDescription, path string) string {
	list, i, ok := indexed(path)
	if !ok {
		return ""
	}
	names := namesOf(field)[list]
	if i >= len(names) {
		return ""
	}
	return names[i]
}

// indexed takes "obstacles[2].points" apart into "obstacles" and 2.
func indexed(path string) (string, int, bool) {
	for at, sign := range path {
		switch sign {
		case '.':
			return "", 0, false
		case '[':
			var i int
			if _, err := fmt.Sscanf(path[at:], "[%d]", &i); err != nil || i < 0 {
				return "", 0, false
			}
			return path[:at], i, true
		}
	}
	return "", 0, false
}

// namesOf lists the names of every list of parts.
func namesOf(f assess.FieldDescription) map[string][]string {
	return map[string][]string{
		"strips":       names(f.Strips, func(s assess.Strip) string { return s.Name }),
		"launchSpots":  names(f.LaunchSpots, func(s assess.LaunchSpot) string { return s.Name }),
		"obstacles":    names(f.Obstacles, func(o assess.Obstacle) string { return o.Name }),
		"keepOuts":     names(f.KeepOuts, func(k assess.KeepOut) string { return k.Name }),
		"peopleLines":  names(f.PeopleLines, lineName),
		"roads":        names(f.Roads, lineName),
		"landingAreas": names(f.LandingAreas, areaName),
		"pits":         names(f.Pits, areaName),
		"parking":      names(f.Parking, areaName),
	}
}

func lineName(l assess.NamedLine) string { return l.Name }

func areaName(a assess.NamedArea) string { return a.Name }

func names[P any](parts []P, name func(P) string) []string {
	out := make([]string, len(parts))
	for i, p := range parts {
		out[i] = name(p)
	}
	return out
}
