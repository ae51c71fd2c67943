package club

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
)

func TestFatesAndWhereTheyLead(t *testing.T) {
	t.Parallel()
	desk, bench := Touch{DeskGate: "mass fails"}, Touch{BenchGate: "weigh it"}
	both := Touch{DeskGate: "mass fails", BenchGate: "weigh it"}
	for name, tt := range map[string]struct {
		state    State
		kept     []Gate
		touch    Touch
		words    string
		reviewed State
	}{
		"signed, desk":             {Signed, nil, desk, "Of the gates open again: desk (mass fails), field (" + fieldAnew + "); stand: bench.", Ready},
		"signed, bench":            {Signed, nil, bench, "Of the gates open again: bench (weigh it), field (" + fieldAnew + "); stand: desk.", Bench},
		"signed, neither":          {Signed, nil, nil, "Of the gates open again: field (" + fieldAnew + "); stand: desk, bench.", Ready},
		"ready, both":              {Ready, nil, both, "Of the gates open again: desk (mass fails), bench (weigh it).", Bench},
		"ready, all for one":       {Ready, nil, TouchAll("heavier"), "Of the gates open again: desk (heavier), bench (heavier).", Bench},
		"bench, neither":           {Bench, nil, nil, "Of the gates stand: desk.", Bench},
		"desk review, kept bench":  {DeskReview, []Gate{BenchGate}, desk, "Of the gates stand: bench.", Ready},
		"submitted, nothing stood": {Submitted, nil, both, "", Bench},
		"submitted, kept touched":  {Submitted, []Gate{BenchGate}, both, "Of the gates open again: bench (weigh it).", Bench},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			a := Approval{State: tt.state, KeptGates: tt.kept, OwnerID: ada.PersonID}
			fates := a.Fates(tt.touch)
			if got := GateWords(fates); got != tt.words {
				t.Errorf("got  %s\nwant %s", got, tt.words)
			}
			lapsed := a.Lapse(fates)
			lapsed.State = Submitted
			if got := reviewed(t, lapsed); got != tt.reviewed {
				t.Errorf("after the desk gate it is %s, want %s", got, tt.reviewed)
			}
		})
	}
}

// reviewed takes a submitted approval up, passes the desk gate where it is asked for, and says where that leads.
func reviewed(t *testing.T, a Approval) State {
	t.Helper()
	for _, verb := range []Verb{VerbBeginReview, VerbPassDesk} {
		next, err := Next(a, verb, ines, "")
		if err != nil {
			t.Fatal(err)
		}
		if a.State = next; next != DeskReview {
			break
		}
	}
	return a.State
}

func TestHeldLapsesUnderneath(t *testing.T) {
	t.Parallel()
	a := Approval{State: Held, HeldFrom: Signed}
	after := a.Lapse(a.Fates(Touch{DeskGate: "mass fails"}))
	if after.State != Held || after.HeldFrom != Lapsed || !slices.Equal(after.KeptGates, []Gate{BenchGate}) {
		t.Errorf("got %+v", after)
	}
}

func TestGatesOnTheWire(t *testing.T) {
	t.Parallel()
	seen := map[int32]bool{0: true}
	for _, gate := range Gates() {
		if p := int32(gate.Proto()); seen[p] {
			t.Errorf("%s becomes %d", gate, p)
		} else {
			seen[p] = true
		}
	}
}

// walk is an approval on a random way through its life, with what its gates were passed for, told apart from the approval itself.
type walk struct {
	Approval
	random *rand.Rand
	// good are the gates that were passed for the present answer, or for one from which nothing came since that concerns them.
	good map[Gate]bool
	path []string
}

// TestNoWayPastAGate goes ways of random decisions, lapses, answers and changes, and wants no approval signed past a gate that was not passed for the
// present answer or kept by the rule, no gate standing that was not, and none asked for again that was.
func TestNoWayPastAGate(t *testing.T) {
	t.Parallel()
	signed, kept := 0, 0
	for seed := range uint64(10_000) {
		w := &walk{Approval: Approval{State: Draft, OwnerID: ada.PersonID}, random: rand.New(rand.NewPCG(seed, 9)), good: map[Gate]bool{}}
		for range 40 {
			w.step()
			if fault := w.fault(); fault != "" {
				t.Fatalf("way %d: %s after %s", seed, fault, strings.Join(w.path, ", "))
			}
			if w.State == Signed {
				signed++
				kept += len(w.KeptGates)
			}
		}
	}
	if signed < 2000 || kept < 300 {
		t.Errorf("only %d times signed, with %d gates kept: the ways prove little", signed, kept)
	}
}

// step does something at random that the state allows.
func (w *walk) step() {
	from := w.State
	verbs := []Verb{VerbSubmit, VerbSubmit, VerbBeginReview, VerbBeginReview, VerbPassDesk, VerbPassDesk, VerbPassBench, VerbPassBench, VerbSign, VerbSign,
		VerbReturn, VerbHold, VerbRelease, VerbConfirmRule, VerbLapse}
	verb := verbs[w.random.IntN(len(verbs))]
	if verb == VerbLapse {
		if w.Underneath().RestsOnRevision() {
			w.Approval = w.Lapse(w.Fates(w.touch(verb)))
			w.path = append(w.path, "lapse")
		}
		return
	}
	next, err := Next(w.Approval, verb, rightful(verb), "why")
	if err != nil {
		return
	}
	w.path = append(w.path, fmt.Sprintf("%s to %s", verb, next))
	w.take(verb, next)
	if from == Held || verb != VerbHold {
		return
	}
	w.HeldFrom = from
}

// take does to the approval what keeping the verb does, and notes which gates are good.
func (w *walk) take(verb Verb, next State) {
	switch verb {
	case VerbConfirmRule:
		w.Approval = w.Reopen(w.Fates(w.touch(verb)))
		return
	case VerbSubmit:
		w.KeptGates = Kept(w.Fates(w.touch(verb)))
	case VerbReturn:
		w.KeptGates, w.good = nil, map[Gate]bool{}
	case VerbPassDesk:
		w.good[DeskGate] = true
	case VerbPassBench:
		w.good[BenchGate] = true
	default:
	}
	w.State = next
}

// touch is another answer at random, or all gates for another flight.
func (w *walk) touch(verb Verb) Touch {
	touch := Touch{}
	for _, gate := range []Gate{DeskGate, BenchGate} {
		if w.random.IntN(3) == 0 {
			touch[gate] = "it turned"
		}
	}
	if w.random.IntN(5) == 0 {
		touch = TouchAll("another flight")
	}
	for gate := range touch {
		delete(w.good, gate)
	}
	w.path = append(w.path, fmt.Sprintf("%s touches %v", verb, touch))
	return touch
}

// fault says what is wrong with where the approval stands.
func (w *walk) fault() string {
	for _, gate := range w.Standing() {
		if gate != FieldGate && !w.good[gate] {
			return fmt.Sprintf("%s stands and was not passed", gate)
		}
	}
	switch {
	case (w.State == Signed || w.State == Ready) && (!w.good[DeskGate] || !w.good[BenchGate]):
		return "past a gate that was not passed"
	case w.State == DeskReview && w.good[DeskGate], w.State == Bench && w.good[BenchGate]:
		return "a gate that stands is asked for again"
	}
	return ""
}
