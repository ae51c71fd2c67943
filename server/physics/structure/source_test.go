package structure

import (
	"math"
	"strings"
	"testing"

	"pitgate/server/physics/loads"
	"pitgate/server/physics/stability"
)

// stiff is a material of a modulus that does not fail.
func stiff(modulus float64) Material {
	return Material{Modulus: modulus, ShearModulus: modulus / 2.6, Tension: 1e12, Compression: 1e12, Shear: 1e12}
}

// measured is Measure for parts that exist.
func measured(t *testing.T, parts ...Part) Section {
	t.Helper()
	s, err := Measure(parts)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// greatest returns the greatest stress of a part in MPa for a moment.
func greatest(s Section, part int, moment float64) float64 {
	return math.Max(math.Abs(s.Parts[part].Top), math.Abs(s.Parts[part].Bottom)) * moment / 1e6
}

// flitch is the wooden beam with a steel plate below.
func flitch(t *testing.T) Section {
	t.Helper()
	return measured(t, Part{Shape: ShapeSolid, Material: stiff(10e9), Width: 0.15, Depth: 0.25, OffsetZ: 0.005},
		Part{Shape: ShapeSolid, Material: stiff(200e9), Width: 0.15, Depth: 0.01, OffsetZ: -0.125})
}

func TestStressesAgainstTextbooks(t *testing.T) {
	t.Parallel()
	checkPublished(t, "strength_of_materials", map[string]method{
		"wood-stress":  func(in inputs) float64 { return greatest(flitch(t), 0, in["moment"]) },
		"steel-stress": func(in inputs) float64 { return greatest(flitch(t), 1, in["moment"]) },
		"square-stress": func(in inputs) float64 {
			return greatest(measured(t, Part{Shape: ShapeSolid, Material: stiff(1), Width: in["side"], Depth: in["side"]}), 0, in["moment"])
		},
		"flange-stress": func(in inputs) float64 {
			p := Part{Shape: ShapeCapsAndWeb, Material: stiff(1), Width: in["width"], Depth: in["depth"], Cap: in["flange"], Web: in["web"]}
			return greatest(measured(t, p), 0, in["moment"])
		},
		"tube-twist": func(in inputs) float64 {
			p := Part{Shape: ShapeTube, Material: stiff(70e9), Outer: in["outer"], Wall: (in["outer"] - in["inner"]) / 2}
			r, err := AssessStation(Station{Parts: []Part{p}}, loads.Load{Torsion: loads.Line{PerLoad: in["torque"]}}, true)
			if err != nil {
				t.Error(err)
			}
			return math.Abs(r.Checks[len(r.Checks)-1].Stress.PerLoad) / 1e6
		},
		"cell-wall": func(in inputs) float64 {
			d := in["diameter"]
			return 1000 * BredtWall(in["torque"], math.Pi*d*d/4, math.Pi*d, in["length"]/2, in["shear"], in["modulus"], in["twist"]*math.Pi/180)
		},
		"cell-shear": func(in inputs) float64 { return BredtShear(in["torque"], in["width"]*in["depth"], in["wall"]) },
		"rivet": func(in inputs) float64 {
			return ShearStress(in["tension"]*in["skin"]*(in["pitch"]-in["diameter"]), in["diameter"], 1, 2) / 1e6
		},
		"strut": func(in inputs) float64 {
			b, h := in["width"], in["depth"]
			return EulerLoad(in["modulus"], b*h*h*h/12, in["length"], 1) / (b * h) / 1e6
		},
		"euler-load": func(in inputs) float64 {
			return EulerLoad(in["modulus"], RingInertia(in["outer"], in["inner"]), in["length"], in["k"]) / 1e3
		},
	})
}

func TestTubesAgainstTables(t *testing.T) {
	t.Parallel()
	inertia := func(in inputs) float64 { return RingInertia(in["outer"], in["outer"]-2*in["wall"]) / 1e4 }
	checkPublished(t, "hollow_sections", map[string]method{
		"area":    func(in inputs) float64 { return RingArea(in["outer"], in["outer"]-2*in["wall"]) / 100 },
		"inertia": inertia,
		"modulus": func(in inputs) float64 { return inertia(in) / (in["outer"] / 20) },
	})
}

// tube and caps return the part of a row.
func tube(in inputs) Part {
	return Part{Shape: ShapeTube, Material: stiff(1), Outer: in["outer"], Wall: (in["outer"] - in["inner"]) / 2}
}

func caps(in inputs) Part {
	return Part{Shape: ShapeCapsAndWeb, Material: stiff(1), Width: in["width"], Depth: in["depth"], Cap: in["cap"], Web: in["web"]}
}

// deflection integrates the bending of strips with an even stiffness.
func deflection(t *testing.T, strips []loads.Strip, in inputs, err error) float64 {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	places := make([]float64, 201)
	for i := range places {
		places[i] = in["span"] / 2 * float64(i) / 200
	}
	at, err := loads.Integrate(strips, nil, loads.Axis{}, places)
	if err != nil {
		t.Fatal(err)
	}
	moments, stiffness := make([]float64, len(places)), make([]float64, len(places))
	for i := range places {
		moments[i], stiffness[i] = at[i].Bending.At(1), in["stiffness"]
	}
	d, err := TipDeflection(places, moments, stiffness)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func TestFormulasOfSections(t *testing.T) {
	t.Parallel()
	checkPublished(t, "section_formulas", map[string]method{
		"tube-inertia": func(in inputs) float64 { return RingInertia(in["outer"], in["inner"]) },
		"tube-stress":  func(in inputs) float64 { return greatest(measured(t, tube(in)), 0, in["moment"]) },
		"solid-stress": func(in inputs) float64 {
			return greatest(measured(t, Part{Shape: ShapeSolid, Material: stiff(1), Width: in["width"], Depth: in["depth"]}), 0, in["moment"])
		},
		"caps-inertia": func(in inputs) float64 { return measured(t, caps(in)).Bending },
		"caps-stress":  func(in inputs) float64 { return greatest(measured(t, caps(in)), 0, in["moment"]) },
		"web-shear":    func(in inputs) float64 { return measured(t, caps(in)).Parts[0].Shear * in["shear"] / 1e6 },
		"margin": func(in inputs) float64 {
			return Check{Allowable: in["allowable"], Stress: loads.Line{AtZero: in["stress"] / SafetyFactor}}.Margin(1)
		},
		"euler": func(in inputs) float64 {
			return EulerLoad(in["modulus"], RingInertia(in["outer"], in["inner"]), in["length"], 1)
		},
		"cylinder":       func(in inputs) float64 { return TubeBucklingStress(in["modulus"], in["wall"], in["radius"]) / 1e6 },
		"axial-factor":   func(in inputs) float64 { return AxialShellFactor(in["ratio"]) },
		"bending-factor": func(in inputs) float64 { return BendingShellFactor(in["ratio"]) },
		"plate-pressed": func(in inputs) float64 {
			return PlateBucklingStress(PlatePressed, in["modulus"], in["wall"], in["breadth"]) / 1e6
		},
		"plate-shear": func(in inputs) float64 {
			return PlateBucklingStress(PlateInShear, in["modulus"], in["wall"], in["breadth"]) / 1e6
		},
		"wrinkling": func(in inputs) float64 { return WrinklingStress(in["skin"], in["core"], in["shear"]) / 1e6 },
		"cell-shear": func(in inputs) float64 {
			box := stability.Box{Width: in["width"], Depth: in["depth"], Wall: in["wall"], ShearModulus: 5e9}
			shear, _, err := AssessBox(box, stiff(13e9), 0, loads.Line{PerLoad: in["torque"]})
			if err != nil {
				t.Error(err)
			}
			return shear.Stress.PerLoad / 1e6
		},
		"deflection-ellipse": func(in inputs) float64 {
			strips, err := loads.EllipticStrips(in["span"], in["lift"], 200)
			return deflection(t, strips, in, err)
		},
		"deflection-even": func(in inputs) float64 {
			strips, err := loads.ChordStrips([]loads.Cut{{Y: 0, Chord: 1}, {Y: in["span"] / 2, Chord: 1}}, in["lift"], 200)
			return deflection(t, strips, in, err)
		},
	})
}

// TestMaterialsAgainstTheirSources reads each row's material by the words of its id.
func TestMaterialsAgainstTheirSources(t *testing.T) {
	t.Parallel()
	property := map[string]func(m Material) float64{
		"modulus": func(m Material) float64 { return m.Modulus }, "tension": func(m Material) float64 { return m.Tension },
		"compression": func(m Material) float64 { return m.Compression }, "shear": func(m Material) float64 { return m.Shear },
	}
	for _, row := range readPublished(t, "material_strength") {
		kind, words, _ := strings.Cut(row[0], "/")
		material, found := FindMaterial(strings.ReplaceAll(words, "-", " "))
		if !found || property[kind] == nil {
			t.Fatalf("%s: no such material or property", row[0])
		}
		t.Run(row[0], func(t *testing.T) {
			t.Parallel()
			compare(t, property[kind](material), parse(t, row[2]), row[3])
			if row[5] == "from memory" && material.Status == Verified {
				t.Errorf("the table calls %s verified", material.Name)
			}
		})
	}
}
