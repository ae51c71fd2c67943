package fuel

// Caution is what a builder should know beside the figures.
type Caution string

// Cautions.
const (
	// FullFlowRun always holds.
	FullFlowRun Caution = "a leak on the suction side lets air in and no fuel out: run full flow for minutes and watch a clear line for bubbles"
	// FoamStands holds where a tank without felt or bladder may foam.
	FoamStands Caution = "shaken fuel foams and the pick-up sucks the foam: let it stand five to ten minutes after filling or transport"
	// ColdOil holds from 5 degrees down with oil in the mix.
	ColdOil Caution = "cold oil thickens and a gear pump may stick at the first start"
	// OutsideLaws holds where the temperature is outside those of the liquid.
	OutsideLaws Caution = "the fuel is colder or hotter than its law of viscosity holds: it may wax or boil"
	// BladderRule holds for bladder tanks.
	BladderRule Caution = "some authorities do not allow a bladder as the main tank"
	// NearJump holds where a suction line is near Reynolds number 2300.
	NearJump Caution = "a suction line is close to turning turbulent, where its loss jumps by two thirds"
	// FilterGuessed holds where the loss of the filter was not measured.
	FilterGuessed Caution = "the loss of the filter is a usual one; it grows as the filter fills"
	// VentOfFlight always holds for a vented tank.
	VentOfFlight Caution = "a vent that faces the wind or sits in suction changes the tank's pressure in flight only"
	// LimitOfDiesel always holds.
	LimitOfDiesel Caution = "the suction at which air comes out was published for diesel plant, within a third"
)

// coldPump is where oil in the mix thickens, K.
const coldPump = 278.15

// cautions lists what holds for a system.
func (s *System) cautions(r *Result) []Caution {
	out := []Caution{FullFlowRun, LimitOfDiesel}
	for _, one := range []struct {
		caution Caution
		holds   bool
	}{
		{FoamStands, !s.Felt && !s.Bladder},
		{ColdOil, s.OilShare > 0 && s.Temperature <= coldPump},
		{OutsideLaws, !r.Mix.InRange},
		{BladderRule, s.Bladder},
		{NearJump, r.Transient},
		{FilterGuessed, s.Filter && s.FilterLoss == 0},
		{VentOfFlight, s.Vent && !s.Bladder},
	} {
		if one.holds {
			out = append(out, one.caution)
		}
	}
	return out
}
