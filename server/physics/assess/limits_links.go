package assess

// The figures of radio link and packs. The time of a fail-safe is the shortest of those that associations and authorities ask for turbines.
var (
	radioMarginFigure = figure{"minimumRadioMarginDecibels", func(l *Limits) *float64 { return l.MinimumRadioMarginDecibels }, 10, true}
	failSafeFigure    = figure{"maximumFailSafeSeconds", func(l *Limits) *float64 { return l.MaximumFailSafeSeconds }, 2, false}
	busFigure         = figure{"minimumBusVolts", func(l *Limits) *float64 { return l.MinimumBusVolts }, 4.8, true}
	packUseFigure     = figure{"maximumPackUseRatio", func(l *Limits) *float64 { return l.MaximumPackUseRatio }, 0.7, false}
)

// askedFor reports whether the document's limits hold a published rule for a finding that has no figure of its own.
func (p *pass) askedFor(id string) bool {
	if p.in.Limits == nil {
		return false
	}
	for i := range p.in.Limits.Rules {
		if p.in.Limits.Rules[i].FindingID == id {
			return true
		}
	}
	return false
}
