//go:build !js

package document

import (
	"fmt"
	"time"

	"pitgate/server/metar"
	"pitgate/server/physics/assess"
)

// roundedSpread is one standard deviation over half the step of a value that is rounded to steps: 1/sqrt(3).
const roundedSpread = 0.57735

// DayOf writes what an aerodrome report says as conditions of the day, and what to bear in mind. Near is the moment that decides the month, which a
// report does not name. Each value is measured at the report's station; the spread is that of rounding and of the instruments. What the report leaves
// out is absent.
func DayOf(report metar.Report, text string, near time.Time) (day assess.DayConditions, notes []string) {
	day.Metar = text
	if moment, err := report.Time.Near(near.Unix()); err == nil {
		day.Time = time.Unix(moment, 0).UTC().Format(time.RFC3339)
	}
	windOf(report.Wind, &day)
	day.TemperatureCelsius = measured(report.Temperature, 0.5)
	day.DewPointCelsius = measured(report.DewPoint, 0.5)
	if humidity, err := report.RelativeHumidity(); err == nil {
		day.RelativeHumidityRatio = measured(metar.Value{Number: humidity, Known: true}, 0.04)
	}
	day.QnhPascals = measured(report.QNH, 50)
	day.VisibilityMeters = visibilityOf(report)
	day.CloudBaseMeters = measured(report.LowestBase(), 30)
	return day, weatherNotes(report)
}

// measured returns a value that the report holds as a measured quantity; nothing where it is left out.
func measured(v metar.Value, spread float64) *assess.Quantity {
	if !v.Known {
		return nil
	}
	return &assess.Quantity{Value: &v.Number, Basis: assess.BasisMeasured, Spread: &spread}
}

// windOf writes mean, gust and direction. A calm has no direction and needs none; a changing one is left out.
func windOf(wind metar.Wind, day *assess.DayConditions) {
	const speedSpread = metar.HalfStepKnots*roundedSpread + 0.25
	day.WindSpeedMetersPerSecond = measured(wind.Speed, speedSpread)
	day.GustSpeedMetersPerSecond = measured(wind.Gust, speedSpread)
	if wind.Calm || wind.Variable {
		return
	}
	day.WindDirectionDegrees = measured(wind.Direction, metar.HalfStepDirection*roundedSpread+5)
	if q := day.WindDirectionDegrees; q != nil && wind.HasSector {
		half := (wind.SectorTo - wind.SectorFrom) / 2
		if half < 0 {
			half += 180
		}
		*q.Spread = max(*q.Spread, half/2)
	}
}

// visibilityOf returns the lowest visibility in any direction.
func visibilityOf(report metar.Report) *assess.Quantity {
	least := report.LeastVisibility()
	return measured(least, least.Number*0.1)
}

// weatherNotes says what the conditions of the day have no field for.
func weatherNotes(report metar.Report) []string {
	var notes []string
	if report.Station != "" {
		notes = append(notes, "Measured at "+report.Station+": say what differs at the field.")
	}
	if report.Wind.Variable {
		notes = append(notes, "The wind has no one direction: look at every direction.")
	}
	if report.Wind.Speed.Known && !report.Wind.Gust.Known && !report.Wind.Calm {
		notes = append(notes, "No gust is reported: it lies less than 5 m/s above the mean, and the least gust of the terrain is taken.")
	}
	if report.Wind.HasSector {
		notes = append(notes, fmt.Sprintf("The wind turns between %.0f and %.0f degrees.", report.Wind.SectorFrom, report.Wind.SectorTo))
	}
	if report.Visibility.AtLeast {
		notes = append(notes, "The visibility is at least what is given.")
	}
	for _, w := range report.Weather {
		notes = append(notes, "Present weather: "+w.Text+".")
	}
	if report.Convective() {
		notes = append(notes, "Thunderclouds or towering clouds are reported: expect gusts from any direction.")
	}
	if report.Trend != "" && report.Trend != "NOSIG" {
		notes = append(notes, "Trend: "+report.Trend+".")
	}
	return notes
}
