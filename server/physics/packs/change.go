package packs

import "math"

// Knob is what a change turns.
type Knob string

// Knobs, each named as a page may show it.
const (
	KnobCharge   Knob = "charge at the start"
	KnobWarmth   Knob = "temperature of the pack"
	KnobCapacity Knob = "capacity of the pack"
	KnobLead     Knob = "area of the lead"
	KnobPeak     Knob = "peak current"
	KnobCells    Knob = "cells in series"
)

// Change is the least turn of one knob that makes a supply hold.
type Change struct {
	Knob     Knob
	From, To float64 // share, K, Ah, m2, A or count
	Spare    float64 // Result.Spare with the change, V
	Lasts    float64 // Result.Lasts with the change, s
	Holds    bool    // the change alone is enough
}

// Wanted is what a supply should keep.
type Wanted struct {
	Spare   float64 // V above falling out; RegulatorReserve is common
	Reserve float64 // share of usable charge left at the end, 0 to below 1
}

// Reach of the knobs.
const (
	warmest         = Zero + 35
	mostCapacityX   = 4.0
	mostLeadX       = 8.0
	leastPeakShare  = 0.3
	searchSteps     = 40
	stepRefinements = 30
)

// Holds says whether a result keeps what is wanted: the volts, the charge, and no cell too low.
func (w Wanted) Holds(r Result) bool {
	kept := float64(r.Usable * (1 - clamp(w.Reserve, 0, 0.999)))
	return r.Spare >= w.Spare && r.Drawn <= kept && !r.CellTooLow
}

// turn is a knob with its way.
type turn struct {
	knob      Knob
	from, end float64
	set       func(*Supply, float64)
}

// turns lists the knobs of a supply. A measured resistance shrinks as capacity grows.
func (s Supply) turns() []turn {
	return []turn{
		{KnobCharge, s.Charge, 1, func(c *Supply, v float64) { c.Charge = v }},
		{KnobWarmth, s.Kelvin, math.Max(warmest, s.Kelvin), func(c *Supply, v float64) { c.Kelvin = v }},
		{KnobCapacity, s.Capacity, mostCapacityX * s.Capacity, func(c *Supply, v float64) {
			c.Resistance *= c.Capacity / v
			c.Capacity = v
		}},
		{KnobLead, s.Lead.Area, mostLeadX * s.Lead.Area, func(c *Supply, v float64) { c.Lead.Area = v }},
		{KnobPeak, s.Peak, leastPeakShare * s.Peak, func(c *Supply, v float64) { c.Peak = v }},
	}
}

// Changes returns for every knob the least change that keeps what is wanted, none when the supply keeps it already. A change whose whole reach is not
// enough has Holds false; when none holds, no single change helps. One cell more is offered behind a regulator alone: without one it goes to the servos.
//
// Valid for: as Compute. Source: bracketed search on Compute. Errors: as Compute.
func Changes(s Supply, wanted Wanted) ([]Change, error) {
	now, err := Compute(s)
	if err != nil || wanted.Holds(now) {
		return nil, err
	}
	var out []Change
	for _, t := range s.turns() {
		if t.end != t.from {
			out = append(out, s.search(t, wanted))
		}
	}
	if s.Regulator.Kind != Direct && s.Series < 24 {
		more := s
		more.Series++
		more.Resistance *= float64(more.Series) / float64(s.Series)
		r := more.compute()
		out = append(out, Change{KnobCells, float64(s.Series), float64(more.Series), r.Spare, r.Lasts, wanted.Holds(r)})
	}
	return out, nil
}

// at returns the supply's result with a knob at a value.
func (s Supply) at(t turn, value float64) Result {
	t.set(&s, value)
	return s.compute()
}

// search returns the value nearest to the present one that keeps what is wanted; the end of the way when none does.
func (s Supply) search(t turn, wanted Wanted) Change {
	last := t.from
	for i := 1; i <= searchSteps; i++ {
		value := t.from + float64((t.end-t.from)*float64(i)/searchSteps)
		if wanted.Holds(s.at(t, value)) {
			to := s.refine(t, last, value, wanted)
			r := s.at(t, to)
			return Change{t.knob, t.from, to, r.Spare, r.Lasts, true}
		}
		last = value
	}
	r := s.at(t, t.end)
	return Change{t.knob, t.from, t.end, r.Spare, r.Lasts, false}
}

// refine halves the step in which the supply begins to hold and returns its holding side.
func (s Supply) refine(t turn, fails, holds float64, wanted Wanted) float64 {
	for range stepRefinements {
		if middle := (fails + holds) / 2; wanted.Holds(s.at(t, middle)) {
			holds = middle
		} else {
			fails = middle
		}
	}
	return holds
}
