package assess

// The shares of samples in which the limit must hold, by whom it hurts.
var (
	thirdPartyFigure = figure{"requiredThirdPartyProbability", func(l *Limits) *float64 { return l.RequiredThirdPartyProbability }, 0.99, true}
	modelLossFigure  = figure{"requiredModelLossProbability", func(l *Limits) *float64 { return l.RequiredModelLossProbability }, 0.95, true}
	handlingFigure   = figure{"requiredHandlingProbability", func(l *Limits) *float64 { return l.RequiredHandlingProbability }, 0.80, true}
)

// required returns the share of samples in which a finding of a class must hold.
func (p *pass) required(class FindingClass) float64 {
	switch class {
	case FindingClassHandling:
		return p.limit(handlingFigure).value
	case FindingClassModelLoss:
		return p.limit(modelLossFigure).value
	default:
		return p.limit(thirdPartyFigure).value
	}
}
