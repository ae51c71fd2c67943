package assess

import (
	"math"

	"pitgate/server/physics/reach"
)

// turnBackSteps is how many distances along the launch are asked for a turn back.
const turnBackSteps = 10

// reachNote says which point has least to spare and what the glide is.
func (p *pass) reachNote(points []reach.Point, survey *reach.Survey) string {
	if survey.Worst < 0 {
		return ""
	}
	point, result := points[survey.Worst], survey.Results[survey.Worst]
	note := say("From %.0f of %d points a landing area is reached.", math.Round(survey.ReachRatio*float64(len(points))), len(points))
	where := p.inWords(" Worst at x %.0f m, y %.0f m, %.0f m up", point.At.X, point.At.Y, point.Height)
	switch {
	case result.Area < 0:
		return note + where + ": no landing area can be landed on from there at any height."
	case result.Reachable:
		return note + where + say(": %s needs %.0f m, %.0f m to spare.", p.glide.names[result.Area], result.Needed, result.Margin)
	}
	return note + where + say(": %s needs %.0f m, %.0f m more than there is.", p.glide.names[result.Area], result.Needed, -result.Margin)
}

func (p *pass) tellReach(m *reach.Map, survey *reach.Survey) {
	model := p.glideModel()
	glide := model.SpeedToFly(0)
	p.tell("engine_out.glide_ratio", glide.Ratio(0))
	p.tell("engine_out.glide_speed", glide.Speed)
	p.tell("engine_out.turn_loss", math.Pi*model.TurnAt(model.OptimumBank()).Loss)
	p.tell("engine_out.reach_ratio", survey.ReachRatio)
	if survey.Worst >= 0 && survey.Results[survey.Worst].Area >= 0 {
		p.tell("engine_out.least_margin", survey.Results[survey.Worst].Margin)
	}
}

// drawReach draws all ground that a model without thrust can glide to, and the stretches from which no landing area is reached.
func (p *pass) drawReach(m *reach.Map, points []reach.Point, survey *reach.Survey) {
	if ground := m.Footprint(points); len(ground) > 2 {
		p.drawArea("area.engine_out", ground)
	}
	for i, stretch := range survey.NoReach {
		path := ReportPath{ID: "reach.none"}
		if i > 0 {
			path.ID = numbered("reach.none.", i+1)
		}
		for _, point := range points[stretch.First : stretch.Last+1] {
			path.Points = append(path.Points, PathPoint{
				XMeters: point.At.X, YMeters: point.At.Y, ZMeters: point.Height + p.landing.place.ground, AirspeedMetersPerSecond: point.Airspeed,
			})
		}
		p.lines = append(p.lines, path)
	}
}

// drawTurnBack draws the least height of a turn back, the greatest of a landing straight on, and the launch itself, over the distance.
func (p *pass) drawTurnBack(m *reach.Map, points []reach.Point) {
	end := p.launch.result.End()
	far := max(end.Distance, float64(p.launch.length))
	distances := make([]float64, turnBackSteps)
	for i := range distances {
		distances[i] = float64(far * (float64(i+1) / turnBackSteps))
	}
	curve := ReportCurve{
		ID: "engine_out.turn_back", Title: "Least height of a turn back along the launch", XTitle: "Distance along the launch", XUnit: "m",
		YTitle: "Height", YUnit: "m",
	}
	back, on := CurveSeries{Name: "A turn back succeeds from"}, CurveSeries{Name: "Landing straight on succeeds up to"}
	least := reach.TurnBack{Height: math.Inf(1)}
	for _, t := range m.TurnBack(p.launch.origin, p.launch.heading, p.launch.result.Airspeed, distances) {
		if t.Straight >= 0 {
			on.add(t.Distance, t.Straight)
		}
		if t.Possible {
			back.add(t.Distance, t.Height)
			if t.Height < least.Height {
				least = t
			}
		}
	}
	flown := CurveSeries{Name: "The launch as flown"}
	for _, d := range distances {
		flown.add(d, p.pathHeight(d))
	}
	for _, series := range []CurveSeries{back, on, flown} {
		if len(series.Points) > 0 {
			curve.Series = append(curve.Series, series)
		}
	}
	curve.Note = "No landing area can be landed on against the launch."
	if finite(least.Height) {
		p.tell("engine_out.turn_back_height", least.Height)
		curve.Note = say("A turn back to %s needs %.0f m at least, %.0f m along, with %.0f degrees of bank.",
			p.glide.names[least.Area], least.Height, least.Distance, degrees(least.Bank))
		curve.Marks = append(curve.Marks, CurveMark{Name: "least height", X: least.Distance, Y: least.Height})
	}
	p.curves = append(p.curves, curve)
}
