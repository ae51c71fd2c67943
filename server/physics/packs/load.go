package packs

import (
	"fmt"
	"math"
	"slices"

	"pitgate/server/physics/order"
)

// Class is a size of servo or other load with its currents.
type Class struct {
	Name   string
	Idle   float64 // A, powered and still
	Moving float64 // A, mean while it works against air
	Stall  float64 // A, blocked
	Volts  float64 // at which these hold
	Torque float64 // most torque of the class, N m; 0 where it has none
}

// Classes of loads, from the smallest. Micro and standard: published measurements, within 30 %; the others: common practice, within 40 %.
var classes = []Class{
	{"micro servo", 0.008, 0.225, 1.2, 5, 0.3},
	{"standard servo", 0.010, 0.25, 2.0, 5, 0.98},
	{"strong digital servo", 0.020, 0.55, 4.0, 6, 2},
	{"large servo", 0.040, 1.0, 9.0, 7.4, 10},
}

// Retract is an electric retract, seconds at a time.
var Retract = Class{Name: "electric retract", Idle: 0.01, Moving: 0.65, Stall: 3, Volts: 6}

// Electronics is what a receiver with telemetry draws, A, the upper end. Source: common practice.
const Electronics = 0.20

// Classes returns the servo classes from the smallest.
func Classes() []Class { return slices.Clone(classes) }

// ClassByTorque returns the smallest class that has a torque (N m), the largest when none has.
//
// Valid for: servos of models. Source: common practice.
func ClassByTorque(torque float64) Class {
	for _, class := range classes {
		if torque <= class.Torque {
			return class
		}
	}
	return classes[len(classes)-1]
}

// movingPerVolt is how much the current of a working servo grows by a volt. Source: a maker's note, 15 to 20 %.
const movingPerVolt = 0.175

// At returns the class's currents at another voltage: blocked in proportion, working 17.5 % a volt.
//
// where volts is that of the supply (V, above 0). Valid for: within 3 V of the class's own. Source: motor at rest is a resistance; a maker's note.
func (c Class) At(volts float64) Class {
	c.Stall *= volts / c.Volts
	c.Moving *= math.Max(0.1, 1+float64(movingPerVolt*(volts-c.Volts)))
	c.Volts = volts
	return c
}

// CurrentAtTorque returns what a servo draws at a torque, A: I0 + (Is - I0) M/Ms.
//
// where torque is M and most Ms (N m), Is the blocked and I0 the idle current. Valid for: torques up to Ms, held there. Source: direct-current motor.
func (c Class) CurrentAtTorque(torque, most float64) float64 {
	return c.Idle + float64((c.Stall-c.Idle)*clamp(math.Abs(torque)/most, 0, 1))
}

// Group is a number of like loads.
type Group struct {
	Class Class
	Count int
}

// Factors of loads.
const (
	Duty          = 0.25 // share of time a servo works, 0.15 to 0.30 by common practice
	startFactor   = 2.5  // current of a fast start over that of steady work, 2 to 3
	blockedAtOnce = 2    // servos taken to be blocked together
	mostLoads     = 64
)

// Demand is what all loads draw together, A.
type Demand struct {
	Mean    float64 // over a flight
	Peak    float64 // for volts and wiring
	Blocked float64 // with every one blocked: the bound nothing goes beyond
}

// DemandOf returns what groups of loads draw.
//
//	mean = sum N (idle (1-k) + moving k) + electronics
//	peak = the greater of 2.5 sum N moving, and the two largest blocked with the rest working, + electronics
//
// where duty is k (0 to 1), electronics in A. Valid for: loads at their class's volts (Class.At). Source: sum of currents; the peak's rule is judgement.
// Errors: ErrInput.
func DemandOf(groups []Group, duty, electronics float64) (Demand, error) {
	if err := within("duty", duty, 0, 1); err != nil {
		return Demand{}, err
	}
	if err := within("electronics current", electronics, 0, mostValue); err != nil {
		return Demand{}, err
	}
	out, moving := Demand{Mean: electronics, Blocked: electronics}, 0.0
	var all []Class
	for _, g := range groups {
		if err := g.check(); err != nil {
			return Demand{}, err
		}
		n := float64(g.Count)
		out.Mean += float64(n * (float64(g.Class.Idle*(1-duty)) + float64(g.Class.Moving*duty)))
		out.Blocked += float64(n * g.Class.Stall)
		moving += float64(n * g.Class.Moving)
		for range g.Count {
			all = append(all, g.Class)
		}
	}
	out.Peak = electronics + math.Max(float64(startFactor*moving), moving+blockedMore(all))
	return out, nil
}

// blockedMore returns what the largest blocked loads draw beyond working, A.
func blockedMore(all []Class) float64 {
	order.Stable(all, func(a, b Class) int {
		switch more := (b.Stall - b.Moving) - (a.Stall - a.Moving); {
		case more > 0:
			return 1
		case more < 0:
			return -1
		}
		return 0
	})
	sum := 0.0
	for _, c := range all[:min(blockedAtOnce, len(all))] {
		sum += math.Max(0, c.Stall-c.Moving)
	}
	return sum
}

// check refuses loads that cannot be.
func (g Group) check() error {
	if g.Count < 0 || g.Count > mostLoads {
		return fmt.Errorf("%w: count of %s must be from 0 to %d, is %d", ErrInput, g.Class.Name, mostLoads, g.Count)
	}
	for _, v := range []struct {
		field string
		value float64
	}{{"idle", g.Class.Idle}, {"moving", g.Class.Moving}, {"blocked", g.Class.Stall}} {
		if err := within(v.field+" current of "+g.Class.Name, v.value, 0, mostValue); err != nil {
			return err
		}
	}
	return nil
}
