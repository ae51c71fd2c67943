package assess

import "pitgate/server/physics/loads"

// drawEnvelope draws the load factors over speed.
func (p *pass) drawEnvelope() {
	l := &p.loads
	if !p.tells() || len(l.missing) > 0 || !(p.top > 0) || !(l.asked > 1) {
		return
	}
	d, err := l.aircraft.Diagram(loads.Limits{
		Positive: l.asked, Negative: -invertedShare * l.asked, TopSpeed: p.top, TopGust: l.gust, DiveGust: diveGustShare * l.gust,
	})
	if err != nil {
		return
	}
	curve := ReportCurve{
		ID: "loads.envelope", Title: "Load factor against speed", XTitle: "Airspeed", XUnit: "m/s", YTitle: "Load factor", YUnit: "1",
		Note: p.inWords("Below %.1f m/s the wing stalls before it carries the %.1f asked for; a gust of %.1f m/s at top speed loads it %.1f times.",
			d.ManoeuvringSpeed, l.asked, l.gust, l.gustLoad),
	}
	bounds := []struct {
		name string
		of   func(loads.Bounds) float64
	}{
		{"Manoeuvre, up", func(b loads.Bounds) float64 { return b.Upper }},
		{"Manoeuvre, inverted", func(b loads.Bounds) float64 { return b.Lower }},
		{"Up-gust", func(b loads.Bounds) float64 { return b.UpGust }},
		{"Down-gust", func(b loads.Bounds) float64 { return b.DownGust }},
	}
	for _, bound := range bounds {
		curve.Series = append(curve.Series, CurveSeries{Name: bound.name, Points: line(0, d.DiveSpeed, func(v float64) float64 { return bound.of(d.At(v)) })})
	}
	if l.stands > 0 {
		curve.Series = append(curve.Series, CurveSeries{Name: "The wing stands", Points: []CurvePoint{{X: 0, Y: l.stands}, {X: d.DiveSpeed, Y: l.stands}}})
	}
	curve.Marks = []CurveMark{
		{Name: "circuit's turn in the gust", X: p.stall.circuitSpeed, Y: l.circuit}, {Name: "gust at top speed", X: p.top, Y: l.gustLoad},
	}
	p.curves = append(p.curves, curve)
}
