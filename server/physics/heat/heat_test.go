package heat

import (
	"math"
	"slices"
	"strings"
	"testing"
)

// standing is a turbine of the 120 N class on a summer day at full power, with a pipe as hot as its gas.
func standing() Run { return withPipe(0) }

// withPipe is the same with a pipe of a temperature (K).
func withPipe(pipe float64) Run {
	return Run{
		Exhaust: Exhaust{Diameter: 0.06, Temperature: 650 + Celsius, Total: true, Speed: 380},
		Air:     Air{Temperature: 25 + Celsius}, Pipe: pipe,
	}
}

// one returns the answer of a single part.
func one(t *testing.T, run Run, part Part) Answer {
	t.Helper()
	answers, err := Assess(run, []Part{part})
	if err != nil {
		t.Fatal(err)
	}
	return answers[0]
}

func TestSkins(t *testing.T) {
	t.Parallel()
	base := Skin{Pipe: 700 + Celsius, Radius: 0.03, Gap: 0.06, Air: 293}
	bare := base.Temperature()
	for name, cooler := range map[string]func(*Skin){
		"foil": func(s *Skin) { s.Foil = true }, "gap": func(s *Skin) { s.Gap += 0.02 }, "wind": func(s *Skin) { s.Outer = 30 },
		"cooling air": func(s *Skin) { s.Inner = 20 }, "colder pipe": func(s *Skin) { s.Pipe -= 100 }, "bright pipe": func(s *Skin) { s.Emissivity = 0.2 },
	} {
		s := base
		cooler(&s)
		if s.Temperature() >= bare || s.Temperature() < s.Air {
			t.Errorf("%s: %g K against %g K", name, s.Temperature(), bare)
		}
	}
	if s := (Skin{Pipe: 293, Radius: 0.03, Gap: 0.1, Air: 293}); s.Temperature() != 293 {
		t.Error("a cold pipe heats")
	}
	gap, ok := base.LeastGap(400)
	at := base
	at.Gap = gap
	if !ok || math.Abs(at.Temperature()-400) > 1e-3 {
		t.Errorf("gap %g gives %g K", gap, at.Temperature())
	}
	if _, ok = base.LeastGap(293.1); ok {
		t.Error("a skin at the air's own temperature was promised")
	}
}

func TestSoakBack(t *testing.T) {
	t.Parallel()
	s := Skin{Pipe: 600 + Celsius, Radius: 0.03, Gap: 0.02, Air: 293}
	steady := s.Temperature()
	soak := s.SoakBack(320)
	if soak.Peak <= 320 || soak.Peak >= steady || soak.After <= 0 || soak.After >= soakTime {
		t.Errorf("peak %g K after %g s, steady %g K", soak.Peak, soak.After, steady)
	}
	s.Foil = true
	if foiled := s.SoakBack(320); foiled.Peak >= soak.Peak {
		t.Errorf("foil does not lower the peak: %g, %g", foiled.Peak, soak.Peak)
	}
	if hot := s.SoakBack(450); hot.Peak != 450 || hot.After != 0 {
		t.Errorf("a skin hotter than it will be peaks at %+v", hot)
	}
}

func TestFilmNearTheTailpipeIsFoundAndCured(t *testing.T) {
	t.Parallel()
	run := standing()
	for words, want := range map[string]string{"PLA": "printed polylactide", "balsa plank": "balsa, spruce and plywood", "EPS-core": "expanded polystyrene foam"} {
		if m, _ := Named(words); m.Name != want {
			t.Errorf("%q is found as %q", words, m.Name)
		}
	}
	for name, part := range map[string]Part{
		"fin beside the pipe": {Material: "iron-on film", Behind: -0.1, From: 0.06},
		"foam in the plume":   {Material: "EPS foam", Behind: 0.5, From: 0.02},
		"wood at the lip":     {Material: "balsa", Behind: 0, From: 0.005},
		"lamp near the axis":  {Material: "PLA", Behind: 1.2, From: 0.05},
	} {
		a := one(t, run, part)
		if a.Verdict != Hot || len(a.Fixes) == 0 || a.Margin >= 0 || !a.Known {
			t.Errorf("%s: %+v", name, a)
		}
		for _, fix := range a.Fixes {
			cured := one(t, run, changed(part, fix))
			if cured.Verdict != Cool || math.Abs(cured.Worst-fix.Then) > 1e-6 {
				t.Errorf("%s: %v leaves %g K of %g K", name, fix, cured.Worst, cured.Material.Service)
			}
		}
	}
}

// changed returns a part with a fix.
func changed(part Part, fix Fix) Part {
	switch fix.Change {
	case AddFoil:
		part.Foil = true
	case MoveAway:
		part.From = fix.To
	case MoveBack:
		part.Behind = fix.To
	case FoilMove:
		part.Foil, part.From = true, fix.To
	}
	return part
}

func TestSoundPartsStayCool(t *testing.T) {
	t.Parallel()
	for _, part := range []Part{
		{Material: "stainless steel", Behind: -0.1, From: 0.01}, {Material: "film", Behind: 0.2, From: 0.25},
		{Material: "film", Behind: 0.3, From: 0.25}, {Material: "EPS", Behind: 8, From: 0},
	} {
		if a := one(t, standing(), part); a.Verdict != Cool || len(a.Fixes) != 0 {
			t.Errorf("%+v", a)
		}
	}
}

func TestADoubleWalledPipeAndFoilKeepWoodCool(t *testing.T) {
	t.Parallel()
	part := Part{Material: "balsa", Behind: -0.1, From: 0.05, Foil: true}
	if a := one(t, withPipe(250+Celsius), part); a.Verdict != Cool {
		t.Errorf("%+v", a)
	}
	if a := one(t, standing(), part); a.Verdict != Uncertain || len(a.Fixes) == 0 {
		t.Errorf("single wall: %+v", a)
	}
}

func TestHottestAfterShutDown(t *testing.T) {
	t.Parallel()
	a := one(t, standing(), Part{Material: "carbon", Behind: -0.2, From: 0.15})
	if a.Cause != BySoakBack || a.Soak.After <= 0 || a.Soak.Peak != a.Best || a.Worst < a.Best {
		t.Errorf("%+v", a)
	}
}

func TestMeasurementReplacesTheComputation(t *testing.T) {
	t.Parallel()
	part := Part{Material: "film", Behind: -0.1, From: 0.06, Measured: 70 + Celsius, MeasuredAir: 10 + Celsius}
	a := one(t, standing(), part)
	if a.Cause != ByMeasured || a.Verdict != Cool || math.Abs(a.Worst-(85+Celsius)) > 1e-9 || a.Best != a.Worst {
		t.Errorf("%+v", a)
	}
	part.Measured = 95 + Celsius
	if a = one(t, standing(), part); a.Verdict != Hot || len(a.Fixes) != 0 {
		t.Errorf("a measurement above the limit: %+v", a)
	}
}

func TestDryGrass(t *testing.T) {
	t.Parallel()
	_, worst := both(t, standing())
	last := Ground{Hottest: math.Inf(1)}
	for height := 0.0; height < 1; height += 0.02 {
		g, err := OnGround(worst, height)
		if err != nil || g.Hottest > last.Hottest+1e-9 || g.Ignition > g.Caution {
			t.Fatalf("height %g: %+v after %+v, %v", height, g, last, err)
		}
		last = g
	}
	low, _ := OnGround(worst, 0)
	if low.Ignition <= 0 || low.Hottest < GrassIgnition || !low.Attached {
		t.Errorf("on the ground: %+v", low)
	}
	if last.Ignition != 0 {
		t.Errorf("a metre up: %+v", last)
	}
	height := LeastHeight(worst, GrassIgnition)
	if g, _ := OnGround(worst, height+0.01); g.Ignition != 0 && !g.Attached {
		t.Errorf("above the least height %g: %+v", height, g)
	}
	if _, err := OnGround(worst, -1); err == nil || !strings.HasPrefix(err.Error(), "height:") {
		t.Errorf("height below the ground: %v", err)
	}
}

func TestMaterials(t *testing.T) {
	t.Parallel()
	for _, m := range append(Materials(), Unknown) {
		if m.Name == "" || m.Source == "" || m.Status == "" || !(m.Service > 40+Celsius) || !(m.Short > m.Service) {
			t.Errorf("%+v", m)
		}
		if got, known := Named(m.Name); m.Name != Unknown.Name && (!known || got.Name != m.Name) {
			t.Errorf("%q is found as %q", m.Name, got.Name)
		}
	}
	if m, known := Named("unobtainium"); known || m.Name != Unknown.Name {
		t.Error("a material nobody knows is known")
	}
	lowest := slices.MinFunc(Materials(), func(a, b Material) int { return int(a.Service - b.Service) })
	if Unknown.Service > lowest.Service {
		t.Errorf("the unknown material stands %g K, %s only %g K", Unknown.Service, lowest.Name, lowest.Service)
	}
}

func TestImpossibleInputNamesItsField(t *testing.T) {
	t.Parallel()
	for field, plant := range map[string]func(*Run, *Part){
		"exhaust.diameter": func(r *Run, _ *Part) { r.Exhaust.Diameter = 0 }, "exhaust.temperature": func(r *Run, _ *Part) { r.Exhaust.Temperature = math.NaN() },
		"exhaust.speed": func(r *Run, _ *Part) { r.Exhaust.Speed = -1 }, "air.temperature": func(r *Run, _ *Part) { r.Air.Temperature = 0 },
		"air.pressure": func(r *Run, _ *Part) { r.Air.Pressure = -1 }, "pipe": func(r *Run, _ *Part) { r.Pipe = 1e9 },
		"parts[0].behind": func(_ *Run, p *Part) { p.Behind = math.Inf(1) }, "parts[0].from": func(_ *Run, p *Part) { p.From = -1 },
		"parts[0].measured": func(_ *Run, p *Part) { p.Measured = -5 }, "parts[0].measuredAir": func(_ *Run, p *Part) { p.MeasuredAir = 5 },
		"exhaust.temperature less speed": func(r *Run, _ *Part) { r.Exhaust.Temperature, r.Exhaust.Speed = 300, 900 },
	} {
		run, part := standing(), Part{Behind: 1}
		plant(&run, &part)
		if _, err := Assess(run, []Part{part}); err == nil || !strings.HasPrefix(err.Error(), field+":") {
			t.Errorf("%s: %v", field, err)
		}
	}
}

func TestWarmingIsQuickNearAndSlowFar(t *testing.T) {
	t.Parallel()
	run := standing()
	last := 0.0
	for x := 0.3; x < 6; x += 0.3 {
		a := one(t, run, Part{Material: "EPS", Behind: x})
		if a.Warming < last || (a.Verdict == Cool) != (a.Warming == longestWarming) {
			t.Fatalf("%g m behind the part warms in %g s, before in %g s", x, a.Warming, last)
		}
		last = a.Warming
	}
	if near := one(t, run, Part{Material: "film", Behind: -0.1, From: 0.01}); !(near.Warming > 1 && near.Warming < 20) {
		t.Errorf("film a centimetre from the pipe warms in %g s", near.Warming)
	}
	// Carbon of 0.5 mm in gas of 150 C from 20 to 60 C at 120 W/(m2 K): 2.4 s (computed apart, properties recalled).
	if got := WarmTime(6.5*120, 120, 423, 293, 333); math.Abs(got-2.4) > 0.05 {
		t.Errorf("carbon skin warms in %g s", got)
	}
}

// Of two moves out of the plume the shorter comes first, wherever the part lies.
func TestShorterMoveComesFirst(t *testing.T) {
	t.Parallel()
	first := map[Change]int{}
	for behind := 0.1; behind < 4; behind += 0.02 {
		a := one(t, standing(), Part{Material: "balsa", Behind: behind, From: 0.01})
		if len(a.Fixes) < 2 {
			continue
		}
		length := func(f Fix) float64 { return f.To - f.From }
		if length(a.Fixes[0]) > length(a.Fixes[1]) {
			t.Errorf("%g m behind: %v comes before %v", behind, a.Fixes[0], a.Fixes[1])
		}
		first[a.Fixes[0].Change]++
	}
	if first[MoveAway] == 0 || first[MoveBack] == 0 {
		t.Errorf("one move is always the shorter: %v", first)
	}
}

// What is laminar to Re 5e5 and turbulent behind gives off 871 Pr^(1/3) less than what is turbulent all along, as both formulas are printed.
func TestTurbulentPlateAgainstTheMixedOne(t *testing.T) {
	t.Parallel()
	for _, prandtl := range []float64{0.6, 0.7, 1, 5.83, 60} {
		for _, reynolds := range []float64{6e5, 1e6, 1e7} {
			less := TurbulentPlate(reynolds, prandtl) - MixedPlate(reynolds, prandtl)
			if want := 871 * math.Cbrt(prandtl); math.Abs(less/want-1) > 1e-9 {
				t.Errorf("Re %g, Pr %g: %g less, want %g", reynolds, prandtl, less, want)
			}
		}
	}
}
