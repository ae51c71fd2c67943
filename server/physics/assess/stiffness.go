package assess

import (
	"pitgate/server/physics/stability"
	"pitgate/server/physics/structure"
)

// spreadShear is how far the table's shear modulus of a skin may be off, relative.
const spreadShear = 0.30

// twistStiffness returns the moment at the tip of one wing panel over the twist it causes there, N m/rad: as measured, else from the closed
// box that carries torsion.
func (p *pass) twistStiffness(n *need) float64 {
	const measured = "model.structure.wingTwistStiffnessNewtonMetersPerRadian"
	given := p.structure()
	if value, ok := p.read(measured, given.WingTwistStiffnessNewtonMetersPerRadian); ok {
		return max(0, value)
	}
	if given.TorsionBox == nil {
		n.lack(measured, "model.structure.torsionBox")
		return 0
	}
	return p.boxStiffness(given.TorsionBox, n)
}

func (p *pass) boxStiffness(b *TorsionBox, n *need) float64 {
	const path = "model.structure.torsionBox."
	box := stability.Box{
		Width: n.quantity(path+"widthMeters", b.WidthMeters), Depth: n.quantity(path+"depthMeters", b.DepthMeters),
		Wall: n.quantity(path+"skinThicknessMeters", b.SkinThicknessMeters),
	}
	material, ok := structure.FindMaterial(b.Material)
	if !ok {
		n.lack(path + "material")
	}
	if !n.met() {
		return 0
	}
	p.note(path + "material")
	box.ShearModulus = material.ShearModulus * p.factor("method: shear modulus of the skin", spreadShear)
	stiffness, err := box.TwistStiffness(p.wing.span / 2)
	if err != nil {
		n.lack(path + "widthMeters")
	}
	return stiffness
}
