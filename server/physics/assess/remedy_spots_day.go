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
	if s.in.Day == nil || !given(s.in.Day.WindSpeedMetersPerSecond) {
		return 0, false
	}
	return *s.in.Day.WindSpeedMetersPerSecond.Value, true
}

// headwindSpots is the wind straight along the launch; gusts keep their excess over it.
func headwindSpots(s *scene) {
	mean, known := s.mean()
	if !known || len(s.base.launch.missing) > 0 || len(s.base.launch.placeMissing) > 0 || len(s.base.air.windMissing) > 0 {
		return
	}
	heading := math.Mod(degrees(s.base.launch.heading)+360, 360)
	along := float64(mean * elementary.Cos(radians(valueOr(s.in.Day.WindDirectionDegrees, 0)-heading)))
	s.add(spot{
		paths: []string{windSpeedPath, windDirectionPath, gustPath}, chain: []string{windSpeedPath}, now: max(0, along),
		set: func(in *Input, x float64) {
			day := in.Day
			if given(day.GustSpeedMetersPerSecond) {
				day.GustSpeedMetersPerSecond = withValue(day.GustSpeedMetersPerSecond, x+max(0, *day.GustSpeedMetersPerSecond.Value-mean))
			}
			day.WindSpeedMetersPerSecond = withValue(day.WindSpeedMetersPerSecond, x)
			day.WindDirectionDegrees = withValue(day.WindDirectionDegrees, heading)
		},
	})
}

// windSpots is the mean wind from where it comes; gusts fall in proportion.
func windSpots(s *scene) {
	mean, known := s.mean()
	if !known || !(mean > 0) {
		return
	}
	s.add(spot{
		paths: []string{windSpeedPath, gustPath}, chain: []string{windSpeedPath}, now: mean,
		set: func(in *Input, x float64) {
			if gust := in.Day.GustSpeedMetersPerSecond; given(gust) {
				in.Day.GustSpeedMetersPerSecond = withValue(gust, *gust.Value*x/mean)
			}
			in.Day.WindSpeedMetersPerSecond = withValue(in.Day.WindSpeedMetersPerSecond, x)
		},
	})
}

// gustSpots is the highest gust; the mean wind is no stronger than it.
func gustSpots(s *scene) {
	mean, known := s.mean()
	if !known || !given(s.in.Day.GustSpeedMetersPerSecond) {
		return
	}
	s.add(spot{
		paths: []string{gustPath, windSpeedPath}, now: *s.in.Day.GustSpeedMetersPerSecond.Value,
		set: func(in *Input, x float64) {
			in.Day.GustSpeedMetersPerSecond = withValue(in.Day.GustSpeedMetersPerSecond, x)
			if x < mean {
				in.Day.WindSpeedMetersPerSecond = withValue(in.Day.WindSpeedMetersPerSecond, x)
			}
		},
	})
}

// stripSpots is the launch the other way along its strip.
func stripSpots(s *scene) {
	plan := s.in.LaunchPlan
	if plan == nil || plan.Method != LaunchMethodWheels || s.in.Field == nil || plan.HeadingDegrees != nil {
		return
	}
	other := !yes(plan.StripReversed)
	s.choose("", "launchPlan.stripReversed", "the other way along the strip", func(in *Input) { in.LaunchPlan.StripReversed = &other }).chain = []string{"field.strips"}
}

// landingSpots is the landing the other way along its place.
func landingSpots(s *scene) {
	place := &s.base.landing.place
	if !s.base.landing.flown {
		return
	}
	heading := math.Mod(degrees(place.heading)+180+360, 360)
	s.choose("", "launchPlan.landing.headingDegrees", sayNumbers("to %.0f degrees", heading), func(in *Input) {
		in.LaunchPlan.ownLanding().HeadingDegrees = &heading
	}).chain = []string{place.path}
}

// drySpots is a day on which the ground is dry.
func drySpots(s *scene) {
	if s.in.Day != nil && s.in.Day.SurfaceState != "" && s.in.Day.SurfaceState != SurfaceStateDry {
		s.choose("", "day.surfaceState", "dry", func(in *Input) { in.Day.SurfaceState = SurfaceStateDry })
	}
}

// mownSpots is a strip whose long grass is mown.
func mownSpots(s *scene) {
	if s.in.Field == nil {
		return
	}
	for i := range s.in.Field.Strips {
		if strip := &s.in.Field.Strips[i]; strip.Surface == SurfaceLongGrass {
			s.choose(strip.Name, at("field.strips", i)+".surface", "mown short", func(in *Input) { in.Field.Strips[i].Surface = SurfaceShortGrass })
		}
	}
}

// radio returns the radio of a document's model; nothing in it where there is none.
func (s *scene) radio() *RadioLink {
	if s.in.Model == nil || s.in.Model.Radio == nil {
		return &RadioLink{}
	}
	return s.in.Model.Radio
}

// failSafeActions are the settings of a fail-safe that a remedy may choose.
var failSafeActions = []struct {
	action FailSafeAction
	title  string
}{{FailSafeActionCutNeutral, "engine cut, controls in the middle"}, {FailSafeActionCutSpiral, "engine cut, a spiral"}}

// failSafeSpots are the other things that a fail-safe may do.
func failSafeSpots(s *scene) {
	if s.in.Model == nil || s.in.Model.Radio == nil {
		return
	}
	found := spot{paths: []string{"model.radio.failSafeAction"}}
	for i := range failSafeActions {
		if one := &failSafeActions[i]; s.in.Model.Radio.FailSafeAction != one.action {
			found.choices = append(found.choices, choice{one.title, func(in *Input) { in.Model.Radio.FailSafeAction = one.action }})
		}
	}
	s.add(found)
}

// carbonSpots are antennas that lie inside a carbon part.
func carbonSpots(s *scene) {
	for i := range s.radio().Antennas {
		if antenna := &s.radio().Antennas[i]; yes(antenna.InsideCarbon) {
			s.choose(antenna.Name, at("model.radio.antennas", i)+".insideCarbon", "moved outside", func(in *Input) {
				in.Model.Radio.Antennas[i].InsideCarbon = choiceOf(false)
			}).antennas = true
		}
	}
}

// addedSpots is one more antenna: upright, or across.
func addedSpots(s *scene) {
	if len(s.radio().Antennas) == 0 {
		return
	}
	added := func(azimuth, elevation float64) func(in *Input) {
		return func(in *Input) {
			in.Model.Radio.Antennas = append(slices.Clone(in.Model.Radio.Antennas), Antenna{Name: "added", AzimuthDegrees: &azimuth, ElevationDegrees: &elevation})
		}
	}
	s.add(spot{paths: []string{"model.radio.antennas"}, antennas: true, choices: []choice{{"upright", added(0, 90)}, {"across", added(90, 0)}}})
}
