package motion

import (
	"errors"
	"math"
)

// Stop is how a wheeled launch is broken off.
type Stop struct {
	Available float64 // ground to stop on, along the launch from its start, m
	Reaction  float64 // from the trouble to throttle closed and brakes on, s
	Live      bool    // full thrust lasts through the reaction: trouble other than the engine's
	Brakes    float64 // friction that brakes add, over the normal force; zero for none
	// Idle is the thrust left with the throttle closed, N, as Trouble.Residual. Nil means none.
	Idle func(speed, time float64) float64
}

// Abort is how late a wheeled launch can be broken off.
type Abort struct {
	Possible bool // the launch can be broken off at its very start within what is available
	Whole    bool // it can be broken off as late as lift-off
	// The last place at which it can: from letting go.
	Time, Distance        float64 // s, m
	Airspeed, GroundSpeed float64 // m/s
	StopsAt               float64 // distance at which it rests when broken off there, m
	// AccelerateStop is the distance at which it rests when broken off at lift-off, m; infinite when it does not rest within two kilometres or a minute.
	AccelerateStop float64
}

// abortSteps is the number of halvings that find the abort point: a millionth of the time to lift-off.
const abortSteps = 20

// AbortPoint returns the last place of a wheeled launch at which stopping within the ground available is possible.
//
// Valid for: straight roll, constant friction and brakes, the nose down after the trouble. Source: the equations of Launch.Run; the stopping place rises with
// the time of the trouble, so its root is bisected. Errors name impossible input.
func (l Launch) AbortPoint(a Aircraft, air Conditions, stop Stop) (Abort, error) {
	if err := stop.check(l); err != nil {
		return Abort{}, err
	}
	nominal, err := l.Run(a, air)
	if err != nil {
		return Abort{}, err
	}
	return l.AbortPointOf(&nominal, a, air, stop)
}

// AbortPointOf is AbortPoint for a launch that has been run already with the same model and air.
func (l Launch) AbortPointOf(nominal *Result, a Aircraft, air Conditions, stop Stop) (Abort, error) {
	if err := stop.check(l); err != nil {
		return Abort{}, err
	}
	w := &aborter{launch: l, model: a, air: air, stop: stop, nominal: nominal}
	begin, end := nominal.trace.rolls()
	var out Abort
	out.Possible = w.at(begin).fits(stop.Available)
	last := w.at(end)
	out.AccelerateStop = last.EndDistance
	if !last.Stays || last.EndSpeed > 0 {
		out.AccelerateStop = math.Inf(1)
	}
	out.Whole = last.fits(stop.Available)
	switch {
	case out.Possible && out.Whole:
		out.mark(last)
	case out.Possible:
		out.mark(w.latest(begin, end))
	}
	return out, w.err
}

// check returns an error that names the first impossible value.
func (s Stop) check(l Launch) error {
	if l.Method != Wheels {
		return errors.New("launch method: only a launch on wheels has an abort point")
	}
	return firstOutside([]limited{
		{"stop available", s.Available, 0, 5000},
		{"stop reaction", s.Reaction, 0, 60},
		{"stop brakes", s.Brakes, 0, 10},
	})
}

// rolls returns the times at which a roll starts and ends, on the thrust curve.
func (t *trace) rolls() (begin, end float64) {
	if len(t.stretches) == 0 {
		return 0, 0
	}
	return t.stretches[0].start, t.stretches[len(t.stretches)-1].end
}

// aborter breaks one launch off at different times.
type aborter struct {
	launch  Launch
	model   Aircraft
	air     Conditions
	stop    Stop
	nominal *Result
	err     error
}

// fits reports whether the model rests within a distance.
func (f Failure) fits(available float64) bool {
	return f.Stays && f.EndSpeed == 0 && f.EndDistance <= available
}

// at breaks the launch off at a time. With a live engine its thrust lasts through the reaction and idles after it.
func (w *aborter) at(time float64) Failure {
	trouble := Trouble{Reaction: w.stop.Reaction, Brakes: w.stop.Brakes, Residual: w.stop.Idle}
	b := w.launch.broken(w.model, w.air, w.nominal, trouble, time)
	if w.stop.Live {
		b.live = true
		b.trouble.Residual = w.afterReaction
	}
	failure, err := b.follow(w.nominal)
	if err != nil && w.err == nil {
		w.err = err
	}
	return failure
}

// afterReaction is the thrust with the throttle closed at the end of the reaction.
func (w *aborter) afterReaction(speed, since float64) float64 {
	if w.stop.Idle == nil {
		return 0
	}
	return w.stop.Idle(speed, max(0, since-w.stop.Reaction))
}

// latest bisects for the last time that fits.
func (w *aborter) latest(begin, end float64) Failure {
	low, high := begin, end
	for range abortSteps {
		mid := low + float64((high-low)/2)
		if w.at(mid).fits(w.stop.Available) {
			low = mid
		} else {
			high = mid
		}
	}
	return w.at(low)
}

// mark fills in the last place.
func (a *Abort) mark(s Failure) {
	a.Time, a.Distance, a.Airspeed, a.StopsAt = s.Time, s.Distance, s.Airspeed, s.EndDistance
	if len(s.Path) > 0 {
		a.GroundSpeed = s.Path[0].GroundSpeed
	}
}
