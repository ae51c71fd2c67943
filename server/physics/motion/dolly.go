package motion

import (
	"errors"
	"math"

	"pitgate/server/physics/elementary"
)

// Dolly is what the fall of a dolly needs besides the launch.
type Dolly struct {
	// DragArea is its drag coefficient times area, m2; zero falls without drag.
	DragArea float64
	// Kick is how much slower than the model it leaves the rails, m/s: what a spring or a catch takes.
	Kick float64
}

// Fall is the way of a dolly from the end of the rails to the ground.
type Fall struct {
	Distance, Drift float64 // where it comes down, along the launch and to the right, m
	Time            float64 // from the end of the rails, s
	Speed           float64 // over the ground there, m/s
	Energy          float64 // J
	Path            []PathPoint
}

// DollyFall follows the dolly of a ramp or catapult from where the model leaves it to the ground, through the launch's wind.
//
//	m dv/dt = -1/2 rho CdA |v| v - m g, v through the air
//
// The result must be of this launch. Valid for: a dolly that does not fly, roll on or bounce; drag area constant. Source: Newton's second law. Errors name
// impossible input and say when no dolly falls.
func (l Launch) DollyFall(r *Result, air Conditions, d Dolly) (Fall, error) {
	if err := air.Check(); err != nil {
		return Fall{}, err
	}
	if err := firstOutside([]limited{{"dolly drag area", d.DragArea, 0, 100}, {"dolly kick", d.Kick, 0, 100}}); err != nil {
		return Fall{}, err
	}
	if (l.Method != Ramp && l.Method != Catapult) || !(l.DollyMass > 0) || !r.Release.Reached {
		return Fall{}, errors.New("dolly: none leaves the rails")
	}
	l = l.withDefaults()
	return l.fall(r, &air, d)
}

// Places in the state of a falling dolly.
const (
	dollyDistance = iota
	dollyHeight
	dollyDrift
	dollyForward
	dollyUpward
	dollyAside
)

// fall integrates the fall.
func (l *Launch) fall(r *Result, air *Conditions, d Dolly) (Fall, error) {
	g := newGround(l)
	slope := r.trace.run.sine(r.Run)
	speed := max(0, r.GroundSpeed-d.Kick)
	state := State{dollyDistance: r.Distance, dollyHeight: r.Height, dollyForward: speed * cosine(slope), dollyUpward: speed * slope}
	factor := 0.5 * air.Density * d.DragArea / l.DollyMass
	rate := func(_ float64, s State) State {
		wind := air.Profile.Factor(s[dollyHeight] - g.height(s[dollyDistance]))
		u, w, v := s[dollyForward]+float64(air.Headwind*wind), s[dollyUpward], s[dollyAside]+float64(air.Crosswind*wind)
		k := float64(factor * math.Sqrt(float64(u*u)+float64(w*w)+float64(v*v)))
		return State{s[dollyForward], s[dollyUpward], s[dollyAside], float64(-k * u), float64(-k*w) - air.gravity(), float64(-k * v)}
	}
	contact := func(_ float64, s State) float64 { return s[dollyHeight] - g.height(s[dollyDistance]) + contactMargin }
	events := []Event{{Value: contact, Direction: Falling, Terminal: true, Looks: 7, Sparing: true, Place: dollyHeight, Over: g.highest()}}
	s, err := Integrator{Tolerance: l.Tolerance, MaxStep: 0.2, Room: l.Room}.Solve(rate, 0, state, longestTime, events...)
	if err != nil {
		return Fall{}, err
	}
	end := dollyPoint(s.end, s.last)
	return Fall{
		Distance: end.Distance, Drift: end.Drift, Time: s.end, Speed: end.GroundSpeed,
		Energy: 0.5 * l.DollyMass * end.GroundSpeed * end.GroundSpeed,
		Path:   sample(make([]PathPoint, 0, fallPoints), &s, fallPoints, dollyPoint),
	}, nil
}

// fallPoints is the number of points of a fall's path.
const fallPoints = 24

// dollyPoint returns the point of a dolly's state.
func dollyPoint(t float64, s State) PathPoint {
	u, w, v := s[dollyForward], s[dollyUpward], s[dollyAside]
	speed := math.Sqrt(float64(u*u) + float64(w*w) + float64(v*v))
	return PathPoint{
		Distance: s[dollyDistance], Height: s[dollyHeight], Drift: s[dollyDrift], GroundSpeed: speed, Airspeed: speed, Time: t,
		ClimbAngle: elementary.Atan2(w, math.Sqrt(float64(u*u)+float64(v*v))),
	}
}
