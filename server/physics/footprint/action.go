package footprint

// Action is what the model does when its link is lost.
type Action int

// Actions. The zero Action is the one to assume when nothing was declared or the receiver is said to do nothing; the declared cut with neutral
// surfaces, cut with spiral, idle with neutral surfaces and hold have one each. Breakup is never declared: it is the steepest fall to compare with.
const (
	// FlyAway flies straight and level on full power at its height until the fuel ends, then glides with neutral surfaces.
	FlyAway Action = iota
	// CutNeutral stops the engine and centres the surfaces.
	CutNeutral
	// CutSpiral stops the engine and holds a bank.
	CutSpiral
	// IdleNeutral brings the engine to idle and centres the surfaces.
	IdleNeutral
	// Hold keeps the last command: throttle, lift coefficient and bank stay until the fuel ends.
	Hold
	// Breakup is the worst case, a structural failure: no lift, no thrust, the drag of a tumbling body.
	Breakup
)

// names are the names of the actions.
var names = [...]string{
	FlyAway: "fly-away", CutNeutral: "cut and neutral", CutSpiral: "cut and spiral", IdleNeutral: "idle and neutral", Hold: "hold", Breakup: "breakup",
}

// String returns the action in words.
func (a Action) String() string {
	if !a.known() {
		return "unknown action"
	}
	return names[a]
}

// known reports whether the action is one of the list.
func (a Action) known() bool { return a >= FlyAway && a <= Breakup }
