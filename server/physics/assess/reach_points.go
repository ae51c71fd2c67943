package assess

import (
	"math"
	"sort"

	"pitgate/server/physics/field"
	"pitgate/server/physics/motion"
	"pitgate/server/physics/reach"
)

const (
	// stationStep is the distance between the points at which the engine stops, m, and mostStations their greatest number.
	stationStep, mostStations = 12.0, 200
	// leastGlide is the least height from which a glide starts, m.
	leastGlide = 0.5
)

// stations returns the points of launch and circuit: along the launch to the end of the circuit's first leg, then once round, climbing on to
// the circuit's height.
func (p *pass) stations() []reach.Point {
	circuit := p.circuit(p.circuitPlan())
	if circuit.Check() != nil {
		return nil
	}
	track := p.lap(circuit)
	length := 0.0
	for i := 1; i < len(track); i++ {
		length += track[i-1].Distance(track[i])
	}
	step := max(stationStep, length/mostStations)
	var points []reach.Point
	for flown := p.launch.result.Distance; flown <= length; flown += step {
		if point, ok := p.station(track, flown, circuit); ok {
			points = append(points, point)
		}
	}
	return points
}

// lap returns the track over the ground from the start of the launch to the end of the circuit's leg and round back to it.
func (p *pass) lap(circuit motion.Circuit) field.Line {
	path := circuit.Path()
	track := field.Line{p.launch.origin}
	track = append(track, path[1:]...)
	return append(track, path[1])
}

// station returns the point a distance along the track; false where it is too low to glide.
func (p *pass) station(track field.Line, flown float64, circuit motion.Circuit) (reach.Point, bool) {
	at, heading, bank := follow(track, flown, circuit)
	ceiling := valueOr(p.circuitPlan().HeightMeters, 0) + p.shift("launchPlan.circuit.heightMeters")
	height, speed := p.drawnOn(flown)
	if height >= ceiling {
		height, speed = ceiling, circuit.Airspeed
	}
	return reach.Point{
		At: at, Height: height + p.launch.ground - p.landing.place.ground, Heading: heading, Airspeed: speed, Bank: bank,
	}, height >= leastGlide
}

// drawnOn returns height over the start and airspeed of the launch a distance along it, straight between the points of its path and on the
// line of the last climb beyond its end.
func (p *pass) drawnOn(distance float64) (height, speed float64) {
	path := p.launch.result.Path
	i := sort.Search(len(path), func(i int) bool { return path[i].Distance >= distance })
	switch i {
	case 0:
		return 0, 0
	case len(path):
		end := path[i-1]
		return p.beyondEnd(end, distance), end.Airspeed
	}
	return heightBetween(path[i-1], path[i], distance), path[i].Airspeed
}

// beyondEnd returns the height on the line of the last climb; on the ground after a contact.
func (p *pass) beyondEnd(end motion.PathPoint, distance float64) float64 {
	if p.launch.result.TouchesGround {
		return min(end.Height, 0)
	}
	return end.Height + float64((distance-end.Distance)*tangent(min(end.ClimbAngle, motion.DefaultMaxClimbAngle)))
}

// follow returns place, heading and bank a distance along a track; it banks where the track turns about as tightly as the circuit does.
func follow(track field.Line, flown float64, circuit motion.Circuit) (at field.Point, heading, bank float64) {
	for i := 1; i < len(track); i++ {
		piece := field.Segment{A: track[i-1], B: track[i]}
		length := piece.Length()
		if flown > length && i < len(track)-1 {
			flown -= length
			continue
		}
		heading = piece.A.Heading(piece.B)
		if i < len(track)-1 && length < float64(0.5*circuit.Radius()) {
			bank = turning(circuit, heading, piece.B.Heading(track[i+1]))
		}
		return piece.At(min(flown/max(length, 1e-9), 1)), heading, bank
	}
	return track[0], circuit.Heading, 0
}

// turning returns the circuit's bank where the heading changes, right positive; zero where it does not.
func turning(circuit motion.Circuit, from, to float64) float64 {
	change := math.Remainder(to-from, 2*math.Pi)
	if math.Abs(change) < 1e-3 {
		return 0
	}
	return math.Copysign(circuit.Bank, change)
}
