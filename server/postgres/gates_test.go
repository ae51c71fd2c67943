package postgres_test

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgconn"

	"pitgate/server/club"
	"pitgate/server/postgres"
)

// said is an answer of the core in small: verdicts of findings, and the mass that the bench list wants, which names the finding "mass".
type said struct {
	mass, height string
	most         float64
}

func (s said) report() json.RawMessage {
	var findings []string
	for _, f := range [][2]string{{"mass", s.mass}, {"height", s.height}} {
		if f[1] != "" {
			findings = append(findings, fmt.Sprintf(`{"id":%q,"verdict":"VERDICT_%s"}`, f[0], f[1]))
		}
	}
	return json.RawMessage(fmt.Sprintf(`{"findings":[%s],"benchItems":[{"id":"bench.mass","title":"Mass","high":%g,"findingIds":["mass"]}]}`, strings.Join(findings, ","), s.most))
}

var asSigned = said{"HOLDS", "HOLDS", 8.6}

// answer keeps an answer for an approval.
func (s *scene) answer(approvalID string, what said) (id string) {
	s.t.Helper()
	s.tx(func(ctx context.Context, tx *postgres.Tx) error {
		a, err := tx.CreateAssessment(ctx, club.Actor{}, club.Assessment{Input: description(8.6), Report: what.report(), InputDigest: strings.Repeat("ab", 32),
			CoreVersion: "1", ApprovalID: approvalID})
		id = a.ID
		return err
	})
	return id
}

// submission submits an approval on an answer.
func (s *scene) submission(a club.Approval, what said) postgres.Decision {
	s.t.Helper()
	d := s.decision(a, club.VerbSubmit, ada)
	d.Submission.AssessmentID = s.answer(a.ID, what)
	return d
}

// signedOn leads an approval to a signature on an answer.
func (s *scene) signedOn(what said) club.Approval {
	s.t.Helper()
	a := s.draft()
	a, err := s.tryDecide(s.submission(a, what))
	s.must(err)
	for _, verb := range []club.Verb{club.VerbBeginReview, club.VerbPassDesk, club.VerbPassBench, club.VerbSign} {
		a = s.decide(a, verb, ines)
	}
	return a
}

// lapseFor lapses an approval for another answer.
func (s *scene) lapseFor(a club.Approval, what said) (after club.Approval, answerID string) {
	s.t.Helper()
	answerID = s.answer(a.ID, what)
	s.tx(func(ctx context.Context, tx *postgres.Tx) error {
		return tx.LapseForAnswer(ctx, a.ID, answerID, "The rules changed.")
	})
	return s.again(a.ID), answerID
}

// fatesOf writes the fates of the last step: "+" stands, "-" opens again.
func fatesOf(a club.Approval) (out string) {
	for _, f := range a.Transitions[len(a.Transitions)-1].Gates {
		out += map[bool]string{true: "+", false: "-"}[f.Stands] + string(f.Gate) + " "
	}
	return strings.TrimSpace(out)
}

func TestLapseOpensOnlyTheGatesConcerned(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	for name, tt := range map[string]struct {
		becomes said
		fates   string
		path    []club.Verb
	}{
		"desk":    {said{"HOLDS", "FAILS", 8.6}, "-desk +bench -field", []club.Verb{club.VerbBeginReview, club.VerbPassDesk, club.VerbSign}},
		"bench":   {said{"HOLDS", "HOLDS", 8.5}, "+desk -bench -field", []club.Verb{club.VerbBeginReview, club.VerbPassBench, club.VerbSign}},
		"both":    {said{"FAILS", "HOLDS", 8.6}, "-desk -bench -field", []club.Verb{club.VerbBeginReview, club.VerbPassDesk, club.VerbPassBench, club.VerbSign}},
		"neither": {said{"HOLDS", "", 8.6}, "+desk +bench -field", []club.Verb{club.VerbBeginReview, club.VerbSign}},
	} {
		signed := s.signedOn(asSigned)
		a, answer := s.lapseFor(signed, tt.becomes)
		if a.State != club.Lapsed || a.AssessmentID != answer || fatesOf(a) != tt.fates {
			t.Errorf("%s: %s on %s, gates %q; want %q on %s", name, a.State, a.AssessmentID, fatesOf(a), tt.fates, answer)
		}
		s.wantTold(a)
		a, err := s.tryDecide(s.submission(a, tt.becomes))
		s.must(err)
		for _, verb := range tt.path {
			a = s.decide(a, verb, ines)
		}
		if a.State != club.Signed {
			t.Errorf("%s: after %v it is %s", name, tt.path, a.State)
		}
		s.wantSignatureAsGiven(signed, a)
	}
}

// wantTold wants the ledger entry of the last step to say what became of each gate and why.
func (s *scene) wantTold(a club.Approval) {
	s.t.Helper()
	last := a.Transitions[len(a.Transitions)-1]
	var entry string
	s.must(s.owner().QueryRow(s.t.Context(), `SELECT entry FROM ledger_entries WHERE entry_index = $1`, last.LedgerIndex).Scan(&entry))
	for _, f := range last.Gates {
		if part := fmt.Sprintf(`{"gate":%q,"stands":%v,"why":%q}`, f.Gate, f.Stands, f.Why); f.Why == "" || !strings.Contains(entry, part) {
			s.t.Errorf("the ledger entry %s lacks %s", entry, part)
		}
	}
	if !strings.Contains(last.Reason, "open again") {
		s.t.Errorf("reason %q", last.Reason)
	}
}

// wantSignatureAsGiven wants the former signature to be what it was but lapsed, and a further one over the present answer.
func (s *scene) wantSignatureAsGiven(before, after club.Approval) {
	s.t.Helper()
	was := before.Signatures[0]
	was.Lapsed = true
	now := after
	now.Signatures = nil
	digest, err := club.SigningDigest(larkmoor, now)
	s.must(err)
	if len(after.Signatures) != 2 || after.Signatures[0] != was || after.Signatures[1].Lapsed || after.Signatures[1].Digest != digest || digest == was.Digest {
		s.t.Errorf("signatures %+v, want %+v and one over %s", after.Signatures, was, digest)
	}
}

func TestNoGateStandsForAnotherFlight(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	becomes := said{"HOLDS", "FAILS", 8.6}
	for name, tt := range map[string]struct {
		change func(*postgres.Submission)
		stands bool
	}{
		"the same words otherwise written": {func(in *postgres.Submission) { in.Day = json.RawMessage(`{ "time" : "2026-11-25T10:00:00Z" }`) }, true},
		"another day":                      {func(in *postgres.Submission) { in.Day = json.RawMessage(`{"time":"2026-11-26T10:00:00Z"}`) }, false},
		"another plan":                     {func(in *postgres.Submission) { in.LaunchPlan = json.RawMessage(`{"method":"LAUNCH_METHOD_RUNWAY"}`) }, false},
		"another answer":                   {func(in *postgres.Submission) { in.AssessmentID = s.answer("", said{"TIGHT", "FAILS", 8.6}) }, false},
	} {
		a, _ := s.lapseFor(s.signedOn(asSigned), becomes)
		d := s.submission(a, becomes)
		if tt.change != nil {
			if d.Submission.AssessmentID == "" {
				t.Fatal("no answer")
			}
			tt.change(d.Submission)
		}
		after, err := s.tryDecide(d)
		if err != nil || slices.Contains(after.KeptGates, club.BenchGate) != tt.stands {
			t.Errorf("%s: kept %v, %v", name, after.KeptGates, err)
		}
		if want := map[bool]string{true: "+bench", false: "-bench"}[tt.stands]; fatesOf(after) != want {
			t.Errorf("%s: gates %q, want %q", name, fatesOf(after), want)
		}
	}
	s.wantNoneForAnotherRevision(becomes)
}

// wantNoneForAnotherRevision changes the model of an approval that lapsed, and then of one that is signed.
func (s *scene) wantNoneForAnotherRevision(becomes said) {
	s.t.Helper()
	lapsed, _ := s.lapseFor(s.signedOn(asSigned), becomes)
	signed := s.signedOn(asSigned)
	s.tx(func(ctx context.Context, tx *postgres.Tx) error {
		_, err := tx.UpdateModel(ctx, ada, postgres.ModelChange{ID: s.redshank.ID, Etag: club.Etag(s.redshank.Version), Description: description(8.7)})
		return err
	})
	if after := s.again(signed.ID); fatesOf(after) != "-desk -bench -field" || len(after.KeptGates) > 0 {
		s.t.Errorf("signed and changed: gates %q, kept %v", fatesOf(after), after.KeptGates)
	}
	d := s.submission(lapsed, becomes)
	d.Submission.ModelRevision = 2
	after, err := s.tryDecide(d)
	if err != nil || fatesOf(after) != "-bench" || len(after.KeptGates) > 0 {
		s.t.Errorf("lapsed and changed: gates %q, kept %v, %v", fatesOf(after), after.KeptGates, err)
	}
}

func TestReturnKeepsNoGate(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	becomes := said{"HOLDS", "FAILS", 8.6}
	a, _ := s.lapseFor(s.signedOn(asSigned), becomes)
	a, err := s.tryDecide(s.submission(a, becomes))
	s.must(err)
	if a = s.decide(a, club.VerbReturn, ines); len(a.KeptGates) > 0 || fatesOf(a) != "-bench" {
		t.Errorf("kept %v, gates %q", a.KeptGates, fatesOf(a))
	}
}

func TestHeldKeepsGatesUnderneath(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	a, _ := s.lapseFor(s.decide(s.signedOn(asSigned), club.VerbHold, ines), said{"HOLDS", "FAILS", 8.6})
	if a.State != club.Held || a.HeldFrom != club.Lapsed || fatesOf(a) != "-desk +bench -field" {
		t.Fatalf("%s from %s, gates %q", a.State, a.HeldFrom, fatesOf(a))
	}
	if a = s.decide(a, club.VerbRelease, tomas); a.State != club.Lapsed || !slices.Equal(a.KeptGates, []club.Gate{club.BenchGate}) {
		t.Errorf("released it is %s with %v", a.State, a.KeptGates)
	}
}

// TestAnswerOpensGatesUnderReview has an officer answer a rule on an approval that is ready.
func TestAnswerOpensGatesUnderReview(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	for name, tt := range map[string]struct {
		becomes said
		state   club.State
		fates   string
	}{
		"nothing turned": {asSigned, club.Ready, ""},
		"desk":           {said{"HOLDS", "TIGHT", 8.6}, club.DeskReview, "-desk +bench"},
		"bench":          {said{"HOLDS", "HOLDS", 8.4}, club.Bench, "+desk -bench"},
	} {
		a, err := s.tryDecide(s.submission(s.draft(), asSigned))
		s.must(err)
		for _, verb := range []club.Verb{club.VerbBeginReview, club.VerbPassDesk, club.VerbPassBench} {
			a = s.decide(a, verb, ines)
		}
		d := s.decision(a, club.VerbConfirmRule, tomas)
		d.Answer = &postgres.Answer{Rule: "club.helper", Confirmed: true, Date: "2026-11-25", AssessmentID: s.answer(a.ID, tt.becomes)}
		if a, err = s.tryDecide(d); err != nil || a.State != tt.state || fatesOf(a) != tt.fates {
			t.Errorf("%s: %s, gates %q, %v", name, a.State, fatesOf(a), err)
		}
	}
}

// TestDatabaseGuardsGates writes past the program what no approval may come to.
func TestDatabaseGuardsGates(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	kept, _ := s.lapseFor(s.signedOn(asSigned), said{"HOLDS", "FAILS", 8.6})
	signed, ready, review, submitted := s.signedOn(asSigned), s.lead(club.Ready), s.lead(club.DeskReview), s.lead(club.Submitted)
	other := s.answer("", asSigned)
	for _, tt := range []struct{ what, id, set, want string }{
		{"a gate that did not stand", submitted.ID, `kept_gates = '{bench}'`, "kept_gate_stood"},
		{"another gate than the kept one", kept.ID, `kept_gates = '{desk,bench}'`, "kept_gate_stood"},
		{"no such gate", kept.ID, `kept_gates = '{bench,field}'`, "kept_gate_stood"},
		{"the field gate of what is ready", ready.ID, `kept_gates = '{field}'`, "kept_gate_stood"},
		{"a kept gate for another day", kept.ID, `day = '{}'`, "gates_of_one_flight"},
		{"a kept gate for another plan", kept.ID, `launch_plan = '{}'`, "gates_of_one_flight"},
		{"what is ready for another day", ready.ID, `day = '{}'`, "gates_of_one_flight"},
		{"past the desk", submitted.ID, `state = 'bench'`, "gate_passed_or_kept"},
		{"past the bench", review.ID, `state = 'ready'`, "gate_passed_or_kept"},
		{"past the desk with a kept bench", kept.ID, `state = 'ready'`, "gate_passed_or_kept"},
		{"signed from the review", review.ID, `state = 'signed'`, "gate_passed_or_kept"},
		{"signed under a hold", submitted.ID, `state = 'held', held_from = 'signed'`, "gate_passed_or_kept"},
		{"flown unsigned", ready.ID, `state = 'flown'`, "gate_passed_or_kept"},
		{"signed, another answer", signed.ID, `assessment_id = '` + other + `'`, "signed_answer_stays"},
		{"signing another answer", ready.ID, `state = 'signed', assessment_id = '` + other + `'`, "signed_answer_stays"},
		{"a kept gate given up", kept.ID, `kept_gates = '{}'`, ""},
		{"no gate behind, another day", submitted.ID, `day = '{}'`, ""},
	} {
		if got := constraintOf(s.setAsProgram(larkmoor, tt.id, tt.set)); got != tt.want {
			t.Errorf("%s: refused by %q, want %q", tt.what, got, tt.want)
		}
	}
	if err := s.copyWithGates(ready.ID); constraintOf(err) != "kept_gate_stood" {
		t.Errorf("a new approval with gates behind it: %v", err)
	}
}

// constraintOf is what refused a statement; empty when nothing did.
func constraintOf(err error) string {
	var pg *pgconn.PgError
	if errors.As(err, &pg) {
		return pg.ConstraintName
	}
	if err != nil {
		return err.Error()
	}
	return ""
}

// setAsProgram changes one approval as the program's role, and rolls it back.
func (s *scene) setAsProgram(clubID, id, set string) (err error) {
	s.t.Helper()
	back := fmt.Errorf("rolled back")
	got := s.asProgram(clubID, func(tx pgx.Tx) error {
		tag, e := tx.Exec(s.t.Context(), `UPDATE approvals SET `+set+` WHERE approval_id = $1`, id)
		if err = e; e == nil && tag.RowsAffected() != 1 {
			err = fmt.Errorf("%d rows", tag.RowsAffected())
		}
		return back
	})
	if got == nil {
		s.t.Error("it was not rolled back")
	}
	return err
}

// copyWithGates inserts an approval with a gate behind it.
func (s *scene) copyWithGates(id string) error {
	return s.asProgram(larkmoor, func(tx pgx.Tx) error {
		_, err := tx.Exec(s.t.Context(), `INSERT INTO approvals (club_id, approval_id, owner_id, state, model_id, model_revision, field_id, field_version, launch_plan, day,
			version, create_time, update_time, kept_gates) SELECT club_id, 'copy', owner_id, 'draft', model_id, model_revision, field_id, field_version, launch_plan, day,
			1, now(), now(), '{bench}' FROM approvals WHERE approval_id = $1`, id)
		return err
	})
}

// TestGatesOfAnotherClubAreOutOfReach tries to give up a kept gate from another club, and to see what became of it.
func TestGatesOfAnotherClubAreOutOfReach(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	s.open("otherclub")
	kept, _ := s.lapseFor(s.signedOn(asSigned), said{"HOLDS", "FAILS", 8.6})
	for clubID, want := range map[string]string{"otherclub": "0 rows", "": "0 rows", larkmoor: "<nil>"} {
		if got := fmt.Sprint(s.setAsProgram(clubID, kept.ID, `kept_gates = '{}'`)); got != want {
			t.Errorf("from %q: %s, want %s", clubID, got, want)
		}
	}
	if got := s.count("otherclub", `transitions WHERE gates <> '[]'`); got != 0 {
		t.Errorf("another club sees %d lapses", got)
	}
	if got := s.count(larkmoor, `transitions WHERE gates <> '[]'`); got != 1 {
		t.Errorf("the club sees %d lapses, want 1", got)
	}
	answer := s.answer(kept.ID, asSigned)
	err := s.InTx(t.Context(), "otherclub", func(tx *postgres.Tx) error { return tx.LapseForAnswer(t.Context(), kept.ID, answer, "Theirs.") })
	s.refused(err, club.NotFound)
}

// way is an approval on a random way, with what its gates were passed for, noted apart from what the store keeps.
type way struct {
	*scene
	club.Approval
	random *rand.Rand
	// answer is what the core said last; good are the gates that were passed for it or for what leaves them as they are.
	answer said
	good   map[club.Gate]bool
	signed int
}

// TestNoStoredWayPastAGate goes random ways through the store, with answers of the core in small, and wants nothing signed past a gate that was not
// passed for the present answer or for one from which nothing came since that concerns the gate.
func TestNoStoredWayPastAGate(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	signed := 0
	for seed := range uint64(10) {
		w := &way{scene: s, Approval: s.draft(), random: rand.New(rand.NewPCG(seed, 4)), answer: asSigned, good: map[club.Gate]bool{}}
		for range 40 {
			w.step()
			w.check(seed)
		}
		signed += w.signed
	}
	if signed < 20 {
		t.Errorf("only %d signatures: the ways prove little", signed)
	}
}

// step does something at random that the state allows, more often what leads on.
func (w *way) step() {
	on := []club.Verb{club.VerbSubmit, club.VerbBeginReview, club.VerbPassDesk, club.VerbPassBench, club.VerbSign}
	aside := []club.Verb{club.VerbConfirmRule, club.VerbReturn, club.VerbHold, club.VerbRelease, club.VerbLapse, club.VerbLapse}
	verbs := on
	if leads := slices.ContainsFunc(on, w.allows); !leads || w.random.IntN(4) == 0 {
		verbs = aside
	}
	verbs = slices.DeleteFunc(verbs, func(v club.Verb) bool { return !w.allows(v) })
	if len(verbs) > 0 {
		w.do(verbs[w.random.IntN(len(verbs))])
	}
}

func (w *way) allows(verb club.Verb) bool {
	if verb == club.VerbLapse {
		return w.Underneath().RestsOnRevision()
	}
	_, err := club.Next(w.Approval, verb, actorOf(verb), "why")
	return err == nil
}

func actorOf(verb club.Verb) club.Actor {
	if verb == club.VerbSubmit {
		return ada
	}
	return ines
}

// do does a verb and notes which gates are good.
func (w *way) do(verb club.Verb) {
	if verb == club.VerbLapse {
		becomes := w.next()
		w.note(becomes)
		w.Approval, _ = w.lapseFor(w.Approval, becomes)
		return
	}
	d := w.decision(w.Approval, verb, actorOf(verb))
	switch verb {
	case club.VerbSubmit:
		becomes := w.next()
		d = w.submission(w.Approval, becomes)
		if w.random.IntN(6) == 0 {
			d.Submission.Day = json.RawMessage(fmt.Sprintf(`{"time":"2026-12-%02dT10:00:00Z"}`, 1+w.Version%28))
			w.good = map[club.Gate]bool{}
		}
		w.note(becomes)
	case club.VerbConfirmRule:
		becomes := w.next()
		d.Answer = &postgres.Answer{Rule: "club.helper", Date: "2026-11-25", AssessmentID: w.scene.answer(w.ID, becomes)}
		w.note(becomes)
	case club.VerbReturn:
		w.good = map[club.Gate]bool{}
	case club.VerbPassDesk:
		w.good[club.DeskGate] = true
	case club.VerbPassBench:
		w.good[club.BenchGate] = true
	default:
	}
	after, err := w.tryDecide(d)
	w.must(err)
	w.Approval = after
	if verb == club.VerbSign {
		w.signed++
	}
}

// next is another answer: often the same one.
func (w *way) next() said {
	becomes := w.answer
	verdicts := []string{"", "HOLDS", "TIGHT", "UNKNOWN", "FAILS"}
	switch w.random.IntN(6) {
	case 0:
		becomes.mass = verdicts[w.random.IntN(len(verdicts))]
	case 1:
		becomes.height = verdicts[w.random.IntN(len(verdicts))]
	case 2:
		becomes.most = 8 + float64(w.random.IntN(2))
	}
	return becomes
}

// note takes away what an answer concerns, by the rule in the words of this small core.
func (w *way) note(becomes said) {
	weight := map[string]int{"": -1, "HOLDS": 0, "TIGHT": 1, "UNKNOWN": 2, "FAILS": 3}
	if weight[becomes.mass] > weight[w.answer.mass] || weight[becomes.height] > weight[w.answer.height] {
		delete(w.good, club.DeskGate)
	}
	if becomes.mass != w.answer.mass || becomes.most != w.answer.most {
		delete(w.good, club.BenchGate)
	}
	w.answer = becomes
}

// check wants no gate behind the approval that is not good.
func (w *way) check(seed uint64) {
	w.t.Helper()
	for _, gate := range w.Standing() {
		if gate != club.FieldGate && !w.good[gate] {
			w.t.Fatalf("way %d: %s stands for %+v in state %s and was not passed for it", seed, gate, w.answer, w.State)
		}
	}
	if w.State == club.DeskReview && w.good[club.DeskGate] || w.State == club.Bench && w.good[club.BenchGate] {
		w.t.Fatalf("way %d: %s asks again for a gate that stands", seed, w.State)
	}
}
