package assess

// designGust is the core's own gust that a model has to stand at top speed, m/s.
//
// Source: judgement. Gusts of regulations for full-size aeroplanes (15 m/s) break models that fly in the lowest 100 m without harm; 5 m/s is the
// vertical part of a strong gust at that height.
const designGust = 5.0

// designGustFigure is what the load factors are asked for with: a smaller one asks for less.
var designGustFigure = figure{"designGustMetersPerSecond", func(l *Limits) *float64 { return l.DesignGustMetersPerSecond }, designGust, true}

// askedOnce is the least that a ratio of what is there to what is asked may be; the safety factors are in what is there.
var askedOnce = limit{value: 1, set: true, rule: coreDefault}
