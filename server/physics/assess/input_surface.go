package assess

// SurfaceRole says: what a lifting surface is for.
type SurfaceRole string

// Values of SurfaceRole; the empty string means that nothing was said.
const (
	SurfaceRoleWing       SurfaceRole = "SURFACE_ROLE_WING"
	SurfaceRoleTailplane  SurfaceRole = "SURFACE_ROLE_TAILPLANE"
	SurfaceRoleCanard     SurfaceRole = "SURFACE_ROLE_CANARD"
	SurfaceRoleFin        SurfaceRole = "SURFACE_ROLE_FIN"
	SurfaceRoleVTail      SurfaceRole = "SURFACE_ROLE_V_TAIL"
	SurfaceRoleWinglet    SurfaceRole = "SURFACE_ROLE_WINGLET"
	SurfaceRoleSecondWing SurfaceRole = "SURFACE_ROLE_SECOND_WING"
)

// Names lists every value that may stand in a document.
func (SurfaceRole) Names() []string {
	return []string{string(SurfaceRoleWing), string(SurfaceRoleTailplane), string(SurfaceRoleCanard), string(SurfaceRoleFin), string(SurfaceRoleVTail), string(SurfaceRoleWinglet), string(SurfaceRoleSecondWing)}
}

// LiftingSurface: one lifting surface as stations from root to tip.
type LiftingSurface struct {
	// The builder's name for it: "wing", "canard".
	Name string      `json:"name,omitempty" range:"min_len=1,max_len=60"`
	Role SurfaceRole `json:"role,omitempty"`
	// True when the surface also exists mirrored to port (a wing, a tailplane, twin fins). Absent: true for all but a fin at y = 0.
	Mirrored *bool `json:"mirrored,omitempty"`
	// At least two, root first. Straight lines between them.
	Stations []Station `json:"stations,omitempty" range:"max_items=24"`
	// Ailerons, elevators, flaps, rudders on this surface.
	Controls []Control `json:"controls,omitempty" range:"max_items=8"`
	// Angle of the whole surface to the model's x axis, nose up positive, added to each station's twist.
	IncidenceDegrees *Quantity `json:"incidenceDegrees,omitempty" range:"gte=-30,lte=30"`
	// True when the whole surface turns as the control (all-moving).
	AllMoving *bool `json:"allMoving,omitempty"`
	// Mass of the surface, both sides together; used for inertia relief.
	MassKg *Quantity `json:"massKg,omitempty" range:"gte=0,lte=200"`
}

// Station: one cut through a lifting surface.
type Station struct {
	// Leading edge, aft of the datum.
	LeadingEdgeXMeters *float64 `json:"leadingEdgeXMeters,omitempty" range:"gte=-20,lte=20"`
	// Leading edge, to starboard of the plane of symmetry.
	LeadingEdgeYMeters *float64 `json:"leadingEdgeYMeters,omitempty" range:"gte=-20,lte=20"`
	// Leading edge, above the datum.
	LeadingEdgeZMeters *float64 `json:"leadingEdgeZMeters,omitempty" range:"gte=-20,lte=20"`
	// Leading edge to trailing edge, measured along x.
	ChordMeters *float64 `json:"chordMeters,omitempty" range:"gt=0,lte=5"`
	// Nose-up twist of this cut against the root.
	TwistDegrees *float64 `json:"twistDegrees,omitempty" range:"gte=-30,lte=30"`
	// Section here; the last one named goes on outboard.
	Section *Section `json:"section,omitempty"`
}

// SectionFamily says: family of a wing section.
type SectionFamily string

// Values of SectionFamily; the empty string means that nothing was said.
const (
	// NACA four-digit, symmetrical or cambered; give designation.
	SectionFamilyFourDigit SectionFamily = "SECTION_FAMILY_FOUR_DIGIT"
	// Flat plate or sheet with rounded nose.
	SectionFamilyFlatPlate SectionFamily = "SECTION_FAMILY_FLAT_PLATE"
	// Curved sheet.
	SectionFamilyCurvedSheet SectionFamily = "SECTION_FAMILY_CURVED_SHEET"
	// Reflexed section for tailless models.
	SectionFamilyReflexed SectionFamily = "SECTION_FAMILY_REFLEXED"
	// Own section by thickness and camber or by coordinates.
	SectionFamilyOwn SectionFamily = "SECTION_FAMILY_OWN"
)

// Names lists every value that may stand in a document.
func (SectionFamily) Names() []string {
	return []string{string(SectionFamilyFourDigit), string(SectionFamilyFlatPlate), string(SectionFamilyCurvedSheet), string(SectionFamilyReflexed), string(SectionFamilyOwn)}
}

// Section: a wing section.
type Section struct {
	Family SectionFamily `json:"family,omitempty"`
	// Four digits, e.g. "2412".
	Designation string `json:"designation,omitempty" pattern:"^([0-9]{4})?$"`
	// Greatest thickness over chord.
	ThicknessRatio *float64 `json:"thicknessRatio,omitempty" range:"gte=0.005,lte=0.4"`
	// Greatest camber over chord.
	CamberRatio *float64 `json:"camberRatio,omitempty" range:"gte=-0.1,lte=0.15"`
	// Place of greatest camber over chord.
	CamberPositionRatio *float64 `json:"camberPositionRatio,omitempty" range:"gte=0.05,lte=0.95"`
	// Greatest lift coefficient of the section when the builder knows it (wind tunnel); replaces the table.
	MaximumLiftCoefficient *Quantity `json:"maximumLiftCoefficient,omitempty" range:"gte=0.1,lte=5"`
	// Outline from trailing edge over the top to the trailing edge, for an own section.
	Points []SectionPoint `json:"points,omitempty" range:"max_items=400"`
}

// SectionPoint: one point of a section's outline, over chord.
type SectionPoint struct {
	XRatio *float64 `json:"xRatio,omitempty" range:"gte=-0.05,lte=1.05"`
	ZRatio *float64 `json:"zRatio,omitempty" range:"gte=-0.6,lte=0.6"`
}

// ControlRole says: what a control does.
type ControlRole string

// Values of ControlRole; the empty string means that nothing was said.
const (
	ControlRoleElevator    ControlRole = "CONTROL_ROLE_ELEVATOR"
	ControlRoleAileron     ControlRole = "CONTROL_ROLE_AILERON"
	ControlRoleRudder      ControlRole = "CONTROL_ROLE_RUDDER"
	ControlRoleFlap        ControlRole = "CONTROL_ROLE_FLAP"
	ControlRoleElevon      ControlRole = "CONTROL_ROLE_ELEVON"
	ControlRoleFlaperon    ControlRole = "CONTROL_ROLE_FLAPERON"
	ControlRoleRuddervator ControlRole = "CONTROL_ROLE_RUDDERVATOR"
)

// Names lists every value that may stand in a document.
func (ControlRole) Names() []string {
	return []string{string(ControlRoleElevator), string(ControlRoleAileron), string(ControlRoleRudder), string(ControlRoleFlap), string(ControlRoleElevon), string(ControlRoleFlaperon), string(ControlRoleRuddervator)}
}

// Control: a hinged part of a lifting surface.
type Control struct {
	Name string      `json:"name,omitempty" range:"min_len=1,max_len=60"`
	Role ControlRole `json:"role,omitempty"`
	// Inner and outer end as a fraction of the half span of the surface.
	InnerSpanRatio *float64 `json:"innerSpanRatio,omitempty" range:"gte=0,lte=1"`
	OuterSpanRatio *float64 `json:"outerSpanRatio,omitempty" range:"gte=0,lte=1"`
	// Chord of the hinged part over the local chord.
	ChordRatio *float64 `json:"chordRatio,omitempty" range:"gt=0,lte=1"`
	// Greatest throw, trailing edge down.
	ThrowDownDegrees *Quantity `json:"throwDownDegrees,omitempty" range:"gte=0,lte=90"`
	// Greatest throw, trailing edge up.
	ThrowUpDegrees *Quantity `json:"throwUpDegrees,omitempty" range:"gte=0,lte=90"`
	// Setting for take-off (flaps).
	TakeoffSettingDegrees *float64 `json:"takeoffSettingDegrees,omitempty" range:"gte=-90,lte=90"`
	// Setting for landing (flaps).
	LandingSettingDegrees *float64 `json:"landingSettingDegrees,omitempty" range:"gte=-90,lte=90"`
	// Linkage and servo.
	Linkage *Linkage `json:"linkage,omitempty"`
	// True when mass balanced about the hinge.
	MassBalanced *bool `json:"massBalanced,omitempty"`
	// Free play at the trailing edge.
	FreePlayMeters *Quantity `json:"freePlayMeters,omitempty" range:"gte=0,lte=0.05"`
}

// Linkage: servo and linkage of one control.
type Linkage struct {
	ServoTorqueNewtonMeters *Quantity `json:"servoTorqueNewtonMeters,omitempty" range:"gte=0.001,lte=50"`
	ServoArmMeters          *float64  `json:"servoArmMeters,omitempty" range:"gt=0,lte=0.2"`
	HornArmMeters           *float64  `json:"hornArmMeters,omitempty" range:"gt=0,lte=0.2"`
	// How many servos share the control.
	ServoCount        *int32    `json:"servoCount,omitempty" range:"gte=1,lte=8"`
	RodLengthMeters   *float64  `json:"rodLengthMeters,omitempty" range:"gt=0,lte=3"`
	RodDiameterMeters *Quantity `json:"rodDiameterMeters,omitempty" range:"gte=0.0002,lte=0.02"`
	RodMaterial       string    `json:"rodMaterial,omitempty" range:"max_len=60"`
}
