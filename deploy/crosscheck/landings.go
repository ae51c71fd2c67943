package main

import (
	"fmt"
	"math"

	"pitgate/server/physics/landing"
	"pitgate/server/physics/motion"
)

// landed is one landing with what the core makes of it.
type landed struct {
	Name    string            `json:"name"`
	Craft   craft             `json:"craft"`
	Plan    flown             `json:"plan"`
	Air     motion.Conditions `json:"air"`
	Figures outcome           `json:"figures"`
	Levels  bool              `json:"levels"`
}

// flown is a plan with its idle thrust as numbers.
type flown struct {
	landing.Plan
	Idle engine
}

// plan returns the plan as the core takes it.
func (f flown) plan() landing.Plan {
	p := f.Plan
	p.Idle = func(speed float64) float64 { return f.Idle.thrust(speed, 0) }
	return p
}

// landings lets the core integrate landings: braked uphill in still air, on the belly in a wind, and far along a strip from behind.
func landings() ([]landed, error) {
	braked := landing.Plan{Angle: radians(5), ScreenHeight: 10, AimPoint: 25, Friction: 0.05, BrakeFriction: 0.3, BrakeDelay: 1.5, Slope: radians(1)}
	belly := landing.Plan{ScreenHeight: 15, AimPoint: 12, FlareLoad: 0.15, Belly: true, Friction: 0.45, Shutdown: true}
	fast := belly
	fast.ApproachRatio, fast.FlareLoad = 1.6, 0.4
	long := landing.Plan{Angle: radians(4), ScreenHeight: 8, ApproachRatio: 1.4, TouchdownRatio: 1.15, Friction: 0.09, Slope: radians(-0.4)}
	all := []landed{
		{Name: "landing, brakes, uphill", Craft: trainer(), Plan: flown{braked, engine{}}, Air: motion.Conditions{Density: 1.225, Gravity: 9.81}},
		{Name: "landing on the belly, headwind", Craft: glider(), Plan: flown{fast, engine{}}, Air: wind(5, 0)},
		{Name: "landing slower, stalls in the shear", Craft: glider(), Plan: flown{belly, engine{}}, Air: wind(5, 0)},
		{Name: "landing, idle thrust, tailwind", Craft: trainer(), Plan: flown{long, engine{Static: 5, Fall: 0.12}}, Air: wind(-2, 0)},
	}
	for i := range all {
		if err := all[i].solve(); err != nil {
			return nil, fmt.Errorf("%s: %w", all[i].Name, err)
		}
	}
	return all, nil
}

// solve lets the core integrate a landing.
func (l *landed) solve() error {
	r, err := landing.Fly(l.Craft.aircraft(), l.Air, l.Plan.plan())
	l.Figures = outcome{
		"stall": r.StallSpeed, "approach speed": r.ApproachSpeed, "steepest": r.Steepest, "angle": r.Angle, "thrust": r.Thrust,
		"flare height": r.FlareStart.Height, "approach": r.Approach, "flare": r.Flare, "flare time": r.FlareEnd.Time - r.FlareStart.Time,
		"flare end height": r.FlareEnd.Height, "flare end speed": r.FlareEnd.Airspeed, "flare end sink": r.FlareEnd.Sink + math.Tan(l.Plan.Slope)*r.FlareEnd.GroundSpeed,
		"float": r.Float, "float time": r.Touchdown.Time - r.FlareEnd.Time, "touchdown speed": r.Touchdown.Airspeed,
		"roll": r.Run, "roll time": r.Stop.Time - r.Touchdown.Time, "total": r.Total, "stops at": r.Stop.Distance,
	}
	l.Levels = r.Levels
	if err == nil && !r.Complete() {
		return fmt.Errorf("does not come to rest: %+v", r.Slope)
	}
	return err
}
