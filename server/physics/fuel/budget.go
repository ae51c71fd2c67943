package fuel

import "fmt"

// UnusableShare is the share of the tanks' contents that a pump cannot reach where it was not measured (common practice, 3 to 5 %).
const UnusableShare = 0.05

// countSlack keeps a whole circuit that rounding would lose.
const countSlack = 1e-9

// Stretch is a part of a flight at one fuel flow.
type Stretch struct {
	Name     string
	Flow     float64 // kg/s
	Duration float64 // s
}

// Mass returns the fuel it takes (kg).
//
// Formula: m = w t; where w fuel flow (kg/s), t duration (s).
// Valid for: steady flow.
// Source: definition.
func (s Stretch) Mass() float64 { return float64(s.Flow * s.Duration) }

// Flight is what a tank of fuel must do.
type Flight struct {
	OnBoard  float64 // fuel in the tanks before the start, kg
	Unusable float64 // kg; UnusableShare of OnBoard where it was not measured
	// Before are start, static check and taxi; none of it counts for the timer.
	Before []Stretch
	Launch Stretch
	// Circuit is one circuit; Landing the last approach.
	Circuit, Landing Stretch
	// GoAround is one go-around; with one extra Circuit it is the reserve.
	GoAround Stretch
}

// Budget is the fuel of a flight.
type Budget struct {
	Before, Launch, Landing float64 // kg
	Reserve                 float64 // one go-around and one extra circuit, kg
	Unusable                float64 // kg
	Flying                  float64 // left for circuits, kg; below 0 the flight does not fit
	Circuits                int     // whole circuits in Flying
	// Timer is the time from launch at which the landing begins and the reserve is untouched, s; 0 when the flight does not fit.
	Timer float64
	// Endurance is the time from launch until the engine stops when nothing but circuits is flown, s.
	Endurance float64
	// Short is the fuel missing for launch, landing and reserve, kg; 0 when they fit.
	Short float64
}

// FlightBudget returns timer and reserve of a flight. Impossible input is an error that names the field.
//
// Formula: flying = on board - before - launch - landing - (go-around + circuit) - unusable; timer = launch + flying/w; where w flow of a circuit.
// Valid for: flows of the day; flow against thrust by Engine.FuelFlow.
// Source: definition of the reserve: one go-around and one extra circuit.
func FlightBudget(f Flight) (Budget, error) {
	if err := f.check(); err != nil {
		return Budget{}, err
	}
	b := Budget{
		Launch: f.Launch.Mass(), Landing: f.Landing.Mass(), Unusable: f.Unusable, Reserve: f.GoAround.Mass() + f.Circuit.Mass(),
	}
	for _, stretch := range f.Before {
		b.Before += stretch.Mass()
	}
	b.Flying = f.OnBoard - b.Before - b.Launch - b.Landing - b.Reserve - b.Unusable
	after := max(0, f.OnBoard-b.Before-b.Launch-b.Unusable)
	b.Endurance = f.Launch.Duration + after/f.Circuit.Flow
	if b.Flying < 0 {
		b.Short = -b.Flying
		return b, nil
	}
	b.Timer = f.Launch.Duration + b.Flying/f.Circuit.Flow
	b.Circuits = int(b.Flying/f.Circuit.Mass() + countSlack)
	return b, nil
}

// check names the first impossible field.
func (f *Flight) check() error {
	for _, err := range []error{
		checkWithin("onBoard", f.OnBoard, 0, 1000), checkWithin("unusable", f.Unusable, 0, 1000),
		f.Launch.check("launch"), f.Circuit.check("circuit"), f.Landing.check("landing"), f.GoAround.check("goAround"),
		checkWithin("circuit.flow", f.Circuit.Flow, 1e-9, 10), checkWithin("circuit.duration", f.Circuit.Duration, 1, 36000),
	} {
		if err != nil {
			return err
		}
	}
	for i, stretch := range f.Before {
		if err := stretch.check(fmt.Sprintf("before[%d]", i)); err != nil {
			return err
		}
	}
	return nil
}

// check names what of a stretch cannot be.
func (s *Stretch) check(field string) error {
	if err := checkWithin(field+".flow", s.Flow, 0, 10); err != nil {
		return err
	}
	return checkWithin(field+".duration", s.Duration, 0, 36000)
}
