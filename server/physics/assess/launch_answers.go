package assess

import "pitgate/server/physics/motion"

// answerLaunch flies the launch and answers what applies to its method.
func (p *pass) answerLaunch() {
	p.readLaunch()
	switch {
	case !p.launch.known:
	case p.launch.method == motion.Wheels:
		p.answerLiftoff()
		p.answerDistance()
	default:
		p.answerEndSpeed()
		p.answerSink()
	}
	if p.launch.known && p.launch.method == motion.Ramp {
		p.answerTailGap()
	}
	p.drawLaunch()
}

const neverLeaves = "The forces along the launch come to nothing: the model never leaves the ground."

func (p *pass) answerLiftoff() {
	liftoff := answer{id: "liftoff.margin", missing: p.launch.missing}
	liftoff.limit = p.limit(liftoffFigure)
	r := &p.launch.result
	if p.launch.flown {
		liftoff.value = r.Airspeed / p.stall.takeoff
		liftoff.note = p.inWords("Leaves the ground at %.1f m/s; the stall with take-off flaps is at %.1f m/s.", r.Airspeed, p.stall.takeoff)
		if r.NeverLiftsOff {
			liftoff.never = p.neverWords()
		}
	}
	p.conclude(liftoff)
}

// answerDistance compares the ground run with three quarters of the strip, or, where the limits give a share of the strip, the
// distance to the screen with that share.
func (p *pass) answerDistance() {
	distance := answer{id: "launch.distance", missing: p.launch.missing}
	share := p.limit(stripUseFigure)
	distance.limit = share
	distance.limit.value = share.value * p.launch.length
	r := &p.launch.result
	toScreen := p.in.Limits != nil && p.in.Limits.MaximumStripUseRatio != nil
	factor := p.limit(takeoffFactorFigure)
	if factor.path != "" {
		distance.from = append(distance.from, factor.path)
	}
	if p.launch.flown {
		distance.value = factor.value * r.Run
		distance.note = p.inWords("Ground run %.1f m in %.1f s of a strip of %.0f m, head wind %.1f m/s.", r.Run, r.Time, p.launch.length, p.launch.head)
		if toScreen {
			distance.value = factor.value * r.ScreenDistance
			distance.note = p.inWords("%.1f m to the screen, %.1f m of it on the ground, of a strip of %.0f m, head wind %.1f m/s.",
				r.ScreenDistance, r.Run, p.launch.length, p.launch.head)
		}
		if factor.value != 1 {
			distance.note += p.inWords(" The limits ask for %.2f times the distance.", factor.value)
		}
		switch {
		case r.NeverLiftsOff:
			distance.never = p.neverWords()
		case toScreen && !r.ReachesScreen:
			distance.never = "The model leaves the ground but does not climb to the screen."
		}
	}
	p.conclude(distance)
}

func (p *pass) answerEndSpeed() {
	end := answer{id: "launch.end_speed", missing: p.launch.missing}
	end.limit = p.limit(launchEndFigure)
	r := &p.launch.result
	if p.launch.flown {
		end.value = r.Airspeed / p.stall.takeoff
		end.note = p.inWords("%.1f m/s through the air, %.1f m/s over the ground, when the launcher lets go; the stall is at %.1f m/s.",
			r.Airspeed, r.GroundSpeed, p.stall.takeoff) + p.tailWords()
		if r.NeverLiftsOff {
			end.never = p.neverWords()
		}
	}
	p.conclude(end)
}

// leastSinkLimit is what a launcher at the height of the ground leaves, m: the model stands on it anyhow, and less is not measured.
const leastSinkLimit = 0.02

// answerSink compares the sink with half the height at which the model leaves its launcher unless the limits say otherwise.
func (p *pass) answerSink() {
	sink := answer{id: "launch.sink", missing: p.launch.missing}
	r := &p.launch.result
	sink.limit = p.limit(sinkFigure.with(max(r.Height/2, leastSinkLimit)))
	if p.launch.flown {
		sink.value = r.Sink
		sink.note = p.inWords("Leaves the launcher %.2f m up and sinks %.2f m, lowest %.0f m from the start.", r.Height, r.Sink, r.LowestDistance)
		switch {
		case r.NeverLiftsOff:
			sink.never = p.neverWords()
		case r.TouchesGround:
			sink.note += p.inWords(" It touches the ground %.0f m from the start.", r.ContactAt)
		}
		if !r.NeverLiftsOff {
			sink.note += p.tailWords()
		}
	}
	p.conclude(sink)
}

// drawLaunch adds the lines of the launch to the report.
func (p *pass) drawLaunch() {
	if !p.launch.flown || p.quiet {
		return
	}
	path := p.launch.result.Path
	if !p.base() {
		p.drawn.heights = heightsAt(path, p.drawing.distances)
		return
	}
	profile, plan := ReportPath{ID: "launch.profile"}, ReportPath{ID: "launch.plan"}
	for _, point := range path {
		p.drawing.distances = append(p.drawing.distances, point.Distance)
		p.drawn.heights = append(p.drawn.heights, point.Height)
		profile.Points = append(profile.Points, PathPoint{
			XMeters: point.Distance, ZMeters: point.Height + p.launch.ground, AirspeedMetersPerSecond: point.Airspeed, TimeSeconds: point.Time,
		})
		place := p.along(point.Distance, point.Drift)
		plan.Points = append(plan.Points, PathPoint{
			XMeters: place.X, YMeters: place.Y, ZMeters: point.Height + p.launch.ground,
			AirspeedMetersPerSecond: point.Airspeed, TimeSeconds: point.Time,
		})
	}
	p.lines = append(p.lines, profile, plan)
	p.drawGround(path)
}

// drawGround adds the ground under the launch.
func (p *pass) drawGround(path []motion.PathPoint) {
	ground := ReportPath{ID: "ground.profile"}
	points := p.launch.how.Ground
	if len(points) == 0 {
		end := 0.0
		if len(path) > 0 {
			end = path[len(path)-1].Distance
		}
		points = []motion.ProfilePoint{{}, {Distance: end}}
	}
	for _, point := range points {
		ground.Points = append(ground.Points, PathPoint{XMeters: point.Distance, ZMeters: point.Height + p.launch.ground})
	}
	p.lines = append(p.lines, ground)
}

// heightsAt reads the heights of a path at distances, straight between its points.
func heightsAt(path []motion.PathPoint, distances []float64) []float64 {
	heights := make([]float64, len(distances))
	i := 1
	for k, distance := range distances {
		for i < len(path)-1 && path[i].Distance < distance {
			i++
		}
		if len(path) > i {
			heights[k] = heightBetween(path[i-1], path[i], distance)
		}
	}
	return heights
}

// heightBetween draws the line through two points of a path and reads its height at a distance.
func heightBetween(a, b motion.PathPoint, distance float64) float64 {
	if !(b.Distance > a.Distance) {
		return b.Height
	}
	return a.Height + float64((b.Height-a.Height)*((distance-a.Distance)/(b.Distance-a.Distance)))
}
