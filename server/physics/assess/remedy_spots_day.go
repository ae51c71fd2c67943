package assess

import (
	"math"
	"slices"

	"pitgate/server/physics/elementary"
)

const (
	windSpeedPath     = "day.windSpeedMetersPerSecond"
	windDirectionPath = "day.windDirectionDegrees"
	gustPath          = "day.gustSpeedMetersPerSecond"
)

// mean returns the mean wind of a document, and false where it is not given.
func (s *scene) mean() (float64, bool) {
	if s.in.Day == nil || s.in.Day.WindSpeedMetersPerSecond == nil || s.in.Day.WindSpeedMetersPerSecond.Value == nil {
		return 0, false
	}
	return *s.in.Day.WindSpeedMetersPerSecond.Value, true
}

// headwindSpots is the wind straight along the launch; gusts keep their excess over it.
func headwindSpots(s *scene) []spot {
	mean, given := s.mean()
	if !given || len(s.base.launch.missing) > 0 || len(s.base.launch.placeMissing) > 0 || len(s.base.air.windMissing) > 0 {
		return nil
	}
	heading := math.Mod(degrees(s.base.launch.heading)+360, 360)
	along := float64(mean * elementary.Cos(radians(valueOr(s.in.Day.WindDirectionDegrees, 0)-heading)))
	return []spot{{
		paths: []string{windSpeedPath, windDirectionPath, gustPath}, chain: []string{windSpeedPath}, now: max(0, along),
		set: func(in *Input, x float64) {
			day := in.Day
			if day.GustSpeedMetersPerSecond != nil && day.GustSpeedMetersPerSecond.Value != nil {
				day.GustSpeedMetersPerSecond = withValue(day.GustSpeedMetersPerSecond, x+max(0, *day.GustSpeedMetersPerSecond.Value-mean))
			}
			day.WindSpeedMetersPerSecond = withValue(day.WindSpeedMetersPerSecond, x)
			day.WindDirectionDegrees = withValue(day.WindDirectionDegrees, heading)
		},
	}}
}

// windSpots is the mean wind from where it comes; gusts fall in proportion.
func windSpots(s *scene) []spot {
	mean, given := s.mean()
	if !given || !(mean > 0) {
		return nil
	}
	return []spot{{
		paths: []string{windSpeedPath, gustPath}, chain: []string{windSpeedPath}, now: mean,
		set: func(in *Input, x float64) {
			if gust := in.Day.GustSpeedMetersPerSecond; gust != nil && gust.Value != nil {
				in.Day.GustSpeedMetersPerSecond = withValue(gust, *gust.Value*x/mean)
			}
			in.Day.WindSpeedMetersPerSecond = withValue(in.Day.WindSpeedMetersPerSecond, x)
		},
	}}
}

// gustSpots is the highest gust; the mean wind is no stronger than it.
func gustSpots(s *scene) []spot {
	mean, given := s.mean()
	list := quantitySpot(s, gustPath, "", func(in *Input) **Quantity {
		if in.Day == nil {
			return nil
		}
		return &in.Day.GustSpeedMetersPerSecond
	})
	if !given || len(list) == 0 {
		return nil
	}
	set := list[0].set
	list[0].paths = []string{gustPath, windSpeedPath}
	list[0].set = func(in *Input, x float64) {
		set(in, x)
		if x < mean {
			in.Day.WindSpeedMetersPerSecond = withValue(in.Day.WindSpeedMetersPerSecond, x)
		}
	}
	return list
}

// stripSpots is the launch the other way along its strip.
func stripSpots(s *scene) []spot {
	plan := s.in.LaunchPlan
	if plan == nil || plan.Method != LaunchMethodWheels || s.in.Field == nil || plan.HeadingDegrees != nil {
		return nil
	}
	other := !yes(plan.StripReversed)
	return []spot{{
		paths: []string{"launchPlan.stripReversed"}, chain: []string{"field.strips"},
		choices: []choice{{"the other way along the strip", func(in *Input) { in.LaunchPlan.StripReversed = &other }}},
	}}
}

// landingSpots is the landing the other way along its place.
func landingSpots(s *scene) []spot {
	if !s.base.landing.flown {
		return nil
	}
	heading := math.Mod(degrees(s.base.landing.place.heading)+180+360, 360)
	return []spot{{
		paths: []string{"launchPlan.landing.headingDegrees"}, chain: []string{s.base.landing.place.path},
		choices: []choice{{sayNumbers("to %.0f degrees", heading), func(in *Input) {
			landing := LandingPlan{}
			if in.LaunchPlan.Landing != nil {
				landing = *in.LaunchPlan.Landing
			}
			landing.HeadingDegrees = &heading
			in.LaunchPlan.Landing = &landing
		}}},
	}}
}

// drySpots is a day on which the ground is dry.
func drySpots(s *scene) []spot {
	if s.in.Day == nil || s.in.Day.SurfaceState == "" || s.in.Day.SurfaceState == SurfaceStateDry {
		return nil
	}
	return []spot{{
		paths:   []string{"day.surfaceState"},
		choices: []choice{{"dry", func(in *Input) { in.Day.SurfaceState = SurfaceStateDry }}},
	}}
}

// mownSpots is a strip whose long grass is mown.
func mownSpots(s *scene) []spot {
	if s.in.Field == nil {
		return nil
	}
	var list []spot
	for i := range s.in.Field.Strips {
		if s.in.Field.Strips[i].Surface == SurfaceLongGrass {
			list = append(list, spot{
				title: s.in.Field.Strips[i].Name, paths: []string{at("field.strips", i) + ".surface"},
				choices: []choice{{"mown short", func(in *Input) { in.Field.Strips[i].Surface = SurfaceShortGrass }}},
			})
		}
	}
	return list
}

// failSafeSpots are the other things that a fail-safe may do.
func failSafeSpots(s *scene) []spot {
	if s.in.Model == nil || s.in.Model.Radio == nil {
		return nil
	}
	names := map[FailSafeAction]string{FailSafeActionCutNeutral: "engine cut, controls in the middle", FailSafeActionCutSpiral: "engine cut, a spiral"}
	found := spot{paths: []string{"model.radio.failSafeAction"}}
	for _, action := range []FailSafeAction{FailSafeActionCutNeutral, FailSafeActionCutSpiral} {
		if s.in.Model.Radio.FailSafeAction != action {
			found.choices = append(found.choices, choice{names[action], func(in *Input) { in.Model.Radio.FailSafeAction = action }})
		}
	}
	return []spot{found}
}

// carbonSpots are antennas that lie inside a carbon part.
func carbonSpots(s *scene) []spot {
	if s.in.Model == nil || s.in.Model.Radio == nil {
		return nil
	}
	var list []spot
	for i, antenna := range s.in.Model.Radio.Antennas {
		if !yes(antenna.InsideCarbon) {
			continue
		}
		outside := false
		list = append(list, spot{
			title: antenna.Name, paths: []string{at("model.radio.antennas", i) + ".insideCarbon"}, antennas: true,
			choices: []choice{{"moved outside", func(in *Input) { in.Model.Radio.Antennas[i].InsideCarbon = &outside }}},
		})
	}
	return list
}

// addedSpots is one more antenna: upright, or across.
func addedSpots(s *scene) []spot {
	if s.in.Model == nil || s.in.Model.Radio == nil || len(s.in.Model.Radio.Antennas) == 0 {
		return nil
	}
	added := func(azimuth, elevation float64) func(in *Input) {
		return func(in *Input) {
			in.Model.Radio.Antennas = append(slices.Clone(in.Model.Radio.Antennas), Antenna{Name: "added", AzimuthDegrees: &azimuth, ElevationDegrees: &elevation})
		}
	}
	return []spot{{
		paths: []string{"model.radio.antennas"}, antennas: true,
		choices: []choice{{"upright", added(0, 90)}, {"across", added(90, 0)}},
	}}
}
