package heat

import "pitgate/server/physics/elementary"

const (
	// pipeStore is the heat that a square metre of pipe keeps: steel of 0.4 mm, J/(m2 K).
	pipeStore = 7900 * 500 * 0.0004
	// skinStore is the heat that a square metre of thin skin keeps: 1 mm of glass and epoxy, J/(m2 K).
	skinStore = 1850 * 1000 * 0.001
	// soakTime is how long the heat is followed, s; soakStep in what steps.
	soakTime = 600.0
	soakStep = 2.0
	// longestWarming is the longest warming told, s.
	longestWarming = 3600.0
)

// Soak is what happens to a skin after shut-down, when no air moves any more.
type Soak struct {
	Peak  float64 // greatest temperature of the skin, K
	After float64 // time from shut-down to it, s
}

// SoakBack returns the greatest temperature of a skin after shut-down, from its temperature while running (K).
//
// Formula: Cp dTp/dt = -q/F - hp (Tp - Ta), Cs dTs/dt = q - ho (Ts - Ta) - e s (Ts4 - Ta4), stepped forward; where q FluxOnSkin per area of
// skin, F ViewFactor, Cp and Cs stores of pipe and skin (J/(m2 K)), hp and ho still air.
// Valid for: thin pipe and skin, no blower; a cooling run of the starter makes it less.
// Source: balance of heat.
func (s Skin) SoakBack(start float64) Soak {
	still := s
	still.Outer, still.Inner = StillCoefficient, 0
	factor := ViewFactor(s.Radius, s.Gap)
	pipe, skin := s.Pipe, min(max(start, s.Air), max(s.Pipe, s.Air))
	out := Soak{Peak: skin}
	for i := 1; float64(i)*soakStep <= soakTime; i++ {
		still.Pipe = pipe
		gained := still.Gained(skin)
		pipe -= float64(soakStep / pipeStore * (gained/factor + float64(StillCoefficient*(pipe-s.Air))))
		skin += float64(soakStep / skinStore * (gained - still.lost(skin)))
		if skin > out.Peak {
			out = Soak{Peak: skin, After: float64(i) * soakStep}
		}
	}
	return out
}

// WarmTime returns how long a thin skin takes to a temperature in hot gas (s), an hour at most, also when the gas is not hotter.
//
// Formula: t = rho c d/h ln((Tg - T0)/(Tg - T)); where rho density, c specific heat, d thickness, h heat transfer, Tg gas, T0 start, T limit (K).
// Valid for: thin skins heated from one side, h d/k below 0.1.
// Source: lumped heating, textbooks of heat transfer.
func WarmTime(store, coefficient, gas, start, limit float64) float64 {
	if limit <= start {
		return 0
	}
	if gas <= limit || !(coefficient > 0) {
		return longestWarming
	}
	return min(longestWarming, store/coefficient*elementary.Log((gas-start)/(gas-limit)))
}
