package assess

import (
	"pitgate/server/physics/loads"
	"pitgate/server/physics/stability"
	"pitgate/server/physics/structure"
)

// sizes gathers how far the sizes of a part may be off, which its method's spread then carries.
type sizes struct {
	worst     float64 // relative
	estimated bool
}

// spread returns the spread of a result whose method is off by so much and that goes with a power of the sizes.
func (s sizes) spread(method, power float64) float64 { return root(method, power*s.worst) }

// take keeps the spread of one quantity.
func (s *sizes) take(name string, q *Quantity, value float64) {
	if value > 0 && q != nil {
		s.worst = max(s.worst, q.Deviation(name)/value)
		s.estimated = s.estimated || q.estimated()
	}
}

// size reads a size that moves nothing by itself.
func (n *need) size(s *sizes, name string, q *Quantity) float64 {
	value := n.quantity(name, q)
	s.take(name, q, value)
	return value
}

// loose reads a size that may be absent: zero then.
func (n *need) loose(s *sizes, name string, q *Quantity) float64 {
	value, _ := n.pass.read(name, q)
	s.take(name, q, value)
	return value
}

var sparShapes = pairings[SparShape, structure.Shape]{
	{SparShapeTube, structure.ShapeTube}, {SparShapeCapsAndWeb, structure.ShapeCapsAndWeb}, {SparShapeSolid, structure.ShapeSolid},
	{SparShapeSheet, structure.ShapeSheet}, {SparShapeFoamCore, structure.ShapeFoamCore},
}

// part reads one part of a spar or joiner and names what it lacks.
func (n *need) part(s *sizes, path string, d *SparPart) structure.Part {
	part := structure.Part{Shape: sparShapes.of(d.Shape), OffsetZ: orElse(d.OffsetZMeters, 0), KnockDown: orElse(d.KnockDownRatio, 0)}
	material, known := structure.FindMaterial(d.Material)
	if part.Material = material; !known {
		n.lack(path + ".material")
	}
	n.pass.note(path + ".material")
	switch part.Shape {
	case structure.ShapeTube:
		part.Outer = n.size(s, path+".outerDiameterMeters", d.OuterDiameterMeters)
		part.Wall = n.loose(s, path+".wallThicknessMeters", d.WallThicknessMeters)
	case structure.ShapeCapsAndWeb:
		part.Width, part.Depth = n.size(s, path+".widthMeters", d.WidthMeters), n.size(s, path+".depthMeters", d.DepthMeters)
		part.Cap, part.Web = n.size(s, path+".capThicknessMeters", d.CapThicknessMeters), n.loose(s, path+".webThicknessMeters", d.WebThicknessMeters)
	case structure.ShapeSheet:
		part.Width, part.Wall = n.size(s, path+".widthMeters", d.WidthMeters), n.size(s, path+".wallThicknessMeters", d.WallThicknessMeters)
		part.Depth = n.loose(s, path+".depthMeters", d.DepthMeters)
	case structure.ShapeSolid, structure.ShapeFoamCore:
		part.Width, part.Depth = n.size(s, path+".widthMeters", d.WidthMeters), n.size(s, path+".depthMeters", d.DepthMeters)
	default:
		n.lack(path + ".shape")
	}
	return part
}

// carrying is what carries the wing, as the base pass read it: no pass moves a single size.
type carrying struct {
	missing       []string // of the spar
	stations      []structure.Station
	spar          sizes
	joinerMissing []string
	joiner        structure.Joiner
	joint         sizes
	items         []loads.Item
	twisted       bool // the spar carries the twist
	box           stability.Box
	boxMaterial   structure.Material
	boxMissing    []string
	skin          sizes
	boxRead       []string
	sparRead      []string
	joinerRead    []string
}

// carried returns what carries the wing, read once.
func (p *pass) carried() *carrying {
	if p.drawing.carrying != nil {
		return p.drawing.carrying
	}
	c := &carrying{}
	p.drawing.carrying = c
	p.aside = true
	defer func() { p.aside = false }()
	s := p.structure()
	p.readSpar(c, s.WingSpar)
	p.readBox(c, s.TorsionBox)
	p.readJoiner(c, s.Joiner)
	c.items = p.wingItems()
	return c
}

// structure returns the structure of the document, empty when there is none.
func (p *pass) structure() *Structure {
	if p.in.Model == nil || p.in.Model.Structure == nil {
		return &Structure{}
	}
	return p.in.Model.Structure
}

func (p *pass) readSpar(c *carrying, list []SparStation) {
	n, mark := p.need(), p.mark()
	c.stations = n.sparStations(&c.spar, sparPath, list, p.wing.span/2)
	c.missing, c.sparRead = n.missing, p.since(mark)
}

// readBox reads the closed box that carries the twist; without a whole one the spar carries it.
func (p *pass) readBox(c *carrying, b *TorsionBox) {
	const path = boxPath
	c.twisted = true
	if b == nil {
		return
	}
	n, mark := p.need(), p.mark()
	material, known := structure.FindMaterial(b.Material)
	if c.boxMaterial = material; !known {
		n.lack(path + ".material")
	}
	p.note(path + ".material")
	c.box = stability.Box{
		Width: n.size(&c.skin, path+".widthMeters", b.WidthMeters), Depth: n.size(&c.skin, path+".depthMeters", b.DepthMeters),
		Wall: n.size(&c.skin, path+".skinThicknessMeters", b.SkinThicknessMeters), ShearModulus: c.boxMaterial.ShearModulus,
	}
	c.twisted, c.boxMissing, c.boxRead = !n.met(), n.missing, p.since(mark)
}

func (p *pass) readJoiner(c *carrying, j *Joiner) {
	n, mark := p.need(), p.mark()
	switch {
	case j == nil:
		n.lack(joinerPath)
	case j.Part == nil:
		n.lack(joinerPath + ".part")
	default:
		c.joiner.Part = n.part(&c.joint, joinerPath+".part", j.Part)
		c.joiner.Engaged = n.size(&c.joint, joinerPath+".engagedLengthMeters", j.EngagedLengthMeters)
	}
	c.joinerMissing, c.joinerRead = n.missing, p.since(mark)
}

// wingItems spreads the wing's own mass, which relieves its spar; none where it is not given, which is cautious.
func (p *pass) wingItems() []loads.Item {
	mass, _ := p.read(at(surfacesPath, p.whole.main)+".massKg", p.in.Model.Surfaces[p.whole.main].MassKg)
	return p.spreadMass(p.whole.main, mass)
}

// spreadMass spreads the mass of a surface over one side; none for none.
func (p *pass) spreadMass(index int, mass float64) []loads.Item {
	const strips, middle = 12, 0.4
	if !(mass > 0) {
		return nil
	}
	var cuts []loads.Cut
	for _, s := range p.whole.surfaces[index].Stations {
		cuts = append(cuts, loads.Cut{Y: s.Y, Chord: s.Chord})
	}
	items, err := loads.SpreadMass(cuts, mass, strips, middle, func(float64) float64 { return 0 })
	if err != nil {
		return nil
	}
	return items
}

// strength returns 1, or 1 moved by the spread of a strength that goes with a power of the sizes.
func (p *pass) strength(name string, s sizes, method, power float64) float64 {
	p.meet(uncertain{name: name, value: 1, spread: s.spread(method, power), estimated: s.estimated, method: true})
	return 1 + p.shift(name)
}
