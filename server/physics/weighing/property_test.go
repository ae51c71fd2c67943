package weighing

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// chance returns a source of numbers that is the same in every run.
func chance() *rand.Rand { return rand.New(rand.NewPCG(7, 11)) }

func between(r *rand.Rand, low, high float64) float64 { return low + (high-low)*r.Float64() }

// someScales returns three to six scales that do not stand in a line.
func someScales(r *rand.Rand) []Reading {
	readings := []Reading{
		{X: at(between(r, -0.5, 0.3)), Y: at(between(r, -0.05, 0.05))},
		{X: at(between(r, 0.8, 1.5)), Y: at(between(r, -0.6, -0.2))},
		{X: at(between(r, 0.8, 1.5)), Y: at(between(r, 0.2, 0.6))},
	}
	for range r.IntN(4) {
		readings = append(readings, Reading{X: at(between(r, 0, 1)), Y: at(between(r, -0.5, 0.5))})
	}
	for i := range readings {
		shown := between(r, 1, 6)
		readings[i].Tare, readings[i].Spread = between(r, 0, 0.5), between(r, 0.002, 0.02)
		for range 1 + r.IntN(4) {
			readings[i].Shown = append(readings[i].Shown, shown+between(r, -0.02, 0.02))
		}
	}
	return readings
}

// changed returns a copy of readings, each changed.
func changed(readings []Reading, change func(*Reading)) []Reading {
	list := slices.Clone(readings)
	for i := range list {
		list[i].X, list[i].Y, list[i].Shown = at(*list[i].X), at(*list[i].Y), slices.Clone(list[i].Shown)
		change(&list[i])
	}
	return list
}

func sameEstimate(t *testing.T, what string, got, want Estimate) {
	t.Helper()
	near(t, what, got.Value, want.Value, 1e-10)
	near(t, "spread of "+what, got.Spread, want.Spread, 1e-10)
}

func TestWeighingProperties(t *testing.T) {
	t.Parallel()
	r := chance()
	for range 300 {
		readings := someScales(r)
		w := weigh(t, readings)

		moved := weigh(t, changed(readings, func(l *Reading) { *l.X += 13 }))
		sameEstimate(t, "x from another datum", moved.X, Estimate{w.X.Value + 13, w.X.Spread, true})
		sameEstimate(t, "y from another datum", moved.Y, w.Y)
		sameEstimate(t, "mass from another datum", moved.Mass, w.Mass)

		double := weigh(t, changed(readings, func(l *Reading) {
			l.Tare, l.Spread = 2*l.Tare, 2*l.Spread
			for k := range l.Shown {
				l.Shown[k] *= 2
			}
		}))
		sameEstimate(t, "x of twice the mass", double.X, w.X)
		sameEstimate(t, "twice the mass", double.Mass, Estimate{2 * w.Mass.Value, 2 * w.Mass.Spread, true})

		mirrored := weigh(t, changed(readings, func(l *Reading) { *l.Y = -*l.Y }))
		sameEstimate(t, "y in the mirror", mirrored.Y, Estimate{-w.Y.Value, w.Y.Spread, true})

		shuffled := slices.Clone(readings)
		r.Shuffle(len(shuffled), func(i, k int) { shuffled[i], shuffled[k] = shuffled[k], shuffled[i] })
		other := weigh(t, shuffled)
		sameEstimate(t, "x in another order", other.X, w.X)
		sameEstimate(t, "mass in another order", other.Mass, w.Mass)

		worse := weigh(t, changed(readings, func(l *Reading) { l.Spread *= 1.5 }))
		if !(worse.X.Spread > w.X.Spread && worse.Mass.Spread > w.Mass.Spread) {
			t.Fatalf("a worse scale must widen the spread: %+v against %+v", worse.X, w.X)
		}
	}
}

func TestStudentFactorFallsToOne(t *testing.T) {
	t.Parallel()
	last := math.Inf(1)
	for v := 1; v < 200; v++ {
		factor := StudentFactor(v)
		if !(factor < last && factor > 1) {
			t.Fatalf("factor %g for %d degrees of freedom after %g", factor, v, last)
		}
		last = factor
	}
	if StudentFactor(0) != 1 || StudentFactor(-3) != 1 {
		t.Error("without degrees of freedom there is nothing to widen")
	}
}

func TestBallastAtTheBalancePointMovesNothing(t *testing.T) {
	t.Parallel()
	r := chance()
	for range 100 {
		items := someItems(r)
		before := add(t, items)
		after := add(t, append(items, Item{Mass: between(r, 0.1, 5), X: at(before.X.Value), Y: at(before.Y.Value), Z: at(before.Z.Value)}))
		near(t, "x", after.X.Value, before.X.Value, 1e-12)
		near(t, "pitch inertia", after.Inertia.Pitch, before.Inertia.Pitch, 1e-12)
	}
}

func someItems(r *rand.Rand) []Item {
	var items []Item
	for range 2 + r.IntN(8) {
		items = append(items, Item{
			Mass: between(r, 0.05, 3), X: at(between(r, 0, 2)), Y: at(between(r, -1, 1)), Z: at(between(r, -0.2, 0.2)), Movable: r.IntN(2) == 0,
		})
	}
	return items
}

func TestItemsInAnyOrder(t *testing.T) {
	t.Parallel()
	r := chance()
	for range 100 {
		items := someItems(r)
		a := add(t, items)
		slices.Reverse(items)
		b := add(t, items)
		sameEstimate(t, "x", b.X, a.X)
		near(t, "yaw", b.Inertia.Yaw, a.Inertia.Yaw, 1e-10)
	}
}

// someTravel burns up to four tanks of a random model.
func someTravel(t *testing.T, r *rand.Rand) (State, []Tank, Travel) {
	t.Helper()
	state := State{Mass: known(between(r, 3, 20), 0.0001), X: known(between(r, 0.6, 1.2), 1e-6)}
	var tanks []Tank
	for range r.IntN(5) {
		fuel := between(r, 0, 2)
		tanks = append(tanks, Tank{Fuel: fuel, Unusable: between(r, 0, 0.1) * fuel, X: at(between(r, 0.3, 1.5)), Order: r.IntN(4)})
	}
	travel, err := Burn(state, tanks)
	if err != nil {
		t.Fatal(err)
	}
	return state, tanks, travel
}

func TestTravelStaysBetweenItsEnds(t *testing.T) {
	t.Parallel()
	r := chance()
	for range 300 {
		_, _, travel := someTravel(t, r)
		for i, p := range travel.Points {
			if p.X < travel.Forward.X || p.X > travel.Aft.X {
				t.Fatalf("point %d at %g m outside %g to %g m", i, p.X, travel.Forward.X, travel.Aft.X)
			}
			if i > 0 && p.Left > travel.Points[i-1].Left+1e-12 {
				t.Fatalf("fuel grows at point %d", i)
			}
			near(t, "mass", p.Mass, travel.Full.Mass-p.Burnt, 1e-9)
		}
	}
}

// holds reports whether a mass at a place, or a moment alone, keeps the whole burn in the window.
func holds(t *Travel, w Window, mass, moment float64) bool {
	forward, aft := w.Limits()
	for i := range t.Points {
		p := &t.Points[i]
		x := (p.Mass*p.X + moment) / (p.Mass + mass)
		if x < forward-1e-9 || x > aft+1e-9 {
			return false
		}
	}
	return true
}

// TestFoundMassIsTheLeast holds the answer against a search over masses and moves, both where there is one and where there is none.
func TestFoundMassIsTheLeast(t *testing.T) {
	t.Parallel()
	r := chance()
	ballast, moves := [2]int{}, [2]int{}
	for range 400 {
		_, _, travel := someTravel(t, r)
		s := Search{Travel: travel, Window: Window{Neutral: between(r, 0.7, 1.3), Chord: between(r, 0.2, 0.5), Least: 0.05, Most: 0.2}}
		for range 3 {
			s.Places = append(s.Places, Place{X: at(between(r, 0, 2))})
		}
		s.Items = []Item{{Mass: between(r, 0.2, 2), X: at(between(r, 0, 2)), Movable: true}}
		c := correct(t, s)
		if c.Needed == holds(&travel, s.Window, 0, 0) {
			t.Fatalf("needed %v for %+v", c.Needed, s)
		}
		for i := range c.Ballast {
			ballast[count(c.Ballast[i].Possible)]++
			checkLeast(t, &c.Ballast[i], func(mass float64) bool { return holds(&travel, s.Window, mass, mass*c.Ballast[i].X) }, c.Ballast[i].Mass)
		}
		for i := range c.Moves {
			moves[count(c.Moves[i].Possible)]++
			checkLeast(t, &c.Moves[i], func(by float64) bool {
				return holds(&travel, s.Window, 0, s.Items[0].Mass*by) || holds(&travel, s.Window, 0, -s.Items[0].Mass*by)
			}, math.Abs(c.Moves[i].By))
		}
	}
	if min(ballast[0], ballast[1], moves[0], moves[1]) < 20 {
		t.Errorf("too few cases of a kind: ballast %v, moves %v", ballast, moves)
	}
}

func count(possible bool) int {
	if possible {
		return 1
	}
	return 0
}

// checkLeast wants an amount to do and anything less not to do, or no amount to do where none was found.
func checkLeast(t *testing.T, o *Option, does func(float64) bool, amount float64) {
	t.Helper()
	if o.Possible {
		if !does(amount) {
			t.Fatalf("%g does not do: %+v", amount, o)
		}
		for k := range 50 {
			if less := amount * float64(k) / 50.5; amount > 1e-6 && does(less) {
				t.Fatalf("%g is not the least, %g does: %+v", amount, less, o)
			}
		}
		return
	}
	for k := range 400 {
		if tried := 1e-3 * math.Pow(1.05, float64(k)); does(tried) {
			t.Fatalf("%g does, but none was found: %+v", tried, o)
		}
	}
}

func TestBroadWindowNeedsNoMore(t *testing.T) {
	t.Parallel()
	r := chance()
	for range 200 {
		_, _, travel := someTravel(t, r)
		narrow := Search{Travel: travel, Window: Window{Neutral: 1, Chord: 0.4, Least: 0.08, Most: 0.18}, Places: []Place{{X: at(1.9)}}}
		broad := narrow
		broad.Window.Least, broad.Window.Most = 0.05, 0.25
		a, b := correct(t, narrow), correct(t, broad)
		if len(a.Ballast) == 1 && len(b.Ballast) == 1 && a.Ballast[0].Possible && (!b.Ballast[0].Possible || b.Ballast[0].Mass > a.Ballast[0].Mass+1e-9) {
			t.Fatalf("a broader window needs more: %+v against %+v", b.Ballast[0], a.Ballast[0])
		}
	}
}
