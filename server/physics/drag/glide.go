package drag

import (
	"errors"
	"math"

	"pitgate/server/physics/elementary"
)

// Load is what a polar carries.
type Load struct {
	Weight  float64 // N
	Area    float64 // reference area, m2
	Density float64 // kg/m3
}

// Glide is steady flight without thrust.
type Glide struct {
	Lift   float64 // lift coefficient
	Ratio  float64 // lift over drag
	Spread float64 // one standard deviation of Ratio
	Speed  float64 // along the path, m/s
	Sink   float64 // m/s
	Angle  float64 // of the path below the horizon, rad
	AtEdge bool    // the best lies at the greatest lift: the model stalls first
	Drag   Drag
}

// Steps of the search for the best lift coefficient.
const (
	glideGrid       = 200
	glideHalvings   = 80
	goldenRatio     = 0.6180339887498949
	smallestGlideCL = 1e-3
)

// Check returns the error that names the first field of a load that is not positive.
func (l Load) Check() error {
	for _, f := range []struct {
		name  string
		value float64
	}{{"weight", l.Weight}, {"area", l.Area}, {"density", l.Density}} {
		if usable(f.value) == 0 {
			return errors.New("load " + f.name + " must be a positive number")
		}
	}
	return nil
}

// GlideAt returns the steady glide at a lift coefficient.
//
// Formula: C = sqrt(CL^2 + CD^2), V = sqrt(2 W/(rho S C)), sink = V CD/C, angle = atan(CD/CL); where C the whole force's coefficient.
// Valid for: positive CL and CD; no small angles assumed.
// Source: steady flight, weight balanced by lift and drag.
func (p Polar) GlideAt(liftCoefficient float64, l Load) Glide {
	d := p.At(liftCoefficient)
	g := Glide{Lift: liftCoefficient, Drag: d}
	whole := math.Sqrt(float64(liftCoefficient*liftCoefficient) + float64(d.Total*d.Total))
	if l.Check() != nil || !(liftCoefficient > 0) || !(d.Total > 0) || !(whole > 0) {
		return g
	}
	g.Ratio = liftCoefficient / d.Total
	g.Spread = float64(g.Ratio*d.Spread) / d.Total
	g.Speed = math.Sqrt(2 * l.Weight / float64(float64(l.Density*l.Area)*whole))
	g.Sink = float64(g.Speed*d.Total) / whole
	g.Angle = elementary.Atan2(d.Total, liftCoefficient)
	return g
}

// BestGlide returns the glide of the greatest lift over drag.
//
// Formula: greatest CL/CD by a grid and golden sections between 0.001 and the greatest lift coefficient.
// Valid for: polars of one hump; an error names a load field or a drag that is not positive.
// Source: definition; closed form for a parabola CL = sqrt(CD0/K), Anderson, Introduction to Flight, chapter 6.
func (p Polar) BestGlide(l Load) (Glide, error) {
	return p.best(l, func(cl float64) float64 { return cl / p.At(cl).Total })
}

// MinimumSink returns the glide of the least sink.
//
// Formula: least CD/(CL^2 + CD^2)^(3/4), searched as in BestGlide.
// Valid for: as BestGlide.
// Source: steady glide; closed form for a parabola and small angles CL = sqrt(3 CD0/K).
func (p Polar) MinimumSink(l Load) (Glide, error) {
	return p.best(l, func(cl float64) float64 {
		cd := p.At(cl).Total
		whole := math.Sqrt(float64(cl*cl) + float64(cd*cd))
		return float64(whole*math.Sqrt(whole)) / cd
	})
}

// best returns the glide at the lift coefficient that makes merit greatest.
func (p Polar) best(l Load, merit func(float64) float64) (Glide, error) {
	if err := l.Check(); err != nil {
		return Glide{}, err
	}
	edge := usable(p.MaximumLift)
	if edge == 0 {
		edge = unknownLiftEdge
	}
	if !(p.At(0).Total > 0) || !(p.At(edge).Total > 0) || math.IsInf(p.At(edge).Total, 0) {
		return Glide{}, errors.New("polar drag must be positive")
	}
	cl := bestLift(edge, merit)
	g := p.GlideAt(cl, l)
	g.AtEdge = cl >= edge
	return g, nil
}

// bestLift searches a grid for the greatest merit and refines it by golden sections.
func bestLift(edge float64, merit func(float64) float64) float64 {
	step := (edge - smallestGlideCL) / glideGrid
	at := func(i int) float64 { return min(edge, smallestGlideCL+float64(float64(i)*step)) }
	best := 0
	for i := 1; i <= glideGrid; i++ {
		if merit(at(i)) > merit(at(best)) {
			best = i
		}
	}
	low, high := at(max(0, best-1)), at(min(glideGrid, best+1))
	for range glideHalvings {
		span := float64(goldenRatio * (high - low))
		if merit(high-span) > merit(low+span) {
			high = low + span
		} else {
			low = high - span
		}
	}
	if best == glideGrid && merit(edge) >= merit(low) {
		return edge
	}
	return float64(0.5 * (low + high))
}
