package stability

import "math"

// FlightPhase is what the model is doing, as the flying-qualities specification sorts it.
type FlightPhase string

// Flight phases.
const (
	PhaseA FlightPhase = "A" // quick manoeuvres, precise tracking
	PhaseB FlightPhase = "B" // gradual manoeuvres: the circuit
	PhaseC FlightPhase = "C" // take-off and landing
)

// Criterion is one limit of a motion for one level of handling: 1 clearly adequate, 2 more work, 3 just controllable.
type Criterion struct {
	Quantity CriterionQuantity
	Phase    FlightPhase
	Level    int
	Low      float64 // least value; 0 where there is none
	High     float64 // greatest value; 0 where there is none
}

// CriterionQuantity names what a criterion limits.
type CriterionQuantity string

// Quantities with criteria. Times are those of full-size light aeroplanes: scale them with FroudeTime.
const (
	ShortPeriodDamping CriterionQuantity = "short-period damping ratio"
	PhugoidDamping     CriterionQuantity = "phugoid damping ratio"
	AnticipationRatio  CriterionQuantity = "short-period frequency squared over load factor per rad, 1/s2"
	RollTime           CriterionQuantity = "roll time constant, s"
	SpiralDouble       CriterionQuantity = "time to double of the spiral, s"
	DutchRollDamping   CriterionQuantity = "Dutch-roll damping ratio"
	DutchRollFrequency CriterionQuantity = "Dutch-roll frequency, rad/s"
)

// CriteriaSource cites the limits; they were taken from memory.
const CriteriaSource = "MIL-F-8785C, Flying Qualities of Piloted Airplanes, class I (small, light), from memory"

var criteria = []Criterion{
	{ShortPeriodDamping, PhaseA, 1, 0.35, 1.30}, {ShortPeriodDamping, PhaseA, 2, 0.25, 2.00}, {ShortPeriodDamping, PhaseA, 3, 0.15, 0},
	{ShortPeriodDamping, PhaseB, 1, 0.30, 2.00}, {ShortPeriodDamping, PhaseB, 2, 0.20, 2.00}, {ShortPeriodDamping, PhaseB, 3, 0.15, 0},
	{ShortPeriodDamping, PhaseC, 1, 0.35, 1.30}, {ShortPeriodDamping, PhaseC, 2, 0.25, 2.00}, {ShortPeriodDamping, PhaseC, 3, 0.15, 0},
	{PhugoidDamping, PhaseA, 1, 0.04, 0}, {PhugoidDamping, PhaseB, 1, 0.04, 0}, {PhugoidDamping, PhaseC, 1, 0.04, 0},
	{PhugoidDamping, PhaseA, 2, 0, 0}, {PhugoidDamping, PhaseB, 2, 0, 0}, {PhugoidDamping, PhaseC, 2, 0, 0},
	{AnticipationRatio, PhaseA, 1, 0.28, 3.60}, {AnticipationRatio, PhaseB, 1, 0.085, 3.60}, {AnticipationRatio, PhaseC, 1, 0.16, 3.60},
	{AnticipationRatio, PhaseA, 2, 0.16, 10}, {AnticipationRatio, PhaseB, 2, 0.038, 10}, {AnticipationRatio, PhaseC, 2, 0.096, 10},
	{RollTime, PhaseA, 1, 0, 1.0}, {RollTime, PhaseA, 2, 0, 1.4}, {RollTime, PhaseB, 1, 0, 1.4}, {RollTime, PhaseB, 2, 0, 3.0},
	{RollTime, PhaseB, 3, 0, 10}, {RollTime, PhaseC, 1, 0, 1.0}, {RollTime, PhaseC, 2, 0, 1.4},
	{SpiralDouble, PhaseA, 1, 12, 0}, {SpiralDouble, PhaseA, 2, 8, 0}, {SpiralDouble, PhaseA, 3, 4, 0},
	{SpiralDouble, PhaseB, 1, 20, 0}, {SpiralDouble, PhaseB, 2, 8, 0}, {SpiralDouble, PhaseB, 3, 4, 0},
	{SpiralDouble, PhaseC, 1, 12, 0}, {SpiralDouble, PhaseC, 2, 8, 0}, {SpiralDouble, PhaseC, 3, 4, 0},
	{DutchRollDamping, PhaseA, 1, 0.19, 0}, {DutchRollDamping, PhaseB, 1, 0.08, 0}, {DutchRollDamping, PhaseC, 1, 0.08, 0},
	{DutchRollDamping, PhaseA, 2, 0.02, 0}, {DutchRollDamping, PhaseB, 2, 0.02, 0}, {DutchRollDamping, PhaseC, 2, 0.02, 0},
	{DutchRollFrequency, PhaseA, 1, 1.0, 0}, {DutchRollFrequency, PhaseB, 1, 0.4, 0}, {DutchRollFrequency, PhaseC, 1, 1.0, 0},
	{DutchRollFrequency, PhaseA, 2, 0.4, 0}, {DutchRollFrequency, PhaseB, 2, 0.4, 0}, {DutchRollFrequency, PhaseC, 2, 0.4, 0},
}

// CriterionFor returns the limits of a quantity in a phase and level, and false where the specification has none.
func CriterionFor(quantity CriterionQuantity, phase FlightPhase, level int) (Criterion, bool) {
	for _, c := range criteria {
		if c.Quantity == quantity && c.Phase == phase && c.Level == level {
			return c, true
		}
	}
	return Criterion{}, false
}

// Meets reports whether a value lies within the limits.
func (c Criterion) Meets(value float64) bool {
	return value >= c.Low && (c.High == 0 || value <= c.High)
}

// LevelOf returns the best level whose limits a value meets, 4 where it meets none. A note for people, not a verdict: the limits are those of piloted
// aeroplanes of full size.
//
// Valid for: quantities and phases with criteria; times and frequencies brought to full size with FroudeTime first.
// Source: CriteriaSource.
func LevelOf(quantity CriterionQuantity, phase FlightPhase, value float64) int {
	for level := 1; level <= 3; level++ {
		if c, found := CriterionFor(quantity, phase, level); found && c.Meets(value) {
			return level
		}
	}
	return 4
}

// FroudeTime brings a time of a model to that of a full-size aeroplane: multiply times, divide frequencies.
//
// Formula: sqrt(full length/model length).
// Valid for: geometric and dynamic likeness; 1 for lengths that are not positive.
// Source: Froude's law: V^2/(g l) the same.
func FroudeTime(fullLength, modelLength float64) float64 {
	ratio := math.Sqrt(fullLength / modelLength)
	if !(ratio > 0) || math.IsInf(ratio, 0) {
		return 1
	}
	return ratio
}

// Anticipation returns the short-period frequency squared over the load factor per rad of incidence, 1/s2; 0 without that load factor.
//
// Formula: omega^2/(n/a), n/a = q S CL_a/(m g).
// Valid for: positive static margin.
// Source: MIL-F-8785C, paragraph 3.2.2.1.1, from memory.
func Anticipation(shortPeriod Mode, liftSlope float64, s State) float64 {
	perRadian := float64(float64(s.Pressure()*s.Area)*liftSlope) / float64(s.Mass*s.Gravity)
	if !(perRadian > 0) {
		return 0
	}
	return float64(shortPeriod.NaturalFrequency*shortPeriod.NaturalFrequency) / perRadian
}
