package main

import (
	"slices"
	"time"

	"pitgate/server/physics/lift"
	"pitgate/server/physics/planform"
)

// timed is a set of 400 equations with the time that the core takes to decompose and solve it.
type timed struct {
	System  system  `json:"system"`
	Best    float64 `json:"bestSeconds"`
	Median  float64 `json:"medianSeconds"`
	Repeats int     `json:"repeats"`
}

// timeSolve solves the lattice of one swept wing with 400 horseshoes again and again.
func timeSolve() (timed, error) {
	surfaces := []planform.Surface{wing(7, 0.5, 20).surface()}
	equations, err := lift.System(surfaces, lift.Reference{Grid: lift.Grid{Chordwise: 10, Spanwise: 40}})
	if err != nil {
		return timed{}, err
	}
	var times []time.Duration
	for start := time.Now(); time.Since(start) < time.Second/2; {
		began := time.Now()
		if _, err := equations.Solve(); err != nil {
			return timed{}, err
		}
		times = append(times, time.Since(began))
	}
	slices.Sort(times)
	return timed{
		System: system{equations.Size, equations.Matrix, equations.Columns, equations.Strengths},
		Best:   times[0].Seconds(), Median: times[len(times)/2].Seconds(), Repeats: len(times),
	}, nil
}
