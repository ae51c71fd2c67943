package engine

import (
	"math"

	"pitgate/server/physics/elementary"
)

// SimpleNetThrust returns net thrust with ram drag only.
//
//	F = F0 - m V
//
// where F0 is the static thrust (N), m the air mass flow (kg/s), V the airspeed (m/s).
// Valid for: take-off margins, where it errs low; it overstates the fall of thrust at speed. Source: net = gross - ram drag (Cumpsty, Jet
// Propulsion, section 3.1).
func SimpleNetThrust(staticThrust, massFlow, speed float64) float64 {
	return staticThrust - float64(massFlow*speed)
}

// stagnationTemperatureRatio returns total over static temperature of air at an airspeed: 1 + V^2/(2 cp T).
func stagnationTemperatureRatio(speed, temperature float64) float64 {
	return 1 + float64(speed*speed)/(2*heatCapacity*temperature)
}

// RamPressureRatio returns total over ambient pressure behind the intake.
//
//	p02/p = (1 + eta V^2/(2 cp T))^(k/(k-1))
//
// where eta is the share of the ram temperature rise that turns into pressure, V the airspeed (m/s), T the air temperature (K).
// Valid for: subsonic intakes. Source: isentropic intake efficiency, ideal gas.
func RamPressureRatio(speed, temperature, recovery float64) float64 {
	rise := stagnationTemperatureRatio(speed, temperature) - 1
	return elementary.Pow(1+float64(recovery*rise), heatRatio/(heatRatio-1))
}

// RamMassFlow returns the air mass flow of a turbine at speed.
//
//	m = m0 (p02/p) / sqrt(T02/T)
//
// where m0 is the static flow (kg/s), p02/p the ram pressure ratio, T02/T the total temperature ratio.
// Valid for: constant corrected flow (choked or fixed-speed compressor). Source: corrected mass flow.
func RamMassFlow(staticFlow, speed, temperature, recovery float64) float64 {
	return staticFlow * RamPressureRatio(speed, temperature, recovery) / math.Sqrt(stagnationTemperatureRatio(speed, temperature))
}

// RamNetThrust returns net thrust of a turbine with ram recovery.
//
//	F = m (Vj - V), Vj^2 = Vj0^2 (1 - P^-c) / (1 - P0^-c), P = P0 p02/p, c = (k-1)/k
//
// where m is RamMassFlow, Vj0 = F0/m0 the static jet speed, P0 the static nozzle pressure ratio that gives Vj0 from the exhaust's total
// temperature, p02/p the ram pressure ratio and k the heat ratio of the exhaust.
// Valid for: unchoked convergent nozzle, held pressure ratio and turbine: top speed and loads, where it errs high, by 2 % at
// 100 m/s against a full cycle. Source: ideal nozzle expansion with a constant loss factor.
func RamNetThrust(staticThrust, massFlow, speed, airTemperature, exhaustTemperature, recovery float64) float64 {
	if !(massFlow > 0) || !(staticThrust > 0) {
		return staticThrust
	}
	jet := staticThrust / massFlow
	static := 1 - float64(jet*jet)/(2*exhaustHeatCapacity*exhaustTemperature)
	if !(static > 0) {
		return SimpleNetThrust(staticThrust, massFlow, speed)
	}
	exponent := (exhaustHeatRatio - 1) / exhaustHeatRatio
	moving := static / elementary.Pow(RamPressureRatio(speed, airTemperature, recovery), exponent)
	jet = float64(jet * math.Sqrt((1-moving)/(1-static)))
	return RamMassFlow(massFlow, speed, airTemperature, recovery) * (jet - speed)
}
