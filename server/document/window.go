package document

import "pitgate/server/physics/assess"

// Window finds the winds in which launch and circuit of an input hold, on the geometry that is kept where an equal one was prepared before. Its errors
// are those of Assess.
func Window(in assess.Input) (assess.WindWindow, error) {
	geometry, err := geometries.of(in)
	if err != nil {
		return assess.WindWindow{}, err
	}
	return geometry.Window(in)
}
