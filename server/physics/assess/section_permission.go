package assess

import (
	"pitgate/server/physics/weather"
)

// localTime is the time of the day at the field: the clock that day.time was written by.
type localTime struct {
	days   int // since 1970-01-01
	minute int // since midnight
	known  bool
}

// localTimeOf reads the date and the minute of a time as RFC 3339 writes it, before its offset is taken off.
func localTimeOf(text string) localTime {
	if _, err := weather.Moment(text); err != nil {
		return localTime{}
	}
	days, known := daysOf(text[:len("2006-01-02")])
	minute, _ := minuteOf(text[len("2006-01-02T"):len("2006-01-02T15:04")])
	return localTime{days: days, minute: minute, known: known}
}

// daysOf returns the days from 1970-01-01 to a date such as "2026-04-01", false when it is none.
func daysOf(date string) (int, bool) {
	moment, err := weather.Moment(date + "T00:00:00Z")
	return int(moment / secondsPerDay), err == nil
}

// minuteOf returns the minutes since midnight of a time such as "20:00", false when it is none.
func minuteOf(clock string) (int, bool) {
	moment, err := weather.Moment("1970-01-01T" + clock + ":00Z")
	return int(moment / secondsPerMinute), err == nil
}

// quiet reports whether a minute of the day lies in daily hours from one minute to before another, over midnight where the first is the
// later. Hours that end as they begin are none.
func quiet(minute, from, to int) bool {
	if from <= to {
		return minute >= from && minute < to
	}
	return minute >= from || minute < to
}

// answerPermission holds the time of the day within the dates and outside the quiet hours of the field owner's permission.
func (p *pass) answerPermission() {
	if !p.base() {
		p.keepStill("field.permission")
		return
	}
	n := p.need()
	now := localTimeOf(p.today().Time)
	if !now.known {
		n.lack("day.time")
	}
	allowed := answer{id: "field.permission", limit: limit{set: true, rule: "field owner's terms"}}
	if field := p.in.Field; field == nil || field.Permission == nil {
		n.lack("field.permission")
	} else {
		n.permitted(field.Permission, now, &allowed)
	}
	allowed.missing = n.missing
	p.conclude(allowed)
}

// permitted answers from a permission and names what that lacks.
func (n *need) permitted(permission *Permission, now localTime, allowed *answer) {
	from, fromKnown := daysOf(permission.ValidFromDate)
	to, toKnown := daysOf(permission.ValidToDate)
	n.lackUnless(fromKnown, "field.permission.validFromDate")
	n.lackUnless(toKnown, "field.permission.validToDate")
	silent := n.quietHours(permission, now)
	if !n.met() {
		return
	}
	terms := permissionWords(permission)
	allowed.value = float64(to - now.days)
	allowed.note = say("%s %s left.", terms, dayWords(to-now.days))
	switch {
	case now.days > to:
		allowed.note = say("%s It ended %s ago.", terms, dayWords(now.days-to))
	case now.days < from:
		allowed.never = say("%s It begins in %s.", terms, dayWords(from-now.days))
	case silent:
		allowed.never = say("%s Nothing may fly from %s to %s local time, and the day is planned for %02d:%02d.",
			terms, permission.QuietFrom, permission.QuietTo, now.minute/60, now.minute%60)
	}
}

// lackUnless names a missing input unless it is known.
func (n *need) lackUnless(known bool, name string) {
	if !known {
		n.lack(name)
	}
}

// quietHours reports whether the time lies in the quiet hours; one end without the other is missing, none at all are no quiet hours.
func (n *need) quietHours(permission *Permission, now localTime) bool {
	if permission.QuietFrom == "" && permission.QuietTo == "" {
		return false
	}
	from, fromKnown := minuteOf(permission.QuietFrom)
	to, toKnown := minuteOf(permission.QuietTo)
	n.lackUnless(fromKnown, "field.permission.quietFrom")
	n.lackUnless(toKnown, "field.permission.quietTo")
	return quiet(now.minute, from, to)
}

// permissionWords says who granted a permission and for which days.
func permissionWords(permission *Permission) string {
	by := "The permission names nobody who granted it and runs"
	if permission.GrantedBy != "" {
		by = "Granted by " + permission.GrantedBy
	}
	return say("%s from %s to %s.", by, permission.ValidFromDate, permission.ValidToDate)
}

// dayWords says a number of days.
func dayWords(days int) string {
	if days == 1 {
		return "1 day"
	}
	return say("%d days", days)
}
