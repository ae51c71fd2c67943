// Command crosscheck writes what the core makes of a few cases, with their inputs, as one JSON file: check.py computes the same with
// general-purpose packages for numerics, geodesics, plane geometry and the sun, and says where the two differ.
//
//	deploy/crosscheck/run
package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"log/slog"
	"os"
)

// cases is all that is compared.
type cases struct {
	Wings     []solvedWing `json:"wings"`
	Launches  []launched   `json:"launches"`
	Landings  []landed     `json:"landings"`
	Falls     []fallen     `json:"falls"`
	Places    []placed     `json:"places"`
	Suns      []shining    `json:"suns"`
	Outlines  []outlined   `json:"outlines"`
	Motions   []natural    `json:"motions"`
	Functions []sampled    `json:"functions"`
	Formulas  []formula    `json:"formulas"`
	Timed     timed        `json:"timed"`
}

func main() {
	if err := run(); err != nil {
		slog.Error("crosscheck", "error", err)
		os.Exit(1)
	}
}

func run() error {
	all, err := solveAll()
	if err != nil {
		return err
	}
	return json.NewEncoder(os.Stdout).Encode(all)
}

// solveAll lets the core solve every case.
func solveAll() (cases, error) {
	all := cases{Functions: functions(), Outlines: outlines()}
	err := errors.Join(
		fill(&all.Wings, solveWings), fill(&all.Motions, motions), fill(&all.Launches, launches), fill(&all.Landings, landings), fill(&all.Falls, falls),
		fill(&all.Places, places), fill(&all.Suns, suns), fill(&all.Formulas, formulas), fill(&all.Timed, timeSolve),
	)
	return all, err
}

// fill puts what is solved in its place.
func fill[T any](place *T, solve func() (T, error)) (err error) {
	*place, err = solve()
	return err
}

// solveWings lets the core solve every wing.
func solveWings() ([]solvedWing, error) {
	var all []solvedWing
	for _, w := range wings() {
		solved, err := solveWing(w)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", w.name, err)
		}
		all = append(all, solved)
	}
	return all, nil
}
