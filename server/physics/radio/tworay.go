package radio

import (
	"math"

	"pitgate/server/physics/elementary"
)

// DeepestNull is the most that a reflection is let take away, dB: uneven ground and the model's own size fill deeper nulls (judgement).
const DeepestNull = 40.0

// Path is two antennas over plane ground.
type Path struct {
	Along   float64 // distance along the ground, m
	Height1 float64 // of one antenna above the ground, m
	Height2 float64 // of the other, m
}

// Direct returns the length of the straight ray, m.
func (p Path) Direct() float64 { return SlantRange(p.Along, p.Height1, p.Height2) }

// Reflected returns the length of the ray by the ground, m: sqrt(x^2 + (h1+h2)^2). Source: image of an antenna in the ground.
func (p Path) Reflected() float64 { return SlantRange(p.Along, p.Height1, -p.Height2) }

// Detour returns how much longer the ray by the ground is, m: 4 h1 h2/(d1+d2), free of cancellation. Source: plane geometry.
func (p Path) Detour() float64 { return 4 * p.Height1 * p.Height2 / (p.Direct() + p.Reflected()) }

// Grazing returns the angle between the reflected ray and the ground, rad: atan((h1+h2)/x). Source: plane geometry.
func (p Path) Grazing() float64 { return elementary.Atan2(p.Height1+p.Height2, p.Along) }

// TwoRayLoss returns the loss of the direct and the reflected ray together, dB.
//
//	L = 20 log10(4 pi d1/lambda) - 20 log10 |1 + G (d1/d2) exp(-i 2 pi (d2-d1)/lambda)|
//
// where d1 and d2 are the lengths of the rays (m) and G is coefficient. The second term is held above -DeepestNull.
// Valid for: plane ground seen by both antennas, far field. Source: two-ray ground reflection, textbooks of mobile radio.
func TwoRayLoss(frequency float64, path Path, coefficient Reflection) float64 {
	return FreeSpaceLoss(frequency, path.Direct()) + GroundLoss(frequency, path, coefficient)
}

// GroundLoss returns what the reflected ray takes from the direct one, dB, negative where it adds, from -6.03 to DeepestNull.
//
// Formula, validity and source: the second term of TwoRayLoss.
func GroundLoss(frequency float64, path Path, coefficient Reflection) float64 {
	phase := 2 * math.Pi * path.Detour() / Wavelength(frequency)
	share := path.Direct() / path.Reflected()
	cosine, sine := elementary.Cos(phase), elementary.Sin(phase)
	re := 1 + float64(share*(float64(coefficient.Real*cosine)+float64(coefficient.Imaginary*sine)))
	im := share * (float64(coefficient.Imaginary*cosine) - float64(coefficient.Real*sine))
	return takenAway(square(re) + square(im))
}

// takenAway returns the loss of a ratio of powers, dB, held below DeepestNull.
func takenAway(ratio float64) float64 {
	if !(ratio > Ratio(-DeepestNull)) {
		return DeepestNull
	}
	return -Decibels(ratio)
}

// PlanningGroundLoss returns the loss by the ground to plan with, dB: GroundLoss where the detour stays below half a wavelength (beyond the last peak,
// where distance alone rules), and the depth of a null, -20 log10(1 - |G| d1/d2), nearer than that, because nobody knows a detour within a wavelength.
//
// Valid for: as TwoRayLoss. Source: its envelope; the choice is this project's.
func PlanningGroundLoss(frequency float64, path Path, coefficient Reflection) float64 {
	if path.Detour() < Wavelength(frequency)/2 {
		return GroundLoss(frequency, path, coefficient)
	}
	return takenAway(square(1 - float64(coefficient.Magnitude()*path.Direct()/path.Reflected())))
}

// FarLoss returns the loss far beyond the breakpoint, dB: 40 log10 x - 20 log10(h1 h2), the same at every frequency.
//
// where x is the distance along the ground (m), h1 and h2 the heights (m). Valid for: x beyond twice Breakpoint, within 0.1 dB, wholly reflecting
// ground. Source: textbooks of mobile radio.
func FarLoss(path Path) float64 {
	return float64(40*elementary.Log10(path.Along)) - float64(20*elementary.Log10(path.Height1*path.Height2))
}

// Breakpoint returns the distance at which FarLoss equals free space, m: 4 pi h1 h2/lambda.
//
// where h1 and h2 are the heights (m). Valid for: heights of several wavelengths. Source: textbooks of mobile radio.
func Breakpoint(frequency, height1, height2 float64) float64 {
	return 4 * math.Pi * height1 * height2 / Wavelength(frequency)
}

// LastPeak returns the distance of the outermost maximum, m: 4 h1 h2/lambda; nearer than it nulls and peaks follow each other.
//
// where h1 and h2 are the heights (m). Valid for: distance much larger than the heights. Source: two rays in phase.
func LastPeak(frequency, height1, height2 float64) float64 {
	return 4 * height1 * height2 / Wavelength(frequency)
}

// NullDistance returns where along the ground the null of a number lies, counted inwards from 1, m, and false when there is none.
//
//	d2 - d1 = n l gives d1 = (4 h1 h2 - n^2 l^2)/(2 n l) and x = sqrt(d1^2 - (h1-h2)^2)
//
// where h1 and h2 are the heights (m), n the number, l the wavelength (m). Valid for: wholly reflecting ground. Source: detour of whole wavelengths.
func NullDistance(frequency, height1, height2 float64, number int) (float64, bool) {
	detour := float64(float64(number) * Wavelength(frequency))
	if number < 1 || !(height1 > 0 && height2 > 0) {
		return 0, false
	}
	direct := (float64(4*height1*height2) - square(detour)) / (2 * detour)
	rest := square(direct) - square(height1-height2)
	if !(direct > 0) || !(rest > 0) {
		return 0, false
	}
	return math.Sqrt(rest), true
}
