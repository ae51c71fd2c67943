package assess

import (
	"strings"

	"pitgate/server/physics/stability"
)

// shearModulus is the shear modulus in the plane of a skin, Pa, by a word in its material's name; the first that fits counts.
//
// Valid for: skins laid straight along and across the span, the weaker way; cloth laid at 45 degrees is several times stiffer.
// Source: textbooks of wood and of composite materials, from memory.
var shearModuli = []struct {
	word    string
	modulus float64
}{
	{"carbon", 4.5e9}, {"aramid", 1.8e9}, {"glass", 3.5e9}, {"plywood", 0.65e9}, {"ply", 0.65e9}, {"birch", 0.9e9}, {"spruce", 0.6e9}, {"obechi", 0.4e9},
	{"balsa", 0.15e9},
}

// spreadShear is how far such a modulus may be off, relative.
const spreadShear = 0.30

func shearModulus(material string) (float64, bool) {
	for _, known := range shearModuli {
		if strings.Contains(strings.ToLower(material), known.word) {
			return known.modulus, true
		}
	}
	return 0, false
}

// twistStiffness returns the moment at the tip of one wing panel over the twist it causes there, N m/rad: as measured, else from the closed
// box that carries torsion.
func (p *pass) twistStiffness(n *need) float64 {
	const measured = "model.structure.wingTwistStiffnessNewtonMetersPerRadian"
	structure := &Structure{}
	if p.in.Model != nil && p.in.Model.Structure != nil {
		structure = p.in.Model.Structure
	}
	if value, ok := p.read(measured, structure.WingTwistStiffnessNewtonMetersPerRadian); ok {
		return max(0, value)
	}
	if structure.TorsionBox == nil {
		n.lack(measured, "model.structure.torsionBox")
		return 0
	}
	return p.boxStiffness(structure.TorsionBox, n)
}

func (p *pass) boxStiffness(b *TorsionBox, n *need) float64 {
	const path = "model.structure.torsionBox."
	box := stability.Box{
		Width: n.quantity(path+"widthMeters", b.WidthMeters), Depth: n.quantity(path+"depthMeters", b.DepthMeters),
		Wall: n.quantity(path+"skinThicknessMeters", b.SkinThicknessMeters),
	}
	modulus, ok := shearModulus(b.Material)
	if !ok {
		n.lack(path + "material")
	}
	if !n.met() {
		return 0
	}
	p.note(path + "material")
	box.ShearModulus = modulus * p.factor("method: shear modulus of the skin", spreadShear)
	stiffness, err := box.TwistStiffness(p.wing.span / 2)
	if err != nil {
		n.lack(path + "widthMeters")
	}
	return stiffness
}
