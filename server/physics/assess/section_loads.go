package assess

import (
	"math"

	"pitgate/server/physics/loads"
	"pitgate/server/physics/section"
	"pitgate/server/physics/structure"
)

const (
	// spreadStrength is how far a computed strength may be off, relative: scatter of material and glue about their low end.
	spreadStrength = 0.07
	// sizePower is how a strength goes with the sizes of a part: with the square of a depth.
	sizePower = 2.0
	// usualPullUp is the load factor of a pull-up where no one says what the model was designed for: judgement.
	usualPullUp = 6.0
	// invertedShare is the part of the upright limit that is asked upside down, as regulations ask it.
	invertedShare = -loads.RegulationNegative / loads.RegulationPositive
	// diveGustShare is the part of the gust that is asked at the dive speed.
	diveGustShare = loads.RegulationDiveGust / loads.RegulationTopGust
)

// loadSection is what flight asks of the structure and what that stands.
type loadSection struct {
	missing   []string
	aircraft  loads.Aircraft
	gust      float64 // m/s
	manoeuvre float64 // load factors
	circuit   float64
	gustLoad  float64
	asked     float64
	stands    float64       // zero where it is not known
	lacking   []string      // what the wing's answer lacks
	roots     []loads.Load  // at the speeds asked, once they are known
	states    []flightState // of the tail, once they are known
}

// answerLoads answers for wing, joiner, gust, the other parts that carry, linkages and the speed never to exceed.
func (p *pass) answerLoads() {
	p.readLoads()
	p.answerWing()
	p.answerJoiner()
	p.answerGustLoad()
	p.answerParts()
	p.answerServos()
	p.answerRods()
	p.answerNeverExceed()
	p.answerFreePlay()
	p.answerMassBalance()
	p.drawEnvelope()
	p.drawSpanLoad()
}

// readLoads finds the load factors that are asked for.
func (p *pass) readLoads() {
	n, l := p.need(), &p.loads
	n.lack(p.stall.missing...)
	n.lack(p.topMissing...)
	if l.missing = n.missing; !n.met() || !(p.top > 0) {
		return
	}
	l.aircraft = loads.Aircraft{
		Mass: p.mass.takeoff, Area: p.wing.area, Chord: p.wing.area / p.wing.span, LiftSlope: p.wing.slope,
		MaximumLift: p.wing.clean.Coefficient, Density: p.air.state.Density,
	}
	l.gust = p.limit(designGustFigure).value
	l.manoeuvre = min(orElse(p.structure().DesignLoadFactor, usualPullUp), p.stallLoad(p.top))
	l.circuit = 1
	if use, err := loads.CircuitLoad(l.aircraft, p.stall.circuitSpeed, []loads.Turn{{Bank: p.stall.bank, Speed: p.stall.circuitSpeed}}, l.gust); err == nil {
		l.circuit = min(use.LoadFactor, p.stallLoad(p.stall.circuitSpeed))
	}
	if step, err := l.aircraft.GustIncrement(p.top, l.gust); err == nil {
		l.gustLoad = min(1+step, p.stallLoad(p.top))
	}
	l.asked = max(1, l.manoeuvre, l.circuit)
	p.tellAsked()
}

// stallLoad returns the load factor at which the wing stalls at a speed.
func (p *pass) stallLoad(speed float64) float64 { return square(speed / p.stall.clean) }

func (p *pass) tellAsked() {
	l := &p.loads
	p.tell("loads.design_gust", l.gust, p.givenOr("limits.designGustMetersPerSecond", "method: design gust", p.in.Limits != nil && p.in.Limits.DesignGustMetersPerSecond != nil))
	p.tell("loads.manoeuvre", l.manoeuvre, p.givenOr(designPath, "method: usual pull-up", p.structure().DesignLoadFactor != nil))
	p.tell("loads.circuit", l.circuit)
	p.tell("loads.gust_factor", l.gustLoad)
	p.tell("loads.asked", l.asked)
	p.tell("loads.manoeuvring_speed", p.stall.clean*math.Sqrt(l.asked))
}

// givenOr returns the path of an input where it was given, else the method that stands in for it.
func (p *pass) givenOr(path, method string, given bool) string {
	if given {
		return path
	}
	return method
}

// wingLoads returns what the wing carries at the stations, and at the root first, at a speed.
func (p *pass) wingLoads(speed float64, stations []structure.Station) ([]loads.Load, error) {
	main := &p.whole.surfaces[p.whole.main]
	weight := float64(p.mass.takeoff * loads.StandardGravity)
	pressure := 0.5 * p.air.state.Density * float64(speed*speed)
	strips, err := loads.FromLattice(p.whole.lattice, main.Name, weight, pressure, section.Moment(main.Stations[0].Section))
	if err != nil {
		return nil, err
	}
	places := []float64{0}
	for _, s := range stations {
		places = append(places, s.Y)
	}
	if len(stations) > 0 {
		places[1] = 0
	}
	return loads.Integrate(strips, p.carried().items, p.elasticAxis(), places)
}

// elasticAxis returns the line about which the wing twists.
func (p *pass) elasticAxis() loads.Axis {
	share, main := p.axisRatio(), &p.whole.surfaces[p.whole.main]
	first, last := main.Stations[0], main.Stations[len(main.Stations)-1]
	rootX, tipX := first.X+float64(share*first.Chord), last.X+float64(share*last.Chord)
	if !(last.Y > first.Y) {
		return loads.Axis{RootX: rootX}
	}
	slope := (tipX - rootX) / (last.Y - first.Y)
	return loads.Axis{RootX: rootX - float64(slope*first.Y), Slope: slope}
}

// usualAxis is where the elastic axis is taken where no one measured it, over the chord: judgement, a spar and its skin at 0.3 to 0.4.
const usualAxis = 0.4

func (p *pass) axisRatio() float64 {
	if box := p.structure().TorsionBox; box != nil {
		return orElse(box.ElasticAxisRatio, usualAxis)
	}
	return usualAxis
}

// standing is what the wing or its joiner stands.
type standing struct {
	value  float64
	result structure.StationResult
	load   loads.Load
	index  int
	failed bool
}

// speedsAsked returns the speeds at which the load factor asked for is first reached and at the top: twist of the wing adds less or more there.
func (p *pass) speedsAsked() []float64 {
	return []float64{min(p.top, p.stall.clean*math.Sqrt(p.loads.asked)), p.top}
}

// sparStands returns what the spar stands at the worse of both speeds.
func (p *pass) sparStands() standing {
	c, out := p.carried(), standing{value: math.Inf(1)}
	for _, speed := range p.speedsAsked() {
		at, err := p.wingLoads(speed, c.stations)
		if err != nil {
			return standing{failed: true}
		}
		result, err := structure.Assess(c.stations, at[1:], c.twisted)
		if err != nil {
			return standing{failed: true}
		}
		if result.Stands < out.value {
			out = standing{value: result.Stands, result: result.Stations[result.Station], load: at[result.Station+1], index: result.Station}
		}
		for i := range result.Stations {
			if result.Stations[i].ShearUncarried {
				out.result, out.index = result.Stations[i], i
				return out
			}
		}
	}
	return out
}

// joinerStands returns what the joiner stands at the worse of both speeds.
func (p *pass) joinerStands() standing {
	c, out := p.carried(), standing{value: math.Inf(1)}
	for _, at := range p.rootLoads() {
		result, err := c.joiner.Assess(at)
		if err != nil {
			return standing{failed: true}
		}
		if result.Stands < out.value {
			out = standing{value: result.Stands, result: result, load: at}
		}
	}
	out.failed = math.IsInf(out.value, 1)
	return out
}

// rootLoads returns what the wing's root carries at the speeds asked; none where that cannot be told.
func (p *pass) rootLoads() []loads.Load {
	if p.loads.roots != nil {
		return p.loads.roots
	}
	for _, speed := range p.speedsAsked() {
		at, err := p.wingLoads(speed, nil)
		if err != nil {
			return nil
		}
		p.loads.roots = append(p.loads.roots, at[0])
	}
	return p.loads.roots
}
