package packs

import "pitgate/server/physics/elementary"

// Activation energies of a lithium cell, J/mol. Source: parameters published for Ecker 2015.
const (
	electrolyteEnergy = 17100.0
	transferEnergy    = 43600.0
)

// ClassResistance returns the resistance of a new pack at 25 C from its size alone, ohm: n k/Q.
//
// where series is n cells, capacity Q (Ah), k the chemistry's figure (ohm Ah). Valid for: packs sold for models, within a factor of two.
// Source: common practice; a measured figure replaces it.
func (c Chemistry) ClassResistance(series int, capacity float64) float64 {
	return float64(series) * c.of().ohmAmpere / capacity
}

// ColdRatio returns the resistance at a temperature over that at 25 C, none.
//
//	r = w exp(E1/R (1/T - 1/298)) + (1-w) exp(E2/R (1/T - 1/298)), E1 = 17.1 and E2 = 43.6 kJ/mol
//
// where kelvin is T (K) and w the chemistry's share with E1: 0.8 lithium polymer and lithium ion (2.5 at 0 C, 4.1 at -10 C), 0.6 iron phosphate, 1 nickel.
// Valid for: loads of seconds, -20 to 60 C; short pulses see less, and a general statement prints 3 to 5 at -20 C where this gives 7: it plans higher. Source: Arrhenius' law with published energies; shares are judgement.
func (c Chemistry) ColdRatio(kelvin float64) float64 {
	t, w := clamp(kelvin, leastKelvin, mostKelvin), c.of().ohmic
	return coldRatio(w, t)
}

// coldRatio is ColdRatio for a share.
func coldRatio(share, kelvin float64) float64 {
	return float64(share*arrhenius(electrolyteEnergy, kelvin)) + float64((1-share)*arrhenius(transferEnergy, kelvin))
}

// LowChargeRatio returns the resistance at a charge over that of a full cell, none: (0.1562 exp(-24.37 s) + 0.07446)/0.07446.
//
// where charge is s (0 to 1). Valid for: lithium polymer; taken for the others too. Source: circuit model of Chen and Rincon-Mora, 2006, recalled.
func LowChargeRatio(charge float64) float64 {
	const steep, flat = 0.1562, 0.07446
	return 1 + float64(steep/flat*elementary.Exp(-24.37*clamp(charge, 0, 1)))
}

// AgeRatio returns the resistance of an aged pack over a new one, none: 1 + loss/0.2, doubled when a fifth of the capacity has gone.
//
// where loss is the share of capacity lost. Valid for: losses up to 0.4. Source: common practice for the end of life.
func AgeRatio(loss float64) float64 { return 1 + clamp(loss, 0, 1)/lifeLoss }
