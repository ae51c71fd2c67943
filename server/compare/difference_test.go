package compare

import (
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pitgate/server/document"
	"pitgate/server/physics/assess"
	files "pitgate/testdata/demo"
)

// demoDocument reads one of the demo's whole documents.
func demoDocument(t testing.TB, name string) assess.Input {
	t.Helper()
	text, err := files.Files.ReadFile(name + ".json")
	if err != nil {
		t.Fatal(err)
	}
	in, err := document.Decode(text)
	if err != nil {
		t.Fatal(err)
	}
	return in
}

var demoNames = []string{"dabchick_long_acre", "sandmartin_long_acre", "sandmartin_long_acre_wet", "redshank_quarry_top", "redshank_quarry_top_long_ramp",
	"nightjar_long_acre"}

func TestDemoDocumentsAgainstOneAnother(t *testing.T) {
	t.Parallel()
	for _, one := range demoNames {
		for _, other := range demoNames {
			a, b := demoDocument(t, one), demoDocument(t, other)
			if found := Differences(a, b); (len(found) == 0) != (one == other) {
				t.Errorf("%s against %s: %d differences", one, other, len(found))
			}
			properties(t, a, b)
		}
	}
}

// properties holds what is true of any two documents.
func properties(t *testing.T, a, b assess.Input) {
	t.Helper()
	if found := Differences(a, a); len(found) > 0 {
		t.Errorf("a document differs from itself: %q", described(found))
	}
	there, back := Differences(a, b), Differences(b, a)
	if got, want := described(there), described(mirrored(back)); !slices.Equal(got, want) {
		t.Errorf("the way back is no mirror:\n%s\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	if made := applied(t, a, there); !reflect.DeepEqual(made, b) {
		t.Errorf("differences do not lead to the second document: %q", described(Differences(made, b)))
	}
}

func mirrored(list []Difference) []Difference {
	opposite := map[ChangeKind]ChangeKind{ChangeKindAdded: ChangeKindRemoved, ChangeKindRemoved: ChangeKindAdded,
		ChangeKindChanged: ChangeKindChanged, ChangeKindReordered: ChangeKindReordered}
	out := slices.Clone(list)
	for i, d := range out {
		out[i].Kind = opposite[d.Kind]
		out[i].FromPath, out[i].ToPath, out[i].From, out[i].To = d.ToPath, d.FromPath, d.To, d.From
	}
	return out
}

// described writes each difference as text, sorted, as removed parts stand at other places on the way back.
func described(list []Difference) []string {
	out := make([]string, len(list))
	for i, d := range list {
		out[i] = strings.Join([]string{string(d.Kind), d.FromPath, d.ToPath, d.PartName, valueText(d.From), valueText(d.To), strings.Join(d.QuantityParts, " ")}, " | ")
	}
	slices.Sort(out)
	return out
}

func valueText(v *ComparedValue) string {
	if v == nil {
		return "-"
	}
	return wholePart(reflect.ValueOf(*v)).PartJSON
}

// randomInput fills a document at random from few values and names, so that two of them agree in many places.
func randomInput(seed uint64) assess.Input {
	var in assess.Input
	fill(rand.New(rand.NewPCG(seed, 1)), reflect.ValueOf(&in).Elem(), "")
	return in
}

func fill(r *rand.Rand, v reflect.Value, name string) {
	switch v.Kind() {
	case reflect.Pointer:
		if r.IntN(3) > 0 {
			v.Set(reflect.New(v.Type().Elem()))
			fill(r, v.Elem(), name)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			tag, _, _ := strings.Cut(v.Type().Field(i).Tag.Get("json"), ",")
			fill(r, v.Field(i), tag)
		}
	case reflect.Slice:
		if n := r.IntN(4); n > 0 {
			v.Set(reflect.MakeSlice(v.Type(), n, n))
			for i := range n {
				fill(r, v.Index(i), "")
			}
		}
	case reflect.String:
		v.SetString([]string{"", "hedge", "barn", "wire", "track", "tank"}[r.IntN(6)])
	case reflect.Bool:
		v.SetBool(r.IntN(2) > 0)
	case reflect.Int32:
		v.SetInt(int64(r.IntN(3)))
	default:
		v.SetFloat(float64(r.IntN(3)))
	}
}

func TestRandomDocuments(t *testing.T) {
	t.Parallel()
	for seed := range uint64(60) {
		properties(t, randomInput(2*seed), randomInput(2*seed+1))
	}
}

func FuzzDifferences(f *testing.F) {
	f.Add(uint64(1), uint64(2))
	f.Add(uint64(7), uint64(7))
	f.Fuzz(func(t *testing.T, one, other uint64) { properties(t, randomInput(one), randomInput(other)) })
}

func TestDifferencesInWords(t *testing.T) {
	t.Parallel()
	number := func(v float64) *float64 { return &v }
	model := func(m assess.ModelDescription) assess.Input { return assess.Input{Model: &m} }
	field := func(o ...assess.Obstacle) assess.Input {
		return assess.Input{Field: &assess.FieldDescription{Obstacles: o}}
	}
	hedge, barn := assess.Obstacle{Name: "Hedge"}, assess.Obstacle{Name: "Barn"}
	higher := assess.Obstacle{Name: "Hedge", HeightMeters: &assess.Quantity{Value: number(2.4)}}
	mass := func(value float64, basis assess.Basis) assess.Input {
		return model(assess.ModelDescription{Mass: &assess.MassProperties{EmptyMassKg: &assess.Quantity{Value: number(value), Basis: basis}}})
	}
	for _, c := range []struct {
		name string
		a, b assess.Input
		want []string
	}{
		{"value and basis", mass(8.6, assess.BasisEstimated), mass(8.9, assess.BasisMeasured), []string{"CHANGED model.mass.emptyMassKg model.mass.emptyMassKg value,basis"}},
		{"basis alone", mass(8.6, assess.BasisEstimated), mass(8.6, assess.BasisMeasured), []string{"CHANGED model.mass.emptyMassKg model.mass.emptyMassKg basis"}},
		{"a whole part", model(assess.ModelDescription{}), model(assess.ModelDescription{Gear: &assess.LandingGear{}}), []string{"ADDED  model.gear "}},
		{"matched by name", field(hedge, barn), field(barn, higher), []string{"ADDED  field.obstacles[1].heightMeters ", "REORDERED field.obstacles field.obstacles "}},
		{"added and removed", field(hedge), field(barn), []string{"ADDED  field.obstacles[0] ", "REMOVED field.obstacles[0]  "}},
		{"twice the same name", field(hedge, hedge), field(hedge, higher), []string{"ADDED  field.obstacles[1].heightMeters "}},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			var got []string
			for _, d := range Differences(c.a, c.b) {
				got = append(got, strings.Join([]string{strings.TrimPrefix(string(d.Kind), "CHANGE_KIND_"), d.FromPath, d.ToPath, strings.Join(d.QuantityParts, ",")}, " "))
			}
			if !slices.Equal(got, c.want) {
				t.Errorf("got %q, want %q", got, c.want)
			}
		})
	}
}
