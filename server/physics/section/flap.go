package section

import (
	"math"

	"pitgate/server/physics/elementary"
)

// FlapEfficiency is the part of the thin-aerofoil effectiveness a real plain flap keeps at small angles: the boundary layer and the
// gap take the rest.
//
// Source: common practice, 0.75 to 0.85 for sealed plain flaps; no source verified.
const FlapEfficiency = 0.8

// FlapEffectiveness returns the change of zero-lift incidence per angle of a plain flap.
//
// Formula: tau = 1 - (t - sin t)/pi; cos t = 2 E - 1, E flap chord over chord (t = pi without flap, 0 for the whole chord).
// Valid for: small angles, sealed gap, before FlapEfficiency.
// Source: thin-aerofoil theory (Glauert 1927).
func FlapEffectiveness(chordRatio float64) float64 {
	t := hingeAngle(chordRatio)
	return 1 - (t-elementary.Sin(t))/math.Pi
}

// FlapMoment returns the quarter-chord moment coefficient of the section per radian of a plain flap.
//
// Formula: cm_delta = -sin t (1 - cos t)/2; cos t = 2 E - 1.
// Valid for: as FlapEffectiveness.
// Source: thin-aerofoil theory (Glauert 1927).
func FlapMoment(chordRatio float64) float64 {
	t := hingeAngle(chordRatio)
	return -float64(0.5 * float64(elementary.Sin(t)*(1-elementary.Cos(t))))
}

// hingeAngle returns the angle of the hinge, cos t = 2 E - 1.
func hingeAngle(chordRatio float64) float64 {
	c := float64(2*max(0, min(1, chordRatio))) - 1
	return elementary.Atan2(math.Sqrt(max(0, 1-float64(c*c))), c)
}

// FlapLimitGain returns what a plain flap adds to the greatest lift coefficient of its section.
//
// Formula: 0.9 k sin(d)/sin(60 deg) min(1, E/0.25); where d angle, E flap chord ratio, k = 0.65 for Re below 5e5.
// Valid for: plain flaps to 60 degrees; an upward flap takes as much away.
// Source: 0.9 by Arnedo, Fundamentals of Aerospace Engineering, Table 3.1; k is judgement.
func FlapLimitGain(chordRatio, angle float64) float64 {
	const full, lowReynolds = 0.9, 0.65
	bounded := max(-math.Pi/3, min(math.Pi/3, angle))
	share := elementary.Sin(bounded) / (math.Sqrt(3) / 2)
	return float64(float64(full*lowReynolds) * float64(share*max(0, min(1, chordRatio/0.25))))
}
