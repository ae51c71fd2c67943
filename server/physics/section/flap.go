package section

import (
	"math"

	"pitgate/server/physics/elementary"
)

// FlapEfficiency is the part of the thin-aerofoil effectiveness a real plain flap keeps at small angles: the boundary layer and the
// gap take the rest.
//
// Source: common practice, 0.75 to 0.85 for sealed plain flaps. A 22 % flap sealed by tape reached all of the theory from Re 1.5e5 to 3e5
// (Airfoils at Low Speeds, 1989); the lower value is kept, because a control that does less is the case to be ready for.
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

// GapOpen is the part of a sealed flap's effectiveness that one with an open gap keeps.
//
// Source: common practice, 0.8 to 0.9; no source verified.
const GapOpen = 0.85

// keptAtAngle is the share of the linear effectiveness a plain flap keeps at an angle, degrees: the flow leaves its upper side.
var keptAtAngle = [][2]float64{{12, 1}, {15, 0.96}, {20, 0.86}, {25, 0.76}, {30, 0.67}, {40, 0.55}, {50, 0.48}, {60, 0.43}}

// FlapKept returns the share of the linear effectiveness that is left at an angle, and one standard deviation.
//
// Formula: 1 to 12 degrees, then a curve through 0.86 at 20, 0.67 at 30, 0.48 at 50 degrees; held at 60.
// Valid for: plain flaps, elevons and flaperons of 15 to 40 % chord.
// Source: empirical correction of plain flaps, USAF Stability and Control DATCOM 6.1.1 (from memory).
func FlapKept(angle float64) (share, spread float64) {
	degrees := math.Abs(angle) * 180 / math.Pi
	if !(degrees > keptAtAngle[0][0]) {
		return 1, 0.05
	}
	for i := 1; i < len(keptAtAngle); i++ {
		a, b := keptAtAngle[i-1], keptAtAngle[i]
		if degrees <= b[0] {
			return blend(a[1], b[1], (degrees-a[0])/(b[0]-a[0])), 0.08
		}
	}
	return keptAtAngle[len(keptAtAngle)-1][1], 0.1
}

// FlapTurn returns the change of zero-lift incidence of a section by a plain flap at an angle, nose up for the trailing edge down, rad.
//
// Formula: tau 0.8 k d, times 0.85 with an open gap; where tau thin-aerofoil effectiveness, k FlapKept, d angle.
// Valid for: as FlapKept.
// Source: Glauert 1927 (tau); 0.8, k and the gap as at their own names. A part without slat turns nothing by one.
func FlapTurn(chordRatio, angle float64, open bool) float64 {
	bounded := max(-math.Pi/3, min(math.Pi/3, angle))
	kept, _ := FlapKept(bounded)
	turn := float64(float64(FlapEfficiency*FlapEffectiveness(chordRatio)) * float64(kept*bounded))
	if open {
		return float64(GapOpen * turn)
	}
	return turn
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
