package assess

import (
	"math"

	"pitgate/server/physics/field"
	"pitgate/server/physics/weather"
)

// WindWindow says which winds the launch and the circuit hold in, from each direction and for each way the field offers.
type WindWindow struct {
	// One for each way of each strip, or for the launch spot of the plan.
	Ways []WindWay `json:"ways,omitempty"`
	// What is missing, as paths of the document; then there are no ways.
	Missing []string `json:"missing,omitempty"`
	// The way that holds in the strongest wind from the day's direction, by its name; empty when none does.
	BestWay string `json:"bestWay,omitempty"`
	// The deciding numbers in a sentence.
	Note string `json:"note,omitempty"`
	// Greatest wind over direction for each way, as a diagram.
	Curve *ReportCurve `json:"curve,omitempty"`
	// Ids of the findings that were asked.
	FindingIDs []string `json:"findingIds,omitempty"`
}

// WindWay is one direction to launch in.
type WindWay struct {
	// Plain words, such as "06/24 to 60 degrees, circuit to the left".
	Name string `json:"name,omitempty"`
	// Strip by name; empty for a launch spot.
	Strip string `json:"strip,omitempty"`
	// True from the strip's end to its start.
	Reversed bool `json:"reversed"`
	// Heading of the launch, degrees true.
	HeadingDegrees float64     `json:"headingDegrees"`
	Ranges         []WindRange `json:"ranges,omitempty"`
}

// WindRange is the range of mean wind speeds from one direction in which all findings hold.
type WindRange struct {
	// Direction the wind comes from, degrees true.
	FromDegrees float64 `json:"fromDegrees"`
	// False when no wind from there holds.
	Holds                bool    `json:"holds"`
	LeastMetersPerSecond float64 `json:"leastMetersPerSecond"`
	MostMetersPerSecond  float64 `json:"mostMetersPerSecond"`
	// True when the greatest wind looked at still holds.
	Open bool `json:"open"`
	// True when stronger winds hold again, so that there is more than one range; this is the lowest.
	Split bool `json:"split"`
	// Id of the finding that fails just above the greatest wind, or where nothing holds in calm air.
	Decides string `json:"decides,omitempty"`
}

// windowFindings are asked of every wind.
var windowFindings = []string{
	"liftoff.margin", "launch.distance", "launch.end_speed", "launch.sink", "climb.clearance", "circuit.inside", "stall.gust", "weather.crosswind",
}

// windowSearch looks at winds to 16 m/s in steps of 4 m/s and narrows to a quarter of a metre a second.
var windowSearch = weather.Search{Top: 16, Tolerance: 0.25, Probes: 5}

// windowDirections is how many directions of the wind are asked, evenly from north.
const windowDirections = 36

// Window finds the winds in which launch and circuit hold. Every value is taken as given, without its spread; the gust keeps its
// excess over the mean and is no less than the ground makes.
//
// What is missing is named in the window and is no error; an error names a geometry or a mass that cannot exist, as for Run.
func (g *Geometry) Window(in Input) (WindWindow, error) {
	kept := newPass(&in, g)
	kept.walk()
	if kept.fault != nil {
		return WindWindow{}, kept.fault
	}
	window := WindWindow{FindingIDs: windowFindings, Missing: kept.windowMissing()}
	if len(window.Missing) > 0 {
		return window, nil
	}
	directions := weather.Directions(windowDirections)
	for _, way := range kept.windowWays() {
		if err := way.search(kept, directions); err != nil {
			return WindWindow{}, err
		}
		window.Ways = append(window.Ways, way.WindWay)
	}
	window.choose(degrees(kept.air.from))
	window.draw()
	return window, nil
}

// windowMissing names what the findings of a window lack.
func (p *pass) windowMissing() []string {
	n := p.need()
	for i := range p.results {
		if contains(windowFindings, p.results[i].ID) && p.results[i].Verdict == VerdictUnknown {
			n.lack(p.results[i].Missing...)
		}
	}
	if !p.launch.known {
		n.lack("launchPlan.method")
	}
	return n.missing
}

// way is a direction to launch in with the document that asks for it.
type way struct {
	WindWay
	in Input
}

// windowWays returns both ways of every strip for a launch on wheels, else the launch as planned.
func (p *pass) windowWays() []way {
	if p.in.LaunchPlan == nil || p.in.LaunchPlan.Strip == "" || p.in.LaunchPlan.HeadingDegrees != nil {
		return []way{{WindWay: WindWay{Name: p.inWords("to %.0f degrees", compass(p.launch.heading)), HeadingDegrees: compass(p.launch.heading)}, in: *p.in}}
	}
	var ways []way
	for i := range p.in.Field.Strips {
		for _, reversed := range []bool{false, true} {
			strip := &p.in.Field.Strips[i]
			if strip.Start == nil || strip.End == nil {
				continue
			}
			heading := flat(strip.Start).Heading(flat(strip.End))
			plan := *p.in.LaunchPlan
			plan.Strip, plan.StripReversed = strip.Name, &reversed
			if reversed {
				heading += math.Pi
			}
			plan.Circuit = p.circuitBeside(heading)
			w := way{WindWay: WindWay{Strip: strip.Name, Reversed: reversed, HeadingDegrees: compass(heading)}, in: *p.in}
			w.Name = say("%s to %.0f degrees, circuit to the %s", strip.Name, w.HeadingDegrees, handWords.of(plan.Circuit.Hand))
			w.in.LaunchPlan = &plan
			ways = append(ways, w)
		}
	}
	return ways
}

// handWords name the side a circuit lies on.
var handWords = pairings[CircuitHand, string]{{CircuitHandLeft, "left"}, {CircuitHandRight, "right"}}

// circuitBeside returns the planned circuit for a launch along a heading (rad), on the same side of the field: the other way round for the other way.
func (p *pass) circuitBeside(heading float64) *CircuitPlan {
	circuit := *p.circuitPlan()
	if field.Ahead(heading).Dot(field.Ahead(p.launch.heading)) >= 0 {
		return &circuit
	}
	if circuit.Hand == CircuitHandLeft {
		circuit.Hand = CircuitHandRight
	} else {
		circuit.Hand = CircuitHandLeft
	}
	return &circuit
}

// search finds the range of each direction.
func (w *way) search(kept *pass, directions []float64) error {
	ask := func(speed, from float64) bool { return kept.inWind(&w.in, speed, from) == "" }
	found, err := windowSearch.Rose(directions, ask)
	if err != nil {
		return err
	}
	for _, f := range found {
		r := WindRange{
			FromDegrees: math.Round(degrees(f.From)), Holds: !f.None, LeastMetersPerSecond: f.Least, MostMetersPerSecond: f.Most, Open: f.Open, Split: f.Split,
		}
		switch {
		case f.None:
			r.LeastMetersPerSecond, r.MostMetersPerSecond = 0, 0
			r.Decides = kept.inWind(&w.in, 0, f.From)
		case !f.Open:
			r.Decides = kept.inWind(&w.in, f.Most+windowSearch.Tolerance, f.From)
		}
		w.Ranges = append(w.Ranges, r)
	}
	return nil
}

// inWind returns the first finding that does not hold in a wind (m/s, rad) for a plan, empty when all hold.
func (p *pass) inWind(in *Input, speed, from float64) string {
	q := *p
	q.in, q.moved, q.results, q.launch = in, "wind", nil, launchSection{}
	q.air.wind, q.air.from = speed, from
	q.air.gustExcess = max(p.air.gustExcess, float64(speed*(weather.LeastGustFactor(roughness(in))-1)))
	q.answerTurn()
	q.answerLaunch()
	q.answerClimb()
	q.answerCircuit()
	q.answerCrosswind()
	for i := range q.results {
		f := &q.results[i]
		if contains(windowFindings, f.ID) && f.Verdict != VerdictHolds {
			return f.ID
		}
	}
	return ""
}

// choose finds the way that holds in the strongest wind from the day's direction (degrees) and says so.
func (w *WindWindow) choose(from float64) {
	best := -1.0
	for i := range w.Ways {
		r := w.Ways[i].rangeFrom(from)
		if r.Holds && r.MostMetersPerSecond > best {
			best = r.MostMetersPerSecond
			w.BestWay = w.Ways[i].Name
			w.Note = say("In wind from %.0f degrees %s holds from %.1f to %.1f m/s.", r.FromDegrees, w.BestWay, r.LeastMetersPerSecond, best)
			if r.Open {
				w.Note = say("In wind from %.0f degrees %s holds from %.1f to at least %.1f m/s.", r.FromDegrees, w.BestWay, r.LeastMetersPerSecond, best)
			}
		}
	}
	if best < 0 && len(w.Ways) > 0 {
		r := w.Ways[0].rangeFrom(from)
		w.Note = say("In wind from %.0f degrees no way holds; %s fails first.", r.FromDegrees, r.Decides)
	}
}

// rangeFrom returns the range of the direction nearest to one (degrees).
func (w *WindWay) rangeFrom(from float64) WindRange {
	step := 360.0 / float64(len(w.Ranges))
	return w.Ranges[int(math.Round(compass(radians(from))/step))%len(w.Ranges)]
}

// draw adds the diagram: greatest wind that holds over the direction it comes from, zero where none does.
func (w *WindWindow) draw() {
	w.Curve = &ReportCurve{
		ID: "weather.window", Title: "Greatest wind that holds", Note: w.Note, XTitle: "wind from", XUnit: "deg", YTitle: "greatest mean wind", YUnit: "m/s",
	}
	for i := range w.Ways {
		series := CurveSeries{Name: w.Ways[i].Name}
		for _, r := range w.Ways[i].Ranges {
			series.Points = append(series.Points, CurvePoint{X: r.FromDegrees, Y: r.MostMetersPerSecond})
		}
		w.Curve.Series = append(w.Curve.Series, series)
	}
}
