package footprint

import (
	"cmp"
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/field"
)

const (
	// side is how many falls go on in turns, so that the processor need not wait for the square roots of one.
	side = 8
	// longStep is a step over the time in which weight and forces would stop the model, and mostStep the longest, s.
	longStep, mostStep = 0.36, 1.0
	// mostSteps bounds the steps of a law until the ground.
	mostSteps = 2000
	// checks is how many samples are flown in fine steps too.
	checks = 8
	// mostError is the mean distance between the two up to which the steps are not halved, m, and halvings how often they may be. A distance of any
	// direction adds to the size of a cloud by its square: 2.5 m make one of 40 m wider by 0.1 m.
	mostError, halvings = 2.5, 3
)

// falls is what the samples of an estimate have in common.
type falls struct {
	plan    *Plan
	draws   *Draws
	route   route
	wind    air
	gravity float64
	perMass float64 // rho S/(2 m), 1/m
	longest float64 // step, s
	every   int     // one of so many samples is checked
	cloud   *Cloud
	apart   [checks]float64 // distances of the samples checked, m
}

// Estimate flies the samples in long steps, and a few of them as Sample does, too: Cloud.Error tells the mean distance between the two. Where that is
// greater than 2.5 m the steps are halved, at most three times. A fall that the steps cannot follow is flown as Sample does.
//
// The samples are those of Sample but for at most half a part in 4,096 of each value, and at most 4,096. With placesOnly the cloud knows places alone;
// they are the same. Nothing hangs on how many falls are flown side by side.
// Valid for: as Loss.From; PathDamping is not read. Source: course.halfway; points as Sample.
func (p *Plan) Estimate(draws *Draws, placesOnly bool) (Cloud, error) {
	if err := p.Check(); err != nil {
		return Cloud{}, err
	}
	count := p.Samples
	if count == 0 {
		count = defaultSamples
	}
	count = min(count, MostDraws)
	cloud := Cloud{Margin: p.margin(), width: p.Model.Width, mass: p.Model.Mass, places: make([]field.Point, count)}
	if !placesOnly {
		cloud.Impacts = make([]Impact, count)
	}
	s := falls{
		plan: p, draws: draws, route: newRoute(p.Path), wind: air{profile: p.Wind.Profile, table: tabled(p.Wind.Profile, p.highest())},
		gravity: p.gravity(), perMass: p.Density * p.Model.Area / (2 * p.Model.Mass), every: max(1, count/checks), cloud: &cloud,
	}
	s.longest = min(float64(longStep*s.pace())/s.gravity, mostStep)
	err := s.fly(count)
	for range halvings {
		if err != nil || cloud.Error <= mostError {
			break
		}
		s.longest /= 2
		err = s.fly(count)
	}
	for i := range cloud.Impacts {
		if !cloud.Impacts[i].Landed {
			cloud.Aloft++
		}
	}
	return cloud, err
}

// fly flies every sample, in shares side by side.
func (s *falls) fly(count int) error {
	var faults [shares]error
	ended := make(chan struct{})
	for share := range shares {
		go func() {
			faults[share] = s.share(count*share/shares, count*(share+1)/shares)
			ended <- struct{}{}
		}()
	}
	for range shares {
		<-ended
	}
	sum := 0.0
	for _, apart := range s.apart {
		sum += apart
	}
	s.cloud.Error = sum / float64(min(checks, count))
	return cmp.Or(faults[:]...)
}

// share flies the samples from one number to another, several in turns.
func (s *falls) share(low, high int) error {
	f, loss := newFlight(), s.plan.Loss
	f.coarse, f.table = true, s.wind.table
	var room [side]course
	active, next := room[:0], low
	for next < high || len(active) > 0 {
		for ; len(active) < side && next < high; next++ {
			active = active[:len(active)+1]
			s.begin(&active[len(active)-1], &loss, next)
		}
		for i := range active {
			active[i].halfway(s)
		}
		for i := len(active) - 1; i >= 0; i-- {
			c := &active[i]
			landed := c.onward(s)
			if !landed && (c.left > 0 || c.follow(s)) {
				continue
			}
			if err := s.end(c, &loss, f, landed); err != nil {
				return err
			}
			last := len(active) - 1
			active[i] = active[last]
			active = active[:last]
		}
	}
	return nil
}

// pace returns the airspeed by which steps are measured, m/s: that of the path, or at which the last law carries the weight where that is less.
func (s *falls) pace() float64 {
	loss, room := s.plan.Loss, [3]law{}
	laws := loss.laws(s.plan.Path[0], room[:0])
	last := &laws[len(laws)-1]
	carried := float64(last.lift * elementary.Cos(last.bank.to))
	if last.lift == 0 {
		carried = loss.Model.DragArea / loss.Model.Area
	}
	return min(s.plan.Path[0].Speed, math.Sqrt(s.gravity/float64(s.perMass*carried)))
}

// vary sets the loss to sample i and returns its state.
func (s *falls) vary(loss *Loss, i int) Release {
	var at point
	s.draws.at(s.plan, i, &at)
	return s.plan.vary(loss, &s.route, &at)
}

// begin puts a course at its release.
func (s *falls) begin(c *course, loss *Loss, i int) {
	r := s.vary(loss, i)
	*c = course{sample: i, law: -1}
	if loss.Action == FlyAway {
		r, c.elapsed = loss.flyOff(r)
	}
	velocity, toward, m := r.velocity(), loss.Wind.prepare().toward, &loss.Model
	c.from, c.z, c.u, c.v, c.w = r.Place, r.Height, velocity.X, velocity.Y, velocity.Z
	c.windX, c.windY, c.factor, c.base = toward.X, toward.Y, s.wind.factor(r.Height), r.Speed
	c.wild = 4 * (float64(r.Speed*r.Speed) + float64(2*s.gravity*r.Height))
	c.cd0, c.induced, c.stopped, c.tumble = m.CD0, m.InducedFactor, m.StoppedDrag, m.DragArea/m.Area
	c.count = len(loss.laws(r, c.laws[:0]))
	if m.ThrustSlope > 0 {
		if throttle := loss.thrustOf(r, loss.liftOf(r, r.Bank)); throttle > 0 {
			c.slope = m.ThrustSlope / throttle
		}
	}
	c.follow(s)
}

// end keeps how a course ended.
func (s *falls) end(c *course, loss *Loss, f *flight, landed bool) error {
	impact := c.impact(s.plan.Model.Mass)
	followed := landed && float64(c.u*c.u)+float64(c.v*c.v)+float64(c.w*c.w) < c.wild
	number := c.sample / s.every
	check := c.sample%s.every == 0 && number < checks
	if check || !followed {
		fine, err := loss.fall(f, s.vary(loss, c.sample))
		if err != nil {
			return err
		}
		if !followed {
			impact = fine
		}
		if check {
			s.apart[number] = fine.Place.Distance(impact.Place)
		}
	}
	s.cloud.places[c.sample] = impact.Place
	if s.cloud.Impacts != nil {
		impact.Angle = elementary.Atan2(-impact.Velocity.Z, impact.Velocity.Level())
		s.cloud.Impacts[c.sample] = impact
	}
	return nil
}

// impact returns where and how a course ends, but for the angle.
func (c *course) impact(mass float64) Impact {
	ground := Vector{c.u + float64(c.windX*c.factor), c.v + float64(c.windY*c.factor), c.w}
	way := field.Point{X: c.x + float64(c.windX*c.drift), Y: c.y + float64(c.windY*c.drift)}
	speed := ground.Length()
	return Impact{
		Place: c.from.Plus(way), Time: c.elapsed + c.time, Velocity: ground, Speed: speed, Energy: KineticEnergy(mass, speed), Landed: true,
	}
}
