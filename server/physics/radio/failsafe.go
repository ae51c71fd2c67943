package radio

import "math"

// Action is what a fail-safe does to thrust and surfaces.
type Action int

// Actions that a link can take when it is lost.
const (
	CutNeutral  Action = iota + 1 // thrust cut, surfaces neutral
	CutSpiral                     // thrust cut, surfaces for a spiral
	IdleNeutral                   // thrust idle, surfaces neutral
	Hold                          // last positions held
	None                          // nothing set
)

// FailSafe is a fail-safe as timed with the engine running and the model held.
type FailSafe struct {
	Action Action
	Delay  float64 // from loss of link to the fuel cut or the idle command, s
	Decay  float64 // from then until thrust is gone, s; 0 when not known
}

// FailSafeLimit is what an authority asks for.
type FailSafeLimit struct {
	Time     float64 // most from loss of link to the engine's stop command, s
	MustStop bool    // idle is not enough: a turbine
}

// FailSafeResult is a fail-safe against its limit.
type FailSafeResult struct {
	Acts     bool    // thrust is cut or brought to idle, as the limit asks
	Spare    float64 // limit less delay, s; negative when too slow
	Holds    bool    // acts, and within the limit
	Flown    float64 // distance flown from loss of link until thrust is gone, m, at the speed given
	FlownCut float64 // the same until the cut alone, m
	Remedy   string  // smallest change that holds; empty when none is needed
	Shorten  float64 // by how much the delay must come down, s, at least 0
}

// CheckFailSafe sets a fail-safe against a limit: delay at most the limit, and an action that ends thrust.
//
// where speed is the model's (m/s, 0 and up). Distances are speed times time: a straight flight before the wind. A fail-safe that does not act has no
// end of thrust: its distances are only those up to the delay. The limit is a rule's figure and is not made milder by a measurement's spread.
// Valid for: any speed. Source: kinematics; limit by the rule pack. Errors: ErrInput.
func CheckFailSafe(f FailSafe, limit FailSafeLimit, speed float64) (FailSafeResult, error) {
	for _, v := range []struct {
		field string
		value float64
	}{{"fail-safe delay", f.Delay}, {"thrust decay", f.Decay}, {"fail-safe limit", limit.Time}, {"speed", speed}} {
		if err := within(v.field, v.value, 0, mostHeight); err != nil {
			return FailSafeResult{}, err
		}
	}
	out := FailSafeResult{Acts: f.acts(limit), Spare: limit.Time - f.Delay}
	out.Holds = out.Acts && out.Spare >= 0
	out.FlownCut = float64(speed * f.Delay)
	out.Flown = float64(speed * (f.Delay + f.Decay))
	out.Shorten = math.Max(0, -out.Spare)
	out.Remedy = remedy(out)
	return out, nil
}

// acts says whether the action is one the limit accepts.
func (f FailSafe) acts(limit FailSafeLimit) bool {
	return f.Action == CutNeutral || f.Action == CutSpiral || (f.Action == IdleNeutral && !limit.MustStop)
}

// remedy names the smallest change.
func remedy(r FailSafeResult) string {
	switch {
	case r.Acts && r.Shorten > 0:
		return "shorten the delay"
	case !r.Acts && r.Shorten > 0:
		return "set the fail-safe to cut the engine and shorten the delay"
	case !r.Acts:
		return "set the fail-safe to cut the engine"
	}
	return ""
}
