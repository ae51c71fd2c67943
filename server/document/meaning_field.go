package document

import (
	"fmt"

	"pitgate/server/physics/assess"
)

func checkField(field *assess.FieldDescription, path string, found *faults) {
	checkOutline(field.FlyingArea, join(path, "flyingArea"), found)
	for i := range field.KeepOuts {
		checkOutline(field.KeepOuts[i].Area, join(index(join(path, "keepOuts"), i), "area"), found)
	}
	for i := range field.LandingAreas {
		checkOutline(field.LandingAreas[i].Area, join(index(join(path, "landingAreas"), i), "area"), found)
	}
	for i := range field.Pits {
		checkOutline(field.Pits[i].Area, join(index(join(path, "pits"), i), "area"), found)
	}
	for i := range field.Parking {
		checkOutline(field.Parking[i].Area, join(index(join(path, "parking"), i), "area"), found)
	}
	checkLines(field.PeopleLines, join(path, "peopleLines"), found)
	checkLines(field.Roads, join(path, "roads"), found)
	if field.Permission != nil {
		checkPermission(field.Permission, join(path, "permission"), found)
	}
	if field.Survey != nil {
		checkDate(field.Survey.Date, join(path, "survey.date"), found)
	}
	for i := range field.Strips {
		checkStrip(&field.Strips[i], index(join(path, "strips"), i), found)
	}
	for i := range field.LaunchSpots {
		at := join(index(join(path, "launchSpots"), i), "groundProfile")
		checkProfile(field.LaunchSpots[i].GroundProfile, at, found)
	}
	for i := range field.Obstacles {
		checkObstacle(&field.Obstacles[i], index(join(path, "obstacles"), i), found)
	}
	checkUnique(stripNames(field), join(path, "strips"), found)
	checkUnique(spotNames(field), join(path, "launchSpots"), found)
	checkUnique(landingNames(field), join(path, "landingAreas"), found)
}

func landingNames(field *assess.FieldDescription) []string {
	names := make([]string, len(field.LandingAreas))
	for i, area := range field.LandingAreas {
		names[i] = area.Name
	}
	return names
}

func stripNames(field *assess.FieldDescription) []string {
	names := make([]string, len(field.Strips))
	for i, strip := range field.Strips {
		names[i] = strip.Name
	}
	return names
}

func spotNames(field *assess.FieldDescription) []string {
	names := make([]string, len(field.LaunchSpots))
	for i, spot := range field.LaunchSpots {
		names[i] = spot.Name
	}
	return names
}

func checkStrip(strip *assess.Strip, path string, found *faults) {
	checkProfile(strip.GroundProfile, join(path, "groundProfile"), found)
	if strip.Start == nil || strip.End == nil {
		return
	}
	start, end := flat(*strip.Start), flat(*strip.End)
	if start == end {
		found.add(join(path, "end"), "is the same place as start")
	}
}

func checkProfile(profile []assess.ProfilePoint, path string, found *faults) {
	for i := 1; i < len(profile); i++ {
		before, here := number(profile[i-1].DistanceMeters), number(profile[i].DistanceMeters)
		if here <= before {
			found.add(join(index(path, i), "distanceMeters"),
				"must be greater than the point before, "+plain(before)+", got "+plain(here))
		}
	}
}

func checkObstacle(obstacle *assess.Obstacle, path string, found *faults) {
	found.notAbove(join(path, "sagMeters.value"), known(obstacle.SagMeters), known(obstacle.HeightMeters), "heightMeters")
	if obstacle.Closed == nil || !*obstacle.Closed {
		return
	}
	checkOutline(&assess.Polygon{Corners: obstacle.Points}, path, found)
}

// place is a corner seen from above.
type place struct{ x, y float64 }

func flat(p assess.Point) place { return place{x: number(p.XMeters), y: number(p.YMeters)} }

// checkOutline wants at least three corners, no two next to each other the same, and no side that crosses another. Its words count corners
// from 1, as the page numbers them.
func checkOutline(outline *assess.Polygon, path string, found *faults) {
	if outline == nil || len(outline.Corners) == 0 {
		return
	}
	corners := make([]place, len(outline.Corners))
	for i, corner := range outline.Corners {
		corners[i] = flat(corner)
	}
	if len(corners) < 3 {
		found.add(path, fmt.Sprintf("must have at least 3 corners, got %d", len(corners)))
		return
	}
	for i := range corners {
		if corners[i] == corners[(i+1)%len(corners)] {
			found.add(path, fmt.Sprintf("has the same corner twice in a row: corners %d and %d", i+1, (i+1)%len(corners)+1))
			return
		}
	}
	if i, j, crosses := crossing(corners); crosses {
		found.add(path, fmt.Sprintf("crosses itself: the sides from corner %d and from corner %d meet", i+1, j+1))
		return
	}
	if flatOutline(corners) {
		found.add(path, "encloses no area: all corners lie on one line")
	}
}

// flatOutline tells whether all corners lie on the line through the first two.
func flatOutline(corners []place) bool {
	for _, corner := range corners[2:] {
		if side(corners[0], corners[1], corner) != 0 {
			return false
		}
	}
	return true
}

// crossing finds two sides of a closed outline that are not neighbours and meet.
func crossing(corners []place) (int, int, bool) {
	n := len(corners)
	for i := range n {
		for j := i + 2; j < n; j++ {
			if i == 0 && j == n-1 {
				continue
			}
			if meet(corners[i], corners[i+1], corners[j], corners[(j+1)%n]) {
				return i, j, true
			}
		}
	}
	return 0, 0, false
}

// meet tells whether the segments a-b and c-d have a point in common.
func meet(a, b, c, d place) bool {
	d1, d2 := side(c, d, a), side(c, d, b)
	d3, d4 := side(a, b, c), side(a, b, d)
	if d1*d2 < 0 && d3*d4 < 0 {
		return true
	}
	return d1 == 0 && between(c, d, a) || d2 == 0 && between(c, d, b) ||
		d3 == 0 && between(a, b, c) || d4 == 0 && between(a, b, d)
}

// side is positive when p lies to the left of the line from a to b.
func side(a, b, p place) float64 { return (b.x-a.x)*(p.y-a.y) - (b.y-a.y)*(p.x-a.x) }

func between(a, b, p place) bool {
	return min(a.x, b.x) <= p.x && p.x <= max(a.x, b.x) && min(a.y, b.y) <= p.y && p.y <= max(a.y, b.y)
}
