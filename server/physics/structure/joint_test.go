package structure

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pitgate/server/physics/loads"
)

// The straight load of SocketLoad, cut into pieces, holds moment and shear, and its greatest shear is no more than SocketShear.
func TestSocketLoadHoldsTheJoint(t *testing.T) {
	t.Parallel()
	for _, joint := range [][3]float64{{100, 0, 0.12}, {100, 300, 0.12}, {10, 500, 0.3}, {0, 500, 0.2}} {
		moment, shear, length := joint[0], joint[1], joint[2]
		mouth := SocketLoad(moment, shear, length)
		end := -(6*moment/(length*length) + 2*shear/length)
		force, turn, greatest := 0.0, 0.0, 0.0
		const pieces = 20000
		for i := range pieces {
			x := (float64(i) + 0.5) / pieces * length
			w := mouth + (end-mouth)*x/length
			force += w * length / pieces
			turn -= w * x * length / pieces
			if x > 0 {
				greatest = math.Max(greatest, math.Abs(shear-force))
			}
		}
		near(t, "force", force, shear, 1e-6*(1+math.Abs(shear)))
		near(t, "moment", turn, moment, 1e-4*(1+moment))
		if bound := math.Max(shear, SocketShear(moment, shear, length)); greatest > bound*(1+1e-3) {
			t.Errorf("%v: shear of %v inside, bound %v", joint, greatest, bound)
		}
	}
}

func TestShortJoinerCrushesItsSocket(t *testing.T) {
	t.Parallel()
	joiner := Joiner{Part: Part{Shape: ShapeTube, Material: material(t, "carbon rod"), Outer: 0.012}, Engaged: 0.12}
	last := 0.0
	for _, length := range []float64{0.02, 0.04, 0.08, 0.16} {
		joiner.Engaged = length
		r, err := joiner.Assess(bent(6, 20))
		if err != nil || r.Stands < last {
			t.Errorf("%v m stands %v after %v, %v", length, r.Stands, last, err)
		}
		if length == 0.02 && r.Checks[r.Governs].Mode != ModeBearing {
			t.Errorf("fails by %v", r.Checks[r.Governs].Mode)
		}
		last = r.Stands
	}
	joiner.Bearing = 1e6
	weak, err := joiner.Assess(bent(6, 20))
	if err != nil || weak.Stands >= last {
		t.Errorf("a soft socket stands %v, %v", weak.Stands, err)
	}
	joiner.Engaged = 0
	if _, err := joiner.Assess(bent(6, 20)); !errors.Is(err, ErrInput) || !strings.Contains(err.Error(), "engagedLength") {
		t.Errorf("%v", err)
	}
}

func TestBolts(t *testing.T) {
	t.Parallel()
	nylon := material(t, "nylon")
	one, err := Bolts{0.006, 1, nylon}.Assess(loads.Line{PerLoad: 50})
	if err != nil {
		t.Fatal(err)
	}
	// 45 MPa over 0.71 of 28.27 mm2 is 903 N, 602 with the factor.
	near(t, "one bolt of 6 mm", one.Upper, 45e6*0.71*math.Pi*9e-6/1.5/50, 1e-6)
	last := one.Upper
	for _, count := range []int{2, 4, 6} {
		c, err := Bolts{0.006, count, nylon}.Assess(loads.Line{PerLoad: 50})
		if err != nil || c.Upper < last-1e-9 {
			t.Errorf("%d bolts stand %v after %v, %v", count, c.Upper, last, err)
		}
		last = c.Upper
	}
	near(t, "six bolts, the worst half again its share", last, 4*one.Upper, 1e-9)
	if _, err := (Bolts{0.006, 0, nylon}).Assess(loads.Line{}); !errors.Is(err, ErrInput) || !strings.Contains(err.Error(), "boltCount") {
		t.Errorf("%v", err)
	}
}

func TestRaiseFindsTheLeastThickness(t *testing.T) {
	t.Parallel()
	station := Station{Parts: []Part{
		carbonTube(t), {Shape: ShapeSolid, Material: material(t, "spruce"), Width: 0.005, Depth: 0.02},
		{Shape: ShapeCapsAndWeb, Material: material(t, "carbon"), Width: 0.01, Depth: 0.03, Cap: 0.001, Web: 0.002},
	}}
	at := bent(60, 100)
	now := mustStation(t, at, station.Parts...)
	want := now.Stands * 1.3
	changes, err := Raise(station, at, false, want)
	if err != nil || len(changes) != 4 {
		t.Fatalf("%+v, %v", changes, err)
	}
	found := 0
	for _, c := range changes {
		if !c.Found {
			continue
		}
		found++
		enough, short := thicker(t, station, c, c.To), thicker(t, station, c, c.From+(c.To-c.From)*0.999)
		if enough := mustStation(t, at, enough...).Stands; enough < want {
			t.Errorf("%+v stands %v of %v", c, enough, want)
		}
		if less := mustStation(t, at, short...).Stands; less >= want {
			t.Errorf("%+v: less is enough", c)
		}
	}
	if found == 0 {
		t.Errorf("nothing helps: %+v", changes)
	}
	if none, err := Raise(station, at, false, now.Stands*0.9); err != nil || none != nil {
		t.Errorf("%+v, %v: it stands that already", none, err)
	}
}

// thicker returns the parts with one thickness changed.
func thicker(t *testing.T, s Station, c Change, to float64) []Part {
	t.Helper()
	parts := append([]Part(nil), s.Parts...)
	for _, k := range parts[c.Part].knobs() {
		if k.field == c.Field {
			k.set(&parts[c.Part], to)
			return parts
		}
	}
	t.Fatalf("no %s", c.Field)
	return nil
}

func TestEvidence(t *testing.T) {
	t.Parallel()
	for _, row := range []struct {
		evidence    Evidence
		loadFactor  float64
		basis       Basis
		below, over bool
	}{
		{Evidence{}, 0, BasisNone, false, false}, {Evidence{Design: 6}, 6, BasisDesign, false, false}, {Evidence{7, 6, 0}, 7, BasisCalculated, false, false},
		{Evidence{4, 6, 0}, 4, BasisCalculated, true, false}, {Evidence{4, 6, 8}, 8, BasisTested, false, true}, {Evidence{9, 6, 5}, 5, BasisTested, true, false},
	} {
		p, err := Decide(row.evidence)
		if err != nil || p != (Permitted{row.loadFactor, row.basis, row.below, row.over}) {
			t.Errorf("%+v: %+v, %v", row.evidence, p, err)
		}
	}
	if _, err := Decide(Evidence{Proof: -1}); !errors.Is(err, ErrInput) || !strings.Contains(err.Error(), "proofLoadFactor") {
		t.Errorf("%v", err)
	}
	bags, err := SandbagMass(6, 12, 3)
	if err != nil || bags != 51 {
		t.Errorf("%v kg, %v", bags, err)
	}
	if _, err := SandbagMass(6, 2, 3); !errors.Is(err, ErrInput) {
		t.Errorf("%v", err)
	}
	f := PullUp(40, 5, 9)
	near(t, "radius", f.PullUpRadius, 1600/(loads.StandardGravity*4), 1e-9)
	near(t, "bank", 1/math.Cos(f.TurnBank), 5, 1e-9)
	if slow := PullUp(15, 5, 0.9); !slow.StallLimited || slow.PullUpRadius != 0 || slow.TurnBank != 0 {
		t.Errorf("%+v", slow)
	}
}

func TestBoomLoad(t *testing.T) {
	t.Parallel()
	at := BoomLoad(loads.Line{AtZero: -5, PerLoad: 3}, 0.8, 0.1, 0.05)
	near(t, "shear at 4 g", at.Shear.At(4), -5+12-4*0.15*loads.StandardGravity, 1e-9)
	near(t, "bending at 4 g", at.Bending.At(4), 0.8*(7-4*0.125*loads.StandardGravity), 1e-9)
}
