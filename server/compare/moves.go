package compare

import (
	"cmp"
	"math"
	"slices"

	"pitgate/server/physics/assess"
	"pitgate/server/physics/order"
)

// bareStepRatio is by how much of value or limit, whichever is greater, a value without a band may change before it counts as moved.
const bareStepRatio = 0.01

// leastStepRatio is the same for a value with a band, however narrow that is: nobody reads less off a margin strip.
const leastStepRatio = 0.001

// Move is one finding in both reports.
type Move struct {
	// Dotted and stable, e.g. "stall.speed".
	FindingID string `json:"findingId,omitempty"`
	// True when the verdict changed, or value or margin changed by more than the step.
	Moved          bool `json:"moved,omitempty"`
	VerdictChanged bool `json:"verdictChanged,omitempty"`
	// The finding in each report; absent where that report asks no such question.
	From *assess.Finding `json:"from,omitempty"`
	To   *assess.Finding `json:"to,omitempty"`
	// Second value less the first, in the finding's unit; absent when either is.
	ValueChange *float64 `json:"valueChange,omitempty"`
	// Second margin less the first: negative is worse.
	MarginChange *float64 `json:"marginChange,omitempty"`
	// How far a value must go to count as moved: half the wider band but no less than a thousandth of value or limit, whichever is greater; a hundredth
	// of it where neither has a band.
	Step *float64 `json:"step,omitempty"`
	// Of a finding that moved: which differences stand in the chain it was computed from, as their paths.
	ChangedInputs []string `json:"changedInputs,omitempty"`
}

// Moves pairs the findings of two reports, worst change first. The differences are those of their documents; a finding that moved names those it reads.
func Moves(ra, rb assess.Report, differences []Difference) []Move {
	before := byID(ra.Findings)
	after := byID(rb.Findings)
	chainA, chainB := newChain(ra), newChain(rb)
	var out []Move
	for i := range rb.Findings {
		out = append(out, newMove(before[rb.Findings[i].ID], &rb.Findings[i]))
	}
	for i := range ra.Findings {
		if after[ra.Findings[i].ID] == nil {
			out = append(out, newMove(&ra.Findings[i], nil))
		}
	}
	for i := range out {
		if out[i].Moved {
			out[i].ChangedInputs = readOf(differences, chainA.inputs(out[i].From), chainB.inputs(out[i].To))
		}
	}
	order.Stable(out, worseFirst)
	return out
}

func byID(findings []assess.Finding) map[string]*assess.Finding {
	out := make(map[string]*assess.Finding, len(findings))
	for i := range findings {
		out[findings[i].ID] = &findings[i]
	}
	return out
}

// newMove compares one finding of both reports; either may be absent, not both.
func newMove(a, b *assess.Finding) Move {
	m := Move{From: a, To: b}
	if a == nil || b == nil {
		m.FindingID, m.Moved, m.VerdictChanged = cmp.Or(b, a).ID, true, true
		return m
	}
	m.FindingID = b.ID
	m.VerdictChanged = a.Verdict != b.Verdict
	m.ValueChange, m.MarginChange = change(a.Value, b.Value), change(a.Margin, b.Margin)
	m.Step = step(a, b)
	m.Moved = m.VerdictChanged || (a.Value == nil) != (b.Value == nil) || (a.Margin == nil) != (b.Margin == nil) ||
		beyond(m.ValueChange, m.Step) || beyond(m.MarginChange, m.Step)
	return m
}

// change is b - a where both are known.
func change(a, b *float64) *float64 {
	if a == nil || b == nil {
		return nil
	}
	d := *b - *a
	return &d
}

func beyond(change, step *float64) bool {
	return change != nil && step != nil && math.Abs(*change) > *step
}

// step is half the wider band, but no less than a thousandth of the greatest value or limit; a hundredth of that where neither has a band; nil when
// neither has a value.
func step(a, b *assess.Finding) *float64 {
	if a.Value == nil && b.Value == nil {
		return nil
	}
	greatest := max(size(a.Value), size(b.Value), size(a.Limit), size(b.Limit))
	half := max(width(a), width(b)) / 2
	out := max(half, leastStepRatio*greatest)
	if half == 0 {
		out = bareStepRatio * greatest
	}
	return &out
}

func width(f *assess.Finding) float64 {
	if f.BandLow == nil || f.BandHigh == nil {
		return 0
	}
	return *f.BandHigh - *f.BandLow
}

func size(v *float64) float64 {
	if v == nil {
		return 0
	}
	return math.Abs(*v)
}

// rank orders verdicts from good to bad: an answer that is missing is worse than a tight one and better than a failed one. A question that is not
// asked is as good as one that holds.
func rank(f *assess.Finding) int {
	if f == nil {
		return 0
	}
	return slices.Index([]assess.Verdict{assess.VerdictHolds, assess.VerdictTight, assess.VerdictUnknown, assess.VerdictFails}, f.Verdict)
}

// worseFirst orders moves: moved ones before others; by how much the verdict fell, then by the verdict it fell to, then by how much margin was lost
// in steps.
func worseFirst(x, y Move) int {
	if x.Moved != y.Moved {
		if x.Moved {
			return -1
		}
		return 1
	}
	if !x.Moved {
		return 0
	}
	return cmp.Or(
		cmp.Compare(rank(y.To)-rank(y.From), rank(x.To)-rank(x.From)),
		cmp.Compare(rank(y.To), rank(x.To)),
		cmp.Compare(gained(x), gained(y)))
}

// gained is the change of the margin in steps; findings without a margin gain nothing.
func gained(m Move) float64 {
	if m.MarginChange == nil || m.Step == nil || *m.Step == 0 {
		return 0
	}
	return *m.MarginChange / *m.Step
}
