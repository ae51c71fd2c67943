package weather

import (
	"errors"
	"math"
	"strconv"
)

// errMoment says what a time looks like.
var errMoment = errors.New("time: has to be a date, a time and an offset, such as 2026-11-25T14:30:00+01:00 or 2026-11-25T13:30:00Z")

// Moment returns the seconds since 1970-01-01 UTC of a time as RFC 3339 writes it, with its offset, as Change, package sun and reports of
// aerodromes count them. A second numbered 60 is taken as the one after it.
//
// Valid for: years 0 to 9999. Source: RFC 3339, section 5.6.
func Moment(text string) (float64, error) {
	r := timeReader{rest: text}
	year, month, day := r.number(4, 0, 9999, "-"), r.number(2, 1, 12, "-"), r.number(2, 1, 31, "")
	r.oneOf("Tt ")
	hour, minute, second := r.number(2, 0, 23, ":"), r.number(2, 0, 59, ":"), r.number(2, 0, 60, "")
	fraction := r.fraction()
	offset := r.offset()
	if r.failed || r.rest != "" || day > daysOfMonth(year, month) {
		return 0, errMoment
	}
	seconds := 86400*daysSince1970(year, month, day) + 3600*hour + 60*minute + second - offset
	return float64(seconds) + fraction, nil
}

// timeReader takes a time apart from its front.
type timeReader struct {
	rest   string
	failed bool
}

// number takes a number of some digits within bounds, and the sign that has to follow it.
func (r *timeReader) number(digits, least, most int, sign string) int {
	if len(r.rest) < digits+len(sign) {
		r.failed = true
		return 0
	}
	value := 0
	for i := range digits {
		d := int(r.rest[i]) - '0'
		r.failed = r.failed || d < 0 || d > 9
		value = 10*value + d
	}
	r.failed = r.failed || value < least || value > most || r.rest[digits:digits+len(sign)] != sign
	r.rest = r.rest[digits+len(sign):]
	return value
}

// oneOf takes one of some characters and returns it.
func (r *timeReader) oneOf(characters string) byte {
	if r.rest != "" {
		for i := range len(characters) {
			if r.rest[0] == characters[i] {
				r.rest = r.rest[1:]
				return characters[i]
			}
		}
	}
	r.failed = true
	return 0
}

// fraction takes a point and digits where they are, and returns the part of a second.
func (r *timeReader) fraction() float64 {
	if r.rest == "" || r.rest[0] != '.' {
		return 0
	}
	end := 1
	for end < len(r.rest) && r.rest[end] >= '0' && r.rest[end] <= '9' {
		end++
	}
	value, err := strconv.ParseFloat("0"+r.rest[:end], 64)
	r.failed = r.failed || err != nil || end == 1
	r.rest = r.rest[end:]
	return value
}

// offset takes Z or hours and minutes east of Greenwich, and returns it in seconds.
func (r *timeReader) offset() int {
	sign := r.oneOf("Zz+-")
	if r.failed || sign == 'Z' || sign == 'z' {
		return 0
	}
	seconds := 3600*r.number(2, 0, 23, ":") + 60*r.number(2, 0, 59, "")
	if sign == '-' {
		return -seconds
	}
	return seconds
}

// daysOfMonth returns how many days a month has.
func daysOfMonth(year, month int) int {
	switch month {
	case 4, 6, 9, 11:
		return 30
	case 2:
		return daysSince1970(year, 3, 1) - daysSince1970(year, 2, 1)
	}
	return 31
}

// daysSince1970 returns days from 1970-01-01 to a date of the Gregorian calendar.
//
//	n = 365 y + floor(y/4) - floor(y/100) + floor(y/400) + floor((153 m + 2)/5) + d - 719469
//
// where m counts months from March, y is the year that begins in March and d the day. Valid for: years from 0. Source: common calendar
// arithmetic with the year begun in March (common practice, no source).
func daysSince1970(year, month, day int) int {
	shifted := (month + 9) % 12
	year -= shifted / 10
	floor := func(divisor int) int { return int(math.Floor(float64(year) / float64(divisor))) }
	return 365*year + floor(4) - floor(100) + floor(400) + (153*shifted+2)/5 + day - 719469
}
