package club

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	pitgatev1 "pitgate/proto/pitgate/v1"
)

// Gate is what an approval has to pass before the first flight.
type Gate string

// The gates, in their order: the paper, the model, the day.
const (
	DeskGate  Gate = "desk"
	BenchGate Gate = "bench"
	FieldGate Gate = "field"
)

// Gates lists every gate in its order.
func Gates() []Gate { return []Gate{DeskGate, BenchGate, FieldGate} }

// Proto is the gate on the wire.
func (g Gate) Proto() pitgatev1.Gate {
	return pitgatev1.Gate(pitgatev1.Gate_value["GATE_"+strings.ToUpper(string(g))])
}

// asks is the state in which a gate is asked for.
func (g Gate) asks() State {
	return map[Gate]State{DeskGate: DeskReview, BenchGate: Bench, FieldGate: Ready}[g]
}

// GateFate is what a lapse or another answer means for one gate that stood.
type GateFate struct {
	Gate   Gate `json:"gate"`
	Stands bool `json:"stands"`
	// Why it stands or opens again.
	Why string `json:"why"`
}

// Touch says why gates open again; a gate that is not in it stands. The field gate is always said anew: go or no-go is a word on the day.
type Touch map[Gate]string

// TouchAll opens every gate again for one reason.
func TouchAll(why string) Touch { return Touch{DeskGate: why, BenchGate: why, FieldGate: why} }

// fieldAnew is why the field gate opens again.
const fieldAnew = "go or no-go is said anew for the day"

// standsBy is why a gate stands.
var standsBy = map[Gate]string{
	DeskGate:  "no finding got worse and none came",
	BenchGate: "no inspection changed and none rests on a verdict that changed",
}

// behind lists the gates that were passed to reach a state.
func (s State) behind() []Gate {
	switch s {
	case Bench:
		return []Gate{DeskGate}
	case Ready:
		return []Gate{DeskGate, BenchGate}
	case Signed, Flown:
		return Gates()
	default:
		return nil
	}
}

// Underneath is the state that counts: of a held approval the one it was held from.
func (a Approval) Underneath() State {
	if a.State == Held {
		return a.HeldFrom
	}
	return a.State
}

// Standing lists the gates that stand for the approval's present answer: those passed to reach its state and those kept.
func (a Approval) Standing() []Gate {
	passed := a.Underneath().behind()
	return slices.DeleteFunc(Gates(), func(g Gate) bool { return !slices.Contains(passed, g) && !slices.Contains(a.KeptGates, g) })
}

// Fates says of every gate that stands what becomes of it by touch.
func (a Approval) Fates(touch Touch) []GateFate {
	var out []GateFate
	for _, gate := range a.Standing() {
		why, opens := touch[gate]
		switch {
		case opens:
		case gate == FieldGate:
			opens, why = true, fieldAnew
		default:
			why = standsBy[gate]
		}
		out = append(out, GateFate{Gate: gate, Stands: !opens, Why: why})
	}
	return out
}

// Kept lists the gates that stand by their fates.
func Kept(fates []GateFate) []Gate {
	var out []Gate
	for _, f := range fates {
		if f.Stands {
			out = append(out, f.Gate)
		}
	}
	return out
}

// Lapse is the approval once it lapsed, with the gates that stand; one that is held stays so and lapses underneath.
func (a Approval) Lapse(fates []GateFate) Approval {
	a.KeptGates = Kept(fates)
	if a.State == Held {
		a.HeldFrom = Lapsed
	} else {
		a.State = Lapsed
	}
	return a
}

// Reopen is an approval under review for which another answer came: it goes back to the first gate behind it that opened again, and keeps those that
// stand.
func (a Approval) Reopen(fates []GateFate) Approval {
	a.KeptGates = Kept(fates)
	behind := a.State.behind()
	for _, f := range fates {
		if !f.Stands && slices.Contains(behind, f.Gate) {
			a.State = f.Gate.asks()
			break
		}
	}
	return a
}

// past is the state that asks for the first gate that is not kept, from the one that was reached.
func (a Approval) past(reached State) State {
	for _, gate := range []Gate{DeskGate, BenchGate} {
		if reached == gate.asks() && slices.Contains(a.KeptGates, gate) {
			reached = map[Gate]State{DeskGate: Bench, BenchGate: Ready}[gate]
		}
	}
	return reached
}

// GateWords says of fates which gates open again and which stand; empty when none stood.
func GateWords(fates []GateFate) string {
	var open, stand []string
	for _, f := range fates {
		if f.Stands {
			stand = append(stand, string(f.Gate))
		} else {
			open = append(open, fmt.Sprintf("%s (%s)", f.Gate, f.Why))
		}
	}
	var parts []string
	if len(open) > 0 {
		parts = append(parts, "open again: "+strings.Join(open, ", "))
	}
	if len(stand) > 0 {
		parts = append(parts, "stand: "+strings.Join(stand, ", "))
	}
	if len(parts) == 0 {
		return ""
	}
	return "Of the gates " + strings.Join(parts, "; ") + "."
}

// FatesDocument is the kept document of fates.
func FatesDocument(fates []GateFate) (json.RawMessage, error) {
	if fates == nil {
		fates = []GateFate{}
	}
	return json.Marshal(fates)
}
