package assess

// Quantities of wheels on the ground.

const (
	rollingTable = "mu of the surface and its state, on anything but a paved one times sqrt(0.6/d) of the smallest wheel, kept within 1 and 3"
	rollingData  = "Raymer, Aircraft Design: A Conceptual Approach, Table 17.1; small wheels by judgement, no source"
)

var rollingFigures = []figureKind{
	{"gear.rolling_test.*", "Rolling friction by one test", "1", "pull: F/(m g cos s) - tan s; roll: deceleration less drag over g cos s, less tan s", "balance of forces along the slope", nil},
	{"gear.rolling_way.*", "How that test was made", "", "as described", "the document", nil},
	{"gear.rolling_friction", "Rolling friction, mean of the tests", "1", "arithmetic mean of the tests", "JCGM 100:2008 (GUM), 4.2", []string{rollingPath}},
	{"gear.rolling_spread", "Spread of that mean, one standard deviation", "1", "u^2 = max(sum u_i^2/n^2, s^2/n)", "JCGM 100:2008 (GUM), 4.2.3 and 5.1", []string{rollingPath}},
	{"launch.rolling_friction", "Rolling friction of the launch", "1", rollingTable, rollingData, nil},
	{"landing.rolling_friction", "Rolling friction of the landing", "1", rollingTable, rollingData, nil},
}
