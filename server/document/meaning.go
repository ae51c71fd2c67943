package document

import (
	"pitgate/server/physics/assess"
	"pitgate/server/physics/weather"
)

// checkMeaning finds what no single field shows: shapes that cross themselves, names that lead nowhere, windows that
// are reversed.
func checkMeaning(target any, found *faults) {
	switch t := target.(type) {
	case *assess.Input:
		checkInput(t, found)
	case *assess.ModelDescription:
		checkModel(t, "", found)
	case *assess.FieldDescription:
		checkField(t, "", found)
	case *assess.LaunchPlan:
		checkLaunch(t, "", found)
	case *assess.DayConditions:
		checkDay(t, "", found)
	case *assess.Limits:
		checkLimits(t, "", found)
	case *RulePack:
		checkRulePack(t, found)
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
	if in.LaunchPlan != nil {
		checkLaunch(in.LaunchPlan, "launchPlan", found)
	}
	if in.Day != nil {
		checkDay(in.Day, "day", found)
	}
	checkConfirmations(in.Confirmations, found)
}

// checkDay wants every time that is given to be one, winds in the order of their times, and no dew above the temperature of the air.
func checkDay(day *assess.DayConditions, path string, found *faults) {
	checkTime(day.Time, join(path, "time"), found)
	for i := range day.WindChanges {
		at := join(index(join(path, "windChanges"), i), "time")
		checkTime(day.WindChanges[i].Time, at, found)
		if i > 0 {
			checkLater(day.WindChanges[i-1].Time, day.WindChanges[i].Time, at, found)
		}
	}
	found.notAbove(join(path, "dewPointCelsius.value"), known(day.DewPointCelsius), known(day.TemperatureCelsius), "temperatureCelsius")
}

// checkLater wants the second of two times to lie after the first; what is no time is refused elsewhere.
func checkLater(first, second, path string, found *faults) {
	before, err := weather.Moment(first)
	after, err2 := weather.Moment(second)
	if err == nil && err2 == nil && after <= before {
		found.add(path, "must lie after the time before, "+first+", got "+second)
	}
}

func checkTime(text, path string, found *faults) {
	if text == "" {
		return
	}
	if _, err := weather.Moment(text); err != nil {
		found.add(path, "must be a time with its offset, such as 2026-05-16T09:40:00Z, got "+text)
		return
	}
	checkYear(text, path, found)
}

// checkPullTest wants stretch and force to rise from point to point, as far as the stretch of the launch.
func checkPullTest(bungee *assess.Bungee, path string, found *faults) {
	for i := range bungee.PullTest {
		point, at := &bungee.PullTest[i], index(join(path, "pullTest"), i)
		if i == 0 {
			continue
		}
		before := &bungee.PullTest[i-1]
		if here, last := number(point.StretchMeters), number(before.StretchMeters); here <= last {
			found.add(join(at, "stretchMeters"), "must be greater than at the point before, "+plain(last)+", got "+plain(here))
		}
		if here, last := number(point.ForceNewtons), number(before.ForceNewtons); here < last {
			found.add(join(at, "forceNewtons"), "must not be less than at the point before, "+plain(last)+", got "+plain(here))
		}
	}
	stretch := bungee.StretchMeters
	if n := len(bungee.PullTest); n > 0 && stretch != nil && stretch.Value != nil {
		if end := number(bungee.PullTest[n-1].StretchMeters); *stretch.Value > end {
			found.add(join(path, "stretchMeters")+".value", "must not be beyond the pull test, which ends at "+plain(end)+", got "+plain(*stretch.Value))
		}
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
	checkRules(limits.Rules, join(path, "rules"), found)
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
	found.notAbove(join(path, "minimumTemperatureCelsius"), limits.MinimumTemperatureCelsius, limits.MaximumTemperatureCelsius, "maximumTemperatureCelsius")
}
