package main

import (
	"math"

	"pitgate/server/physics/motion"
)

// launch is one take-off run by the numbers of its equation, with what the core makes of it.
type launch struct {
	Mass          float64 `json:"massKilograms"`
	Area          float64 `json:"areaSquareMeters"`
	Density       float64 `json:"densityKilogramsPerCubicMeter"`
	Gravity       float64 `json:"gravityMetersPerSecondSquared"`
	Drag          float64 `json:"dragCoefficient"`
	Lift          float64 `json:"liftCoefficient"`
	Friction      float64 `json:"friction"`
	Slope         float64 `json:"slopeRadians"`
	StaticThrust  float64 `json:"staticThrustNewtons"`
	ThrustFall    float64 `json:"thrustFallNewtonsPerMeterPerSecond"`
	SpoolTime     float64 `json:"spoolTimeSeconds"`
	Headwind      float64 `json:"headwindMetersPerSecond"`
	RotationSpeed float64 `json:"rotationAirspeedMetersPerSecond"`
	Run           float64 `json:"runMeters"`
	Time          float64 `json:"timeSeconds"`
}

// solveLaunch lets the core integrate a run uphill against the wind with thrust that builds up in time and falls with speed.
func solveLaunch() (launch, error) {
	l := launch{
		Mass: 12.5, Area: 0.82, Density: 1.17, Gravity: 9.80665, Drag: 0.041, Lift: 0.3, Friction: 0.07, Slope: radians(1.5),
		StaticThrust: 96, ThrustFall: 0.55, SpoolTime: 1.8, Headwind: 3, RotationSpeed: 19.5,
	}
	aircraft := motion.Aircraft{
		Mass: l.Mass, Area: l.Area, CD0: l.Drag, CLMax: 2, CLGround: l.Lift,
		Thrust: func(speed, time float64) float64 {
			return (l.StaticThrust - l.ThrustFall*speed) * (1 - math.Exp(-time/l.SpoolTime))
		},
	}
	how := motion.Launch{Method: motion.Wheels, Slope: l.Slope, Friction: l.Friction, LiftoffSpeed: l.RotationSpeed, Tolerance: 1e-11}
	result, err := how.Run(aircraft, motion.Conditions{Density: l.Density, Headwind: l.Headwind, Gravity: l.Gravity})
	l.Run, l.Time = result.Run, result.Time
	return l, err
}
