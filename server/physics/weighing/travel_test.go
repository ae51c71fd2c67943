package weighing

import (
	"errors"
	"math"
	"strings"
	"testing"
)

func empty() State {
	return State{Mass: known(8, 1e-4), X: known(0.9, 1e-6), Y: known(0, 1e-8), Z: known(0.02, 1e-8)}
}

func burn(t *testing.T, tanks []Tank) Travel {
	t.Helper()
	travel, err := Burn(empty(), tanks)
	if err != nil {
		t.Fatal(err)
	}
	return travel
}

func TestBurnInOrder(t *testing.T) {
	t.Parallel()
	travel := burn(t, []Tank{
		{Name: "aft", Fuel: 1, X: at(1.3), Y: at(0), Z: at(0), Order: 2},
		{Name: "forward", Fuel: 1, X: at(0.5), Y: at(0), Z: at(0), Order: 1},
	})
	near(t, "full", travel.Full.X, (8*0.9+1.3+0.5)/10, 1e-12)
	near(t, "aftmost when the forward tank is empty", travel.Aft.X, (8*0.9+1.3)/9, 1e-12)
	near(t, "empty", travel.Empty.X, 0.9, 1e-12)
	near(t, "fuel left at the aftmost", travel.Aft.Left, 1, 1e-12)
	near(t, "burnt", travel.Empty.Burnt, 2, 1e-12)
	if !travel.YKnown || !travel.ZKnown || !strings.Contains(travel.Note, "2.00 kg burnt") {
		t.Errorf("got %+v", travel)
	}
}

// Height and side of the balance point follow the moments of what is left, as its place along the model does.
func TestBurnMovesHeightAndSide(t *testing.T) {
	t.Parallel()
	travel := burn(t, []Tank{
		{Name: "saddle", Fuel: 1, X: at(0.9), Y: at(0.2), Z: at(0.15), Order: 1}, {Name: "belly", Fuel: 1.5, X: at(0.9), Y: at(-0.1), Z: at(-0.05), Order: 2},
	})
	for _, p := range travel.Points {
		saddle := math.Max(0, p.Left-1.5)
		belly := p.Left - saddle
		near(t, "mass", p.Mass, 8+p.Left, 1e-12)
		near(t, "y", p.Y, (saddle*0.2-belly*0.1)/p.Mass, 1e-12)
		near(t, "z", p.Z, (8*0.02+saddle*0.15-belly*0.05)/p.Mass, 1e-12)
	}
	near(t, "full", travel.Full.Z, (8*0.02+0.15-0.075)/10.5, 1e-12)
}

func TestTanksOfOneOrderEmptyTogether(t *testing.T) {
	t.Parallel()
	travel := burn(t, []Tank{{Fuel: 1.5, X: at(0.6), Order: 1}, {Fuel: 0.5, X: at(1.4), Order: 1}, {Fuel: 1, X: at(0.9)}})
	group := (1.5*0.6 + 0.5*1.4) / 2
	for _, p := range travel.Points {
		together := math.Max(0, p.Left-1)
		last := p.Left - together
		near(t, "x", p.X, (8*0.9+together*group+last*0.9)/p.Mass, 1e-12)
	}
	if travel.YKnown {
		t.Error("y is not given for the tanks")
	}
}

func TestUnusableFuelStays(t *testing.T) {
	t.Parallel()
	travel := burn(t, []Tank{{Fuel: 1, Unusable: 0.1, X: at(1.5)}})
	near(t, "left", travel.Empty.Left, 0.1, 1e-12)
	near(t, "x", travel.Empty.X, (8*0.9+0.15)/8.1, 1e-12)
}

func TestImpossibleTanksAreNamed(t *testing.T) {
	t.Parallel()
	for path, tank := range map[string]Tank{
		"model.mass.tanks[0].xMeters":        {Fuel: 1},
		"model.mass.tanks[0].capacityLiters": {Fuel: 1, Unusable: 2, X: at(1)},
		"model.mass.tanks[0].yMeters":        {Fuel: 1, X: at(1), Y: at(math.Inf(-1))},
	} {
		_, err := Burn(empty(), []Tank{tank})
		var fault *FieldError
		if !errors.As(err, &fault) || fault.Path() != path {
			t.Errorf("got %v, want a fault at %s", err, path)
		}
	}
	if _, err := Burn(State{Mass: known(8, 0)}, nil); err == nil || !strings.Contains(err.Error(), "emptyBalanceXMeters") {
		t.Errorf("got %v", err)
	}
}

// window is 0.85 to 0.95 m.
func window() Window { return Window{Neutral: 1, Chord: 0.5, Least: 0.1, Most: 0.3} }

func correct(t *testing.T, s Search) Correction {
	t.Helper()
	c, err := Correct(s)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// noseHeavy balances at 0.80 m full and empty at 0.82 m.
func noseHeavy(t *testing.T) Travel {
	t.Helper()
	travel, err := Burn(State{Mass: known(8, 0), X: known(0.82, 0), Z: known(0, 0)}, []Tank{{Fuel: 2, X: at(0.72), Z: at(0)}})
	if err != nil {
		t.Fatal(err)
	}
	return travel
}

func TestLeastBallast(t *testing.T) {
	t.Parallel()
	c := correct(t, Search{Window: window(), Travel: noseHeavy(t), MaximumMass: at(11), Places: []Place{
		{Name: "near", X: at(1.2)}, {Name: "tail", X: at(1.6), Z: at(0.1)}, {Name: "nose", X: at(0.1)},
		{Name: "small", X: at(1.5), Maximum: at(0.2)}, {Name: "far too heavy", X: at(1.0)},
	}})
	if !c.Needed || len(c.Ballast) != 5 {
		t.Fatalf("got %+v", c)
	}
	near(t, "too far forward", c.TooFarForward, 0.05, 1e-12)
	tail := c.Ballast[0]
	near(t, "tail", tail.Mass, 10*(0.85-0.80)/(1.6-0.85), 1e-12)
	near(t, "margin full", tail.MarginFull, 0.3, 1e-12)
	near(t, "margin empty", tail.MarginEmpty, (1-(8*0.82+tail.Mass*1.6)/(8+tail.Mass))/0.5, 1e-12)
	near(t, "height", tail.Z.Value, tail.Mass*0.1/(10+tail.Mass), 1e-12)
	if !tail.Possible || tail.Name != "tail" || c.Ballast[1].Possible {
		t.Errorf("first %+v, then %+v", tail, c.Ballast[1])
	}
	for name, note := range map[string]string{
		"near": "over the greatest mass allowed", "nose": "Wrong side", "small": "Holds 0.200 kg", "far too heavy": "over the greatest mass allowed",
	} {
		for _, o := range c.Ballast {
			if o.Name == name && (o.Possible || !strings.Contains(o.Note, note)) {
				t.Errorf("%s: %+v", name, o)
			}
		}
	}
}

func TestTravelWiderThanTheWindow(t *testing.T) {
	t.Parallel()
	wide, err := Burn(empty(), []Tank{{Fuel: 4, X: at(0.1)}})
	if err != nil {
		t.Fatal(err)
	}
	c := correct(t, Search{Window: window(), Travel: wide, Places: []Place{{Name: "tail", X: at(1.6)}}, Items: []Item{{Name: "pack", Mass: 0.5, X: at(0.4), Movable: true}}})
	if c.Ballast[0].Possible || c.Moves[0].Possible || !strings.Contains(c.Ballast[0].Note, "drives the other end out") ||
		!strings.Contains(c.Moves[0].Note, "no move cures both") || !strings.Contains(c.Note, "No place") {
		t.Errorf("got %+v", c)
	}
}

func TestBallastInsideTheWindowSteadiesAWideTravel(t *testing.T) {
	t.Parallel()
	c := correct(t, Search{Window: window(), Travel: noseHeavy(t), Places: []Place{{Name: "inside", X: at(0.9)}}})
	near(t, "mass", c.Ballast[0].Mass, 10*0.05/0.05, 1e-9)
}

func TestShortestMove(t *testing.T) {
	t.Parallel()
	items := []Item{
		{Name: "fixed", Mass: 4, X: at(0.9)}, {Name: "light", Mass: 0.1, X: at(0.3), Movable: true},
		{Name: "pack", Mass: 0.5, X: at(0.3), Movable: true}, {Name: "placeless", Mass: 1, Movable: true},
	}
	c := correct(t, Search{Window: window(), Travel: noseHeavy(t), Items: items, Foremost: at(0), Aftmost: at(1.7)})
	if len(c.Moves) != 2 || !c.Moves[0].Possible || c.Moves[1].Possible || !strings.Contains(c.Moves[1].Note, "beyond the end of the model") {
		t.Fatalf("got %+v", c.Moves)
	}
	move := c.Moves[0]
	near(t, "by", move.By, 10*0.05/0.5, 1e-12)
	near(t, "to", move.To, 1.3, 1e-12)
	near(t, "margin", move.MarginFull, 0.3, 1e-12)
	if !strings.Contains(c.Note, "Moving pack by 1000 mm aft") {
		t.Errorf("note %q", c.Note)
	}
}

func TestTailHeavyMovesForward(t *testing.T) {
	t.Parallel()
	travel, err := Burn(State{Mass: known(8, 0), X: known(0.97, 0)}, nil)
	if err != nil {
		t.Fatal(err)
	}
	c := correct(t, Search{Window: window(), Travel: travel, Places: []Place{{Name: "nose", X: at(0.1)}, {Name: "tail", X: at(1.5)}},
		Items: []Item{{Name: "pack", Mass: 0.5, X: at(0.8), Movable: true}}})
	near(t, "nose", c.Ballast[0].Mass, 8*0.02/(0.95-0.1), 1e-12)
	near(t, "move", c.Moves[0].By, -8*0.02/0.5, 1e-12)
	if c.Ballast[1].Possible || !strings.Contains(c.Ballast[1].Note, "Wrong side") {
		t.Errorf("got %+v", c.Ballast[1])
	}
}

func TestNothingNeeded(t *testing.T) {
	t.Parallel()
	c := correct(t, Search{Window: window(), Travel: burn(t, nil), Places: []Place{{Name: "nose", X: at(0)}}})
	if c.Needed || c.Ballast != nil || c.Moves != nil || !strings.Contains(c.Note, "no ballast is needed") {
		t.Errorf("got %+v", c)
	}
}

func TestBuildersLimitsNarrowTheWindow(t *testing.T) {
	t.Parallel()
	w := window()
	w.Forward, w.Aft = at(0.91), at(2)
	forward, aft := w.Limits()
	near(t, "forward", forward, 0.91, 0)
	near(t, "aft", aft, 0.95, 1e-12)
	near(t, "margin", w.Margin(0.9), 0.2, 1e-12)
}

func TestImpossibleSearchesAreNamed(t *testing.T) {
	t.Parallel()
	travel := burn(t, nil)
	for path, s := range map[string]Search{
		"model.mass.tanks":                          {Window: window()},
		"limits.minimumStaticMarginRatio":           {Travel: travel, Window: Window{Neutral: 1, Chord: 1, Least: 0.3, Most: 0.1}},
		"model.surfaces":                            {Travel: travel, Window: Window{Neutral: 1, Least: 0.1, Most: 0.2}},
		"model.mass.aftBalanceLimitXMeters":         {Travel: travel, Window: Window{Neutral: 1, Chord: 1, Least: 0.1, Most: 0.2, Aft: at(0.5)}},
		"model.mass.ballastPlaces[0].xMeters":       {Travel: travel, Window: window(), Places: []Place{{}}},
		"model.mass.ballastPlaces[0].maximumMassKg": {Travel: travel, Window: window(), Places: []Place{{X: at(1), Maximum: at(-1)}}},
		"limits.maximumMassKg":                      {Travel: travel, Window: window(), MaximumMass: at(math.NaN())},
	} {
		_, err := Correct(s)
		var fault *FieldError
		if !errors.As(err, &fault) || fault.Path() != path {
			t.Errorf("got %v, want a fault at %s", err, path)
		}
	}
}

func TestReserveStaysInsideTheWindow(t *testing.T) {
	t.Parallel()
	s := Search{Window: window(), Travel: noseHeavy(t), Reserve: 0.01, Places: []Place{{Name: "tail", X: at(1.6)}}, Items: []Item{{Name: "pack", Mass: 0.5, X: at(0.3), Movable: true}}}
	c := correct(t, s)
	near(t, "ballast", c.Ballast[0].Mass, 10*0.06/(1.6-0.86), 1e-12)
	near(t, "move", c.Moves[0].By, 10*0.06/0.5, 1e-12)
	near(t, "margin", c.Ballast[0].MarginFull, (1-0.86)/0.5, 1e-12)
	if !strings.Contains(c.Ballast[0].Note, "10.0 mm to spare") {
		t.Errorf("note %q", c.Ballast[0].Note)
	}
	s.Reserve = 0.06
	near(t, "more than there is room for", correct(t, s).Ballast[0].Mass, 10*0.05/(1.6-0.85), 1e-12)
}
