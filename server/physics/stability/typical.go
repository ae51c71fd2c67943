package stability

// Class is the kind of flying a model is made for.
type Class int

// Classes of handling.
const (
	Unstated Class = iota
	Trainer
	Sport
	Fast
	Canard
	Tailless
)

// Window is a recommended range with its reason.
type Window struct {
	Low, High float64
	Source    string
	Status    string // "from memory" or "judgement"
}

// RecommendedMargin returns the window of the static margin over mean chord that a class of handling asks for.
//
// Valid for: neutral point power off, of the lattice; widen by NeutralPointSpread for one put together by parts.
// Source: named in the window.
func RecommendedMargin(class Class) Window {
	switch class {
	case Trainer:
		return Window{0.10, 0.20, "general texts on trainers; Drela, Basic Aircraft Design Rules", "from memory"}
	case Sport:
		return Window{0.05, 0.15, "Drela, Basic Aircraft Design Rules, simple aircraft", "from memory"}
	case Fast:
		return Window{0.05, 0.12, "Drela's lower range; less margin makes pitch twitchy at a large speed range", "judgement"}
	case Canard:
		return Window{0.08, 0.20, "the forward surface must stall first, which a small margin does not make sure", "judgement"}
	case Tailless:
		return Window{0.03, 0.10, "short control arm: trim costs lift, pitch damping is small", "judgement"}
	default:
		return Window{0.05, 0.20, "widest range of simple aircraft and trainers", "judgement"}
	}
}

// TypicalTail is a usual tail size of a class of aeroplane.
type TypicalTail struct {
	Class                string
	Horizontal, Vertical float64
}

// TypicalTails returns usual volumes of tails; horizontal ones from memory.
//
// Valid for: orientation, not a limit.
// Source: Raymer, Aircraft Design: A Conceptual Approach, table 6.4.
func TypicalTails() []TypicalTail {
	return []TypicalTail{
		{"sailplane", 0.50, 0.02}, {"homebuilt", 0.50, 0.04}, {"light aeroplane, one engine", 0.70, 0.04}, {"light aeroplane, two engines", 0.80, 0.07},
		{"agricultural", 0.50, 0.04}, {"twin turboprop", 0.90, 0.08}, {"flying boat", 0.70, 0.06}, {"jet trainer", 0.70, 0.06},
		{"jet fighter", 0.40, 0.07}, {"military transport", 1.00, 0.08}, {"jet transport", 1.00, 0.09},
	}
}

// TailVolumeWindow returns the usual range of the horizontal and the vertical tail volume of simple aircraft.
//
// Valid for: orientation, not a limit.
// Source: Drela, Basic Aircraft Design Rules, from memory.
func TailVolumeWindow() (horizontal, vertical Window) {
	const source = "Drela, Basic Aircraft Design Rules"
	return Window{0.30, 0.60, source, "from memory"}, Window{0.02, 0.05, source, "from memory"}
}

// TailPlace says where a tail stands in the stream.
type TailPlace int

// Places of a tail.
const (
	InTheWake   TailPlace = iota // behind the wing and body at their height
	OutOfWake                    // high on the fin or well clear of the wing's wake
	InTheStream                  // ahead of the wing
)

// PressureRatio returns the dynamic pressure at a tail over that of free flight (tail efficiency) and its spread.
//
// Valid for: attached flow, power off.
// Source: general textbooks (0.85 to 0.95 behind a wing, 1.0 clear of it), from memory.
func PressureRatio(place TailPlace) (ratio, spread float64) {
	if place == InTheWake {
		return 0.90, 0.05
	}
	return 1, 0.02
}
