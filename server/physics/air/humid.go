package air

import "pitgate/server/physics/elementary"

const (
	molarGasConstant = 8.314472
	dryMolarMass     = 28.96546e-3
	waterMolarMass   = 18.01528e-3
	vapourConstant   = 461.495
)

// InsideHumidRange reports whether pressure (Pa) and temperature (K) lie where CIPM-2007 is stated to hold.
func InsideHumidRange(pressure, temperature float64) bool {
	celsius := temperature - FreezingPoint
	return pressure >= 60000 && pressure <= 110000 && celsius >= 15 && celsius <= 27
}

// SaturationPressure returns the vapour pressure of water at saturation, Pa.
//
// Formula: p_sv = exp(A T^2 + B T + C + D/T); where T temperature, K.
// Valid for: 0 to 27 C within 0.05 %; used up to 50 C within 0.2 %.
// Source: CIPM-2007 (Picard, Davis, Glaeser, Fujii, Metrologia 45, 2008, 149).
func SaturationPressure(temperature float64) float64 {
	const a, b, c, d = 1.2378847e-5, -1.9121316e-2, 33.93711047, -6.3431645e3
	return elementary.Exp(float64(a*float64(temperature*temperature)) + float64(b*temperature) + c + d/temperature)
}

// EnhancementFactor returns how much more vapour air holds than a vacuum does.
//
// Formula: f = alpha + beta p + gamma t^2; where p Pa, t degrees Celsius.
// Valid for: 600 to 1100 hPa, 15 to 27 C.
// Source: CIPM-2007.
func EnhancementFactor(pressure, temperature float64) float64 {
	t := temperature - FreezingPoint
	return 1.00062 + float64(3.14e-8*pressure) + float64(5.6e-7*float64(t*t))
}

// VapourFraction returns the mole fraction of water vapour.
//
// Formula: x_v = h f p_sv/p; where h relative humidity 0 to 1.
// Valid for: as EnhancementFactor.
// Source: CIPM-2007.
func VapourFraction(pressure, temperature, relativeHumidity float64) float64 {
	vapour := float64(relativeHumidity * SaturationPressure(temperature))
	return float64(vapour*EnhancementFactor(pressure, temperature)) / pressure
}

// Compressibility returns the compressibility factor of humid air.
//
// Formula: Z = 1 - (p/T)(a0 + a1 t + a2 t^2 + (b0 + b1 t) x_v + (c0 + c1 t) x_v^2) + (p/T)^2 (d + e x_v^2).
// Valid for: 600 to 1100 hPa, 15 to 27 C.
// Source: CIPM-2007.
func Compressibility(pressure, temperature, vapourFraction float64) float64 {
	const (
		a0, a1, a2 = 1.58123e-6, -2.9331e-8, 1.1043e-10
		b0, b1     = 5.707e-6, -2.051e-8
		c0, c1     = 1.9898e-4, -2.376e-6
		d, e       = 1.83e-11, -0.765e-8
	)
	t, x := temperature-FreezingPoint, vapourFraction
	x2 := float64(x * x)
	ratio := pressure / temperature
	first := a0 + float64(a1*t) + float64(a2*float64(t*t)) + float64((b0+float64(b1*t))*x) + float64((c0+float64(c1*t))*x2)
	return 1 - float64(ratio*first) + float64(float64(ratio*ratio)*(d+float64(e*x2)))
}

// HumidDensity returns the density of humid air, kg/m3.
//
// Formula: rho = p M_a/(Z R T) (1 - x_v (1 - M_v/M_a)), carbon dioxide 400 ppm.
// Valid for: 600 to 1100 hPa, 15 to 27 C, relative uncertainty 22e-6.
// Source: CIPM-2007.
func HumidDensity(pressure, temperature, relativeHumidity float64) float64 {
	x := VapourFraction(pressure, temperature, relativeHumidity)
	z := Compressibility(pressure, temperature, x)
	dry := float64(pressure*dryMolarMass) / float64(float64(z*molarGasConstant)*temperature)
	return float64(dry * (1 - float64(x*(1-waterMolarMass/dryMolarMass))))
}

// MixtureDensity returns the density of dry air and vapour as ideal gases, kg/m3.
//
// Formula: rho = (p - e)/(R_d T) + e/(R_v T); where e = x_v p, R_d = 287.05287, R_v = 461.495 J/(kg K).
// Valid for: -40 to 50 C; about 0.04 % below CIPM-2007 where both hold.
// Source: ideal gas law.
func MixtureDensity(pressure, temperature, relativeHumidity float64) float64 {
	vapour := min(pressure, float64(VapourFraction(pressure, temperature, relativeHumidity)*pressure))
	return (pressure-vapour)/float64(GasConstant*temperature) + vapour/float64(vapourConstant*temperature)
}

// RatioDensity returns the density of humid air from its humidity ratio, kg/m3.
//
// Formula: v = 287.042 T (1 + 1.607858 W)/p, rho = (1 + W)/v; where W kg of vapour per kg of dry air.
// Valid for: -40 to 50 C.
// Source: ASHRAE Fundamentals 2017, chapter 1.
func RatioDensity(pressure, temperature, humidityRatio float64) float64 {
	volume := float64(float64(287.042*temperature)*(1+float64(1.607858*humidityRatio))) / pressure
	return (1 + humidityRatio) / volume
}
