package drag

import (
	"encoding/json"
	"testing"

	"pitgate/server/physics/air"
	"pitgate/server/physics/planform"
	"pitgate/testdata/demo"
)

// demoNumber is a quantity of the demonstration files.
type demoNumber struct{ Value float64 }

// demoModel is what the build-up needs of a demonstration model.
type demoModel struct {
	Finish   string
	Surfaces []struct {
		Name, Role string
		Mirrored   bool
		Stations   []struct {
			LeadingEdgeXMeters, LeadingEdgeYMeters, LeadingEdgeZMeters, ChordMeters float64
			Section                                                                 struct{ Designation string }
		}
	}
	Gear *struct {
		Retractable                  bool
		StrutFrontalAreaSquareMeters demoNumber
		Wheels                       []struct{ DiameterMeters, WidthMeters float64 }
	}
	DragItems []struct {
		Name                                     string
		DragCoefficient, FrontalAreaSquareMeters demoNumber
		Count                                    int
	}
	Bodies []struct {
		Name                  string
		Mirrored, SquareSided bool
		Stations              []struct{ XMeters, WidthMeters, HeightMeters, CenterZMeters float64 }
	}
}

// roles are the words of the demonstration files.
var roles = map[string]string{
	"SURFACE_ROLE_WING": planform.RoleWing, "SURFACE_ROLE_TAILPLANE": planform.RoleTailplane, "SURFACE_ROLE_CANARD": planform.RoleCanard,
	"SURFACE_ROLE_FIN": planform.RoleFin, "SURFACE_ROLE_V_TAIL": planform.RoleVTail,
}

// finishNames are the finishes of the demonstration files.
var finishNames = map[string]string{
	"FINISH_POLISHED": FinishPolished, "FINISH_SMOOTH": FinishSmooth, "FINISH_COVERED_OPEN_STRUCTURE": FinishOpenFrame, "FINISH_TAPED_FOAM": FinishTapedFoam,
}

// demoAircraft reads a demonstration model, wheels up where they retract, the duct left aside.
func demoAircraft(t *testing.T, name string) Aircraft {
	t.Helper()
	text, err := demo.Files.ReadFile(name + ".json")
	if err != nil {
		t.Fatal(err)
	}
	var m demoModel
	if err := json.Unmarshal(text, &m); err != nil {
		t.Fatal(err)
	}
	a := Aircraft{Finish: finishNames[m.Finish], Leakage: 0.05}
	for _, s := range m.Surfaces {
		surface := planform.Surface{Name: s.Name, Role: roles[s.Role], Mirrored: s.Mirrored}
		for _, p := range s.Stations {
			surface.Stations = append(surface.Stations, planform.Station{
				X: p.LeadingEdgeXMeters, Y: p.LeadingEdgeYMeters, Z: p.LeadingEdgeZMeters, Chord: p.ChordMeters,
				Section: planform.Section{Designation: p.Section.Designation},
			})
		}
		a.Surfaces = append(a.Surfaces, surface)
	}
	for _, i := range m.DragItems {
		a.Items = append(a.Items, Item{Name: i.Name, Coefficient: i.DragCoefficient.Value, FrontalArea: i.FrontalAreaSquareMeters.Value, Count: i.Count})
	}
	if m.Gear != nil && !m.Gear.Retractable {
		a.Gear = &Gear{StrutFrontalArea: m.Gear.StrutFrontalAreaSquareMeters.Value}
		for _, w := range m.Gear.Wheels {
			a.Gear.Wheels = append(a.Gear.Wheels, Wheel{Diameter: w.DiameterMeters, Width: w.WidthMeters})
		}
	}
	for _, b := range m.Bodies {
		body := Body{Name: b.Name, Mirrored: b.Mirrored, SquareSided: b.SquareSided}
		for _, p := range b.Stations {
			body.Stations = append(body.Stations, BodyStation{X: p.XMeters, Width: p.WidthMeters, Height: p.HeightMeters, Z: p.CenterZMeters})
		}
		a.Bodies = append(a.Bodies, body)
	}
	return a
}

// equivalentFriction returns drag over dynamic pressure of a demonstration model over its wetted area.
func equivalentFriction(t *testing.T, name string, in inputs) float64 {
	t.Helper()
	a := demoAircraft(t, name)
	a.Sections = in.number(t, "sections") == 1
	total, parts := BuildUp(a, Conditions{Speed: in.number(t, "speed"), Air: air.Standard(0), ReferenceArea: 1})
	wetted := 0.0
	for _, p := range parts {
		wetted += p.WettedArea
	}
	return total / wetted
}

func TestDemoModelsLieInTheBand(t *testing.T) {
	t.Parallel()
	checkPublished(t, "equivalent_friction", map[string]formula{
		"plate":    func(t *testing.T, name string, in inputs) float64 { return equivalentFriction(t, name, in) },
		"sections": func(t *testing.T, name string, in inputs) float64 { return equivalentFriction(t, name, in) },
	})
}
