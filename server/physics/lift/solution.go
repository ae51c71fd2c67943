package lift

// ControlEffect is what one control does per radian, trailing edge down positive, moved the same way on both sides.
type ControlEffect struct {
	Surface    string
	Name       string
	Role       string
	ThrowUp    float64 // greatest throw trailing edge up, positive, rad; 0 with ThrowDown 0 = not known
	ThrowDown  float64 // greatest throw trailing edge down, positive, rad
	LiftSlope  float64 // lift coefficient per rad
	whole      bool    // the whole surface moves
	momentZero float64 // moment coefficient about x = 0 per rad
	chord      float64
}

// MomentAt returns the pitching-moment coefficient about x per radian of the control, nose up positive.
func (c ControlEffect) MomentAt(x float64) float64 {
	return c.momentZero + float64(c.LiftSlope*x)/c.chord
}

// SurfaceLift is the share of one surface in the lift, in the presence of the others, on the reference area.
type SurfaceLift struct {
	Name      string
	Role      string
	LiftSlope float64 // per rad of the model's incidence
	BasicLift float64 // at zero incidence of the model's x axis
	CentreX   float64 // where the lift of LiftSlope acts, m
}

// Strip is one strip of a surface at the starboard side.
type Strip struct {
	Surface    string
	Role       string
	Y, Z       float64 // middle of the strip, m
	QuarterX   float64 // its quarter chord, m
	Chord      float64 // m
	Width      float64 // along the span of the surface, m
	SpanRatio  float64 // y over the half span of its surface
	LiftSlope  float64 // section lift coefficient per rad of the model's incidence
	BasicLift  float64 // section lift coefficient at zero incidence
	inner      *foils
	outer      *foils
	outerShare float64
	projected  float64
	controls   []float64
	chordRatio []float64
}

// Solution is the answer of the lattice for one geometry; it does not depend on mass, and on speed and air only by Reference.ReynoldsPerMeter.
type Solution struct {
	Reference         Reference
	LiftSlope         float64 // per rad
	ZeroLiftIncidence float64 // incidence of the model's x axis without lift, rad
	ZeroLiftMoment    float64 // pitching-moment coefficient without lift, about any point
	NeutralPointX     float64 // of the lifting surfaces alone, m
	InducedFactor     float64 // K in CDi = K CL^2 for the loading that grows with incidence
	SpanEfficiency    float64 // 1/(pi A K), A = span^2/area
	Strips            []Strip
	Surfaces          []SurfaceLift
	Controls          []ControlEffect
	Skipped           []string // surfaces that take no part: those in the plane of symmetry or on one side only

	momentZeroSlope float64 // moment slope about x = 0
	inducedCross    float64 // cross term of incidence and basic loading
	inducedBasic    float64 // induced drag of the basic loading at zero incidence
	rateLift        float64 // lift per unit q/V about x = 0
	rateMomentZero  float64
	lattice         lattice
	slopeStrength   []float64 // circulation over speed per rad, each panel
	basicStrength   []float64 // circulation over speed at zero incidence, each panel
}
