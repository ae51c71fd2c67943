package document

import (
	"os"
	"path/filepath"
	"reflect"
	"sync"
	"testing"

	"pitgate/server/physics/assess"
)

func demoDocument(t testing.TB, name string) assess.Input {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(demoFolder, name+".json"))
	if err != nil {
		t.Fatal(err)
	}
	in, err := Decode(data)
	if err != nil {
		t.Fatal(err)
	}
	return in
}

// TestGeometryIsKeptForEqualGeometryOnly changes one part of a document at a time.
func TestGeometryIsKeptForEqualGeometryOnly(t *testing.T) {
	t.Parallel()
	number := func(v float64) *float64 { return &v }
	rows := []struct {
		name   string
		same   bool
		change func(*assess.Input)
	}{
		{"nothing", true, func(*assess.Input) {}},
		{"mass", true, func(in *assess.Input) { in.Model.Mass.EmptyMassKg.Value = number(3) }},
		{"surface's own mass", true, func(in *assess.Input) { in.Model.Surfaces[0].MassKg = &assess.Quantity{Value: number(1)} }},
		{"day", true, func(in *assess.Input) { in.Day.TemperatureCelsius.Value = number(-5) }},
		{"field, plan and limits", true, func(in *assess.Input) { in.Field, in.LaunchPlan, in.Limits = nil, nil, nil }},
		{"name of the model", true, func(in *assess.Input) { in.Model.DisplayName = "another" }},
		{"chord", false, func(in *assess.Input) { in.Model.Surfaces[0].Stations[0].ChordMeters = number(0.31) }},
		{"twist", false, func(in *assess.Input) { in.Model.Surfaces[0].Stations[1].TwistDegrees = number(-3) }},
		{"section", false, func(in *assess.Input) { in.Model.Surfaces[0].Stations[0].Section.Designation = "4415" }},
		{"incidence", false, func(in *assess.Input) {
			in.Model.Surfaces[0].IncidenceDegrees = &assess.Quantity{Value: number(2.25)}
		}},
		{"body width", false, func(in *assess.Input) { in.Model.Bodies[0].Stations[1].WidthMeters = number(0.3) }},
		{"wheel height", false, func(in *assess.Input) { in.Model.Gear.Wheels[1].ZMeters = number(-0.2) }},
		{"rolling resistance", true, func(in *assess.Input) { in.Model.Gear.RollingResistanceRatio = &assess.Quantity{Value: number(0.1)} }},
		{"direction of an antenna", false, func(in *assess.Input) { in.Model.Radio.Antennas[0].ElevationDegrees = number(12) }},
		{"radiated power", true, func(in *assess.Input) { in.Model.Radio.RadiatedPowerMilliwatts.Value = number(50) }},
		{"no surfaces", false, func(in *assess.Input) { in.Model.Surfaces = nil }},
		{"no model", false, func(in *assess.Input) { in.Model = nil }},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			cache := newGeometryCache(4)
			first, err := cache.of(demoDocument(t, "dabchick_long_acre"))
			if err != nil {
				t.Fatal(err)
			}
			changed := demoDocument(t, "dabchick_long_acre")
			row.change(&changed)
			second, err := cache.of(changed)
			if err != nil || (first == second) != row.same {
				t.Errorf("same geometry %v, want %v, error %v", first == second, row.same, err)
			}
			whole, errWhole := assess.Run(changed)
			kept, errKept := second.Run(changed)
			if errWhole != nil || errKept != nil || !reflect.DeepEqual(whole, kept) {
				t.Errorf("a kept geometry answers otherwise than one computed anew (%v, %v)", errWhole, errKept)
			}
		})
	}
}

func TestGeometryCacheDropsTheOneNotUsedForLongest(t *testing.T) {
	t.Parallel()
	cache := newGeometryCache(2)
	of := func(name string) *assess.Geometry {
		g, err := cache.of(demoDocument(t, name))
		if err != nil {
			t.Fatal(err)
		}
		return g
	}
	dabchick, redshank := of("dabchick_long_acre"), of("redshank_quarry_top")
	if of("dabchick_long_acre") != dabchick {
		t.Error("dabchick was not kept")
	}
	of("nightjar_long_acre")
	if of("dabchick_long_acre") != dabchick {
		t.Error("dabchick was dropped though it was used last but one")
	}
	if of("redshank_quarry_top") == redshank {
		t.Error("redshank was kept in a cache for two")
	}
	if cache.recent.Len() != 2 || len(cache.places) != 2 {
		t.Errorf("%d and %d kept, want 2", cache.recent.Len(), len(cache.places))
	}
}

// TestKeptGeometryServesManyAtOnce runs one geometry from several goroutines and wants one answer.
func TestKeptGeometryServesManyAtOnce(t *testing.T) {
	t.Parallel()
	in := demoDocument(t, "redshank_quarry_top")
	want, err := Assess(in)
	if err != nil {
		t.Fatal(err)
	}
	var group sync.WaitGroup
	for range 4 {
		group.Go(func() {
			if got, err := Assess(in); err != nil || !reflect.DeepEqual(got, want) {
				t.Errorf("answers differ, error %v", err)
			}
		})
	}
	group.Wait()
}

// TestGeometryThatCannotExistIsNotKept asks twice and wants the fault twice.
func TestGeometryThatCannotExistIsNotKept(t *testing.T) {
	t.Parallel()
	cache, back := newGeometryCache(2), -0.5
	in := demoDocument(t, "dabchick_long_acre")
	in.Model.Surfaces[0].Stations[1].LeadingEdgeYMeters = &back
	for range 2 {
		if _, err := cache.of(in); err == nil {
			t.Error("no error")
		}
	}
	if len(cache.places) != 0 {
		t.Error("a broken geometry was kept")
	}
}
