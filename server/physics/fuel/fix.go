package fuel

import (
	"math"
	"slices"

	"pitgate/server/physics/order"
)

// Change is the kind of a change to a feed system.
type Change string

// Kinds of changes.
const (
	WidenLine  Change = "widen one suction line"
	WidenLines Change = "widen the suction lines"
	LowerPump  Change = "lower the pump or raise the tank"
	AddTrap    Change = "fit an air trap"
	GrowTrap   Change = "fit a larger air trap"
	OpenVent   Change = "fit a vent"
	WidenVent  Change = "widen the vent"
)

// Fix is one change that alone removes a fault.
type Fix struct {
	Change Change
	Cures  Fault
	Line   int     // index in System.Lines of WidenLine, else -1
	From   float64 // now: bore or height (m), volume (m3)
	To     float64 // then, the same unit
	// Suction is the greatest suction at the pump after the change, Pa.
	Suction float64
}

// bores are the bores that fuel tube is sold in, m.
var bores = []float64{0.002, 0.0025, 0.003, 0.004, 0.005, 0.006, 0.008, 0.010}

// lowestMove and greatestMove bound a sensible change of height, m.
const (
	lowestMove   = 0.001
	greatestMove = 1.0
)

// fixes lists the changes that mend the faults of a result: for trap and vent the one there is, for suction every single change that
// brings it under AirReleaseSuction, smallest first: one line, then all lines, then the pump.
func (s *System) fixes(r *Result) []Fix {
	var out []Fix
	worst := r.WorstSuction()
	for _, fault := range r.Faults {
		switch fault {
		case NoTrap:
			out = append(out, Fix{Change: AddTrap, Cures: fault, Line: -1, To: r.Trap.LeastVolume, Suction: worst})
		case SmallTrap:
			out = append(out, Fix{Change: GrowTrap, Cures: fault, Line: -1, From: s.TrapVolume, To: r.Trap.LeastVolume, Suction: worst})
		case NoVent:
			out = append(out, Fix{Change: OpenVent, Cures: fault, Line: -1, To: r.Vent.LeastBore, Suction: s.vented(r.Vent.LeastBore)})
		case TightVent:
			out = append(out, Fix{Change: WidenVent, Cures: fault, Line: -1, From: s.VentBore, To: r.Vent.LeastBore, Suction: s.vented(r.Vent.LeastBore)})
		case AirReleased:
			out = append(out, s.suctionFixes()...)
		default: // Filter and speed are told without a figure of change.
		}
	}
	return out
}

// vented returns the greatest suction with a vent of a bore.
func (s *System) vented(bore float64) float64 {
	changed := *s
	changed.Vent, changed.VentBore = true, bore
	r := changed.compute()
	return r.WorstSuction()
}

// suctionFixes lists the single changes that bring the suction under the limit.
func (s *System) suctionFixes() []Fix {
	var out []Fix
	for _, i := range s.indices() {
		if fix, ok := s.widened([]int{i}); ok {
			out = append(out, fix)
		}
	}
	order.Stable(out, func(a, b Fix) int {
		if a.To/a.From < b.To/b.From {
			return -1
		}
		return 1
	})
	if fix, ok := s.widened(s.indices()); ok && len(s.indices()) > 1 {
		fix.Change, fix.Line = WidenLines, -1
		out = append(out, fix)
	}
	if fix, ok := s.lowered(); ok {
		out = append(out, fix)
	}
	return out
}

// widened returns the least bore sold that mends the suction when the lines named are given it.
func (s *System) widened(which []int) (Fix, bool) {
	if len(which) == 0 {
		return Fix{}, false
	}
	from := s.Lines[which[0]].Bore
	for _, i := range which {
		from = min(from, s.Lines[i].Bore)
	}
	for _, bore := range bores {
		if bore <= from {
			continue
		}
		if suction := s.with(which, bore); suction <= AirReleaseSuction {
			return Fix{Change: WidenLine, Cures: AirReleased, Line: which[0], From: from, To: bore, Suction: suction}, true
		}
	}
	return Fix{}, false
}

// with returns the greatest suction when the lines named have at least a bore.
func (s *System) with(which []int, bore float64) float64 {
	changed := *s
	changed.Lines = slices.Clone(s.Lines)
	for _, i := range which {
		changed.Lines[i].Bore = max(bore, changed.Lines[i].Bore)
	}
	r := changed.compute()
	return r.WorstSuction()
}

// lowered returns how far the pump must come down towards the pick-up to mend the suction.
func (s *System) lowered() (Fix, bool) {
	r := s.compute()
	at := func(drop float64) float64 { return s.suctionAt(&r, s.PumpHeight-drop) }
	low, high := 0.0, greatestMove
	if at(high) > AirReleaseSuction {
		high = s.PumpHeight
		if !(high > lowestMove) || at(high) > AirReleaseSuction {
			return Fix{}, false
		}
	}
	for range 40 {
		middle := float64((low + high) / 2)
		if at(middle) > AirReleaseSuction {
			low = middle
		} else {
			high = middle
		}
	}
	return Fix{Change: LowerPump, Cures: AirReleased, Line: -1, From: s.PumpHeight, To: s.PumpHeight - high, Suction: at(high)}, true
}

// suctionAt returns the greatest suction of a computed system with its pump at another height.
func (s *System) suctionAt(r *Result, height float64) float64 {
	worst := math.Inf(-1)
	for _, load := range s.Loads {
		worst = max(worst, r.steady()+HeadSuction(r.Mix.Density, load, height, s.PumpAhead))
	}
	return worst
}
