package weather

import "pitgate/server/physics/elementary"

// Averaging times of a reported mean wind and of a gust, s.
const (
	MeanPeriod = 600.0
	GustPeriod = 3.0
)

// TurbulenceIntensity returns the standard deviation of the wind over its mean at a height (m) over ground of a roughness length (m).
//
//	I = 1 / ln(z/z0)
//
// Valid for: neutral surface layer, z above z0. Source: common form with a standard deviation of 2.5 friction velocities and a von Karman
// constant of 0.4 (from memory).
func TurbulenceIntensity(height, roughnessLength float64) float64 {
	return 1 / elementary.Log(height/roughnessLength)
}

// GustFactor returns the highest short mean within a longer mean, over the longer mean.
//
//	G = 1 + 0.42 I ln(T/t)
//
// where I is the turbulence intensity, T the longer and t the shorter averaging time (s).
// Valid for: t from 1 s to T. Source: Cook's form of the gust factor (from memory).
func GustFactor(intensity, meanPeriod, gustPeriod float64) float64 {
	return 1 + float64(0.42*intensity*elementary.Log(meanPeriod/gustPeriod))
}

// LeastGustFactor returns the gust factor to expect at 10 m over a class of ground when a report names no gust: a report names one only when
// it exceeds the mean by 5 m/s. It is 1 for a class that does not exist.
//
// Valid for: ten-minute mean and three-second gust, no thunderstorm. Source: GustFactor and TurbulenceIntensity.
func LeastGustFactor(ground Roughness) float64 {
	z0 := ground.Length()
	if z0 <= 0 {
		return 1
	}
	return GustFactor(TurbulenceIntensity(StandardHeight, z0), MeanPeriod, GustPeriod)
}
