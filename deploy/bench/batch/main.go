// Command batch prints rows about computing approvals again as jobs: with 1, 2 and 4 workers over several clubs of which one has most, beside the bare
// computation in a loop and a bare SQL insert of the same run. It starts a private database and stops it.
//
//	go run ./deploy/bench/batch
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"log/slog"
	"os"
	"os/signal"
	"time"

	"pitgate/server/document"
	"pitgate/server/physics/assess"
	demo "pitgate/testdata/demo"
)

func main() {
	computed := flag.Int("computed", 200, "approvals that have to be computed")
	known := flag.Int("known", 2000, "approvals whose answer stands, so that only the queue works")
	flag.Parse()
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	if err := run(ctx, *computed, *known); err != nil {
		slog.Error("batch", "error", err)
		os.Exit(1)
	}
}

// model is the document of every approval.
const model = "redshank_quarry_top.json"

func run(ctx context.Context, computed, known int) (err error) {
	text, err := demo.Files.ReadFile(model)
	if err != nil {
		return err
	}
	in, err := document.Decode(text)
	if err != nil {
		return err
	}
	place, err := openPlace(ctx)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, place.close()) }()
	insert, err := place.inserts(ctx)
	if err != nil {
		return err
	}
	fmt.Printf("| bare SQL insert of 4 kB, one a transaction | %.0f per second | reference |\n", insert)
	bare, err := loop(in)
	if err != nil {
		return err
	}
	fmt.Printf("| all answers with bands, one after the other | %.1f per second | reference |\n", bare)
	if err := place.rows(ctx, in, "0.0.1", computed, "approvals computed again", bare, "of the bare loop"); err != nil {
		return err
	}
	return place.rows(ctx, in, assess.Version, known, "approvals whose answer stands", insert, "of a bare SQL insert")
}

// loopTime is how long the bare loop runs.
const loopTime = 4 * time.Second

// loop computes the document again and again, and tells how often in a second.
func loop(in assess.Input) (float64, error) {
	if _, err := document.Answers(in); err != nil {
		return 0, err
	}
	start, n := time.Now(), 0
	for ; time.Since(start) < loopTime; n++ {
		if _, err := document.Answers(in); err != nil {
			return 0, err
		}
	}
	return float64(n) / time.Since(start).Seconds(), nil
}
