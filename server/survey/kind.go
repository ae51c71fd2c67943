package survey

import (
	"fmt"
	"slices"
	"strings"
)

// Kind is what a feature is on the field, as it is written in a file.
type Kind string

// Kinds of features. The empty kind says nothing.
const (
	FlyingArea  Kind = "flying-area"
	KeepOut     Kind = "keep-out"
	LandingArea Kind = "landing-area"
	Pits        Kind = "pits"
	Parking     Kind = "parking"
	Strip       Kind = "strip"
	PeopleLine  Kind = "people-line"
	Road        Kind = "road"
	LaunchSpot  Kind = "launch-spot"
	PilotPlace  Kind = "pilot"
	Hedge       Kind = "hedge"
	Wall        Kind = "wall"
	Tree        Kind = "tree"
	Building    Kind = "building"
	Wire        Kind = "wire"
	Bank        Kind = "bank"
	Mast        Kind = "mast"
	Fence       Kind = "fence"
)

// Shape is the shape of a feature on the ground.
type Shape int

// Shapes of features.
const (
	Spot Shape = iota + 1 // one place
	Line                  // a run of straight lines
	Area                  // an outline; the last corner joins the first
)

// String names the shape.
func (s Shape) String() string {
	switch s {
	case Spot:
		return "one place"
	case Line:
		return "a line"
	case Area:
		return "an area"
	}
	return "nothing"
}

// shapes are the shapes each kind may have.
var shapes = map[Kind][]Shape{
	"": {Spot, Line, Area}, FlyingArea: {Area}, KeepOut: {Area}, LandingArea: {Area}, Pits: {Area}, Parking: {Area},
	Strip: {Line}, PeopleLine: {Line}, Road: {Line}, LaunchSpot: {Spot}, PilotPlace: {Spot},
	Hedge: {Line, Area}, Wall: {Line, Area}, Tree: {Spot, Line, Area}, Building: {Spot, Area}, Wire: {Line}, Bank: {Line, Area}, Mast: {Spot},
	Fence: {Line, Area},
}

// Kinds lists every kind that may stand in a file, in order of the alphabet.
func Kinds() []Kind {
	var all []Kind
	for k := range shapes {
		if k != "" {
			all = append(all, k)
		}
	}
	slices.Sort(all)
	return all
}

// Obstacle reports whether the kind stands up from the ground.
func (k Kind) Obstacle() bool {
	switch k {
	case Hedge, Wall, Tree, Building, Wire, Bank, Mast, Fence:
		return true
	default:
		return false
	}
}

// area reports whether the kind can only be an area.
func (k Kind) area() bool {
	allowed := shapes[k]
	return len(allowed) == 1 && allowed[0] == Area
}

// check returns an error when the kind does not exist.
func (k Kind) check() error {
	if _, known := shapes[k]; known {
		return nil
	}
	names := make([]string, 0, len(shapes))
	for _, other := range Kinds() {
		names = append(names, string(other))
	}
	return fmt.Errorf("%q is not one of %s", clip(string(k)), strings.Join(names, ", "))
}

// clip shortens text for an error.
func clip(text string) string {
	if runes := []rune(text); len(runes) > 40 {
		return string(runes[:40]) + "..."
	}
	return text
}
