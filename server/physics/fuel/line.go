package fuel

import (
	"math"

	"pitgate/server/physics/elementary"
)

const (
	// TransitionReynolds is where the flow in a line may turn turbulent and the friction jumps.
	TransitionReynolds = 2300.0
	// blasiusReynolds ends the range of Blasius' law.
	blasiusReynolds = 1e5
	// entryAndExit are the velocity heads lost where a line begins sharp and ends in a wider space: 0.5 and 1.
	entryAndExit = 1.5
	// elbowLoss and elbowLaminar are the velocity heads of one sharp elbow: 1.5 + 800/Re.
	elbowLoss    = 1.5
	elbowLaminar = 800.0
)

// Line is one length of fuel line.
type Line struct {
	Name   string
	Length float64 // m
	Bore   float64 // inner diameter, m
	Elbows int
	// Suction is true for lines between tank and pump.
	Suction bool
}

// LineLoss is what a line costs at a flow.
type LineLoss struct {
	Speed    float64 // m/s
	Reynolds float64
	// Turbulent is true from TransitionReynolds on, where the higher friction is taken.
	Turbulent bool
	Tube      float64 // loss in the straight tube, Pa
	Fittings  float64 // loss at entry, exit and elbows, Pa
	Contents  float64 // volume of the line, m3
}

// Total returns the loss of tube and fittings, Pa.
func (l LineLoss) Total() float64 { return l.Tube + l.Fittings }

// Speed returns the mean speed in a bore (m/s).
//
// Formula: v = 4 Q/(pi d2); where Q volume flow (m3/s), d bore (m).
// Valid for: any full bore.
// Source: continuity.
func Speed(flow, bore float64) float64 { return 4 * flow / (math.Pi * bore * bore) }

// Reynolds returns the Reynolds number of the flow in a bore.
//
// Formula: Re = v d/nu; where v mean speed (m/s), d bore (m), nu kinematic viscosity (m2/s).
// Valid for: any.
// Source: definition.
func Reynolds(speed, bore, viscosity float64) float64 { return speed * bore / viscosity }

// LaminarFriction returns the friction factor (Darcy) of laminar flow.
//
// Formula: f = 64/Re.
// Valid for: Re below 2300, developed flow.
// Source: Hagen, Poiseuille.
func LaminarFriction(reynolds float64) float64 { return 64 / reynolds }

// BlasiusFriction returns the friction factor (Darcy) of turbulent flow in a smooth tube.
//
// Formula: f = 0.3164/Re^0.25.
// Valid for: Re 2300 to 1e5, smooth tube as plastic and drawn metal are.
// Source: Blasius 1913.
func BlasiusFriction(reynolds float64) float64 { return 0.3164 / elementary.Pow(reynolds, 0.25) }

// ColebrookFriction returns the friction factor (Darcy) of turbulent flow in a rough tube.
//
// Formula: 1/sqrt f = -2 log10 (k/3.7 + 2.51/(Re sqrt f)); where k roughness over bore.
// Valid for: Re 4000 to 1e8, k from 0 to 0.05. Solved by repeated insertion.
// Source: Colebrook 1939.
func ColebrookFriction(reynolds, roughness float64) float64 {
	root, before := 7.0, 0.0
	for i := 0; i < 60 && root != before; i++ {
		before = root
		root = -2 * elementary.Log10(roughness/3.7+float64(2.51*root/reynolds))
	}
	return 1 / (root * root)
}

// Friction returns the friction factor (Darcy) of a smooth line. Between 2300 and 4000 the flow may be either; the higher is taken.
//
// Formula: f = 64/Re below Re 2300, 0.3164/Re^0.25 to 1e5, Colebrook's above; it jumps from 0.0278 to 0.0457 at 2300.
// Valid for: Re from 0; zero flow has factor 0 as it costs nothing.
// Source: Hagen, Poiseuille; Blasius 1913; Colebrook 1939.
func Friction(reynolds float64) float64 {
	switch {
	case !(reynolds > 0):
		return 0
	case reynolds < TransitionReynolds:
		return LaminarFriction(reynolds)
	case reynolds <= blasiusReynolds:
		return BlasiusFriction(reynolds)
	}
	return ColebrookFriction(reynolds, 0)
}

// TubeLoss returns the loss of pressure in a straight tube (Pa).
//
// Formula: dp = f (L/d) rho v2/2; where f friction factor, L length (m), d bore (m), rho density (kg/m3), v mean speed (m/s).
// Valid for: developed flow.
// Source: Darcy, Weisbach.
func TubeLoss(friction, length, bore, density, speed float64) float64 {
	return float64(friction * (length / bore) * density * speed * speed / 2)
}

// FittingLoss returns the loss of pressure at entry, exit and elbows (Pa).
//
// Formula: dp = (1.5 + n (1.5 + 800/Re)) rho v2/2; where n number of sharp elbows.
// Valid for: sharp push-on elbows; bends of the hose itself cost less.
// Source: handbook coefficients of pipe fittings: entry 0.5, exit 1, threaded elbow 1.5; laminar part by Hooper's two constants, recalled.
func FittingLoss(reynolds float64, elbows int, density, speed float64) float64 {
	if !(reynolds > 0) {
		return 0
	}
	heads := entryAndExit + float64(float64(elbows)*(elbowLoss+elbowLaminar/reynolds))
	return float64(heads * density * speed * speed / 2)
}

// Loss returns what the line costs at a volume flow (m3/s) of a mix.
func (l Line) Loss(flow float64, mix Mix) LineLoss {
	speed := Speed(flow, l.Bore)
	reynolds := Reynolds(speed, l.Bore, mix.Viscosity)
	return LineLoss{
		Speed: speed, Reynolds: reynolds, Turbulent: reynolds >= TransitionReynolds,
		Tube:     TubeLoss(Friction(reynolds), l.Length, l.Bore, mix.Density, speed),
		Fittings: FittingLoss(reynolds, l.Elbows, mix.Density, speed),
		Contents: math.Pi * l.Bore * l.Bore / 4 * l.Length,
	}
}
