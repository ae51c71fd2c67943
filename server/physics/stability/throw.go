package stability

import "math"

// Throw holds both ends of a pitch control's travel, rad, in the control's own sense (trailing edge down positive).
type Throw struct {
	NoseUp   float64 // end that raises the nose: negative for a tail, positive for a canard
	NoseDown float64 // end that lowers it
}

// Reserve returns the share of the throw left over on the side that a control angle uses; negative when the throw does not reach.
//
// Formula: 1 - angle/end, with the end on the angle's side.
// Valid for: ends on both sides of neutral; -1 where the needed side has no travel.
// Source: definition.
func (t Throw) Reserve(angle float64) float64 {
	if angle == 0 {
		return 1
	}
	end := t.NoseUp
	if (angle > 0) == (t.NoseDown > 0) && t.NoseDown != 0 {
		end = t.NoseDown
	}
	ratio := angle / end
	if !finite(ratio) || ratio < 0 {
		return -1
	}
	return max(-1, 1-ratio)
}

// UsesNoseUp reports whether an angle lies on the side that raises the nose.
func (t Throw) UsesNoseUp(angle float64) bool {
	return math.Signbit(angle) == math.Signbit(t.NoseUp) && angle != 0
}
