package assess

// Figures of the landing and of what happens without thrust.
var (
	approachFigure   = figure{"minimumApproachRatio", func(l *Limits) *float64 { return l.MinimumApproachRatio }, 1.3, true}
	landingUseFigure = figure{"maximumLandingUseRatio", func(l *Limits) *float64 { return l.MaximumLandingUseRatio }, 0.7, false}
	reachFigure      = figure{"minimumReachRatio", func(l *Limits) *float64 { return l.MinimumReachRatio }, 0.8, true}
	// comeDownFigure is the least distance to people of what comes down without thrust: none is asked for unless the limits do.
	comeDownFigure      = figure{"minimumPeopleDistanceMeters", func(l *Limits) *float64 { return l.MinimumPeopleDistanceMeters }, 0, true}
	landingFactorFigure = figure{"landingDistanceFactor", func(l *Limits) *float64 { return l.LandingDistanceFactor }, 1, true}
	takeoffFactorFigure = figure{"takeoffDistanceFactor", func(l *Limits) *float64 { return l.TakeoffDistanceFactor }, 1, true}
)
