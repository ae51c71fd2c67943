package assess

import (
	"slices"
	"strings"

	"pitgate/server/physics/lift"
)

// knob is something that may be changed to mend a finding: one row of a table.
type knob struct {
	id, title, unit string
	effort          RemedyEffort
	// low and high are the ends of its range by the value that it has now.
	low, high end
	// at is where a document keeps it, and path how that is called there, of one of several parts within it.
	at   spotAt
	path string
	// spots are the places of a document where it can be turned, for what is no single quantity; none where it does not apply.
	spots func(s *scene)
}

// scene is the document that the places of a knob are looked for in, and those found.
type scene struct {
	in    *Input
	base  *pass
	found []spot
}

// add adds a place where the knob can be turned.
func (s *scene) add(one spot) *spot {
	s.found = append(s.found, one)
	return &s.found[len(s.found)-1]
}

// choose adds a place at which one thing is chosen.
func (s *scene) choose(title, path, chosen string, set func(in *Input)) *spot {
	return s.add(spot{title: title, paths: []string{path}, choices: []choice{{chosen, set}}})
}

// spot is one knob at one place of a document.
type spot struct {
	knob  *knob
	title string   // beside the knob's; empty where there is one place only
	paths []string // of the document that change
	chain []string // inputs of which a finding's chain names one; empty: the paths
	asked uint64   // sections that ask for what changes, one bit each
	now   float64
	most  float64 // upper end of the range where the place has its own; zero: that of the knob
	low   float64
	high  float64
	// at and which are where the document keeps it as one quantity; set writes it where it is more.
	at    spotAt
	which which
	set   func(in *Input, x float64)
	// choices are the settings of a knob without a scale.
	choices []choice
	// throws and antennas say that a copy of the geometry must know of the change.
	throws, antennas bool
}

// choice is one setting of a knob that has no scale.
type choice struct {
	title string
	set   func(in *Input)
}

// change is a knob turned to one setting.
type change struct {
	spot   *spot
	to     float64
	choice int // of a knob without a scale
}

func (c change) set(in *Input) {
	if len(c.spot.choices) > 0 {
		c.spot.choices[c.choice].set(in)
		return
	}
	c.spot.write(in, c.to)
}

// size returns how large a change is over the range of its knob; a choice is the whole of it.
func (c change) size() float64 {
	width := c.spot.high - c.spot.low
	if len(c.spot.choices) > 0 || !(width > 0) {
		return 1
	}
	return max(c.to-c.spot.now, c.spot.now-c.to) / width
}

// told writes a change for the report.
func (c change) told() RemedyChange {
	k := c.spot.knob
	out := RemedyChange{Knob: k.id, Title: k.title, Unit: k.unit, Inputs: slices.Clone(c.spot.paths)}
	if c.spot.title != "" {
		out.Title += ": " + c.spot.title
	}
	if len(c.spot.choices) > 0 {
		out.Title, out.Unit = out.Title+": "+c.spot.choices[c.choice].title, ""
		return out
	}
	from, to := c.spot.now, c.to
	out.From, out.To = &from, &to
	return out
}

// end is one end of a knob's range.
type end struct {
	kind endKind
	by   float64
}

type endKind uint8

const (
	endStays endKind = iota // the value that it has now
	endTimes                // a multiple of that
	endFixed                // a figure of its own
	endPlus                 // so much more than now
)

// of returns the end for the value that the knob has now.
func (e end) of(now float64) float64 {
	switch e.kind {
	case endTimes:
		return e.by * now
	case endFixed:
		return e.by
	case endPlus:
		return now + e.by
	default:
		return now
	}
}

// askers returns the sections that ask for what a spot changes, one bit each.
func (s *spot) askers() uint64 {
	changed := portions(0)
	for _, path := range s.paths {
		changed |= portionOf(path)
	}
	if s.throws {
		changed &^= portionLinkage
	} else {
		changed &^= portionThrows
	}
	return askers(changed)
}

// ranged gives a spot the range of its knob.
func (r *remedySearch) ranged(s *spot, k *knob) {
	s.knob, s.asked = k, s.askers()
	if len(s.choices) == 0 {
		s.low, s.high = min(k.low.of(s.now), s.now), max(k.high.of(s.now), s.now)
		if s.most > 0 {
			s.high = s.most
		}
	}
}

// listSpots lists the places of all knobs that the chain of an open finding names.
func (r *remedySearch) listSpots() {
	for i := range knobs {
		found := r.placesOf(&knobs[i])
		for k := range found {
			s := &found[k]
			if slices.ContainsFunc(r.targets, func(t target) bool { return r.named(s, t.at) }) {
				r.spots = append(r.spots, *s)
			}
		}
	}
}

// placesOf lists the places of a knob, each with its range.
func (r *remedySearch) placesOf(k *knob) []spot {
	s := &scene{in: r.in, base: r.base}
	k.places(s)
	for i := range s.found {
		r.ranged(&s.found[i], k)
	}
	return s.found
}

// named reports whether the chain of a finding names an input of a spot, or a part that holds it. Where a chain names the surfaces as one, what it reads of
// their controls is the throws.
func (r *remedySearch) named(s *spot, finding int) bool {
	wanted := s.chain
	if len(wanted) == 0 {
		wanted = s.paths
	}
	for _, name := range r.chains[finding] {
		for _, path := range wanted {
			if name == path || isBelow(name, path) || isBelow(path, name) && (name != surfacesPath || s.throws) {
				return true
			}
		}
	}
	return false
}

// isBelow reports whether a path lies below another.
func isBelow(path, above string) bool {
	rest, found := strings.CutPrefix(path, above)
	return found && (strings.HasPrefix(rest, ".") || strings.HasPrefix(rest, "["))
}

// readChains follows every finding of a told pass down to the inputs that it was computed from.
func (r *remedySearch) readChains(told *pass) {
	told.traceFrom()
	sources := map[string][]string{}
	for i := range told.values {
		sources[told.values[i].ID] = told.values[i].From
	}
	r.chains = make([][]string, len(told.results))
	for i := range told.results {
		seen := map[string]bool{}
		var follow func(name string)
		follow = func(name string) {
			if seen[name] {
				return
			}
			seen[name] = true
			below, known := sources[name]
			if !known {
				r.chains[i] = append(r.chains[i], name)
			}
			for _, next := range below {
				follow(next)
			}
		}
		for _, name := range told.results[i].From {
			follow(name)
		}
	}
}

// withThrows returns a copy of a solved lattice that knows the throws of some surfaces' controls.
func withThrows(solution *lift.Solution, surfaces []LiftingSurface) *lift.Solution {
	if solution == nil {
		return nil
	}
	out := *solution
	out.Controls = slices.Clone(solution.Controls)
	for i := range out.Controls {
		effect := &out.Controls[i]
		for s := range surfaces {
			for c := range surfaces[s].Controls {
				if control := controlOf(&surfaces[s].Controls[c]); surfaces[s].Name == effect.Surface && control.Name == effect.Name {
					effect.ThrowUp, effect.ThrowDown = control.ThrowUp, control.ThrowDown
				}
			}
		}
	}
	return &out
}
