package fuel

import (
	"math"
	"slices"
	"testing"
)

// sound is a feed system of a turbine of the 120 N class with nothing wrong.
func sound() System {
	return System{
		Flow: 0.0052, Fuel: Kerosene, OilShare: OilShare(0.05), Temperature: 288.15,
		Lines: []Line{
			{Name: "tank to trap", Length: 0.35, Bore: 0.005, Elbows: 1, Suction: true},
			{Name: "trap to pump", Length: 0.20, Bore: 0.005, Elbows: 1, Suction: true},
			{Name: "pump to engine", Length: 0.40, Bore: 0.003, Elbows: 2},
		},
		Filter: true, FilterLoss: 800, PumpHeight: 0.04, PumpAhead: -0.25, Loads: Loads(8, -3, 0), Turbine: true,
		Trap: true, TrapVolume: 100e-6, Felt: true, Vent: true, VentBore: 0.004,
	}
}

// assess fails the test on an error.
func assess(t *testing.T, s System) Result {
	t.Helper()
	r, err := Assess(s)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func TestASoundSystemHasNoFault(t *testing.T) {
	t.Parallel()
	r := assess(t, sound())
	if len(r.Faults) != 0 || len(r.Fixes) != 0 {
		t.Errorf("faults %v, fixes %v", r.Faults, r.Fixes)
	}
	if name := r.Cases[r.Worst].Load.Name; name != "pull-up" {
		t.Errorf("worst case is %q", name)
	}
}

func TestEachPlantedFaultIsFoundAlone(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		fault  Fault
		change Change // "" where no figure of change is given
		plant  func(*System)
	}{
		{NoTrap, AddTrap, func(s *System) { s.Trap, s.TrapVolume = false, 0 }},
		{SmallTrap, GrowTrap, func(s *System) { s.TrapVolume = 10e-6 }},
		{NoVent, OpenVent, func(s *System) { s.Vent, s.VentBore = false, 0 }},
		{TightVent, WidenVent, func(s *System) { s.VentBore = 0.0012 }},
		{NoFilter, "", func(s *System) { s.Filter, s.FilterLoss = false, 0 }},
		{AirReleased, WidenLine, func(s *System) { s.Lines[0].Length, s.Lines[0].Bore = 6, 0.004 }},
		{AirReleased, LowerPump, func(s *System) { s.PumpHeight = 0.25 }},
	} {
		t.Run(string(c.fault)+" "+string(c.change), func(t *testing.T) {
			t.Parallel()
			s := sound()
			c.plant(&s)
			r := assess(t, s)
			if !slices.Equal(r.Faults, []Fault{c.fault}) {
				t.Fatalf("faults %v, want only %q", r.Faults, c.fault)
			}
			if c.change == "" {
				return
			}
			if !slices.ContainsFunc(r.Fixes, func(f Fix) bool { return f.Change == c.change && f.Cures == c.fault }) {
				t.Fatalf("no fix %q in %v", c.change, r.Fixes)
			}
			for _, fix := range r.Fixes {
				cured := assess(t, applied(s, fix))
				if slices.Contains(cured.Faults, c.fault) {
					t.Errorf("%v does not cure: %v", fix, cured.Faults)
				}
				if math.Abs(cured.WorstSuction()-fix.Suction) > 1e-6 {
					t.Errorf("suction after %v is %g", fix, cured.WorstSuction())
				}
			}
		})
	}
}

// applied returns the system with a fix.
func applied(s System, fix Fix) System {
	s.Lines = slices.Clone(s.Lines)
	switch fix.Change {
	case WidenLine:
		s.Lines[fix.Line].Bore = fix.To
	case WidenLines:
		for i := range s.Lines {
			s.Lines[i].Bore = max(s.Lines[i].Bore, fix.To)
		}
	case LowerPump:
		s.PumpHeight = fix.To
	case AddTrap, GrowTrap:
		s.Trap, s.TrapVolume = true, fix.To
	case OpenVent, WidenVent:
		s.Vent, s.VentBore = true, fix.To
	}
	return s
}

func TestATrapIsRequiredOfTurbinesOnly(t *testing.T) {
	t.Parallel()
	s := sound()
	s.Trap, s.Turbine = false, false
	if r := assess(t, s); r.Trap.Required || len(r.Faults) != 0 {
		t.Errorf("a piston engine got %v", r.Faults)
	}
	s.Turbine, s.Bladder, s.Vent = true, true, false
	if r := assess(t, s); r.Trap.Required || len(r.Faults) != 0 {
		t.Errorf("a bladder got %v", r.Faults)
	}
}

func TestSuctionGrowsWithWhatMakesItGrow(t *testing.T) {
	t.Parallel()
	base := assess(t, sound())
	for name, change := range map[string]func(*System){
		"length": func(s *System) { s.Lines[0].Length *= 2 }, "bore": func(s *System) { s.Lines[0].Bore /= 2 },
		"elbows": func(s *System) { s.Lines[0].Elbows++ }, "height": func(s *System) { s.PumpHeight += 0.02 },
		"load": func(s *System) { s.Loads[2].Normal++ }, "flow": func(s *System) { s.Flow *= 1.2 },
		"cold": func(s *System) { s.Temperature -= 25 }, "oil": func(s *System) { s.OilShare += 0.05 },
		"filter": func(s *System) { s.FilterLoss *= 2 }, "vent": func(s *System) { s.VentBore /= 2 },
		"density": func(s *System) { s.Density = 1.05 * base.Mix.Density },
	} {
		s := sound()
		change(&s)
		if r := assess(t, s); r.WorstSuction() <= base.WorstSuction() {
			t.Errorf("%s: suction %g does not exceed %g", name, r.WorstSuction(), base.WorstSuction())
		}
	}
}

func TestFrictionJumpsUpAtTheTransition(t *testing.T) {
	t.Parallel()
	below, above := Friction(TransitionReynolds-1e-6), Friction(TransitionReynolds)
	if ratio := above / below; math.Abs(ratio-1.642) > 1e-3 {
		t.Errorf("the factor jumps by %g, want 1.642", ratio)
	}
	if Friction(0) != 0 || math.Abs(Friction(1.00001e5)/Friction(1e5)-1) > 0.02 {
		t.Error("no flow costs something, or the laws do not meet at 1e5")
	}
	s := sound()
	s.Lines[0].Bore = 4 * 0.0052 / (math.Pi * 0.95 * TransitionReynolds * assess(t, s).Mix.Viscosity * assess(t, s).Mix.Density)
	if r := assess(t, s); !r.Transient || r.Lines[0].Turbulent {
		t.Errorf("Reynolds number %g is not told as near the jump", r.Lines[0].Reynolds)
	}
}

func TestLossesFollowTheirLaws(t *testing.T) {
	t.Parallel()
	mix := Mix{Density: 800, Viscosity: 4e-6}
	line := Line{Length: 0.5, Bore: 0.004}
	one, two := line.Loss(2e-6, mix), line.Loss(4e-6, mix)
	if math.Abs(two.Tube/one.Tube-2) > 1e-12 || math.Abs(two.Fittings/one.Fittings-4) > 1e-12 {
		t.Errorf("laminar loss grows by %g, fittings by %g", two.Tube/one.Tube, two.Fittings/one.Fittings)
	}
	poiseuille := 128 * 800 * 4e-6 * 0.5 * 2e-6 / (math.Pi * math.Pow(0.004, 4))
	if math.Abs(one.Tube/poiseuille-1) > 1e-12 {
		t.Errorf("loss %g, by Hagen and Poiseuille %g", one.Tube, poiseuille)
	}
	if none := line.Loss(0, mix); none.Total() != 0 || math.IsNaN(none.Total()) {
		t.Errorf("no flow costs %g", none.Total())
	}
}

func TestLiquids(t *testing.T) {
	t.Parallel()
	for _, l := range []Liquid{Kerosene, Diesel, TurbineOil} {
		for _, known := range [][2]float64{{l.ColdAt, l.ColdValue}, {l.WarmAt, l.WarmValue}} {
			if InsideRange(known[0]) && math.Abs(l.Viscosity(known[0])/known[1]-1) > 1e-9 {
				t.Errorf("%s: %g at %g K, told %g", l.Name, l.Viscosity(known[0]), known[0], known[1])
			}
		}
		for at := ColdestLiquid; at < HottestLiquid-1; at++ {
			if l.Viscosity(at+1) >= l.Viscosity(at) || l.Density(at+1) >= l.Density(at) {
				t.Errorf("%s does not thin from %g K", l.Name, at)
			}
		}
		if l.Viscosity(100) != l.Viscosity(ColdestLiquid) || InsideRange(100) {
			t.Errorf("%s is not held outside its range", l.Name)
		}
	}
	for share := 0.0; share < 1; share += 0.1 {
		v := Mixed(Kerosene, TurbineOil, share, 288.15)
		w := Mixed(Kerosene, TurbineOil, share+0.1, 288.15)
		if w.Viscosity <= v.Viscosity || w.Density <= v.Density || !v.InRange {
			t.Errorf("oil does not thicken the mix from a share of %g", share)
		}
	}
	if v := Mixed(Kerosene, TurbineOil, 0, 288.15).Viscosity; math.Abs(v/Kerosene.Viscosity(288.15)-1) > 1e-9 {
		t.Errorf("without oil the mix has %g", v)
	}
	for name, want := range map[string]string{"Jet A-1": "kerosene", "winter DIESEL": "diesel", "paraffin": "kerosene"} {
		if l, known := Named(name); !known || l.Name != want {
			t.Errorf("%q is %q, %v", name, l.Name, known)
		}
	}
	if _, known := Named("methanol"); known {
		t.Error("methanol is no known fuel")
	}
}

func TestLoadsAndColumns(t *testing.T) {
	t.Parallel()
	up := Climbing("up", math.Pi/2)
	if math.Abs(up.Normal) > 1e-12 || math.Abs(up.Forward-1) > 1e-12 {
		t.Errorf("straight up is %v", up)
	}
	if len(Loads(8, -3, 0)) != 4 || len(Loads(8, -3, 40)) != 5 {
		t.Error("a launch must add a case, and none without one")
	}
	if head := HeadSuction(800, Load{Normal: -2}, 0.1, 0); head >= 0 {
		t.Errorf("pushing with the pump above the tank asks for %g", head)
	}
	if a := Swing(Load{Normal: 1, Forward: 1}); math.Abs(a-math.Pi/4) > 1e-12 {
		t.Errorf("the surface tilts by %g", a)
	}
	if n := HeldLoad(ScreenHold(SurfaceTension, 40e-6), 800, 0.05); math.Abs(n-6.5) > 0.01 {
		t.Errorf("a screen of 40 micrometres holds %g g", n)
	}
}

func TestVents(t *testing.T) {
	t.Parallel()
	density, viscosity := airOf(288.15, standardOutside)
	if math.Abs(density-1.225) > 1e-4 || math.Abs(viscosity/1.4607e-5-1) > 1e-3 {
		t.Errorf("air of %g kg/m3 and %g m2/s", density, viscosity)
	}
	// 600 ml/min through 0.5 m of 2 and 3 mm: 239.6 and 47.3 Pa, within 5 % (computed apart, laws recalled).
	for bore, want := range map[float64]float64{0.002: 239.6, 0.003: 47.3} {
		if got := VentLoss(1e-5, bore, 0.5, density, viscosity); math.Abs(got/want-1) > 0.05 {
			t.Errorf("vent of %g m: %g Pa, want %g", bore, got, want)
		}
	}
	least := LeastVent(1e-3, 0.5, density, viscosity, 500)
	if loss := VentLoss(1e-3, least, 0.5, density, viscosity); least <= leastVent || loss > 500 || loss < 499 {
		t.Errorf("least vent %g m costs %g", least, loss)
	}
	if VentRam(1, 1.225, 20) != 245 || VentRam(-1, 1.225, 20) != -245 {
		t.Error("ram at the vent is not the dynamic pressure")
	}
}

func TestCautionsComeWithWhatTheyAreAbout(t *testing.T) {
	t.Parallel()
	always := []Caution{FullFlowRun, LimitOfDiesel, VentOfFlight}
	if got := assess(t, sound()).Cautions; !slices.Equal(got, always) {
		t.Errorf("a sound system is told %v", got)
	}
	for caution, plant := range map[Caution]func(*System){
		FoamStands: func(s *System) { s.Felt = false }, ColdOil: func(s *System) { s.Temperature = 275 },
		OutsideLaws: func(s *System) { s.Temperature, s.OilShare = 235, 0 }, BladderRule: func(s *System) { s.Bladder = true },
		FilterGuessed: func(s *System) { s.FilterLoss = 0 },
	} {
		s := sound()
		plant(&s)
		if got := assess(t, s).Cautions; !slices.Contains(got, caution) {
			t.Errorf("%q is not told: %v", caution, got)
		}
	}
}
