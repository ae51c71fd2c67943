package heat

// Foil and pipe as they are usual, emissivities.
const (
	// FoilEmissivity is that of aluminium foil soiled by use; new foil has 0.04. Source: emissivity tables; judged between new and sooted.
	FoilEmissivity = 0.10
	// PipeEmissivity is that of steel or nickel alloy after repeated heating. Source: emissivity tables, 0.5 to 0.85.
	PipeEmissivity = 0.8
	// SkinEmissivity is that of paint, plastics, wood and laminates. Source: emissivity tables, 0.85 to 0.95.
	SkinEmissivity = 0.9
)

// Skin is a skin beside a hot pipe.
type Skin struct {
	Pipe       float64 // temperature of the pipe's wall, K
	Radius     float64 // of the pipe, m
	Gap        float64 // from the pipe's wall to the skin, m
	Air        float64 // K
	Foil       bool    // foil on the face towards the pipe
	Outer      float64 // heat transfer on the far side, W/(m2 K); 0: StillCoefficient
	Inner      float64 // heat transfer of cooling air between pipe and skin, W/(m2 K)
	Emissivity float64 // of pipe; 0: PipeEmissivity
	Open       bool    // true when nothing encloses pipe and skin, false in a tunnel, which throws all heat back
}

// facing returns the emissivity of the side towards the pipe.
func (s Skin) facing() float64 {
	if s.Foil {
		return FoilEmissivity
	}
	return SkinEmissivity
}

// pipe returns the emissivity of the pipe.
func (s Skin) pipe() float64 {
	if s.Emissivity > 0 {
		return s.Emissivity
	}
	return PipeEmissivity
}

// outer returns the heat transfer on the far side.
func (s Skin) outer() float64 {
	if s.Outer > 0 {
		return s.Outer
	}
	return StillCoefficient
}

// Gained returns the radiation that the skin takes up at a temperature (W/m2).
func (s Skin) Gained(temperature float64) float64 {
	factor := ViewFactor(s.Radius, s.Gap)
	if s.Open {
		return FluxBeside(s.Pipe, temperature, s.pipe(), s.facing(), factor)
	}
	return FluxOnSkin(s.Pipe, temperature, s.pipe(), s.facing(), factor)
}

// lost returns what the skin gives to the air on both sides and radiates outwards (W/m2).
func (s Skin) lost(temperature float64) float64 {
	return float64((s.outer()+s.Inner)*(temperature-s.Air)) + Radiated(SkinEmissivity, temperature, s.Air)
}

// Temperature returns the temperature at which a skin beside a pipe settles (K).
//
// Formula: q(T) = (ho + hi)(T - Ta) + e s (T4 - Ta4), by bisection; where q FluxOnSkin, ho and hi heat transfer outside and in the gap.
// Valid for: thin skins without conduction along them; without cooling air in the gap (Inner 0) an upper bound for standing and run-up.
// Source: balance of heat.
func (s Skin) Temperature() float64 {
	low, high := s.Air, s.Pipe
	if high <= low {
		return low
	}
	for range bisectionCut {
		middle := float64((low + high) / 2)
		if s.Gained(middle) > s.lost(middle) {
			low = middle
		} else {
			high = middle
		}
	}
	return high
}

// LeastGap returns the gap at which the skin settles at a temperature (m), and false when 1 m is not enough or the limit is not above the air.
//
// Formula: g = R/F - R; F = q/(e1 e2 c) in the open, (q/e1)/(c - q (1/e2 - 1)) in a tunnel; where q what the skin loses at the limit (W/m2),
// c = s (Tp4 - T4), R radius of the pipe (m), e1 and e2 emissivities.
// Valid for: as Temperature.
// Source: FluxBeside and FluxOnSkin solved for the factor.
func (s Skin) LeastGap(limit float64) (float64, bool) {
	if limit <= s.Air {
		return 0, false
	}
	lost, black := s.lost(limit), float64(StefanBoltzmann*(fourth(s.Pipe)-fourth(limit)))
	factor := lost / (s.pipe() * s.facing())
	if !s.Open {
		black -= float64(lost * (1/s.facing() - 1))
		factor = lost / s.pipe()
	}
	if black <= factor {
		return 0, true // even what touches the pipe stays under the limit
	}
	gap := float64(s.Radius*black/factor) - s.Radius
	return gap, gap <= greatestGap
}

// greatestGap is the farthest a part is moved from the pipe, m.
const greatestGap = 1.0
