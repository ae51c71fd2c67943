package fuel

import (
	"math"

	"pitgate/server/physics/elementary"
)

const (
	// AirReleaseSuction is the suction from which air comes out of the fuel as small bubbles, Pa. About 4 inches of mercury, within a third.
	// Source: filter makers' advice for diesel plant (verified); no figure for kerosene was found.
	AirReleaseSuction = 13546.0
	// PlannedSuction is what a line should be planned for, Pa (common practice, three quarters of AirReleaseSuction).
	PlannedSuction = 10000.0
	// DissolvedAirShare is the volume of air dissolved in fuel at 1 bar over the fuel's own (recalled; 0.14 to 0.15).
	DissolvedAirShare = 0.15
	// SurfaceTension of kerosene, N/m (recalled).
	SurfaceTension = 0.0255
	// SlowSuctionLine is the greatest speed usual in a suction line, m/s (common practice).
	SlowSuctionLine = 1.0
)

// Load is what the fuel feels in one case of flight, in g along the model's own axes: what an accelerometer reads.
type Load struct {
	Name    string
	Normal  float64 // towards the model's top: 1 in level flight
	Forward float64 // towards the nose: the sine of a steady climb, acceleration over g on a launch
}

// Climbing returns the load of a steady climb at an angle (rad, below the horizontal negative).
//
// Formula: nz = cos g, nx = sin g; where g angle of the climb.
// Valid for: steady flight along the model's axis.
// Source: resolution of weight.
func Climbing(name string, angle float64) Load {
	return Load{Name: name, Normal: elementary.Cos(angle), Forward: elementary.Sin(angle)}
}

// Loads returns the cases that a feed system is judged by: level, steep climb (60 degrees), pull-up at the greatest load factor, push at the
// least, and launch at an acceleration (m/s2, 0 leaves it out).
func Loads(greatest, least, launch float64) []Load {
	loads := []Load{
		{Name: "level", Normal: 1}, Climbing("steep climb", math.Pi/3),
		{Name: "pull-up", Normal: greatest}, {Name: "push", Normal: least},
	}
	if launch > 0 {
		loads = append(loads, Load{Name: "launch", Normal: 1, Forward: launch / gravity})
	}
	return loads
}

// HeadSuction returns the suction that the column of fuel between pick-up and pump asks for (Pa, negative where it helps).
//
// Formula: p = rho g (nz h + nx a); where h height of the pump above the pick-up and a its distance ahead of it (m), nz and nx load (g).
// Valid for: a column without bubbles; the tank at outside pressure.
// Source: hydrostatics.
func HeadSuction(density float64, load Load, height, ahead float64) float64 {
	return float64(density * gravity * (float64(load.Normal*height) + float64(load.Forward*ahead)))
}

// ReleasedAir returns the volume of air that comes out over the volume of fuel that passes.
//
// Formula: a = s (p0 - p)/p0 p0/p = s (p0/p - 1); where s dissolved share at p0, p0 outside pressure and p pressure at the pump (Pa).
// Valid for: time enough to release, so an upper bound within a third; suctions below two thirds of p0.
// Source: Henry's law.
func ReleasedAir(suction, outside float64) float64 {
	at := max(outside/3, outside-max(0, suction))
	return float64(DissolvedAirShare * (outside/at - 1))
}

// ScreenHold returns the pressure at which air breaks through a wetted felt or screen (Pa).
//
// Formula: p = 4 s/d; where s surface tension (N/m), d greatest pore (m).
// Valid for: a wetted screen without holes or folds, within a tenth.
// Source: Laplace, bubble point.
func ScreenHold(tension, pore float64) float64 { return 4 * tension / pore }

// HeldLoad returns the load factor up to which a wetted screen keeps air out below a column of fuel.
//
// Formula: n = p/(rho g h); where p ScreenHold (Pa), h height of fuel that hangs on the screen (m).
// Valid for: slow flow.
// Source: hydrostatics.
func HeldLoad(hold, density, height float64) float64 { return hold / (density * gravity * height) }

// SlugGap returns how long an engine runs dry while a slug of air passes (s).
//
// Formula: t = V/Q; where V volume of air (m3), Q fuel flow (m3/s).
// Valid for: air at tank pressure.
// Source: continuity.
func SlugGap(air, flow float64) float64 { return air / flow }
