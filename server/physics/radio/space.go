package radio

import (
	"math"

	"pitgate/server/physics/elementary"
)

// FreeSpaceLoss returns the basic transmission loss between isotropic antennas, dB.
//
//	L = 20 log10(4 pi d / lambda)
//
// where distance d is the slant range (m), lambda the wavelength of frequency (Hz). Valid for: far field, d beyond some wavelengths, nothing in the
// first Fresnel zone. Source: Recommendation ITU-R P.525 (printed as 32.4 + 20 log f + 20 log d in MHz and km).
func FreeSpaceLoss(frequency, distance float64) float64 {
	return float64(20 * elementary.Log10(4*math.Pi*distance/Wavelength(frequency)))
}

// FreeSpaceRange returns the slant range at which free space takes a loss, m: lambda/(4 pi) 10^(L/20).
//
// where loss is in dB. Valid for: as FreeSpaceLoss. Source: its inverse.
func FreeSpaceRange(frequency, loss float64) float64 {
	return Wavelength(frequency) / (4 * math.Pi) * elementary.Pow(10, loss/20)
}

// SlantRange returns the length of the straight line between two antennas, m: sqrt(x^2 + (h1-h2)^2).
//
// where x is the distance along the ground, h1 and h2 the heights (m). Valid for: flat earth. Source: plane geometry.
func SlantRange(along, height1, height2 float64) float64 {
	return math.Sqrt(square(along) + square(height1-height2))
}

// FresnelRadius returns the radius of the first Fresnel zone at a point of the path, m: sqrt(lambda d1 d2/(d1+d2)).
//
// where d1 and d2 are the distances to the two ends (m). Valid for: both much larger than the wavelength. Source: Recommendation ITU-R P.526.
func FresnelRadius(frequency, d1, d2 float64) float64 {
	return math.Sqrt(Wavelength(frequency) * d1 * d2 / (d1 + d2))
}

// KnifeEdgeParameter returns v of a single edge, none: h sqrt(2 (d1+d2)/(lambda d1 d2)).
//
// where h is the height of the edge above the straight line (m, negative below it), d1 and d2 the distances to the ends (m).
// Valid for: one sharp edge. Source: Recommendation ITU-R P.526.
func KnifeEdgeParameter(frequency, height, d1, d2 float64) float64 {
	return height * math.Sqrt(2*(d1+d2)/(Wavelength(frequency)*d1*d2))
}

// leastEdge is the parameter below which an edge takes nothing.
const leastEdge = -0.78

// KnifeEdgeLoss returns what a single edge takes, dB: 6.9 + 20 log10(sqrt((v-0.1)^2 + 1) + v - 0.1), none for v below -0.78.
//
// where v is KnifeEdgeParameter. Valid for: v above -0.7, within 0.1 dB. Source: Recommendation ITU-R P.526, recalled.
func KnifeEdgeLoss(v float64) float64 {
	if v <= leastEdge {
		return 0
	}
	u := v - 0.1
	return math.Max(0, 6.9+float64(20*elementary.Log10(math.Sqrt(square(u)+1)+u)))
}

// ThermalNoise is the density of thermal noise at 290 K, dBm in one hertz. Source: k T with k = 1.380649e-23 J/K.
const ThermalNoise = -173.975

// Sensitivities to plan with when a receiver's own is not entered, dBm: the weaker end of each band.
const (
	// PlainSensitivity is that of plain frequency-shift receivers at 2.4 GHz with 2 Mbit/s. Source: a maker's data sheet, -92 to -102 by rate.
	PlainSensitivity = -92.0
	// LowBandSensitivity is that of spread-spectrum receivers at 868 and 915 MHz. Source: common practice, -112 to -123.
	LowBandSensitivity = -112.0
	// InstalledPlan is what an installed receiver is worse by, dB. Source: common practice, 3 to 10; 0 when the sensitivity was measured in the model.
	InstalledPlan = 5.0
)

// Sensitivity returns the least power a receiver of a bandwidth can use, dBm: kT + 10 log10 B + NF + SNR.
//
// where bandwidth is B (Hz), noiseFigure NF and signalToNoise SNR (dB). Valid for: thermal noise only; an installed receiver is 3 to 10 dB worse by
// common practice. Source: textbook of receivers, recalled.
func Sensitivity(bandwidth, noiseFigure, signalToNoise float64) float64 {
	return ThermalNoise + Decibels(bandwidth) + noiseFigure + signalToNoise
}
