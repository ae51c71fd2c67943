// Package planform describes lifting surfaces and measures them: area, span, mean aerodynamic chord, sweep, wetted area, tail volumes.
// Axes: x aft, y to starboard from the plane of symmetry, z up; metres and radians.
package planform

// Roles of a lifting surface.
const (
	RoleWing       = "wing"
	RoleTailplane  = "tailplane"
	RoleCanard     = "canard"
	RoleFin        = "fin"
	RoleVTail      = "v_tail"
	RoleWinglet    = "winglet"
	RoleSecondWing = "second_wing"
)

// Families of a section.
const (
	FamilyFourDigit   = "four_digit"
	FamilyFlatPlate   = "flat_plate"
	FamilyCurvedSheet = "curved_sheet"
	FamilyReflexed    = "reflexed"
	FamilyOwn         = "own"
)

// Roles of a control.
const (
	ControlElevator    = "elevator"
	ControlAileron     = "aileron"
	ControlRudder      = "rudder"
	ControlFlap        = "flap"
	ControlElevon      = "elevon"
	ControlFlaperon    = "flaperon"
	ControlRuddervator = "ruddervator"
)

// Section is a wing section.
type Section struct {
	Family         string  // one of the Family constants; empty is taken as four_digit
	Designation    string  // four digits, "" when not a four-digit section
	Thickness      float64 // greatest thickness over chord; 0 = not given
	Camber         float64 // greatest camber over chord
	CamberPosition float64 // place of greatest camber over chord; 0 = not given
	ClMax          float64 // greatest lift coefficient the builder knows; 0 = none, the table is used
	Outline        []OutlinePoint
}

// OutlinePoint is one point of a section's outline over chord, from the trailing edge over the top back to the trailing edge.
type OutlinePoint struct{ X, Z float64 }

// Station is one cut through a surface; X, Y, Z its leading edge in m, Chord in m, Twist nose up in rad against the root.
type Station struct {
	X, Y, Z, Chord, Twist float64
	Section               Section
}

// Control is a hinged part of a surface. Angles in rad.
type Control struct {
	Name           string
	Role           string  // one of the Control constants
	Inner, Outer   float64 // ends as a fraction of the half span, 0 at the plane of symmetry
	ChordRatio     float64 // chord of the hinged part over the local chord, 0 to 1
	ThrowDown      float64 // greatest throw trailing edge down, positive
	ThrowUp        float64 // greatest throw trailing edge up, positive
	TakeoffSetting float64 // trailing edge down positive
	LandingSetting float64 // trailing edge down positive
	MassBalanced   bool
	FreePlay       float64 // at the trailing edge, m
}

// Surface is one lifting surface, stations from root to tip.
type Surface struct {
	Name      string
	Role      string // one of the Role constants
	Mirrored  bool   // also exists mirrored to port
	Stations  []Station
	Incidence float64 // of the whole surface, nose up positive, rad
	AllMoving bool    // the whole surface turns as the control
	Controls  []Control
	Mass      float64 // both sides together, kg; 0 = not given
}

// Vertical reports whether the surface is measured by its height: a fin or a winglet.
func (s Surface) Vertical() bool { return s.Role == RoleFin || s.Role == RoleWinglet }

// Sides returns 2 for a mirrored surface and 1 otherwise.
func (s Surface) Sides() float64 {
	if s.Mirrored {
		return 2
	}
	return 1
}

// EffectiveThickness returns the greatest thickness over chord: as given, or from the designation, or 0.12, or 0.03 for plate and sheet.
func (s Section) EffectiveThickness() float64 {
	if s.Thickness > 0 {
		return s.Thickness
	}
	if _, _, thickness, ok := s.digits(); ok && thickness > 0 {
		return thickness
	}
	if s.Family == FamilyFlatPlate || s.Family == FamilyCurvedSheet {
		return 0.03
	}
	return 0.12
}

// EffectiveCamber returns the greatest camber over chord and its place: from the designation when it is one, else as given.
// Place: 0.5 for a curved sheet and 0.4 otherwise when not given.
func (s Section) EffectiveCamber() (camber, position float64) {
	if s.Family == FamilyFlatPlate {
		return 0, 0.4
	}
	camber, position = s.Camber, s.CamberPosition
	if m, p, _, ok := s.digits(); ok && camber == 0 {
		camber, position = m, p
	}
	if !(position > 0 && position < 1) {
		position = 0.4
		if s.Family == FamilyCurvedSheet {
			position = 0.5
		}
	}
	return camber, position
}

// digits reads a four-digit designation: camber and its place and thickness, all over chord.
func (s Section) digits() (camber, position, thickness float64, ok bool) {
	if len(s.Designation) != 4 {
		return 0, 0, 0, false
	}
	var d [4]float64
	for i := range d {
		c := s.Designation[i]
		if c < '0' || c > '9' {
			return 0, 0, 0, false
		}
		d[i] = float64(c - '0')
	}
	return d[0] / 100, d[1] / 10, (float64(10*d[2]) + d[3]) / 100, true
}
