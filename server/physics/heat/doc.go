// Package heat tells how hot the parts near an exhaust become: the plume of a hot jet with its density, along and beside the axis; skin near a
// tailpipe by radiation and convection, bare or with foil; what soaks through after shut-down; what materials stand; what a start does to dry
// grass; and the smallest move or shield that keeps a part under its limit.
//
// Lengths in m, temperatures in K, speeds in m/s, heat flux in W/m2, heat transfer coefficients in W/(m2 K), time in s. Emissivities from 0 to 1.
//
// Assess is the whole computation of a model's heated parts; every formula below it can be called alone. The standing run-up at full power
// in still air sizes everything: flight thins the plume and cools the skin. Two answers are given throughout, Best and Conservative; a part
// is hot for certain where the best answer is above its limit, and not shown to be cool until the conservative one is below.
package heat

import "fmt"

// Celsius is 0 degrees Celsius, K.
const Celsius = 273.15

const (
	gasConstant  = 287.053 // of air, J/(kg K)
	exhaustHeat  = 1148.0  // specific heat of exhaust gas, J/(kg K)
	standardAir  = 101325.0
	coldestAir   = 200.0
	hottestAir   = 340.0
	hottestGas   = 1600.0
	bisectionCut = 60
)

// checkWithin returns an error that names the field unless the value lies between two bounds.
func checkWithin(field string, value, low, high float64) error {
	if !(value >= low && value <= high) {
		return fmt.Errorf("%s: %g is outside %g to %g", field, value, low, high)
	}
	return nil
}

// fourth returns the fourth power of a temperature.
func fourth(t float64) float64 { return float64(t * t * t * t) }
