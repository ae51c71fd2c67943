package assess

// The figures of separation, rules and weather. Only two have a default of the core's own.
var (
	sunFigure = figure{"minimumSunOffsetDegrees", func(l *Limits) *float64 { return l.MinimumSunOffsetDegrees }, 30, true}
	ageFigure = figure{"maximumWeatherAgeMinutes", func(l *Limits) *float64 { return l.MaximumWeatherAgeMinutes }, 60, false}

	// People within no distance of the outline is the core's own for a lost link; the separation has none.
	peopleFigure     = figure{name: "minimumPeopleDistanceMeters", of: func(l *Limits) *float64 { return l.MinimumPeopleDistanceMeters }, least: true}
	structureFigure  = figure{name: "minimumStructureDistanceMeters", of: func(l *Limits) *float64 { return l.MinimumStructureDistanceMeters }, least: true}
	heightFigure     = figure{name: "maximumHeightMeters", of: func(l *Limits) *float64 { return l.MaximumHeightMeters }}
	massClassFigure  = figure{name: "maximumMassKg", of: func(l *Limits) *float64 { return l.MaximumMassKg }}
	crosswindFigure  = figure{name: "maximumCrosswindMetersPerSecond", of: func(l *Limits) *float64 { return l.MaximumCrosswindMetersPerSecond }}
	gustFigure       = figure{name: "maximumGustMetersPerSecond", of: func(l *Limits) *float64 { return l.MaximumGustMetersPerSecond }}
	visibilityFigure = figure{name: "minimumVisibilityMeters", of: func(l *Limits) *float64 { return l.MinimumVisibilityMeters }, least: true}
	coldFigure       = figure{name: "minimumTemperatureCelsius", of: func(l *Limits) *float64 { return l.MinimumTemperatureCelsius }, least: true}
	hotFigure        = figure{name: "maximumTemperatureCelsius", of: func(l *Limits) *float64 { return l.MaximumTemperatureCelsius }}
)
