package structure

import (
	"errors"
	"math"
	"testing"

	"pitgate/server/physics/loads"
)

// TestPublishedBoltThreads wants the one share of the shank that stands for all threads to keep within what is printed of each.
func TestPublishedBoltThreads(t *testing.T) {
	t.Parallel()
	bolt, known := FindMaterial("steel bolt 8.8")
	if !known {
		t.Fatal("no bolt in the table")
	}
	area := func(diameter float64) float64 {
		check, err := (Bolts{Diameter: diameter, Count: 1, Material: bolt}).Assess(loads.Line{PerLoad: 1})
		if err != nil {
			t.Fatal(err)
		}
		return 1 / check.Stress.PerLoad
	}
	checkPublished(t, "bolt_threads", map[string]method{
		"area":  func(in inputs) float64 { return area(in["diameter"]) },
		"proof": func(in inputs) float64 { return bolt.Tension * area(in["diameter"]) },
	})
}

// TestMassPerLength of parts whose mass is told by hand.
func TestMassPerLength(t *testing.T) {
	t.Parallel()
	balsa, _ := FindMaterial("balsa")
	steel, _ := FindMaterial("spring steel")
	rows := []struct {
		name string
		part Part
		want float64
	}{
		{"balsa 10 x 10 mm, 160 kg/m3", Part{Shape: ShapeSolid, Material: balsa, Width: 0.01, Depth: 0.01}, 0.016},
		{"steel rod of 2 mm, 7850 kg/m3", Part{Shape: ShapeTube, Material: steel, Outer: 0.002}, 7850 * math.Pi * 1e-6},
		{"two balsa caps of 10 x 2 mm", Part{Shape: ShapeCapsAndWeb, Material: balsa, Width: 0.01, Cap: 0.002, Depth: 0.02}, 160 * 4e-5},
	}
	for _, row := range rows {
		if got, err := row.part.MassPerLength(); err != nil || math.Abs(got-row.want) > 1e-12 {
			t.Errorf("%s: %g, want %g: %v", row.name, got, row.want, err)
		}
	}
	if _, err := (Part{}).MassPerLength(); !errors.Is(err, ErrInput) {
		t.Errorf("nothing weighs: %v", err)
	}
}
