package stability

// State is the steady flight about which the motions are small.
type State struct {
	Mass    float64 // kg
	Speed   float64 // m/s
	Density float64 // kg/m3
	Area    float64 // reference area, m2
	Chord   float64 // mean chord, m
	Span    float64 // m; lateral motions only
	Lift    float64 // lift coefficient
	Drag    float64 // drag coefficient
	// PathAngle is the climb angle, rad; 0 in level flight.
	PathAngle float64
	Gravity   float64 // m/s2
	// Moments of inertia about the balance point, kg m2. Pitching motions need Pitch; lateral ones Roll and Yaw.
	Inertia Inertia
}

// Pressure returns the dynamic pressure, Pa.
//
// Formula: q = rho V^2/2.
// Valid for: speeds below about a third of the speed of sound.
// Source: definition.
func (s State) Pressure() float64 { return float64(0.5*s.Density) * float64(s.Speed*s.Speed) }

// checkPitch checks what pitching motions need.
func (s State) checkPitch() error {
	if err := s.checkCommon(); err != nil {
		return err
	}
	return checkPositive(named{"state.chord", s.Chord}, named{"state.inertia.pitch", s.Inertia.Pitch})
}

// checkLateral checks what lateral motions need.
func (s State) checkLateral() error {
	if err := s.checkCommon(); err != nil {
		return err
	}
	if err := checkFinite(named{"state.inertia.product", s.Inertia.Product}); err != nil {
		return err
	}
	err := checkPositive(named{"state.span", s.Span}, named{"state.inertia.roll", s.Inertia.Roll}, named{"state.inertia.yaw", s.Inertia.Yaw})
	if err != nil {
		return err
	}
	left := float64(s.Inertia.Roll*s.Inertia.Yaw) - float64(s.Inertia.Product*s.Inertia.Product)
	return checkPositive(named{"state.inertia.roll times yaw less product squared", left})
}

func (s State) checkCommon() error {
	err := checkFinite(named{"state.lift", s.Lift}, named{"state.drag", s.Drag}, named{"state.pathAngle", s.PathAngle})
	if err != nil {
		return err
	}
	return checkPositive(named{"state.mass", s.Mass}, named{"state.speed", s.Speed}, named{"state.density", s.Density},
		named{"state.area", s.Area}, named{"state.gravity", s.Gravity})
}
