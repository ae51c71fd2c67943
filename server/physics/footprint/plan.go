package footprint

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"

	"pitgate/server/physics/field"
	"pitgate/server/physics/sample"
)

// Spread is one standard deviation of what the samples vary, normal and cut at three; zero leaves a value as it is.
type Spread struct {
	Speed      float64 // of the release, m/s
	Height     float64 // of the release, m
	Heading    float64 // of the release, rad
	Bank       float64 // of the release, rad
	Delay      float64 // of the fail-safe, s
	WindSpeed  float64 // m/s
	WindFrom   float64 // rad
	Drag       float64 // share of zero-lift drag and of the drag area
	GlideRatio float64 // share of lift over drag
	Lift       float64 // share of the lift coefficient of neutral surfaces, of the spiral and of the command held
	BankCreep  float64 // rate at which the bank changes with the command held, rad/s
	// FuelUsed is the greatest share of the endurance already flown, each share up to it as likely; zero means that every loss happens with all of it
	// left, which is the farthest.
	FuelUsed float64
}

// Plan is what is sampled: a loss of link somewhere along a path.
type Plan struct {
	Loss
	// Path are the states along the flight, each moment of it as likely for the loss; close a circuit by giving its first state again at the
	// end. A FlyAway may leave in every direction whatever the heading.
	Path []Release
	// EitherSpiral samples the spiral to both sides, for a fail-safe whose side is not known.
	EitherSpiral bool

	Spread  Spread
	Samples int     // zero means 1024
	Margin  float64 // by which outlines are drawn around impacts, m; zero means half the model's width, at least 0.5 m
}

// Limits of a plan.
const (
	defaultSamples = 1024
	mostSamples    = sample.MaximumCount
	leastMargin    = 0.5
	// dimensions is the number of values of a point.
	dimensions = 14
	// pointsSeed fixes the scrambling, so that the same plan gives the same points on every machine and day.
	pointsSeed = 0x9e3779b9
)

// Check returns an error that names the first impossible value.
func (p Plan) Check() error {
	if err := p.Loss.Check(); err != nil {
		return err
	}
	if len(p.Path) == 0 {
		return errors.New("path: needs at least one state")
	}
	for i, r := range p.Path {
		if err := r.Check(); err != nil {
			return fmt.Errorf("path state %d: %w", i+1, err)
		}
	}
	if p.Samples < 0 || p.Samples > mostSamples {
		return fmt.Errorf("samples: %d is outside 0 to %d", p.Samples, mostSamples)
	}
	if err := firstOutside([]bounded{{"margin", p.Margin, 0, 1000}}); err != nil {
		return err
	}
	return p.Spread.check()
}

// check returns an error that names the first impossible spread.
func (s Spread) check() error {
	return firstOutside([]bounded{
		{"spread of speed", s.Speed, 0, 100},
		{"spread of height", s.Height, 0, 500},
		{"spread of heading", s.Heading, 0, math.Pi},
		{"spread of bank", s.Bank, 0, 1},
		{"spread of delay", s.Delay, 0, 60},
		{"spread of wind speed", s.WindSpeed, 0, 20},
		{"spread of wind direction", s.WindFrom, 0, math.Pi},
		{"spread of drag", s.Drag, 0, 0.33},
		{"spread of glide ratio", s.GlideRatio, 0, 0.33},
		{"spread of lift", s.Lift, 0, 0.33},
		{"spread of bank creep", s.BankCreep, 0, 1},
		{"share of fuel used", s.FuelUsed, 0, 1},
	})
}

// Sample flies every sample in fine steps. It is the reference that tests hold Estimate to, which answers ask for as it takes a small part of the time.
//
// Formula: the points of a scrambled Sobol sequence with a fixed seed stand for the place along the path and the spreads; each falls by the equations of
// Loss.From in strides, which puts nineteen of twenty within a metre of From, within 4 m where a command is held for minutes. The same plan gives the
// same cloud, bit for bit, on every machine. Numbers of samples that are powers of two are spread most evenly. Precision is not read.
// Valid for: as Loss.From; independent spreads. Source: I. M. Sobol, USSR Comput. Math. Math. Phys. 7 (1967) 86.
func (p Plan) Sample() (Cloud, error) {
	if err := p.Check(); err != nil {
		return Cloud{}, err
	}
	count := p.Samples
	if count == 0 {
		count = defaultSamples
	}
	points, err := sample.New(dimensions, max(count, sample.MinimumCount), pointsSeed)
	if err != nil {
		return Cloud{}, fmt.Errorf("samples: %w", err)
	}
	cloud := Cloud{Impacts: make([]Impact, count), Margin: p.margin(), width: p.Model.Width, mass: p.Model.Mass}
	if err := p.fallAll(points, cloud.Impacts); err != nil {
		return Cloud{}, err
	}
	for i := range cloud.Impacts {
		if !cloud.Impacts[i].Landed {
			cloud.Aloft++
		}
	}
	return cloud, nil
}

// fallAll flies every sample, in shares side by side; each fall depends on its own point alone, so that the shares do not show in the answer.
func (p *Plan) fallAll(points *sample.Points, impacts []Impact) error {
	route, table := newRoute(p.Path), tabled(p.Wind.Profile, p.highest())
	var faults [shares]error
	ended := make(chan struct{})
	for share := range shares {
		go func() {
			faults[share] = p.fallShare(points, impacts, route, table, share)
			ended <- struct{}{}
		}()
	}
	for range shares {
		<-ended
	}
	return cmp.Or(faults[:]...)
}

// shares is how many falls are flown side by side.
const shares = 4

// fallShare flies every sample of one share.
func (p *Plan) fallShare(points *sample.Points, impacts []Impact, route route, table factors, share int) error {
	flown, loss := newFlight(), p.Loss
	flown.coarse, flown.table = true, table
	for i := share; i < len(impacts); i += shares {
		at := p.pointOf(points, i)
		impact, err := loss.fall(flown, p.vary(&loss, &route, &at))
		if err != nil {
			return fmt.Errorf("sample %d: %w", i+1, err)
		}
		impacts[i] = impact
	}
	return nil
}

// highest returns the height above which no loss is sampled, m.
func (p *Plan) highest() float64 {
	out := 0.0
	for i := range p.Path {
		out = max(out, p.Path[i].Height)
	}
	return out + float64(cutNormal*p.Spread.Height) + 1
}

// point is one value of a sample for each of its dimensions: a share within 0 to 1 in those of uniform, a normal deviate in the others.
type point [dimensions]float64

// uniform reports whether a dimension is a share: place, fuel, side, and the direction of a fly-away.
func (p *Plan) uniform(dimension int) bool {
	return dimension == 0 || dimension == 11 || dimension == 13 || dimension == 7 && p.Action == FlyAway
}

// pointOf returns point i.
func (p *Plan) pointOf(points *sample.Points, i int) point {
	var out point
	for d := range out {
		out[d] = points.Along(d)[i]
		if !p.uniform(d) {
			out[d] = normalWithin(out[d])
		}
	}
	return out
}

// margin returns the margin of the outlines.
func (p Plan) margin() float64 {
	if p.Margin > 0 {
		return p.Margin
	}
	return max(p.Model.Width/2, leastMargin)
}

// vary makes a loss, which was the plan's or another sample's, that of one point and returns its state.
func (p *Plan) vary(loss *Loss, route *route, at *point) Release {
	s, m := &p.Spread, &p.Model
	r := route.at(at[0])
	r.Height = max(r.Height+float64(s.Height*at[1]), leastRelease)
	r.Speed = max(r.Speed+float64(s.Speed*at[2]), r.Speed/4)
	r.Bank = limitBank(r.Bank + float64(s.Bank*at[3]))
	loss.Delay = max(0, p.Delay+float64(s.Delay*at[4]))
	loss.Wind.Speed = max(0, p.Wind.Speed+float64(s.WindSpeed*at[5]))
	loss.Wind.From = p.Wind.From + float64(s.WindFrom*at[6])
	r.Heading += p.turned(at[7])
	loss.Model.drawnFrom(m, 1+float64(s.Drag*at[8]), 1+float64(s.GlideRatio*at[9]))
	loss.mistrim = float64(s.Lift * at[10])
	left := 1 - float64(s.FuelUsed*at[11])
	loss.Model.HoldEndurance, loss.Model.FullEndurance = float64(m.HoldEndurance*left), float64(m.FullEndurance*left)
	loss.Model.IdleEndurance = float64(m.IdleEndurance * left)
	loss.bankCreep = float64(s.BankCreep * at[12])
	loss.Model.SpiralBank = m.SpiralBank
	if p.EitherSpiral && at[13] < 0.5 {
		loss.Model.SpiralBank = -m.SpiralBank
	}
	return r
}

// leastRelease is the least height of a sampled loss, m.
const leastRelease = 0.5

// turned returns the change of heading of one sample: any for a fly-away.
func (p *Plan) turned(at float64) float64 {
	if p.Action == FlyAway {
		return float64(2 * math.Pi * at)
	}
	return float64(p.Spread.Heading * at)
}

// drawnFrom sets drag and glide ratio to shares of those of another model.
func (m *Model) drawnFrom(from *Model, drag, glide float64) {
	m.CD0, m.StoppedDrag = float64(from.CD0*drag)/glide, float64(from.StoppedDrag*drag)/glide
	m.InducedFactor = from.InducedFactor / glide
	m.DragArea = float64(from.DragArea * drag)
}

// route is a path by time.
type route struct {
	states []Release
	until  []float64 // time from the start to each state, s
	turns  []float64 // change of heading to each state from that before, rad
}

// newRoute measures a path: each leg takes its length over the mean of the airspeeds at its ends.
func newRoute(path []Release) route {
	r := route{states: path, until: make([]float64, len(path)), turns: make([]float64, len(path))}
	for i := 1; i < len(path); i++ {
		way := path[i].Place.Distance(path[i-1].Place)
		r.until[i] = r.until[i-1] + way/float64(0.5*(path[i].Speed+path[i-1].Speed))
		r.turns[i] = shortest(path[i].Heading - path[i-1].Heading)
	}
	return r
}

// at returns the state at a share of the time.
func (r *route) at(share float64) Release {
	last := len(r.states) - 1
	time := float64(share * r.until[last])
	i, _ := slices.BinarySearch(r.until, time)
	for i = max(i, 1); i <= last; i++ {
		if r.until[i] > r.until[i-1] {
			return between(&r.states[i-1], &r.states[i], r.turns[i], (time-r.until[i-1])/(r.until[i]-r.until[i-1]))
		}
	}
	return r.states[last]
}

// between returns the state at a share of the way from one to another, with a turn from the first to the second.
func between(a, b *Release, turn, share float64) Release {
	mix := func(x, y float64) float64 { return x + float64((y-x)*share) }
	return Release{
		Place:  field.Point{X: mix(a.Place.X, b.Place.X), Y: mix(a.Place.Y, b.Place.Y)},
		Height: mix(a.Height, b.Height), Heading: a.Heading + float64(turn*share), Speed: mix(a.Speed, b.Speed),
		Climb: mix(a.Climb, b.Climb), Bank: mix(a.Bank, b.Bank),
	}
}
