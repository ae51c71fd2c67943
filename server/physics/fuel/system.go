package fuel

import "fmt"

const (
	// UsualFilterLoss is the loss of a clean filter at full flow where none was measured, Pa (common practice).
	UsualFilterLoss = 2000.0
	// standardOutside is the outside pressure where none is given, Pa.
	standardOutside = 101325.0
	// oilLimit is the greatest share of oil a mix is computed for.
	oilLimit = 0.5
)

// System is a feed system of one pump, and what it must deliver.
type System struct {
	Flow        float64 // full fuel flow, kg/s
	Fuel        Liquid
	OilShare    float64 // oil in the mix by volume, 0 to 0.5; OilShare turns a ratio into it
	Temperature float64 // of the fuel, K
	Density     float64 // of the mix as weighed, kg/m3; 0: from the fuel
	Outside     float64 // outside pressure, Pa; 0: 101325
	Lines       []Line
	Filter      bool
	FilterLoss  float64 // at full flow, Pa; 0 with a filter: UsualFilterLoss
	PumpHeight  float64 // of the pump above the lowest pick-up, model level, m
	PumpAhead   float64 // of the pump ahead of the tank, m
	Loads       []Load  // cases of flight; Loads gives the usual ones
	Turbine     bool    // true when a bubble stops the engine: an air trap is required
	Trap        bool
	TrapVolume  float64 // m3; 0: not told
	Felt        bool    // pick-up of felt
	Bladder     bool    // bladder tank without air: no trap required
	Vent        bool
	VentBore    float64 // m; 0: not told
}

// Case is the suction at the pump in one load.
type Case struct {
	Load    Load
	Head    float64 // of the column of fuel, Pa
	Suction float64 // at the pump: lines, filter, vent and head, Pa
	Margin  float64 // AirReleaseSuction less Suction, Pa; below 0 air comes out
	Air     float64 // volume of air that comes out over that of the fuel, upper bound
}

// TrapCheck compares the air trap with what is required.
type TrapCheck struct {
	Required     bool
	Present      bool
	Seconds      float64 // of air at full flow; 0 without a told volume
	LeastSeconds float64
	LeastVolume  float64 // m3
}

// VentCheck is the suction in the tank at full flow.
type VentCheck struct {
	Present   bool
	Suction   float64 // Pa; 0 without a told bore
	LeastBore float64 // m
	Tight     bool    // Suction above VentLimit, or bore below LeastBore
}

// Fault is what is wrong with a feed system.
type Fault string

// Faults, worst first.
const (
	NoTrap      Fault = "no air trap between tank and pump"
	AirReleased Fault = "suction releases air from the fuel"
	NoVent      Fault = "tank without a vent"
	TightVent   Fault = "vent too narrow"
	SmallTrap   Fault = "air trap too small"
	NoFilter    Fault = "no filter ahead of the pump"
	FastLine    Fault = "fuel faster than usual in a suction line"
	ThinMargin  Fault = "suction above what is planned for"
)

// Result is what a feed system does at full flow.
type Result struct {
	Mix       Mix
	Flow      float64    // volume flow, m3/s
	Lines     []LineLoss // as System.Lines
	LineLoss  float64    // of the suction lines, Pa
	Filter    float64    // Pa
	Cases     []Case     // as System.Loads
	Worst     int        // index of the case of the greatest suction
	Trap      TrapCheck
	Vent      VentCheck
	Faults    []Fault
	Fixes     []Fix // smallest first; empty when nothing is short
	Cautions  []Caution
	HasCases  bool // false when no load was given: Worst says nothing
	Transient bool // true when a suction line runs near Reynolds number 2300, where its loss may jump by two thirds
}

// WorstSuction returns the greatest suction at the pump (Pa), 0 without a case.
func (r *Result) WorstSuction() float64 {
	if !r.HasCases {
		return 0
	}
	return r.Cases[r.Worst].Suction
}

// Check returns an error that names the first impossible field.
func (s *System) Check() error {
	for _, err := range []error{
		checkPositive("flow", s.Flow), checkPositive("fuel.density15", s.Fuel.Density15),
		checkWithin("oilShare", s.OilShare, 0, oilLimit), checkWithin("temperature", s.Temperature, 150, 450),
		checkNotNegative("density", s.Density), checkNotNegative("outside", s.Outside),
		checkNotNegative("filterLoss", s.FilterLoss), checkWithin("pumpHeight", s.PumpHeight, -10, 10),
		checkWithin("pumpAhead", s.PumpAhead, -20, 20), checkNotNegative("trapVolume", s.TrapVolume),
		checkWithin("ventBore", s.VentBore, 0, 0.1), s.checkLiquid(), s.checkLines(), s.checkLoads(),
	} {
		if err != nil {
			return err
		}
	}
	return nil
}

// checkLiquid names what of the fuel cannot be.
func (s *System) checkLiquid() error {
	f := s.Fuel
	for _, err := range []error{
		checkWithin("fuel.density15", f.Density15, 300, 3000), checkWithin("fuel.slope", f.Slope, 0, 3),
		checkWithin("fuel.coldValue", f.ColdValue, 0.4e-6, 1), checkWithin("fuel.warmValue", f.WarmValue, 0.4e-6, f.ColdValue),
		checkPositive("fuel.coldAt", f.ColdAt), checkWithin("fuel.warmAt", f.WarmAt, f.ColdAt+1, 600),
	} {
		if err != nil {
			return err
		}
	}
	return nil
}

// checkLines names the line that cannot be.
func (s *System) checkLines() error {
	for i, line := range s.Lines {
		field := fmt.Sprintf("lines[%d].", i)
		for _, err := range []error{
			checkWithin(field+"length", line.Length, 1e-4, 100), checkWithin(field+"bore", line.Bore, 1e-4, 0.5),
			checkWithin(field+"elbows", float64(line.Elbows), 0, 1000),
		} {
			if err != nil {
				return err
			}
		}
	}
	return nil
}

// checkLoads names the load that cannot be.
func (s *System) checkLoads() error {
	for i, load := range s.Loads {
		field := fmt.Sprintf("loads[%d].", i)
		if err := checkWithin(field+"normal", load.Normal, -100, 100); err != nil {
			return err
		}
		if err := checkWithin(field+"forward", load.Forward, -100, 100); err != nil {
			return err
		}
	}
	return nil
}

// mix returns the liquid in the lines; a weighed density replaces the computed one.
func (s *System) mix() Mix {
	mix := Mixed(s.Fuel, TurbineOil, s.OilShare, s.Temperature)
	if s.Density > 0 {
		mix.Density = s.Density
	}
	return mix
}

// outside returns the outside pressure.
func (s *System) outside() float64 {
	if s.Outside > 0 {
		return s.Outside
	}
	return standardOutside
}

// filter returns the loss of the filter at full flow.
func (s *System) filter() float64 {
	if !s.Filter {
		return 0
	}
	if s.FilterLoss > 0 {
		return s.FilterLoss
	}
	return UsualFilterLoss
}
