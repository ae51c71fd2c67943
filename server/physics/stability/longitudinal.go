package stability

import "pitgate/server/physics/elementary"

// Longitudinal holds the dimensionless derivatives of the pitching motion, about the balance point.
type Longitudinal struct {
	LiftSlope   float64 // CL with incidence, per rad
	DragSlope   float64 // CD with incidence, per rad
	MomentSlope float64 // Cm with incidence, per rad; negative is stable

	PitchDamping         float64 // Cm with q c/(2V), negative
	IncidenceRateDamping float64 // Cm with the rate of incidence times c/(2V)
	LiftPitchRate        float64 // CL with q c/(2V)
	LiftIncidenceRate    float64 // CL with the rate of incidence times c/(2V)

	// Changes with speed besides the dynamic pressure, per V/V0; 0 well below the speed of sound.
	LiftSpeed, DragSpeed, MomentSpeed float64
	// ThrustSpeed is the slope of thrust with speed over mass, 1/s; 0 for thrust that does not change with speed.
	ThrustSpeed float64
}

// LongitudinalForces holds the dimensional derivatives over mass or inertia: X forward, Z down, M nose up; of speed u, downward speed w and rate q.
type LongitudinalForces struct {
	XU, XW               float64 // 1/s
	ZU, ZW               float64 // 1/s
	ZQ                   float64 // m/s
	ZWDot                float64 // -
	MU, MW               float64 // 1/(m s)
	MWDot                float64 // 1/m
	MQ                   float64 // 1/s
	Speed, Gravity       float64 // m/s, m/s2
	PathSine, PathCosine float64 // of the climb angle
}

// Dimensional returns the derivatives of a state with units. The error names an impossible field of the state.
//
// Formula: with k = q S/(m V): X_u = -k (2 CD + CD_u), X_w = k (CL - CD_a), Z_u = -k (2 CL + CL_u), Z_w = -k (CL_a + CD),
// Z_q = -k CL_q c/2, Z_w' = -k CL_a' c/(2V); with k = q S c/(I_y V): M_u = k Cm_u, M_w = k Cm_a, M_w' = k Cm_a' c/(2V), M_q = k Cm_q c/2.
// Valid for: small motions about straight flight.
// Source: Nelson, Flight Stability and Automatic Control, chapter 3.
func (d Longitudinal) Dimensional(s State) (LongitudinalForces, error) {
	if err := s.checkPitch(); err != nil {
		return LongitudinalForces{}, err
	}
	force := float64(s.Pressure()*s.Area) / float64(s.Mass*s.Speed)
	moment := float64(float64(s.Pressure()*s.Area)*s.Chord) / float64(s.Inertia.Pitch*s.Speed)
	half, lag := 0.5*s.Chord, float64(0.5*s.Chord)/s.Speed
	return LongitudinalForces{
		XU:    d.ThrustSpeed - float64(force*(float64(2*s.Drag)+d.DragSpeed)),
		XW:    float64(force * (s.Lift - d.DragSlope)),
		ZU:    -float64(force * (float64(2*s.Lift) + d.LiftSpeed)),
		ZW:    -float64(force * (d.LiftSlope + s.Drag)),
		ZQ:    -float64(float64(force*d.LiftPitchRate) * half),
		ZWDot: -float64(float64(force*d.LiftIncidenceRate) * lag),
		MU:    float64(moment * d.MomentSpeed),
		MW:    float64(moment * d.MomentSlope),
		MWDot: float64(float64(moment*d.IncidenceRateDamping) * lag),
		MQ:    float64(float64(moment*d.PitchDamping) * half),
		Speed: s.Speed, Gravity: s.Gravity,
		PathSine: elementary.Sin(s.PathAngle), PathCosine: elementary.Cos(s.PathAngle),
	}, nil
}

// Matrix returns the system matrix of speed, downward speed, pitch rate and attitude (u, w, q, theta).
//
// Formula: the row of w divided by 1 - Z_w'; the row of q gains M_w' times that row.
// Valid for: Z_w' below 1, which holds for all that fly.
// Source: Nelson, Flight Stability and Automatic Control, chapter 4.
func (f LongitudinalForces) Matrix() Matrix {
	left := 1 - f.ZWDot
	w := [order]float64{f.ZU / left, f.ZW / left, (f.Speed + f.ZQ) / left, -float64(f.Gravity*f.PathSine) / left}
	q := [order]float64{f.MU, f.MW, f.MQ, 0}
	for i := range q {
		q[i] += float64(f.MWDot * w[i])
	}
	return Matrix{{f.XU, f.XW, 0, -float64(f.Gravity * f.PathCosine)}, w, q, {0, 0, 1, 0}}
}
