// Package metar reads an aerodrome report: a METAR or SPECI in the code form FM 15 or FM 16 of the WMO Manual on Codes (No. 306), with the
// statute miles and inches of mercury of North America. It decodes and never encodes, holds no clock and reads nothing but the text.
//
// Decode refuses a text it does not wholly understand, up to the trend and the remarks, which are kept as text. What a report leaves out, or
// gives as slashes, is absent in the Report and never zero; Report.Absent names it. A report without wind or time is still a report: only
// what needs them (Wind.Fixed, Clock.Near) refuses.
//
// Values are in m/s, m, Pa and degrees Celsius, directions in degrees true. They are measured at the station the report names, at an unknown
// distance from a flying field, and rounded as the constants below say.
//
// What feeds a field of the conditions of the day:
//
//	field of the day           from the report                               when absent
//	time                       Time.Near(reference)                          Time.Known false
//	windSpeedMetersPerSecond   Wind.Speed                                    Wind.Speed.Known false
//	windDirectionDegrees       Wind.Direction                                calm or variable: every direction has to hold
//	gustSpeedMetersPerSecond   Wind.Gust                                     not 10 kt above the mean: take the least gust of the terrain
//	windHeightMeters           10 m, the height of aerodrome wind
//	temperatureCelsius         Temperature
//	dewPointCelsius            DewPoint
//	relativeHumidityRatio      RelativeHumidity()                            temperature or dew point absent: error
//	qnhPascals                 QNH
//	visibilityMeters           Visibility.Meters, LeastVisibility()          Visibility.Known false
//	cloudBaseMeters            Ceiling(); LowestBase() is the careful choice
//	metar                      the text itself
//
// Basis of every value: measured, at the station.
package metar

// Conversions into SI.
const (
	metersPerSecondPerKnot       = 1852.0 / 3600
	metersPerSecondPerKilometer  = 1 / 3.6
	metersPerStatuteMile         = 1609.344
	metersPerHundredFeet         = 30.48
	pascalsPerHectopascal        = 100.0
	pascalsPerHundredthInch      = 33.86389
	metersReportedAsTenOrMore    = 10000.0
	metersReportedAsLessThanThis = 50.0
)

// Half of the step in which a value is reported: what a reported value can differ from the measured one by rounding alone.
const (
	// HalfStepKnots of the wind speed, m/s.
	HalfStepKnots = metersPerSecondPerKnot / 2
	// HalfStepDirection of the wind direction, degrees.
	HalfStepDirection = 5.0
	// HalfStepTemperature of temperature and dew point, K.
	HalfStepTemperature = 0.5
	// StepQNH of a pressure in hectopascals, Pa: it is rounded down, so that the pressure lies up to one step above.
	StepQNH = pascalsPerHectopascal
)

// MaximumLength is the longest text Decode reads, bytes.
const MaximumLength = 800
