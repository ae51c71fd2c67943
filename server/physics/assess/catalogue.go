package assess

import "slices"

// kind is what a finding always says: its words, unit and sense, how it is computed, by whose method and where that ends.
type kind struct {
	id, title, unit          string
	sense                    LimitSense
	method, source, validity string
	// neverNegative cuts the band at zero.
	neverNegative bool
	// still marks what the base pass alone answers: it carries its own spread, or none, and no input moves it.
	still bool
	// from are the quantities and inputs behind the value; a section adds those that depend on the document.
	from []string
}

// catalogue lists the findings in the order in which a report names them within one verdict.
var catalogue = slices.Concat(flightKinds, landingKinds, handlingKinds, loadKinds, dayKinds, radioKinds, packKinds, feedKinds)

// flightKinds lists the findings of air, stall, speeds, launch, climb and circuit.
var flightKinds = []kind{
	{
		id: "air.density", title: "Density altitude", unit: "m", sense: LimitSenseAtMost,
		method:   "Station pressure from the QNH by the standard column, humid air by CIPM-2007 or as a gas mixture, then the height of that density in the standard atmosphere.",
		source:   "ISO 2533; Picard, Davis, Glaeser, Fujii, Metrologia 45 (2008) 149",
		validity: "600 to 1100 hPa; CIPM-2007 from 15 to 27 C, gas mixture outside.",
		from:     []string{"air.density_altitude", "air.density"},
	},
	{
		id: "stall.speed", title: "Stall speed, straight flight", unit: "m/s", sense: LimitSenseAtMost,
		method:   "Vortex lattice of all lifting surfaces, in balance at the foremost balance point; the lift ends when a strip of wing, canard or tail reaches its section's limit or the pitch control its throw.",
		source:   "Katz and Plotkin, Low-Speed Aerodynamics; NACA Report 572 (critical section)",
		validity: "Attached flow up to the stall, sections and Reynolds numbers of the tables; untrimmed where throws or balance are not given.",
		from:     []string{"stall.speed", "lift.stall_station"},
	},
	{
		id: "stall.tip", title: "Incidence left at the tips when the first strip stalls", unit: "deg", sense: LimitSenseAtLeast,
		method:   "Least incidence that the outer 15 % of the surface have left before their own section limit, at the stall.",
		source:   "NACA Report 572 (critical section); NACA TR 703 on tip stalling, from memory",
		validity: "Attached flow; spanwise flow of strongly swept wings is left out.",
		from:     []string{"lift.tip_margin", "lift.stall_station", "method: tip section against root section"},
	},
	{
		id: "stall.turn", title: "Speed over stall speed in the circuit's turns", unit: "1", sense: LimitSenseAtLeast,
		method:   "Circuit speed over the stall speed times the root of the load factor of the bank.",
		source:   "Anderson, Introduction to Flight, chapter 6",
		validity: "Level turns at constant bank.",
		from:     []string{"circuit.airspeed", "stall.speed_turn"},
	},
	{
		id: "stall.gust", title: "Speed over stall speed in the turn when the gust dies", unit: "1", sense: LimitSenseAtLeast,
		method:   "Circuit speed less the gust's excess over the mean wind, over the stall speed in the turn.",
		source:   "Anderson, Introduction to Flight, chapter 6; gust as reported or least gust factor of the ground",
		validity: "Gusts along the flight path that last shorter than the model takes to speed up.",
		from:     []string{"circuit.airspeed", "wind.gust_excess", "stall.speed_turn"},
	},
	{
		id: "liftoff.margin", title: "Lift-off speed over stall speed", unit: "1", sense: LimitSenseAtLeast,
		method:   "Speed at which the wheels leave the ground: rotated 5 % above the least ratio, later when the tail strikes first, earlier when the standing attitude lifts the model off.",
		source:   "Equations of motion, adaptive Dormand-Prince 5(4)",
		validity: "Rotation without delay.",
		from:     []string{"liftoff.speed", "stall.speed_takeoff"},
	},
	{
		id: "speed.top", title: "Top speed in level flight", unit: "m/s", sense: LimitSenseAtMost,
		method:   "Speed at which full thrust with ram recovery meets drag, wheels up where they retract.",
		source:   "Anderson, Introduction to Flight, chapter 6",
		validity: "Below Mach 0.3 without compressibility; full throttle, level.",
		from:     []string{"speed.top"},
	},
	{
		id: "thrust.ratio", title: "Static thrust over weight", unit: "1", sense: LimitSenseAtLeast,
		method:   "Installed static thrust in the day's air over the take-off weight.",
		source:   "Corrected parameters of gas turbines; momentum theory for fans and propellers",
		validity: "Engine held to its full speed by its limiter.",
		from:     []string{"thrust.static_day", "mass.takeoff"},
	},
	{
		id: "launch.distance", title: "Take-off distance on the strip", unit: "m", sense: LimitSenseAtMost,
		method:   "Equations of motion with spool-up, rolling resistance, slope, wind profile and ground effect.",
		source:   "Anderson, Introduction to Flight, chapter 6; integrated by Dormand-Prince 5(4)",
		validity: "Firm strip, even or by its surveyed profile; small wheels by a judged factor on the table's friction unless measured.", neverNegative: true,
		from: []string{"launch.ground_run", "launch.screen_distance", "launch.conditions"},
	},
	{
		id: "launch.end_speed", title: "Airspeed at the end of the launcher over stall speed", unit: "1", sense: LimitSenseAtLeast,
		method:   "Equations of motion along rails or stroke; airspeed in the headwind at that height over the stall speed.",
		source:   "Newton's second law along the slope; integrated by Dormand-Prince 5(4)",
		validity: "Straight or stepwise straight rails, cord linear or straight between the points of its pull test; a tail that strikes takes nothing.",
		from:     []string{"launch.end_speed", "stall.speed_takeoff", "launch.conditions"},
	},
	{
		id: "launch.sink", title: "Sink after the launcher", unit: "m", sense: LimitSenseAtMost,
		method:   "Lowest point of the flight below the place where the model left its launcher.",
		source:   "Equations of motion in the vertical plane; integrated by Dormand-Prince 5(4)",
		validity: "Pilot holds the climb's incidence at once.", neverNegative: true,
		from: []string{"launch.sink", "launch.conditions"},
	},
	{
		id: "launch.tail_gap", title: "Room under the tail at the end of the rails", unit: "m", sense: LimitSenseAtLeast,
		method:   "Least height of the lowest thing behind the cradle over the rails until it has passed their end; the attitude follows the path and the lift without delay.",
		source:   "Plane geometry on the equations of motion; integrated by Dormand-Prince 5(4)",
		validity: "Rails straight over the tail's last arm; the least favourable swing of the tail.",
		from:     []string{"launch.tail_gap", "launch.conditions"},
	},
	{
		id: "climb.clearance", title: "Clearance over obstacles after the launch", unit: "m", sense: LimitSenseAtLeast,
		method:   "Height of the launch path over every obstacle in the departure corridor, drift included, no higher than the circuit; a wire by the height at which it hangs in the corridor; the climb is drawn on beyond the computed path.",
		source:   "Equations of motion; corridor widening by a tenth of the distance as in ICAO Annex 14",
		validity: "Straight departure, no wake of hedges and banks.",
		from:     []string{"field.obstacles", "launch.conditions"},
	},
	{
		id: "circuit.inside", title: "Circuit inside the flying area", unit: "m", sense: LimitSenseAtLeast,
		method:   "Racetrack with bank, reaction time and wind drift; least distance to the area's edge.",
		source:   "Anderson, Introduction to Flight, chapter 6; plane kinematics",
		validity: "Level circuit at constant airspeed and bank, steady wind.",
		from:     []string{"circuit.radius", "circuit.leg", "wind.mean", "field.flyingArea", "launchPlan.circuit.hand", "launchPlan.circuit.reactionSeconds"},
	},
}

// place returns where a finding stands in the catalogue.
func place(id string) int {
	if i, known := places[id]; known {
		return i
	}
	return len(catalogue)
}

// places holds where each finding stands in the catalogue.
var places = func() map[string]int {
	out := make(map[string]int, len(catalogue))
	for i := range catalogue {
		out[catalogue[i].id] = i
	}
	return out
}()

// cautions go with every report.
var cautions = []string{
	"The computation supports a decision and does not make it.",
	"National law, the national association's rules and the field owner's terms come first.",
	"Structures and fuel systems outside the builder's competence go to someone qualified.",
	"A value marked estimated is not evidence.",
}

// Cautions returns what to bear in mind with every verdict and every figure behind one.
func Cautions() []string { return slices.Clone(cautions) }
