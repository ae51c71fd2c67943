package assess

// freePlayFigure is the most slack of a control over its chord.
//
// Source: judgement; a fiftieth of the chord is 1.1 degrees, regulations for full-size controls ask for less.
var freePlayFigure = figure{"maximumFreePlayRatio", func(l *Limits) *float64 { return l.MaximumFreePlayRatio }, 0.02, false}

// unbalancedSpeed is the speed up to which controls are commonly flown without mass balance, m/s.
//
// Source: judgement; builders of fast models balance or drive each control directly from about there.
const unbalancedSpeed = 60.0
