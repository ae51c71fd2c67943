package weighing

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"
)

// parts is a small model as items.
func modelItems() []Item {
	return []Item{
		{Name: "airframe", Mass: 4.2, MassSpread: 0.02, X: at(0.86), Y: at(0), Z: at(0.01)},
		{Name: "turbine", Mass: 1.45, MassSpread: 0.005, X: at(1.25), Y: at(0.01), Z: at(0.05)},
		{Name: "pack", Mass: 0.3, MassSpread: 0.002, X: at(0.25), Y: at(-0.02), Z: at(-0.03), Movable: true},
		{Name: "servos", Mass: 0.8, MassSpread: 0.01, X: at(0.7), Y: at(0), Z: at(0.02)},
	}
}

func add(t *testing.T, items []Item) Listed {
	t.Helper()
	sum, err := Add(items)
	if err != nil {
		t.Fatal(err)
	}
	return sum
}

func TestInertiaOfKnownBodies(t *testing.T) {
	t.Parallel()
	dumbbell := add(t, []Item{{Mass: 2, X: at(1), Y: at(0), Z: at(0)}, {Mass: 2, X: at(3), Y: at(0), Z: at(0)}})
	near(t, "dumbbell, roll", dumbbell.Inertia.Roll, 0, 1e-12)
	near(t, "dumbbell, pitch", dumbbell.Inertia.Pitch, 4, 1e-12)
	near(t, "dumbbell, yaw", dumbbell.Inertia.Yaw, 4, 1e-12)
	var rod []Item
	const n = 200
	for k := range n {
		rod = append(rod, Item{Mass: 3.0 / n, X: at(5 + 2*(float64(k)+0.5)/n), Y: at(0), Z: at(0)})
	}
	near(t, "slender rod, m L^2 / 12", add(t, rod).Inertia.Pitch, 1, 1e-4)
	slanting := add(t, []Item{{Mass: 1, X: at(1), Y: at(0), Z: at(1)}, {Mass: 1, X: at(-1), Y: at(0), Z: at(-1)}})
	near(t, "product of x and z", slanting.Inertia.RollYaw, 2, 1e-12)
}

// TestInertiaIsThatAboutTheDatumLessTheWhole holds the parallel-axis theorem.
func TestInertiaIsThatAboutTheDatumLessTheWhole(t *testing.T) {
	t.Parallel()
	items := modelItems()
	sum := add(t, items)
	pitch := 0.0
	for i := range items {
		pitch += items[i].Mass * (*items[i].X**items[i].X + *items[i].Z**items[i].Z)
	}
	pitch -= sum.Mass.Value * (sum.X.Value*sum.X.Value + sum.Z.Value*sum.Z.Value)
	near(t, "pitch", sum.Inertia.Pitch, pitch, 1e-12)
}

func TestAnItemWithoutAPlace(t *testing.T) {
	t.Parallel()
	items := modelItems()
	items[2].X, items[3].Z = nil, nil
	sum := add(t, items)
	if sum.X.Known || !sum.Y.Known || sum.Z.Known || sum.Inertia.Known {
		t.Errorf("got %+v", sum)
	}
	if !slices.Equal(sum.Unplaced, []int{2}) {
		t.Errorf("unplaced %v", sum.Unplaced)
	}
	near(t, "mass", sum.Mass.Value, 6.75, 1e-12)
}

func TestImpossibleItemsAreNamed(t *testing.T) {
	t.Parallel()
	for path, change := range map[string]func([]Item) []Item{
		"model.mass.items":            func([]Item) []Item { return nil },
		"model.mass.items[1].massKg":  func(l []Item) []Item { l[1].Mass = -1; return l },
		"model.mass.items[2].zMeters": func(l []Item) []Item { l[2].Z = at(math.NaN()); return l },
		"model.mass.items[0].xMeters": func(l []Item) []Item { l[0].X = at(math.Inf(1)); return l },
	} {
		_, err := Add(change(modelItems()))
		var fault *FieldError
		if !errors.As(err, &fault) || fault.Path() != path {
			t.Errorf("got %v, want a fault at %s", err, path)
		}
	}
	if _, err := Add([]Item{{Name: "nothing"}}); err == nil {
		t.Error("items without mass must be refused")
	}
}

// weighedLike is the state of the items as if weighed.
func weighedLike(t *testing.T, items []Item) State {
	t.Helper()
	s := add(t, items).State
	s.Mass.Spread, s.X.Spread, s.MassX = 0.01, 0.001, 0
	return s
}

func TestReconcileNamesTheSingleError(t *testing.T) {
	t.Parallel()
	rows := []struct {
		name  string
		truth func([]Item) []Item // what is really on board
		item  int                 // the suspect that must be among those named; -1 a missing one, -2 none
		note  string
	}{
		{"agrees", func(l []Item) []Item { return l }, -2, ""},
		{"missing", func(l []Item) []Item { return append(l, Item{Mass: 0.4, X: at(0.45), Y: at(0), Z: at(0)}) }, -1, "missing from the list"},
		{"left off", func(l []Item) []Item { l[3].Mass = 0; return l }, 3, "listed twice, or not on board"},
		{"heavier", func(l []Item) []Item { l[1].Mass += 0.2; return l }, 1, "turbine at x = 1.250 m weighing 1.650 kg"},
		{"elsewhere", func(l []Item) []Item { l[3].X = at(0.9); return l }, 3, "servos at x = 0.900 m instead of 0.700 m"},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			items := modelItems()
			d, err := Reconcile(weighedLike(t, row.truth(modelItems())), add(t, items).State, items)
			if err != nil {
				t.Fatal(err)
			}
			if d.Agrees != (row.item == -2) || (row.item == -2) != (len(d.Suspects) == 0) {
				t.Fatalf("agrees %v, suspects %+v", d.Agrees, d.Suspects)
			}
			if row.item != -2 && !slices.ContainsFunc(d.Suspects, func(s Suspect) bool { return s.Item == row.item && strings.Contains(s.Note, row.note) }) {
				t.Errorf("none of %+v names item %d with %q", d.Suspects, row.item, row.note)
			}
		})
	}
}

func TestReconcileFindsThePlaceOfAMissingItem(t *testing.T) {
	t.Parallel()
	items := modelItems()
	truth := append(modelItems(), Item{Mass: 0.5, X: at(0.42), Y: at(0), Z: at(0)})
	d, err := Reconcile(weighedLike(t, truth), add(t, items).State, items)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "mass", d.Mass.Value, 0.5, 1e-12)
	near(t, "place", d.MissingX.Value, 0.42, 1e-9)
	if !(d.MissingX.Spread > 0.005 && d.MissingX.Spread < 0.1) {
		t.Errorf("spread of the place %g m", d.MissingX.Spread)
	}
}

func TestReconcileDoesNotDependOnTheDatum(t *testing.T) {
	t.Parallel()
	items := modelItems()
	truth := append(modelItems(), Item{Mass: 0.5, X: at(0.42), Y: at(0), Z: at(0)})
	a, err := Reconcile(weighedLike(t, truth), add(t, items).State, items)
	if err != nil {
		t.Fatal(err)
	}
	for _, list := range [][]Item{items, truth} {
		for i := range list {
			list[i].X = at(*list[i].X + 7)
		}
	}
	b, err := Reconcile(weighedLike(t, truth), add(t, items).State, items)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "moment score", b.MomentScore, a.MomentScore, 1e-6)
	near(t, "place", b.MissingX.Value, a.MissingX.Value+7, 1e-9)
	near(t, "spread of the place", b.MissingX.Spread, a.MissingX.Spread, 1e-9)
}

func TestReconcileRefusesAStateWithoutMass(t *testing.T) {
	t.Parallel()
	if _, err := Reconcile(State{}, add(t, modelItems()).State, nil); err == nil {
		t.Error("a weighing without mass must be refused")
	}
	if _, err := Reconcile(State{Mass: known(1, 0), X: known(math.NaN(), 0)}, add(t, modelItems()).State, nil); err == nil {
		t.Error("NaN must be refused")
	}
}

// TestReconcileSpreads works the spreads of the differences out by hand.
func TestReconcileSpreads(t *testing.T) {
	t.Parallel()
	weighed := State{Mass: Estimate{10, 0.1, true}, X: Estimate{1.1, 0.01, true}, MassX: 0.0005}
	listed := State{Mass: Estimate{9, 0.2, true}, X: Estimate{1, 0.02, true}, MassX: -0.001}
	d, err := Reconcile(weighed, listed, nil)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "mass", d.Mass.Spread, math.Sqrt(0.01+0.04), 1e-12)
	near(t, "share", d.MassRatio, 0.1, 1e-12)
	near(t, "x", d.X.Spread, math.Sqrt(0.0001+0.0004), 1e-12)
	near(t, "moment", d.Moment.Value, 1, 1e-12)
	near(t, "spread of the moment", d.Moment.Spread, math.Sqrt(10*10*0.0001+0.1*0.1*0.01+2*10*0.1*0.0005+9*9*0.0004), 1e-12)
	near(t, "mass score", d.MassScore, 1/math.Sqrt(0.05), 1e-12)
	near(t, "moment score", d.MomentScore, 1/d.Moment.Spread, 1e-12)
	exact, err := Reconcile(State{Mass: Estimate{10, 0, true}}, State{Mass: Estimate{9, 0, true}}, nil)
	if err != nil {
		t.Fatal(err)
	}
	if exact.MassScore != 1000 || exact.Agrees || !strings.Contains(exact.Note, "cannot be compared") {
		t.Errorf("got %+v", exact)
	}
}
