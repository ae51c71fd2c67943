package metar

import (
	"errors"
	"fmt"
)

// Reasons why a report that was understood cannot answer.
var (
	errCalm        = errors.New("wind direction: the wind is calm, it has none")
	errVariable    = errors.New("wind direction: reported as variable; every direction has to hold")
	errNoDirection = errors.New("wind direction: not in the report; give it by hand")
	errNoTime      = errors.New("time: not in the report; give it by hand")
	errNoHumidity  = errors.New("relative humidity: needs temperature and dew point, and the report lacks one; give it by hand")
)

// GroupError says which group of a text was not understood.
type GroupError struct {
	// Group is the text of the group, empty when the text ended too early.
	Group string
	// At is the character the group begins with, counted from 1.
	At int
	// Problem is what is wrong, and what would be right.
	Problem string
}

// Error returns the group, its place and the problem.
func (e *GroupError) Error() string {
	if e.Group == "" {
		return fmt.Sprintf("metar: at character %d: %s", e.At, e.Problem)
	}
	return fmt.Sprintf("metar: group %q at character %d: %s", e.Group, e.At, e.Problem)
}

// fault returns the error of a group.
func fault(g group, problem string, details ...any) error {
	return &GroupError{Group: g.text, At: g.at, Problem: fmt.Sprintf(problem, details...)}
}
