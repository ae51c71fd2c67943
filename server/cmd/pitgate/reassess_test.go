package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/jackc/pgx/v5"

	"pitgate/server/api"
	"pitgate/server/club"
	"pitgate/server/document"
	"pitgate/server/jobs"
	"pitgate/server/physics/assess"
	"pitgate/server/postgres"
	"pitgate/server/postgres/pgtest"
)

func TestMain(m *testing.M) { pgtest.Main(m) }

// oldClub is a club whose approvals were computed by another core, in a database that another process can reach.
type oldClub struct {
	t     *testing.T
	url   string
	store *postgres.Store
	keys  string
}

// newOldClub makes the club with so many submitted approvals of the Dabchick at Long Acre.
func newOldClub(t *testing.T, approvals int) *oldClub {
	t.Helper()
	o := &oldClub{t: t, url: pgtest.URL(t), keys: t.TempDir()}
	o.store = pgtest.Open(t, o.url)
	ctx, owner := t.Context(), club.Actor{PersonID: "ada", Roles: club.Roles()}
	kept := oldAnswer(t)
	o.must(o.store.InTx(ctx, "larkmoor", func(tx *postgres.Tx) error {
		if _, err := tx.CreateClub(ctx, "Larkmoor"); err != nil {
			return err
		}
		if _, err := tx.CreatePerson(ctx, club.Actor{}, club.Person{ID: owner.PersonID, DisplayName: "Ada", Email: "ada@larkmoor.example", PasswordHash: "x", Roles: owner.Roles}); err != nil {
			return err
		}
		model, err := tx.CreateModel(ctx, owner, club.Model{DisplayName: "Dabchick", Description: json.RawMessage(`{}`)})
		if err != nil {
			return err
		}
		field, err := tx.CreateField(ctx, owner, club.Field{DisplayName: "Long Acre", Description: json.RawMessage(`{}`)})
		if err != nil {
			return err
		}
		for range approvals {
			if err := submitOld(ctx, tx, owner, club.Approval{ModelID: model.ID, FieldID: field.ID}, kept); err != nil {
				return err
			}
		}
		return nil
	}))
	return o
}

func (o *oldClub) must(err error) {
	o.t.Helper()
	if err != nil {
		o.t.Fatal(err)
	}
}

// oldAnswer is the Dabchick's answer with the first finding failing, as another core would have had it.
func oldAnswer(t *testing.T) club.Assessment {
	t.Helper()
	in, err := document.Decode([]byte(wholeDocument(t, "dabchick_long_acre.json")))
	if err != nil {
		t.Fatal(err)
	}
	report, err := document.Assess(in)
	if err != nil {
		t.Fatal(err)
	}
	report.Findings[0].Verdict = assess.VerdictFails
	input, err := document.Canonical(in)
	if err != nil {
		t.Fatal(err)
	}
	answer, err := json.Marshal(report)
	if err != nil {
		t.Fatal(err)
	}
	return club.Assessment{Input: input, Report: answer, InputDigest: document.Digest(in), CoreVersion: "0.0.1"}
}

func submitOld(ctx context.Context, tx *postgres.Tx, owner club.Actor, draft club.Approval, kept club.Assessment) error {
	a, err := tx.CreateApproval(ctx, owner, draft)
	if err != nil {
		return err
	}
	kept.ApprovalID = a.ID
	answer, err := tx.CreateAssessment(ctx, owner, kept)
	if err != nil {
		return err
	}
	_, err = tx.Decide(ctx, postgres.Decision{ID: a.ID, Etag: club.Etag(a.Version), Verb: club.VerbSubmit, By: owner,
		Submission: &postgres.Submission{ModelRevision: 1, FieldVersion: 1, AssessmentID: answer.ID}})
	return err
}

// command is the binary on the club's database.
func (o *oldClub) command(binary string, args ...string) *exec.Cmd {
	c := exec.Command(binary, append(args, "--data", o.keys)...)
	c.Env = append(os.Environ(), "DATABASE_URL="+o.url)
	return c
}

// latest reads the last run that somebody asked for.
func (o *oldClub) latest() (run club.ReassessmentRun) {
	o.t.Helper()
	o.must(o.store.Read(o.t.Context(), "larkmoor", func(tx *postgres.ReadTx) (err error) {
		run, _, err = tx.LatestRun(o.t.Context(), club.CauseAsked)
		return err
	}))
	return run
}

// TestKillAmidReassessment kills a process with kill -9 amid a run, and wants another to finish the same run: no approval is left out and none is
// computed into two rows.
func TestKillAmidReassessment(t *testing.T) {
	t.Parallel()
	const approvals, before = 30, 5
	o := newOldClub(t, approvals)
	binary := filepath.Join(t.TempDir(), "pitgate")
	if out, err := exec.Command("go", "build", "-o", binary, ".").CombinedOutput(); err != nil {
		t.Fatalf("build: %v\n%s", err, out)
	}
	first := o.command(binary, "reassess", "--all")
	o.must(first.Start())
	for end := time.Now().Add(time.Minute); o.latest().DoneCount < before; time.Sleep(5 * time.Millisecond) {
		if time.Now().After(end) {
			t.Fatal("nothing was computed")
		}
	}
	o.must(first.Process.Kill())
	_ = first.Wait()
	at := o.latest()
	if at.Done() {
		t.Fatal("everything was computed before the kill: nothing was proved")
	}
	o.finish(at)
	got := o.latest()
	if got.ID != at.ID || got.DoneCount != approvals || got.ChangedCount != approvals || got.FailCount != 0 {
		t.Errorf("after the second process: %+v, the first left %+v", got, at)
	}
	var rows, answers int
	o.must(o.store.Read(t.Context(), "larkmoor", func(tx *postgres.ReadTx) error {
		listed, _, err := tx.ChangedVerdicts(t.Context(), "ada", postgres.ChangeFilter{}, club.Page{Size: 1000})
		rows = len(listed)
		if err != nil {
			return err
		}
		kept, _, err := tx.Assessments(t.Context(), "", club.Page{Size: 1000})
		answers = len(kept)
		return err
	}))
	if rows != approvals || answers != 2*approvals {
		t.Errorf("%d rows and %d answers, want %d and %d", rows, answers, approvals, 2*approvals)
	}
}

// takenUpWithin is how long jobs may wait that a dead process had begun.
const takenUpWithin = 30 * time.Second

// finish works on what a dead process left, as any server does, and wants it done soon.
func (o *oldClub) finish(run club.ReassessmentRun) {
	o.t.Helper()
	held := o.running()
	workers, err := jobs.Start(o.t.Context(), jobs.Config{Store: o.store, Assessor: assessorOf(o.t, o.store), Count: 2, Log: newLog(o.t.Output(), false)})
	o.must(err)
	defer func() {
		ctx, cancel := context.WithTimeout(context.Background(), 10*time.Second)
		defer cancel()
		o.must(workers.Stop(ctx))
	}()
	var out bytes.Buffer
	ctx, cancel := context.WithTimeout(o.t.Context(), 2*time.Minute)
	defer cancel()
	o.takenUp(held)
	status, err := watch(ctx, o.store, map[string]string{"larkmoor": run.ID}, &out)
	if err != nil || status != 0 {
		o.t.Fatalf("status %d, %v\n%s", status, err, out.String())
	}
	if last := fmt.Sprintf("larkmoor: %d of %d computed", run.Approvals, run.Approvals); !strings.Contains(out.String(), last) {
		o.t.Errorf("the progress ends without %q:\n%s", last, out.String())
	}
}

// running lists the jobs that count as being worked on.
func (o *oldClub) running() (ids []int64) {
	o.t.Helper()
	conn, err := pgx.Connect(o.t.Context(), o.url)
	o.must(err)
	defer conn.Close(context.Background())
	rows, err := conn.Query(o.t.Context(), `SELECT id FROM jobs.river_job WHERE state = 'running' AND attempt = 1`)
	o.must(err)
	ids, err = pgx.CollectRows(rows, pgx.RowTo[int64])
	o.must(err)
	return ids
}

// takenUp waits until the jobs that a dead process held are with somebody else.
func (o *oldClub) takenUp(held []int64) {
	o.t.Helper()
	if len(held) == 0 {
		o.t.Fatal("the dead process held no job: nothing was proved")
	}
	begun := time.Now()
	for slices.ContainsFunc(o.running(), func(id int64) bool { return slices.Contains(held, id) }) {
		if time.Since(begun) > takenUpWithin {
			o.t.Fatalf("jobs %v of a dead process are not taken up after %v", held, takenUpWithin)
		}
		time.Sleep(50 * time.Millisecond)
	}
	o.t.Logf("%d jobs of the dead process were taken up after %v", len(held), time.Since(begun))
}

// TestReassessNeedsOneOfTwo wants a club or all of them.
func TestReassessNeedsOneOfTwo(t *testing.T) {
	t.Parallel()
	for _, args := range [][]string{{}, {"--all", "--club", "larkmoor"}, {"--all", "more"}, {"--all", "--workers", "-1"}} {
		if status, _, errors := try(t, "", append([]string{"reassess"}, args...)...); status != exitUsage || errors == "" {
			t.Errorf("%v: status %d, %q", args, status, errors)
		}
	}
}

// TestNextCoreFollowsUpByItself starts the server's work on a database of another core, and wants every approval computed again without being asked, once.
func TestNextCoreFollowsUpByItself(t *testing.T) {
	t.Parallel()
	o := newOldClub(t, 3)
	for want := range 2 { // the second start begins nothing
		h := &house{settings: settings{workers: 1}, log: newLog(&bytes.Buffer{}, false), grpc: serverOf(t, o.store)}
		o.must(h.work(t.Context(), o.store))
		run := o.core()
		for end := time.Now().Add(time.Minute); !run.Done(); run = o.core() {
			if time.Now().After(end) {
				t.Fatalf("the run stands at %+v", run)
			}
			time.Sleep(20 * time.Millisecond)
		}
		if run.ChangedCount != 3 || run.CoreVersion != assess.Version {
			t.Errorf("start %d: %+v", want+1, run)
		}
		ctx, cancel := context.WithTimeout(context.Background(), 10*time.Second)
		o.must(h.workers.Stop(ctx))
		cancel()
	}
}

// core reads the last run for a core.
func (o *oldClub) core() (run club.ReassessmentRun) {
	o.t.Helper()
	o.must(o.store.Read(o.t.Context(), "larkmoor", func(tx *postgres.ReadTx) (err error) {
		run, _, err = tx.LatestRun(o.t.Context(), club.CauseCore)
		return err
	}))
	return run
}

func serverOf(t *testing.T, store *postgres.Store) *api.Server {
	t.Helper()
	server, err := api.New(api.Config{Store: store})
	if err != nil {
		t.Fatal(err)
	}
	return server
}

func assessorOf(t *testing.T, store *postgres.Store) jobs.Assessor {
	t.Helper()
	return serverOf(t, store).Assessor
}
