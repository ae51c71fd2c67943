package structure

import "math"

// Shape is the form of a part of a spar.
type Shape int

// Shapes of parts.
const (
	ShapeUnknown    Shape = iota
	ShapeTube             // round: Outer and Wall; no wall, or one of half the diameter, is a solid rod
	ShapeCapsAndWeb       // Width, Depth over both caps, Cap and Web thickness; no web leaves the shear to other parts
	ShapeSolid            // Width and Depth
	ShapeSheet            // skin: Width and Wall; with a Depth there are two, their outer faces that far apart
	ShapeFoamCore         // Width and Depth
)

// Part is one part of a stacked spar. All its fibres bend with the others: parts are glued or wrapped together over their length.
type Part struct {
	Shape     Shape
	Material  Material
	Outer     float64 // diameter, m
	Wall      float64 // of a tube, thickness of a sheet, m
	Width     float64 // along the chord, m
	Depth     float64 // along z, m
	Cap       float64 // thickness of each cap, m
	Web       float64 // thickness, m
	OffsetZ   float64 // of its middle above the spar's middle, m
	KnockDown float64 // share of the table's strength left, 0 when not given
}

// piece is a rectangle or ring of a part: area, its own second moment and height of its middle.
type piece struct{ area, inertia, z float64 }

// check returns an error that names the first impossible measure.
func (p Part) check() error {
	err := checkNotNegative(named{"outer", p.Outer}, named{"wall", p.Wall}, named{"width", p.Width}, named{"depth", p.Depth}, named{"cap", p.Cap},
		named{"web", p.Web}, named{"knockDown", p.KnockDown}, named{"1 - knockDown", 1 - p.KnockDown})
	if err != nil {
		return err
	}
	if err := checkFinite(named{"offsetZ", p.OffsetZ}); err != nil {
		return err
	}
	err = checkPositive(named{"modulus", p.Material.Modulus}, named{"shearModulus", p.Material.ShearModulus},
		named{"tension", p.Material.Tension}, named{"compression", p.Material.Compression}, named{"shear", p.Material.Shear})
	if err != nil {
		return err
	}
	return p.checkShape()
}

func (p Part) checkShape() error {
	switch p.Shape {
	case ShapeTube:
		return checkPositive(named{"outer", p.Outer})
	case ShapeCapsAndWeb:
		if err := checkPositive(named{"width", p.Width}, named{"depth", p.Depth}, named{"cap", p.Cap}); err != nil {
			return err
		}
		return checkNotNegative(named{"depth less two caps", p.Depth - float64(2*p.Cap)}, named{"width less web", p.Width - p.Web})
	case ShapeSolid, ShapeFoamCore:
		return checkPositive(named{"width", p.Width}, named{"depth", p.Depth})
	case ShapeSheet:
		if err := checkPositive(named{"width", p.Width}, named{"wall", p.Wall}); err != nil {
			return err
		}
		if p.Depth > 0 {
			return checkNotNegative(named{"depth less two walls", p.Depth - float64(2*p.Wall)})
		}
		return nil
	default:
		return checkPositive(named{"shape", 0})
	}
}

// inner returns the inner diameter of a tube, m.
func (p Part) inner() float64 {
	if !(p.Wall > 0) {
		return 0
	}
	return max(0, p.Outer-float64(2*p.Wall))
}

// MassPerLength returns the mass of a metre of a part, kg/m. Errors name the impossible field.
//
// Formula: rho A; where rho density, kg/m3, A area, m2.
// Valid for: parts of even section; glue and fittings are left out.
// Source: definition of density.
func (p Part) MassPerLength() (float64, error) {
	if err := p.check(); err != nil {
		return 0, err
	}
	area := 0.0
	for _, q := range p.pieces() {
		area += q.area
	}
	mass := float64(p.Material.Density * area)
	return mass, checkResult(mass)
}

// RingInertia returns the second moment of area of a round tube, m4.
//
// Formula: I = pi (D^4 - d^4)/64; where D outer, d inner diameter, m.
// Valid for: d from 0 to D.
// Source: any table of sections.
func RingInertia(outer, inner float64) float64 {
	a, b := float64(outer*outer), float64(inner*inner)
	return math.Pi / 64 * (float64(a*a) - float64(b*b))
}

// RingArea returns the area of a round tube, m2.
//
// Formula: A = pi (D^2 - d^2)/4.
// Valid for, source: RingInertia.
func RingArea(outer, inner float64) float64 {
	return math.Pi / 4 * (float64(outer*outer) - float64(inner*inner))
}

// rectangle returns a piece of a breadth and depth at a height.
//
// Formula: A = b h, I = b h^3/12.
func rectangle(width, depth, z float64) piece {
	return piece{area: float64(width * depth), inertia: float64(width*depth*depth*depth) / 12, z: z}
}

// pieces returns what a part is made of.
func (p Part) pieces() []piece {
	switch p.Shape {
	case ShapeTube:
		inner := p.inner()
		return []piece{{RingArea(p.Outer, inner), RingInertia(p.Outer, inner), p.OffsetZ}}
	case ShapeCapsAndWeb:
		open := p.Depth - float64(2*p.Cap)
		arm := float64(0.5 * (p.Depth - p.Cap))
		return []piece{rectangle(p.Width, p.Cap, p.OffsetZ+arm), rectangle(p.Width, p.Cap, p.OffsetZ-arm), rectangle(p.Web, open, p.OffsetZ)}
	case ShapeSheet:
		if p.Depth > 0 {
			arm := float64(0.5 * (p.Depth - p.Wall))
			return []piece{rectangle(p.Width, p.Wall, p.OffsetZ+arm), rectangle(p.Width, p.Wall, p.OffsetZ-arm)}
		}
		return []piece{rectangle(p.Width, p.Wall, p.OffsetZ)}
	default:
		return []piece{rectangle(p.Width, p.Depth, p.OffsetZ)}
	}
}

// ends returns the highest and lowest fibre of a part.
func (p Part) ends() (top, bottom float64) {
	half := float64(0.5 * p.Depth)
	switch {
	case p.Shape == ShapeTube:
		half = float64(0.5 * p.Outer)
	case p.Shape == ShapeSheet && !(p.Depth > 0):
		half = float64(0.5 * p.Wall)
	}
	return p.OffsetZ + half, p.OffsetZ - half
}

// shearArea returns the area of a part over which a shear force spreads evenly enough to reach its greatest shear stress, m2.
//
// Formula: 2/3 of a rectangle; A (3/4) (D^2 + d^2)/(D^2 + D d + d^2) of a tube (1/2 A thin, 3/4 A of a rod); web thickness times the distance of the caps'
// middles.
// Valid for: shear along z.
// Source: Jourawski's formula for those sections, in any text on strength of materials.
func (p Part) shearArea() float64 {
	switch p.Shape {
	case ShapeTube:
		inner := p.inner()
		square := float64(p.Outer*p.Outer) + float64(inner*inner)
		return float64(0.75 * RingArea(p.Outer, inner) * square / (square + float64(p.Outer*inner)))
	case ShapeCapsAndWeb:
		return float64(p.Web * (p.Depth - p.Cap))
	case ShapeSolid, ShapeFoamCore:
		return float64(p.Width*p.Depth) * 2 / 3
	default:
		return 0
	}
}
