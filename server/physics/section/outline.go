package section

import (
	"fmt"
	"math"

	"pitgate/server/physics/planform"
)

const (
	fewestPoints   = 10
	mostPoints     = 1000
	chordTolerance = 0.1   // how far the ends of the chord may lie from 0 and 1
	closedX        = 0.02  // how far apart along the chord the two ends may lie
	closedZ        = 0.06  // thickest trailing edge over chord
	backTolerance  = 2e-4  // steps back along the chord that drawing noise explains
	overlap        = 2e-4  // how far the two sides may cross near the trailing edge
	thinnest       = 0.004 // an outline thinner than this is a line
	thickest       = 0.5
	mostCamber     = 0.25
)

// Check reports the first reason why an outline cannot be that of a wing section, naming the index of the point.
//
// The outline runs over chord from the trailing edge over the top to the nose and along the bottom back to the trailing edge: x falls from
// 1 to 0 and rises back to 1. Every error wraps planform.ErrImpossible. An empty outline is an error too: call it only when one is given.
func Check(outline []planform.OutlinePoint) error {
	if len(outline) < fewestPoints || len(outline) > mostPoints {
		return impossible("outline: needs %d to %d points, has %d", fewestPoints, mostPoints, len(outline))
	}
	for i, p := range outline {
		if err := checkPoint(outline, i, p); err != nil {
			return err
		}
	}
	nose := foremost(outline)
	for _, check := range []func([]planform.OutlinePoint, int) error{checkChord, checkClosed, checkDirection, checkOrder, checkCrossing} {
		if err := check(outline, nose); err != nil {
			return err
		}
	}
	return checkProportions(outline)
}

// impossible builds an error that wraps planform.ErrImpossible.
func impossible(format string, arguments ...any) error {
	return fmt.Errorf("%s: %w", fmt.Sprintf(format, arguments...), planform.ErrImpossible)
}

// checkPoint checks the numbers of one point and that it is not the one before it.
func checkPoint(outline []planform.OutlinePoint, i int, p planform.OutlinePoint) error {
	if !(math.Abs(p.X) <= 2) {
		return impossible("outline[%d].x: %v is not a place over chord", i, p.X)
	}
	if !(math.Abs(p.Z) <= 1) {
		return impossible("outline[%d].z: %v is not a height over chord", i, p.Z)
	}
	if i > 0 && p == outline[i-1] {
		return impossible("outline[%d]: repeats the point before it", i)
	}
	return nil
}

// foremost returns the index of the point with the smallest x, the first one of equals.
func foremost(outline []planform.OutlinePoint) int {
	nose := 0
	for i, p := range outline {
		if p.X < outline[nose].X {
			nose = i
		}
	}
	return nose
}

// checkChord checks that the outline spans the chord from 0 to 1 with the nose between its ends.
func checkChord(outline []planform.OutlinePoint, nose int) error {
	if math.Abs(outline[nose].X) > chordTolerance {
		return impossible("outline[%d].x: the nose lies at %v, it must lie at 0: give points over chord", nose, outline[nose].X)
	}
	for _, i := range []int{0, len(outline) - 1} {
		if math.Abs(outline[i].X-1) > chordTolerance {
			return impossible("outline[%d].x: must be the trailing edge at 1, is %v", i, outline[i].X)
		}
	}
	if nose < 2 || nose > len(outline)-3 {
		return impossible("outline[%d]: the nose leaves fewer than three points on one side", nose)
	}
	return nil
}

// checkClosed checks that both ends meet at the trailing edge.
func checkClosed(outline []planform.OutlinePoint, _ int) error {
	last := len(outline) - 1
	a, b := outline[0], outline[last]
	if math.Abs(a.X-b.X) > closedX || math.Abs(a.Z-b.Z) > closedZ {
		return impossible("outline[%d]: ends at (%v, %v), away from its start (%v, %v): the outline is open", last, b.X, b.Z, a.X, a.Z)
	}
	return nil
}

// checkDirection checks that the outline runs over the top first.
//
// Formula: twice the area enclosed = sum (x1 z2 - x2 z1), positive counterclockwise.
// Valid for: any polygon.
// Source: geometry.
func checkDirection(outline []planform.OutlinePoint, _ int) error {
	area, before := 0.0, outline[len(outline)-1]
	for _, p := range outline {
		area += float64(before.X*p.Z) - float64(p.X*before.Z)
		before = p
	}
	if !(area > 0) {
		return impossible("outline[1]: runs along the bottom first, start at the trailing edge and go over the top")
	}
	return nil
}

// checkOrder checks that x falls to the nose and rises behind it.
func checkOrder(outline []planform.OutlinePoint, nose int) error {
	for i := 1; i < len(outline); i++ {
		step := outline[i].X - outline[i-1].X
		if i <= nose {
			step = -step
		}
		if step < -backTolerance {
			return impossible("outline[%d].x: %v turns back along the chord after %v", i, outline[i].X, outline[i-1].X)
		}
	}
	return nil
}

// checkCrossing checks that no point of the bottom lies above the top and none of the top below the bottom.
func checkCrossing(outline []planform.OutlinePoint, nose int) error {
	top, bottom := outline[:nose+1], outline[nose:]
	for i, p := range outline {
		other, sign := bottom, 1.0
		if i > nose {
			other, sign = top, -1
		}
		if z, ok := heightAt(other, p.X); ok && float64(sign*(p.Z-z)) < -overlap {
			return impossible("outline[%d].z: %v lies across the other side, the outline crosses itself", i, p.Z)
		}
	}
	return nil
}

// heightAt interpolates one side of an outline at x; ok is false outside it.
func heightAt(side []planform.OutlinePoint, x float64) (z float64, ok bool) {
	for i := 1; i < len(side); i++ {
		a, b := side[i-1], side[i]
		if a.X > b.X {
			a, b = b, a
		}
		if x >= a.X && x <= b.X {
			if b.X-a.X < 1e-12 {
				return (a.Z + b.Z) / 2, true
			}
			return blend(a.Z, b.Z, (x-a.X)/(b.X-a.X)), true
		}
	}
	return 0, false
}

// checkProportions checks that what the outline encloses is a section and no line, drop or banana.
func checkProportions(outline []planform.OutlinePoint) error {
	m := newMeasured(outline)
	shape := m.shape()
	if !(shape.Thickness >= thinnest) {
		return impossible("outline: is a line, its greatest thickness is %.4f of the chord", shape.Thickness)
	}
	if !(shape.Thickness <= thickest) {
		return impossible("outline: its greatest thickness is %.2f of the chord, more than any wing's", shape.Thickness)
	}
	if !(math.Abs(shape.Camber) <= mostCamber) {
		return impossible("outline: its greatest camber is %.2f of the chord, more than any wing's", shape.Camber)
	}
	return nil
}
