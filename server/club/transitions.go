package club

import (
	"slices"
	"strings"
)

// Verb is what somebody does to an approval.
type Verb string

// The verbs. VerbCreate opens an approval; VerbLapse is done by the club itself when a model or a field changes, and
// VerbHoldByLesson when a lesson is adopted. These three cannot be asked for.
const (
	VerbCreate       Verb = "create"
	VerbSubmit       Verb = "submit"
	VerbBeginReview  Verb = "begin_review"
	VerbReturn       Verb = "return"
	VerbPassDesk     Verb = "pass_desk"
	VerbPassBench    Verb = "pass_bench"
	VerbSign         Verb = "sign"
	VerbConfirmRule  Verb = "confirm_rule"
	VerbRecordFlight Verb = "record_flight"
	VerbRefuse       Verb = "refuse"
	VerbWithdraw     Verb = "withdraw"
	VerbHold         Verb = "hold"
	VerbRelease      Verb = "release"
	VerbLapse        Verb = "lapse"
	VerbHoldByLesson Verb = "hold_by_lesson"
)

// OwnerRule says what an approval's owner has to do with a verb.
type OwnerRule int

// The owner rules.
const (
	// OwnerMust: the owner and nobody else.
	OwnerMust OwnerRule = iota
	// OwnerMay: the owner, or anyone with one of the roles.
	OwnerMay
	// OwnerNever: anyone with one of the roles but the owner.
	OwnerNever
)

// Rule is one line of the approval's state machine.
type Rule struct {
	Verb Verb
	From []State
	// To is the state reached, or past it where the gate that it asks for was kept. Empty: back to the state it was held from, or where Stays is set the
	// state it is in.
	To    State
	Stays bool
	Roles []Role
	Owner OwnerRule
	// Reason tells that a reason must be given.
	Reason bool
}

var officers = []Role{SafetyOfficer}

// rules is the whole state machine of an approval.
var rules = []Rule{
	{Verb: VerbSubmit, From: []State{Draft, Returned, Lapsed}, To: Submitted, Owner: OwnerMust},
	{Verb: VerbBeginReview, From: []State{Submitted}, To: DeskReview, Roles: officers, Owner: OwnerNever},
	{Verb: VerbReturn, From: []State{Submitted, DeskReview, Bench, Ready}, To: Returned, Roles: officers, Owner: OwnerNever, Reason: true},
	{Verb: VerbPassDesk, From: []State{DeskReview}, To: Bench, Roles: officers, Owner: OwnerNever},
	{Verb: VerbPassBench, From: []State{Bench}, To: Ready, Roles: officers, Owner: OwnerNever},
	{Verb: VerbConfirmRule, From: []State{DeskReview, Bench, Ready}, Stays: true, Roles: officers, Owner: OwnerNever, Reason: true},
	{Verb: VerbSign, From: []State{Ready}, To: Signed, Roles: officers, Owner: OwnerNever},
	{Verb: VerbRecordFlight, From: []State{Signed}, To: Flown, Roles: officers, Owner: OwnerMay},
	{Verb: VerbRefuse, From: []State{Submitted, DeskReview, Bench, Ready}, To: Refused, Roles: officers, Owner: OwnerNever, Reason: true},
	{Verb: VerbWithdraw, From: []State{Draft, Submitted, DeskReview, Returned, Bench, Ready, Signed, Lapsed, Held}, To: Withdrawn, Owner: OwnerMust},
	{Verb: VerbHold, From: []State{Submitted, DeskReview, Returned, Bench, Ready, Signed, Held}, To: Held, Roles: officers, Owner: OwnerMay, Reason: true},
	{Verb: VerbRelease, From: []State{Held}, Roles: officers, Owner: OwnerNever, Reason: true},
}

// Rules returns the state machine as a table, one line a verb, in the order of an approval's life.
func Rules() []Rule {
	return slices.Clone(rules)
}

// RuleOf returns the line of a verb that can be asked for.
func RuleOf(verb Verb) (Rule, bool) {
	at := slices.IndexFunc(rules, func(r Rule) bool { return r.Verb == verb })
	if at < 0 {
		return Rule{}, false
	}
	return rules[at], true
}

// Next returns the state an approval reaches when the actor does verb, or the refusal: Forbidden when the actor may
// not, FailedPrecondition when the state does not allow it, Invalid when a reason is missing.
func Next(a Approval, verb Verb, by Actor, reason string) (State, error) {
	if err := Permit(a, verb, by); err != nil {
		return "", err
	}
	rule, _ := RuleOf(verb)
	if !slices.Contains(rule.From, a.State) {
		return "", Refuse(FailedPrecondition, "WRONG_STATE", "an approval that is %s cannot be %s", a.State.Words(), rule.Verb.participle())
	}
	if rule.Reason && strings.TrimSpace(reason) == "" {
		return "", RefuseField("reason", "REASON_MISSING", "say why: the owner reads it")
	}
	switch {
	case rule.Stays:
		return a.State, nil
	case rule.To == "":
		return a.HeldFrom, nil
	default:
		return a.past(rule.To), nil
	}
}

// Permit tells whether the actor may do verb to the approval at all, whatever its state: Forbidden when not, Invalid when
// there is no such verb.
func Permit(a Approval, verb Verb, by Actor) error {
	rule, ok := RuleOf(verb)
	if !ok {
		return RefuseField("verb", "UNKNOWN_VERB", "%q cannot be done to an approval", string(verb))
	}
	return rule.permits(by, a.OwnerID)
}

// permits judges the actor's relation and roles, before the state is looked at.
func (r Rule) permits(by Actor, ownerID string) error {
	owner := by.PersonID != "" && by.PersonID == ownerID
	switch {
	case r.Owner == OwnerMust && !owner:
		return Refuse(Forbidden, "OWNER_ONLY", "only the owner can do this")
	case r.Owner == OwnerNever && owner:
		return Refuse(Forbidden, "OWN_APPROVAL", "nobody decides on an approval of their own: ask another officer")
	case owner && r.Owner != OwnerNever, by.Has(r.Roles...):
		return nil
	default:
		return Refuse(Forbidden, "ROLE_MISSING", "this needs the role %s", r.Roles[0].Title())
	}
}

// Words is the state as people say it.
func (s State) Words() string {
	switch s {
	case DeskReview:
		return "in desk review"
	case Bench:
		return "at the bench gate"
	case Ready:
		return "ready for the field"
	case Draft:
		return "a draft"
	default:
		return string(s)
	}
}

var participles = map[Verb]string{
	VerbSubmit: "submitted", VerbBeginReview: "taken up for review", VerbReturn: "returned",
	VerbConfirmRule: "answered for a rule",
	VerbPassDesk:    "passed at the desk gate", VerbPassBench: "passed at the bench gate", VerbSign: "signed",
	VerbRecordFlight: "recorded as flown", VerbRefuse: "refused", VerbWithdraw: "withdrawn", VerbHold: "held",
	VerbRelease: "released",
}

func (v Verb) participle() string {
	return participles[v]
}
