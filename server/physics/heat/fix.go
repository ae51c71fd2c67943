package heat

// Change is the kind of a change to a part.
type Change string

// Kinds of changes.
const (
	AddFoil  Change = "foil on the face towards the pipe"
	MoveAway Change = "move the part away from the pipe or the axis"
	MoveBack Change = "move the part farther behind the nozzle"
	FoilMove Change = "foil and move the part away from the pipe"
)

// Fix is one change that brings a part under its limit by the conservative answer.
type Fix struct {
	Change Change
	From   float64 // distance now, m; 0 for foil
	To     float64 // distance then, m; 0 for foil
	Then   float64 // conservative temperature of the part after the change, K
}

// moveStep keeps a moved part off the limit by a little, m.
const moveStep = 0.001

// fixes lists the changes that bring a part under its limit, smallest first; empty for a part that is cool, was measured, or cannot be helped.
func (r Run) fixes(a *Answer, worst Plume) []Fix {
	if a.Verdict == Cool || a.Cause == ByMeasured || a.Material.Service <= r.Air.Temperature {
		return nil
	}
	if a.Part.Behind > 0 {
		return plumeFixes(a, worst)
	}
	return r.besideFixes(a)
}

// plumeFixes lists the moves out of the plume: the shorter one first.
func plumeFixes(a *Answer, p Plume) []Fix {
	limit := a.Material.Service
	side := p.EdgeRadius(a.Part.Behind, limit) + moveStep
	back := p.ReachOf(limit) + moveStep
	away := Fix{Change: MoveAway, From: a.Part.From, To: side, Then: p.Temperature(a.Part.Behind, side)}
	behind := Fix{Change: MoveBack, From: a.Part.Behind, To: back, Then: p.Temperature(back, a.Part.From)}
	if side-a.Part.From <= back-a.Part.Behind {
		return []Fix{away, behind}
	}
	return []Fix{behind, away}
}

// besideFixes lists foil where it is enough, else a move with foil, and the move alone.
func (r Run) besideFixes(a *Answer) []Fix {
	var out []Fix
	limit := a.Material.Service
	if !a.Part.Foil {
		shielded := a.Part
		shielded.Foil = true
		if then := r.hottest(shielded); then <= limit {
			out = append(out, Fix{Change: AddFoil, Then: then})
		} else if fix, ok := r.moved(shielded, limit); ok {
			fix.Change = FoilMove
			out = append(out, fix)
		}
	}
	if fix, ok := r.moved(a.Part, limit); ok {
		out = append(out, fix)
	}
	return out
}

// hottest returns the conservative temperature of a part beside the pipe.
func (r Run) hottest(part Part) float64 {
	a := Answer{Part: part}
	r.beside(&a)
	return a.Worst
}

// moved returns the gap at which a part beside the pipe is under a limit, running and after shut-down.
func (r Run) moved(part Part, limit float64) (Fix, bool) {
	gap, ok := r.skin(part).LeastGap(limit)
	if !ok {
		return Fix{}, false
	}
	moved := part
	moved.From = gap + moveStep
	then := r.hottest(moved)
	return Fix{Change: MoveAway, From: part.From, To: moved.From, Then: then}, then <= limit
}
