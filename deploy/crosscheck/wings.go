package main

import (
	"math"

	"pitgate/server/physics/lift"
	"pitgate/server/physics/planform"
)

// trapezoid is a straight-tapered surface by the numbers of its planform; the other program gets these and nothing of the lattice.
type trapezoid struct {
	Role             string  `json:"role"`
	HalfSpan         float64 `json:"halfSpanMeters"`
	RootChord        float64 `json:"rootChordMeters"`
	TipChord         float64 `json:"tipChordMeters"`
	RootX            float64 `json:"rootLeadingEdgeXMeters"`
	RootZ            float64 `json:"rootLeadingEdgeZMeters"`
	LeadingEdgeSweep float64 `json:"leadingEdgeSweepRadians"`
	Dihedral         float64 `json:"dihedralRadians"`
	Incidence        float64 `json:"incidenceRadians"`
	TipTwist         float64 `json:"tipTwistRadians"`
	Rows             int     `json:"rows"`
	Strips           int     `json:"strips"`
	// EqualStrips are those of the other program where it must have equal ones: edge behind edge, a bare wake does a tail in it no harm.
	EqualStrips int `json:"equalStrips,omitempty"`
}

// surface returns the trapezoid as the core takes it; a fin stands upright.
func (t trapezoid) surface() planform.Surface {
	root := planform.Station{X: t.RootX, Z: t.RootZ, Chord: t.RootChord}
	tip := planform.Station{X: t.RootX + t.HalfSpan*math.Tan(t.LeadingEdgeSweep), Z: t.RootZ, Chord: t.TipChord, Twist: t.TipTwist}
	if t.Role == planform.RoleFin {
		tip.Z += t.HalfSpan
	} else {
		tip.Y, tip.Z = t.HalfSpan, t.RootZ+t.HalfSpan*math.Tan(t.Dihedral)
	}
	return planform.Surface{
		Name: t.Role, Role: t.Role, Mirrored: t.Role != planform.RoleFin, Incidence: t.Incidence, Stations: []planform.Station{root, tip},
	}
}

// wing is a wing by aspect ratio, taper and sweep of the quarter-chord line, with a mean chord of 0.25 m.
func wing(aspect, taper, sweepDegrees float64) trapezoid {
	const mean = 0.25
	half, root := aspect*mean/2, 2*mean/(1+taper)
	tip := root * taper
	quarter := half*math.Tan(radians(sweepDegrees)) + 0.25*(root-tip)
	return trapezoid{
		Role: planform.RoleWing, HalfSpan: half, RootChord: root, TipChord: tip, LeadingEdgeSweep: math.Atan2(quarter, half), Rows: rows, Strips: strips,
	}
}

// rows and strips of every surface, in both programs.
const rows, strips = 6, 12

func radians(degrees float64) float64 { return degrees * math.Pi / 180 }

// namedWing is one of the wings.
type namedWing struct {
	name     string
	surfaces []trapezoid
	height   float64 // over the ground, m; 0 far from it
	still    bool    // no part of it lifts when the whole does not
}

// wings returns the wings that both programs solve; the first surface is the reference.
func wings() []namedWing {
	bent := wing(8, 0.6, 30)
	bent.Dihedral, bent.Incidence, bent.TipTwist = radians(5), radians(2), radians(-3)
	front := trapezoid{
		Role: planform.RoleCanard, HalfSpan: 0.35, RootChord: 0.15, TipChord: 0.12, RootX: -0.6, RootZ: 0.12, Incidence: radians(2),
		Rows: rows, Strips: strips,
	}
	tail := trapezoid{
		Role: planform.RoleTailplane, HalfSpan: 0.32, RootChord: 0.17, TipChord: 0.13, RootX: 0.95, RootZ: 0.15, Incidence: radians(-1),
		Rows: rows, Strips: strips,
	}
	return []namedWing{
		{name: "rectangular", surfaces: []trapezoid{wing(6, 1, 0)}},
		{name: "tapered", surfaces: []trapezoid{wing(7, 0.5, 0)}},
		{name: "swept", surfaces: []trapezoid{wing(7, 0.5, 25)}},
		{name: "swept, twisted, raised tips", surfaces: []trapezoid{bent}},
		{name: "canard and wing", surfaces: []trapezoid{wing(6, 0.7, 10), front}},
		{name: "wing and tail", surfaces: []trapezoid{wing(8, 0.6, 0), tail}},
		{name: "tail in the wing's wake", surfaces: tailInTheWake()},
		{name: "raised tips and fin", surfaces: wingAndFin(), still: true},
		{name: "near the ground", surfaces: []trapezoid{wing(7, 0.5, 10)}, height: 0.3},
	}
}

// tailInTheWake is a tail in the plane of a wing, of such a span that equal strips of both lie edge behind edge.
func tailInTheWake() []trapezoid {
	front, back := wing(8, 1, 0), trapezoid{Role: planform.RoleTailplane, RootChord: 0.17, TipChord: 0.13, RootX: 0.95, Rows: rows, Strips: strips}
	front.EqualStrips, back.EqualStrips = 20, 8
	back.HalfSpan = front.HalfSpan * (8 + 0.25) / (20 + 0.25)
	return []trapezoid{front, back}
}

// wingAndFin is an untwisted wing with dihedral and a fin.
func wingAndFin() []trapezoid {
	raised := wing(8, 0.6, 0)
	raised.Dihedral = radians(6)
	fin := trapezoid{
		Role: planform.RoleFin, HalfSpan: 0.3, RootChord: 0.25, TipChord: 0.15, RootX: 0.8, RootZ: 0.12, LeadingEdgeSweep: radians(20),
		Rows: rows, Strips: strips,
	}
	return []trapezoid{raised, fin}
}

// figures is what the two programs are compared by.
type figures struct {
	LiftSlope    float64 `json:"liftSlope"`
	NeutralPoint float64 `json:"neutralPointMeters"`
	InducedDrag  float64 `json:"inducedDrag"`
}

// system is a set of equations with its answers.
type system struct {
	Size    int         `json:"size"`
	Matrix  []float64   `json:"matrix"`
	Columns [][]float64 `json:"columns"`
	Answers [][]float64 `json:"answers"`
}

// solvedWing is a wing with what the core makes of it.
type solvedWing struct {
	Name     string      `json:"name"`
	Surfaces []trapezoid `json:"surfaces"`
	Height   float64     `json:"groundHeightMeters"`
	System   system      `json:"system"`
	Lift     float64     `json:"liftCoefficient"` // at which the induced drag is taken
	Figures  figures     `json:"figures"`
	Sideways sideways    `json:"sideways"`
}

// sideways is how a wing answers sideslip, roll rate and yaw rate, in this order, about a point.
type sideways struct {
	Point [3]float64 `json:"pointMeters"`
	Lift  float64    `json:"liftCoefficient"` // of Roll
	Roll  [3]float64 `json:"roll"`            // rolling moment under a little lift
	Side  [3]float64 `json:"side"`            // side force under it
	// Still is side force, rolling and yawing moment without lift, where no part lifts.
	Still *[3][3]float64 `json:"still,omitempty"`
}

// solveSideways lets the core solve a wing in sideways motion.
func solveSideways(w namedWing, surfaces []planform.Surface, reference lift.Reference) (sideways, error) {
	out := sideways{Point: [3]float64{0.1, 0, 0.02}, Lift: 0.05}
	lateral, err := lift.SolveLateral(surfaces, reference)
	if err != nil {
		return out, err
	}
	d := lateral.At(out.Point[0], out.Point[2], out.Lift)
	out.Roll = [3]float64{d.RollBeta, d.RollRollRate, d.RollYawRate}
	out.Side = [3]float64{d.SideForceBeta, d.SideForceRollRate, d.SideForceYawRate}
	if w.still {
		d = lateral.At(out.Point[0], out.Point[2], 0)
		out.Still = &[3][3]float64{
			{d.SideForceBeta, d.SideForceRollRate, d.SideForceYawRate}, {d.RollBeta, d.RollRollRate, d.RollYawRate}, {d.YawBeta, d.YawRollRate, d.YawYawRate},
		}
	}
	return out, nil
}

// solveWing lets the core solve a wing.
func solveWing(w namedWing) (solvedWing, error) {
	out := solvedWing{Name: w.name, Surfaces: w.surfaces, Height: w.height, Lift: 0.5}
	var surfaces []planform.Surface
	for _, s := range w.surfaces {
		surfaces = append(surfaces, s.surface())
	}
	reference := lift.Reference{Grid: lift.Grid{Chordwise: rows, Spanwise: strips}, GroundHeight: w.height}
	equations, err := lift.System(surfaces, reference)
	if err != nil {
		return out, err
	}
	out.System = system{equations.Size, equations.Matrix, equations.Columns, equations.Strengths}
	solution, err := lift.Solve(surfaces, reference)
	if err != nil {
		return out, err
	}
	out.Figures = figures{solution.LiftSlope, solution.NeutralPointX, solution.InducedDrag(out.Lift)}
	out.Sideways, err = solveSideways(w, surfaces, reference)
	return out, err
}
