package assess_test

import (
	"reflect"
	"strings"
	"testing"

	"pitgate/server/physics/assess"
)

// wantChain follows every finding and quantity of a report down to inputs and methods.
func wantChain(t *testing.T, report assess.Report) {
	t.Helper()
	chain := chain{t: t, known: map[string]*assess.ReportQuantity{}, open: map[string]bool{}, done: map[string]bool{}}
	for i := range report.Quantities {
		q := &report.Quantities[i]
		chain.known[q.ID] = q
		if q.Title == "" || q.Formula == "" || q.Source == "" {
			t.Errorf("%s: title %q, formula %q, source %q", q.ID, q.Title, q.Formula, q.Source)
		}
		if q.Value != nil && q.Unit == "" {
			t.Errorf("%s: a number without unit", q.ID)
		}
	}
	for i := range report.Quantities {
		chain.follow(report.Quantities[i].ID)
	}
	for i := range report.Findings {
		f := &report.Findings[i]
		if f.Verdict == assess.VerdictUnknown {
			continue
		}
		if len(f.From) == 0 {
			t.Errorf("finding %s comes from nothing", f.ID)
		}
		for _, name := range f.From {
			chain.follow(name)
		}
	}
}

type chain struct {
	t          *testing.T
	known      map[string]*assess.ReportQuantity
	open, done map[string]bool
}

func (c *chain) follow(name string) {
	q := c.known[name]
	switch {
	case c.done[name]:
		return
	case c.open[name]:
		c.t.Errorf("%s is computed from itself", name)
		return
	case q == nil:
		if !assess.IsMethod(name) && !inContract(reflect.TypeFor[assess.Input](), name) {
			c.t.Errorf("%q is neither a quantity of the report nor a path of the document", name)
		}
		return
	case len(q.From) == 0:
		c.t.Errorf("%s comes from nothing", name)
	}
	c.open[name] = true
	for _, source := range q.From {
		c.follow(source)
	}
	c.open[name], c.done[name] = false, true
}

// inContract reports whether a path leads somewhere in the document.
func inContract(at reflect.Type, path string) bool {
	for part := range strings.SplitSeq(path, ".") {
		name, _, _ := strings.Cut(part, "[")
		for at.Kind() == reflect.Pointer || at.Kind() == reflect.Slice {
			at = at.Elem()
		}
		if at.Kind() != reflect.Struct {
			return false
		}
		next, found := at, false
		for i := range at.NumField() {
			tag, _, _ := strings.Cut(at.Field(i).Tag.Get("json"), ",")
			if tag == name {
				next, found = at.Field(i).Type, true
			}
		}
		if !found {
			return false
		}
		at = next
	}
	return true
}

// TestEveryNumberHasItsChain wants it for whole documents and for those that lack a part.
func TestEveryNumberHasItsChain(t *testing.T) {
	t.Parallel()
	lacking := map[string]func(*assess.Input){
		"whole": func(*assess.Input) {}, "no model": func(in *assess.Input) { in.Model = nil },
		"no field": func(in *assess.Input) { in.Field = nil }, "no plan": func(in *assess.Input) { in.LaunchPlan = nil },
		"no day": func(in *assess.Input) { in.Day = nil }, "no limits": func(in *assess.Input) { in.Limits = nil },
		"no surfaces": func(in *assess.Input) { in.Model.Surfaces = nil }, "no mass": func(in *assess.Input) { in.Model.Mass = nil },
		"no engine": func(in *assess.Input) { in.Model.Engines = nil }, "no obstacles": func(in *assess.Input) { in.Field.Obstacles = nil },
		"measured": func(in *assess.Input) {
			in.Model.MeasuredResults = []assess.MeasuredResult{
				{QuantityID: "lift.maximum_coefficient", Value: quantity(1.1)}, {QuantityID: "drag.zero_lift", Value: quantity(0.03)},
			}
		},
	}
	for _, row := range demoVerdicts {
		for name, lack := range lacking {
			t.Run(row.name+" "+name, func(t *testing.T) {
				t.Parallel()
				in := demoInput(t, row.name)
				lack(&in)
				wantChain(t, assessed(t, in))
			})
		}
	}
}

// TestMeasuredResultReplacesTheFormula wants a measured figure to name the measurement, not the method that it replaced.
func TestMeasuredResultReplacesTheFormula(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "dabchick_long_acre")
	in.Model.MeasuredResults = []assess.MeasuredResult{{QuantityID: "drag.zero_lift", Value: quantity(0.031), Method: "glide test, five runs"}}
	for _, q := range assessed(t, in).Quantities {
		if q.ID != "drag.zero_lift" {
			continue
		}
		if *q.Value != 0.031 || q.Source != "glide test, five runs" || !strings.HasPrefix(q.Formula, "measured") ||
			!reflect.DeepEqual(q.From, []string{"model.measuredResults[0].value"}) {
			t.Errorf("got %v, formula %q, source %q, from %v", *q.Value, q.Formula, q.Source, q.From)
		}
	}
}
