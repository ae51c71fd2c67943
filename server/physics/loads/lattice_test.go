package loads

import (
	"errors"
	"testing"

	"pitgate/server/physics/lift"
	"pitgate/server/physics/planform"
)

// wing is a tapered wing of 2 m span, with a twist at the tip.
func wing(twist float64) []planform.Surface {
	return []planform.Surface{{Name: "wing", Role: planform.RoleWing, Mirrored: true, Stations: []planform.Station{
		{Chord: 0.35}, {X: 0.04, Y: 1, Chord: 0.21, Twist: twist},
	}}}
}

func mustSolve(t *testing.T, surfaces []planform.Surface) *lift.Solution {
	t.Helper()
	reference, err := lift.ReferenceOf(surfaces)
	if err != nil {
		t.Fatal(err)
	}
	s, err := lift.Solve(surfaces, reference)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// The lattice and Schrenk are two ways to the same loading: their root moments agree within a few hundredths.
func TestSchrenkChecksTheLattice(t *testing.T) {
	t.Parallel()
	strips, err := FromLattice(mustSolve(t, wing(0)), "wing", 100, 600, -0.05)
	if err != nil {
		t.Fatal(err)
	}
	schrenk, err := SchrenkStrips([]Cut{{0, 0.35}, {1, 0.21}}, 100, 100)
	if err != nil {
		t.Fatal(err)
	}
	a, b := mustIntegrate(t, strips, nil, Axis{RootX: 0.0875}, 0)[0], mustIntegrate(t, schrenk, nil, Axis{}, 0)[0]
	near(t, "half the weight a g", a.Shear.At(4), 200, 1e-6)
	near(t, "bending over Schrenk's", a.Bending.At(4)/b.Bending.At(4), 1, 0.03)
	near(t, "nothing at zero", a.Bending.AtZero, 0, 1e-6)
	if a.Torsion.AtZero >= 0 {
		t.Errorf("sections that pitch down twist the wing down, got %v", a.Torsion)
	}
}

func TestWashoutTakesBendingOffInProportionToPressure(t *testing.T) {
	t.Parallel()
	s := mustSolve(t, wing(-0.05))
	low, err := FromLattice(s, "wing", 100, 300, 0)
	high, err2 := FromLattice(s, "wing", 100, 900, 0)
	if err != nil || err2 != nil {
		t.Fatal(err, err2)
	}
	a, b := mustIntegrate(t, low, nil, Axis{}, 0)[0], mustIntegrate(t, high, nil, Axis{}, 0)[0]
	if a.Bending.AtZero >= 0 {
		t.Errorf("washout must take bending off, got %v", a.Bending)
	}
	near(t, "three times the pressure", b.Bending.AtZero, 3*a.Bending.AtZero, 1e-9)
	near(t, "the same a g", b.Bending.PerLoad, a.Bending.PerLoad, 1e-9)
	near(t, "no lift at zero", b.Shear.AtZero, 0, 1e-6)
	if none, err := FromLattice(s, "fin", 100, 300, 0); err != nil || none != nil {
		t.Errorf("%v, %v", none, err)
	}
	if _, err := FromLattice(s, "wing", 0, 300, 0); !errors.Is(err, ErrInput) {
		t.Errorf("%v", err)
	}
}
