package stability

import "pitgate/server/physics/elementary"

// Lateral holds the dimensionless derivatives of sideslip, roll rate and yaw rate, about the balance point, per rad and per p b/(2V), r b/(2V).
type Lateral struct {
	SideForceBeta, RollBeta, YawBeta             float64 // RollBeta negative and YawBeta positive are stable
	SideForceRollRate, RollRollRate, YawRollRate float64
	SideForceYawRate, RollYawRate, YawYawRate    float64
}

// LateralForces holds the dimensional derivatives over mass or inertia: Y to starboard, L starboard wing down, N nose to starboard; of side speed v,
// roll rate p and yaw rate r. The product of inertia is already worked in.
type LateralForces struct {
	YV             float64 // 1/s
	YP, YR         float64 // m/s
	LV, NV         float64 // 1/(m s)
	LP, LR, NP, NR float64 // 1/s
	Speed, Gravity float64 // m/s, m/s2
	PathTangent    float64 // of the climb angle
	PathCosine     float64
}

// Dimensional returns the derivatives of a state with units. The error names an impossible field of the state.
//
// Formula: Y_v = q S CY_b/(m V), Y_p = q S b CY_p/(2 m V); L_v = q S b Cl_b/(I_x V), L_p = q S b^2 Cl_p/(2 I_x V); N likewise with I_z;
// starred: L* = (L + N I_xz/I_x)/(1 - I_xz^2/(I_x I_z)), N* likewise.
// Valid for: small motions about straight flight.
// Source: Nelson, Flight Stability and Automatic Control, chapter 5.
func (d Lateral) Dimensional(s State) (LateralForces, error) {
	if err := s.checkLateral(); err != nil {
		return LateralForces{}, err
	}
	force := float64(s.Pressure()*s.Area) / float64(s.Mass*s.Speed)
	moment := float64(float64(s.Pressure()*s.Area)*s.Span) / s.Speed
	half := 0.5 * s.Span
	f := LateralForces{
		YV: float64(force * d.SideForceBeta), YP: float64(float64(force*d.SideForceRollRate) * half),
		YR:    float64(float64(force*d.SideForceYawRate) * half),
		Speed: s.Speed, Gravity: s.Gravity,
		PathTangent: elementary.Tan(s.PathAngle), PathCosine: elementary.Cos(s.PathAngle),
	}
	f.LV, f.NV = s.Inertia.couple(float64(moment*d.RollBeta), float64(moment*d.YawBeta))
	f.LP, f.NP = s.Inertia.couple(float64(float64(moment*d.RollRollRate)*half), float64(float64(moment*d.YawRollRate)*half))
	f.LR, f.NR = s.Inertia.couple(float64(float64(moment*d.RollYawRate)*half), float64(float64(moment*d.YawYawRate)*half))
	return f, nil
}

// couple returns the roll and yaw accelerations of a rolling and a yawing moment.
//
// Formula: p' = (I_z L + I_xz N)/(I_x I_z - I_xz^2), r' = (I_x N + I_xz L)/(I_x I_z - I_xz^2).
// Valid for: one plane of symmetry.
// Source: Euler's equations for small rates.
func (i Inertia) couple(roll, yaw float64) (rollRate, yawRate float64) {
	left := float64(i.Roll*i.Yaw) - float64(i.Product*i.Product)
	return (float64(i.Yaw*roll) + float64(i.Product*yaw)) / left, (float64(i.Roll*yaw) + float64(i.Product*roll)) / left
}

// Matrix returns the system matrix of side speed, roll rate, yaw rate and bank (v, p, r, phi).
//
// Valid for: small motions about straight flight.
// Source: Nelson, Flight Stability and Automatic Control, chapter 5.
func (f LateralForces) Matrix() Matrix {
	return Matrix{
		{f.YV, f.YP, f.YR - f.Speed, float64(f.Gravity * f.PathCosine)},
		{f.LV, f.LP, f.LR, 0},
		{f.NV, f.NP, f.NR, 0},
		{0, 1, f.PathTangent, 0},
	}
}
