package document

import "pitgate/server/physics/assess"

// checkMeaning finds what no single field shows: shapes that cross themselves, names that lead nowhere, windows that
// are reversed, and quantities whose sign or size nothing in the world can have.
func checkMeaning(target any, found *faults) {
	checkQuantities(target, found)
	switch t := target.(type) {
	case *assess.Input:
		checkInput(t, found)
	case *assess.ModelDescription:
		checkModel(t, "", found)
	case *assess.FieldDescription:
		checkField(t, "", found)
	case *assess.Limits:
		checkLimits(t, "", found)
	}
}

func checkInput(in *assess.Input, found *faults) {
	if in.Model != nil {
		checkModel(in.Model, "model", found)
	}
	if in.Field != nil {
		checkField(in.Field, "field", found)
	}
	if in.LaunchPlan != nil && in.Field != nil {
		checkPlan(in.LaunchPlan, in.Field, found)
	}
	if in.Limits != nil {
		checkLimits(in.Limits, "limits", found)
	}
}

// checkPlan looks up every place that the plan names.
func checkPlan(plan *assess.LaunchPlan, field *assess.FieldDescription, found *faults) {
	if plan.Strip != "" && !hasStrip(field, plan.Strip) {
		found.add("launchPlan.strip", "names no strip of the field: "+plan.Strip)
	}
	if plan.LaunchSpot != "" && !hasSpot(field, plan.LaunchSpot) {
		found.add("launchPlan.launchSpot", "names no launch spot of the field: "+plan.LaunchSpot)
	}
	if plan.LandingPlace != "" && !hasStrip(field, plan.LandingPlace) && !hasLandingArea(field, plan.LandingPlace) {
		found.add("launchPlan.landingPlace", "names no strip and no landing area of the field: "+plan.LandingPlace)
	}
}

func hasStrip(field *assess.FieldDescription, name string) bool {
	for _, strip := range field.Strips {
		if strip.Name == name {
			return true
		}
	}
	return false
}

func hasSpot(field *assess.FieldDescription, name string) bool {
	for _, spot := range field.LaunchSpots {
		if spot.Name == name {
			return true
		}
	}
	return false
}

func hasLandingArea(field *assess.FieldDescription, name string) bool {
	for _, area := range field.LandingAreas {
		if area.Name == name {
			return true
		}
	}
	return false
}

// The window of the static margin where the limits give none, as in the contract.
const leastStaticMargin, greatestStaticMargin = 0.05, 0.20

func checkLimits(limits *assess.Limits, path string, found *faults) {
	low, high := leastStaticMargin, greatestStaticMargin
	if limits.MinimumStaticMarginRatio != nil {
		low = *limits.MinimumStaticMarginRatio
	}
	if limits.MaximumStaticMarginRatio != nil {
		high = *limits.MaximumStaticMarginRatio
	}
	if low >= high {
		found.add(join(path, "maximumStaticMarginRatio"),
			"must be greater than minimumStaticMarginRatio "+plain(low)+", got "+plain(high))
	}
}
