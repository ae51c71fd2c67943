package fuel

const (
	// UncoveredTime is how long a pick-up may suck air in aerobatics or with a nearly empty tank, s (common practice).
	UncoveredTime = 3.0
	// FeltUncoveredTime is the same for a pick-up of wetted felt that keeps its place, s (common practice).
	FeltUncoveredTime = 1.0
	// trapFactor is how many times that air a trap should hold (common practice).
	trapFactor = 3.0
	// FlameGap is the time without fuel that puts small turbines out, s (common practice; 0.3 to 0.5).
	FlameGap = 0.3
)

// TrapSeconds returns how long an air trap or header tank feeds full flow while only air reaches it (s).
//
// Formula: t = V/Q; where V volume of the trap (m3), Q full flow (m3/s).
// Valid for: a trap full of fuel with its pick-up at the lowest point or of felt.
// Source: continuity.
func TrapSeconds(volume, flow float64) float64 { return volume / flow }

// LeastTrapSeconds returns how many seconds of air a trap should hold: three times the longest time the pick-up sucks air.
func LeastTrapSeconds(felt bool) float64 {
	if felt {
		return trapFactor * FeltUncoveredTime
	}
	return trapFactor * UncoveredTime
}

// LeastTrap returns the volume that a trap should have at a full flow (m3).
//
// Formula: V = 3 t Q; where t time uncovered (3 s, felt 1 s), Q full flow (m3/s).
// Valid for: turbines that manoeuvre; a bladder without air needs none.
// Source: common practice.
func LeastTrap(flow float64, felt bool) float64 { return float64(LeastTrapSeconds(felt) * flow) }
