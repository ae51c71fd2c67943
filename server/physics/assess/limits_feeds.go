package assess

import "pitgate/server/physics/fuel"

// trapFigure is how long an air trap must feed the engine alone, s. The core's own depends on the pick-up, so that any figure below that of one
// without felt may be looser.
var trapFigure = figure{"minimumAirTrapSeconds", func(l *Limits) *float64 { return l.MinimumAirTrapSeconds }, fuel.LeastTrapSeconds(false), true}

// reserveShareFigure is the least share of the load that must be left at the landing. It comes beside the core's own, one go-around and one more
// circuit, and never takes from it.
var reserveShareFigure = figure{name: "minimumFuelReserveRatio", of: func(l *Limits) *float64 { return l.MinimumFuelReserveRatio }}
