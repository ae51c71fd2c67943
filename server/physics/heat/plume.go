package heat

import (
	"math"

	"pitgate/server/physics/elementary"
)

const (
	// SpeedDecay is the constant of the axis speed: U/Uj = 6 de/x. Source: measured 5.8 to 6.1 for round jets above Re 1e4.
	SpeedDecay = 6.0
	// HeatDecay is the constant of the axis excess of temperature: 5 de/x. Source: measured 4.5 to 5.9 for jets of hot air (Long 1963).
	HeatDecay = 5.0
	// SpeedSpread is the half-width of speed over distance: sqrt(ln 2/2)/SpeedDecay, which keeps the momentum.
	SpeedSpread = 0.0981175
	// HeatSpread is the half-width of temperature over distance: 1.17 times that of speed. Source: Kaye, Khan and Testik 2018.
	HeatSpread = 0.1148
	// WideHeatSpread is the widest measured for hot air: sqrt(ln 2)/6.4. Source: Long 1963.
	WideHeatSpread = 0.1301
	// leastDiameterRatio is the least equivalent over real diameter that near measurements of hot jets bear out: 1/sqrt 1.5.
	leastDiameterRatio = 0.8165
	// wallFactor lengthens distances of a jet along ground or a wall: its image doubles the momentum.
	wallFactor = math.Sqrt2
	ln2        = math.Ln2
)

// Width chooses between the two answers.
type Width int

// Widths.
const (
	Best         Width = iota // full density correction, mean width
	Conservative              // density correction to 1.5 only, greatest measured width
)

// Plume is a round turbulent jet of hot gas in still air.
type Plume struct {
	Diameter float64 // equivalent, m
	Nozzle   float64 // real diameter, m
	Speed    float64 // at the nozzle, m/s
	Hot      float64 // temperature at the nozzle: total where it was measured so, K
	Air      float64 // K
	Spread   float64 // half-width of temperature over distance
	// Reach lengthens all distances: 1 free, sqrt 2 along ground or a wall.
	Reach float64
}

// NewPlume returns the plume of an exhaust in still air. Impossible input is an error that names the field. An exhaust no hotter than the air
// is a cold jet: it blows and does not heat.
func NewPlume(e Exhaust, a Air, w Width) (Plume, error) {
	if err := e.check(); err != nil {
		return Plume{}, err
	}
	if err := a.check(); err != nil {
		return Plume{}, err
	}
	p := Plume{Nozzle: e.Diameter, Speed: e.Speed, Hot: max(e.Temperature, a.Temperature), Air: a.Temperature, Spread: HeatSpread, Reach: 1}
	p.Diameter = EquivalentDiameter(e.Diameter, DensityRatio(a.Temperature, e.static()))
	if w == Conservative {
		p.Diameter = max(p.Diameter, leastDiameterRatio*e.Diameter)
		p.Spread = WideHeatSpread
	}
	return p, nil
}

// AlongWall returns the plume attached to the ground or a wall: everything reaches sqrt 2 as far.
//
// Formula: distances times sqrt 2: the image doubles the momentum.
// Valid for: the axis within a half-width of the wall; wall friction left out, so an upper bound.
// Source: method of images.
func (p Plume) AlongWall() Plume {
	p.Reach = wallFactor
	return p
}

// AxisSpeed returns the speed on the axis (m/s).
//
// Formula: U = Uj min(1, 6 de/x); where Uj jet speed (m/s), de equivalent diameter (m), x distance behind the nozzle (m).
// Valid for: round turbulent jets above Re 1e4, still air.
// Source: Thring and Newby 1953 with the decay constant of cold jets.
func (p Plume) AxisSpeed(x float64) float64 { return p.Speed * decay(SpeedDecay*p.Diameter*p.Reach, x) }

// AxisTemperature returns the temperature on the axis (K).
//
// Formula: T = Ta + (Tj - Ta) min(1, 5 de/x).
// Valid for: round turbulent jets above Re 1e4, still air: an upper bound in flight.
// Source: Thring and Newby 1953; constants of hot jets by Long 1963.
func (p Plume) AxisTemperature(x float64) float64 { return p.Air + float64((p.Hot-p.Air)*p.axis(x)) }

// axis returns the excess of temperature on the axis over that at the nozzle.
func (p Plume) axis(x float64) float64 { return decay(p.core(), x) }

// core returns the length over which the axis keeps its temperature.
func (p Plume) core() float64 { return float64(HeatDecay * p.Diameter * p.Reach) }

// decay returns min(1, length/x), 1 at and ahead of the nozzle.
func decay(length, x float64) float64 {
	if !(x > length) {
		return 1
	}
	return length / x
}

// HalfWidth returns the distance from the edge of the core at which the excess of temperature is half of the axis's (m).
//
// Formula: r = S x; where S 0.1148, conservative 0.1301.
// Valid for: as AxisTemperature.
// Source: Kaye, Khan and Testik 2018; Long 1963.
func (p Plume) HalfWidth(x float64) float64 { return float64(p.Spread * x) }

// coreRadius returns the radius of the core that has not mixed yet: half the nozzle at its mouth, nothing where the core ends.
func (p Plume) coreRadius(x float64) float64 {
	return float64(p.Nozzle / 2 * max(0, 1-x/p.core()))
}

// Excess returns the excess of temperature at a place over that at the nozzle, 0 to 1.
//
// Formula: e = min(1, 5 de/x) exp(-ln 2 ((r - c)/(S x))2); where r distance from the axis (m), c radius of the core, D/2 (1 - x/(5 de)).
// Valid for: behind the nozzle; 0 ahead of it. Inside the core 1.
// Source: Gaussian profile of round jets; core narrowing straight to its end.
func (p Plume) Excess(x, r float64) float64 {
	if !(x >= 0) || p.Hot <= p.Air {
		return 0
	}
	beyond := math.Abs(r) - p.coreRadius(x)
	if beyond <= 0 {
		return p.axis(x)
	}
	width := p.HalfWidth(x)
	if !(width > 0) {
		return 0
	}
	share := beyond / width
	return float64(p.axis(x) * elementary.Exp(-ln2*min(share*share, 900)))
}

// Temperature returns the temperature of the gas at a distance behind the nozzle and from the axis (K).
func (p Plume) Temperature(x, r float64) float64 {
	return p.Air + float64((p.Hot-p.Air)*p.Excess(x, r))
}

// EdgeRadius returns how far from the axis the plume is at least as hot as a temperature (m); 0 where it is nowhere.
//
// Formula: r = c + S x sqrt(ln(a/e)/ln 2); where a axis excess at x, e excess asked for, c radius of the core.
// Valid for: temperatures above the air's; at and below it the plume has no edge and the answer is 100 half-widths.
// Source: Excess solved for r.
func (p Plume) EdgeRadius(x, temperature float64) float64 {
	if !(x >= 0) || p.Hot <= p.Air || temperature > p.AxisTemperature(x) {
		return 0
	}
	wanted := (temperature - p.Air) / (p.Hot - p.Air)
	if !(wanted > 0) {
		return p.coreRadius(x) + float64(100*p.HalfWidth(x))
	}
	steps := math.Sqrt(max(0, elementary.Log(p.axis(x)/wanted)) / ln2)
	return p.coreRadius(x) + float64(p.HalfWidth(x)*min(100, steps))
}

// ReachOf returns how far behind the nozzle the axis is at least as hot as a temperature (m); 0 for what the exhaust does not reach, and
// the distance of 0.1 K of excess for temperatures of the air and below.
//
// Formula: x = 5 de (Tj - Ta)/(T - Ta).
// Valid for: as AxisTemperature.
// Source: AxisTemperature solved for x.
func (p Plume) ReachOf(temperature float64) float64 {
	if temperature > p.Hot || p.Hot <= p.Air {
		return 0
	}
	return float64(p.core() * (p.Hot - p.Air) / max(0.1, temperature-p.Air))
}

// SpeedReach returns how far behind the nozzle the axis still blows at a speed (m); 0 for speeds above the jet's, and the distance of
// 0.1 m/s for less.
//
// Formula: x = 6 de Uj/U.
// Valid for: as AxisSpeed.
// Source: AxisSpeed solved for x.
func (p Plume) SpeedReach(speed float64) float64 {
	if speed > p.Speed {
		return 0
	}
	return SpeedDecay * p.Diameter * p.Reach * p.Speed / max(0.1, speed)
}

// Entrained returns the mass flow of the jet over that at the nozzle.
//
// Formula: m/m0 = 0.32 x/de; where de equivalent diameter; 1 where that is less.
// Valid for: beyond the core.
// Source: Ricou and Spalding 1961.
func (p Plume) Entrained(x float64) float64 { return max(1, 0.32*x/p.Diameter) }

// OutlinePoint is a point of the edge of a plume.
type OutlinePoint struct {
	Behind float64 // distance behind the nozzle, m
	Radius float64 // distance from the axis, m
}

// Outline returns the edge of the gas at least as hot as a temperature (K), from the nozzle to its farthest point in equal steps, for drawing;
// none for temperatures the exhaust does not reach or not above the air's.
func (p Plume) Outline(temperature float64, steps int) []OutlinePoint {
	reach := p.ReachOf(temperature)
	if steps < 1 || !(reach > 0) || temperature <= p.Air {
		return nil
	}
	out := make([]OutlinePoint, 0, steps+1)
	for i := range steps {
		x := reach * float64(i) / float64(steps)
		out = append(out, OutlinePoint{Behind: x, Radius: p.EdgeRadius(x, temperature)})
	}
	return append(out, OutlinePoint{Behind: reach})
}
