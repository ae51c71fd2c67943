package drag

// Drag coefficients on the frontal area.
//
// Source: Raymer, Aircraft Design: A Conceptual Approach, Table 12.6.
const (
	WheelCoefficient          = 0.25
	TandemWheelCoefficient    = 0.15
	SmoothWheelCoefficient    = 0.18
	FairedWheelCoefficient    = 0.13
	FairedStrutCoefficient    = 0.05
	RoundStrutCoefficient     = 1.17 // round strut or wire below Re 3e5, as on all models
	RoundStrutHighCoefficient = 0.30 // above Re 3e5
	FlatLegCoefficient        = 1.40
	FlatPlateCoefficient      = 1.28
	ControlHornCoefficient    = 0.8
	OpenCockpitCoefficient    = 0.50
	gearInterference          = 1.2
	openDoors                 = 1.07
	criticalCylinder          = 3e5
)

// Wheel is one wheel; measures in m.
type Wheel struct {
	Name            string
	Diameter, Width float64
	Faired          bool
}

// Gear is the landing gear as the drag sees it.
type Gear struct {
	Wheels           []Wheel
	StrutFrontalArea float64 // all legs and wires, m2
	StrutsFaired     bool
	StrutDiameter    float64 // for the Reynolds number of round legs; 0 = thin
	Retracted        bool    // nothing of it in the stream
}

// GearDrag returns drag over dynamic pressure of the gear, m2.
//
// Formula: 1.2 sum CD A; where A frontal area of each wheel (diameter times width) and of all legs, 1.2 for mutual interference.
// Valid for: gear in the free stream; zero when retracted behind doors.
// Source: Raymer, Aircraft Design: A Conceptual Approach, Table 12.6 and its rules.
func GearDrag(g Gear, strutReynolds float64) float64 {
	if g.Retracted {
		return 0
	}
	sum := float64(strutCoefficient(g.StrutsFaired, strutReynolds) * g.StrutFrontalArea)
	for _, w := range g.Wheels {
		coefficient := WheelCoefficient
		if w.Faired {
			coefficient = FairedWheelCoefficient
		}
		sum += float64(coefficient * float64(w.Diameter*w.Width))
	}
	return float64(gearInterference * sum)
}

// strutCoefficient returns the coefficient of a leg by shape and Reynolds number on its diameter.
func strutCoefficient(faired bool, reynolds float64) float64 {
	switch {
	case faired:
		return FairedStrutCoefficient
	case reynolds > criticalCylinder:
		return RoundStrutHighCoefficient
	}
	return RoundStrutCoefficient
}

// OpenDoorsDrag returns the drag over dynamic pressure of a retracted gear whose wells stay open, m2, from that of the extended gear.
//
// Formula: extended drag times 1.07 is the gear with doors left open; the wells alone are 7 % of it.
// Valid for: wells without doors.
// Source: Raymer, Aircraft Design: A Conceptual Approach, rule beside Table 12.6.
func OpenDoorsDrag(extended float64) float64 { return float64((openDoors - 1) * extended) }
