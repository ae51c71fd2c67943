package document

import (
	"fmt"
	"strings"

	"pitgate/server/physics/assess"
)

// known is the number of a quantity, where it has one.
func known(q *assess.Quantity) *float64 {
	if q == nil {
		return nil
	}
	return q.Value
}

// notAbove refuses a number that is greater than another one that bounds it.
func (f *faults) notAbove(path string, value, most *float64, called string) {
	if value != nil && most != nil && *value > *most {
		f.add(path, "must not be greater than "+called+", "+plain(*most)+", got "+plain(*value))
	}
}

// rising wants each number of a list to be greater than the one before, or, where equal ones may stand, no less.
func (f *faults) rising(count int, equal bool, at func(int) *float64, path func(int) string) {
	for i := 1; i < count; i++ {
		before, here := at(i-1), at(i)
		switch {
		case before == nil || here == nil || *here > *before || (equal && *here == *before):
		case equal:
			f.add(path(i), "must not be less than at the point before, "+plain(*before)+", got "+plain(*here))
		default:
			f.add(path(i), "must be greater than at the point before, "+plain(*before)+", got "+plain(*here))
		}
	}
}

// checkEngine wants idle to be no more than full power, and a hub within its disc.
func checkEngine(e *assess.Engine, path string, found *faults) {
	found.notAbove(join(path, "idleThrustNewtons.value"), known(e.IdleThrustNewtons), known(e.StaticThrustNewtons), "staticThrustNewtons")
	found.notAbove(join(path, "idleFuelFlowGramsPerMinute.value"), known(e.IdleFuelFlowGramsPerMinute), known(e.FullFuelFlowGramsPerMinute),
		"fullFuelFlowGramsPerMinute")
	if hub, disc := e.HubDiameterMeters, e.DiscDiameterMeters; hub != nil && disc != nil && *hub >= *disc {
		found.add(join(path, "hubDiameterMeters"), "must be less than discDiameterMeters, "+plain(*disc)+", got "+plain(*hub))
	}
}

// checkFuel wants what cannot be used to be no more than all tanks hold.
func checkFuel(model *assess.ModelDescription, path string, found *faults) {
	if model.FuelSystem == nil || model.Mass == nil || len(model.Mass.Tanks) == 0 {
		return
	}
	var all float64
	for i := range model.Mass.Tanks {
		held := known(model.Mass.Tanks[i].CapacityLiters)
		if held == nil {
			return
		}
		all += *held
	}
	found.notAbove(join(path, "fuelSystem.unusableLiters.value"), known(model.FuelSystem.UnusableLiters), &all, "all tanks hold")
}

func checkPacks(packs []assess.Pack, path string, found *faults) {
	for i := range packs {
		found.notAbove(join(index(path, i), "meanCurrentAmperes.value"), known(packs[i].MeanCurrentAmperes), known(packs[i].PeakCurrentAmperes), "peakCurrentAmperes")
	}
}

// checkStructure wants spars from root to tip, and walls that fit into the part that they are of.
func checkStructure(s *assess.Structure, path string, found *faults) {
	spars := []struct {
		name string
		list []assess.SparStation
	}{{"wingSpar", s.WingSpar}, {"canardSpar", s.CanardSpar}, {"tailplaneSpar", s.TailplaneSpar}}
	for _, spar := range spars {
		at := func(i int) string { return index(join(path, spar.name), i) }
		found.rising(len(spar.list), false, func(i int) *float64 { return spar.list[i].SpanRatio }, func(i int) string { return join(at(i), "spanRatio") })
		for i := range spar.list {
			checkParts(spar.list[i].Parts, join(at(i), "parts"), found)
		}
	}
	checkParts(s.Boom, join(path, "boom"), found)
	if s.Joiner != nil && s.Joiner.Part != nil {
		checkPart(s.Joiner.Part, join(path, "joiner.part"), found)
	}
}

func checkParts(parts []assess.SparPart, path string, found *faults) {
	for i := range parts {
		checkPart(&parts[i], index(path, i), found)
	}
}

func checkPart(part *assess.SparPart, path string, found *faults) {
	found.notAbove(join(path, "wallThicknessMeters.value"), known(part.WallThicknessMeters), half(known(part.OuterDiameterMeters)), "half the outer diameter")
	found.notAbove(join(path, "capThicknessMeters.value"), known(part.CapThicknessMeters), half(known(part.DepthMeters)), "half the depth")
	found.notAbove(join(path, "webThicknessMeters.value"), known(part.WebThicknessMeters), known(part.WidthMeters), "the width")
}

func half(of *float64) *float64 {
	if of == nil {
		return nil
	}
	value := *of / 2
	return &value
}

// checkLaunch wants stroke and rails to run forward.
func checkLaunch(plan *assess.LaunchPlan, path string, found *faults) {
	found.rising(len(plan.Catapult), false, func(i int) *float64 { return plan.Catapult[i].TravelMeters },
		func(i int) string { return join(index(join(path, "catapult"), i), "travelMeters") })
	if plan.Ramp != nil {
		checkProfile(plan.Ramp.RailProfile, join(path, "ramp.railProfile"), found)
	}
	if plan.Bungee != nil {
		checkPullTest(plan.Bungee, join(path, "bungee"), found)
	}
}

// checkPermission wants dates and hours to be such, in their order, and quiet hours to have both ends.
func checkPermission(p *assess.Permission, path string, found *faults) {
	checkDate(p.ValidFromDate, join(path, "validFromDate"), found)
	checkDate(p.ValidToDate, join(path, "validToDate"), found)
	if p.ValidFromDate != "" && p.ValidToDate != "" && p.ValidToDate < p.ValidFromDate {
		found.add(join(path, "validToDate"), "must not lie before validFromDate "+p.ValidFromDate+", got "+p.ValidToDate)
	}
	checkHour(p.QuietFrom, join(path, "quietFrom"), found)
	checkHour(p.QuietTo, join(path, "quietTo"), found)
	switch {
	case p.QuietFrom != "" && p.QuietTo == "":
		found.add(join(path, "quietTo"), "must be given with quietFrom")
	case p.QuietFrom == "" && p.QuietTo != "":
		found.add(join(path, "quietFrom"), "must be given with quietTo")
	}
}

// checkHour wants an hour that is given to be one of the day; 24:00 is its end.
func checkHour(text, path string, found *faults) {
	if text != "" && text != "24:00" && (text > "23:59" || text[3:] > "59") {
		found.add(path, "must be an hour of the day such as 20:00, got "+text)
	}
}

// checkLines refuses a line of one point.
func checkLines(lines []assess.NamedLine, path string, found *faults) {
	for i := range lines {
		if len(lines[i].Points) == 1 {
			found.add(join(index(path, i), "points"), "must have at least 2 points, got 1")
		}
	}
}

// checkConfirmations wants dates, and no rule confirmed twice.
func checkConfirmations(list []assess.RuleConfirmation, found *faults) {
	seen := map[string]bool{}
	for i := range list {
		at := index("confirmations", i)
		checkDate(list[i].Date, join(at, "date"), found)
		if seen[list[i].Rule] {
			found.add(join(at, "rule"), "stands twice: "+list[i].Rule)
		}
		seen[list[i].Rule] = true
	}
}

// checkMeasured refuses two results in the place of one quantity.
func checkMeasured(list []assess.MeasuredResult, path string, found *faults) {
	seen := map[string]bool{}
	for i := range list {
		if seen[list[i].QuantityID] {
			found.add(join(index(path, i), "quantityId"), "stands twice: "+list[i].QuantityID)
		}
		seen[list[i].QuantityID] = true
	}
}

// The years in which a document's days may lie: who flew before is not asked here, and who flies after will have other rules.
const firstYear, lastYear = "1900", "2200"

// checkYear refuses a date or a time before or after all that can be meant.
func checkYear(text, path string, found *faults) {
	if year, _, _ := strings.Cut(text, "-"); year < firstYear || year > lastYear {
		found.add(path, fmt.Sprintf("must lie in the years %s to %s, got %s", firstYear, lastYear, text))
	}
}
