package packs

import (
	"math"

	"pitgate/server/physics/elementary"
)

// TemperatureFactor returns the share of the capacity at 25 C that a cell gives at a temperature, 0 to 1.
//
// where kelvin is the cell's temperature (K). Valid for: -20 to 60 C at moderate rates, within 10 points; colder is a rough continuation.
// Source: measured curves of a 10 Ah iron phosphate cell; common practice for the others.
func (c Chemistry) TemperatureFactor(kelvin float64) float64 {
	return interpolate(c.of().capacity, kelvin)
}

// RateFactor returns the share of the stated capacity that a cell gives at a mean rate, 0 to 1: (r0/r)^(k-1) above the rated rate r0, 1 below it.
//
// where current is in A, capacity in Ah, r their quotient (1/h), k the exponent of the chemistry. Valid for: rates up to 20/h. Source: Peukert's law;
// exponents by common practice.
func (c Chemistry) RateFactor(current, capacity float64) float64 {
	rate := current / capacity
	if figures := c.of(); rate > figures.ratedRate {
		return elementary.Pow(figures.ratedRate/rate, figures.peukert-1)
	}
	return 1
}

// CalendarLoss returns the share of capacity lost in store: 75.4 exp(-3340/T) exp(353 s/T) d^0.512.
//
// where kelvin is T of the store (K), charge s (0 to 1), days d. Valid for: nickel-cobalt-aluminium cells at 25 to 50 C up to 300 days; colder and longer is an
// extrapolation. Source: life model of the National Renewable Energy Laboratory, 2018.
func CalendarLoss(kelvin, charge, days float64) float64 {
	if !(days > 0) {
		return 0
	}
	shape := elementary.Exp(-3340/kelvin) * elementary.Exp(353*charge/kelvin)
	return clamp(75.4*shape*elementary.Pow(days, 0.512), 0, 1)
}

// Age is what a pack has been through.
type Age struct {
	Years       float64
	Cycles      float64 // full charges
	StoreKelvin float64 // 0: RoomCopper
	StoreCharge float64 // 0: half
}

const (
	daysPerYear    = 365.25
	lifeLoss       = 0.2  // share lost at the end of life
	nickelYearLoss = 0.05 // share lost a year, judgement
	mostLoss       = 0.9
)

// Loss returns the share of capacity that age has taken, 0 to 0.9: store and cycles added.
//
// where cycles count for a fifth at the chemistry's life. Valid for: packs never run empty or stored full. Source: CalendarLoss; lives by common practice.
func (c Chemistry) Loss(age Age) float64 {
	kelvin, charge := age.StoreKelvin, age.StoreCharge
	if !(kelvin > 0) {
		kelvin = RoomCopper
	}
	if !(charge > 0) {
		charge = 0.5
	}
	figures, years := c.of(), math.Max(0, age.Years)
	stored := nickelYearLoss * years
	if figures.calendarLoss {
		stored = CalendarLoss(kelvin, math.Min(charge, 1), years*daysPerYear)
	}
	return clamp(float64(stored)+float64(lifeLoss*math.Max(0, age.Cycles)/figures.cycleLife), 0, mostLoss)
}

// SelfDischarge returns the share of charge lost in store, 0 to 1: 1 - (1 - m)^(months).
//
// where monthly is m at room temperature: 0.01 to 0.03 lithium, 0.001 to 0.03 low-discharge nickel, 0.14 to 0.7 ordinary nickel. Valid for: room
// temperature; nickel doubles every 10 K. Source: published ranges of cells.
func SelfDischarge(monthly, months float64) float64 {
	return 1 - elementary.Pow(1-clamp(monthly, 0, 1), math.Max(0, months))
}

// Endurance returns the time a charge lasts, s: 3600 Q/I.
//
// where usable is Q (Ah) and current the mean I (A). A current of 0 lasts mostEndurance. Valid for: steady mean. Source: definition of the ampere hour.
func Endurance(usable, current float64) float64 {
	if !(current > 0) {
		return mostEndurance
	}
	return math.Min(mostEndurance, secondsPerHour*math.Max(0, usable)/current)
}

// mostEndurance is a week, s: longer says nothing.
const mostEndurance = 7 * 24 * secondsPerHour

// Flights returns how many whole flights a charge gives with a reserve, at most 1000.
//
// where usable is in Ah, flight the charge drawn in one (Ah), reserve the share of usable never planned for (0 to 1; 0.3 is common practice).
// Valid for: flights alike. Source: division.
func Flights(usable, flight, reserve float64) int {
	const most = 1000.0
	planned := float64(usable * (1 - clamp(reserve, 0, 1)))
	if !(flight > 0) || planned/flight > most {
		return most
	}
	return int(math.Max(0, planned/flight))
}

// NeededCapacity returns the stated capacity that gives a charge, Ah: Q/(f (1-reserve)).
//
// where drawn is Q (Ah), factors f the product of the shares of temperature, rate, age and charge (above 0). Valid for: f held fixed.
// Source: inverse of Flights for one flight.
func NeededCapacity(drawn, factors, reserve float64) float64 {
	return drawn / math.Max(1e-6, factors*(1-clamp(reserve, 0, 0.999)))
}
