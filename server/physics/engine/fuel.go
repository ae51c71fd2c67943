package engine

import "sort"

// IdleFuelShare is the fuel flow at no thrust over the flow at full thrust where no idle flow is given (common practice, no source).
const IdleFuelShare = 0.27

// FuelPoint is one steady reading of fuel flow.
type FuelPoint struct {
	Thrust   float64 // N
	FuelFlow float64 // kg/s
}

// LinearFuelFlow returns the fuel flow at a thrust.
//
//	m/mmax = 0.27 + 0.73 F/Fmax
//
// where F is the thrust and Fmax full thrust (N). Valid for: small turbines, within a tenth. Source: common practice, no source.
func LinearFuelFlow(fullFlow, share float64) float64 {
	return fullFlow * (IdleFuelShare + float64((1-IdleFuelShare)*share))
}

// FuelFlow returns the fuel flow (kg/s) at a static thrust (N): through the points of the run where there are two or more, else on a line
// from idle to full, else by LinearFuelFlow. Outside the points the nearest point holds.
func (e Engine) FuelFlow(thrust float64) float64 {
	if len(e.FuelRun) >= 2 {
		return interpolateFuel(e.FuelRun, thrust)
	}
	share := min(max(thrust/e.StaticThrust, 0), 1)
	if !(e.IdleFuelFlow > 0) || !(e.IdleThrust < e.StaticThrust) {
		return LinearFuelFlow(e.FullFuelFlow, share)
	}
	idle := e.IdleThrust / e.StaticThrust
	return e.IdleFuelFlow + float64((e.FullFuelFlow-e.IdleFuelFlow)*max(share-idle, 0)/(1-idle))
}

// interpolateFuel reads the fuel flow off points sorted by thrust.
func interpolateFuel(points []FuelPoint, thrust float64) float64 {
	i := sort.Search(len(points), func(i int) bool { return points[i].Thrust >= thrust })
	if i == 0 {
		return points[0].FuelFlow
	}
	if i == len(points) {
		return points[i-1].FuelFlow
	}
	low, high := points[i-1], points[i]
	return low.FuelFlow + float64((high.FuelFlow-low.FuelFlow)*(thrust-low.Thrust)/(high.Thrust-low.Thrust))
}

// SpecificFuelFlow returns fuel flow over thrust, kg/(N s). Source: definition.
func SpecificFuelFlow(fuelFlow, thrust float64) float64 {
	return fuelFlow / thrust
}
