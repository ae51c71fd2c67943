package drag

import (
	"pitgate/server/physics/air"
	"pitgate/server/physics/planform"
)

// Aircraft is all that stands in the stream.
type Aircraft struct {
	Surfaces   []planform.Surface
	Bodies     []Body
	Gear       *Gear
	Items      []Item
	Duct       *Duct
	Finish     string  // one of the Finish constants
	Step       Step    // tallest step or seam across the front of the surfaces
	Filleted   bool    // wing root with fillets
	Sections   bool    // skin of the surfaces from section data where it reaches, instead of plate and form factor
	HingeLines bool    // count each control's gap on its own; Leakage then stands for the rest only
	Leakage    float64 // share added for gaps and leakage; 0.05 is common practice
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
	KindPod     = "pod"
	KindBase    = "base"
	KindUpsweep = "upsweep"
	KindGear    = "gear"
	KindDuct    = "duct"
	KindItem    = "item"
	KindHinge   = "hinge"
	KindLeakage = "leakage"
)

// Component is one line of the build-up. Friction fields are zero for parts that carry a coefficient of their own.
type Component struct {
	Name         string
	Kind         string
	Coefficient  float64 // on the reference area
	Spread       float64 // one standard deviation of Coefficient
	Share        float64 // of the total
	Area         float64 // drag over dynamic pressure, m2
	Reynolds     float64
	Transition   float64 // laminar run over length
	Friction     float64 // mean friction coefficient, finish included
	FormFactor   float64
	Interference float64
	WettedArea   float64 // m2
	Source       string
	spread       float64 // of its own, over Coefficient
	shared       float64 // of the friction method, over Coefficient
}

// BuildUp returns the drag coefficient without lift and its components.
//
// Formula: CD0 = (1/S) sum Cf FF Q Swet + (1/S) sum (D/q), plus the leakage share.
// Valid for: Mach below 0.3, attached flow. Surfaces that cannot be measured are left out: check them first with planform.Check, and the
// rest with Check; negative measures count as zero. Without a reference area every coefficient is 0.
// Source: component build-up, Raymer, Aircraft Design: A Conceptual Approach, chapter 12.
func BuildUp(a Aircraft, c Conditions) (total float64, components []Component) {
	c.Speed = usable(c.Speed)
	components = make([]Component, 0, 2*len(a.Surfaces)+2*len(a.Bodies)+len(a.Items)+8)
	for _, s := range a.Surfaces {
		components = append(components, surfaceParts(s, a, c)...)
	}
	for _, b := range a.Bodies {
		components = append(components, bodyParts(b, a.Finish, c)...)
	}
	components = append(components, equipment(a, c)...)
	sum := 0.0
	for i := range components {
		sum += components[i].Area
	}
	if leakage := usable(a.Leakage); leakage > 0 {
		area := float64(leakage * sum)
		components = append(components, Component{
			Name: "gaps and leakage", Kind: KindLeakage, Area: area, spread: spreadLeakage, Source: "common practice",
		})
		sum += area
	}
	settle(components, sum, c.ReferenceArea)
	return perReference(sum, c.ReferenceArea), components
}

// equipment returns gear, duct and items.
func equipment(a Aircraft, c Conditions) []Component {
	var out []Component
	if a.Gear != nil {
		re := Reynolds(c.Air.Density, c.Speed, usable(a.Gear.StrutDiameter), c.Air.Viscosity)
		out = append(out, gearParts(*a.Gear, re)...)
	}
	if a.Duct != nil {
		out = append(out, ductParts(*a.Duct, a.Finish, c)...)
	}
	for _, item := range a.Items {
		out = append(out, itemPart(item))
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

// FrictionArea returns drag over dynamic pressure of one wetted part, m2.
//
// Formula: f = Cf FF Q Swet.
// Valid for: attached flow.
// Source: Raymer, Aircraft Design: A Conceptual Approach, Eq. 12.24.
func FrictionArea(friction, formFactor, interference, wettedArea float64) float64 {
	return float64(float64(friction*formFactor) * float64(interference*wettedArea))
}
