package assess

import (
	"math"
	"strings"
)

const (
	secondsPerMinute = 60
	secondsPerHour   = 3600
	secondsPerDay    = 86400
)

// reportMoment finds the time of a report of code form FM 15, such as "161020Z", nearest to a moment (s since 1970-01-01 UTC): the report names
// the day of the month and no month. False when the text holds no such time.
func reportMoment(report string, near float64) (float64, bool) {
	for group := range strings.FieldsSeq(report) {
		if day, seconds, ok := dayAndTime(group); ok {
			return nearestDay(day, seconds, near)
		}
	}
	return 0, false
}

// dayAndTime reads a group of day, hour and minute, and returns the day of the month and the seconds since midnight.
func dayAndTime(group string) (day, seconds int, ok bool) {
	digits, zulu := strings.CutSuffix(group, "Z")
	if !zulu || len(digits) != 6 {
		return 0, 0, false
	}
	pair := func(i int) int {
		a, b := int(digits[i])-'0', int(digits[i+1])-'0'
		if a < 0 || a > 9 || b < 0 || b > 9 {
			return -1
		}
		return 10*a + b
	}
	day, hour, minute := pair(0), pair(2), pair(4)
	ok = day >= 1 && day <= 31 && hour >= 0 && hour <= 23 && minute >= 0 && minute <= 59
	return day, hour*secondsPerHour + minute*secondsPerMinute, ok
}

// nearestDay returns the moment nearest to another on a day of the month, at a time of the day (s). Every day of the month comes within 62 days.
func nearestDay(day, seconds int, near float64) (float64, bool) {
	today := int(math.Floor(near / secondsPerDay))
	best, found := 0.0, false
	for days := today - 62; days <= today+62; days++ {
		at := float64(days*secondsPerDay + seconds)
		if dayOfMonth(days) == day && (!found || math.Abs(at-near) < math.Abs(best-near)) {
			best, found = at, true
		}
	}
	return best, found
}

// dayOfMonth returns the day of the month of a number of days since 1970-01-01.
//
//	z = days + 719468, w = z mod 146097, y = (w - w/1460 + w/36524 - w/146096)/365, t = w - (365 y + y/4 - y/100)
//	m = (5 t + 2)/153, d = t - (153 m + 2)/5 + 1
//
// all divisions rounded down; years and months m counted from March. Valid for: dates from the year 0.
// Source: common calendar arithmetic with the year begun in March (common practice, no source).
func dayOfMonth(days int) int {
	const cycle = 146097 // days of 400 years
	w := ((days+719468)%cycle + cycle) % cycle
	year := (w - w/1460 + w/36524 - w/146096) / 365
	day := w - (365*year + year/4 - year/100)
	month := (5*day + 2) / 153
	return day - (153*month+2)/5 + 1
}
