package jobs_test

import (
	"context"
	"errors"
	"slices"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"pitgate/server/club"
	"pitgate/server/jobs"
	"pitgate/server/postgres"
)

// TestJobComesWithItsTransaction wants no job of a transaction that was rolled back, and one of a transaction that was not.
func TestJobComesWithItsTransaction(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	s.furnish("larkmoor", 1)
	broken := errors.New("broken off")
	err := s.InTx(t.Context(), "larkmoor", func(tx *postgres.Tx) error {
		if _, err := s.queue.Begin(t.Context(), tx, club.Actor{}, club.ReassessmentRun{Cause: club.CauseRules, CoreVersion: "2", Reason: "x"}); err != nil {
			return err
		}
		return broken
	})
	if !errors.Is(err, broken) {
		s.must(err)
	}
	if got := s.count(`SELECT count(*) FROM jobs.river_job`); got != 0 {
		t.Errorf("%d jobs of a transaction that was rolled back", got)
	}
	s.begin("larkmoor")
	if got := s.count(`SELECT count(*) FROM jobs.river_job WHERE args->>'club' = 'larkmoor'`); got != 1 {
		t.Errorf("%d jobs of a transaction that was not", got)
	}
}

// TestRunIsWorkedOnOnce works on a run of many approvals with several workers, and wants one row for each, again after every job was added anew.
func TestRunIsWorkedOnOnce(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	s.furnish("larkmoor", 25)
	run := s.begin("larkmoor")
	p := &plain{store: s.Store}
	s.work(p, 3)
	s.wait("the run", func() bool { return s.run("larkmoor", run.ID).Done() })
	if got := s.run("larkmoor", run.ID); got.Approvals != 25 || got.DoneCount != 25 || got.FailCount != 0 {
		t.Errorf("the run stands at %+v", got)
	}
	s.wait("all jobs to be told done", func() bool { return s.count(`SELECT count(*) FROM jobs.river_job WHERE state <> 'completed'`) == 0 })
	s.count(`WITH again AS (UPDATE jobs.river_job SET state = 'available', finalized_at = NULL, attempt = 0 RETURNING 1) SELECT count(*)::integer FROM again`)
	s.wait("every job to be worked on twice", func() bool { return len(p.turnsOf()) == 50 })
	s.wait("all jobs to be told done", func() bool { return s.count(`SELECT count(*) FROM jobs.river_job WHERE state <> 'completed'`) == 0 })
	if got := s.count(`SELECT count(*) FROM reassessments`); got != 25 {
		t.Errorf("%d rows after every job was worked on twice, want 25", got)
	}
	if got := s.count(`SELECT count(*) FROM jobs.river_job`); got != 26 {
		t.Errorf("%d jobs, want one for the club and one for each approval", got)
	}
}

// TestClubsTakeTurns lets one club with many approvals begin before three with few, and wants the few done while the many are still being worked on.
func TestClubsTakeTurns(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	const many, few = 60, 4
	s.furnish("many", many)
	for n := range 3 {
		s.furnish(name(n), few)
	}
	p := &plain{store: s.Store}
	gate := make(chan struct{})
	p.before = func(context.Context, jobs.ReassessApproval) error { <-gate; return nil }
	first := s.begin("many")
	s.work(p, 1)
	s.wait("the club with many to be listed", func() bool { return s.run("many", first.ID).Listed })
	for n := range 3 {
		s.begin(name(n))
	}
	close(gate)
	s.wait("the club with many", func() bool { return s.run("many", first.ID).Done() })
	served := p.turnsOf()
	for n := range 3 {
		last := lastIndex(served, name(n))
		if count(served, name(n)) != few {
			t.Errorf("%s was served %d times, want %d", name(n), count(served, name(n)), few)
		}
		// Each round serves four clubs once; the first job was under way, and what was fetched with it.
		if last >= (few+2)*4 {
			t.Errorf("%s was done after %d jobs of %d: %v", name(n), last+1, len(served), served[:last+1])
		}
	}
}

func lastIndex(list []string, what string) int {
	for i, v := range slices.Backward(list) {
		if v == what {
			return i
		}
	}
	return -1
}

func count(list []string, what string) (n int) {
	for _, v := range list {
		if v == what {
			n++
		}
	}
	return n
}

// TestWorkGoesOnAfterAStop stops workers amid a job that does not end by itself, and wants others to finish the run, each approval once.
func TestWorkGoesOnAfterAStop(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	s.furnish("larkmoor", 12)
	run := s.begin("larkmoor")
	var done atomic.Int32
	hang := &plain{store: s.Store, before: func(ctx context.Context, _ jobs.ReassessApproval) error {
		if done.Add(1) <= 5 {
			return nil
		}
		<-ctx.Done()
		return ctx.Err()
	}}
	first, err := jobs.Start(t.Context(), jobs.Config{Store: s.Store, Assessor: hang, Count: 1, Stuck: time.Hour})
	s.must(err)
	s.wait("five approvals", func() bool { return done.Load() > 5 })
	ctx, cancel := context.WithTimeout(t.Context(), 100*time.Millisecond)
	defer cancel()
	s.must(first.Stop(ctx))
	if got := s.run("larkmoor", run.ID).DoneCount; got != 5 {
		t.Fatalf("%d approvals before the stop, want 5", got)
	}
	next := &plain{store: s.Store}
	s.work(next, 2)
	s.wait("the rest", func() bool { return s.run("larkmoor", run.ID).Done() })
	if got := s.count(`SELECT count(*) FROM reassessments`); got != 12 {
		t.Errorf("%d rows, want 12", got)
	}
	if got := len(next.turnsOf()); got != 7 {
		t.Errorf("%d approvals were computed after the stop, want the 7 that were left", got)
	}
}

// TestPoisonIsSeen wants a job that cannot succeed, one that panics at every attempt and one that is refused, to end as failed while the rest is done.
func TestPoisonIsSeen(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	s.furnish("larkmoor", 4)
	run := s.begin("larkmoor")
	bad := make(chan string, 1)
	p := &plain{store: s.Store, before: func(_ context.Context, job jobs.ReassessApproval) error {
		select {
		case bad <- job.Approval:
			return club.RefuseField("document", "NOT_COMPUTABLE", "span: is missing")
		default:
			return nil
		}
	}}
	s.work(p, 1)
	s.wait("the run", func() bool { return s.run("larkmoor", run.ID).Done() })
	if got := s.run("larkmoor", run.ID); got.FailCount != 1 || got.DoneCount != 4 {
		t.Errorf("the run stands at %+v", got)
	}
	s.must(s.Read(t.Context(), "larkmoor", func(tx *postgres.ReadTx) error {
		seen, _, err := tx.ChangedVerdicts(t.Context(), "ada", postgres.ChangeFilter{}, club.Page{})
		if err != nil {
			return err
		}
		if len(seen) != 1 || seen[0].ApprovalID != <-bad || seen[0].Outcome != club.OutcomeFailed || !strings.Contains(seen[0].Failure, "span: is missing") {
			t.Errorf("the list for the officer says %+v", seen)
		}
		return nil
	}))
}

// TestPanicIsTriedAgain panics once and wants the job to succeed at the next attempt.
func TestPanicIsTriedAgain(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	s.furnish("larkmoor", 1)
	run := s.begin("larkmoor")
	var tries atomic.Int32
	s.work(&plain{store: s.Store, before: func(context.Context, jobs.ReassessApproval) error {
		if tries.Add(1) == 1 {
			panic("out of luck")
		}
		return nil
	}}, 1)
	s.wait("the second attempt", func() bool { return s.run("larkmoor", run.ID).Done() })
	if got := s.run("larkmoor", run.ID); got.FailCount != 0 || tries.Load() != 2 {
		t.Errorf("after %d attempts: %+v", tries.Load(), got)
	}
}

// TestCoreBeginsOneRun begins for a core from several processes at once, again, and for the next core.
func TestCoreBeginsOneRun(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	for n := range 2 {
		s.furnish(name(n), 0)
	}
	var begun atomic.Int32
	failed := make(chan error, 4)
	for range 4 {
		go func() {
			n, err := s.queue.BeginForCore(context.WithoutCancel(t.Context()), s.Store, "0.6.1")
			begun.Add(int32(n))
			failed <- err
		}()
	}
	for range 4 {
		s.must(<-failed)
	}
	if begun.Load() != 2 {
		t.Errorf("%d runs for two clubs", begun.Load())
	}
	for _, next := range []struct {
		version string
		want    int
	}{{"0.6.1", 0}, {"0.6.2", 2}, {"0.6.1", 2}} {
		if n, err := s.queue.BeginForCore(t.Context(), s.Store, next.version); err != nil || n != next.want {
			t.Errorf("core %s: %d runs, %v; want %d", next.version, n, err, next.want)
		}
	}
	if got := s.count(`SELECT count(*) FROM ledger_entries WHERE entry LIKE '%reassessment.begun%'`); got != 6 {
		t.Errorf("%d ledger entries, want 6", got)
	}
}

// TestClubsSeeTheirOwnJobs adds a job in one club and looks for it from another.
func TestClubsSeeTheirOwnJobs(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	s.furnish("larkmoor", 0)
	s.furnish("eastfen", 0)
	s.begin("larkmoor")
	for clubID, want := range map[string]int{"larkmoor": 1, "eastfen": 0} {
		if got := s.jobsSeenBy(clubID); got != want {
			t.Errorf("%s sees %d jobs, want %d", clubID, got, want)
		}
	}
}

// TestJobsOfADeadProcessAreTakenUp leaves one job as a process that died leaves it and one with a worker that lives and is slow. Only the first is taken
// up by another, long before it counts as stuck.
func TestJobsOfADeadProcessAreTakenUp(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	s.furnish("larkmoor", 2)
	run := s.begin("larkmoor")
	const beat = 100 * time.Millisecond
	release, begun := make(chan struct{}), make(chan string, 1)
	slow := &plain{store: s.Store, before: func(_ context.Context, job jobs.ReassessApproval) error {
		begun <- job.Approval
		<-release
		return nil
	}}
	first, err := jobs.Start(t.Context(), jobs.Config{Store: s.Store, Assessor: slow, Count: 1, Beat: time.Hour})
	s.must(err)
	held := <-begun
	s.count(`WITH dead AS (UPDATE jobs.river_job SET state = 'running', attempt = 1, attempted_at = now() - interval '1 second', attempted_by = '{gone}'
		WHERE kind = 'reassess_approval' AND state = 'available' RETURNING 1) SELECT count(*)::integer FROM dead`)
	next := &plain{store: s.Store}
	second, err := jobs.Start(t.Context(), jobs.Config{Store: s.Store, Assessor: next, Count: 1, Beat: beat})
	s.must(err)
	s.wait("the job of the dead", func() bool { return s.run("larkmoor", run.ID).DoneCount == 1 })
	time.Sleep(10 * beat)
	close(release)
	s.wait("the run", func() bool { return s.run("larkmoor", run.ID).Done() })
	if got := next.approvals(); len(got) != 1 || got[0] == held {
		t.Errorf("the second took up %v, the first holds %s", got, held)
	}
	for _, w := range []*jobs.Workers{first, second} {
		ctx, cancel := context.WithTimeout(context.Background(), 10*time.Second)
		s.must(w.Stop(ctx))
		cancel()
	}
}
