package motion

import (
	"errors"
	"math"
)

// Dimensions is the size of a State. Unused places stay zero.
const Dimensions = 6

// State is what the integrator carries: positions and speeds in an order the caller chooses.
type State [Dimensions]float64

// Rate returns the change of a state with time.
type Rate func(t float64, s State) State

// Integrator is the setting of the adaptive Dormand-Prince method.
type Integrator struct {
	Tolerance float64 // error allowed a step, relative and absolute; zero means 1e-8
	MaxStep   float64 // longest step, s; zero means none
	MaxSteps  int     // steps tried before giving up; zero means 20000
	// EndOnly keeps no step but the last: the solution then tells its end and its crossings, and At nothing before that step.
	EndOnly bool
	// Corner is a time at which the rate jumps or bends, where it is known: a step ends there instead of feeling its way past. Zero means none.
	Corner float64
	// FirstStep is tried first, and after a corner, s; zero means one guessed from the slopes, and after a corner from the steps before it.
	FirstStep float64
	// Places is how many places of the state are used, the first of them; zero means all.
	Places int
	// Room holds the steps of a solution and is used again by the next with the same one, which ends the use of the solution before; nil means room of
	// its own.
	Room *Room
}

// Room is memory for the steps of one solution after another. A launch keeps the steps of all its parts in it.
type Room struct {
	pieces []piece
	kept   int // pieces of solutions that stay in use
	path   []PathPoint
}

// keep keeps the pieces of the last solution when the next is made.
func (r *Room) keep(s *Solution) {
	if r == nil || len(s.pieces) == 0 {
		return
	}
	if all := r.pieces[:cap(r.pieces)]; r.kept < len(all) && &all[r.kept] == &s.pieces[0] {
		r.kept += len(s.pieces)
	}
}

// Errors of Solve.
var (
	ErrStepTooSmall = errors.New("motion: step size too small: the equations are not smooth or not finite")
	ErrTooManySteps = errors.New("motion: too many steps")
)

// stages are the slopes of one step.
type stages [7]State

// Solve integrates from a state at a time to an end time or to the first terminal event.
func (in Integrator) Solve(rate Rate, start float64, state State, end float64, events ...Event) (Solution, error) {
	in = in.withDefaults(end - start)
	watch := newWatch(events, start, state)
	solution := Solution{start: start, end: start, first: state, last: state, pieces: in.pieces()}
	k := stages{rate(start, state)}
	step := in.FirstStep
	if !(step > 0) {
		step = in.firstStep(state, k[0], end-start)
	}
	refused := 0
	var cornered bool
	for range in.MaxSteps {
		if solution.end >= end {
			return solution, nil
		}
		step, cornered = in.toCorner(min(step, in.MaxStep), solution.end)
		last := solution.end+step >= end
		if last {
			step = end - solution.end
		}
		next, failure := attempt(rate, solution.end, &solution.last, step, &k, in.Places, in.Tolerance)
		if failure > 1 || math.IsNaN(failure) {
			step *= shrink(failure, refused)
			refused++
			if step < 1e-13*max(1, math.Abs(solution.end)) {
				return solution, ErrStepTooSmall
			}
			continue
		}
		if in.EndOnly {
			solution.pieces = solution.pieces[:0]
		}
		solution.add(step, &next, &k, in.Places)
		if last {
			solution.end = end
		}
		if watch.scan(&solution) {
			return solution, nil
		}
		k[0] = k[6]
		if cornered {
			solution.end = in.Corner
			k[0] = rate(solution.end, solution.last)
		}
		step *= grow(failure, refused)
		if cornered && in.FirstStep > 0 {
			step = min(step, in.FirstStep)
		}
		refused = 0
	}
	return solution, ErrTooManySteps
}

// pieces returns room for the steps.
func (in Integrator) pieces() []piece {
	count := 32
	if in.EndOnly {
		count = 1
	}
	if in.Room == nil {
		return make([]piece, 0, count)
	}
	if cap(in.Room.pieces)-in.Room.kept < count {
		in.Room.pieces, in.Room.kept = make([]piece, 0, max(2*count, 2*cap(in.Room.pieces))), 0
	}
	return in.Room.pieces[in.Room.kept:in.Room.kept]
}

// withDefaults fills in what is zero.
func (in Integrator) withDefaults(span float64) Integrator {
	if !(in.Tolerance > 0) {
		in.Tolerance = 1e-8
	}
	if !(in.MaxStep > 0) {
		in.MaxStep = max(span, 0)
	}
	if in.MaxSteps <= 0 {
		in.MaxSteps = 20000
	}
	if in.Places <= 0 {
		in.Places = Dimensions
	}
	return in
}

// firstStep guesses a first step from the size of the state and its slope.
func (in Integrator) firstStep(s, slope State, span float64) float64 {
	guess := span
	for i := range s {
		if rate := math.Abs(slope[i]); rate > 0 {
			guess = min(guess, 0.01*(1+math.Abs(s[i]))/rate)
		}
	}
	return max(guess, 1e-9*span)
}

// beforeCorner is how long before a corner the last step that belongs to the time before it ends, s.
const beforeCorner = 1e-9

// toCorner shortens a step from a time that would pass the corner, and one that would leave a sliver before it; it reports whether the step ends there.
func (in Integrator) toCorner(step, from float64) (float64, bool) {
	left := in.Corner - beforeCorner - from
	switch {
	case !(left > beforeCorner) || step < 0.6*left:
		return step, false
	case step < left:
		return float64(0.5 * left), false
	}
	return left, true
}

// grow returns the factor on the next step after an accepted one: by about the fifth root of the error of this method of fifth order, none after a step
// was refused.
func grow(failure float64, refused int) float64 {
	if refused > 0 {
		return min(1, 0.9/fifthRoot(max(failure, 1e-6)))
	}
	return min(4, 0.9/fifthRoot(max(failure, 1e-6)))
}

// shrink returns the factor on the step after a refused one. Where several are refused in a row the rate jumps, and its error falls slower than the fifth
// power of the step: then it is halved and more.
func shrink(failure float64, refused int) float64 {
	if math.IsNaN(failure) || math.IsInf(failure, 0) {
		return 0.1
	}
	factor := max(0.1, 0.9/fifthRoot(failure))
	if refused > 0 {
		return min(factor, 0.25)
	}
	return factor
}

// fifthRoot returns x to the power 3/16, near enough to the fifth root of errors and the same on every processor.
func fifthRoot(x float64) float64 {
	eighth := math.Sqrt(math.Sqrt(math.Sqrt(x)))
	return eighth * math.Sqrt(eighth)
}

// attempt makes one step of the first count places, fills in its slopes and returns the new state and the error over the tolerance.
func attempt(rate Rate, t float64, s *State, h float64, k *stages, count int, tolerance float64) (State, float64) {
	var y State
	for i := 0; i < count && i < Dimensions; i++ {
		y[i] = s[i] + float64(h*float64(a21*k[0][i]))
	}
	k[1] = rate(t+float64(c2*h), y)
	for i := 0; i < count && i < Dimensions; i++ {
		y[i] = s[i] + float64(h*(float64(a31*k[0][i])+float64(a32*k[1][i])))
	}
	k[2] = rate(t+float64(c3*h), y)
	for i := 0; i < count && i < Dimensions; i++ {
		y[i] = s[i] + float64(h*(float64(a41*k[0][i])+float64(a42*k[1][i])+float64(a43*k[2][i])))
	}
	k[3] = rate(t+float64(c4*h), y)
	for i := 0; i < count && i < Dimensions; i++ {
		y[i] = s[i] + float64(h*(float64(a51*k[0][i])+float64(a52*k[1][i])+float64(a53*k[2][i])+float64(a54*k[3][i])))
	}
	k[4] = rate(t+float64(c5*h), y)
	for i := 0; i < count && i < Dimensions; i++ {
		y[i] = s[i] + float64(h*(float64(a61*k[0][i])+float64(a62*k[1][i])+float64(a63*k[2][i])+float64(a64*k[3][i])+float64(a65*k[4][i])))
	}
	k[5] = rate(t+h, y)
	for i := 0; i < count && i < Dimensions; i++ {
		y[i] = s[i] + float64(h*(float64(a71*k[0][i])+float64(a73*k[2][i])+float64(a74*k[3][i])+float64(a75*k[4][i])+float64(a76*k[5][i])))
	}
	k[6] = rate(t+h, y)
	return y, failure(s, &y, h, k, count, tolerance)
}

// failure returns the largest error of a step in the first count places over its tolerance; not a number when a value is not.
func failure(s, y *State, h float64, k *stages, count int, tolerance float64) float64 {
	worst := 0.0
	for i := 0; i < count && i < Dimensions; i++ {
		e := h * (float64(e1*k[0][i]) + float64(e3*k[2][i]) + float64(e4*k[3][i]) + float64(e5*k[4][i]) + float64(e6*k[5][i]) + float64(e7*k[6][i]))
		scaled := math.Abs(e) / (tolerance + float64(tolerance*max(math.Abs(s[i]), math.Abs(y[i]))))
		if !(scaled <= worst) {
			worst = scaled
		}
		if math.IsNaN(scaled) {
			return math.NaN()
		}
	}
	return worst
}
