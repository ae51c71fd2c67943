package drag

import (
	"math"

	"pitgate/server/physics/air"
	"pitgate/server/physics/planform"
)

// BodyStation is one cross section of a body, m.
type BodyStation struct{ X, Width, Height float64 }

// Body is a fuselage, boom or pod from nose to tail.
type Body struct {
	Name        string
	Stations    []BodyStation
	Mirrored    bool
	SquareSided bool
	BaseArea    float64 // flat base that no exhaust fills, m2
}

// Item is a small part given by its own coefficient.
type Item struct {
	Name         string
	Coefficient  float64 // on the frontal area
	FrontalArea  float64 // m2
	Count        int     // 0 counts as 1
	Interference float64 // 0 counts as 1
}

// Duct is the air duct of a buried engine.
type Duct struct {
	IntakeArea, Length, WettedArea, ExitArea float64 // m2, m, m2, m2
}

// Aircraft is all that stands in the stream.
type Aircraft struct {
	Surfaces []planform.Surface
	Bodies   []Body
	Gear     *Gear
	Items    []Item
	Duct     *Duct
	Finish   string  // one of the Finish constants
	Leakage  float64 // share added for gaps and leakage; 0.05 is common practice
}

// Conditions are the speed and air of the build-up and the reference area.
type Conditions struct {
	Speed         float64 // m/s
	Air           air.State
	ReferenceArea float64 // m2
}

// Kinds of a component.
const (
	KindSurface = "surface"
	KindBody    = "body"
	KindBase    = "base"
	KindGear    = "gear"
	KindDuct    = "duct"
	KindItem    = "item"
	KindLeakage = "leakage"
)

// Component is one line of the build-up. Friction fields are zero for parts that carry a coefficient of their own.
type Component struct {
	Name         string
	Kind         string
	Coefficient  float64 // on the reference area
	Area         float64 // drag over dynamic pressure, m2
	Reynolds     float64
	Friction     float64 // mean friction coefficient
	FormFactor   float64
	Interference float64
	WettedArea   float64 // m2
}

// BuildUp returns the drag coefficient without lift and its components.
//
// Formula: CD0 = (1/S) sum Cf FF Q Swet + (1/S) sum (D/q), plus the leakage share.
// Valid for: Mach below 0.3, attached flow. Surfaces that cannot be measured are left out: check them first with planform.Check.
// Source: component build-up, Raymer, Aircraft Design: A Conceptual Approach, chapter 12.
func BuildUp(a Aircraft, c Conditions) (total float64, components []Component) {
	for _, s := range a.Surfaces {
		if part, ok := surfacePart(s, a.Finish, c); ok {
			components = append(components, part)
		}
	}
	for _, b := range a.Bodies {
		components = append(components, bodyParts(b, a.Finish, c)...)
	}
	components = append(components, equipment(a, c)...)
	sum := 0.0
	for i := range components {
		components[i].Coefficient = perReference(components[i].Area, c.ReferenceArea)
		sum += components[i].Area
	}
	if a.Leakage > 0 {
		area := float64(a.Leakage * sum)
		components = append(components, Component{
			Name: "gaps and leakage", Kind: KindLeakage, Area: area, Coefficient: perReference(area, c.ReferenceArea),
		})
		sum += area
	}
	return perReference(sum, c.ReferenceArea), components
}

// equipment returns gear, duct and items.
func equipment(a Aircraft, c Conditions) []Component {
	var out []Component
	if a.Gear != nil && !a.Gear.Retracted {
		re := Reynolds(c.Air.Density, c.Speed, a.Gear.StrutDiameter, c.Air.Viscosity)
		out = append(out, Component{Name: "landing gear", Kind: KindGear, Area: GearDrag(*a.Gear, re), Interference: gearInterference})
	}
	if a.Duct != nil {
		out = append(out, ductPart(*a.Duct, a.Finish, c))
	}
	for _, item := range a.Items {
		count, interference := float64(max(1, item.Count)), item.Interference
		if !(interference > 0) {
			interference = 1
		}
		area := float64(float64(item.Coefficient*item.FrontalArea) * float64(count*interference))
		out = append(out, Component{Name: item.Name, Kind: KindItem, Area: area, Interference: interference})
	}
	return out
}

// perReference returns area over reference area, 0 without a reference.
func perReference(area, reference float64) float64 {
	if !(reference > 0) {
		return 0
	}
	return area / reference
}

// skinFriction fills Reynolds number, friction and drag of a wetted part.
func skinFriction(part Component, length float64, finish string, c Conditions) Component {
	part.Reynolds = Reynolds(c.Air.Density, c.Speed, length, c.Air.Viscosity)
	part.Friction = float64(RoughnessFactor(finish) * Friction(part.Reynolds, Transition(finish, part.Reynolds)))
	part.Area = FrictionArea(part.Friction, part.FormFactor, part.Interference, part.WettedArea)
	return part
}

// FrictionArea returns drag over dynamic pressure of one wetted part, m2.
//
// Formula: f = Cf FF Q Swet.
// Valid for: attached flow.
// Source: Raymer, Aircraft Design: A Conceptual Approach, Eq. 12.24.
func FrictionArea(friction, formFactor, interference, wettedArea float64) float64 {
	return float64(float64(friction*formFactor) * float64(interference*wettedArea))
}

// surfacePart returns the component of a lifting surface.
func surfacePart(s planform.Surface, finish string, c Conditions) (Component, bool) {
	m, err := planform.Measure(s)
	if err != nil {
		return Component{}, false
	}
	mach := 0.0
	if c.Air.SoundSpeed > 0 {
		mach = c.Speed / c.Air.SoundSpeed
	}
	part := Component{
		Name: s.Name, Kind: KindSurface, WettedArea: m.WettedArea, Interference: interferenceOf(s.Role),
		FormFactor: WingFormFactor(m.Thickness, m.MaximumThicknessX, mach, m.QuarterChordSweep),
	}
	length := m.MeanAerodynamicChord
	if !(length > 0) {
		length = (m.RootChord + m.TipChord) / 2
	}
	return skinFriction(part, length, finish, c), true
}

// interferenceOf returns the interference factor of a surface by role.
func interferenceOf(role string) float64 {
	switch role {
	case planform.RoleTailplane, planform.RoleFin, planform.RoleCanard:
		return interferenceTail
	case planform.RoleVTail:
		return interferenceVTail
	}
	return interferenceWing
}

// bodyParts returns the skin of a body and, if it has one, its base.
func bodyParts(b Body, finish string, c Conditions) []Component {
	shape, ok := MeasureBody(b)
	if !ok {
		return nil
	}
	part := Component{Name: b.Name, Kind: KindBody, WettedArea: shape.WettedArea, Interference: interferenceBody,
		FormFactor: BodyFormFactor(shape.Fineness, b.SquareSided)}
	part = skinFriction(part, shape.Length, finish, c)
	parts := []Component{part}
	if b.BaseArea > 0 {
		sides := 1.0
		if b.Mirrored {
			sides = 2
		}
		friction := float64(part.Friction*shape.WettedArea) / sides
		parts = append(parts, Component{Name: b.Name + " base", Kind: KindBase, Area: float64(sides * BaseDrag(friction, b.BaseArea))})
	}
	return parts
}

// ductPart returns the inner drag of a duct: its skin at the speed of the air inside.
//
// Formula: D/q = Cf Swet; where Cf turbulent at the length of the duct and flight speed. Loss of thrust by the duct belongs to the engine.
// Valid for: ducts in which the air is about as fast as the model.
// Source: common practice, no source.
func ductPart(d Duct, finish string, c Conditions) Component {
	wetted := d.WettedArea
	if !(wetted > 0) && d.IntakeArea > 0 {
		wetted = float64(2*math.Sqrt(float64(math.Pi*d.IntakeArea))) * d.Length
	}
	part := Component{Name: "duct", Kind: KindDuct, WettedArea: wetted, FormFactor: 1, Interference: 1}
	if !(d.Length > 0) {
		return part
	}
	part.Reynolds = Reynolds(c.Air.Density, c.Speed, d.Length, c.Air.Viscosity)
	part.Friction = float64(RoughnessFactor(finish) * Friction(part.Reynolds, 0))
	part.Area = FrictionArea(part.Friction, 1, 1, wetted)
	return part
}
