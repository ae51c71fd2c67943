package loads

import (
	"math"

	"pitgate/server/physics/elementary"
)

// EllipticShear returns the shear of an elliptic loading at a share of the half span, N.
//
// Formula: V = (L/2) (1 - (2/pi) (e sqrt(1 - e^2) + asin e)); where L lift of both sides, N, e = y/s.
// Valid for: e from 0 to 1.
// Source: integration of the ellipse, in any text on wing theory.
func EllipticShear(lift, share float64) float64 {
	e := max(0, min(1, share))
	return 0.5 * lift * (1 - float64(2/math.Pi*ellipseArea(e)))
}

// EllipticBending returns the bending of an elliptic loading at a share of the half span, N m; at the root L b/(3 pi).
//
// Formula: M = (4 L/(pi b)) s^2 ((1 - e^2)^1.5/3 - e (pi/4 - (e sqrt(1 - e^2) + asin e)/2)); where b span, s half of it, m, others as EllipticShear.
// Valid for, source: EllipticShear.
func EllipticBending(lift, span, share float64) float64 {
	e := max(0, min(1, share))
	rest := 1 - float64(e*e)
	shape := float64(rest*math.Sqrt(rest))/3 - float64(e*(0.25*math.Pi-float64(0.5*ellipseArea(e))))
	return lift * span / math.Pi * shape
}

// ellipseArea returns e sqrt(1 - e^2) + asin e.
func ellipseArea(e float64) float64 {
	root := math.Sqrt(max(0, 1-float64(e*e)))
	return float64(e*root) + elementary.Atan2(e, root)
}

// RectangularBending returns the root bending of a loading that is even along the span, N m.
//
// Formula: M = L b/8; where L lift of both sides, N, b span, m.
// Valid for: an upper bound for wings that are not washed in.
// Source: statics.
func RectangularBending(lift, span float64) float64 { return lift * span / 8 }

// TaperedBending returns the root bending of a loading in proportion to the chord of a straight-tapered wing, N m.
//
// Formula: M = (L/2) s (1 + 2 t)/(3 (1 + t)); where t tip chord over root chord, s half the span.
// Valid for: t from 0.
// Source: centroid of a trapezium.
func TaperedBending(lift, span, taper float64) float64 {
	return 0.25 * lift * span * (1 + float64(2*taper)) / (3 * (1 + taper))
}

// Cut is a chord at a place of the half span.
type Cut struct {
	Y, Chord float64 // m
}

// SchrenkChord returns the mean of the chord and of the ellipse of the same area, m: the loading over it is even.
//
// Formula: (c + (4 S/(pi b)) sqrt(1 - (2 y/b)^2))/2; where S area of both sides, m2, b span, m.
// Valid for: wings without much sweep, twist or flaps.
// Source: O. Schrenk, A Simple Approximation Method for Obtaining the Spanwise Lift Distribution, NACA TM 948.
func SchrenkChord(chord, y, area, span float64) float64 {
	e := max(-1, min(1, 2*y/span))
	ellipse := float64(4 * area / (math.Pi * span) * math.Sqrt(1-float64(e*e)))
	return 0.5 * (chord + ellipse)
}

// SchrenkStrips returns a half span's loading by Schrenk in strips of equal breadth for a lift at a load factor of 1 (both sides, N). The quarter chord is
// put at x = 0. Errors name the impossible field.
//
// Formula, validity, source: SchrenkChord.
func SchrenkStrips(cuts []Cut, lift float64, count int) ([]Strip, error) {
	area, span, err := measure(cuts)
	if err != nil {
		return nil, err
	}
	return stripsOf(span, lift, count, func(low, high float64) float64 {
		middle := float64(0.5 * (low + high))
		ellipse := 0.5 * area / (high - low) * (ellipsePart(2*high/span) - ellipsePart(2*low/span))
		return float64(0.5 * (chordAt(cuts, middle) + float64(ellipse)))
	})
}

// ChordStrips returns a half span's loading in proportion to the chord; arguments as SchrenkStrips.
//
// Formula: force of a strip = lift c dy/S.
// Valid for: wings of even section and little taper.
// Source: strip theory without induction.
func ChordStrips(cuts []Cut, lift float64, count int) ([]Strip, error) {
	_, span, err := measure(cuts)
	if err != nil {
		return nil, err
	}
	return stripsOf(span, lift, count, func(low, high float64) float64 { return chordAt(cuts, float64(0.5*(low+high))) })
}

// EllipticStrips returns a half span's elliptic loading in strips of equal breadth for a lift at a load factor of 1 (both sides, N); the force of each strip
// is exact, its place the middle. Errors name the impossible field.
//
// Formula: force between two places = difference of EllipticShear.
// Valid for: least induced drag on a flat wing.
// Source: Prandtl.
func EllipticStrips(span, lift float64, count int) ([]Strip, error) {
	if err := checkPositive(named{"span", span}); err != nil {
		return nil, err
	}
	return stripsOf(span, lift, count, func(low, high float64) float64 {
		return (ellipsePart(2*high/span) - ellipsePart(2*low/span)) / (high - low)
	})
}

// ellipsePart returns the share of a half ellipse's area inboard of a share of the half span.
func ellipsePart(share float64) float64 {
	return float64(2 / math.Pi * ellipseArea(max(0, min(1, share))))
}

// stripsOf cuts a half span into strips whose forces stand to each other as a density does and sum to half the lift.
func stripsOf(span, lift float64, count int, density func(low, high float64) float64) ([]Strip, error) {
	if err := checkPositive(named{"count", float64(count)}); err != nil {
		return nil, err
	}
	if err := checkFinite(named{"lift", lift}); err != nil {
		return nil, err
	}
	out, sum := make([]Strip, count), 0.0
	width := 0.5 * span / float64(count)
	for i := range out {
		low := float64(width * float64(i))
		out[i] = Strip{Y: low + float64(0.5*width), Width: width, Force: Line{PerLoad: density(low, low+width)}}
		sum += out[i].Force.PerLoad
	}
	for i := range out {
		out[i].Force.PerLoad = float64(0.5*lift) * (out[i].Force.PerLoad / sum)
		if err := checkResult(out[i].Force.PerLoad); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// SpreadMass returns the mass of a surface (both sides, kg) as items along the half span, in proportion to the square of the chord, which a structure of even
// thickness ratio has. Items lie at a share of the chord (0.4 for a built-up wing) aft of the leading edge lead(y), m. Errors name the impossible field.
//
// Formula: dm = (m/2) c^2 dy/integral of c^2 dy.
// Valid for: surfaces without single heavy masses, which are listed for themselves.
// Source: common practice of preliminary design.
func SpreadMass(cuts []Cut, mass float64, count int, share float64, lead func(y float64) float64) ([]Item, error) {
	_, span, err := measure(cuts)
	if err != nil {
		return nil, err
	}
	if err := checkNotNegative(named{"mass", mass}, named{"share", share}); err != nil {
		return nil, err
	}
	strips, err := stripsOf(span, mass, count, func(low, high float64) float64 {
		c := chordAt(cuts, float64(0.5*(low+high)))
		return float64(c * c)
	})
	if err != nil {
		return nil, err
	}
	items := make([]Item, len(strips))
	for i, s := range strips {
		items[i] = Item{Y: s.Y, Width: s.Width, Mass: s.Force.PerLoad, X: lead(s.Y) + float64(share*chordAt(cuts, s.Y))}
	}
	return items, nil
}

// measure returns area and span of both sides.
func measure(cuts []Cut) (area, span float64, err error) {
	if err := checkPositive(named{"cuts less one", float64(len(cuts) - 1)}); err != nil {
		return 0, 0, err
	}
	for i, cut := range cuts {
		if err := checkNotNegative(named{"cuts.chord", cut.Chord}, named{"cuts.y", cut.Y}); err != nil {
			return 0, 0, err
		}
		if i == 0 {
			continue
		}
		step := cut.Y - cuts[i-1].Y
		if err := checkNotNegative(named{"cuts.y less the one before", step}); err != nil {
			return 0, 0, err
		}
		area += float64(step * (cut.Chord + cuts[i-1].Chord))
	}
	span = float64(2 * cuts[len(cuts)-1].Y)
	return area, span, checkPositive(named{"area of cuts", area}, named{"span of cuts", span})
}

// chordAt returns the chord at a place, straight between cuts.
func chordAt(cuts []Cut, y float64) float64 {
	for i := 1; i < len(cuts); i++ {
		low, high := cuts[i-1], cuts[i]
		if y <= high.Y && high.Y > low.Y {
			return low.Chord + float64((high.Chord-low.Chord)*max(0, (y-low.Y)/(high.Y-low.Y)))
		}
	}
	return cuts[len(cuts)-1].Chord
}
