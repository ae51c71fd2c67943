package assess

// Quantities of the air, the wind and the masses.

const (
	humidAir   = "Picard, Davis, Glaeser, Fujii, Metrologia 45 (2008) 149; ideal gas mixture outside its range"
	staticsLaw = "Statics: moments about the datum"
	scalesPath = "model.mass.scaleReadings"
)

var airFigures = []figureKind{
	{"air.station_pressure", "Air pressure at the field", "Pa",
		"p = QNH carried to the field's height in the standard column, or as measured there", "ISO 2533; ICAO Doc 7488", nil},
	{"air.density", "Air density", "kg/m3",
		"rho = p Ma (1 - xv (1 - Mv/Ma))/(Z R T)", humidAir, []string{"air.station_pressure"}},
	{"air.density_altitude", "Height of that density in the standard atmosphere", "m",
		"h(rho), the inverse of the standard atmosphere", "ISO 2533, inverted", []string{"air.density"}},
	{"air.viscosity", "Viscosity of the air", "Pa s",
		"mu = 1.458e-6 T^1.5/(T + 110.4)", "Sutherland's law with the constants of the US Standard Atmosphere 1976",
		[]string{"day.temperatureCelsius"}},
	{"air.sound_speed", "Speed of sound", "m/s", "a = sqrt(1.4 R T)", "ISO 2533", []string{"day.temperatureCelsius"}},
	{"wind.mean", "Mean wind at the measured height", "m/s", "as reported", "the day's report", nil},
	{"wind.gust_excess", "Highest gust over the mean wind", "m/s",
		"gust less mean as reported, or mean (G - 1) with the least gust factor G of the ground",
		"logarithmic wind profile with a turbulence of 2.5 friction velocities", []string{"wind.mean"}},
}

var massFigures = []figureKind{
	{"mass.empty", "Mass without fuel", "kg", "as weighed whole, else the sum of the scales, else of the items", staticsLaw, nil},
	{"mass.fuel", "Fuel for the flight", "kg", "sum of density volume filling over all tanks", "definition of density", []string{"model.mass.tanks"}},
	{"mass.takeoff", "Take-off mass", "kg", "m = empty mass + fuel", "sum", []string{"mass.empty", "mass.fuel"}},
	{"balance.empty_x", "Balance point, tanks empty", "m",
		"x = sum m_i x_i/sum m_i, or as measured whole", staticsLaw, nil},
	{"balance.full_x", "Balance point, tanks filled for the flight", "m",
		"x = (m_empty x_empty + sum m_fuel x_tank)/m", staticsLaw, []string{"balance.empty_x", "mass.empty", "mass.takeoff"}},
	{"balance.full_z", "Height of the balance point, tanks filled for the flight", "m",
		"z = (m_empty z_empty + sum m_fuel z_tank)/m", staticsLaw, []string{"model.mass.emptyBalanceZMeters", "mass.empty", "mass.takeoff"}},
	{"balance.forward_x", "Balance point, foremost along the burn", "m",
		"least x while the tanks empty in their order", staticsLaw, []string{"balance.empty_x", "mass.empty", "mass.takeoff"}},
	{"balance.aft_x", "Balance point, aftmost along the burn", "m",
		"greatest x while the tanks empty in their order", staticsLaw, []string{"balance.empty_x", "mass.empty", "mass.takeoff"}},
	{"weighing.mass", "Mass by the scales", "kg", "M = sum of mean reading less tare", staticsLaw, []string{scalesPath}},
	{"weighing.mass_spread", "One standard deviation of it", "kg", "root of the sum of squares of scale and repeats", "JCGM 100:2008, 5.1.2", []string{scalesPath}},
	{"weighing.balance_x", "Balance point by the scales", "m", "x = sum m_i x_i/M", staticsLaw, []string{scalesPath}},
	{"weighing.balance_x_spread", "One standard deviation of it", "m", "u(x)^2 = sum ((x_i - x)/M)^2 u(m_i)^2 + sum (m_i/M)^2 u(x_i)^2", "JCGM 100:2008, 5.1.2", []string{scalesPath}},
	{"weighing.balance_y", "Balance point to starboard by the scales", "m", "y = sum m_i y_i/M", staticsLaw, []string{scalesPath}},
	{"mass.weighed", "Mass as weighed", "kg", "whole, or the sum of the scales less their tare", staticsLaw, nil},
	{"mass.listed", "Mass as the items add up", "kg", "sum m_i", "sum", nil},
	{"mass.difference", "Weighed less listed", "kg", "m_weighed - m_listed", "difference", []string{"mass.weighed", "mass.listed"}},
	{"mass.difference_score", "That difference over its own spread", "1", "dm/u(dm)", "ISO 13528, zeta score", []string{"mass.difference"}},
	{"mass.balance_difference", "Weighed balance point aft of the listed one", "m", "x_weighed - x_listed", staticsLaw, []string{"model.mass.items"}},
	{"mass.balance_difference_score", "The difference of the moments over its own spread", "1", "dM/u(dM)", "ISO 13528, zeta score",
		[]string{"mass.balance_difference", "mass.difference"}},
}
