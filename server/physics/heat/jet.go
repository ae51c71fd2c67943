package heat

import "math"

// Exhaust is what leaves a nozzle at full power, standing, fully expanded.
type Exhaust struct {
	Diameter    float64 // of the nozzle or the tailpipe's end, m
	Temperature float64 // of the gas, K
	// Total is true when Temperature is a probe's (total) temperature; false when static. Probes read close to total.
	Total bool
	Speed float64 // of the jet, m/s
}

// Air is the air around.
type Air struct {
	Temperature float64 // K
	Pressure    float64 // Pa; 0: 101325
}

// StaticTemperature returns the static temperature of a stream from its total temperature (K).
//
// Formula: T = T0 - v2/(2 cp); where T0 total temperature (K), v speed (m/s), cp 1148 J/(kg K).
// Valid for: exhaust gas of lean burning.
// Source: energy equation.
func StaticTemperature(total, speed float64) float64 {
	return total - float64(speed*speed)/(2*exhaustHeat)
}

// JetSpeed returns the speed of the jet of a turbine from its static thrust.
//
// Formula: v = F/m; where F static thrust (N), m mass flow of air and fuel (kg/s).
// Valid for: nozzles that are not choked, standing.
// Source: momentum.
func JetSpeed(thrust, massFlow float64) float64 { return thrust / massFlow }

// static returns the static temperature of the jet.
func (e Exhaust) static() float64 {
	if e.Total {
		return StaticTemperature(e.Temperature, e.Speed)
	}
	return e.Temperature
}

// DensityRatio returns density of the jet over that of the air.
//
// Formula: rhoj/rhoa = Ta/Tj; where Ta temperature of the air, Tj static temperature of the jet (K).
// Valid for: exhaust of about the gas constant of air, at outside pressure.
// Source: gas law.
func DensityRatio(air, jet float64) float64 { return air / jet }

// EquivalentDiameter returns the diameter of a jet of the air's density with the same momentum and speed (m).
//
// Formula: de = D sqrt(rhoj/rhoa); where D nozzle diameter (m).
// Valid for: beyond the core; closer in, heat speeds the decay only to a density ratio of about two thirds.
// Source: Thring and Newby 1953.
func EquivalentDiameter(diameter, densityRatio float64) float64 {
	return diameter * math.Sqrt(densityRatio)
}

// MomentumDiameter returns the equivalent diameter from thrust and mass flow where the nozzle is not known (m).
//
// Formula: de = sqrt(4 m2/(pi rhoa F)); where m mass flow (kg/s), rhoa density of the air (kg/m3), F static thrust (N).
// Valid for: nozzles that are not choked, standing.
// Source: Thring and Newby 1953, with continuity.
func MomentumDiameter(massFlow, airDensity, thrust float64) float64 {
	return math.Sqrt(4 * massFlow * massFlow / (math.Pi * airDensity * thrust))
}

// check names the first impossible field.
func (e Exhaust) check() error {
	for _, err := range []error{
		checkWithin("exhaust.diameter", e.Diameter, 1e-3, 2), checkWithin("exhaust.temperature", e.Temperature, coldestAir, hottestGas),
		checkWithin("exhaust.speed", e.Speed, 0.1, 1000), checkWithin("exhaust.temperature less speed", e.static(), coldestAir, hottestGas),
	} {
		if err != nil {
			return err
		}
	}
	return nil
}

// check names the first impossible field.
func (a Air) check() error {
	if err := checkWithin("air.temperature", a.Temperature, coldestAir, hottestAir); err != nil {
		return err
	}
	return checkAirPressure(a.Pressure)
}

// checkAirPressure allows 0, which stands for the standard pressure, and what there is on the ground.
func checkAirPressure(pressure float64) error {
	if pressure == 0 {
		return nil
	}
	return checkWithin("air.pressure", pressure, 40000, 120000)
}

// pressure returns the pressure of the air.
func (a Air) pressure() float64 {
	if a.Pressure > 0 {
		return a.Pressure
	}
	return standardAir
}
