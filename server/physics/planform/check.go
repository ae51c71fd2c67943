package planform

import (
	"errors"
	"fmt"
	"math"
)

// ErrImpossible marks geometry that cannot exist: wrapped by every error of Check.
var ErrImpossible = errors.New("impossible geometry")

const (
	largestLength = 100.0
	largestAngle  = math.Pi / 2
)

// Check reports the first reason why a surface cannot exist, naming the surface, the station and the field.
//
// A surface needs two stations or more, positive chords, and stations that run outboard (upward for a fin or winglet): stations
// that turn back give strips of negative or zero area, which is an outline that crosses itself.
func Check(s Surface) error {
	if len(s.Stations) < 2 {
		return s.impossible("stations: needs at least two, has %d", len(s.Stations))
	}
	if !inside(s.Incidence, largestAngle) {
		return s.impossible("incidence: %v is not a possible angle", s.Incidence)
	}
	for i, station := range s.Stations {
		if err := s.checkStation(i, station); err != nil {
			return err
		}
	}
	for i := 1; i < len(s.Stations); i++ {
		if err := s.checkStrip(i); err != nil {
			return err
		}
	}
	return s.checkControls()
}

// CheckAll applies Check to every surface.
func CheckAll(surfaces []Surface) error {
	for _, s := range surfaces {
		if err := Check(s); err != nil {
			return err
		}
	}
	return nil
}

// checkStation checks the numbers of one station.
func (s Surface) checkStation(i int, station Station) error {
	fields := []struct {
		name  string
		value float64
		limit float64
	}{
		{"leading_edge_x", station.X, largestLength}, {"leading_edge_y", station.Y, largestLength},
		{"leading_edge_z", station.Z, largestLength}, {"chord", station.Chord, largestLength},
		{"twist", station.Twist, largestAngle}, {"thickness", station.Section.Thickness, 1},
		{"camber", station.Section.Camber, 0.5}, {"camber_position", station.Section.CamberPosition, 1},
		{"maximum_lift_coefficient", station.Section.ClMax, 10},
	}
	for _, f := range fields {
		if !inside(f.value, f.limit) {
			return s.impossible("stations[%d].%s: %v is not a possible value", i, f.name, f.value)
		}
	}
	if station.Chord < 1e-4 {
		return s.impossible("stations[%d].chord: must be at least 0.0001 m, is %v", i, station.Chord)
	}
	if s.Mirrored && station.Y < 0 {
		return s.impossible("stations[%d].leading_edge_y: %v lies across the plane of symmetry of a mirrored surface", i, station.Y)
	}
	return nil
}

// checkStrip checks the strip between station i-1 and i.
func (s Surface) checkStrip(i int) error {
	a, b := s.Stations[i-1], s.Stations[i]
	along, length := b.Y-a.Y, stripLength(a, b)
	if s.Vertical() {
		along = length
	}
	if length < 1e-6 {
		return s.impossible("stations[%d]: outline has no width between this station and the one before", i)
	}
	if along < 0 {
		return s.impossible("stations[%d].leading_edge_y: outline crosses itself, the strip before it has negative area", i)
	}
	return nil
}

// checkControls checks the extents of the controls.
func (s Surface) checkControls() error {
	for _, c := range s.Controls {
		if !inside(c.Inner, 1) || !inside(c.Outer, 1) || c.Inner < 0 || c.Outer < c.Inner {
			return s.impossible("controls[%q]: ends %v and %v must rise from 0 to 1", c.Name, c.Inner, c.Outer)
		}
		if !inside(c.ChordRatio, 1) || c.ChordRatio < 0 {
			return s.impossible("controls[%q].chord_ratio: %v must lie between 0 and 1", c.Name, c.ChordRatio)
		}
	}
	return nil
}

// impossible builds the error of this surface.
func (s Surface) impossible(format string, arguments ...any) error {
	return fmt.Errorf("surface %q: %s: %w", s.Name, fmt.Sprintf(format, arguments...), ErrImpossible)
}

// inside reports whether a value is a number of magnitude up to a limit.
func inside(value, limit float64) bool { return math.Abs(value) <= limit }
