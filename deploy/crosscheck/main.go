// Command crosscheck writes what the core makes of a few cases, with their inputs, as one JSON file: check.py computes the same with a
// general-purpose numerical package and says where the two differ.
//
//	deploy/crosscheck/run
package main

import (
	"encoding/json"
	"fmt"
	"log/slog"
	"os"
)

// cases is all that is compared.
type cases struct {
	Wings     []solvedWing `json:"wings"`
	Launch    launch       `json:"launch"`
	Motions   []natural    `json:"motions"`
	Functions []sampled    `json:"functions"`
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
	var all cases
	for _, w := range wings() {
		solved, err := solveWing(w)
		if err != nil {
			return all, fmt.Errorf("%s: %w", w.name, err)
		}
		all.Wings = append(all.Wings, solved)
	}
	all.Functions = functions()
	var err error
	if all.Motions, err = motions(); err != nil {
		return all, err
	}
	if all.Launch, err = solveLaunch(); err != nil {
		return all, err
	}
	all.Timed, err = timeSolve()
	return all, err
}
