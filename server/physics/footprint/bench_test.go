package footprint

import (
	"math"
	"testing"

	"pitgate/server/physics/field"
	"pitgate/server/physics/weather"
)

// all are all the actions.
var all = []Action{FlyAway, CutNeutral, CutSpiral, IdleNeutral, Hold, Breakup}

// madeUp is a made-up model of 12 kg.
func madeUp() Model {
	return Model{
		Mass: 12, Area: 0.65, Width: 2, CD0: 0.035, StoppedDrag: 0.01, InducedFactor: 0.068967, CLMax: 1.1, LevelTime: 5,
		SpiralBank: 0.7, RollTime: 0.5, DragArea: 0.2, RunDown: 2, IdleThrust: 4, FullThrust: 100,
		HoldEndurance: 300, IdleEndurance: 900, FullEndurance: 240,
	}
}

// circle is a level circuit of 150 m radius at a height, flown to the left.
func circle(height float64) []Release {
	path := make([]Release, 0, 25)
	for i := range 25 {
		angle := 2 * math.Pi * float64(i) / 24
		place := field.Point{X: 150 * math.Cos(angle), Y: 150 * math.Sin(angle)}
		path = append(path, Release{Place: place, Height: height, Heading: -angle, Speed: 35, Bank: -0.69})
	}
	return path
}

// planned is a loss of link on the circle, in 6 m/s from the south-west, with spread.
func planned(action Action, height float64) Plan {
	return Plan{
		Loss: Loss{
			Action: action, Model: madeUp(), Delay: 1, Density: 1.2,
			Wind: Wind{Speed: 6, From: 4, Profile: weather.NewProfile(weather.OpenGrass, 0)},
		},
		Path: circle(height),
		Spread: Spread{
			Speed: 3, Height: 6, Heading: 0.1, Bank: 0.1, Delay: 0.3, WindSpeed: 1.5, WindFrom: 0.3, Drag: 0.1, GlideRatio: 0.1, Lift: 0.05,
			BankCreep: 0.02,
		},
	}
}

// BenchmarkFootprint flies 1,000 samples from 60 m and draws both outlines.
func BenchmarkFootprint(b *testing.B) {
	for _, action := range all {
		plan := planned(action, 60)
		b.Run(action.String(), func(b *testing.B) {
			for b.Loop() {
				cloud, err := plan.Sample()
				if err != nil {
					b.Fatal(err)
				}
				for _, share := range []float64{0.5, 0.95} {
					if _, err := cloud.Outline(share); err != nil {
						b.Fatal(err)
					}
				}
			}
		})
	}
}
