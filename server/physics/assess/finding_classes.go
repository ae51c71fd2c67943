package assess

import "strings"

// findingClasses says of each finding whom it hurts when its limit is not met.
var findingClasses = pairings[FindingClass, []string]{
	{FindingClassThirdParty, []string{
		"circuit.inside", "link_loss.footprint", "separation.people", "separation.structures", "height.limit", "mass.class", "field.permission",
		"visual.range", "weather.visibility", "weather.light", "launch.engine_failure", "engine_out.footprint", "speed.top",
		"heat.ground",
	}},
	{FindingClassModelLoss, []string{
		"stall.speed", "stall.tip", "stall.turn", "stall.gust", "liftoff.margin", "thrust.ratio", "launch.distance", "launch.end_speed", "launch.sink",
		"launch.tail_gap", "launch.abort", "climb.clearance", "approach.margin", "landing.distance", "landing.go_around", "engine_out.reach",
		"balance.margin_full", "balance.margin_empty", "balance.margin_burn", "balance.launch_trim", "roll.reversal", "servo.torque",
		"speed.never_exceed", "launch.dolly", "weather.crosswind", "weather.gust", "weather.later", "weather.frost", "weather.sun", "weather.wake",
	}},
	{FindingClassHandling, []string{
		"air.density", "balance.trim", "pitch.sensitivity", "pitch.damping", "fin.stiffness", "roll.rate", "mass.reconciled", "weather.temperature",
		"weather.age",
	}},
}

// familyClasses are the classes of findings by the first part of their id, for those that are not named one by one.
var familyClasses = pairings[string, FindingClass]{
	{"rule", FindingClassThirdParty}, {"radio", FindingClassThirdParty}, {"packs", FindingClassThirdParty},
	{"engine", FindingClassModelLoss},
	{"fuel", FindingClassModelLoss}, {"heat", FindingClassModelLoss}, {"loads", FindingClassModelLoss}, {"structure", FindingClassModelLoss},
	{"linkage", FindingClassModelLoss}, {"controls", FindingClassModelLoss},
}

// classById are the findings that are named one by one.
var classById = func() map[string]FindingClass {
	out := map[string]FindingClass{}
	for _, class := range findingClasses {
		for _, id := range class.value {
			out[id] = class.key
		}
	}
	return out
}()

// classOf returns the class of a finding; one that nobody put into a class is held to the strictest.
func classOf(id string) (class FindingClass, known bool) {
	if class, known = classById[id]; known {
		return class, true
	}
	family, _, _ := strings.Cut(id, ".")
	if class, known = familyClasses.find(family); known {
		return class, true
	}
	return FindingClassThirdParty, false
}
