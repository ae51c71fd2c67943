package structure

import (
	"errors"
	"math"
	"testing"

	"pitgate/server/physics/loads"
	"pitgate/server/physics/stability"
)

// refused fails when an error is not one that this package may give.
func refused(t *testing.T, err error) {
	t.Helper()
	if !errors.Is(err, ErrInput) && !errors.Is(err, ErrOutOfRange) {
		t.Errorf("%v", err)
	}
}

func checkStation(t *testing.T, r StationResult) {
	t.Helper()
	sum := r.Stands + r.StandsInverted + r.SkinBucklesAt + r.Section.Bending + r.Section.Neutral
	for _, c := range r.Checks {
		sum += c.Upper + c.Lower + c.Margin(3)
	}
	if !finite(sum) || r.Governs >= len(r.Checks) {
		t.Errorf("%+v", r)
	}
}

func FuzzAssess(f *testing.F) {
	f.Add(1, 0.025, 0.0015, 0.01, 0.03, 0.003, 0.001, 0.0, 0.0, 2, 20.0, 1.0, 30.0, 2.0, 0.1, 6.0)
	f.Add(2, 0.0, 0.0, 0.012, 0.036, 0.003, 0.0, 0.01, 0.5, 4, 200.0, -10.0, 3000.0, -2.0, 0.01, 12.0)
	f.Add(4, 1e300, 1e-300, 1e300, 1e-300, 1e-300, 1e300, 1e300, 1.0, 1, 1e300, 1e300, 1e-300, 1e300, 1e-300, 1e300)
	f.Add(3, math.NaN(), -1.0, math.Inf(1), 0.0, 0.0, 0.0, 0.0, -1.0, 9, math.NaN(), 0.0, 0.0, 0.0, 0.0, -1.0)
	table := Materials()
	f.Fuzz(func(t *testing.T, shape int, outer, wall, width, depth, caps, web, offset, knock float64, kind int, moment, zero, shear, torsion, length, want float64) {
		m := table[max(0, min(len(table)-1, kind))]
		p := Part{Shape(shape), m, outer, wall, width, depth, caps, web, offset, knock}
		q := Part{Shape(kind), table[0], width, depth, outer, wall, web, caps, -offset, knock}
		at := loads.Load{Bending: loads.Line{AtZero: zero, PerLoad: moment}, Shear: loads.Line{AtZero: zero, PerLoad: shear}, Torsion: loads.Line{PerLoad: torsion}}
		for _, parts := range [][]Part{{p}, {p, q}} {
			r, err := AssessStation(Station{Parts: parts}, at, true)
			if err != nil {
				refused(t, err)
				continue
			}
			checkStation(t, r)
			changes, err := Raise(Station{Parts: parts}, at, true, want)
			if err != nil {
				refused(t, err)
			}
			for _, c := range changes {
				if !finite(c.To) {
					t.Errorf("%+v", c)
				}
			}
		}
		if r, err := (Joiner{p, length, knock}).Assess(at); err == nil {
			checkStation(t, r)
		} else {
			refused(t, err)
		}
		fuzzRest(t, m, kind, outer, width, depth, wall, knock, at, want)
	})
}

func fuzzRest(t *testing.T, m Material, count int, outer, width, depth, wall, knock float64, at loads.Load, want float64) {
	t.Helper()
	bolt, err := Bolts{outer, count, m}.Assess(at.Shear)
	shear, wrinkles, boxErr := AssessBox(stability.Box{Width: width, Depth: depth, Wall: wall}, m, knock, at.Torsion)
	decided, evidenceErr := Decide(Evidence{want, knock, outer})
	bags, bagErr := SandbagMass(want, outer, width)
	for _, err := range []error{err, boxErr, evidenceErr, bagErr} {
		if err != nil {
			refused(t, err)
		}
	}
	sum := bolt.Upper + bolt.Margin(2) + shear.Upper + wrinkles.Lower + shear.Margin(1) + decided.LoadFactor
	if bagErr == nil {
		sum += bags
	}
	if !finite(sum) {
		t.Errorf("%+v %+v %+v %v", bolt, shear, wrinkles, bags)
	}
}

// BenchmarkStructure is the whole structure of a model: span loads at 12 stations with four parts each, joiner, boom, bolts and box.
func BenchmarkStructure(b *testing.B) {
	cuts := []loads.Cut{{Y: 0, Chord: 0.35}, {Y: 1, Chord: 0.2}}
	strips, err := loads.SchrenkStrips(cuts, 120, 24)
	if err != nil {
		b.Fatal(err)
	}
	items, err := loads.SpreadMass(cuts, 1.6, 24, 0.4, func(float64) float64 { return 0 })
	if err != nil {
		b.Fatal(err)
	}
	parts := []Part{
		carbonTube(b), {Shape: ShapeCapsAndWeb, Material: material(b, "spruce"), Width: 0.012, Depth: 0.03, Cap: 0.004, Web: 0.002},
		{Shape: ShapeSheet, Material: material(b, "balsa"), Width: 0.15, Wall: 0.0015, Depth: 0.03},
		{Shape: ShapeFoamCore, Material: material(b, "eps"), Width: 0.15, Depth: 0.027},
	}
	places, stations := make([]float64, 12), make([]Station, 12)
	for i := range places {
		places[i] = float64(i) / 12
		stations[i] = Station{places[i], parts}
	}
	b.ReportAllocs()
	for b.Loop() {
		at, err := loads.Integrate(strips, items, loads.Axis{RootX: 0.1}, places)
		if err != nil {
			b.Fatal(err)
		}
		if _, err := Assess(stations, at, false); err != nil {
			b.Fatal(err)
		}
		if _, err := (Joiner{Part: parts[0], Engaged: 0.1}).Assess(at[0]); err != nil {
			b.Fatal(err)
		}
		if _, err := AssessStation(Station{Parts: parts[:1]}, BoomLoad(loads.Line{PerLoad: 4}, 0.8, 0.1, 0.05), true); err != nil {
			b.Fatal(err)
		}
		if _, err := (Bolts{0.006, 2, parts[0].Material}).Assess(at[0].Shear); err != nil {
			b.Fatal(err)
		}
		if _, _, err := AssessBox(stability.Box{Width: 0.15, Depth: 0.03, Wall: 0.001}, parts[2].Material, 0, at[0].Torsion); err != nil {
			b.Fatal(err)
		}
	}
}
