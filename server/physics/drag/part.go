package drag

import (
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/planform"
)

// skin returns a wetted part with Reynolds number, friction, drag and spread; transition is the natural place by finish.
func skin(part Component, length float64, class finishClass, j Junction) Component {
	part.Interference, part.shared = j.Factor, spreadFriction
	part.spread = j.Spread / j.Factor
	part.Friction = float64(class.factor * roughFriction(part.Reynolds, part.Transition, CutoffReynolds(length, class.grain)))
	part.Area = usable(FrictionArea(part.Friction, part.FormFactor, part.Interference, part.WettedArea))
	part.Source = "plate friction and form factor (Raymer, chapter 12); junction: " + j.Source
	return part
}

// surfaceParts returns the component of a lifting surface and, when they are counted, of its hinge lines.
func surfaceParts(s planform.Surface, a Aircraft, c Conditions) []Component {
	m, err := planform.Measure(s)
	if err != nil {
		return nil
	}
	length := m.MeanAerodynamicChord
	if !(length > 0) {
		length = float64(0.5 * (m.RootChord + m.TipChord))
	}
	part := Component{
		Name: s.Name, Kind: KindSurface, WettedArea: m.WettedArea,
		FormFactor: WingFormFactor(m.Thickness, m.MaximumThicknessX, mach(c), m.QuarterChordSweep),
		Reynolds:   Reynolds(c.Air.Density, c.Speed, length, c.Air.Viscosity),
	}
	part.Transition = Tripped(Transition(a.Finish, part.Reynolds), a.Step, length, part.Reynolds/length)
	part = skin(part, length, classOf(a.Finish), JunctionOf(s, a))
	if a.Sections {
		part = bySections(part, s, a.Finish, part.Reynolds/length)
	}
	parts := []Component{part}
	if area := hingeArea(s, m); a.HingeLines && area > 0 {
		parts = append(parts, Component{
			Name: s.Name + " hinge lines", Kind: KindHinge, Area: area, spread: spreadHinge, Source: hingeSource,
		})
	}
	return parts
}

// bySections replaces the drag of a surface's skin by that of its sections at their least; Friction is then what gives it with the form
// factor. The part stays as it is where the data do not reach.
func bySections(part Component, s planform.Surface, finish string, reynoldsPerMeter float64) Component {
	area, spread, inside := sectionDrag(s, finish, reynoldsPerMeter)
	whole := float64(part.FormFactor * float64(part.Interference*part.WettedArea))
	if !inside || !(whole > 0) {
		return part
	}
	part.Area = float64(part.Interference * area)
	part.Friction = part.Area / whole
	part.spread = math.Sqrt(float64(part.spread*part.spread) + float64(spread*spread))
	part.shared = 0
	part.Source = "least profile drag of the sections; junction and form factor as for a plate"
	return part
}

// mach returns the Mach number, 0 without a speed of sound.
func mach(c Conditions) float64 {
	if !(c.Air.SoundSpeed > 0) {
		return 0
	}
	return c.Speed / c.Air.SoundSpeed
}

// bodyParts returns the skin of a body and, if it has them, its base and the sweep of its tail.
func bodyParts(b Body, finish string, c Conditions) []Component {
	shape, ok := MeasureBody(b)
	if !ok {
		return nil
	}
	part := Component{
		Name: b.Name, Kind: KindBody, WettedArea: shape.WettedArea, FormFactor: BodyFormFactor(shape.Fineness, b.SquareSided),
		Reynolds: Reynolds(c.Air.Density, c.Speed, shape.Length, c.Air.Viscosity),
	}
	junction := junctionBody
	if b.Pod {
		part.Kind, part.FormFactor, junction = KindPod, PodFormFactor(shape.Fineness), podJunction(b.Mount)
	}
	part.Transition = BodyTransition(finish, part.Reynolds)
	part = skin(part, shape.Length, classOf(finish), junction)
	return append([]Component{part}, wakeParts(b, shape, part)...)
}

// wakeParts returns the base and the upsweep of a body, both sides together when it is mirrored.
func wakeParts(b Body, shape BodyShape, skin Component) []Component {
	var parts []Component
	sides := 1.0
	if b.Mirrored {
		sides = 2
	}
	if base := usable(b.BaseArea); base > 0 {
		friction := float64(skin.Friction*shape.WettedArea) / sides
		parts = append(parts, Component{
			Name: b.Name + " base", Kind: KindBase, Area: float64(sides * BaseDrag(friction, base)), spread: spreadBase,
			Source: "Hoerner, Fluid-Dynamic Drag (from memory)",
		})
	}
	if upsweep := Upsweep(b); upsweep > 0 {
		parts = append(parts, Component{
			Name: b.Name + " upsweep", Kind: KindUpsweep, Area: float64(sides * UpsweepDrag(upsweep, shape.CrossSection)), spread: spreadUpsweep,
			Source: "Raymer, Eq. 12.36",
		})
	}
	return parts
}

// podJunction returns the junction of a pod; an unknown mount counts as a short pylon.
func podJunction(mount string) Junction {
	if j, ok := junctionPod[mount]; ok {
		return j
	}
	return junctionPod[MountNear]
}

// hingeSource is where the drag of hinge lines comes from.
const hingeSource = "control gaps 0.0002 of the flapped area (from memory)"

// hingeArea returns drag over dynamic pressure of the gaps ahead of a surface's controls, m2.
//
// Formula: D/q = 0.0002 cos^2(sweep) Sf; where Sf area of the surface along the span of the control, m2.
// Valid for: unsealed hinge gaps of usual width; all-moving surfaces have none.
// Source: common practice in conceptual design, from memory.
func hingeArea(s planform.Surface, m planform.Measures) float64 {
	if s.AllMoving {
		return 0
	}
	run := 0.0
	for _, control := range s.Controls {
		run += max(0, min(1, control.Outer)-max(0, control.Inner))
	}
	slant := elementary.Cos(m.QuarterChordSweep)
	return usable(float64(float64(0.0002*float64(slant*slant)) * float64(min(1, run)*m.ExposedArea)))
}
