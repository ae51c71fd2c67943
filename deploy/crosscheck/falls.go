package main

import (
	"errors"
	"fmt"

	"pitgate/server/physics/field"
	"pitgate/server/physics/footprint"
	"pitgate/server/physics/weather"
)

// fallen is one loss of link with what the core makes of it.
type fallen struct {
	Name    string            `json:"name"`
	Loss    footprint.Loss    `json:"loss"`
	Release footprint.Release `json:"release"`
	Figures outcome           `json:"figures"`
}

// lost is a model whose link is lost, in a wind over crops.
func lost(action footprint.Action) footprint.Loss {
	return footprint.Loss{
		Action: action, Delay: 1.5, Density: 1.19, Precision: fine,
		Wind: footprint.Wind{Speed: 7, From: radians(250), Profile: weather.NewProfile(weather.LowCrops, 10)},
		Model: footprint.Model{
			Mass: 12, Area: 0.82, Width: 2.1, CD0: 0.034, StoppedDrag: 0.008, InducedFactor: 0.061, CLMax: 1.25, NeutralLift: 0.4, LevelTime: 4,
			SpiralBank: radians(35), RollTime: 0.8, SpiralLift: 0.5, DragArea: 0.21, RunDown: 0.9, IdleThrust: 4, FullThrust: 95,
			HoldEndurance: 90, IdleEndurance: 6, FullEndurance: 40,
		},
	}
}

// falls lets the core integrate losses of link: a tumbling fall, a spiral, glides with and without a damped path, the last command held, a fly-away,
// and thrust that falls with speed while the throttle is held and is gone when the engine is cut.
func falls() ([]fallen, error) {
	release := footprint.Release{Place: field.Point{X: 40, Y: -60}, Height: 90, Heading: radians(70), Speed: 27, Climb: radians(5), Bank: radians(-12)}
	level, sinking := release, release
	level.Climb, level.Bank, sinking.Climb = 0, 0, radians(-6)
	idle, hold, jet := lost(footprint.IdleNeutral), lost(footprint.Hold), lost(footprint.CutNeutral)
	idle.Model.PathDamping, hold.Model.ThrustSlope, jet.Model.ThrustSlope = 0.12, 0.4, 0.6
	still := lost(footprint.Breakup)
	still.Wind.Speed, still.Delay = 0, 0
	all := []fallen{
		{Name: "fall with drag, still air", Loss: still, Release: level},
		{Name: "fall with drag, wind profile", Loss: lost(footprint.Breakup), Release: release},
		{Name: "spiral, engine running down", Loss: lost(footprint.CutSpiral), Release: release},
		{Name: "glide, bank levelling", Loss: lost(footprint.CutNeutral), Release: release},
		{Name: "idle to the end of fuel, damped", Loss: idle, Release: release},
		{Name: "last command held", Loss: hold, Release: sinking},
		{Name: "fly-away, then a glide", Loss: lost(footprint.FlyAway), Release: level},
		{Name: "jet cut, thrust fell with speed", Loss: jet, Release: release},
	}
	for i := range all {
		if err := all[i].solve(); err != nil {
			return nil, fmt.Errorf("%s: %w", all[i].Name, err)
		}
	}
	return all, nil
}

// solve lets the core integrate a fall to the ground.
func (f *fallen) solve() error {
	r, err := f.Loss.From(f.Release)
	f.Figures = outcome{
		"east": r.Place.X, "north": r.Place.Y, "time": r.Time, "speed": r.Speed, "angle": r.Angle, "energy": r.Energy,
		"speed east": r.Velocity.X, "speed north": r.Velocity.Y, "speed up": r.Velocity.Z,
	}
	if err == nil && !r.Landed {
		return errors.New("does not come down")
	}
	return err
}
