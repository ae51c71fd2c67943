package assess

import (
	"strconv"

	"pitgate/server/physics/planform"
	"pitgate/server/physics/weather"
)

// The document's words in the words of the packages that compute.

var surfaceRoles = map[SurfaceRole]string{
	SurfaceRoleWing: planform.RoleWing, SurfaceRoleTailplane: planform.RoleTailplane, SurfaceRoleCanard: planform.RoleCanard,
	SurfaceRoleFin: planform.RoleFin, SurfaceRoleVTail: planform.RoleVTail, SurfaceRoleWinglet: planform.RoleWinglet,
	SurfaceRoleSecondWing: planform.RoleSecondWing,
}

var sectionFamilies = map[SectionFamily]string{
	SectionFamilyFourDigit: planform.FamilyFourDigit, SectionFamilyFlatPlate: planform.FamilyFlatPlate,
	SectionFamilyCurvedSheet: planform.FamilyCurvedSheet, SectionFamilyReflexed: planform.FamilyReflexed,
	SectionFamilyOwn: planform.FamilyOwn,
}

var controlRoles = map[ControlRole]string{
	ControlRoleElevator: planform.ControlElevator, ControlRoleAileron: planform.ControlAileron,
	ControlRoleRudder: planform.ControlRudder, ControlRoleFlap: planform.ControlFlap, ControlRoleElevon: planform.ControlElevon,
	ControlRoleFlaperon: planform.ControlFlaperon, ControlRoleRuddervator: planform.ControlRuddervator,
}

var roughnesses = map[RoughnessClass]weather.Roughness{
	RoughnessClassOpenWater: weather.OpenWater, RoughnessClassOpenGrass: weather.OpenGrass, RoughnessClassLowCrops: weather.LowCrops,
	RoughnessClassHighCrops: weather.HighCrops, RoughnessClassParkland: weather.Parkland,
	RoughnessClassSuburbOrForest: weather.SuburbOrForest,
}

// role of a surface whose role is not said is a wing's.
func role(r SurfaceRole) string {
	if word, ok := surfaceRoles[r]; ok {
		return word
	}
	return planform.RoleWing
}

// sectionOf turns a section of the document into the planform package's.
func sectionOf(s *Section) planform.Section {
	return planform.Section{
		Family: sectionFamilies[s.Family], Designation: s.Designation, Thickness: orElse(s.ThicknessRatio, 0),
		Camber: orElse(s.CamberRatio, 0), CamberPosition: orElse(s.CamberPositionRatio, 0),
		ClMax: valueOr(s.MaximumLiftCoefficient, 0),
	}
}

// controlOf turns a control of the document into the planform package's.
func controlOf(c *Control) planform.Control {
	return planform.Control{
		Name: c.Name, Role: controlRoles[c.Role], Inner: orElse(c.InnerSpanRatio, 0), Outer: orElse(c.OuterSpanRatio, 1),
		ChordRatio: orElse(c.ChordRatio, 0.25), ThrowDown: radians(valueOr(c.ThrowDownDegrees, 0)),
		ThrowUp: radians(valueOr(c.ThrowUpDegrees, 0)), TakeoffSetting: radians(orElse(c.TakeoffSettingDegrees, 0)),
		LandingSetting: radians(orElse(c.LandingSettingDegrees, 0)), MassBalanced: yes(c.MassBalanced),
		FreePlay: valueOr(c.FreePlayMeters, 0),
	}
}

// roughness of ground that is not said is open grass.
func roughness(in *Input) weather.Roughness {
	if in.Field != nil {
		if class, ok := roughnesses[in.Field.Roughness]; ok {
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
