package assess

import (
	"strconv"
	"strings"

	"pitgate/server/physics/planform"
	"pitgate/server/physics/section"
	"pitgate/server/physics/weather"
)

// The document's words in the words of the packages that compute.

var surfaceRoles = pairings[SurfaceRole, string]{
	{SurfaceRoleWing, planform.RoleWing}, {SurfaceRoleTailplane, planform.RoleTailplane}, {SurfaceRoleCanard, planform.RoleCanard},
	{SurfaceRoleFin, planform.RoleFin}, {SurfaceRoleVTail, planform.RoleVTail}, {SurfaceRoleWinglet, planform.RoleWinglet},
	{SurfaceRoleSecondWing, planform.RoleSecondWing},
}

var sectionFamilies = pairings[SectionFamily, string]{
	{SectionFamilyFourDigit, planform.FamilyFourDigit}, {SectionFamilyFlatPlate, planform.FamilyFlatPlate},
	{SectionFamilyCurvedSheet, planform.FamilyCurvedSheet}, {SectionFamilyReflexed, planform.FamilyReflexed},
	{SectionFamilyOwn, planform.FamilyOwn},
}

var controlRoles = pairings[ControlRole, string]{
	{ControlRoleElevator, planform.ControlElevator}, {ControlRoleAileron, planform.ControlAileron},
	{ControlRoleRudder, planform.ControlRudder}, {ControlRoleFlap, planform.ControlFlap}, {ControlRoleElevon, planform.ControlElevon},
	{ControlRoleFlaperon, planform.ControlFlaperon}, {ControlRoleRuddervator, planform.ControlRuddervator},
}

var roughnesses = pairings[RoughnessClass, weather.Roughness]{
	{RoughnessClassOpenWater, weather.OpenWater}, {RoughnessClassOpenGrass, weather.OpenGrass}, {RoughnessClassLowCrops, weather.LowCrops},
	{RoughnessClassHighCrops, weather.HighCrops}, {RoughnessClassParkland, weather.Parkland},
	{RoughnessClassSuburbOrForest, weather.SuburbOrForest},
}

// role of a surface whose role is not said is a wing's.
func role(r SurfaceRole) string {
	if word, ok := surfaceRoles.find(r); ok {
		return word
	}
	return planform.RoleWing
}

// sectionOf turns a section of the document at a path into the planform package's. The error names the point of an outline that cannot be.
func sectionOf(s *Section, path string) (planform.Section, error) {
	out := planform.Section{
		Family: sectionFamilies.of(s.Family), Designation: s.Designation, Thickness: orElse(s.ThicknessRatio, 0),
		Camber: orElse(s.CamberRatio, 0), CamberPosition: orElse(s.CamberPositionRatio, 0),
		ClMax: valueOr(s.MaximumLiftCoefficient, 0),
	}
	if len(s.Points) == 0 {
		return out, nil
	}
	for i := range s.Points {
		out.Outline = append(out.Outline, planform.OutlinePoint{X: orElse(s.Points[i].XRatio, 0), Z: orElse(s.Points[i].ZRatio, 0)})
	}
	if err := section.Check(out.Outline); err != nil {
		return out, &outlineError{path: path + ".points", cause: err}
	}
	return out, nil
}

// outlineError is a section's outline that cannot be.
type outlineError struct {
	path  string
	cause error
}

// Error names the point by its path in the document.
func (e *outlineError) Error() string { return e.path + strings.TrimPrefix(e.cause.Error(), "outline") }

// Unwrap returns the cause, which wraps planform.ErrImpossible.
func (e *outlineError) Unwrap() error { return e.cause }

// defaultChordRatio is the hinged part of the chord where it is not given.
const defaultChordRatio = 0.25

// controlOf turns a control of the document into the planform package's.
func controlOf(c *Control) planform.Control {
	return planform.Control{
		Name: c.Name, Role: controlRoles.of(c.Role), Inner: orElse(c.InnerSpanRatio, 0), Outer: orElse(c.OuterSpanRatio, 1),
		ChordRatio: orElse(c.ChordRatio, defaultChordRatio), ThrowDown: radians(valueOr(c.ThrowDownDegrees, 0)),
		ThrowUp: radians(valueOr(c.ThrowUpDegrees, 0)), TakeoffSetting: radians(orElse(c.TakeoffSettingDegrees, 0)),
		LandingSetting: radians(orElse(c.LandingSettingDegrees, 0)), MassBalanced: yes(c.MassBalanced),
		FreePlay: valueOr(c.FreePlayMeters, 0),
	}
}

// roughness of ground that is not said is open grass.
func roughness(in *Input) weather.Roughness {
	if in.Field != nil {
		if class, ok := roughnesses.find(in.Field.Roughness); ok {
			return class
		}
	}
	return weather.OpenGrass
}

// valueOr returns a quantity's value as given, or the fallback: for what the geometry fixes once for all passes.
func valueOr(q *Quantity, fallback float64) float64 {
	if q == nil || q.Value == nil {
		return fallback
	}
	return *q.Value
}

func at(name string, i int) string { return name + "[" + strconv.Itoa(i) + "]" }
