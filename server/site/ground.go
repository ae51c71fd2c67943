package site

import (
	"fmt"

	"pitgate/server/physics/assess"
	"pitgate/server/physics/field"
)

// checkAreas holds landing areas, pits, parking and keep-outs against the rest.
func checkAreas(f assess.FieldDescription, s shapes, found *remarks) {
	for i, k := range f.KeepOuts {
		path := fmt.Sprintf("keepOuts[%d]", i)
		if k.Reason == "" {
			found.add(path+".reason", k.Name, "says no reason")
		}
		if k.Area == nil || len(k.Area.Corners) == 0 {
			found.add(path+".area", k.Name, "has no corners")
		}
	}
	for i, a := range f.LandingAreas {
		checkLandingArea(a, fmt.Sprintf("landingAreas[%d]", i), s, found)
	}
	checkGroundAreas("pits", f.Pits, s, found)
	checkGroundAreas("parking", f.Parking, s, found)
	byName := namesOf(f)
	for _, list := range []string{"obstacles", "keepOuts", "landingAreas", "pits", "parking", "peopleLines", "roads"} {
		checkNames(list, byName[list], found)
	}
}

// checkLandingArea wants an outline inside the flying area and clear of keep-outs.
func checkLandingArea(a assess.NamedArea, path string, s shapes, found *remarks) {
	outline := areaOutline(a, path, found)
	if outline == nil {
		return
	}
	if a.Surface == "" {
		found.add(path+".surface", a.Name, "has no surface: what a slide there costs cannot be told")
	}
	for i, p := range pointsOf(a.Area.Corners) {
		if s.flying != nil && !within(s.flying, p) {
			found.add(fmt.Sprintf("%s.area.corners[%d]", path, i), a.Name, "corner %d lies %.1f m outside the flying area", i+1, -s.flying.SignedDistance(p))
		}
	}
	for _, k := range s.keepOut {
		if overlap(outline, k.outline) {
			found.add(path+".area", a.Name, "overlaps the keep-out %s", k.name)
		}
	}
}

// checkGroundAreas wants areas of people and cars that touch no strip.
func checkGroundAreas(list string, areas []assess.NamedArea, s shapes, found *remarks) {
	for i, a := range areas {
		path := fmt.Sprintf("%s[%d]", list, i)
		outline := areaOutline(a, path, found)
		if outline == nil {
			continue
		}
		for _, r := range s.strips {
			if overlap(outline, r.outline) {
				found.add(path+".area", a.Name, "overlaps strip %s", r.name)
			}
		}
	}
}

// areaOutline is the outline of an area in normal form; nil, with a remark, when it is none.
func areaOutline(a assess.NamedArea, path string, found *remarks) field.Polygon {
	if a.Area == nil || len(a.Area.Corners) == 0 {
		found.add(path+".area", a.Name, "has no corners")
		return nil
	}
	normal, _, err := field.Polygon(pointsOf(a.Area.Corners)).Normal()
	if err != nil {
		found.add(path+".area", a.Name, "%v", err)
		return nil
	}
	return normal
}

// checkLines wants lines of two points or more that no strip crosses.
func checkLines(f assess.FieldDescription, s shapes, found *remarks) {
	checkLineList("peopleLines", f.PeopleLines, s, found)
	checkLineList("roads", f.Roads, s, found)
}

func checkLineList(list string, lines []assess.NamedLine, s shapes, found *remarks) {
	for i, l := range lines {
		path := fmt.Sprintf("%s[%d]", list, i)
		if len(l.Points) < 2 {
			found.add(path+".points", l.Name, "needs two points, has %d", len(l.Points))
			continue
		}
		for _, r := range s.strips {
			if at, hits := onRun(pointsOf(l.Points), false, r); hits {
				found.add(fmt.Sprintf("%s.points[%d]", path, at), l.Name, "crosses strip %s at corner %d", r.name, at+1)
			}
		}
	}
}

// checkPlaces wants both coordinates of every place: one that is missing counts as zero, which is hardly meant.
func checkPlaces(f assess.FieldDescription, found *remarks) {
	lists := map[string][]namedPlaces{}
	lists["flyingArea"] = []namedPlaces{{"", "flyingArea.corners", cornersOf(f.FlyingArea)}}
	for i, o := range f.Obstacles {
		lists["obstacles"] = append(lists["obstacles"], namedPlaces{o.Name, fmt.Sprintf("obstacles[%d].points", i), o.Points})
	}
	for i, k := range f.KeepOuts {
		lists["keepOuts"] = append(lists["keepOuts"], namedPlaces{k.Name, fmt.Sprintf("keepOuts[%d].area.corners", i), cornersOf(k.Area)})
	}
	for list, areas := range map[string][]assess.NamedArea{"landingAreas": f.LandingAreas, "pits": f.Pits, "parking": f.Parking} {
		for i, a := range areas {
			lists[list] = append(lists[list], namedPlaces{a.Name, fmt.Sprintf("%s[%d].area.corners", list, i), cornersOf(a.Area)})
		}
	}
	for list, lines := range map[string][]assess.NamedLine{"peopleLines": f.PeopleLines, "roads": f.Roads} {
		for i, l := range lines {
			lists[list] = append(lists[list], namedPlaces{l.Name, fmt.Sprintf("%s[%d].points", list, i), l.Points})
		}
	}
	for _, list := range []string{"flyingArea", "obstacles", "keepOuts", "landingAreas", "pits", "parking", "peopleLines", "roads"} {
		for _, places := range lists[list] {
			places.check(found)
		}
	}
}

// namedPlaces are the places of one part.
type namedPlaces struct {
	name, path string
	points     []assess.Point
}

func (n namedPlaces) check(found *remarks) {
	for i, p := range n.points {
		if p.XMeters == nil {
			found.add(fmt.Sprintf("%s[%d].xMeters", n.path, i), n.name, "corner %d lacks its distance to the east", i+1)
		}
		if p.YMeters == nil {
			found.add(fmt.Sprintf("%s[%d].yMeters", n.path, i), n.name, "corner %d lacks its distance to the north", i+1)
		}
	}
}

func cornersOf(p *assess.Polygon) []assess.Point {
	if p == nil {
		return nil
	}
	return p.Corners
}
