package engine

import "math"

// Standard sea-level air and constants of air.
const (
	StandardTemperature = 288.15  // K
	StandardPressure    = 101325  // Pa
	gasConstant         = 287.053 // J/(kg K)
	heatCapacity        = 1005    // J/(kg K), cold air
	heatRatio           = 1.4
	exhaustHeatCapacity = 1150 // J/(kg K), exhaust
	exhaustHeatRatio    = 1.333
)

// Air is the air an engine runs in.
type Air struct {
	Temperature float64 // K
	Pressure    float64 // Pa
	Density     float64 // kg/m3; zero means that of dry air at the temperature and pressure
}

// Standard is the air of the standard atmosphere at sea level.
var Standard = Air{Temperature: StandardTemperature, Pressure: StandardPressure}

// orStandard fills in the standard air where a value is missing.
func (a Air) orStandard() Air {
	if !(a.Temperature > 0) {
		a.Temperature = StandardTemperature
	}
	if !(a.Pressure > 0) {
		a.Pressure = StandardPressure
	}
	if !(a.Density > 0) {
		a.Density = a.Pressure / (gasConstant * a.Temperature)
	}
	return a
}

// SpeedOfSound returns the speed of sound in dry air, m/s.
//
//	a = sqrt(k R T)
//
// Valid for: dry air. Source: ideal gas.
func (a Air) SpeedOfSound() float64 {
	return math.Sqrt(heatRatio * gasConstant * a.orStandard().Temperature)
}

// Corrections are the ratios by which a day differs from reference air.
type Corrections struct {
	Delta float64 // pressure ratio
	Theta float64 // temperature ratio
}

// Against returns the pressure and temperature of the air over those of reference air. Missing values count as standard.
func (a Air) Against(reference Air) Corrections {
	a, reference = a.orStandard(), reference.orStandard()
	return Corrections{Delta: a.Pressure / reference.Pressure, Theta: a.Temperature / reference.Temperature}
}
