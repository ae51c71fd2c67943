package assess

import (
	"go/ast"
	"go/types"
	"testing"
)

// portionFields are the fields of a document's types, and of the geometry, in which each portion lies.
var portionFields = map[string]portions{
	"DayConditions.WindSpeedMetersPerSecond": portionWind, "DayConditions.WindDirectionDegrees": portionWind,
	"DayConditions.GustSpeedMetersPerSecond": portionWind, "DayConditions.TemperatureCelsius": portionTemperature,
	"DayConditions.VisibilityMeters": portionVisibility, "DayConditions.SurfaceState": portionGround, "Strip.Surface": portionGround,
	"LaunchPlan.StripReversed": portionWay, "LaunchPlan.Landing": portionWay, "LaunchPlan.ThrustSettingRatio": portionSetting,
	"LaunchPlan.Circuit": portionCircuit, "LaunchPlan.Ramp": portionRamp, "LaunchPlan.Bungee": portionBungee,
	"ModelDescription.Mass": portionMass, "ModelDescription.Engines": portionEngines, "ModelDescription.FuelSystem": portionFuel,
	"ModelDescription.Radio": portionRadio, "ModelDescription.Packs": portionPacks, "ModelDescription.HeatedParts": portionHeated,
	"ModelDescription.Structure": portionStructure, "Control.ThrowUpDegrees": portionThrows, "Control.ThrowDownDegrees": portionThrows,
	"Control.FreePlayMeters": portionLinkage, "Control.Linkage": portionLinkage,
	"Geometry.lattice": portionThrows, "Geometry.ground": portionThrows, "Geometry.antennas": portionRadio,
}

// asked returns what a section asks for by itself and by all that it names.
func (s source) asked(name string, fields map[string]map[string]bool) portions {
	all, seen := portions(0), map[string]bool{}
	var visit func(string)
	visit = func(name string) {
		if seen[name] {
			return
		}
		seen[name] = true
		for field := range fields[name] {
			all |= portionFields[field]
		}
		for next := range s.named[name] {
			visit(next)
		}
	}
	visit(name)
	return all
}

// documentFields lists the fields of portions that every function names.
func (s source) documentFields(t *testing.T) map[string]map[string]bool {
	t.Helper()
	known, found := map[string]bool{}, map[string]map[string]bool{}
	for of, selection := range s.info.Selections {
		if selection.Kind() != types.FieldVal {
			continue
		}
		field := typeName(selection.Recv()) + "." + of.Sel.Name
		if portionFields[field] == 0 {
			continue
		}
		known[field] = true
		name := s.inside(of)
		if found[name] == nil {
			found[name] = map[string]bool{}
		}
		found[name][field] = true
	}
	for field := range portionFields {
		if !known[field] {
			t.Errorf("nothing reads %s", field)
		}
	}
	return found
}

// inside names the function or variable of the package in which a node stands.
func (s source) inside(n ast.Node) string {
	for _, d := range s.bodies {
		if d.body.Pos() <= n.Pos() && n.End() <= d.body.End() {
			return d.name
		}
	}
	return ""
}

// TestSectionsAskForWhatTheySay reads from the source which portions of a document each section reaches and wants them said, and no others, so that a
// changed document is answered anew wherever the change is read.
func TestSectionsAskForWhatTheySay(t *testing.T) {
	t.Parallel()
	s := readSource(t)
	fields := s.documentFields(t)
	for i := range sections {
		if asks := s.asked("pass."+sectionName(i), fields); asks != sections[i].asks {
			t.Errorf("%s asks for %b and says %b: %s", sectionName(i), asks, sections[i].asks, portionWords(asks))
		}
	}
}

func portionWords(p portions) string {
	names := []string{"Wind", "Temperature", "Visibility", "Ground", "Way", "Setting", "Circuit", "Ramp", "Bungee", "Mass", "Engines", "Fuel", "Radio", "Packs", "Heated", "Structure", "Throws", "Linkage"}
	out := ""
	for i, name := range names {
		if p>>i&1 == 1 {
			out += " | portion" + name
		}
	}
	if out == "" {
		return "0"
	}
	return out[3:]
}
