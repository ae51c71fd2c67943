package heat

// StefanBoltzmann is the constant of black radiation, W/(m2 K4).
const StefanBoltzmann = 5.670374419e-8

// Radiated returns what a grey surface radiates into wide surroundings (W/m2).
//
// Formula: q = e s (T4 - Ts4); where e emissivity, T of the surface, Ts of the surroundings (K).
// Valid for: surroundings much larger than the surface.
// Source: Stefan, Boltzmann.
func Radiated(emissivity, temperature, surroundings float64) float64 {
	return float64(emissivity * StefanBoltzmann * (fourth(temperature) - fourth(surroundings)))
}

// BetweenPlates returns what passes between two facing surfaces (W/m2).
//
// Formula: q = s (T14 - T24)/(1/e1 + 1/e2 - 1).
// Valid for: wide parallel surfaces, grey.
// Source: textbooks of heat transfer.
func BetweenPlates(hot, cold, hotEmissivity, coldEmissivity float64) float64 {
	return FluxOnSkin(hot, cold, hotEmissivity, coldEmissivity, 1)
}

// FluxOnSkin returns what a hot surface gives to a skin that sees it with a factor (W/m2 of the skin).
//
// Formula: q = F s (T14 - T24)/(1/e1 + F (1/e2 - 1)); where F area of the hot over that of the cold surface, as between long cylinders.
// Valid for: F 0 to 1; 1 for facing plates, ViewFactor for a skin beside a pipe.
// Source: textbooks of heat transfer, concentric cylinders.
func FluxOnSkin(hot, cold, hotEmissivity, coldEmissivity, factor float64) float64 {
	return float64(factor*StefanBoltzmann*(fourth(hot)-fourth(cold))) / (1/hotEmissivity + float64(factor*(1/coldEmissivity-1)))
}

// FluxBeside returns what a hot surface gives to a skin in the open that sees it with a factor (W/m2 of the skin).
//
// Formula: q = F e1 e2 s (T14 - T24); what the skin throws back is lost.
// Valid for: F 0 to 1, a skin that does not enclose the pipe; never above FluxOnSkin.
// Source: textbooks of heat transfer, exchange of grey surfaces without repeated reflection.
func FluxBeside(hot, cold, hotEmissivity, coldEmissivity, factor float64) float64 {
	return float64(factor * hotEmissivity * coldEmissivity * StefanBoltzmann * (fourth(hot) - fourth(cold)))
}

// WithFreeShield returns what passes between two facing surfaces with a free sheet between them (W/m2).
//
// Formula: q = s (T14 - T24)/(1/e1 + 1/e2 - 1 + 2/e3 - 1); where e3 emissivity of both sides of the sheet.
// Valid for: wide parallel surfaces, grey, sheet held by nothing that conducts.
// Source: textbooks of heat transfer, radiation shields.
func WithFreeShield(hot, cold, hotEmissivity, coldEmissivity, shield float64) float64 {
	resistance := 1/hotEmissivity + 1/coldEmissivity - 1 + 2/shield - 1
	return StefanBoltzmann * (fourth(hot) - fourth(cold)) / resistance
}

// ViewFactor returns how much of a pipe a skin beside it sees.
//
// Formula: F = R/(R + g); where R radius of the pipe, g gap from its wall to the skin (m).
// Valid for: a small element of skin that faces a long pipe.
// Source: catalogue of view factors: element to an infinite cylinder.
func ViewFactor(radius, gap float64) float64 { return radius / (radius + max(0, gap)) }
