package weighing

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// row is the inputs of a published value; it notes which of them were read.
type row struct {
	t      *testing.T
	values map[string]float64
	read   map[string]bool
}

func (r *row) number(name string) float64 {
	r.t.Helper()
	value, ok := r.values[name]
	if !ok {
		r.t.Fatalf("row lacks %s", name)
	}
	r.read[name] = true
	return value
}

// list returns name1, name2, ... as far as they go.
func (r *row) list(name string) []float64 {
	var values []float64
	for k := 1; ; k++ {
		key := name + strconv.Itoa(k)
		if _, ok := r.values[key]; !ok {
			return values
		}
		values = append(values, r.number(key))
	}
}

// checkPublished compares the rows of a source with the method of their kind, the part of the id before the slash. A row without a method, a method
// without a row and an input that no method read are failures.
func checkPublished(t *testing.T, source string, methods map[string]func(*row) float64) {
	t.Helper()
	file, err := os.Open(filepath.Join("..", "..", "..", "testdata", "published", source, "values.csv"))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	records, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	used := map[string]bool{}
	for _, record := range records[1:] {
		kind, _, _ := strings.Cut(record[0], "/")
		method, ok := methods[kind]
		if !ok {
			t.Fatalf("%s: no method for row %s", source, record[0])
		}
		used[kind] = true
		t.Run(source+"/"+record[0], func(t *testing.T) {
			t.Parallel()
			compare(t, record, method)
		})
	}
	for kind := range methods {
		if !used[kind] {
			t.Errorf("%s: no row of kind %s", source, kind)
		}
	}
}

func compare(t *testing.T, record []string, method func(*row) float64) {
	t.Helper()
	r := &row{t: t, values: map[string]float64{}, read: map[string]bool{}}
	for _, pair := range strings.Fields(record[1]) {
		name, value, _ := strings.Cut(pair, "=")
		r.values[name] = parse(t, value)
	}
	got, want := method(r), parse(t, record[2])
	size, sense, _ := strings.Cut(record[3], " ")
	tolerance := parse(t, size)
	if sense == "rel" {
		tolerance *= math.Abs(want)
	}
	if !(math.Abs(got-want) <= tolerance+1e-12) {
		t.Errorf("got %.7g, want %g within %g (%s, %s)", got, want, tolerance, record[4], record[5])
	}
	for name := range r.values {
		if !r.read[name] {
			t.Errorf("input %s was not read", name)
		}
	}
}

func parse(t *testing.T, text string) float64 {
	t.Helper()
	value, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return value
}

// wheels returns the balance point of a model on its main wheels and one small wheel.
func (r *row) wheels(side float64) float64 {
	main, base := r.number("main"), r.number("base")
	small, total := r.number("small"), r.number("total")
	w := weigh(r.t, []Reading{
		{Name: "small wheel", X: at(main + side*base), Y: at(0), Shown: []float64{small}},
		{Name: "left wheel", X: at(main), Y: at(-50), Shown: []float64{(total - small) / 2}},
		{Name: "right wheel", X: at(main), Y: at(50), Shown: []float64{(total - small) / 2}},
	})
	return w.X.Value
}

func (r *row) items(items []Item) Listed {
	r.t.Helper()
	sum, err := Add(items)
	if err != nil {
		r.t.Fatal(err)
	}
	return sum
}

// itemsX returns where the listed masses balance.
func itemsX(r *row) float64 {
	places := r.list("x")
	var items []Item
	for k, mass := range r.list("m") {
		items = append(items, Item{Mass: mass, X: &places[k]})
	}
	return r.items(items).X.Value
}

// whole is the model as one mass at its balance point.
func (r *row) whole() State {
	mass, x := r.number("total"), r.number("x")
	return State{Mass: known(mass, 0), X: known(x, 0)}
}

// limited is a search for the state of the row whose window ends at the row's limit, on the side where the balance point lies outside.
func (r *row) limited(places []Place, items []Item) Correction {
	r.t.Helper()
	state, limit := r.whole(), r.number("limit")
	window := Window{Neutral: limit + 10, Chord: 10, Least: 0, Most: 1} // from the limit to 10 aft of it
	if state.X.Value > limit {
		window = Window{Neutral: limit, Chord: 10, Least: 0, Most: 1} // from 10 ahead of the limit to the limit
	}
	travel, err := Burn(state, nil)
	if err != nil {
		r.t.Fatal(err)
	}
	c, err := Correct(Search{Window: window, Travel: travel, Places: places, Items: items})
	if err != nil {
		r.t.Fatal(err)
	}
	return c
}

func ballastMass(r *row) float64 {
	place := r.number("place")
	c := r.limited([]Place{{Name: "place", X: &place}}, nil)
	return c.Ballast[0].Mass
}

func TestHandbook(t *testing.T) {
	t.Parallel()
	checkPublished(t, "weight_and_balance_handbook", map[string]func(*row) float64{
		"nose-wheel": func(r *row) float64 { return r.wheels(-1) },
		"tail-wheel": func(r *row) float64 { return r.wheels(1) },
		"loaded-mass": func(r *row) float64 {
			w := weigh(r.t, []Reading{
				{Shown: []float64{r.number("right")}, Tare: r.number("tare1")}, {Shown: []float64{r.number("left")}, Tare: r.number("tare2")},
				{Shown: []float64{r.number("nose")}, Tare: r.number("tare3")},
			})
			items := []Item{{Mass: w.Mass.Value}}
			for _, mass := range r.list("m") {
				items = append(items, Item{Mass: mass})
			}
			return r.items(items).Mass.Value
		},
		"loaded-x": itemsX,
		"shifted-x": func(r *row) float64 {
			s, mass, from, to := r.whole(), r.number("mass"), r.number("from"), r.number("to")
			rest := s.Mass.Value - mass
			place := (s.Mass.Value*s.X.Value - mass*from) / rest
			return r.items([]Item{{Mass: rest, X: &place}, {Mass: mass, X: &to}}).X.Value
		},
		"move": func(r *row) float64 {
			c := r.limited(nil, []Item{{Mass: r.number("mass"), X: at(r.number("from")), Movable: true}})
			return c.Moves[0].By
		},
		"added-x": func(r *row) float64 {
			s := r.whole()
			return r.items([]Item{{Mass: s.Mass.Value, X: &s.X.Value}, {Mass: r.number("mass"), X: at(r.number("place"))}}).X.Value
		},
		"removed-x": func(r *row) float64 { return r.burnt("mass") },
		"burnt-x":   func(r *row) float64 { return r.burnt("fuel") },
		"ballast":   ballastMass,
	})
}

// burnt returns the balance point after the named mass left the model.
func (r *row) burnt(name string) float64 {
	s, mass, place := r.whole(), r.number(name), r.number("place")
	rest := s.Mass.Value - mass
	empty := State{Mass: known(rest, 0), X: known((s.Mass.Value*s.X.Value-mass*place)/rest, 0)}
	travel, err := Burn(empty, []Tank{{Fuel: mass, X: &place}})
	if err != nil {
		r.t.Fatal(err)
	}
	near(r.t, "full", travel.Full.X, s.X.Value, 1e-9)
	return travel.Empty.X
}

func TestRodsAndExercises(t *testing.T) {
	t.Parallel()
	checkPublished(t, "balance_of_weights", map[string]func(*row) float64{"items-x": itemsX})
	checkPublished(t, "mass_balance_exercises", map[string]func(*row) float64{
		"three-scales-x": func(r *row) float64 {
			base := r.number("base")
			w := weigh(r.t, []Reading{
				{X: at(0), Y: at(0), Shown: []float64{r.number("nose")}},
				{X: &base, Y: at(-50), Shown: []float64{r.number("left")}}, {X: &base, Y: at(50), Shown: []float64{r.number("right")}},
			})
			return w.X.Value
		},
		"ballast": ballastMass,
	})
}

func TestRepeats(t *testing.T) {
	t.Parallel()
	checkPublished(t, "gum_repeats", map[string]func(*row) float64{
		"mean": func(r *row) float64 { mean, _ := meanOf(r.list("q")); return mean },
		"mean-deviation": func(r *row) float64 {
			values := r.list("q")
			return RepeatSpread(values) / StudentFactor(len(values)-1)
		},
		"factor": func(r *row) float64 { return StudentFactor(int(r.number("freedom"))) },
	})
	checkPublished(t, "student_distribution", map[string]func(*row) float64{
		"share": func(r *row) float64 { return studentShare(r.number("t"), int(r.number("freedom"))) },
	})
}

// TestScatterLimit compares the normal approximation with the 95 % points of chi-squared over their degrees of freedom (NIST/SEMATECH e-Handbook:
// 3.841, 5.991, 7.815, 11.070, 18.307, 31.410, from memory); the approximation is good to a few per cent for one degree and better for more.
func TestScatterLimit(t *testing.T) {
	t.Parallel()
	for freedom, point := range map[int]float64{1: 3.841, 2: 5.991, 3: 7.815, 5: 11.070, 10: 18.307, 20: 31.410} {
		want := math.Sqrt(point / float64(freedom))
		near(t, fmt.Sprintf("v = %d", freedom), scatterLimit(freedom), want, 0.015*want)
	}
}
