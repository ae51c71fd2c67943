package assess

import (
	"math/bits"
	"strings"
)

// candidate is a document with a change, walked through the sections that some findings need.
type candidate struct {
	pass   *pass
	needed uint64   // sections, one bit each
	names  []string // inputs that were changed
}

// try walks a document with changes through the sections that are needed and that the changes come to; moves keeps it ready to be moved.
func (r *remedySearch) try(changes []change, needed uint64, moves bool) *candidate {
	in := copyInput(r.in)
	c := &candidate{needed: needed}
	asked := uint64(0)
	for _, one := range changes {
		one.set(&in)
		c.names = append(c.names, one.spot.paths...)
		asked |= one.spot.asked
	}
	c.pass = r.base.changed(&in, r.geometryOf(&in, changes), asked, moves)
	c.walk(c.pass)
	if moves && c.pass.fault == nil {
		c.pass.meetUnchanged(r.base)
	}
	return c
}

// neededFor returns the sections that conclude some findings, and all that compute what those touch, one bit each.
func (r *remedySearch) neededFor(findings []int) uint64 {
	needed, touched := uint64(0), parts(0)
	for _, i := range findings {
		needed |= 1 << r.home[i]
	}
	for at := len(sections) - 1; at >= 0; at-- {
		if s := &sections[at]; needed>>at&1 == 1 || s.computes&touched != 0 {
			needed |= 1 << at
			touched |= s.touches()
		}
	}
	return needed
}

// walk asks the sections of a pass that the candidate needs.
func (c *candidate) walk(p *pass) {
	last := bits.Len64(c.needed)
	for ; p.at < last; p.at++ {
		if p.resumes != nil {
			p.resumes.keep(p)
		}
		if c.needed>>p.at&1 == 1 && !p.cut.spares(p) {
			sections[p.at].run(p)
		}
	}
	if p.resumes != nil {
		p.resumes.keep(p)
	}
}

// finding returns the candidate's answer to one question; nil where there is none, or where the change made a document that cannot be.
func (c *candidate) finding(id string) *Finding { return c.pass.answered(id) }

// answered returns the finding of a pass with an id; nil where there is none.
func (p *pass) answered(id string) *Finding {
	if p.fault != nil {
		return nil
	}
	if i := indexOf(p.results, id); i >= 0 {
		return &p.results[i]
	}
	return nil
}

// moved walks the passes in which one error of the candidate is moved up and down by its spread.
func (c *candidate) moved(source errorSource) (up, down *pass) {
	up, down = c.pass.movingSource(source, 1), c.pass.movingSource(source, -1)
	c.walk(up)
	c.walk(down)
	return up, down
}

// step returns what one spread of an error does to the value of a finding at the candidate.
func (c *candidate) step(source errorSource, f *Finding) float64 {
	up, down := c.moved(source)
	step := stepOf(f.Value, up.valueOf(f.ID), down.valueOf(f.ID))
	up.release()
	down.release()
	return step
}

// valueOf returns the value of a finding; nil where there is none.
func (p *pass) valueOf(id string) *float64 {
	if f := p.answered(id); f != nil {
		return f.Value
	}
	return nil
}

// changes reports whether an input is among those changed.
func (c *candidate) changes(name string) bool {
	for _, path := range c.names {
		if path == name || strings.HasPrefix(name, path+".") || strings.HasPrefix(name, path+"[") {
			return true
		}
	}
	return false
}

// geometryOf returns the geometry of a changed document. Knobs leave surfaces, bodies and wheels as they are; a throw moves no lift and an antenna no
// lattice, so that both are written into a copy.
func (r *remedySearch) geometryOf(in *Input, changes []change) *Geometry {
	throws, antennas := false, false
	for _, one := range changes {
		throws, antennas = throws || one.spot.throws, antennas || one.spot.antennas
	}
	if !throws && !antennas {
		return r.whole
	}
	g := *r.whole
	if antennas {
		g.antennas = install(in.Model.Radio.Antennas)
	}
	if throws {
		g.lattice, g.ground = withThrows(g.lattice, in.Model.Surfaces), withThrows(g.ground, in.Model.Surfaces)
	}
	return &g
}
