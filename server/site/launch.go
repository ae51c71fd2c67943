package site

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"pitgate/server/physics/assess"
	"pitgate/server/physics/field"
)

// namedOff is how far a strip may point off its name before that is remarked: the name counts tens of degrees from magnetic north, rad.
const namedOff = 30 * math.Pi / 180

// checkStrip wants a strip with a width and a surface, inside the flying area, clear of keep-outs, that points where its name says.
func checkStrip(strip assess.Strip, path string, s shapes, found *remarks) {
	if !given(strip.WidthMeters) || value(strip.WidthMeters) <= 0 {
		found.add(path+".widthMeters", strip.Name, "has no width")
	}
	if strip.Surface == "" {
		found.add(path+".surface", strip.Name, "has no surface: rolling friction is then taken as for short grass")
	}
	r, ok := runOf(strip)
	if !ok {
		found.add(path, strip.Name, "lacks two different thresholds")
		return
	}
	if length := r.centre.Length(); given(strip.WidthMeters) && value(strip.WidthMeters) > length {
		found.add(path+".widthMeters", strip.Name, "is wider (%.1f m) than long (%.1f m)", value(strip.WidthMeters), length)
	}
	checkStripPlace(r, path, s, found)
	checkStripName(r, path, found)
}

// checkStripPlace holds a strip's corners against the flying area and its outline against the keep-outs.
func checkStripPlace(r run, path string, s shapes, found *remarks) {
	if s.flying != nil {
		ends := []struct {
			name    string
			corners []field.Point
		}{{"start", []field.Point{r.outline[0], r.outline[3]}}, {"end", []field.Point{r.outline[1], r.outline[2]}}}
		for _, end := range ends {
			out := min(s.flying.SignedDistance(end.corners[0]), s.flying.SignedDistance(end.corners[1]))
			if out < -edge {
				found.add(path+"."+end.name, r.name, "reaches %.1f m out of the flying area at its %s", -out, end.name)
			}
		}
	}
	for _, k := range s.keepOut {
		if overlap(r.outline, k.outline) {
			found.add(path, r.name, "lies partly in the keep-out %s", k.name)
		}
	}
}

// checkStripName holds a name such as "06/24" against the direction from start to end.
func checkStripName(r run, path string, found *remarks) {
	tens, ok := tensOf(r.name)
	if !ok {
		return
	}
	heading := r.centre.A.Heading(r.centre.B)
	if off := turn(heading - float64(tens)*math.Pi/18); off > namedOff {
		hint := "look at its thresholds"
		if off > math.Pi-namedOff {
			hint = "start and end seem exchanged"
		}
		found.add(path+".start", r.name, "is named %02d first but runs towards %.0f degrees: %s", tens, heading*180/math.Pi, hint)
	}
}

// tensOf reads the first direction of a name of two directions, in tens of degrees.
func tensOf(name string) (int, bool) {
	first, second, two := strings.Cut(name, "/")
	a, errA := strconv.Atoi(strings.TrimRight(first, "LRC"))
	b, errB := strconv.Atoi(strings.TrimRight(second, "LRC"))
	return a, two && errA == nil && errB == nil && a >= 0 && a <= 36 && b >= 0 && b <= 36
}

// turn is the size of an angle, from 0 to pi.
func turn(angle float64) float64 { return math.Abs(math.Remainder(angle, 2*math.Pi)) }

// checkSpot wants a launch spot with a direction, inside the flying area and outside every keep-out.
func checkSpot(spot assess.LaunchSpot, path string, s shapes, found *remarks) {
	if spot.HeadingDegrees == nil {
		found.add(path+".headingDegrees", spot.Name, "has no launch direction")
	}
	if spot.Position == nil {
		found.add(path+".position", spot.Name, "has no place")
		return
	}
	p := pointOf(*spot.Position)
	if s.flying != nil && !within(s.flying, p) {
		found.add(path+".position", spot.Name, "lies %.1f m outside the flying area", -s.flying.SignedDistance(p))
	}
	for _, k := range s.keepOut {
		if k.outline.SignedDistance(p) > edge {
			found.add(path+".position", spot.Name, "lies in the keep-out %s", k.name)
		}
	}
}

// checkObstacle wants an obstacle with a kind and a height that stands on no strip.
func checkObstacle(o assess.Obstacle, path string, s shapes, found *remarks) {
	if !given(o.HeightMeters) || value(o.HeightMeters) <= 0 {
		found.add(path+".heightMeters", o.Name, "has no height: nothing can be cleared by a known margin")
	}
	if o.Kind == "" {
		found.add(path+".kind", o.Name, "is of no kind")
	}
	if given(o.SagMeters) && value(o.SagMeters) > value(o.HeightMeters) {
		found.add(path+".sagMeters", o.Name, "hangs lower (%.1f m) than it is high (%.1f m)", value(o.SagMeters), value(o.HeightMeters))
	}
	points := pointsOf(o.Points)
	for _, r := range s.strips {
		if at, hits := onRun(points, o.Closed != nil && *o.Closed, r); hits {
			found.add(fmt.Sprintf("%s.points[%d]", path, at), o.Name, "stands on strip %s at corner %d", r.name, at+1)
		}
	}
}

// onRun finds the first point of a line on a strip, or from which the line crosses it.
func onRun(points []field.Point, closed bool, r run) (int, bool) {
	for i, p := range points {
		if r.outline.SignedDistance(p) > edge {
			return i, true
		}
		if i+1 == len(points) && !closed {
			break
		}
		side := field.Segment{A: p, B: points[(i+1)%len(points)]}
		for j := range r.outline {
			if crossesSide(side, field.Segment{A: r.outline[j], B: r.outline[(j+1)%len(r.outline)]}) {
				return i, true
			}
		}
	}
	return 0, false
}
