package assess

import (
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/loads"
	"pitgate/server/physics/structure"
)

// provenNote says what a sandbag test held, and what to think of it beside the designer's figure and the calculation.
func (p *pass) provenNote(proof float64) string {
	if !p.base() {
		return ""
	}
	note := say("A sandbag test held a load factor of %.1f; %s.", proof, p.askedWords())
	calculated := p.calculated()
	permitted, err := structure.Decide(structure.Evidence{Calculated: calculated, Design: orElse(p.structure().DesignLoadFactor, 0), Proof: proof})
	switch {
	case err != nil:
	case permitted.TestBeyondCalculation:
		note += p.inWords(" The calculation gives %.1f only: look at the sizes and materials that it was told.", calculated)
	case calculated > 0:
		note += p.inWords(" The calculation gives %.1f.", calculated)
	}
	if err == nil && permitted.BelowDesign {
		note += p.inWords(" That is less than the %.1f that it was designed for: test further or fly to the test.", *p.structure().DesignLoadFactor)
	}
	return note
}

// calculated returns the load factor that the spar stands by calculation, 0 where that is not known.
func (p *pass) calculated() float64 {
	if len(p.carried().missing) > 0 || !(p.top > 0) {
		return 0
	}
	if s := p.sparStands(); !s.failed && !s.result.ShearUncarried {
		return max(0, s.value)
	}
	return 0
}

// tellPermitted tells what the load factor that the wing stands permits and what it rests on.
func (p *pass) tellPermitted(tested bool) {
	if !p.tells() {
		return
	}
	stands, basis, path := p.loads.stands, structure.BasisCalculated, sparPath
	if tested {
		basis, path = structure.BasisTested, proofPath
	}
	p.tellText("loads.basis", string(basis), path)
	p.tell("loads.pull_up_radius", structure.PullUp(p.top, stands, p.stallLoad(p.top)).PullUpRadius)
	p.tell("loads.pull_up_speed", loads.PullUpSpeed(p.circuitRadius(), stands))
	p.tell("loads.full_pull_speed", p.fullPullSpeed())
	if mass, ok := p.in.Model.Surfaces[p.whole.main].MassKg.given(); ok {
		if bags, err := structure.SandbagMass(p.loads.asked, p.mass.takeoff, mass); err == nil {
			p.tell("loads.sandbag_mass", bags, at(surfacesPath, p.whole.main)+".massKg")
		}
	}
}

// circuitRadius returns the radius of a level turn as the circuit is planned, m.
func (p *pass) circuitRadius() float64 {
	return p.stall.circuitSpeed * p.stall.circuitSpeed / (loads.StandardGravity * elementary.Tan(p.stall.bank))
}

// fullPullSpeed returns the speed up to which the wing stalls before a full pull overloads it, m/s; 0 where that is not known.
func (p *pass) fullPullSpeed() float64 { return p.stall.clean * math.Sqrt(p.loads.stands) }

// given returns the value of a quantity, and whether there is one.
func (q *Quantity) given() (float64, bool) {
	if q == nil || q.Value == nil {
		return 0, false
	}
	return *q.Value, true
}

// drawSpanLoad draws what the wing carries along its span beside what Schrenk's approximation gives, and tells how far their root bendings agree.
func (p *pass) drawSpanLoad() {
	if !p.tells() || len(p.loads.missing) > 0 || !(p.top > 0) {
		return
	}
	speed, main := p.speedsAsked()[0], &p.whole.surfaces[p.whole.main]
	weight, pressure := float64(p.mass.takeoff*loads.StandardGravity), 0.5*p.air.state.Density*float64(speed*speed)
	strips, err := loads.FromLattice(p.whole.lattice, main.Name, weight, pressure, 0)
	if err != nil {
		return
	}
	lattice, force, bending := CurveSeries{Name: "Lattice"}, 0.0, 0.0
	for i := range strips {
		load := strips[i].Force.At(p.loads.asked)
		force, bending = force+load, bending+float64(load*strips[i].Y)
		lattice.add(strips[i].Y, load/strips[i].Width)
	}
	schrenk, root := p.schrenk(2 * force)
	if !(root > 0) {
		return
	}
	p.tell("loads.schrenk_ratio", bending/root)
	p.curves = append(p.curves, ReportCurve{
		ID: "loads.span", Title: "Lift along the span at the load factor asked for", XTitle: "Distance from the plane of symmetry", XUnit: "m",
		YTitle: "Lift per length", YUnit: "N/m", Series: []CurveSeries{lattice, schrenk},
		Note: p.inWords("At a load factor of %.1f and %.1f m/s; the lattice bends the root %.2f times as much as Schrenk's approximation for the same lift.", p.loads.asked, speed, bending/root),
	})
}

// schrenk returns Schrenk's loading for a lift of both sides and its bending at the root.
func (p *pass) schrenk(lift float64) (CurveSeries, float64) {
	const count = 40
	series, root := CurveSeries{Name: "Schrenk"}, 0.0
	var cuts []loads.Cut
	for _, s := range p.whole.surfaces[p.whole.main].Stations {
		cuts = append(cuts, loads.Cut{Y: s.Y, Chord: s.Chord})
	}
	strips, err := loads.SchrenkStrips(cuts, lift, count)
	if err != nil {
		return series, 0
	}
	for i := range strips {
		root += float64(strips[i].Force.PerLoad * strips[i].Y)
		series.add(strips[i].Y, strips[i].Force.PerLoad/strips[i].Width)
	}
	return series, root
}
