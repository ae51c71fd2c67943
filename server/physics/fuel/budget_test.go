package fuel

import (
	"math"
	"strings"
	"testing"
)

// flight is a plan whose numbers can be added by hand: 2 kg on board, circuits of 0.09 kg.
func flight() Flight {
	return Flight{
		OnBoard: 2, Unusable: 0.1,
		Before: []Stretch{{"start", 0.002, 30}, {"static check", 0.005, 20}},
		Launch: Stretch{"launch", 0.005, 10}, Circuit: Stretch{"circuit", 0.003, 30},
		Landing: Stretch{"landing", 0.002, 40}, GoAround: Stretch{"go-around", 0.005, 16},
	}
}

func TestBudgetAddsUp(t *testing.T) {
	t.Parallel()
	b, err := FlightBudget(flight())
	if err != nil {
		t.Fatal(err)
	}
	// 2 - 0.16 - 0.05 - 0.08 - (0.08 + 0.09) - 0.1 = 1.44 kg: 16 circuits, 480 s and 10 s of launch.
	for name, pair := range map[string][2]float64{
		"before": {b.Before, 0.16}, "reserve": {b.Reserve, 0.17}, "flying": {b.Flying, 1.44}, "timer": {b.Timer, 490},
		"endurance": {b.Endurance, 10 + 1.69/0.003}, "short": {b.Short, 0},
	} {
		if math.Abs(pair[0]-pair[1]) > 1e-9 {
			t.Errorf("%s is %g, want %g", name, pair[0], pair[1])
		}
	}
	if b.Circuits != 16 {
		t.Errorf("%d circuits", b.Circuits)
	}
	spent := b.Before + b.Launch + b.Landing + b.Reserve + b.Unusable + b.Flying
	if math.Abs(spent-2) > 1e-12 {
		t.Errorf("the parts make %g kg of 2", spent)
	}
}

func TestBudgetThatDoesNotFitSaysHowMuchIsMissing(t *testing.T) {
	t.Parallel()
	f := flight()
	f.OnBoard = 0.5
	b, err := FlightBudget(f)
	if err != nil || b.Timer != 0 || b.Circuits != 0 || math.Abs(b.Short-0.06) > 1e-12 {
		t.Errorf("timer %g, short %g, %v", b.Timer, b.Short, err)
	}
	f.OnBoard += b.Short
	if b, _ = FlightBudget(f); b.Short > 1e-12 {
		t.Errorf("with what was missing %g is still missing", b.Short)
	}
}

func TestMoreFuelNeverShortensTheTimer(t *testing.T) {
	t.Parallel()
	last := -1.0
	for mass := 0.0; mass < 3; mass += 0.05 {
		f := flight()
		f.OnBoard = mass
		b, err := FlightBudget(f)
		if err != nil || b.Timer < last {
			t.Fatalf("timer %g after %g at %g kg, %v", b.Timer, last, mass, err)
		}
		if b.Timer > b.Endurance {
			t.Errorf("timer %g is past the endurance %g", b.Timer, b.Endurance)
		}
		last = b.Timer
	}
}

func TestImpossibleInputNamesItsField(t *testing.T) {
	t.Parallel()
	for field, plant := range map[string]func(*System){
		"flow": func(s *System) { s.Flow = 0 }, "temperature": func(s *System) { s.Temperature = math.NaN() },
		"oilShare": func(s *System) { s.OilShare = 0.8 }, "lines[1].bore": func(s *System) { s.Lines[1].Bore = 0 },
		"lines[2].length": func(s *System) { s.Lines[2].Length = math.Inf(1) }, "lines[0].elbows": func(s *System) { s.Lines[0].Elbows = -1 },
		"loads[2].normal": func(s *System) { s.Loads[2].Normal = math.NaN() }, "loads[0].forward": func(s *System) { s.Loads[0].Forward = 1e9 },
		"ventBore": func(s *System) { s.VentBore = -1 }, "trapVolume": func(s *System) { s.TrapVolume = -1 },
		"fuel.density15": func(s *System) { s.Fuel = Liquid{} }, "fuel.warmAt": func(s *System) { s.Fuel.WarmAt = s.Fuel.ColdAt },
		"filterLoss": func(s *System) { s.FilterLoss = -1 }, "pumpHeight": func(s *System) { s.PumpHeight = 99 },
		"outside": func(s *System) { s.Outside = -1 }, "density": func(s *System) { s.Density = math.Inf(1) },
	} {
		s := sound()
		plant(&s)
		if _, err := Assess(s); err == nil || !strings.HasPrefix(err.Error(), field+":") {
			t.Errorf("%s: %v", field, err)
		}
	}
	for field, plant := range map[string]func(*Flight){
		"onBoard": func(f *Flight) { f.OnBoard = -1 }, "before[1].flow": func(f *Flight) { f.Before[1].Flow = math.NaN() },
		"circuit.flow": func(f *Flight) { f.Circuit.Flow = 0 }, "landing.duration": func(f *Flight) { f.Landing.Duration = -1 },
	} {
		f := flight()
		plant(&f)
		if _, err := FlightBudget(f); err == nil || !strings.HasPrefix(err.Error(), field+":") {
			t.Errorf("%s: %v", field, err)
		}
	}
}
