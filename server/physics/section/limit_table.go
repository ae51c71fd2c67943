package section

// Sources of the table of greatest lift.
const (
	sourceLowSpeedBook = "Selig, Donovan and Fraser, Airfoils at Low Speeds (1989), measured"
	sourceLowSpeedData = "Summary of Low-Speed Airfoil Data, volumes 1 to 3 (1995 to 1997), measured"
	sourceSandia       = "SAND80-2114 (Sheldahl and Klimas), section code merged with tunnel data"
	sourceMemory       = "lower edge of a band from memory"
)

// limitKnots are the greatest lift coefficients of sections of one thickness; knots of a spread to 0.08 are read from source.
type limitKnots struct {
	thickness float64
	source    string
	knots     []knot
}

// limitRow is the same as a curve.
type limitRow struct {
	thickness float64
	source    string
	limit     curve
}

// Standard deviations of the entries. Two tunnels that measured one section differ by 0.03 to 0.10; a code's table lies up to 0.3
// below a measured section of the same thickness (12 % at Re 3e5), so its entries are wide.
const (
	tunnel    = 0.05
	scattered = 0.08 // sections of one thickness that differ more than one section in two tunnels
	sandia    = 0.08
	sandiaLow = 0.10 // below Re 1.6e5
	memory    = 0.12
)

// symmetricalTables: where several samples or tunnels measured a section the lower value stands, and a value that falls with rising
// Reynolds number is cut to the lower one that follows. The 9 % row is the four-digit section, lift and drag runs; the 10.1 % row another
// symmetrical one; the 12 % row the lower of two symmetrical sections of 12 %, of which one lifts 0.26 more at Re 2e5.
var symmetricalTables = []limitKnots{
	{0.06, sourceMemory, []knot{{4e4, 0.58, memory}, {1e5, 0.60, memory}, {3e5, 0.66, memory}, {1e6, 0.72, memory}, {3e6, 0.80, memory},
		{5e6, 0.84, memory}}},
	{0.09, sourceLowSpeedBook, []knot{{2e4, 0.50, memory}, {3.97e4, 0.72, tunnel}, {5.97e4, 0.727, tunnel}, {1.003e5, 0.77, tunnel},
		{1.506e5, 0.772, tunnel}, {1.99e5, 0.787, tunnel}, {5e5, 0.84, memory}, {1e6, 0.92, memory}, {2e6, 1.05, memory}, {5e6, 1.20, memory}}},
	{0.101, sourceLowSpeedData, []knot{{2e4, 0.50, memory}, {3.91e4, 0.70, tunnel}, {6.06e4, 0.76, tunnel}, {8.11e4, 0.79, tunnel},
		{1.018e5, 0.80, tunnel}, {2.042e5, 0.855, tunnel}, {3.056e5, 0.88, tunnel}, {1e6, 0.98, memory}, {2e6, 1.10, memory}, {5e6, 1.25, memory}}},
	{0.12, sourceLowSpeedData, []knot{{2e4, 0.38, memory}, {5e4, 0.60, memory}, {1.01e5, 0.738, scattered}, {1.513e5, 0.793, scattered},
		{2.019e5, 0.824, scattered}, {3.6e5, 0.95, memory}, {7e5, 1.05, memory}, {1e6, 1.10, memory}, {2e6, 1.19, memory}, {5e6, 1.33, memory}}},
	{0.15, sourceSandia, []knot{{2e4, 0.336, sandiaLow}, {4e4, 0.573, sandiaLow}, {8e4, 0.719, sandiaLow}, {1.6e5, 0.832, sandia},
		{3.6e5, 0.957, sandia}, {7e5, 1.051, sandia}, {1e6, 1.097, sandia}, {2e6, 1.196, sandia}, {5e6, 1.330, sandia}}},
	{0.18, sourceSandia, []knot{{2e4, 0.179, sandiaLow}, {4e4, 0.476, sandiaLow}, {8e4, 0.661, sandiaLow}, {1.6e5, 0.795, sandia},
		{3.6e5, 0.928, sandia}, {7e5, 1.029, sandia}, {1e6, 1.080, sandia}, {2e6, 1.181, sandia}, {5e6, 1.307, sandia}}},
	{0.21, sourceSandia, []knot{{2e4, 0.062, sandiaLow}, {4e4, 0.343, sandiaLow}, {8e4, 0.587, sandiaLow}, {1.6e5, 0.744, sandia},
		{3.6e5, 0.897, sandia}, {7e5, 1.012, sandia}, {1e6, 1.071, sandia}, {2e6, 1.182, sandia}, {5e6, 1.307, sandia}}},
}

// twoTables: 2 % camber. 9 %: lowest of four measured sections of 1.8 to 2.2 %; 11 %: the four-digit section of 2.3 % measured camber
// less 0.02; 14 and 15 %: four-digit sections as measured.
var twoTables = []limitKnots{
	{0.09, sourceLowSpeedBook, []knot{{4e4, 0.85, memory}, {6e4, 1.02, tunnel}, {8e4, 1.05, tunnel}, {1e5, 1.06, tunnel}, {2e5, 1.06, tunnel},
		{3e5, 1.08, tunnel}, {5e5, 1.12, memory}, {1e6, 1.18, memory}, {2e6, 1.28, memory}, {5e6, 1.40, memory}}},
	{0.11, sourceLowSpeedBook, []knot{{4e4, 0.80, memory}, {5.88e4, 0.96, tunnel}, {8.15e4, 1.01, tunnel}, {1.01e5, 1.01, tunnel}, {2e5, 1.05, memory},
		{5e5, 1.20, memory}, {1e6, 1.30, memory}, {2e6, 1.40, memory}, {5e6, 1.50, memory}}},
	{0.14, sourceLowSpeedData, []knot{{4e4, 0.95, memory}, {6.07e4, 1.140, tunnel}, {1.009e5, 1.169, tunnel}, {2.018e5, 1.181, tunnel},
		{3.025e5, 1.225, tunnel}, {1e6, 1.35, memory}, {2e6, 1.42, memory}, {5e6, 1.50, memory}}},
	{0.15, sourceLowSpeedData, []knot{{4e4, 0.95, memory}, {6.07e4, 1.149, tunnel}, {1.011e5, 1.188, tunnel}, {2.017e5, 1.226, tunnel},
		{3.025e5, 1.303, tunnel}, {1e6, 1.36, memory}, {2e6, 1.42, memory}, {5e6, 1.50, memory}}},
	{0.18, sourceMemory, []knot{{4e4, 0.75, memory}, {6e4, 0.95, memory}, {1e5, 1.02, memory}, {2e5, 1.10, memory}, {3e5, 1.17, memory},
		{1e6, 1.25, memory}, {2e6, 1.32, memory}, {5e6, 1.40, memory}}},
}

// threeHalfTables: 3.5 % camber. 9.5 %: low among six measured sections of 2.9 to 4.2 %; 11.7 %: a flat-bottomed section in two tunnels, the
// lower one, and where only one measured that one less half their difference, 0.05; 13.6 %: the lower of two sections.
var threeHalfTables = []limitKnots{
	{0.095, sourceLowSpeedBook, []knot{{4e4, 0.98, memory}, {6e4, 1.16, tunnel}, {8e4, 1.20, tunnel}, {1e5, 1.21, tunnel}, {2e5, 1.26, memory},
		{5e5, 1.30, memory}, {1e6, 1.36, memory}, {2e6, 1.42, memory}, {5e6, 1.48, memory}}},
	{0.117, sourceLowSpeedData, []knot{{4e4, 0.95, memory}, {6.05e4, 1.18, tunnel}, {8.17e4, 1.20, tunnel}, {1e5, 1.20, tunnel},
		{2.011e5, 1.275, tunnel}, {3.015e5, 1.30, tunnel}, {4.019e5, 1.30, tunnel}, {1e6, 1.36, memory}, {2e6, 1.45, memory}, {5e6, 1.52, memory}}},
	{0.136, sourceLowSpeedBook, []knot{{4e4, 0.98, memory}, {6e4, 1.21, tunnel}, {8e4, 1.26, tunnel}, {1e5, 1.27, tunnel}, {2e5, 1.30, memory},
		{5e5, 1.36, memory}, {1e6, 1.42, memory}, {2e6, 1.48, memory}, {5e6, 1.55, memory}}},
	{0.18, sourceMemory, []knot{{4e4, 0.85, memory}, {1e5, 1.10, memory}, {2e5, 1.18, memory}, {5e5, 1.27, memory}, {1e6, 1.33, memory},
		{2e6, 1.40, memory}, {5e6, 1.48, memory}}},
}

// sixTables: 6 % camber, the four-digit section of 9 % in two tunnels and a section of 13.4 % and 5.35 % camber
// plus 0.02.
var sixTables = []limitKnots{
	{0.09, sourceLowSpeedData, []knot{{2e4, 0.90, memory}, {3.93e4, 1.23, tunnel}, {5.06e4, 1.31, tunnel}, {5.82e4, 1.38, tunnel},
		{8.14e4, 1.39, tunnel}, {1.016e5, 1.43, tunnel}, {2.024e5, 1.43, tunnel}, {5e5, 1.46, memory}, {1e6, 1.50, memory}, {2e6, 1.55, memory},
		{5e6, 1.60, memory}}},
	{0.134, sourceLowSpeedBook, []knot{{4e4, 1.05, memory}, {5.92e4, 1.32, tunnel}, {1.006e5, 1.35, tunnel}, {2.016e5, 1.37, tunnel},
		{3.029e5, 1.37, tunnel}, {1e6, 1.48, memory}, {2e6, 1.55, memory}, {5e6, 1.60, memory}}},
}

// camberRows are the tables by camber, rising.
var (
	camberPlaces = []float64{0, 0.02, 0.035, 0.06}
	camberRows   = [][]limitRow{drawn(symmetricalTables), drawn(twoTables), drawn(threeHalfTables), drawn(sixTables)}
)

// drawn draws the curves of the tables of one camber.
func drawn(tables []limitKnots) []limitRow {
	rows := make([]limitRow, len(tables))
	for i, t := range tables {
		rows[i] = limitRow{t.thickness, t.source, newCurve(t.knots...)}
	}
	return rows
}

// Plate, sheet and reflexed section. The plate is 2.1 % thick with a rounded nose and a tapered tail; its lift still rose where the
// measurement ends, so the value is below its limit. The sheet is 2.9 % thick with 5.9 % camber and a rounded nose; the reflexed section is 9.85 %
// thick with 1.65 % camber and a moment of -0.006.
var (
	plateCurve = newCurve(knot{2e4, 0.55, memory}, knot{4e4, 0.60, memory}, knot{1.001e5, 0.67, tunnel}, knot{3.004e5, 0.685, tunnel},
		knot{1e6, 0.69, memory})
	sheetCurve = newCurve(knot{2e4, 1.05, memory}, knot{4e4, 1.20, memory}, knot{6.02e4, 1.35, tunnel}, knot{1e5, 1.355, tunnel},
		knot{1.997e5, 1.371, tunnel}, knot{2.997e5, 1.395, tunnel}, knot{1e6, 1.40, memory})
	reflexCurve = newCurve(knot{2e4, 0.60, memory}, knot{4e4, 0.95, memory}, knot{6.14e4, 1.10, tunnel}, knot{1.021e5, 1.104, tunnel},
		knot{2.037e5, 1.146, tunnel}, knot{3.049e5, 1.177, tunnel}, knot{1e6, 1.22, memory}, knot{2e6, 1.28, memory}, knot{5e6, 1.35, memory})
)

const (
	sheetCamber     = 0.059  // of the measured sheet
	reflexCamber    = 0.0165 // of the measured reflexed section
	reflexThickness = 0.0985
)
