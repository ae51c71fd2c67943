package assess

import "math"

const (
	// heavyVariance is the part of a finding's variance as the document stands at which no further error is moved both ways at a change.
	heavyVariance = 0.99
	// lightVariance is the part at which none is moved at all: the step of such an error is taken as the document stands.
	lightVariance = 0.999
	// nearLimit is how near, in parts of the margin asked for, a finding other than that to be mended lies to its limit for light errors to be moved.
	nearLimit = 0.1
)

// leastSteps are what one spread of an error does at least to a finding's value, of those that are moved both ways and of those that are moved one way.
type leastSteps struct{ heavy, light float64 }

// leastStepsOf tells the errors that carry a finding's variance from those that do not; all do where it has no number.
func leastStepsOf(f *Finding, effects []effect) leastSteps {
	if f.Value == nil {
		return leastSteps{}
	}
	least, sum, whole := leastSteps{math.Inf(1), math.Inf(1)}, 0.0, deviationOf(effects)
	whole = float64(whole * whole)
	for _, e := range effects {
		if sum < heavyVariance*whole {
			least.heavy = math.Abs(e.step)
		}
		if sum < lightVariance*whole {
			least.light = math.Abs(e.step)
		}
		sum += float64(e.step * e.step)
	}
	return least
}

// burden is how much of a finding's spread is an error's.
type burden uint8

const (
	burdenNone burden = iota
	burdenRest
	burdenLight
	burdenHeavy
)

// burdenOf returns how much an error weighs with a finding as the document stands. What is changed, or comes with the change, may weigh anything.
func (r *remedySearch) burdenOf(c *candidate, name string, i int) (of burden, step float64) {
	steps := r.steps[name]
	if steps == nil || c.changes(name) {
		return burdenHeavy, 0
	}
	step = math.Abs(steps[i])
	switch least := r.carry[i]; {
	case r.base.results[i].Value == nil:
		return burdenHeavy, 0
	case step == 0:
		return burdenNone, 0
	case step >= least.heavy:
		return burdenHeavy, step
	case step >= least.light:
		return burdenLight, step
	default:
		return burdenRest, step
	}
}

// spreadsAt returns one standard deviation of some findings at a candidate. The errors that carry it as the document stands, and those that are changed or
// that only the changed document has, are moved there both ways; light ones are moved one way, for the finding to be mended and for those near
// their limits. What is left keeps its step.
func (r *remedySearch) spreadsAt(c *candidate, t *target, asked []int) []float64 {
	squares := make([]float64, len(asked))
	sources := c.pass.sources()
	for s := range sources {
		r.moveHeavy(c, &sources[s], asked, squares)
	}
	var near []int
	for k, i := range asked {
		class, f := r.classOf(i), c.finding(r.base.results[i].ID)
		if spread := math.Sqrt(squares[k]); i == t.at || math.Abs(class.height(f, spread)) < nearLimit*class.quantile*spread {
			near = append(near, k)
		}
	}
	for s := range sources {
		r.moveLight(c, &sources[s], asked, near, squares)
	}
	for k := range squares {
		squares[k] = math.Sqrt(max(0, squares[k]))
	}
	return squares
}

// moveHeavy moves an error both ways for the findings with which it is heavy, and takes its step with the others as the document stands.
func (r *remedySearch) moveHeavy(c *candidate, source *errorSource, asked []int, squares []float64) {
	c.needed = 0
	for k, i := range asked {
		of, step := r.burdenOf(c, source.input.name, i)
		if of == burdenHeavy {
			c.needed |= r.needs[i]
		} else {
			squares[k] += float64(step * step)
		}
	}
	if c.needed == 0 {
		return
	}
	up, down := c.moved(*source)
	for k, i := range asked {
		if of, _ := r.burdenOf(c, source.input.name, i); of == burdenHeavy {
			id := r.base.results[i].ID
			step := stepOf(c.pass.valueOf(id), up.valueOf(id), down.valueOf(id))
			squares[k] += float64(step * step)
		}
	}
	up.release()
	down.release()
}

// moveLight moves an error one way for those of the findings with which it is light, and takes its step there in place of that as the document stands.
func (r *remedySearch) moveLight(c *candidate, source *errorSource, asked, near []int, squares []float64) {
	c.needed = 0
	for _, k := range near {
		if of, _ := r.burdenOf(c, source.input.name, asked[k]); of == burdenLight {
			c.needed |= r.needs[asked[k]]
		}
	}
	if c.needed == 0 {
		return
	}
	up := c.pass.movingSource(*source, 1)
	c.walk(up)
	for _, k := range near {
		if of, was := r.burdenOf(c, source.input.name, asked[k]); of == burdenLight {
			id := r.base.results[asked[k]].ID
			if value := up.valueOf(id); value != nil {
				step := stepOf(c.pass.valueOf(id), value, nil)
				squares[k] += float64(step*step) - float64(was*was)
			}
		}
	}
	up.release()
}
