package assess

import (
	"slices"
	"strings"

	"pitgate/server/physics/engine"
	"pitgate/server/physics/fuel"
)

const (
	feedPath = "model.fuelSystem."
	// spreadRelease is how far the suction at which air comes out may be off, relative: a third, taken as two standard deviations.
	spreadRelease = 0.16
	releaseMethod = "method: suction that releases air"
)

// feedSection is what the engines burn, and the system that feeds them.
type feedSection struct {
	flowMissing []string
	engines     []engine.Engine // with their fuel flows
	full, idle  float64         // kg/s, all engines
	turbine     bool            // a bubble stops it
	system      fuel.System
	result      fuel.Result
	hot         heatSection
}

// keptFeed is the feed system as the base pass computed it.
type keptFeed struct {
	key    []float64
	result fuel.Result
	err    error
}

// burnsFuel reports whether there is anything to feed: electric models have no answers about fuel. A model without a described engine has them,
// unknown.
func (p *pass) burnsFuel() bool {
	if p.in.Model == nil || len(p.in.Model.Engines) == 0 {
		return true
	}
	for i := range p.in.Model.Engines {
		e := &p.in.Model.Engines[i]
		if e.Kind == EngineKindTurbine || e.Kind == "" || e.FullFuelFlowGramsPerMinute != nil {
			return true
		}
	}
	return false
}

// turbines returns the places of all turbines.
func (p *pass) turbines() []int {
	var found []int
	if p.in.Model != nil {
		for i := range p.in.Model.Engines {
			if p.in.Model.Engines[i].Kind == EngineKindTurbine {
				found = append(found, i)
			}
		}
	}
	return found
}

func (p *pass) fuelSystem() *FuelSystem {
	if p.in.Model == nil || p.in.Model.FuelSystem == nil {
		return &FuelSystem{}
	}
	return p.in.Model.FuelSystem
}

// answerFeeds answers for the fuel from tank to pump, how long it lasts, what the exhaust heats and whether the engine's figures agree.
func (p *pass) answerFeeds() {
	if !p.burnsFuel() {
		return
	}
	p.readFlow()
	p.readFeed()
	p.answerBudget()
	p.answerSuction()
	p.answerTrap()
	p.answerVent()
	p.answerFilter()
	p.answerHeat()
	p.answerEngines()
}

// readFlow reads what the engines burn at full and idle thrust.
func (p *pass) readFlow() {
	n, mark := p.need(), p.mark()
	if p.in.Model == nil || len(p.in.Model.Engines) == 0 {
		n.lack("model.engines")
		p.feed.flowMissing = n.missing
		return
	}
	p.feed.turbine = len(p.turbines()) > 0
	for i := range p.in.Model.Engines {
		p.addFlow(i, &n)
	}
	if p.feed.flowMissing = n.missing; n.met() {
		p.tell("fuel.full_flow", p.feed.full, p.since(mark)...)
	}
}

func (p *pass) addFlow(i int, n *need) {
	e, name := &p.in.Model.Engines[i], at("model.engines", i)
	full, idle := fullFlowOf(e, name), idleFlowOf(e, name)
	var out engine.Engine
	if i < len(p.engine.engines) {
		out = p.engine.engines[i]
	}
	out.FullFuelFlow = float64(max(0, n.figure(engineFigure(i, "fuel_flow"), full)) * gramsPerMinute)
	out.IdleFuelFlow = float64(max(0, p.optional(idle.path, idle.value, 0)) * gramsPerMinute)
	out.FuelRun = p.fuelRun(e, name)
	p.feed.engines = append(p.feed.engines, out)
	p.feed.full += out.FullFuelFlow
	p.feed.idle += out.FuelFlow(0)
}

// readFeed gathers the feed system; what is missing is named by the answers that need it.
func (p *pass) readFeed() {
	given, s := p.fuelSystem(), &p.feed.system
	s.Flow, s.Turbine = p.feed.full, p.feed.turbine
	s.Fuel, _ = fuel.Named(given.Fuel)
	s.OilShare = fuel.OilShare(orElse(given.OilRatio, 0))
	s.Temperature, s.Outside = p.air.state.Temperature, p.air.state.Pressure
	s.Density = max(0, p.optional(feedPath+"densityKgPerCubicMeter", given.DensityKgPerCubicMeter, 0))
	s.Filter, s.FilterLoss = yes(given.Filter), max(0, p.optional(feedPath+"filterPressureLossPascals", given.FilterPressureLossPascals, 0))
	s.PumpHeight = p.optional(feedPath+"pumpHeightMeters", given.PumpHeightMeters, 0)
	s.PumpAhead = p.feedTank() - p.optional(feedPath+"pumpXMeters", given.PumpXMeters, p.feedTank())
	s.Felt, s.Bladder = yes(given.FeltPickup), yes(given.BladderTank)
	s.Vent, s.VentBore = yes(given.Vent), max(0, p.optional(feedPath+"ventBoreMeters", given.VentBoreMeters, 0))
	s.Trap = yes(given.AirTrap)
	s.TrapVolume = max(0, p.optional(feedPath+"airTrapVolumeLiters", given.AirTrapVolumeLiters, 0)) / litersPerCubicMeter
	if s.Trap {
		s.TrapVolume += max(0, p.optional(feedPath+"headerTankLiters", given.HeaderTankLiters, 0)) / litersPerCubicMeter
	}
	s.Lines, s.Loads = feedLines(given), p.feedLoads()
}

const litersPerCubicMeter = 1000.0

// feedTank returns the place of the tank that empties last, which the pump sucks from, m aft of the datum.
func (p *pass) feedTank() float64 {
	x, last := 0.0, -1
	tanks := p.massProperties().Tanks
	for i := range tanks {
		if order := count(tanks[i].BurnOrder, 0); order > last && tanks[i].XMeters != nil {
			x, last = *tanks[i].XMeters, order
		}
	}
	return x
}

// feedLines returns the lines whose length and bore are told.
func feedLines(given *FuelSystem) []fuel.Line {
	var lines []fuel.Line
	for i := range given.Lines {
		line := &given.Lines[i]
		if line.LengthMeters != nil && line.BoreMeters != nil {
			lines = append(lines, fuel.Line{
				Name: line.Name, Length: *line.LengthMeters, Bore: *line.BoreMeters, Elbows: count(line.ElbowCount, 0), Suction: yes(line.SuctionSide),
			})
		}
	}
	return lines
}

// feedLoads returns the cases that the pump is judged by: the load factor asked of the structure, or where that is not known the one it was
// designed for.
func (p *pass) feedLoads() []fuel.Load {
	asked := p.loads.asked
	if !(asked > 0) {
		asked = orElse(p.structure().DesignLoadFactor, usualPullUp)
	}
	push := 0.0
	if p.launch.flown {
		push = max(0, p.launch.result.PeakAcceleration)
	}
	return fuel.Loads(asked, -invertedShare*asked, push)
}

// feedKey returns the numbers that the result rests on.
func feedKey(s *fuel.System) []float64 {
	key := []float64{s.Flow, s.Density, s.Temperature, s.Outside, s.FilterLoss, s.PumpHeight, s.PumpAhead, s.TrapVolume, s.VentBore}
	for i := range s.Loads {
		key = append(key, s.Loads[i].Normal, s.Loads[i].Forward)
	}
	return key
}

// fed computes the feed system once, and anew in the passes that move one of its numbers.
func (p *pass) fed() (*fuel.Result, bool) {
	key := feedKey(&p.feed.system)
	if kept := p.drawing.feed; kept != nil && slices.Equal(kept.key, key) {
		return &kept.result, kept.err == nil
	}
	result, err := fuel.Assess(p.feed.system)
	p.feed.result = result
	if p.base() {
		p.drawing.feed = &keptFeed{key: key, result: result, err: err}
	}
	return &p.feed.result, err == nil
}

// needFeed names what every answer about the lines lacks.
func (p *pass) needFeed() need {
	n := p.need()
	n.lack(p.feed.flowMissing...)
	n.lack(p.air.missing...)
	if p.fuelSystem().Fuel == "" {
		n.lack(feedPath + "fuel")
	}
	if n.met() && !(p.feed.full > 0) {
		n.lack("model.engines[0].fullFuelFlowGramsPerMinute")
	}
	return n
}

// present names a part of which nobody said whether it is there.
func (n *need) present(name string, value *bool) {
	if value == nil {
		n.lack(name)
	}
	n.pass.note(name)
}

// impossibleFeed stands where the numbers of the feed system cannot be.
const impossibleFeed = "A figure of the fuel system is out of range."

// changeWords says the smallest change that removes one of some faults.
func changeWords(s *fuel.System, fixes []fuel.Fix, cures ...fuel.Fault) string {
	var words []string
	for _, fix := range fixes {
		if slices.Contains(cures, fix.Cures) {
			words = append(words, fixWords(s, fix))
		}
	}
	if len(words) == 0 {
		return ""
	}
	return " What would mend it: " + strings.Join(words, "; or ") + "."
}

func fixWords(s *fuel.System, fix fuel.Fix) string {
	switch fix.Change {
	case fuel.WidenLine:
		return say("a bore of %.1f mm instead of %.1f mm in %s", 1000*fix.To, 1000*fix.From, lineName(s, fix.Line))
	case fuel.WidenLines:
		return sayNumbers("no suction line narrower than %.1f mm", 1000*fix.To)
	case fuel.LowerPump:
		return sayNumbers("the pump at most %.0f mm above the pick-up", 1000*fix.To)
	case fuel.AddTrap, fuel.GrowTrap:
		return sayNumbers("an air trap of %.0f ml", fix.To*1e6)
	case fuel.OpenVent, fuel.WidenVent:
		return sayNumbers("a vent of %.1f mm", 1000*fix.To)
	}
	return string(fix.Change)
}

func lineName(s *fuel.System, i int) string {
	if i >= 0 && i < len(s.Lines) && s.Lines[i].Name != "" {
		return s.Lines[i].Name
	}
	return say("line %d", i+1)
}
