package fuel

import (
	"math"
	"strings"

	"pitgate/server/physics/elementary"
)

// Status says how well a value is known.
type Status string

// Statuses of values.
const (
	Verified   Status = "verified"        // read in the source
	FromMemory Status = "from memory"     // recalled from the source
	Practice   Status = "common practice" // told by builders, no source
)

// Temperatures between which the laws of a liquid hold, K.
const (
	ColdestLiquid = 243.15
	HottestLiquid = 333.15
)

// Liquid is a fuel or an oil by its density and its viscosity at two temperatures.
type Liquid struct {
	Name        string
	Density15   float64 // kg/m3 at 15 degrees Celsius
	Slope       float64 // loss of density with temperature, kg/(m3 K)
	ColdAt      float64 // K
	ColdValue   float64 // kinematic viscosity there, m2/s
	WarmAt      float64 // K
	WarmValue   float64 // kinematic viscosity there, m2/s
	LowestMade  float64 // least density the standard allows at 15 degrees Celsius, kg/m3
	HighestMade float64 // greatest density the standard allows there, kg/m3
	Source      string
	Status      Status
	words       []string
}

var (
	// Kerosene is aviation turbine fuel.
	Kerosene = Liquid{
		Name: "kerosene", Density15: 800, Slope: 0.75, ColdAt: celsius - 20, ColdValue: 4.5e-6, WarmAt: celsius + 40, WarmValue: 1.3e-6,
		LowestMade: 775, HighestMade: 840, Status: FromMemory,
		Source: "density limits and typical value of Jet A-1; viscosity of a test fuel at -20 C (verified) and of the class at 40 C (recalled)",
		words:  []string{"kerosene", "kerosine", "paraffin", "jet a", "jet-a", "jp-8"},
	}
	// Diesel is road diesel of the temperate grades.
	Diesel = Liquid{
		Name: "diesel", Density15: 835, Slope: 0.70, ColdAt: celsius + 40, ColdValue: 2.9e-6, WarmAt: celsius + 100, WarmValue: 1.15e-6,
		LowestMade: 820, HighestMade: 845, Status: FromMemory,
		Source: "EN 590 limits (verified); viscosities of the class recalled", words: []string{"diesel", "derv", "gas oil"},
	}
	// TurbineOil is synthetic turbine oil of 5 mm2/s at 100 degrees Celsius.
	TurbineOil = Liquid{
		Name: "turbine oil", Density15: 985, Slope: 0.70, ColdAt: celsius + 40, ColdValue: 27e-6, WarmAt: celsius + 100, WarmValue: 5.1e-6,
		LowestMade: 960, HighestMade: 1010, Status: FromMemory, Source: "MIL-PRF-23699 class, recalled", words: []string{"oil"},
	}
)

// Named returns the fuel whose usual words stand in a name, in any case of letters. Unknown names give Kerosene and false.
func Named(name string) (Liquid, bool) {
	low := strings.ToLower(name)
	for _, liquid := range []Liquid{Diesel, Kerosene} {
		for _, word := range liquid.words {
			if strings.Contains(low, word) {
				return liquid, true
			}
		}
	}
	return Kerosene, false
}

// InsideRange reports whether the laws of density and viscosity hold at a temperature (K).
func InsideRange(temperature float64) bool {
	return temperature >= ColdestLiquid && temperature <= HottestLiquid
}

// held returns the temperature held inside the range of the laws.
func held(temperature float64) float64 {
	return min(HottestLiquid, max(ColdestLiquid, temperature))
}

// Density returns the density at a temperature.
//
// Formula: rho = rho15 - s (T - 288.15); where rho15 density at 15 C (kg/m3), s slope (kg/(m3 K)), T temperature (K).
// Valid for: -30 to 60 C; outside, the temperature is held at the bound.
// Source: thermal expansion of petroleum products, linear part; slope of kerosene 0.73 to 0.75, recalled.
func (l Liquid) Density(temperature float64) float64 {
	return l.Density15 - float64(l.Slope*(held(temperature)-288.15))
}

// Viscosity returns the kinematic viscosity at a temperature.
//
// Formula: log10 log10 (v + 0.7) = A - B log10 T; where v kinematic viscosity (mm2/s), T temperature (K), A and B through two known points.
// Valid for: v above 0.3 mm2/s, -30 to 60 C, above the cloud point; outside, the temperature is held at the bound.
// Source: MacCoull; ASTM D341, found within 5 % of kerosene fractions from -60 to 60 C.
func (l Liquid) Viscosity(temperature float64) float64 {
	cold, warm := doubleLog(l.ColdValue), doubleLog(l.WarmValue)
	at := elementary.Log10(held(temperature))
	from, to := elementary.Log10(l.ColdAt), elementary.Log10(l.WarmAt)
	level := cold + float64((warm-cold)*(at-from)/(to-from))
	return 1e-6 * (elementary.Pow(10, elementary.Pow(10, level)) - viscosityShift)
}

// viscosityShift is the constant of the double logarithm, mm2/s.
const viscosityShift = 0.7

// doubleLog returns log10 log10 (v + 0.7) of a viscosity in m2/s.
func doubleLog(viscosity float64) float64 {
	return elementary.Log10(elementary.Log10(float64(1e6*viscosity) + viscosityShift))
}

// OilShare returns the share of oil in the mix by volume where the oil is told as a ratio to the fuel it was added to.
//
// Formula: s = r/(1 + r); where r litres of oil to one litre of fuel. One litre into twenty is a share of 0.0476, not 0.05.
// Valid for: r from 0.
// Source: definition.
func OilShare(ratio float64) float64 { return ratio / (1 + ratio) }

// Mix is fuel with oil in it at a temperature.
type Mix struct {
	Density     float64 // kg/m3
	Viscosity   float64 // kinematic, m2/s
	Temperature float64 // K
	// InRange is false where the temperature is outside the laws and was held at their bound.
	InRange bool
}

// Mixed returns fuel with a share of oil (by volume, 0 to 1) at a temperature (K).
func Mixed(fuel, oil Liquid, share, temperature float64) Mix {
	d1, d2 := fuel.Density(temperature), oil.Density(temperature)
	density := MixDensity(d1, d2, share)
	mass := float64(share*d2) / density
	return Mix{
		Density: density, Viscosity: MixViscosity(fuel.Viscosity(temperature), oil.Viscosity(temperature), mass),
		Temperature: temperature, InRange: InsideRange(temperature),
	}
}

// MixDensity returns the density of two liquids by volume.
//
// Formula: rho = (1 - s) rho1 + s rho2; where s share of the second by volume, rho1 and rho2 densities (kg/m3).
// Valid for: liquids that mix without change of volume, as oils do.
// Source: conservation of mass.
func MixDensity(first, second, share float64) float64 {
	return float64((1-share)*first) + float64(share*second)
}

// MixViscosity returns the kinematic viscosity of two oils by mass.
//
// Formula: I(v) = (1 - w) I(v1) + w I(v2), I(v) = ln ln (v + 0.8); where v viscosities (mm2/s), w share of the second by mass.
// Valid for: petroleum and ester oils, within a tenth.
// Source: Refutas, blending index, recalled.
func MixViscosity(first, second, share float64) float64 {
	index := float64((1-share)*blend(first)) + float64(share*blend(second))
	return 1e-6 * (elementary.Exp(elementary.Exp(index)) - blendShift)
}

// blendShift is the constant of the blending index, mm2/s.
const blendShift = 0.8

// blend returns ln ln (v + 0.8) of a viscosity in m2/s.
func blend(viscosity float64) float64 {
	return elementary.Log(elementary.Log(math.Max(1.0001, float64(1e6*viscosity)+blendShift)))
}
