package heat

import (
	"math"

	"pitgate/server/physics/air"
	"pitgate/server/physics/elementary"
)

const (
	prandtl = 0.71
	// critical is the Reynolds number at which the boundary layer of a plate turns turbulent.
	critical = 5e5
	// StillCoefficient is the heat transfer of a skin in still air by natural convection, W/(m2 K) (common practice, 5 to 10).
	StillCoefficient = 8.0
)

// Conductivity returns the heat conductivity of air (W/(m K)).
//
// Formula: k = 2.64638e-3 T^1.5/(T + 245.4 10^(-12/T)); where T temperature (K).
// Valid for: 170 to 1500 K.
// Source: US Standard Atmosphere 1976.
func Conductivity(temperature float64) float64 {
	return 2.64638e-3 * temperature * math.Sqrt(temperature) / (temperature + float64(245.4*elementary.Pow(10, -12/temperature)))
}

// LaminarPlate returns the mean Nusselt number of a plate in laminar flow.
//
// Formula: Nu = 0.664 Re^0.5 Pr^(1/3); where Re on the length of the plate, Pr Prandtl number.
// Valid for: Re below 5e5, Pr above 0.6.
// Source: Pohlhausen 1921.
func LaminarPlate(reynolds, prandtl float64) float64 {
	return 0.664 * math.Sqrt(reynolds) * elementary.Pow(prandtl, 1.0/3)
}

// MixedPlate returns the mean Nusselt number of a plate that is laminar to Re 5e5 and turbulent behind.
//
// Formula: Nu = (0.037 Re^0.8 - 871) Pr^(1/3).
// Valid for: Re 5e5 to 1e8, Pr 0.6 to 60.
// Source: textbooks of heat transfer (Incropera).
func MixedPlate(reynolds, prandtl float64) float64 {
	return (float64(0.037*elementary.Pow(reynolds, 0.8)) - 871) * elementary.Pow(prandtl, 1.0/3)
}

// TurbulentPlate returns the mean Nusselt number of a plate in turbulent flow from its front edge, as in a plume.
//
// Formula: Nu = 0.037 Re^0.8 Pr^(1/3).
// Valid for: Re to 1e7, Pr 0.6 to 60.
// Source: textbooks of heat transfer (Incropera).
func TurbulentPlate(reynolds, prandtl float64) float64 {
	return 0.037 * elementary.Pow(reynolds, 0.8) * elementary.Pow(prandtl, 1.0/3)
}

// PlateCoefficient returns the mean heat transfer of a skin in a stream (W/(m2 K)).
//
// Formula: h = Nu k/L; Nu of LaminarPlate below Re 5e5, of MixedPlate above, of TurbulentPlate in a plume.
// Valid for: air at film temperature (K) and pressure (Pa), speed above 0 (m/s), length of the skin along the stream (m).
// Source: textbooks of heat transfer.
func PlateCoefficient(speed, length, film, pressure float64, plume bool) float64 {
	kinematic := air.Viscosity(film) * gasConstant * film / pressure
	reynolds := speed * length / kinematic
	nusselt := LaminarPlate(reynolds, prandtl)
	switch {
	case plume:
		nusselt = TurbulentPlate(reynolds, prandtl)
	case reynolds > critical:
		nusselt = MixedPlate(reynolds, prandtl)
	}
	return nusselt * Conductivity(film) / length
}
