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
	AirScoopCoefficient       = 1.6 // 1.2 to 2.0
	gearInterference          = 1.2
	openDoors                 = 1.07
	criticalCylinder          = 3e5
)

// Shapes of a leg.
const (
	StrutRound  = "round"
	StrutFlat   = "flat"
	StrutFaired = "faired"
)

// Wheel is one wheel; measures in m.
type Wheel struct {
	Name            string
	Diameter, Width float64
	Faired          bool // in a fairing
	Smooth          bool // streamlined wheel and tyre
	Tandem          bool // close behind another
}

// Gear is the landing gear as the drag sees it.
type Gear struct {
	Wheels           []Wheel
	StrutFrontalArea float64 // all legs and wires, m2
	StrutsFaired     bool    // as StrutShape faired
	StrutShape       string  // one of the Strut constants; round when empty
	StrutDiameter    float64 // for the Reynolds number of round legs; 0 = thin
	SkidFrontalArea  float64 // skids along the stream, m2
	SkidSlenderness  float64 // length over thickness of a skid; 0 = 4
	DoorsOpen        bool    // wells without doors, or doors that stay open
	Retracted        bool    // only open wells are left in the stream
}

// GearDrag returns drag over dynamic pressure of the gear, m2.
//
// Formula: 1.2 sum CD A, times 1.07 with open doors; where A frontal area of each wheel (diameter times width), of all legs and skids, 1.2
// for mutual interference. Retracted: 0.07 of it when the wells stay open, else 0.
// Valid for: gear in the free stream.
// Source: Raymer, Aircraft Design: A Conceptual Approach, Table 12.6 and its rules.
func GearDrag(g Gear, strutReynolds float64) float64 {
	sum := 0.0
	for _, part := range gearParts(g, strutReynolds) {
		sum += part.Area
	}
	return sum
}

// gearParts returns wheels, legs, skids and open wells, those that there are.
func gearParts(g Gear, strutReynolds float64) []Component {
	wheels, legs, skids := wheelsArea(g.Wheels), legsArea(g, strutReynolds), skidArea(g)
	wells := 0.0
	if g.DoorsOpen {
		wells = OpenDoorsDrag(wheels + legs + skids)
	}
	if g.Retracted {
		wheels, legs, skids = 0, 0, 0
	}
	var out []Component
	for _, part := range []Component{
		{Name: "wheels", Area: wheels, Interference: gearInterference}, {Name: "gear legs", Area: legs, Interference: gearInterference},
		{Name: "skids", Area: skids, Interference: gearInterference}, {Name: "open wheel wells", Area: wells},
	} {
		if part.Area > 0 {
			part.Kind, part.spread, part.Source = KindGear, spreadGear, "Raymer, Table 12.6"
			out = append(out, part)
		}
	}
	return out
}

// wheelsArea returns drag over dynamic pressure of the wheels with interference, m2.
func wheelsArea(wheels []Wheel) float64 {
	sum := 0.0
	for _, w := range wheels {
		sum += float64(wheelCoefficient(w) * float64(usable(w.Diameter)*usable(w.Width)))
	}
	return float64(gearInterference * sum)
}

// wheelCoefficient returns the coefficient of a wheel by shape.
func wheelCoefficient(w Wheel) float64 {
	switch {
	case w.Faired:
		return FairedWheelCoefficient
	case w.Tandem:
		return TandemWheelCoefficient
	case w.Smooth:
		return SmoothWheelCoefficient
	}
	return WheelCoefficient
}

// legsArea returns drag over dynamic pressure of the legs with interference, m2.
func legsArea(g Gear, reynolds float64) float64 {
	shape := g.StrutShape
	if g.StrutsFaired {
		shape = StrutFaired
	}
	return float64(gearInterference * float64(strutCoefficient(shape, reynolds)*usable(g.StrutFrontalArea)))
}

// strutCoefficient returns the coefficient of a leg by shape and, when it is round, by the Reynolds number on its diameter.
func strutCoefficient(shape string, reynolds float64) float64 {
	switch {
	case shape == StrutFaired:
		return FairedStrutCoefficient
	case shape == StrutFlat:
		return FlatLegCoefficient
	case reynolds > criticalCylinder:
		return RoundStrutHighCoefficient
	}
	return RoundStrutCoefficient
}

// skidArea returns drag over dynamic pressure of skids with interference, m2: rods along the stream.
func skidArea(g Gear) float64 {
	slenderness := g.SkidSlenderness
	if !(slenderness > 0) {
		slenderness = 4
	}
	return float64(gearInterference * float64(AlongCylinder(slenderness)*usable(g.SkidFrontalArea)))
}

// OpenDoorsDrag returns the drag over dynamic pressure that open wells add to the gear that hangs below, or leave when it is retracted, m2,
// from that of the extended gear.
//
// Formula: extended drag times 1.07 is the gear with doors left open; the wells alone are 7 % of it.
// Valid for: wells without doors.
// Source: Raymer, Aircraft Design: A Conceptual Approach, rule beside Table 12.6.
func OpenDoorsDrag(extended float64) float64 { return float64((openDoors - 1) * extended) }
