package structure

// Section is what stacked parts are together.
type Section struct {
	Bending float64 // stiffness E I about the neutral axis, N m2
	Axial   float64 // stiffness E A, N
	Neutral float64 // height of the neutral axis above the spar's middle, m
	Shear   float64 // stiffness of what carries shear, G A, N: what the shear force is shared by
	Parts   []PartSection
}

// PartSection is one part within the section: stresses for a bending moment of 1 N m tip up and a shear force of 1 N.
type PartSection struct {
	Top, Bottom float64 // stress in the highest and lowest fibre, Pa per N m, tension positive
	Shear       float64 // greatest shear stress, Pa per N; 0 for a part that carries none
}

// Measure returns stiffness and stresses of stacked parts that bend together. Errors name the impossible field; there must be a part.
//
// Formula: z_0 = sum E A z/sum E A, E I = sum E (I + A (z - z_0)^2), stress = -E (z - z_0) M/(E I); shear force shared as G A of webs, tubes and solid parts.
// Valid for: plane sections stay plane; linear materials; parts joined along their length.
// Source: transformed-section method, in any text on strength of materials.
func Measure(parts []Part) (Section, error) {
	if err := checkPositive(named{"count of parts", float64(len(parts))}); err != nil {
		return Section{}, err
	}
	s := Section{Parts: make([]PartSection, len(parts))}
	first := 0.0
	for _, p := range parts {
		if err := p.check(); err != nil {
			return Section{}, err
		}
		for _, q := range p.pieces() {
			s.Axial += float64(p.Material.Modulus * q.area)
			first += float64(float64(p.Material.Modulus*q.area) * q.z)
		}
		s.Shear += float64(p.Material.ShearModulus * p.shearArea())
	}
	s.Neutral = first / s.Axial
	for _, p := range parts {
		for _, q := range p.pieces() {
			arm := q.z - s.Neutral
			s.Bending += float64(p.Material.Modulus * (q.inertia + float64(q.area*float64(arm*arm))))
		}
	}
	s.setStresses(parts)
	return s, s.checkResult()
}

func (s *Section) setStresses(parts []Part) {
	for i, p := range parts {
		top, bottom := p.ends()
		s.Parts[i] = PartSection{
			Top:    -p.Material.Modulus * (top - s.Neutral) / s.Bending,
			Bottom: -p.Material.Modulus * (bottom - s.Neutral) / s.Bending,
		}
		if p.shearArea() > 0 {
			s.Parts[i].Shear = p.Material.ShearModulus / s.Shear
		}
	}
}

func (s *Section) checkResult() error {
	for _, p := range s.Parts {
		if err := checkResult(p.Top, p.Bottom, p.Shear); err != nil {
			return err
		}
	}
	return checkResult(s.Bending, s.Axial, s.Neutral, s.Shear)
}
