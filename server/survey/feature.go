package survey

import (
	"errors"
	"fmt"
	"math"
	"unicode/utf8"

	"pitgate/server/physics/field"
)

// Bounds of what is read.
const (
	MostBytes    = 4 << 20 // of a file
	MostFeatures = 2000
	MostPlaces   = 20000 // of all features together
	MostCorners  = 1000  // of an area that is placed
	mostName     = 80    // characters of a name
)

// Feature is one thing of a file, not yet on the field's plane.
type Feature struct {
	Kind   Kind
	Name   string
	Shape  Shape
	Places []field.Position // corners of an area once each: the last is not the first again
	// Grounded says for each place whether its height was given.
	Grounded []bool
	// Height is the top over the ground, m; nil when it was not given.
	Height *float64
	// Accuracy is one standard deviation of each place, m; zero where it was not given.
	Accuracy []float64
}

// Error says what is wrong with which feature.
type Error struct {
	Feature int    // number from 1; zero when the file as a whole is wrong
	Name    string // of the feature, if it has one
	Member  string // of the feature or file, as written there, e.g. "geometry.coordinates[2]"
	Err     error
}

// Error names the feature, the member and what is wrong.
func (e *Error) Error() string {
	text := e.Err.Error()
	if e.Member != "" {
		text = e.Member + ": " + text
	}
	switch {
	case e.Feature > 0 && e.Name != "":
		return fmt.Sprintf("feature %d (%q): %s", e.Feature, clip(e.Name), text)
	case e.Feature > 0:
		return fmt.Sprintf("feature %d: %s", e.Feature, text)
	}
	return text
}

// Unwrap returns what is wrong, without the place.
func (e *Error) Unwrap() error { return e.Err }

// wrong returns an error about a member of the file.
func wrong(member, format string, values ...any) error {
	return &Error{Member: member, Err: fmt.Errorf(format, values...)}
}

// inFeature gives an error the number and name of its feature.
func inFeature(err error, number int, name string) error {
	var e *Error
	if errors.As(err, &e) {
		e.Feature, e.Name = number, name
		return e
	}
	return &Error{Feature: number, Name: name, Err: err}
}

// errTooLarge is the error for files beyond the bounds.
var errTooLarge = fmt.Errorf("file is larger than %d MB or has more than %d features or %d places", MostBytes>>20, MostFeatures, MostPlaces)

// bounded returns an error when a file is empty or too large.
func bounded(data []byte) error {
	switch {
	case len(data) == 0:
		return errors.New("file is empty")
	case len(data) > MostBytes:
		return errTooLarge
	case !utf8.Valid(data):
		return errors.New("file is not text in UTF-8")
	}
	return nil
}

// add appends a place.
func (f *Feature) add(p field.Position, grounded bool, accuracy float64) {
	f.Places = append(f.Places, p)
	f.Grounded = append(f.Grounded, grounded)
	f.Accuracy = append(f.Accuracy, accuracy)
}

// open drops the last place of an area where it is the first again, and reports whether it was.
func (f *Feature) open() bool {
	last := len(f.Places) - 1
	if last < 1 || f.Places[0].Latitude != f.Places[last].Latitude || f.Places[0].Longitude != f.Places[last].Longitude {
		return false
	}
	f.Places, f.Grounded, f.Accuracy = f.Places[:last], f.Grounded[:last], f.Accuracy[:last]
	return true
}

// check returns an error when kind, name, height or number of places are impossible. The member of a shape is given.
func (f *Feature) check(shapeMember string) error {
	if err := f.Kind.check(); err != nil {
		return &Error{Member: "kind", Err: err}
	}
	if utf8.RuneCountInString(f.Name) > mostName {
		return wrong("name", "longer than %d characters", mostName)
	}
	if f.Height != nil && !(*f.Height >= 0 && *f.Height <= 1000) {
		return wrong("height", "%g m is outside 0 to 1000", *f.Height)
	}
	return f.checkShape(shapeMember)
}

// checkShape returns an error when the shape is not one of the kind's or has too few places.
func (f *Feature) checkShape(member string) error {
	allowed := shapes[f.Kind]
	fine := false
	for _, s := range allowed {
		fine = fine || s == f.Shape
	}
	if !fine {
		return wrong(member, "%s is given where a %s is %s", f.Shape, f.Kind, either(allowed))
	}
	if f.Kind == Strip && len(f.Places) != 2 {
		return wrong(member, "a strip is a line of two places, got %d", len(f.Places))
	}
	if least := [...]int{Spot: 1, Line: 2, Area: 3}[f.Shape]; len(f.Places) < least {
		return wrong(member, "%s needs %d places, got %d", f.Shape, least, len(f.Places))
	}
	return nil
}

// either joins shapes with "or".
func either(of []Shape) string {
	text := of[0].String()
	for _, s := range of[1:] {
		text += " or " + s.String()
	}
	return text
}

// position returns a position from degrees and metres, checked.
func position(latitude, longitude, height float64) (field.Position, error) {
	p := field.Position{Latitude: radians(latitude), Longitude: radians(longitude), Height: height}
	return p, field.CheckPosition(p)
}

func radians(degrees float64) float64 { return degrees * math.Pi / 180 }

func degrees(radians float64) float64 { return radians * 180 / math.Pi }
