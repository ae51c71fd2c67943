package assess

// figure is one of the Limits together with the core's own, which applies when the document gives none.
type figure struct {
	name  string // in the document
	of    func(*Limits) *float64
	core  float64
	least bool // a least value: a smaller one is looser
}

// The figures whose default is the core's.
var (
	liftoffFigure   = figure{"minimumLiftoffRatio", func(l *Limits) *float64 { return l.MinimumLiftoffRatio }, 1.2, true}
	stripUseFigure  = figure{"maximumStripUseRatio", func(l *Limits) *float64 { return l.MaximumStripUseRatio }, 0.75, false}
	launchEndFigure = figure{"minimumLaunchEndRatio", func(l *Limits) *float64 { return l.MinimumLaunchEndRatio }, 1.1, true}
	// The core's own is half the height of the launcher's end, so that any figure given without it may be looser.
	sinkFigure      = figure{"maximumLaunchSinkMeters", func(l *Limits) *float64 { return l.MaximumLaunchSinkMeters }, 0, false}
	clearanceFigure = figure{"minimumClearanceMeters", func(l *Limits) *float64 { return l.MinimumClearanceMeters }, 3, true}
	thrustFigure    = figure{"minimumThrustRatio", func(l *Limits) *float64 { return l.MinimumThrustRatio }, 0.4, true}
	turnFigure      = figure{"minimumTurnRatio", func(l *Limits) *float64 { return l.MinimumTurnRatio }, 1.2, true}
	leastMargin     = figure{"minimumStaticMarginRatio", func(l *Limits) *float64 { return l.MinimumStaticMarginRatio }, 0.05, true}
	mostMargin      = figure{"maximumStaticMarginRatio", func(l *Limits) *float64 { return l.MaximumStaticMarginRatio }, 0.20, false}

	tipFigure      = figure{"minimumTipStallMarginDegrees", func(l *Limits) *float64 { return l.MinimumTipStallMarginDegrees }, 1, true}
	reserveFigure  = figure{"minimumPitchReserveRatio", func(l *Limits) *float64 { return l.MinimumPitchReserveRatio }, 0.25, true}
	loadFigure     = figure{"maximumLoadPerDegree", func(l *Limits) *float64 { return l.MaximumLoadPerDegree }, 4, false}
	finFigure      = figure{"minimumFinStiffnessPerRadian", func(l *Limits) *float64 { return l.MinimumFinStiffnessPerRadian }, 0.04, true}
	rollFigure     = figure{"minimumRollRatio", func(l *Limits) *float64 { return l.MinimumRollRatio }, 0.06, true}
	dampingFigure  = figure{"minimumPitchDampingRatio", func(l *Limits) *float64 { return l.MinimumPitchDampingRatio }, 0.35, true}
	reversalFigure = figure{"minimumReversalRatio", func(l *Limits) *float64 { return l.MinimumReversalRatio }, 1.3, true}
	massFigure     = figure{"maximumMassDifferenceRatio", func(l *Limits) *float64 { return l.MaximumMassDifferenceRatio }, 0.03, false}
)

// The figures without a default: what the document does not limit is told for information.
var (
	densityAltitudeFigure = figure{name: "maximumDensityAltitudeMeters", of: func(l *Limits) *float64 { return l.MaximumDensityAltitudeMeters }}
	topSpeedFigure        = figure{name: "maximumSpeedMetersPerSecond", of: func(l *Limits) *float64 { return l.MaximumSpeedMetersPerSecond }}
	stallSpeedFigure      = figure{name: "maximumStallSpeedMetersPerSecond", of: func(l *Limits) *float64 { return l.MaximumStallSpeedMetersPerSecond }}
)

var coreFigures = []*figure{
	&liftoffFigure, &stripUseFigure, &launchEndFigure, &sinkFigure, &clearanceFigure, &thrustFigure, &turnFigure, &leastMargin, &mostMargin,
	&tipFigure, &reserveFigure, &loadFigure, &finFigure, &rollFigure, &dampingFigure, &reversalFigure, &massFigure, &approachFigure, &landingUseFigure, &reachFigure,
	&sunFigure, &ageFigure, &designGustFigure, &freePlayFigure,
	&radioMarginFigure, &failSafeFigure, &busFigure, &packUseFigure,
	&thirdPartyFigure, &modelLossFigure, &handlingFigure, &trapFigure,
}

// with returns the figure with another default.
func (f figure) with(core float64) figure {
	f.core = core
	return f
}

// looser reports whether l gives a figure that lets more pass than the core's own.
func (f figure) looser(l *Limits) bool {
	given := f.of(l)
	switch {
	case given == nil:
		return false
	case f.least:
		return *given < f.core
	default:
		return *given > f.core
	}
}

// Looser returns the document's names of the figures that let more pass than the core's own, in the order of the catalogue. The deepest
// sink after the launcher counts as looser whenever it is more than none, since the core's own depends on the launcher.
func (l *Limits) Looser() []string {
	var names []string
	for _, f := range coreFigures {
		if f.looser(l) {
			names = append(names, f.name)
		}
	}
	return names
}
