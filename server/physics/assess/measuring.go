package assess

import (
	"strconv"
	"strings"
)

// measurement says what an input is called and how it is measured.
type measurement struct {
	pattern, title, how string
}

// measurements are by the end of an input's path, indices left out; the first that fits counts.
var measurements = []measurement{
	{"scale: ", "Error of the scale", "Put a known mass on the scale and correct every reading taken with it."},
	{"mass.emptyMassKg", "Mass, tanks empty", "Weigh it complete, packs in, canopy on, tanks empty."},
	{"mass.emptyBalanceXMeters", "Balance point", "Tanks empty, hang it or use two scales; measure from the datum."},
	{"mass.emptyBalanceZMeters", "Height of the balance point", "Hang it by two points in turn; both plumb lines cross there."},
	{"mass.items", "Mass of the items", "Weigh each item alone, with its screws and leads."},
	{"items[].massKg", "Mass of an item", "Weigh it alone, with its screws and leads."},
	{"scaleReadings[].readingKg", "Scale under the model", "Weigh again, the model lifted off in between, and enter the repeats."},
	{"tanks[].capacityLiters", "Fuel, usable", "Fill the tank from a measuring jug."},
	{"surfaces[].massKg", "Mass of a surface", "Weigh it alone, with its servos and linkages."},
	{"engines[].staticThrustNewtons", "Static thrust, full power", "Pull on a spring scale, model held, five seconds at full power; note air temperature and pressure."},
	{"engines[].idleThrustNewtons", "Thrust at idle", "Pull on a spring scale, model held, engine at idle."},
	{"engines[].spoolUpSeconds", "Idle to full thrust", "Time it on the spring scale, from throttle open to full pull."},
	{"engines[].airMassFlowKgPerSecond", "Air through the engine", "Take it from the test sheet of this engine, or from its thrust and the speed of the jet."},
	{"engines[].exhaustTemperatureCelsius", "Exhaust temperature", "Read the engine's own probe at full power."},
	{"engines[].installationLossRatio", "Thrust lost by installation", "Pull on a spring scale with and without the ducts and the pipe."},
	{"engines[].testTemperatureCelsius", "Temperature of the thrust test", "Read a thermometer in the shade at the next static run."},
	{"engines[].testPressurePascals", "Pressure of the thrust test", "Note the station pressure at the next static run."},
	{"fuelSystem.densityKgPerCubicMeter", "Density of the fuel", "Weigh a litre of it."},
	{"gear.groundAttitudeDegrees", "Attitude on the ground", "Put a digital level on the datum line, the model on its wheels."},
	{"gear.tailStrikeDegrees", "Angle at which the tail strikes", "Lower the tail to the ground and put a digital level on the datum line."},
	{"gear.brakingRatio", "Braking", "Pull the braked model level on the strip: force over weight."},
	{"FrictionRatio", "Friction", "Pull it level on the same ground: force over weight."},
	{"frictionRatio", "Friction", "Pull it level on the same ground: force over weight."},
	{"structure.wingTwistStiffnessNewtonMetersPerRadian", "Wing twist stiffness",
		"Root held, a bar across the tip with a weight at its end: moment over the angle it turns."},
	{"inertia.pitchKgSquareMeters", "Inertia in pitch", "Swing it on two cords and time ten swings."},
	{"inertia.rollKgSquareMeters", "Inertia in roll", "Swing it on two cords and time ten swings."},
	{"inertia.yawKgSquareMeters", "Inertia in yaw", "Swing it on two cords and time ten swings."},
	{"throwDownDegrees", "Throw of a control, down", "Measure the travel of its trailing edge with the linkage connected."},
	{"throwUpDegrees", "Throw of a control, up", "Measure the travel of its trailing edge with the linkage connected."},
	{"dragCoefficient", "Drag coefficient of a part", "Take it from the form of the part in a table of drag, or glide the model with and without it."},
	{"AreaSquareMeters", "Area", "Measure its outline with a tape."},
	{"ramp.lengthMeters", "Ramp length", "Measure what the model travels on the rails."},
	{"ramp.angleDegrees", "Ramp slope", "Put a digital level on the rails."},
	{"ramp.cradleDegrees", "Model on the dolly, nose up", "Put a digital level on the datum line and on the rails."},
	{"ramp.dollyMassKg", "Dolly mass", "Weigh it alone."},
	{"ramp.releaseForceNewtons", "Pull at which the pin lets go", "Pull by a spring scale until the pin lets go."},
	{"bungee.stiffnessNewtonsPerMeter", "Bungee stiffness", "Pull it one metre further and read the scale's change."},
	{"bungee.stretchMeters", "Bungee stretch", "Measure from slack to release."},
	{"bungee.efficiencyRatio", "Share of the work that comes back", "Take a pull test out and back."},
	{"bungee.hookReleaseNewtons", "Pull at which the hook lets go", "Pull by a spring scale at the hook."},
	{"handSpeedMetersPerSecond", "Throw speed", "Film a throw from the side beside a tape."},
	{"handHeightMeters", "Height of the hand", "Measure above the ground as it lets go."},
	{"circuit.heightMeters", "Circuit height", "Fly a circuit with a barometric recorder on board."},
	{"circuit.airspeedMetersPerSecond", "Circuit speed", "Time level passes both ways over a measured distance."},
	{"circuit.straightLegMeters", "Straight leg of the circuit", "Walk it with a phone and mark both ends."},
	{"radio.rangeCheckMeters", "Distance of the range check", "Walk the range check again, model on a stand, and tape the distance."},
	{"radio.failSafeDelaySeconds", "Fail-safe acts after", "Transmitter off, engine stopped: time it with a watch."},
	{"obstacles[].heightMeters", "Height of an obstacle", "Sight its top with a level from a taped distance."},
	{"obstacles[].positionSpreadMeters", "Place of an obstacle", "Tape it from two corners of the strip."},
	{"field.elevationMeters", "Height above sea level", "Take it from a survey map."},
	{"day.windSpeedMetersPerSecond", "Wind, mean", "Hold a wind meter up for ten minutes, at 10 m or with its height noted."},
	{"day.gustSpeedMetersPerSecond", "Wind, highest gust", "Note the highest reading of a wind meter in ten minutes."},
	{"day.windDirectionDegrees", "Wind from", "Sight along a streamer with a compass, corrected to true."},
	{"day.temperatureCelsius", "Temperature", "Read a thermometer in the shade."},
	{"day.qnhPascals", "Pressure at sea level (QNH)", "Take it from a weather report of this hour."},
	{"day.stationPressurePascals", "Pressure at the field", "Read a barometer at the field."},
	{"day.relativeHumidityRatio", "Humidity", "Read a hygrometer in the shade, or take the dew point of a weather report."},
	{"day.dewPointCelsius", "Dew point", "Take it from a weather report of this hour."},
	{"day.visibilityMeters", "Visibility", "Look for marks at known distances; the least counts."},
}

// byUnit say how anything else is measured, by the unit at the end of its name.
var byUnit = []measurement{
	{"Kg", "", "Weigh it."}, {"Meters", "", "Measure it with a tape."}, {"Degrees", "", "Measure it with a digital level."},
	{"Newtons", "", "Pull it with a spring scale."}, {"Seconds", "", "Time it with a watch."}, {"Celsius", "", "Read a thermometer there."},
	{"Liters", "", "Fill it from a measuring jug."}, {"Volts", "", "Read it with a meter under load."}, {"Amperes", "", "Read it with a clamp meter."},
}

// measuring returns what an input is called and how it is measured.
func (p *pass) measuring(path string) (title, how string) {
	bare := withoutIndices(path)
	for _, m := range measurements {
		if strings.HasSuffix(bare, m.pattern) || strings.HasPrefix(bare, m.pattern) {
			return m.title + p.entryName(path), m.how
		}
	}
	title = spoken(bare[strings.LastIndex(bare, ".")+1:]) + p.entryName(path)
	for _, m := range byUnit {
		if strings.HasSuffix(bare, m.pattern) {
			return title, m.how
		}
	}
	return title, "Measure it and enter the value as measured, with its spread."
}

// withoutIndices turns "engines[0].x" into "engines[].x".
func withoutIndices(path string) string {
	var out strings.Builder
	inside := false
	for _, c := range path {
		inside = inside && c != ']'
		if !inside {
			out.WriteRune(c)
		}
		inside = inside || c == '['
	}
	return out.String()
}

// entryName returns the name of the list's entry that a path passes through, in brackets; empty where it has none.
func (p *pass) entryName(path string) string {
	for _, list := range []struct {
		before string
		name   func(i int) string
	}{
		{"field.obstacles", func(i int) string { return p.in.Field.Obstacles[i].Name }},
		{"model.mass.items", func(i int) string { return p.in.Model.Mass.Items[i].Name }},
		{"model.mass.tanks", func(i int) string { return p.in.Model.Mass.Tanks[i].Name }},
		{"model.mass.scaleReadings", func(i int) string { return p.in.Model.Mass.ScaleReadings[i].Name }},
		{"model.surfaces", func(i int) string { return p.in.Model.Surfaces[i].Name }},
		{"model.dragItems", func(i int) string { return p.in.Model.DragItems[i].Name }},
	} {
		rest, found := strings.CutPrefix(path, list.before+"[")
		digits, _, _ := strings.Cut(rest, "]")
		if i, err := strconv.Atoi(digits); found && err == nil {
			if name := list.name(i); name != "" {
				return " (" + name + ")"
			}
		}
	}
	return ""
}

// units are the ends of names that are no words.
var units = []string{
	"SquareMeters", "CubicMeter", "MetersPerSecond", "KgPerSecond", "GramsPerMinute", "Meters", "Kg", "Degrees", "Newtons", "Seconds", "Celsius", "Pascals",
	"Liters", "Ratio", "Volts", "Amperes", "Watts",
}

// spoken turns the last name of a path into words: "strutFrontalAreaSquareMeters" is "Strut frontal area".
func spoken(name string) string {
	for _, unit := range units {
		if rest, found := strings.CutSuffix(name, unit); found && rest != "" {
			name = rest
			break
		}
	}
	var out strings.Builder
	for i, c := range name {
		switch {
		case i == 0:
			out.WriteString(strings.ToUpper(string(c)))
		case c >= 'A' && c <= 'Z':
			out.WriteString(" " + strings.ToLower(string(c)))
		default:
			out.WriteRune(c)
		}
	}
	return out.String()
}
