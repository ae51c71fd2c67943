package club

import (
	"fmt"
	"testing"
)

// lives is the state machine once more, as the product tells it: verb, then every state it leads from and to. Whatever
// is not listed is refused.
var lives = map[Verb]map[State]State{
	VerbSubmit:       {Draft: Submitted, Returned: Submitted, Lapsed: Submitted},
	VerbBeginReview:  {Submitted: DeskReview},
	VerbReturn:       {Submitted: Returned, DeskReview: Returned, Bench: Returned, Ready: Returned},
	VerbPassDesk:     {DeskReview: Bench},
	VerbPassBench:    {Bench: Ready},
	VerbConfirmRule:  {DeskReview: DeskReview, Bench: Bench, Ready: Ready},
	VerbSign:         {Ready: Signed},
	VerbRecordFlight: {Signed: Flown},
	VerbRefuse:       {Submitted: Refused, DeskReview: Refused, Bench: Refused, Ready: Refused},
	VerbWithdraw: {Draft: Withdrawn, Submitted: Withdrawn, DeskReview: Withdrawn, Returned: Withdrawn, Bench: Withdrawn,
		Ready: Withdrawn, Signed: Withdrawn, Lapsed: Withdrawn, Held: Withdrawn},
	VerbHold:    {Submitted: Held, DeskReview: Held, Returned: Held, Bench: Held, Ready: Held, Signed: Held, Held: Held},
	VerbRelease: {Held: Bench},
}

var (
	ada  = Actor{PersonID: "ada", Roles: []Role{Member}}
	bram = Actor{PersonID: "bram", Roles: []Role{Member}}
	ines = Actor{PersonID: "ines", Roles: []Role{Member, SafetyOfficer}}
	mei  = Actor{PersonID: "mei", Roles: []Role{Member, Committee, FieldKeeper, Administrator}}
)

// approvalIn is one of Ada's; when held, it was held at the bench gate.
func approvalIn(state State) Approval {
	a := Approval{State: state, OwnerID: ada.PersonID}
	if state == Held {
		a.HeldFrom = Bench
	}
	return a
}

// rightful is somebody who may do the verb.
func rightful(verb Verb) Actor {
	if verb == VerbSubmit || verb == VerbWithdraw {
		return ada
	}
	return ines
}

func TestEveryVerbInEveryState(t *testing.T) {
	t.Parallel()
	if len(Rules()) != len(lives) {
		t.Fatalf("%d verbs in the table, want %d", len(Rules()), len(lives))
	}
	for verb, leads := range lives {
		for _, state := range States() {
			t.Run(fmt.Sprintf("%s/%s", verb, state), func(t *testing.T) {
				t.Parallel()
				got, err := Next(approvalIn(state), verb, rightful(verb), "because the wing is warped")
				want, allowed := leads[state]
				switch {
				case allowed && (err != nil || got != want):
					t.Errorf("got %q, %v; want %q", got, err, want)
				case !allowed && CodeOf(err) != FailedPrecondition:
					t.Errorf("got %q, %v; want failed_precondition", got, err)
				}
			})
		}
	}
}

func TestWhoMay(t *testing.T) {
	t.Parallel()
	officerOwner := Actor{PersonID: ada.PersonID, Roles: []Role{Member, SafetyOfficer}}
	actors := map[string]Actor{"owner": ada, "owner who is an officer": officerOwner, "member": bram, "officer": ines, "committee": mei}
	only := func(names ...string) map[string]bool {
		may := map[string]bool{}
		for _, name := range names {
			may[name] = true
		}
		return may
	}
	may := map[Verb]map[string]bool{
		VerbSubmit: only("owner", "owner who is an officer"), VerbWithdraw: only("owner", "owner who is an officer"),
		VerbBeginReview: only("officer"), VerbReturn: only("officer"), VerbPassDesk: only("officer"), VerbPassBench: only("officer"),
		VerbConfirmRule: only("officer"), VerbSign: only("officer"), VerbRefuse: only("officer"), VerbRelease: only("officer"),
		VerbRecordFlight: only("owner", "owner who is an officer", "officer"),
		VerbHold:         only("owner", "owner who is an officer", "officer"),
	}
	for verb, allowed := range may {
		for name, actor := range actors {
			t.Run(fmt.Sprintf("%s/%s", verb, name), func(t *testing.T) {
				t.Parallel()
				err := Permit(approvalIn(Ready), verb, actor)
				if allowed[name] && err != nil {
					t.Errorf("refused: %v", err)
				}
				if !allowed[name] && CodeOf(err) != Forbidden {
					t.Errorf("got %v, want forbidden", err)
				}
			})
		}
	}
}

func TestNobodyIsNotTheOwnerOfAnOwnerlessApproval(t *testing.T) {
	t.Parallel()
	if err := Permit(Approval{State: Draft}, VerbSubmit, Actor{}); CodeOf(err) != Forbidden {
		t.Errorf("got %v, want forbidden", err)
	}
}

func TestReasonIsAskedFor(t *testing.T) {
	t.Parallel()
	asks := map[Verb]bool{VerbReturn: true, VerbRefuse: true, VerbHold: true, VerbRelease: true, VerbConfirmRule: true}
	from := map[Verb]State{VerbConfirmRule: Ready, VerbReturn: Bench, VerbRefuse: Bench, VerbHold: Bench, VerbRelease: Held, VerbPassBench: Bench, VerbWithdraw: Bench}
	for verb, state := range from {
		_, err := Next(approvalIn(state), verb, rightful(verb), " \t")
		if asks[verb] != (CodeOf(err) == Invalid) {
			t.Errorf("%s without a reason: got %v", verb, err)
		}
	}
}

func TestReleaseGoesBackToWhereItWasHeld(t *testing.T) {
	t.Parallel()
	for _, from := range []State{Submitted, Ready, Signed, Lapsed} {
		got, err := Next(Approval{State: Held, HeldFrom: from, OwnerID: "ada"}, VerbRelease, ines, "the trap is fitted")
		if err != nil || got != from {
			t.Errorf("held from %s: got %s, %v", from, got, err)
		}
	}
}

func TestTheClubsOwnVerbsCannotBeAskedFor(t *testing.T) {
	t.Parallel()
	for _, verb := range []Verb{VerbCreate, VerbLapse, VerbHoldByLesson, "", "debrief"} {
		if _, err := Next(approvalIn(Signed), verb, ines, "why"); CodeOf(err) != Invalid {
			t.Errorf("%q: got %v, want invalid", verb, err)
		}
	}
}

func TestStatesOnTheWire(t *testing.T) {
	t.Parallel()
	for _, state := range States() {
		if state.Proto() == 0 || StateOf(state.Proto()) != state {
			t.Errorf("%s becomes %v and then %q", state, state.Proto(), StateOf(state.Proto()))
		}
	}
	if got := StateOf(0); got != "" {
		t.Errorf("unspecified becomes %q", got)
	}
	for _, injury := range []Injury{InjuryUnknown, InjuryNone, InjuryMinor, InjurySerious, InjuryFatal} {
		if got := InjuryOf(injury.Proto()); got != injury {
			t.Errorf("injury %q becomes %q", injury, got)
		}
	}
	for _, state := range []IncidentState{Reported, UnderReview, Closed} {
		if state.Proto() == 0 || IncidentStateOf(state.Proto()) != state {
			t.Errorf("incident state %q becomes %v", state, state.Proto())
		}
	}
	if Proposed.Proto() == 0 || Adopted.Proto() == 0 || Proposed.Proto() == Adopted.Proto() {
		t.Error("lesson states are not told apart")
	}
}
