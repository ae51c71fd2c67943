package motion

import (
	"errors"
	"math"

	"pitgate/server/physics/elementary"
)

// Tail is the lowest thing behind the wheels or cradle: skid, fin, pipe.
type Tail struct {
	Arm       float64 // behind the centre of gravity, m
	Height    float64 // over the rails while the model lies in its cradle, m
	LiftSlope float64 // of the model, per rad; zero means that its attitude does not change with lift
}

// TailGap is the least room under the tail while it is still over the rails.
type TailGap struct {
	Gap      float64 // m; negative when the tail strikes
	Distance float64 // of the centre of gravity beyond the end of the rails there, along them, m
	Strikes  bool
	Over     bool // the tail clears the end of the rails; false when the flight ends before
}

// TailGap returns the least room between the tail and the rails from the end of the rails until the tail has passed it.
//
//	gap = h + z - a sin(d),  d = (g - g0) + (CL - CL0)/slope
//
// where h is the tail's height over the rails in the cradle, z how far the model lies off the line of the rails, a the tail's arm, d the change of attitude, g
// the path angle through the air and CL the lift coefficient, 0 at the end of the rails. The attitude follows the lift without delay, so the tail
// swings down at once: the least favourable. Valid for: ramps; rails straight over their last arm's length. Source: geometry.
// Errors name impossible input and say when no flight leaves the rails.
func (r *Result) TailGap(tail Tail) (TailGap, error) {
	err := firstOutside([]limited{
		{"tail arm", tail.Arm, 0, 100}, {"tail height", tail.Height, -10, 10}, {"tail lift slope", tail.LiftSlope, 0, 100},
	})
	if err != nil {
		return TailGap{}, err
	}
	if !r.trace.hasFlight || r.trace.run == nil || r.trace.run.launch.Method != Ramp {
		return TailGap{}, errors.New("tail: no flight leaves a ramp")
	}
	s := &r.trace.flown
	out := TailGap{Gap: math.Inf(1)}
	end := s.end
	for i := 0; i < len(s.pieces) && !out.Over; i++ {
		const looks = 16
		p := &s.pieces[i]
		for k := range looks + 1 {
			t := min(p.start+float64(p.step*(float64(k)/looks)), end)
			gap, over, beyond := r.tailAt(tail, t)
			if over {
				out.Over = true
				break
			}
			if gap < out.Gap {
				out.Gap, out.Distance = gap, beyond
			}
		}
	}
	out.Strikes = out.Gap < 0
	return out, nil
}

// tailAt returns the room under the tail at a time of the flight, whether it is past the end of the rails, and how far the centre of gravity is.
func (r *Result) tailAt(tail Tail, t float64) (gap float64, over bool, beyond float64) {
	f, s := r.trace.flight, &r.trace.flown
	rail := r.trace.run.sine(r.Run)
	level := cosine(rail)
	state := s.At(t)
	x, z := state[atDistance]-r.Distance, state[atHeight]-r.Height
	beyond = float64(x*level) + float64(z*rail)
	off := float64(z*level) - float64(x*rail)
	first := f.through(s.first)
	now := f.through(state)
	change := elementary.Atan2(now.sine, now.cosine) - elementary.Atan2(first.sine, first.cosine)
	if tail.LiftSlope > 0 {
		change += (f.coefficient(t, state, now) - f.model.CLGround) / tail.LiftSlope
	}
	gap = tail.Height + off - float64(tail.Arm*elementary.Sin(change))
	return gap, beyond > float64(tail.Arm*elementary.Cos(change)), beyond
}

// coefficient returns the lift coefficient flown in a state.
func (f *flight) coefficient(t float64, s State, m airMotion) float64 {
	pressureArea := 0.5 * f.air.Density * m.speed * m.speed * f.model.Area
	thrust := f.model.thrust(m.speed, t)
	return f.lift(m, pressureArea, thrust, f.belief(m.speed, t, thrust))
}
