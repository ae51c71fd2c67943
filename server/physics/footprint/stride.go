package footprint

import (
	"errors"
	"math"

	"pitgate/server/physics/motion"
)

const (
	// stride is a step of a sampled fall over the time in which weight and forces would stop the model.
	stride = 0.5
	// longestStride and shortestStride bound the steps, s.
	longestStride, shortestStride = 1.0, 1e-4
	// mostStrides bounds the steps of one part of a fall.
	mostStrides = 100_000
)

// stride flies a law from a state in steps of the classical fourth order and reports whether the ground was reached: as follow, coarser and quicker.
//
//	h = 0.5 V/(|a| + g)
//
// where h is the step, V the airspeed and a the acceleration at its beginning: a third of a radian of a steep turn, at most a second. Right after a
// change of thrust or bank a step is no longer than half its time constant. Valid for: as Plan.Sample.
// Source: Kutta, Zeitschrift für Mathematik und Physik 46 (1901) 435.
func (f *flight) stride(part law, state *motion.State) (bool, error) {
	if !(part.lasts > 0) {
		return false, nil
	}
	f.take(part)
	end := min(f.time+part.lasts, longestFlight)
	rate := f.rate(f.time, *state)
	for range mostStrides {
		if !(f.time < end) {
			return false, nil
		}
		step := min(f.reach(&rate), end-f.time)
		next := f.advance(state, &rate, step)
		after := f.rate(f.time+step, next)
		if next[2] <= 0 {
			f.touch(state, &rate, &next, &after, step)
			return true, nil
		}
		f.time += step
		*state, rate = next, after
	}
	return false, errors.New("descent: the forces change too quickly for the time it takes")
}

// reach returns the step from where a rate was worked out last.
func (f *flight) reach(rate *motion.State) float64 {
	pull := math.Sqrt(float64(rate[3]*rate[3]) + float64(rate[4]*rate[4]) + float64(rate[5]*rate[5]))
	step := float64(stride*f.speed) / (pull + f.gravity)
	since := f.time - f.began
	step = f.law.thrust.limit(f.law.bank.limit(step, since), since)
	return min(max(step, shortestStride), longestStride)
}

// limit keeps a step short while the value changes.
func (a *approach) limit(step, since float64) float64 {
	if a.from == a.to || !(a.time > 0) {
		return step
	}
	return min(step, float64(0.5*(a.time+since)))
}

// advance returns the state a step later.
func (f *flight) advance(s, first *motion.State, step float64) motion.State {
	half := float64(0.5 * step)
	second := f.rate(f.time+half, moved(s, first, half))
	third := f.rate(f.time+half, moved(s, &second, half))
	fourth := f.rate(f.time+step, moved(s, &third, step))
	out := *s
	for i := range out {
		out[i] += float64(step / 6 * (first[i] + float64(2*(second[i]+third[i])) + fourth[i]))
	}
	return out
}

// moved returns a state moved on at a rate.
func moved(s, rate *motion.State, step float64) motion.State {
	out := *s
	for i := range out {
		out[i] += float64(step * rate[i])
	}
	return out
}

// touch brings state and time to where the height passes zero in a step, on the cubics through its ends and their rates.
//
// Source: cubic of Hermite; bisection.
func (f *flight) touch(state, rate, next, after *motion.State, step float64) {
	low, high := 0.0, 1.0
	for range 16 {
		middle := float64(0.5 * (low + high))
		if hermite(state[2], rate[2], next[2], after[2], middle, step) > 0 {
			low = middle
		} else {
			high = middle
		}
	}
	from := *state
	for i := range from {
		state[i] = hermite(from[i], rate[i], next[i], after[i], high, step)
	}
	f.time += float64(high * step)
}

// hermite returns the value at a share of a step from value and slope at its ends.
//
//	p = (1+2x)(1-x)^2 a + x(1-x)^2 h a' + x^2(3-2x) b + x^2(x-1) h b'
//
// where x is the share and h the step. Source: cubic of Hermite.
func hermite(a, slopeA, b, slopeB, x, step float64) float64 {
	y := 1 - x
	return a + float64(x*x*(1+float64(2*y))*(b-a)) + float64(x*y*step*(float64(y*slopeA)-float64(x*slopeB)))
}
