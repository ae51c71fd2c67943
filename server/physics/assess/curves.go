package assess

import (
	"pitgate/server/physics/drag"
	"pitgate/server/physics/lift"
)

// curvePoints is how many points a drawn line has.
const curvePoints = 25

// drawCurves draws the diagrams; moved passes are only read off where a diagram has a band.
func (p *pass) drawCurves() {
	if p.whole.lattice == nil || p.quiet {
		return
	}
	p.drawPolar()
	if !p.tells() || !p.wing.clean.Found {
		return
	}
	p.drawLift()
	p.drawLoading()
}

// line samples a function between two ends.
func line(from, to float64, of func(float64) float64) []CurvePoint {
	points := make([]CurvePoint, 0, curvePoints)
	for i := range curvePoints {
		x := from + float64((to-from)*(float64(i)/(curvePoints-1)))
		if y := of(x); finite(y) && finite(x) {
			points = append(points, CurvePoint{X: x, Y: y})
		}
	}
	return points
}

// incidenceAt returns the incidence of the x axis at a lift coefficient, rad: in balance where that is known, with flaps held.
func (p *pass) incidenceAt(coefficient float64, held []lift.Setting) float64 {
	if p.trimmable() {
		if trim := p.whole.lattice.Trim(p.balance(held), coefficient); trim.Found {
			return trim.Incidence
		}
	}
	return p.wing.zero + (coefficient-p.whole.lattice.SettingsLift(held))/p.wing.slope
}

// drawLift draws lift against incidence as far as the first strip's stall.
func (p *pass) drawLift() {
	curve := ReportCurve{
		ID: "lift.curve", Title: "Lift against incidence", XTitle: "Incidence of the x axis", XUnit: "deg", YTitle: "Lift coefficient", YUnit: "1",
		Note: say("The clean model ends its lift at %.1f degrees: %s.", degrees(p.incidenceAt(p.wing.clean.Coefficient, nil)), stallWords(p.wing.clean)),
	}
	curve.addLift(p, "Clean", p.wing.clean, nil)
	if held := p.takeoffFlaps(); len(held) > 0 {
		curve.addLift(p, "Take-off flaps", p.wing.takeoff, held)
	}
	p.curves = append(p.curves, curve)
}

// leastDrawnLift is where the lift curve begins.
const leastDrawnLift = -0.4

func (c *ReportCurve) addLift(p *pass, name string, stall lift.Maximum, held []lift.Setting) {
	points := line(leastDrawnLift, stall.Coefficient, func(coefficient float64) float64 { return degrees(p.incidenceAt(coefficient, held)) })
	for i := range points {
		points[i].X, points[i].Y = points[i].Y, points[i].X
	}
	c.Series = append(c.Series, CurveSeries{Name: name, Points: points})
	c.Marks = append(c.Marks, CurveMark{
		Name: name + ": " + stallEvent(stall), X: degrees(p.incidenceAt(stall.Coefficient, held)), Y: stall.Coefficient,
	})
}

// drawPolar draws drag against lift at speed, wheels up where they retract.
func (p *pass) drawPolar() {
	if len(p.drag.missing) > 0 || !p.wing.clean.Found {
		return
	}
	parabola := func(coefficient float64) float64 {
		return p.drag.top + float64(p.drag.induced*float64(coefficient*coefficient))
	}
	if !p.base() {
		for _, x := range p.drawing.lifts {
			p.drawn.drags = append(p.drawn.drags, parabola(x))
		}
		return
	}
	points := line(0, p.wing.clean.Coefficient, parabola)
	for _, point := range points {
		p.drawing.lifts = append(p.drawing.lifts, point.X)
		p.drawn.drags = append(p.drawn.drags, point.Y)
	}
	curve := ReportCurve{
		ID: "drag.polar", Title: "Drag against lift", XTitle: "Lift coefficient", XUnit: "1", YTitle: "Drag coefficient", YUnit: "1",
		Series: []CurveSeries{{Name: "As the flight is computed", Points: points}},
	}
	curve.markBestGlide()
	curve.addSections(p)
	p.curves = append(p.curves, curve)
}

// addSections adds the polar in which the drag that rises with lift comes from the sections of every strip instead of the rule.
func (c *ReportCurve) addSections(p *pass) {
	lifts := make([]float64, 0, curvePoints)
	for i, point := range c.Series[0].Points {
		if i%2 == 0 {
			lifts = append(lifts, point.X)
		}
	}
	lattice := p.whole.lattice
	polar := drag.NewPolar(p.drag.parts, p.wing.span*p.wing.span/p.wing.area, lattice.SpanEfficiency)
	polar.ZeroLift = p.drag.top
	polar.Profile = drag.ProfileRise(p.sectionStrips(), drag.LiftLine{Slope: lattice.LiftSlope, ZeroIncidence: lattice.ZeroLiftIncidence},
		p.wing.area, p.roughness(), lifts)
	if len(polar.Profile) == 0 {
		return
	}
	series := CurveSeries{Name: "With the sections' own drag"}
	for _, x := range lifts {
		series.add(x, polar.At(x).Total)
	}
	c.Series = append(c.Series, series)
}

// sectionStrips returns the strips of wing, canard and tail at the speed of the polar, each with the section of the station inboard of it.
func (p *pass) sectionStrips() []drag.SectionStrip {
	density, viscosity := p.nominalAir()
	strips := make([]drag.SectionStrip, 0, len(p.whole.lattice.Strips))
	for i := range p.whole.lattice.Strips {
		strip := &p.whole.lattice.Strips[i]
		strips = append(strips, drag.SectionStrip{
			Section: p.whole.sectionAt(strip.Surface, strip.Y), Area: float64(2 * strip.Chord * strip.Width),
			Reynolds: density * p.drag.speed * strip.Chord / viscosity, BasicLift: strip.BasicLift, LiftSlope: strip.LiftSlope,
		})
	}
	return strips
}

// markBestGlide marks the point of the greatest lift over drag.
func (c *ReportCurve) markBestGlide() {
	best, ratio := CurvePoint{}, 0.0
	for _, point := range c.Series[0].Points {
		if point.Y > 0 && point.X/point.Y > ratio {
			best, ratio = point, point.X/point.Y
		}
	}
	if ratio > 0 {
		c.Marks = append(c.Marks, CurveMark{Name: sayNumbers("greatest lift over drag %.1f", ratio), X: best.X, Y: best.Y})
		c.Note = sayNumbers("Drag coefficient %.4f without lift; greatest lift over drag %.1f at a lift coefficient of %.2f.", c.Series[0].Points[0].Y, ratio, best.X)
	}
}

// drawLoading draws the section lift of every strip at the stall beside what its section can give.
func (p *pass) drawLoading() {
	curve := ReportCurve{
		ID: "lift.span_loading", Title: "Section lift along the span at the stall", XTitle: "Distance from the plane of symmetry", XUnit: "m",
		YTitle: "Section lift coefficient", YUnit: "1",
		Note: say("Each surface at the stall beside what its sections can give; %s stalls first.", stallStation(p.wing.clean)),
	}
	states := p.stallStates()
	for _, surface := range p.whole.lattice.Surfaces {
		loading, limit := CurveSeries{Name: surface.Name}, CurveSeries{Name: surface.Name + ", section limit"}
		for i := range states {
			if states[i].Surface == surface.Name {
				loading.add(states[i].Y, states[i].Coefficient)
				limit.add(states[i].Y, states[i].Limit)
				curve.markStall(p, &states[i])
			}
		}
		curve.Series = append(curve.Series, loading, limit)
	}
	p.curves = append(p.curves, curve)
}

// stallStates returns every strip at the clean stall, the pitch control where it then stands.
func (p *pass) stallStates() []lift.StripState {
	perMeter := p.stallPerMeter()
	reynolds := func(chord float64) float64 { return perMeter * chord }
	var held []lift.Setting
	if p.trimmable() {
		for _, index := range p.pitch.indices {
			held = append(held, lift.Setting{Index: index, Angle: p.wing.clean.ControlAngle})
		}
	}
	return p.whole.lattice.StripStates(p.wing.clean.Incidence, held, reynolds, p.finishEffect(reynolds(p.wing.chord)).Limit)
}

func (s *CurveSeries) add(x, y float64) {
	if finite(x) && finite(y) {
		s.Points = append(s.Points, CurvePoint{X: x, Y: y})
	}
}

// markStall marks the strip that stalls first.
func (c *ReportCurve) markStall(p *pass, strip *lift.StripState) {
	stall := &p.wing.clean
	if stall.Reason != lift.LimitThrow && strip.Surface == stall.Surface && strip.SpanRatio == stall.SpanRatio {
		c.Marks = append(c.Marks, CurveMark{Name: "stalls first", X: strip.Y, Y: strip.Coefficient})
	}
}
