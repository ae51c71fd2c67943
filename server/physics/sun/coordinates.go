package sun

import (
	"math"

	"pitgate/server/physics/elementary"
)

// Coordinates are the sun as seen from the centre of the earth.
type Coordinates struct {
	Longitude      float64 // apparent, along the ecliptic of the date, rad
	Obliquity      float64 // true, of the ecliptic, rad
	RightAscension float64 // apparent, rad from 0 to a full circle
	Declination    float64 // apparent, rad
	Distance       float64 // astronomical units
}

// Apparent returns the sun's apparent place at a number of Julian centuries of dynamical time since 2000 January 1.5.
//
//	tan(a) = cos(e) sin(l)/cos(l),  sin(d) = sin(e) sin(l)
//
// where l is the apparent longitude and e the true obliquity.
// Valid for: within one century of 2000, 0.01 degrees. Source: J. Meeus, Astronomical Algorithms (1998), chapter 25, lower accuracy.
func Apparent(centuries float64) Coordinates {
	anomaly := meanAnomaly(centuries)
	centre := equationOfCentre(centuries, anomaly)
	node := degrees(125.04 - float64(1934.136*centuries))
	longitude := trueLongitude(centuries, centre) - degrees(0.00569) - float64(degrees(0.00478)*elementary.Sin(node))
	obliquity := meanObliquity(centuries) + float64(degrees(0.00256)*elementary.Cos(node))
	sine := elementary.Sin(longitude)
	return Coordinates{
		Longitude: withinTurn(longitude), Obliquity: obliquity,
		RightAscension: withinTurn(elementary.Atan2(float64(elementary.Cos(obliquity)*sine), elementary.Cos(longitude))),
		Declination:    arcsine(float64(elementary.Sin(obliquity) * sine)),
		Distance:       distance(centuries, anomaly+centre),
	}
}

// meanAnomaly returns the sun's mean anomaly, rad.
//
//	M = 357.52911 + 35999.05029 T - 0.0001537 T^2
//
// where T is Julian centuries since 2000. Valid for: as Apparent. Source: Meeus, equation 25.3.
func meanAnomaly(t float64) float64 {
	return degrees(357.52911 + float64(35999.05029*t) - float64(0.0001537*float64(t*t)))
}

// equationOfCentre returns the true less the mean anomaly, rad.
//
//	C = (1.914602 - 0.004817 T - 0.000014 T^2) sin M + (0.019993 - 0.000101 T) sin 2M + 0.000289 sin 3M
//
// where M is the mean anomaly, rad, and T Julian centuries since 2000. Valid for: as Apparent. Source: Meeus, chapter 25.
func equationOfCentre(t, m float64) float64 {
	first := 1.914602 - float64(0.004817*t) - float64(0.000014*float64(t*t))
	second := 0.019993 - float64(0.000101*t)
	return degrees(float64(first*elementary.Sin(m)) + float64(second*elementary.Sin(2*m)) + float64(0.000289*elementary.Sin(3*m)))
}

// trueLongitude returns the sun's geometric longitude, rad.
//
//	L = 280.46646 + 36000.76983 T + 0.0003032 T^2 + C
//
// where C is the equation of the centre, rad. Valid for: as Apparent. Source: Meeus, equation 25.2.
func trueLongitude(t, centre float64) float64 {
	return degrees(280.46646+float64(36000.76983*t)+float64(0.0003032*float64(t*t))) + centre
}

// meanObliquity returns the mean obliquity of the ecliptic, rad.
//
//	e = 23 26' 21.448" - 46.8150" T - 0.00059" T^2 + 0.001813" T^3
//
// where T is Julian centuries since 2000. Valid for: as Apparent. Source: Meeus, equation 22.2.
func meanObliquity(t float64) float64 {
	square := float64(t * t)
	seconds := 84381.448 - float64(46.8150*t) - float64(0.00059*square) + float64(0.001813*float64(square*t))
	return degrees(seconds / 3600)
}

// distance returns the distance of the sun, astronomical units.
//
//	R = 1.000001018 (1 - e^2) / (1 + e cos v)
//
// where v is the true anomaly, rad, and e the eccentricity 0.016708634 - 0.000042037 T - 0.0000001267 T^2.
// Valid for: as Apparent. Source: Meeus, equations 25.4 and 25.5.
func distance(t, anomaly float64) float64 {
	e := 0.016708634 - float64(0.000042037*t) - float64(0.0000001267*float64(t*t))
	return float64(1.000001018*(1-float64(e*e))) / (1 + float64(e*elementary.Cos(anomaly)))
}

// siderealAngle returns the mean sidereal time at Greenwich as an angle, rad.
//
//	s = 280.46061837 + 360.98564736629 d + 0.000387933 T^2 - T^3/38710000
//
// where d is days of universal time since 2000 January 1.5 and T the same in Julian centuries.
// Valid for: as Apparent. Source: Meeus, equation 12.4.
func siderealAngle(days float64) float64 {
	t := days / daysPerCentury
	square := float64(t * t)
	whole := math.Floor(days)
	turned := float64(360*(days-whole)) + float64(0.98564736629*days)
	return withinTurn(degrees(280.46061837 + turned + float64(0.000387933*square) - float64(square*t)/38710000))
}

// arcsine returns the angle, rad, of a sine, which is held between -1 and 1.
//
// Valid for: any number. Source: definition.
func arcsine(sine float64) float64 {
	sine = max(-1, min(1, sine))
	return elementary.Atan2(sine, math.Sqrt(max(0, float64((1-sine)*(1+sine)))))
}
