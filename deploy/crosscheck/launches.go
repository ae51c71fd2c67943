package main

import (
	"fmt"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/motion"
	"pitgate/server/physics/weather"
)

// fine is the error allowed to a step of the core's integrator, so that what is left is the difference of two integrations.
const fine = 1e-11

// outcome is what the core makes of a case, by name.
type outcome map[string]float64

// engine is thrust that falls with airspeed and builds up from idle: (Static - Fall V) (1 - (1 - Idle) exp(-t/Spool)).
type engine struct {
	Static, Fall float64 // N, N per m/s
	Idle         float64 // share at once
	Spool        float64 // time constant, s; zero means at full thrust at once
}

// thrust returns the thrust at an airspeed and a time, N.
func (e engine) thrust(speed, time float64) float64 {
	share := 1.0
	if e.Spool > 0 {
		share -= (1 - e.Idle) * elementary.Exp(-time/e.Spool)
	}
	return (e.Static - e.Fall*speed) * share
}

// craft is an aircraft with its engine as numbers.
type craft struct {
	motion.Aircraft
	Thrust engine
}

// aircraft returns the craft as the core takes it.
func (c craft) aircraft() motion.Aircraft {
	a := c.Aircraft
	a.Thrust = c.Thrust.thrust
	return a
}

// launched is one launch with what the core makes of it.
type launched struct {
	Name    string            `json:"name"`
	Craft   craft             `json:"craft"`
	Launch  motion.Launch     `json:"launch"`
	Air     motion.Conditions `json:"air"`
	Dolly   *motion.Dolly     `json:"dolly,omitempty"`
	Figures outcome           `json:"figures"`
}

// trainer is a jet model of 12 kg on wheels.
func trainer() craft {
	return craft{
		Aircraft: motion.Aircraft{
			Mass: 12.5, Area: 0.82, Span: 2.1, CD0: 0.034, InducedFactor: 0.061, CLMax: 1.25, CLGround: 0.28, GroundDrag: 0.012, WingHeight: 0.24,
		},
		Thrust: engine{Static: 96, Fall: 0.55, Spool: 1.6, Idle: 0.04},
	}
}

// glider is a light model without wheels, its thrust line tilted up.
func glider() craft {
	return craft{
		Aircraft: motion.Aircraft{
			Mass: 3.1, Area: 0.42, Span: 1.7, CD0: 0.038, InducedFactor: 0.075, CLMax: 1.1, CLGround: 0.5, WingHeight: 0.06, ThrustAngle: radians(2),
		},
		Thrust: engine{Static: 19, Fall: 0.3, Spool: 0.7, Idle: 0.1},
	}
}

// wind is the air with a headwind and a crosswind at ten metres over open grass.
func wind(head, cross float64) motion.Conditions {
	return motion.Conditions{Density: 1.19, Headwind: head, Crosswind: cross, Profile: weather.NewProfile(weather.OpenGrass, 10)}
}

// onWheels are launches from the ground.
func onWheels() []launched {
	still := motion.Conditions{Density: 1.225, Gravity: 9.81}
	rolling := func(slope, friction float64) motion.Launch {
		return motion.Launch{Method: motion.Wheels, Slope: radians(slope), Friction: friction, LiftoffSpeed: 16.5}
	}
	full, held, tail, hilly := rolling(0, 0.05), rolling(0, 0.06), rolling(-0.5, 0.06), rolling(0, 0.07)
	full.ThrustTime = 30
	held.ReleaseForce = 55
	tail.TailUpSpeed, tail.CLTailDown, tail.RotationSpeed = 9, 0.75, 17.5
	hilly.Slope = elementary.Atan(0.02)
	hilly.Ground = []motion.ProfilePoint{{Distance: 0}, {Distance: 60, Height: 1.2}, {Distance: 120, Height: 0.4}, {Distance: 400, Height: 3}}
	hilly.Distance, hilly.MaxClimbAngle = 350, radians(9)
	return []launched{
		{Name: "wheels, still air", Craft: trainer(), Launch: full, Air: still},
		{Name: "wheels, headwind, spool-up", Craft: trainer(), Launch: rolling(0, 0.05), Air: wind(5, 0)},
		{Name: "wheels, wet grass uphill", Craft: trainer(), Launch: rolling(2, 0.13), Air: wind(1.5, 0)},
		{Name: "wheels, tail and cross wind", Craft: trainer(), Launch: rolling(0, 0.05), Air: wind(-2.5, 3)},
		{Name: "wheels, held to a thrust", Craft: trainer(), Launch: held, Air: wind(3, 0)},
		{Name: "wheels, tail-dragger downhill", Craft: trainer(), Launch: tail, Air: wind(2, -1)},
		{Name: "wheels, over rising ground", Craft: trainer(), Launch: hilly, Air: wind(3, 2)},
	}
}

// onRails are launches from a ramp.
func onRails() []launched {
	straight := motion.Launch{
		Method: motion.Ramp, Slope: radians(9), Friction: 0.04, Length: 7, EndHeight: 1.6, DollyMass: 1.4, ThrustTime: 6, Distance: 60,
	}
	stepped := straight
	stepped.Slope, stepped.Length, stepped.EndHeight = radians(6), 11, 1.9
	stepped.RailProfile = []motion.ProfilePoint{{Distance: 0}, {Distance: 4, Height: 0.2}, {Distance: 8, Height: 0.6}, {Distance: 11, Height: 1.2}}
	quick := trainer()
	quick.Thrust.Static = 132
	return []launched{
		{Name: "ramp, dolly, straight rails", Craft: quick, Launch: straight, Air: wind(0, 0), Dolly: &motion.Dolly{DragArea: 0.03, Kick: 0.8}},
		{Name: "ramp, stepwise rails, wind", Craft: quick, Launch: stepped, Air: wind(6, 2), Dolly: &motion.Dolly{DragArea: 0.05}},
	}
}

// byForce are launches by cord, stroke and hand.
func byForce() []launched {
	cord := motion.Launch{
		Method: motion.Bungee, Slope: radians(2), Friction: 0.12, Stiffness: 11, Stretch: 14, Efficiency: 0.82, CordMass: 0.45, ThrustTime: 3, Distance: 40,
	}
	tested := cord
	tested.Stiffness, tested.HookForce, tested.Slope = 0, 22, 0
	tested.PullTest = []motion.ForcePoint{{Travel: 2, Force: 40}, {Travel: 6, Force: 90}, {Travel: 10, Force: 118}, {Travel: 15, Force: 150}}
	weak := cord
	weak.Stiffness, weak.Friction, weak.ThrustTime = 1.6, 0.2, 0
	stroke := motion.Launch{
		Method: motion.Catapult, Slope: radians(12), Friction: 0.03, DollyMass: 0.6, ThrustTime: 2, Distance: 30,
		Forces: []motion.ForcePoint{{Travel: 0, Force: 210}, {Travel: 0.8, Force: 190}, {Travel: 1.9, Force: 120}, {Travel: 2.4, Force: 60}},
	}
	thrown := motion.Launch{Method: motion.Hand, Slope: radians(6), HandSpeed: 11.5, HandHeight: 1.9, Distance: 50}
	free := thrown
	free.HoldLift, free.ClimbLift, free.ScreenHeight = true, 0.55, 4
	return []launched{
		{Name: "bungee, cord by Hooke", Craft: glider(), Launch: cord, Air: wind(2, 0)},
		{Name: "bungee, pull test and hook", Craft: glider(), Launch: tested, Air: wind(4, 1)},
		{Name: "bungee too weak, slides on", Craft: glider(), Launch: weak, Air: wind(1, 0)},
		{Name: "catapult by its forces", Craft: glider(), Launch: stroke, Air: wind(3, 0), Dolly: &motion.Dolly{}},
		{Name: "hand, spool-up in a headwind", Craft: glider(), Launch: thrown, Air: wind(4, 2)},
		{Name: "hand, lift held", Craft: glider(), Launch: free, Air: wind(0, 0)},
	}
}

// launches lets the core integrate every launch.
func launches() ([]launched, error) {
	all := append(append(onWheels(), onRails()...), byForce()...)
	for i := range all {
		all[i].Launch.Tolerance = fine
		if err := all[i].solve(); err != nil {
			return nil, fmt.Errorf("%s: %w", all[i].Name, err)
		}
	}
	return all, nil
}

// solve lets the core integrate a launch, and the fall of its dolly where it has one.
func (l *launched) solve() error {
	r, err := l.Launch.Run(l.Craft.aircraft(), l.Air)
	if err != nil {
		return err
	}
	end := r.End()
	l.Figures = outcome{
		"hold": r.HoldTime, "run": r.Run, "end of run": r.Distance, "height": r.Height, "airspeed": r.Airspeed, "ground speed": r.GroundSpeed, "time": r.Time,
		"lowest": r.LowestHeight, "lowest at": r.LowestDistance, "screen at": r.ScreenDistance, "screen time": r.ScreenTime, "screen speed": r.ScreenSpeed,
		"end": end.Distance, "end height": end.Height, "end drift": end.Drift, "end time": end.Time, "end speed": end.Airspeed,
	}
	if l.Dolly == nil {
		return nil
	}
	fall, err := l.Launch.DollyFall(&r, l.Air, *l.Dolly)
	l.Figures["dolly at"], l.Figures["dolly drift"], l.Figures["dolly time"], l.Figures["dolly speed"] = fall.Distance, fall.Drift, fall.Time, fall.Speed
	return err
}
