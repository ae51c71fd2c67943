package packs

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"
)

// receiverSupply is a sound supply: two lithium-ion cells, a linear regulator at 6 V, short leads, a mild day.
func receiverSupply() Supply {
	return Supply{
		Chemistry: LithiumIon, Series: 2, Capacity: 3, Resistance: 0.05, Charge: 1, Kelvin: Zero + 20,
		Lead:      Lead{Length: 0.3, Area: 1.5e-6, Contacts: 2, Contact: PowerContact, SwitchContacts: 0.005},
		Regulator: Regulator{Kind: Linear, Set: 6, DropOut: 0.3},
		Mean:      1, Peak: 6, Time: 900,
	}
}

// compute returns the result of a sound supply.
func compute(t *testing.T, s Supply) Result {
	t.Helper()
	r, err := Compute(s)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func TestSupplyAddsUp(t *testing.T) {
	t.Parallel()
	s := receiverSupply()
	r := compute(t, s)
	loop := r.PackResistance + r.ChainResistance
	if math.Abs(r.InputVolts-(r.RestVolts-6*loop)) > 1e-9 || math.Abs(r.PackVolts-r.LeadDrop-r.InputVolts) > 1e-9 {
		t.Errorf("%+v", r)
	}
	if math.Abs(r.Drawn-0.25) > 1e-12 || math.Abs(r.ChargeAtEnd-(1-0.25/3/r.Aged)) > 1e-9 {
		t.Errorf("drawn %g, left %g", r.Drawn, r.ChargeAtEnd)
	}
	if r.DropsOut || r.CellTooLow || math.Abs(r.BusVolts-6) > 1e-12 || !(Wanted{0.3, 0.3}).Holds(r) {
		t.Errorf("a sound supply: %+v", r)
	}
	if want := Endurance(r.Usable, 1); r.Lasts != want {
		t.Errorf("lasts %g, want %g", r.Lasts, want)
	}
}

func TestColdHalfChargedPackIsFound(t *testing.T) {
	t.Parallel()
	s := receiverSupply()
	s.Charge, s.Kelvin = 0.4, Zero-6
	cold, warm := compute(t, s), compute(t, receiverSupply())
	if (Wanted{0.3, 0.3}).Holds(cold) {
		t.Errorf("40 %% at -6 C holds: %+v", cold)
	}
	if !(cold.Usable < 0.3*warm.Usable && cold.PackResistance > 2*warm.PackResistance) {
		t.Errorf("usable %g of %g Ah, resistance %g of %g", cold.Usable, warm.Usable, cold.PackResistance, warm.PackResistance)
	}
}

func TestColdTwoCellPackFallsOutOfASwitchedRegulator(t *testing.T) {
	t.Parallel()
	drop := DropOutOfSwitch(6, 5, 0.95, 0.03, 0.03, 0.03)
	s := Supply{
		Chemistry: LithiumPolymer, Series: 2, Capacity: 1.2, Resistance: 0.03, Charge: 0.5, Kelvin: Zero + 20,
		Regulator: Regulator{Kind: Switching, Set: 6, DropOut: drop, Efficiency: 0.9}, Mean: 0.7, Peak: 8, Time: 600,
	}
	if r := compute(t, s); r.DropsOut {
		t.Errorf("at 20 C: %+v", r)
	}
	s.Kelvin = Zero - 10
	if r := compute(t, s); !r.DropsOut || r.BusVolts >= 6 {
		t.Errorf("at -10 C: %+v", r)
	}
}

func TestSupplyIsMonotone(t *testing.T) {
	t.Parallel()
	for name, c := range map[string]struct {
		turn func(*Supply, float64)
		from float64
		step float64
	}{
		"warmer":       {func(s *Supply, v float64) { s.Kelvin = v }, Zero - 30, 5},
		"fuller":       {func(s *Supply, v float64) { s.Charge = v }, 0.1, 0.09},
		"thicker lead": {func(s *Supply, v float64) { s.Lead.Area = v * 1e-6 }, 0.1, 0.3},
		"larger":       {func(s *Supply, v float64) { s.Capacity, s.Resistance = v, 0.15/v }, 0.6, 0.5},
		"less peak":    {func(s *Supply, v float64) { s.Peak = 12 - v }, 0, 1},
		"younger":      {func(s *Supply, v float64) { s.Age.Years = 3 - v; s.Resistance = 0 }, 0, 0.3},
	} {
		s := receiverSupply()
		lastSpare, lastUsable := math.Inf(-1), math.Inf(-1)
		for i := range 10 {
			c.turn(&s, c.from+c.step*float64(i))
			r := compute(t, s)
			if r.Spare < lastSpare-1e-12 || r.Usable < lastUsable-1e-12 {
				t.Errorf("%s at turn %d: %g V and %g Ah after %g V and %g Ah", name, i, r.Spare, r.Usable, lastSpare, lastUsable)
			}
			lastSpare, lastUsable = r.Spare, r.Usable
		}
	}
}

func TestEstimatesAndLimitsAreNamed(t *testing.T) {
	t.Parallel()
	s := receiverSupply()
	s.Resistance, s.Lead.Contact, s.Kelvin, s.Age.Years = 0, 0, Zero-25, 3
	r := compute(t, s)
	if len(r.Estimated) != 2 || len(r.Outside) != 2 {
		t.Errorf("%v %v", r.Estimated, r.Outside)
	}
	if sound := compute(t, receiverSupply()); len(sound.Estimated)+len(sound.Outside) != 0 {
		t.Errorf("%v %v", sound.Estimated, sound.Outside)
	}
}

func TestDirectSupplyIsJudgedByItsBus(t *testing.T) {
	t.Parallel()
	s := receiverSupply()
	s.Regulator, s.Chemistry = Regulator{Kind: Direct}, LithiumIronPhosphate
	r := compute(t, s)
	if math.Abs(r.Spare-(r.BusVolts-DefaultLeastBus)) > 1e-12 || r.BusVolts != r.InputVolts {
		t.Errorf("%+v", r)
	}
}

func TestImpossibleSuppliesNameTheField(t *testing.T) {
	t.Parallel()
	for field, spoil := range map[string]func(*Supply){
		"chemistry":         func(s *Supply) { s.Chemistry = 0 },
		"series cells":      func(s *Supply) { s.Series = 0 },
		"capacity":          func(s *Supply) { s.Capacity = math.NaN() },
		"charge":            func(s *Supply) { s.Charge = 1.1 },
		"temperature":       func(s *Supply) { s.Kelvin = -5 },
		"lead area":         func(s *Supply) { s.Lead.Area = 0 },
		"regulator kind":    func(s *Supply) { s.Regulator.Kind = 0 },
		"regulator voltage": func(s *Supply) { s.Regulator.Set = 0 },
		"peak current":      func(s *Supply) { s.Peak = math.Inf(1) },
	} {
		s := receiverSupply()
		spoil(&s)
		if _, err := Compute(s); !errors.Is(err, ErrInput) || !strings.Contains(err.Error(), field) {
			t.Errorf("%s: %v", field, err)
		}
	}
}

func TestChangesAreTheLeastThatHold(t *testing.T) {
	t.Parallel()
	s := receiverSupply()
	s.Charge, s.Kelvin, s.Peak = 0.7, Zero-5, 8
	wanted := Wanted{0.3, 0.3}
	changes, err := Changes(s, wanted)
	if err != nil || len(changes) == 0 {
		t.Fatal(changes, err)
	}
	held := 0
	for _, c := range changes {
		if c.Holds && c.Spare < 0.3 {
			t.Errorf("%+v", c)
		}
		if c.Holds {
			held++
		}
	}
	if held == 0 {
		t.Errorf("nothing helps: %+v", changes)
	}
	i := slices.IndexFunc(changes, func(c Change) bool { return c.Knob == KnobPeak })
	if c := changes[i]; c.Holds {
		s.Peak = c.To * 1.01
		if wanted.Holds(compute(t, s)) {
			t.Errorf("a greater peak holds too: %+v", c)
		}
	}
	if none, err := Changes(receiverSupply(), wanted); err != nil || none != nil {
		t.Errorf("a supply that holds: %+v, %v", none, err)
	}
}

func TestCheckUnderLoadFindsAWornPack(t *testing.T) {
	t.Parallel()
	s := receiverSupply()
	s.Resistance = 0
	fresh := s.Chemistry.ClassResistance(2, 3)
	test := LoadTest{Rest: 2 * s.Chemistry.RestVolts(1), Current: 3, Kelvin: RoomCells}
	test.Loaded = test.Rest - 3*fresh
	r, err := CheckUnderLoad(s, test)
	if err != nil || r.Worn || math.Abs(r.Ratio-1) > 1e-3 || !r.ChargeKnown || math.Abs(r.Charge-1) > 0.01 {
		t.Errorf("new pack: %+v, %v", r, err)
	}
	test.Loaded = test.Rest - 3*fresh*2.5
	if r, err := CheckUnderLoad(s, test); err != nil || !r.Worn || math.Abs(r.Short-1.5*3*fresh) > 1e-3 {
		t.Errorf("worn pack: %+v, %v", r, err)
	}
	cold := LoadTest{Rest: test.Rest, Current: 3, Kelvin: Zero}
	cold.Loaded = test.Rest - 3*fresh*s.Chemistry.ColdRatio(Zero)
	if r, err := CheckUnderLoad(s, cold); err != nil || r.Worn || math.Abs(r.AtRoom-fresh) > 1e-3*fresh {
		t.Errorf("cold pack: %+v, %v", r, err)
	}
	test.Loaded = test.Rest + 0.1
	if _, err := CheckUnderLoad(s, test); !errors.Is(err, ErrInput) {
		t.Errorf("loaded above rest: %v", err)
	}
}

func BenchmarkCompute(b *testing.B) {
	s := receiverSupply()
	for b.Loop() {
		if _, err := Compute(s); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkChanges(b *testing.B) {
	s := receiverSupply()
	s.Charge, s.Kelvin = 0.4, Zero-6
	for b.Loop() {
		if _, err := Changes(s, Wanted{0.3, 0.3}); err != nil {
			b.Fatal(err)
		}
	}
}

func FuzzCompute(f *testing.F) {
	f.Add(1, 2, 3.0, 0.05, 1.0, 293.15, 0.3, 1e-6, 2, 6.0, 0.3, 1.0, 6.0, 900.0)
	f.Add(4, 24, 1e-3, 0.0, 0.0, 150.0, 100.0, 1e-9, 3, 1.0, 50.0, 1e4, 1e4, 1e6)
	f.Add(3, 1, 1e3, 1e3, 0.5, 500.0, 0.0, 0.0, 1, 0.0, 0.0, 0.0, 0.0, 0.0)
	f.Fuzz(func(t *testing.T, chemistry, series int, capacity, resistance, charge, kelvin, length, area float64, kind int, set, drop, mean, peak, time float64) {
		s := Supply{
			Chemistry: Chemistry(chemistry), Series: series, Capacity: capacity, Resistance: resistance, Charge: charge, Kelvin: kelvin,
			Lead: Lead{Length: length, Area: area, Contacts: 4}, Regulator: Regulator{Kind: Kind(kind), Set: set, DropOut: drop},
			Mean: mean, Peak: peak, Time: time,
		}
		r, err := Compute(s)
		if err != nil {
			return
		}
		for _, v := range []float64{r.Usable, r.Drawn, r.Lasts, r.PackResistance, r.RestVolts, r.PackVolts, r.InputVolts, r.BusVolts, r.Spare, r.InputCurrent, r.PeakRate} {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Fatalf("%+v", r)
			}
		}
		if r.ChargeAtEnd < 0 || r.ChargeAtEnd > 1 || r.BusVolts < 0 || r.Usable > capacity*(1+1e-9) || r.InputVolts > r.RestVolts+1e-9 {
			t.Fatalf("%+v", r)
		}
	})
}
