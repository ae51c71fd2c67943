package assess_test

import (
	"encoding/json"
	"errors"
	"math/rand/v2"
	"strings"
	"testing"

	"pitgate/server/document"
	"pitgate/server/physics/assess"
	"pitgate/server/physics/lift"
	"pitgate/server/physics/planform"
	"pitgate/server/physics/weighing"
)

// randomGeometry bends the surfaces and bodies of a model out of shape; what stands in the document stays in the contract's ranges.
func randomGeometry(in *assess.Input, random *rand.Rand) {
	wild := func(low, high float64) *float64 { return number(low + (high-low)*random.Float64()*random.Float64()) }
	for i := range in.Model.Surfaces {
		surface := &in.Model.Surfaces[i]
		if random.IntN(6) == 0 {
			surface.Role = assess.SurfaceRole(surface.Role.Names()[random.IntN(len(surface.Role.Names()))])
		}
		if random.IntN(4) == 0 {
			surface.Mirrored = new(random.IntN(2) == 0)
		}
		for k := range surface.Stations {
			station := &surface.Stations[k]
			switch random.IntN(7) {
			case 0:
				station.ChordMeters = wild(1e-4, 5)
			case 1:
				station.LeadingEdgeXMeters = wild(-20, 20)
			case 2:
				station.LeadingEdgeYMeters = wild(-1, 20)
			case 3:
				station.LeadingEdgeZMeters = wild(-5, 5)
			case 4:
				station.TwistDegrees = wild(-30, 30)
			case 5:
				station.Section = &assess.Section{Family: assess.SectionFamilyOwn, ThicknessRatio: wild(0.005, 0.4), CamberRatio: wild(-0.1, 0.15)}
			}
		}
		for k := range surface.Controls {
			surface.Controls[k].ChordRatio, surface.Controls[k].OuterSpanRatio = wild(0.01, 1), wild(0, 1)
		}
	}
	for i := range in.Model.Bodies {
		for k := range in.Model.Bodies[i].Stations {
			if random.IntN(5) == 0 {
				in.Model.Bodies[i].Stations[k].WidthMeters = wild(0, 3)
			}
		}
	}
}

// wantAnswerOrName runs a bent model, with bands or without: an answer that JSON can write, or an error that names what cannot be.
func wantAnswerOrName(t *testing.T, in assess.Input, bands bool) bool {
	t.Helper()
	geometry, err := assess.Prepare(in)
	report := assess.Report{}
	if err == nil {
		report, err = geometry.RunWith(in, assess.Options{Drawings: true, Bands: bands})
	}
	if err != nil {
		var field *weighing.FieldError
		named := errors.Is(err, planform.ErrImpossible) || errors.Is(err, lift.ErrUnsolvable) || errors.Is(err, lift.ErrNothingLifts) || errors.As(err, &field)
		if !named || !strings.Contains(err.Error(), "surface") && field == nil {
			t.Errorf("an error that names no part: %v", err)
		}
		return false
	}
	if _, err := json.Marshal(report); err != nil {
		t.Errorf("%v", err)
	}
	for _, f := range report.Findings {
		if f.Verdict == assess.VerdictUnknown && len(f.Missing) == 0 && f.Note == "" {
			t.Errorf("%s is unknown without a word", f.ID)
		}
	}
	return true
}

// TestBentGeometries bends the demo's models a hundred and fifty times with fixed seeds, every fifth with bands.
func TestBentGeometries(t *testing.T) {
	t.Parallel()
	answered := 0
	for seed := range uint64(150) {
		name := []string{"dabchick_long_acre", "sandmartin_long_acre_wet", "redshank_quarry_top"}[seed%3]
		in := demoInput(t, name)
		randomGeometry(&in, rand.New(rand.NewPCG(seed, 7)))
		if wantAnswerOrName(t, in, seed%5 == 4) {
			answered++
		}
	}
	if answered < 20 || answered > 145 {
		t.Errorf("%d of 150 answered: the bends are too wild or too tame", answered)
	}
}

// TestAbsurdGeometryIsRefusedOrMarked wants a refusal by name, or a mark on what rests on it.
func TestAbsurdGeometryIsRefusedOrMarked(t *testing.T) {
	t.Parallel()
	rows := []struct {
		name, error string
		change      func(*assess.Input)
	}{
		{"stations run inward", "wing", func(in *assess.Input) { in.Model.Surfaces[0].Stations[1].LeadingEdgeYMeters = number(-0.4) }},
		{"two stations in one place", "wing", func(in *assess.Input) { in.Model.Surfaces[0].Stations[1] = in.Model.Surfaces[0].Stations[0] }},
		{"a section as thick as long", "", func(in *assess.Input) {
			in.Model.Surfaces[0].Stations[0].Section = &assess.Section{Family: assess.SectionFamilyOwn, ThicknessRatio: number(0.4), CamberRatio: number(0.15)}
		}},
		{"a chord of two millimetres", "", func(in *assess.Input) {
			in.Model.Surfaces[0].Stations[0].ChordMeters, in.Model.Surfaces[0].Stations[1].ChordMeters = number(0.002), number(0.002)
		}},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			in := demoInput(t, "dabchick_long_acre")
			row.change(&in)
			report, err := assess.Run(in)
			if row.error != "" {
				if err == nil || !strings.Contains(err.Error(), row.error) {
					t.Errorf("got %v, want an error that names the %s", err, row.error)
				}
				return
			}
			if err != nil {
				t.Fatal(err)
			}
			if f := findingOf(t, report, "stall.speed"); !f.OutsideValidity {
				t.Errorf("stall speed of %v is not marked: %s", f.Value, f.Note)
			}
		})
	}
}

// FuzzGeometry bends a model by a seed.
func FuzzGeometry(f *testing.F) {
	for seed := range uint64(8) {
		f.Add(seed)
	}
	base := demoInput(f, "sandmartin_long_acre_wet")
	text, err := document.Canonical(base)
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, seed uint64) {
		in, err := document.Decode(text)
		if err != nil {
			t.Fatal(err)
		}
		randomGeometry(&in, rand.New(rand.NewPCG(seed, 11)))
		wantAnswerOrName(t, in, true)
	})
}
