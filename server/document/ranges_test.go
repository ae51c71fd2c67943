package document

import (
	"encoding/csv"
	"encoding/json"
	"errors"
	"os"
	"reflect"
	"strings"
	"testing"

	"google.golang.org/protobuf/reflect/protoreflect"

	pitgatev1 "pitgate/proto/pitgate/v1"
	"pitgate/server/physics/assess"
)

// rangesFile says of every number of the document in which range it lies and why.
const rangesFile = "../../testdata/ranges/ranges.csv"

// numberField is one place in the document where a number stands.
type numberField struct {
	id       string // Owner.field
	path     string
	field    reflect.StructField
	quantity bool
	whole    bool
	wrap     func(value any) any // puts a value at the place into a document that has nothing else
}

// numberFields walks every number of a type, lists with one entry each.
func numberFields(of reflect.Type, path string, wrap func(any) any, visit func(numberField)) {
	for i := range of.NumField() {
		field := of.Field(i)
		name := jsonName(field)
		at, put := join(path, name), func(value any) any { return wrap(map[string]any{name: value}) }
		inner := field.Type
		if inner.Kind() == reflect.Pointer {
			inner = inner.Elem()
		}
		if inner.Kind() == reflect.Slice {
			outer := put
			inner, at, put = inner.Elem(), at+"[0]", func(value any) any { return outer([]any{value}) }
		}
		found := numberField{id: of.Name() + "." + name, path: at, field: field, wrap: put}
		switch {
		case inner == reflect.TypeFor[assess.Quantity]():
			found.quantity = true
			visit(found)
		case inner.Kind() == reflect.Struct:
			numberFields(inner, at, put, visit)
		case inner.Kind() != reflect.String && inner.Kind() != reflect.Bool:
			found.whole = inner.Kind() != reflect.Float64
			visit(found)
		}
	}
}

// allNumbers are the places of every number of a document and, once, those of a Quantity itself.
func allNumbers() []numberField {
	var all []numberField
	add := func(f numberField) { all = append(all, f) }
	same := func(value any) any { return value }
	numberFields(reflect.TypeFor[assess.Input](), "", same, add)
	return all
}

// writtenRanges reads the table: the range and the reason of every field.
func writtenRanges(t *testing.T) map[string][2]string {
	t.Helper()
	file, err := os.Open(rangesFile)
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = file.Close() }()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	table := map[string][2]string{}
	for _, row := range rows[1:] {
		if _, twice := table[row[0]]; twice {
			t.Errorf("%s stands twice", row[0])
		}
		table[row[0]] = [2]string{row[1], row[2]}
	}
	return table
}

// TestEveryNumberHasARange wants two ends for every number of the structs, and the table to give the same ends and a reason; a new field without one
// fails by its name.
func TestEveryNumberHasARange(t *testing.T) {
	t.Parallel()
	table := writtenRanges(t)
	seen := map[string]bool{"Quantity.value": true, "Quantity.spread": true}
	for _, f := range allNumbers() {
		if seen[f.id] {
			continue
		}
		seen[f.id] = true
		if _, ok := breadth(f.field); !ok {
			t.Errorf("%s: has no range with two ends, has %q", f.id, f.field.Tag.Get("range"))
		}
		row, ok := table[f.id]
		switch {
		case !ok:
			t.Errorf("%s: has no row in %s", f.id, rangesFile)
		case row[0] != f.field.Tag.Get("range"):
			t.Errorf("%s: the struct says %s, the table %s", f.id, f.field.Tag.Get("range"), row[0])
		case row[1] == "":
			t.Errorf("%s: the table gives no reason", f.id)
		}
	}
	for id := range table {
		if !seen[id] {
			t.Errorf("%s: the table has a row, the document no such number", id)
		}
	}
}

// TestEveryNumberOfTheContractHasARange walks the contract's numbers as TestEveryNumberHasARange does the structs'.
func TestEveryNumberOfTheContractHasARange(t *testing.T) {
	t.Parallel()
	seen, count := map[protoreflect.FullName]bool{}, 0
	var walk func(protoreflect.MessageDescriptor)
	walk = func(message protoreflect.MessageDescriptor) {
		if seen[message.FullName()] || message.Name() == "Quantity" {
			return
		}
		seen[message.FullName()] = true
		for i := range message.Fields().Len() {
			field := message.Fields().Get(i)
			kind := field.Kind()
			inner := field.Message()
			if inner != nil && inner.Name() != "Quantity" {
				walk(inner)
			}
			if (inner == nil || inner.Name() != "Quantity") && kind != protoreflect.DoubleKind && kind != protoreflect.Int32Kind {
				continue
			}
			count++
			if said := contractBounds(field); !strings.Contains(said, "gt") || !strings.Contains(said, "lt") {
				t.Errorf("%s: has no bounds with two ends, has %q", field.FullName(), said)
			}
		}
	}
	walk((&pitgatev1.AssessmentInput{}).ProtoReflect().Descriptor())
	walk((&pitgatev1.RulePackContent{}).ProtoReflect().Descriptor())
	if count < 290 {
		t.Errorf("walked only %d numbers", count)
	}
}

// faultsAt returns what Decode says against one path or below it in a document that is nothing but that path.
func faultsAt(t *testing.T, f numberField, value any) string {
	t.Helper()
	text, err := json.Marshal(f.wrap(value))
	if err != nil {
		t.Fatal(err)
	}
	_, err = Decode(text)
	var found Errors
	if err != nil && !errors.As(err, &found) {
		t.Fatalf("%s: %v", f.path, err)
	}
	var said []string
	for _, fault := range found {
		if fault.Path == f.path || strings.HasPrefix(fault.Path, f.path+".") {
			said = append(said, fault.Error())
		}
	}
	return strings.Join(said, "; ")
}

// edges are numbers just outside and just inside the ends of a range.
func edges(f numberField) (outside, inside []float64) {
	step := 1.0
	if width, _ := breadth(f.field); !f.whole {
		step = width / 1000
	}
	for _, b := range bounds(f.field) {
		switch b.name {
		case "gt":
			outside, inside = append(outside, b.value-step, b.value), append(inside, b.value+step)
		case "gte":
			outside, inside = append(outside, b.value-step), append(inside, b.value)
		case "lt":
			outside, inside = append(outside, b.value+step, b.value), append(inside, b.value-step)
		case "lte":
			outside, inside = append(outside, b.value+step), append(inside, b.value)
		}
	}
	return outside, inside
}

// TestEveryRangeIsHeld sends every number of the document just below, at and just above the ends of its range.
func TestEveryRangeIsHeld(t *testing.T) {
	t.Parallel()
	all := allNumbers()
	if len(all) < 290 {
		t.Fatalf("walked only %d numbers", len(all))
	}
	for _, f := range all {
		t.Run(f.path, func(t *testing.T) {
			t.Parallel()
			of := func(value float64) any {
				if f.quantity {
					return map[string]any{"value": value}
				}
				return value
			}
			outside, inside := edges(f)
			for _, value := range outside {
				if said := faultsAt(t, f, of(value)); !strings.HasPrefix(said, f.path) || !strings.Contains(said, "must ") {
					t.Errorf("%g: got %q, want one refusal that names it", value, said)
				}
			}
			for _, value := range inside {
				// The greatest static margin is compared with the least one, which has a value of its own where none is given.
				if said := faultsAt(t, f, of(value)); said != "" && !strings.Contains(said, "than minimumStaticMarginRatio") {
					t.Errorf("%g: refused: %s", value, said)
				}
			}
		})
	}
}

// TestEverySpreadIsHeld wants the spread of every quantity not negative and no wider than its range.
func TestEverySpreadIsHeld(t *testing.T) {
	t.Parallel()
	count := 0
	for _, f := range allNumbers() {
		if !f.quantity {
			continue
		}
		count++
		width, _ := breadth(f.field)
		for _, spread := range []float64{-1e-9, -1, 1.01 * width, 1e300} {
			if said := faultsAt(t, f, map[string]any{"spread": spread}); !strings.HasPrefix(said, f.path+".spread: must ") {
				t.Errorf("%s: spread %g: got %q", f.path, spread, said)
			}
		}
		for _, spread := range []float64{0, width / 100, width} {
			if said := faultsAt(t, f, map[string]any{"spread": spread}); said != "" {
				t.Errorf("%s: spread %g is refused: %s", f.path, spread, said)
			}
		}
	}
	if count < 140 {
		t.Errorf("walked only %d quantities", count)
	}
}

// TestUnitHints asks for the unit where a number outside its range is within it in another.
func TestUnitHints(t *testing.T) {
	t.Parallel()
	rows := []struct{ document, want string }{
		{`{"model":{"mass":{"emptyMassKg":{"value":4500}}}}`, "must be at most 200, got 4500; in g? That is 4.5 kg"},
		{`{"launchPlan":{"ramp":{"lengthMeters":{"value":8500}}}}`, "must be at most 100, got 8500; in mm? That is 8.5 m"},
		{`{"launchPlan":{"ramp":{"lengthMeters":{"value":-5}}}}`, "must be at least 0.1, got -5"},
		{`{"launchPlan":{"ramp":{"lengthMeters":{"value":1e9}}}}`, "must be at most 100, got 1e+09"},
		{`{"day":{"qnhPascals":{"value":1013}}}`, "must be at least 85000, got 1013; in hPa? That is 101300 Pa"},
		{`{"day":{"relativeHumidityRatio":{"value":55}}}`, "must be at most 1, got 55; in %? That is 0.55"},
		{`{"model":{"fuelSystem":{"densityKgPerCubicMeter":{"value":0.8}}}}`, "must be at least 500, got 0.8; in kg/l? That is 800 kg/m3"},
		{`{"model":{"radio":{"frequencyMegahertz":{"value":2.4}}}}`, "must be at least 20, got 2.4; in GHz? That is 2400 MHz"},
		{`{"model":{"bodies":[{"baseAreaSquareMeters":25}]}}`, "must be at most 1, got 25; in cm2? That is 0.0025 m2"},
	}
	for _, row := range rows {
		_, err := Decode([]byte(row.document))
		var found Errors
		if !errors.As(err, &found) {
			t.Fatalf("%s: got %v", row.document, err)
		}
		if last := found[0]; last.Message != row.want {
			t.Errorf("%s: got %q, want %q", row.document, last.Message, row.want)
		}
	}
}
