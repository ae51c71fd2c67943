package assess

import (
	"math"
	"strings"

	"pitgate/server/physics/stability"
	"pitgate/server/physics/weighing"
)

var handlingClasses = pairings[HandlingClass, stability.Class]{
	{HandlingClassTrainer, stability.Trainer}, {HandlingClassSport, stability.Sport}, {HandlingClassFast, stability.Fast},
	{HandlingClassCanard, stability.Canard}, {HandlingClassTailless, stability.Tailless},
}

// window returns the static margin's limits: the document's, else those recommended for the model's kind of flying, else the core's.
func (p *pass) window() (least, most limit) {
	least, most = p.limit(leastMargin), p.limit(mostMargin)
	if p.in.Model == nil || p.in.Model.HandlingClass == "" {
		return least, most
	}
	recommended := stability.RecommendedMargin(handlingClasses.of(p.in.Model.HandlingClass))
	rule := "recommended for the kind of flying: " + recommended.Source + " (" + recommended.Status + ")"
	const path = "model.handlingClass"
	if least.path == "" {
		least = limit{value: recommended.Low, set: true, rule: rule, path: path}
	}
	if most.path == "" {
		most = limit{value: recommended.High, set: true, rule: rule, path: path}
	}
	return least, most
}

// answerBalance answers for the static margin along the burn and for what would mend it.
func (p *pass) answerBalance() {
	p.answerMargin("balance.margin_full", p.mass.fullMissing, p.mass.fullBalance)
	p.answerMargin("balance.margin_empty", p.mass.balanceMissing, p.mass.emptyBalance)
	p.answerTravel()
	p.answerReconciled()
	if p.tells() && p.whole.lattice != nil {
		p.tellWindow()
	}
	if p.tells() && len(p.mass.fullMissing) == 0 && p.whole.lattice != nil {
		p.drawBurn()
		p.findBallast()
	}
}

func (p *pass) answerMargin(id string, missing []string, balance float64) {
	n := p.need()
	n.lack(p.wing.missing...)
	n.lack(missing...)
	margin := answer{id: id, missing: n.missing}
	least, most := p.window()
	margin.limit, margin.upper = least, most.value
	if most.path != "" && most.path != least.path {
		margin.from = append(margin.from, most.path)
	}
	if n.met() {
		margin.value = (p.wing.neutralX - balance) / p.wing.chord
		margin.note = p.inWords("Neutral point at %.3f m, balance point at %.3f m, mean chord %.3f m.", p.wing.neutralX, balance, p.wing.chord)
		margin.note += p.shiftNote(margin) + p.ownWindowNote(balance)
		p.tellShift(id, margin)
	}
	p.conclude(margin)
}

// tellWindow tells where the balance point may lie.
func (p *pass) tellWindow() {
	least, most := p.window()
	p.tell("balance.window_forward_x", p.wing.neutralX-float64(most.value*p.wing.chord), most.paths()...)
	p.tell("balance.window_aft_x", p.wing.neutralX-float64(least.value*p.wing.chord), least.paths()...)
}

// paths names the input behind a limit, if there is one.
func (l limit) paths() []string {
	if l.path == "" {
		return nil
	}
	return []string{l.path}
}

// shiftNote says what shift of the balance point would bring a margin into its window; empty when it is inside.
func (p *pass) shiftNote(margin answer) string {
	target := min(max(margin.value, margin.limit.value), margin.upper)
	if target == margin.value || !p.tells() {
		return ""
	}
	balance := p.wing.neutralX - float64(margin.value*p.wing.chord)
	shift := stability.BalanceShiftFor(target, p.wing.neutralX, balance, p.wing.chord, p.mass.empty)
	way := "forward"
	if shift.Forward < 0 {
		way = "aft"
	}
	return say(" A shift of %.0f mm %s, %.3f kg m, would mend it.", 1000*math.Abs(shift.Forward), way, math.Abs(shift.Moment))
}

// ownWindowNote says when the balance point lies outside of the window that the builder asks for.
func (p *pass) ownWindowNote(balance float64) string {
	m := p.massProperties()
	if m.ForwardBalanceLimitXMeters != nil && balance < *m.ForwardBalanceLimitXMeters {
		return p.inWords(" It lies ahead of the builder's own limit of %.3f m.", *m.ForwardBalanceLimitXMeters)
	}
	if m.AftBalanceLimitXMeters != nil && balance > *m.AftBalanceLimitXMeters {
		return p.inWords(" It lies aft of the builder's own limit of %.3f m.", *m.AftBalanceLimitXMeters)
	}
	return ""
}

// tellShift tells how far the balance point may move forward and aft within the window.
func (p *pass) tellShift(id string, margin answer) {
	p.tell(id+".room_forward", math.Max(0, margin.upper-margin.value)*p.wing.chord)
	p.tell(id+".room_aft", math.Max(0, margin.value-margin.limit.value)*p.wing.chord)
}

// answerTravel answers for the worst margin between full and empty, which matters where several tanks empty one after another.
func (p *pass) answerTravel() {
	if len(p.massProperties().Tanks) < 2 {
		return
	}
	forward, aft := p.mass.travel.Forward.X, p.mass.travel.Aft.X
	balance := aft
	least, most := p.window()
	if p.wing.neutralX-float64(most.value*p.wing.chord) > forward {
		balance = forward
	}
	if p.wing.neutralX-float64(least.value*p.wing.chord) < aft {
		balance = aft
	}
	p.answerMargin("balance.margin_burn", p.mass.fullMissing, balance)
}

// drawBurn draws the margin along the burn with its window.
func (p *pass) drawBurn() {
	points := p.mass.travel.Points
	fuel := p.mass.takeoff - p.mass.empty
	if len(points) < 2 || !(fuel > 0) {
		return
	}
	least, most := p.window()
	margin, low, high := CurveSeries{Name: "Static margin"}, CurveSeries{Name: "Least"}, CurveSeries{Name: "Most"}
	for i := range points {
		share := points[i].Burnt / fuel
		margin.add(share, (p.wing.neutralX-points[i].X)/p.wing.chord)
	}
	for _, share := range []float64{0, 1} {
		low.add(share, least.value)
		high.add(share, most.value)
	}
	p.curves = append(p.curves, ReportCurve{
		ID: "balance.burn", Title: "Static margin along the burn", XTitle: "Share of the fuel burnt", XUnit: "1", YTitle: "Static margin", YUnit: "1",
		Note: p.mass.travel.Note, Series: []CurveSeries{margin, low, high},
	})
}

// findBallast looks for the least ballast that brings the balance point into its window for the whole burn.
func (p *pass) findBallast() {
	m := p.massProperties()
	least, most := p.window()
	search := weighing.Search{
		Window: weighing.Window{Neutral: p.wing.neutralX, Chord: p.wing.chord, Least: least.value, Most: most.value},
		Travel: p.mass.travel, Items: p.itemList(m),
	}
	if p.in.Limits != nil {
		search.MaximumMass = p.in.Limits.MaximumMassKg
	}
	for i := range m.BallastPlaces {
		place := &m.BallastPlaces[i]
		search.Places = append(search.Places, weighing.Place{Name: place.Name, X: place.XMeters, Z: place.ZMeters, Maximum: place.MaximumMassKg})
	}
	found, err := weighing.Correct(search)
	if err != nil || !found.Needed {
		return
	}
	for i := range found.Ballast {
		p.ballast = append(p.ballast, ballastOption(&found.Ballast[i]))
	}
	p.noteMove(found.Moves)
}

// noteMove adds the shortest move of an item that would do without ballast to the margins that fail.
func (p *pass) noteMove(moves []weighing.Option) {
	if len(moves) == 0 || !moves[0].Possible {
		return
	}
	way := "aft"
	if moves[0].By < 0 {
		way = "forward"
	}
	for i := range p.results {
		if f := &p.results[i]; f.Verdict == VerdictFails && strings.HasPrefix(f.ID, "balance.margin_") {
			f.Note += say(" Moving %s by %.0f mm %s would do it without ballast.", moves[0].Name, 1000*math.Abs(moves[0].By), way)
		}
	}
}

func ballastOption(o *weighing.Option) BallastOption {
	option := BallastOption{Place: o.Name, XMeters: o.X, Note: o.Note}
	if o.Possible {
		option.MassKg, option.MarginFullRatio, option.MarginEmptyRatio = &o.Mass, &o.MarginFull, &o.MarginEmpty
	}
	return option
}

// answerReconciled compares what was weighed with the list of items.
func (p *pass) answerReconciled() {
	weighed, listed := p.mass.weighed, p.mass.listed
	reconciled := answer{id: "mass.reconciled", limit: p.limit(massFigure), from: p.mass.emptyRead}
	switch {
	case !weighed.Mass.Known && !listed.Mass.Known:
		reconciled.missing = []string{"model.mass.emptyMassKg", "model.mass.items"}
	case !weighed.Mass.Known:
		reconciled.missing = []string{"model.mass.emptyMassKg"}
	case !listed.Mass.Known:
		reconciled.none = true
		reconciled.note = "Only the weighed mass is given; there is no list of items to compare it with."
	default:
		p.reconcile(&reconciled)
	}
	p.conclude(reconciled)
}

func (p *pass) reconcile(reconciled *answer) {
	m := p.massProperties()
	difference, err := weighing.Reconcile(p.mass.weighed, p.mass.listed, p.itemList(m))
	if err != nil {
		p.refuse(err)
		reconciled.value = math.NaN()
		return
	}
	reconciled.value = math.Abs(difference.MassRatio)
	if !p.tells() {
		return
	}
	reconciled.note = difference.Note
	if len(difference.Suspects) > 0 {
		reconciled.note += " " + difference.Suspects[0].Note
	}
	p.tell("mass.weighed", p.mass.weighed.Mass.Value, p.massPaths()...)
	p.tell("mass.listed", p.mass.listed.Mass.Value, "model.mass.items")
	p.tell("mass.difference", difference.Mass.Value)
	p.tell("mass.difference_score", difference.MassScore)
	if difference.X.Known {
		p.tell("mass.balance_difference", difference.X.Value, p.balancePaths()...)
		p.tell("mass.balance_difference_score", difference.MomentScore)
	}
}
