// Package air computes the state of the air a model flies in: standard atmosphere, station pressure from QNH, humid density,
// viscosity, speed of sound and density altitude. Heights are GEOPOTENTIAL metres; at flying-field heights the difference from
// geometric metres is below 0.05 %.
package air

import (
	"math"

	"pitgate/server/physics/elementary"
)

// Constants of the standard atmosphere (ISO 2533).
const (
	// Gravity is the standard acceleration of free fall, m/s2.
	Gravity = 9.80665
	// SeaLevelTemperature is the standard temperature at height zero, K.
	SeaLevelTemperature = 288.15
	// SeaLevelPressure is the standard pressure at height zero, Pa.
	SeaLevelPressure = 101325.0
	// SeaLevelDensity is the standard density at height zero, kg/m3.
	SeaLevelDensity = 1.225
	// LapseRate is the fall of temperature with height below 11 km, K/m.
	LapseRate = 0.0065
	// GasConstant is the specific gas constant of dry air, J/(kg K).
	GasConstant = 287.05287
	// HeatRatio is the ratio of specific heats of air.
	HeatRatio = 1.4
	// FreezingPoint is 0 degrees Celsius, K.
	FreezingPoint = 273.15

	pressureExponent = Gravity / (GasConstant * LapseRate)
	layerHeight      = SeaLevelTemperature / LapseRate
	earthRadius      = 6356766.0
)

// State is the air at one place and time.
type State struct {
	Pressure        float64 // static pressure at the place, Pa
	Temperature     float64 // K
	Density         float64 // kg/m3, humidity included
	Viscosity       float64 // dynamic viscosity, Pa s
	SoundSpeed      float64 // m/s
	DensityAltitude float64 // height of the same density in the standard atmosphere, m
	Method          string  // how the density was found, with its validity
}

// Methods of the density, as State.Method gives them.
const (
	MethodStandard = "standard atmosphere, dry"
	MethodHumid    = "CIPM-2007 humid air, 600 to 1100 hPa and 15 to 27 C"
	MethodMixture  = "ideal gas mixture, outside the range of CIPM-2007"
)

// At returns the air of a station pressure (Pa), temperature (K) and relative humidity (0 to 1).
//
// Density by CIPM-2007 inside 600 to 1100 hPa and 15 to 27 C, by the ideal gas mixture outside; State.Method says which.
// Relative humidity is held between 0 and 1.
func At(stationPressure, temperature, relativeHumidity float64) State {
	humidity := max(0, min(1, relativeHumidity))
	state := State{
		Pressure:    stationPressure,
		Temperature: temperature,
		Viscosity:   Viscosity(temperature),
		SoundSpeed:  SoundSpeed(stationPressure, MixtureDensity(stationPressure, temperature, humidity)),
		Method:      MethodMixture,
	}
	state.Density = MixtureDensity(stationPressure, temperature, humidity)
	if InsideHumidRange(stationPressure, temperature) {
		state.Density, state.Method = HumidDensity(stationPressure, temperature, humidity), MethodHumid
	}
	state.DensityAltitude = DensityAltitude(state.Density)
	return state
}

// Standard returns the standard atmosphere at a geopotential height in metres.
//
// Valid for: -2000 to 11000 m.
func Standard(height float64) State {
	temperature := StandardTemperature(height)
	pressure := StandardPressure(height)
	density := pressure / float64(GasConstant*temperature)
	return State{
		Pressure: pressure, Temperature: temperature, Density: density, Viscosity: Viscosity(temperature),
		SoundSpeed: SoundSpeed(pressure, density), DensityAltitude: DensityAltitude(density), Method: MethodStandard,
	}
}

// StandardTemperature returns the standard temperature in K.
//
// Formula: T = T0 - L H; where H geopotential height, m.
// Valid for: -2000 to 11000 m.
// Source: ISO 2533.
func StandardTemperature(height float64) float64 {
	return SeaLevelTemperature - float64(LapseRate*height)
}

// StandardPressure returns the standard pressure in Pa.
//
// Formula: p = p0 (T/T0)^(g/(R L)); where T standard temperature at H, K.
// Valid for: -2000 to 11000 m.
// Source: ISO 2533.
func StandardPressure(height float64) float64 {
	return float64(SeaLevelPressure * elementary.Pow(StandardTemperature(height)/SeaLevelTemperature, pressureExponent))
}

// Geopotential returns the geopotential height of a geometric height, both m.
//
// Formula: H = r0 Z/(r0 + Z); where r0 = 6356766 m.
// Valid for: -2000 to 80000 m.
// Source: US Standard Atmosphere 1976.
func Geopotential(geometric float64) float64 {
	return float64(earthRadius*geometric) / (earthRadius + geometric)
}

// PressureAltitude returns the height in the standard atmosphere at which a pressure (Pa) is found, m.
//
// Formula: PA = (T0/L) (1 - (p/p0)^(R L/g)).
// Valid for: 22632 to 127000 Pa.
// Source: ISO 2533, inverted.
func PressureAltitude(pressure float64) float64 {
	return float64(layerHeight * (1 - elementary.Pow(pressure/SeaLevelPressure, 1/pressureExponent)))
}

// StationPressure returns the pressure (Pa) at an elevation (m) from the QNH (Pa).
//
// Formula: p^(1/n) = QNH^(1/n) - p0^(1/n) L h/T0; where n = g/(R L). QNH is defined by the standard column, whatever the day.
// Valid for: -500 to 5000 m.
// Source: definition of the altimeter setting, ICAO Doc 7488 column.
func StationPressure(qnh, elevation float64) float64 {
	return StandardPressure(elevation + PressureAltitude(qnh))
}

// DensityAltitude returns the height in the standard atmosphere at which a density (kg/m3) is found, m.
//
// Formula: DA = (T0/L) (1 - (rho/rho0)^(1/(n-1))); where n = g/(R L), rho0 = 1.225.
// Valid for: -2000 to 11000 m.
// Source: ISO 2533, inverted.
func DensityAltitude(density float64) float64 {
	return float64(layerHeight * (1 - elementary.Pow(density/SeaLevelDensity, 1/(pressureExponent-1))))
}

// Viscosity returns the dynamic viscosity of air in Pa s.
//
// Formula: mu = 1.458e-6 T^1.5/(T + 110.4); where T temperature, K.
// Valid for: 100 to 1500 K.
// Source: Sutherland's law with the constants of the US Standard Atmosphere 1976.
func Viscosity(temperature float64) float64 {
	return float64(1.458e-6*float64(temperature*math.Sqrt(temperature))) / (temperature + 110.4)
}

// SoundSpeed returns the speed of sound in m/s.
//
// Formula: a = sqrt(1.4 p/rho); where p Pa, rho kg/m3 of the gas mixture.
// Valid for: -40 to 50 C; humidity enters through the density only, which overstates its effect by less than 0.05 %.
// Source: ISO 2533.
func SoundSpeed(pressure, density float64) float64 {
	return math.Sqrt(float64(HeatRatio*pressure) / density)
}
