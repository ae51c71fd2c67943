package motion

import (
	"errors"
	"fmt"
	"math"
)

// checkProfile returns an error when distances do not rise or a value is not a number.
func checkProfile(name string, points []ProfilePoint) error {
	for i, p := range points {
		if math.IsNaN(p.Distance-p.Distance) || math.IsNaN(p.Height-p.Height) {
			return errors.New(name + " profile: value is not a number")
		}
		if i > 0 && !(p.Distance > points[i-1].Distance) {
			return errors.New(name + " profile: distances must rise")
		}
	}
	return nil
}

// checkForces returns an error when a catapult has no stroke or a force is not a number.
func (l Launch) checkForces() error {
	if l.Method != Catapult {
		return nil
	}
	if len(l.Forces) < 2 {
		return errors.New("launch forces: a catapult needs two points")
	}
	for i, p := range l.Forces {
		if !(p.Travel >= 0 && p.Travel <= 1000 && math.Abs(p.Force) <= 1e6) {
			return errors.New("launch forces: value out of range")
		}
		if i > 0 && !(p.Travel > l.Forces[i-1].Travel) {
			return errors.New("launch forces: travel must rise")
		}
	}
	return nil
}

// checkPullTest returns an error when a pull test does not begin at or beyond zero, does not rise, or ends before the stretch of the launch.
func (l Launch) checkPullTest() error {
	if l.Method != Bungee || len(l.PullTest) == 0 {
		return nil
	}
	for i, p := range l.PullTest {
		if !(p.Travel >= 0 && p.Travel <= 1000 && p.Force >= 0 && p.Force <= 1e6) {
			return fmt.Errorf("launch pull test: point %d is out of range", i+1)
		}
		if i > 0 && (!(p.Travel > l.PullTest[i-1].Travel) || p.Force < l.PullTest[i-1].Force) {
			return fmt.Errorf("launch pull test: stretch and force must rise to point %d", i+1)
		}
	}
	if last := l.PullTest[len(l.PullTest)-1].Travel; l.Stretch > last {
		return fmt.Errorf("launch stretch: %g m is beyond the pull test, which ends at %g m", l.Stretch, last)
	}
	return nil
}

// heightAlong returns the height of a profile at a distance; outside it the nearest end holds.
func heightAlong(points []ProfilePoint, distance float64) float64 {
	n := len(points)
	if n == 0 {
		return 0
	}
	if distance <= points[0].Distance {
		return points[0].Height
	}
	for i := 1; i < n; i++ {
		if b := points[i]; distance <= b.Distance {
			a := points[i-1]
			return a.Height + float64((b.Height-a.Height)*((distance-a.Distance)/(b.Distance-a.Distance)))
		}
	}
	return points[n-1].Height
}

// sineAlong returns the sine of the slope of rails whose heights are given by travel, at a travel; the nearest stretch holds outside.
func sineAlong(points []ProfilePoint, travel float64) float64 {
	for i := 1; i < len(points); i++ {
		a, b := points[i-1], points[i]
		if travel <= b.Distance || i == len(points)-1 {
			return min(max((b.Height-a.Height)/(b.Distance-a.Distance), -1), 1)
		}
	}
	return 0
}

// forceAlong returns the force of a catapult at a travel; outside its points the nearest holds.
func forceAlong(points []ForcePoint, travel float64) float64 {
	n := len(points)
	if n == 0 {
		return 0
	}
	if travel <= points[0].Travel {
		return points[0].Force
	}
	for i := 1; i < n; i++ {
		if b := points[i]; travel <= b.Travel {
			a := points[i-1]
			return a.Force + float64((b.Force-a.Force)*((travel-a.Travel)/(b.Travel-a.Travel)))
		}
	}
	return points[n-1].Force
}
