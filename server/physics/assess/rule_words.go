package assess

import "strings"

// ruleFindings says which finding answers for a field of Limits whose figure can be held against that finding's value as it stands.
var ruleFindings = pairings[string, string]{
	{"minimumLiftoffRatio", "liftoff.margin"}, {"minimumApproachRatio", "approach.margin"}, {"minimumLaunchEndRatio", "launch.end_speed"},
	{"minimumTurnRatio", "stall.turn"}, {"minimumClearanceMeters", "climb.clearance"}, {"maximumLaunchSinkMeters", "launch.sink"},
	{"minimumThrustRatio", "thrust.ratio"}, {"maximumSpeedMetersPerSecond", "speed.top"}, {"maximumMassKg", "mass.class"},
	{"maximumHeightMeters", "height.limit"}, {"maximumGustMetersPerSecond", "weather.gust"},
	{"maximumCrosswindMetersPerSecond", "weather.crosswind"}, {"minimumVisibilityMeters", "weather.visibility"},
	{"minimumPeopleDistanceMeters", "separation.people"}, {"minimumStructureDistanceMeters", "separation.structures"},
	{"maximumDensityAltitudeMeters", "air.density"}, {"maximumStallSpeedMetersPerSecond", "stall.speed"},
	{"minimumTipStallMarginDegrees", "stall.tip"}, {"minimumReachRatio", "engine_out.reach"}, {"minimumSunOffsetDegrees", "weather.sun"},
	{"minimumTemperatureCelsius", "weather.temperature"}, {"maximumTemperatureCelsius", "weather.temperature"},
	{"maximumWeatherAgeMinutes", "weather.age"},
}

// ruleShares are the fields of Limits that are a share of a length: their finding's limit grows with them.
var ruleShares = pairings[string, string]{{"maximumStripUseRatio", "launch.distance"}, {"maximumLandingUseRatio", "landing.distance"}}

// ruleFacts are the fields of Limits that a fact answers for.
var ruleFacts = pairings[string, RuleFact]{{"maximumFailSafeSeconds", RuleFactFailSafeDelay}}

// factFindings says which finding a fact bears on.
var factFindings = pairings[RuleFact, string]{
	{RuleFactTakeoffMass, "mass.class"}, {RuleFactEmptyMass, "mass.class"}, {RuleFactStaticThrust, "thrust.ratio"}, {RuleFactHeight, "height.limit"},
	{RuleFactFailSafeDelay, "link_loss.footprint"},
}

// factWord names a fact and its unit.
type factWord struct{ name, unit string }

// factWords names the facts as a sentence does, with their unit.
var factWords = pairings[RuleFact, factWord]{
	{RuleFactTakeoffMass, factWord{"take-off mass", "kg"}}, {RuleFactEmptyMass, factWord{"mass without fuel", "kg"}}, {RuleFactStaticThrust, factWord{"static thrust", "N"}},
	{RuleFactEngineCount, factWord{"number of engines", "1"}}, {RuleFactCircuitAirspeed, factWord{"airspeed of the circuit", "m/s"}},
	{RuleFactHeight, factWord{"height of the circuit", "m"}}, {RuleFactFailSafeDelay, factWord{"delay of the fail-safe", "s"}},
}

var engineWords = pairings[EngineKind, string]{
	{EngineKindTurbine, "turbine"}, {EngineKindDuctedFan, "ducted fan"}, {EngineKindPropeller, "propeller"},
}

// Unit returns the SI symbol of a fact; empty for none.
func (f RuleFact) Unit() string { return factWords.of(f).unit }

// Key names a rule among all packs: "<pack>.<rule>".
func (r *AppliedRule) Key() string { return r.Pack + "." + r.ID }

// Finding returns the id of the rule's own finding, "rule.<pack>.<rule>"; empty for one that only cites.
func (r *AppliedRule) Finding() string {
	if r.ID == "" {
		return ""
	}
	return "rule." + r.Key()
}

// BearsOn returns the finding that the rule bears on: as given, else by its limit or fact, else its own.
func (r *AppliedRule) BearsOn() string {
	for _, id := range []string{r.FindingID, ruleFindings.of(r.Limit), ruleShares.of(r.Limit), factFindings.of(ruleFacts.of(r.Limit)), factFindings.of(r.Fact)} {
		if id != "" {
			return id
		}
	}
	return r.Finding()
}

// RightSide returns which side of the rule's value is the right one: as given for a class, by the name of the field for a limit. A greatest
// value is named so; of every other figure more asks for more.
func (r *AppliedRule) RightSide() RuleSense {
	if r.Kind == RuleKindLimit {
		return LimitSide(r.Limit)
	}
	return r.Sense
}

// LimitSide returns which side of a field of Limits, by its JSON name, is the right one.
func LimitSide(name string) RuleSense {
	if strings.HasPrefix(name, "maximum") {
		return RuleSenseGreatest
	}
	return RuleSenseLeast
}

// sense is the rule's side in the words of a finding.
func (r *AppliedRule) sense() LimitSense {
	switch r.RightSide() {
	case RuleSenseLeast:
		return LimitSenseAtLeast
	case RuleSenseGreatest:
		return LimitSenseAtMost
	default:
		return LimitSenseNone
	}
}

// CoreFigure returns the core's own figure for a field of Limits by its JSON name, and false where it has none or it depends on the launcher.
func CoreFigure(name string) (float64, bool) {
	for _, f := range coreFigures {
		if f.name == name && name != sinkFigure.name {
			return f.core, true
		}
	}
	return 0, false
}
