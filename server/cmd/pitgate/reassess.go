package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"log/slog"
	"slices"
	"time"

	"pitgate/server/api"
	"pitgate/server/club"
	"pitgate/server/jobs"
	"pitgate/server/physics/assess"
	"pitgate/server/postgres"
)

// reassessing is what pitgate reassess was asked for.
type reassessing struct {
	club    string
	all     bool
	workers int
}

// runReassess has a club's approvals, or those of all clubs, computed again by this core and the rules in force, and tells how far it is.
func runReassess(ctx context.Context, args []string, std streams) (status int, err error) {
	var s settings
	var r reassessing
	set := flag.NewFlagSet("pitgate reassess", flag.ContinueOnError)
	set.SetOutput(std.err)
	databaseFlags(set, &s)
	set.StringVar(&r.club, "club", "", "compute the approvals of this club again")
	set.BoolVar(&r.all, "all", false, "compute those of all clubs again")
	set.IntVar(&r.workers, "workers", 1, "how many jobs to work on at a time here; 0: only add them, for the servers on the same database")
	if err := set.Parse(args); err != nil {
		return 0, err
	}
	if err := r.check(set.NArg()); err != nil {
		return 0, err
	}
	log := newLog(std.err, false)
	base, err := openDatabase(ctx, s, log)
	if err != nil {
		return 0, err
	}
	defer func() { err = errors.Join(err, base.close()) }()
	return r.run(ctx, base.store, log, std.out)
}

// check names the first flag that is missing or wrong.
func (r reassessing) check(rest int) error {
	switch {
	case rest > 0:
		return errors.New("give flags only: pitgate reassess --club X, or --all")
	case (r.club == "") == !r.all:
		return errors.New("give one of --club X and --all")
	case r.workers < 0 || r.workers > mostWorkers:
		return fmt.Errorf("workers: %d is not between 0 and %d", r.workers, mostWorkers)
	}
	return nil
}

// run opens the runs, works on them and waits for their end; exit status 1 says that some approvals could not be computed.
func (r reassessing) run(ctx context.Context, store *postgres.Store, log *slog.Logger, out io.Writer) (status int, err error) {
	runs, err := r.begin(ctx, store)
	if err != nil {
		return 0, err
	}
	tell(out, "%d clubs are computed again by the core %s\n", len(runs), assess.Version)
	if r.workers == 0 {
		return 0, nil
	}
	server, err := api.New(api.Config{Store: store, Log: log})
	if err != nil {
		return 0, err
	}
	workers, err := jobs.Start(ctx, jobs.Config{Store: store, Assessor: server.Assessor, Log: log, Count: r.workers})
	if err != nil {
		return 0, err
	}
	defer func() {
		stopping, cancel := context.WithTimeout(context.WithoutCancel(ctx), stopPatience)
		defer cancel()
		err = errors.Join(err, workers.Stop(stopping))
	}()
	return watch(ctx, store, runs, out)
}

// begin opens a run in every club that was asked for: the run's id by club.
func (r reassessing) begin(ctx context.Context, store *postgres.Store) (map[string]string, error) {
	queue, err := jobs.NewQueue()
	if err != nil {
		return nil, err
	}
	clubs := []string{r.club}
	if r.all {
		if clubs, err = store.EveryClub(ctx); err != nil {
			return nil, err
		}
	}
	runs := map[string]string{}
	for _, id := range clubs {
		run, err := queue.BeginAsked(ctx, store, id, assess.Version)
		if err != nil {
			return nil, fmt.Errorf("club %s: %w", id, err)
		}
		runs[id] = run.ID
	}
	return runs, nil
}

// watchPause is how often the progress is read.
const watchPause = 300 * time.Millisecond

// watch tells how far the runs are until all are done.
func watch(ctx context.Context, store *postgres.Store, runs map[string]string, out io.Writer) (status int, err error) {
	left, told := clubsOf(runs), map[string]string{}
	for len(left) > 0 {
		for _, id := range left {
			run, err := readRun(ctx, store, id, runs[id])
			if err != nil {
				return 0, err
			}
			if line := progress(id, run); line != told[id] {
				told[id] = line
				tell(out, "%s\n", line)
			}
			if run.Done() {
				left = slices.DeleteFunc(slices.Clone(left), func(other string) bool { return other == id })
				status = max(status, min(int(run.FailCount), 1))
			}
		}
		select {
		case <-ctx.Done():
			return 0, errors.New("stopped; what is left goes on when a server or this command works on it")
		case <-time.After(watchPause):
		}
	}
	return status, nil
}

func clubsOf(runs map[string]string) []string {
	var clubs []string
	for id := range runs {
		clubs = append(clubs, id)
	}
	slices.Sort(clubs)
	return clubs
}

func readRun(ctx context.Context, store *postgres.Store, clubID, runID string) (run club.ReassessmentRun, err error) {
	err = store.Read(ctx, clubID, func(tx *postgres.ReadTx) error {
		run, err = tx.Run(ctx, runID)
		return err
	})
	return run, err
}

// progress is one line about a run.
func progress(clubID string, r club.ReassessmentRun) string {
	if !r.Listed {
		return clubID + ": waiting"
	}
	return fmt.Sprintf("%s: %d of %d computed, %d with changed verdicts, %d could not be computed", clubID, r.DoneCount, r.Approvals, r.ChangedCount, r.FailCount)
}
