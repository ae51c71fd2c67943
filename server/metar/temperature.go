package metar

import (
	"math"
	"strings"

	"pitgate/server/physics/air"
)

// Limits beyond which a value is taken for a misprint.
const (
	coldest, hottest = -90.0, 60.0   // degrees Celsius
	lowestQNH        = 850.0 * 100   // Pa
	highestQNH       = 1100.0 * 100  // Pa
	pressureGap      = 1.5 * StepQNH // Pa: what a pressure given twice may differ by
	temperatureForm  = "temperature and dew point are two figures each, M for minus, such as 17/M02"
	pressureForm     = "the pressure is Q and four figures in hectopascals, or A and four in hundredths of an inch, such as Q1018 or A3008"
	pressureRange    = "sea-level pressure lies between 850 and 1100 hPa"
	pressureTwice    = "the two pressures of the report differ"
	dewPointAbove    = "the dew point is above the temperature"
	temperatureRange = "air temperature lies between -90 and 60 degrees"
)

// readTemperature takes temperature and dew point, either of which may be slashes or, at the end, left out.
func readTemperature(d *decoder, g group) (bool, error) {
	split := strings.Index(g.text, "/")
	if strings.HasPrefix(g.text, "///") {
		split = 2
	}
	if split < 0 {
		return false, nil
	}
	temperature, isTemperature := parseCelsius(g.text[:split])
	dewPoint, isDewPoint := parseCelsius(g.text[split+1:])
	if !isTemperature || !isDewPoint || g.text == "/" {
		return false, nil
	}
	if problem := impossibleTemperatures(temperature, dewPoint); problem != "" {
		return true, fault(g, "%s", problem)
	}
	d.report.Temperature, d.report.DewPoint = temperature, dewPoint
	return true, nil
}

// parseCelsius reads two figures with M for minus; slashes or nothing are an unknown value.
func parseCelsius(text string) (Value, bool) {
	if text == "" || slashes(text, 2) {
		return Value{}, true
	}
	figures, below := strings.CutPrefix(text, "M")
	if len(figures) != 2 || !allDigits(figures) {
		return Value{}, false
	}
	value := float64(number(figures))
	if below && value > 0 {
		value = -value
	}
	return known(value), true
}

// impossibleTemperatures returns what cannot be about a temperature and a dew point.
func impossibleTemperatures(temperature, dewPoint Value) string {
	for _, value := range []Value{temperature, dewPoint} {
		if value.Known && (value.Number < coldest || value.Number > hottest) {
			return temperatureRange
		}
	}
	if temperature.Known && dewPoint.Known && dewPoint.Number > temperature.Number {
		return dewPointAbove
	}
	return ""
}

// readPressure takes the QNH in hectopascals or in hundredths of an inch of mercury.
func readPressure(d *decoder, g group) (bool, error) {
	if len(g.text) < 2 || (g.text[0] != 'Q' && g.text[0] != 'A') {
		return false, nil
	}
	figures := g.text[1:]
	if slashes(figures, 4) {
		return true, nil
	}
	if !isDigit(figures[0]) {
		return false, nil
	}
	if len(figures) != 4 || !allDigits(figures) {
		return true, fault(g, pressureForm)
	}
	size := pascalsPerHectopascal
	if g.text[0] == 'A' {
		size = pascalsPerHundredthInch
	}
	return true, d.setQNH(g, float64(number(figures))*size)
}

// setQNH keeps the first pressure and holds a second one against it.
func (d *decoder) setQNH(g group, pressure float64) error {
	qnh := &d.report.QNH
	switch {
	case pressure < lowestQNH || pressure > highestQNH:
		return fault(g, pressureRange)
	case qnh.Known && math.Abs(qnh.Number-pressure) > pressureGap:
		return fault(g, pressureTwice)
	case !qnh.Known:
		*qnh = known(pressure)
	}
	return nil
}

// RelativeHumidity returns the relative humidity, 0 to 1, over water.
//
//	h = p_sv(T_d) / p_sv(T)
//
// where T is the temperature, T_d the dew point and p_sv the saturation pressure of air.SaturationPressure. Both temperatures are rounded to
// whole degrees, which alone can move the result by about 0.06.
// Valid for: dew points from -30 C. Source: definition of the dew point; saturation pressure of CIPM-2007.
func (r Report) RelativeHumidity() (float64, error) {
	if !r.Temperature.Known || !r.DewPoint.Known {
		return 0, errNoHumidity
	}
	saturated := air.SaturationPressure(r.Temperature.Number + air.FreezingPoint)
	return air.SaturationPressure(r.DewPoint.Number+air.FreezingPoint) / saturated, nil
}
