package packs

// Chemistry is what a cell is made of.
type Chemistry int

// Chemistries.
const (
	LithiumPolymer       Chemistry = iota + 1 // cobalt oxide and graphite in a pouch
	LithiumIon                                // nickel-rich oxide in a round can
	LithiumIronPhosphate                      // iron phosphate and graphite
	NickelMetalHydride
)

// Known says whether the value is one of the chemistries.
func (c Chemistry) Known() bool { return c >= LithiumPolymer && c <= NickelMetalHydride }

// cell holds the class figures of a chemistry.
type cell struct {
	rest         []point // rest voltage over charge (0 to 1), 25 C, V
	restWithin   float64 // spread of that voltage, V
	capacity     []point // share of the capacity over temperature, K
	ohmAmpere    float64 // resistance of a cell times its capacity at 25 C, new, ohm Ah
	ohmic        float64 // share of the resistance with the electrolyte's activation, rest with charge transfer's
	peukert      float64 // exponent of capacity against rate
	ratedRate    float64 // rate the capacity is stated at, 1/h
	cycleLife    float64 // full cycles to 80 %
	leastLoaded  float64 // V of a cell under load, below which it is harmed or empty
	plain        string
	calendarLoss bool // ages by CalendarLoss; otherwise by nickelYearLoss
}

// chargeSteps are the charges of the tables of rest voltage.
var chargeSteps = [...]float64{0, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 1}

// restTable joins the charges with voltages from empty to full.
func restTable(volts [len(chargeSteps)]float64) []point {
	out := make([]point, len(volts))
	for i, v := range volts {
		out[i] = point{chargeSteps[i], v}
	}
	return out
}

// Tables of capacity over temperature: lithium and nickel by common practice within 10 points; iron phosphate as measured on a 10 Ah cell.
var (
	lithiumCold = []point{{Zero - 40, 0.15}, {Zero - 20, 0.55}, {Zero - 10, 0.75}, {Zero, 0.88}, {Zero + 10, 0.95}, {RoomCells, 1}}
	ironCold    = []point{{Zero - 40, 0.33}, {Zero - 20, 0.441}, {Zero - 10, 0.664}, {Zero, 0.802}, {Zero + 10, 0.89}, {RoomCells, 1}}
	nickelCold  = []point{{Zero - 40, 0.1}, {Zero - 20, 0.5}, {Zero - 10, 0.7}, {Zero, 0.85}, {Zero + 20, 1}}
)

// cells are the class figures. Rest voltages of lithium: electrode functions published for Ai 2020, Chen 2020 and Prada 2013, combined apart from this
// program; nickel, resistances, exponents and lives: common practice, recalled.
var cells = map[Chemistry]cell{
	LithiumPolymer: {
		rest:       restTable([...]float64{3.000, 3.535, 3.639, 3.695, 3.733, 3.762, 3.793, 3.836, 3.909, 3.994, 4.088, 4.138, 4.200}),
		restWithin: 0.03, capacity: lithiumCold, ohmAmpere: 0.018, ohmic: 0.8, peukert: 1.05, ratedRate: 1, cycleLife: 150, leastLoaded: 3.0,
		plain: "lithium polymer", calendarLoss: true,
	},
	LithiumIon: {
		rest:       restTable([...]float64{2.500, 3.107, 3.292, 3.484, 3.578, 3.664, 3.746, 3.835, 3.941, 4.034, 4.095, 4.114, 4.181}),
		restWithin: 0.03, capacity: lithiumCold, ohmAmpere: 0.075, ohmic: 0.8, peukert: 1.07, ratedRate: 0.5, cycleLife: 300, leastLoaded: 2.5,
		plain: "lithium ion", calendarLoss: true,
	},
	LithiumIronPhosphate: {
		rest:       restTable([...]float64{2.000, 2.785, 2.978, 3.168, 3.206, 3.252, 3.266, 3.269, 3.274, 3.310, 3.314, 3.316, 3.598}),
		restWithin: 0.02, capacity: ironCold, ohmAmpere: 0.025, ohmic: 0.6, peukert: 1.04, ratedRate: 1, cycleLife: 800, leastLoaded: 2.0,
		plain: "lithium iron phosphate", calendarLoss: true,
	},
	NickelMetalHydride: {
		rest:       restTable([...]float64{1.00, 1.15, 1.20, 1.24, 1.26, 1.27, 1.28, 1.29, 1.30, 1.32, 1.35, 1.38, 1.42}),
		restWithin: 0.05, capacity: nickelCold, ohmAmpere: 0.05, ohmic: 1, peukert: 1.10, ratedRate: 0.2, cycleLife: 300, leastLoaded: 0.9,
		plain: "nickel metal hydride",
	},
}

// of returns the class figures; an unknown chemistry counts as lithium polymer, which the checks refuse before.
func (c Chemistry) of() cell {
	if found, ok := cells[c]; ok {
		return found
	}
	return cells[LithiumPolymer]
}

// String returns the plain name.
func (c Chemistry) String() string {
	if !c.Known() {
		return "unknown chemistry"
	}
	return cells[c].plain
}

// LeastLoadedVolts returns the voltage of a cell under load below which it is empty or harmed, V. Source: data sheets of cells, recalled.
func (c Chemistry) LeastLoadedVolts() float64 { return c.of().leastLoaded }

// RestVolts returns the voltage of a rested cell at 25 C, V.
//
// where charge is the share of full (0 to 1, held there). Valid for: an hour after the last load or charge, within 0.03 V for lithium and 0.05 V for
// nickel. Source: tables of cells.
func (c Chemistry) RestVolts(charge float64) float64 {
	return interpolate(c.of().rest, clamp(charge, 0, 1))
}

// widestCharge is the uncertainty of a charge beyond which a rest voltage says nothing of it.
const widestCharge = 0.15

// ChargeFromRest returns the charge of a rested cell from its voltage with its uncertainty, both shares of full, and false where the curve is too flat
// to say: most of iron phosphate and all of nickel between nearly empty and nearly full. Count the charge drawn there instead.
//
// where volts is of one cell (V). Uncertainty is the spread of the table over its slope. Valid for: an hour of rest at 10 to 35 C.
// Source: inverse of RestVolts.
func (c Chemistry) ChargeFromRest(volts float64) (charge, within float64, ok bool) {
	table, spread := c.of().rest, c.of().restWithin
	low, high := chargeAt(table, volts-spread), chargeAt(table, volts+spread)
	charge, within = chargeAt(table, volts), (high-low)/2
	full := volts > table[len(table)-1].value+spread
	return charge, within, within <= widestCharge && volts >= table[0].value-spread && !full
}

// chargeAt returns where a rising table reaches a voltage, held at its ends.
func chargeAt(table []point, volts float64) float64 {
	swapped := make([]point, len(table))
	for i, p := range table {
		swapped[i] = point{p.value, p.at}
	}
	return interpolate(swapped, volts)
}
