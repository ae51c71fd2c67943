package footprint

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pitgate/server/physics/field"
	"pitgate/server/physics/motion"
	"pitgate/server/physics/weather"
)

// fly is Loss.From with a fine step.
func fly(t *testing.T, loss Loss, from Release) Impact {
	t.Helper()
	loss.Precision = 1e-11
	impact, err := loss.From(from)
	if err != nil {
		t.Fatal(err)
	}
	if !impact.Landed {
		t.Fatalf("still aloft: %+v", impact)
	}
	return impact
}

// near fails when got is farther from want than a tolerance.
func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %.10g, want %.10g within %g", what, got, want, tolerance)
	}
}

// gliding is a loss with the engine already stopped, and the state of its steady glide at a bank.
func gliding(bank, height float64) (Loss, Release) {
	model := madeUp()
	model.RunDown, model.LevelTime, model.NeutralLift, model.SpiralLift, model.SpiralBank = 0, 0, 0.5, 0.5, bank
	drag := model.CD0 + model.StoppedDrag + model.InducedFactor*0.25
	angle := math.Atan(drag / (0.5 * math.Cos(bank)))
	weight := model.Mass * standardGravity
	speed := math.Sqrt(2 * weight * math.Sin(angle) / (1.2 * model.Area * drag))
	loss := Loss{Action: CutSpiral, Model: model, Density: 1.2}
	return loss, Release{Height: height, Heading: 0.3, Speed: speed, Climb: -angle, Bank: bank}
}

func TestSteadyGlideFollowsItsClosedForm(t *testing.T) {
	t.Parallel()
	for _, wind := range []float64{-8, 0, 5} {
		loss, from := gliding(0, 100)
		from.Heading = 0
		loss.Wind = Wind{Speed: math.Abs(wind), From: math.Pi}
		if wind < 0 {
			loss.Wind.From = 0
		}
		want, err := Glide(100, from.Speed, -1/math.Tan(from.Climb), wind)
		if err != nil {
			t.Fatal(err)
		}
		got := fly(t, loss, from)
		near(t, "distance", got.Place.Y, want.Distance, 1e-6)
		near(t, "time", got.Time, want.Time, 1e-8)
		near(t, "sink", -got.Velocity.Z, want.Sink, 1e-9)
	}
}

func TestSteadySpiralFollowsItsClosedForm(t *testing.T) {
	t.Parallel()
	for _, bank := range []float64{0.4, 0.9, -0.9} {
		loss, from := gliding(bank, 80)
		level := from.Speed * math.Cos(from.Climb)
		time := -80 / (from.Speed * math.Sin(from.Climb))
		rate := standardGravity * math.Tan(bank) / from.Speed
		// L sin(b) = m V cos(c) w and L cos(b) = m g cos(c) give w = g tan(b)/V.
		radius := level / rate
		turned := from.Heading + rate*time
		wantX := radius * (math.Cos(from.Heading) - math.Cos(turned))
		wantY := radius * (math.Sin(turned) - math.Sin(from.Heading))
		got := fly(t, loss, from)
		near(t, "time", got.Time, time, 1e-8)
		near(t, "east", got.Place.X, wantX, 1e-6)
		near(t, "north", got.Place.Y, wantY, 1e-6)
	}
}

func TestEnergyStaysWithoutDrag(t *testing.T) {
	t.Parallel()
	model := madeUp()
	model.CD0, model.StoppedDrag, model.InducedFactor, model.NeutralLift, model.RunDown = 0, 0, 0, 0.3, 0
	for _, bank := range []float64{0, 0.5, -1} {
		model.LevelTime = 3
		loss := Loss{Action: CutNeutral, Model: model, Density: 1.2}
		from := Release{Height: 6, Speed: 25, Climb: -0.8, Bank: bank}
		got := fly(t, loss, from)
		want := KineticEnergy(model.Mass, from.Speed) + model.Mass*standardGravity*from.Height
		near(t, "energy over itself", got.Energy/want, 1, 1e-9)
	}
}

func TestDragAlwaysTakesEnergy(t *testing.T) {
	t.Parallel()
	for _, action := range []Action{CutNeutral, CutSpiral, Breakup} {
		model := madeUp()
		model.RunDown = 0
		from := Release{Height: 90, Speed: 40, Climb: 0.2, Bank: 0.3}
		got := fly(t, Loss{Action: action, Model: model, Density: 1.2}, from)
		if start := KineticEnergy(model.Mass, 40) + model.Mass*standardGravity*90; !(got.Energy < start) {
			t.Errorf("%v: %g J at the ground from %g J", action, got.Energy, start)
		}
	}
}

// hodograph is the invariant under standard gravity.
func hodograph(t *testing.T, v Vector, rate float64) float64 {
	t.Helper()
	value, err := Hodograph(v, rate, standardGravity)
	if err != nil {
		t.Fatal(err)
	}
	return value
}

func TestHodographStaysTheSame(t *testing.T) {
	t.Parallel()
	model := madeUp()
	rate := DragRate(model.Mass, model.DragArea, 1.2)
	from := Release{Speed: 55, Climb: 0.6, Heading: 1}
	want := hodograph(t, from.velocity(), rate)
	for _, height := range []float64{0, 1, 20, 100, 600} {
		from.Height = height
		got := fly(t, Loss{Action: Breakup, Model: model, Density: 1.2}, from)
		near(t, "invariant over itself", hodograph(t, got.Velocity, rate)/want, 1, 1e-7)
	}
}

func TestFallsWithVanishingDragAreFallsInVacuum(t *testing.T) {
	t.Parallel()
	model := madeUp()
	model.DragArea = 1e-12
	for _, climb := range []float64{-0.7, 0, 0.5} {
		want, err := InVacuum(80, 35, climb, standardGravity)
		if err != nil {
			t.Fatal(err)
		}
		got := fly(t, Loss{Action: Breakup, Model: model, Density: 1.2}, Release{Height: 80, Speed: 35, Climb: climb})
		near(t, "distance", got.Place.Y, want.Distance, 1e-7)
		near(t, "time", got.Time, want.Time, 1e-9)
		near(t, "speed", got.Speed, want.Speed, 1e-8)
		near(t, "angle", got.Angle, want.Angle, 1e-9)
	}
}

func TestLongFallsReachTerminalSpeed(t *testing.T) {
	t.Parallel()
	model := madeUp()
	model.DragArea = 1.5
	got := fly(t, Loss{Action: Breakup, Model: model, Density: 1.2}, Release{Height: 1000, Speed: 40})
	near(t, "speed", got.Speed, TerminalSpeed(model.Mass, 1.5, 1.2, standardGravity), 1e-6)
	dropped := fly(t, Loss{Action: Breakup, Model: model, Density: 1.2}, Release{Height: 30, Speed: leastSpeed})
	near(t, "speed from near rest", dropped.Speed, FallSpeed(30, TerminalSpeed(model.Mass, 1.5, 1.2, standardGravity), standardGravity), 0.01)
}

func TestSlowPitchingHasItsPeriodAndDamping(t *testing.T) {
	t.Parallel()
	for _, added := range []float64{0, 0.1, 0.3} {
		model := madeUp()
		model.PathDamping = added
		loss := Loss{Action: Hold, Model: model, Density: 1.2}
		from := Release{Height: 500, Speed: 40}
		lift := loss.liftOf(from, 0)
		drag := model.CD0 + model.InducedFactor*lift*lift
		from.Speed = 40.2
		f := newFlight()
		f.prepare(&loss, from)
		f.take(law{lift: lift, thrust: held(0.5 * 1.2 * 1600 * model.Area * drag), lasts: untilGround})
		integrator := motion.Integrator{Tolerance: 1e-11}
		level := motion.Event{Value: func(_ float64, s motion.State) float64 { return s[5] }}
		solution, err := integrator.Solve(f.rate, 0, f.start(from), 80, level)
		if err != nil {
			t.Fatal(err)
		}
		top, bottom, next := solution.Crossings[0], solution.Crossings[1], solution.Crossings[2]
		// Thrust held adds nothing to the damping of drag, 1/(sqrt(2) E) at constant lift coefficient.
		damping := added + drag/lift/math.Sqrt2
		period := math.Sqrt2 * math.Pi * 40 / standardGravity / math.Sqrt(1-damping*damping)
		near(t, "period over closed form", (next.Time-top.Time)/period, 1, 0.02)
		decrement := math.Log((top.State[2] - bottom.State[2]) / (next.State[2] - bottom.State[2]))
		near(t, "decrement over closed form", decrement/(math.Pi*damping/math.Sqrt(1-damping*damping)), 1, 0.05)
	}
}

func TestHoldCirclesDownwind(t *testing.T) {
	t.Parallel()
	model := madeUp()
	model.HoldEndurance = 100
	loss := Loss{Action: Hold, Model: model, Density: 1.2, Wind: Wind{Speed: 5, From: 0}}
	from := Release{Height: 60, Speed: 35, Bank: 0.7}
	impact := fly(t, loss, from)
	if impact.Time < 100 || impact.Place.Y > -400 {
		t.Errorf("holding its turn for 100 s in 5 m/s from the north the model lands at %v after %g s", impact.Place, impact.Time)
	}
}

func TestUniformWindCarriesTheImpact(t *testing.T) {
	t.Parallel()
	for _, action := range all {
		loss := Loss{Action: action, Model: madeUp(), Density: 1.2, Delay: 1}
		from := Release{Height: 50, Speed: 32, Heading: 0.7, Climb: 0.05, Bank: 0.4}
		calm := fly(t, loss, from)
		loss.Wind = Wind{Speed: 6, From: 2}
		windy := fly(t, loss, from)
		shift := loss.Wind.At(20).Times(calm.Time)
		near(t, action.String()+" time", windy.Time, calm.Time, 1e-7)
		near(t, action.String()+" shift", windy.Place.Distance(calm.Place.Plus(shift)), 0, 1e-4)
	}
}

func TestMirroredLossIsMirrored(t *testing.T) {
	t.Parallel()
	for _, action := range all {
		loss := Loss{Action: action, Model: madeUp(), Density: 1.2, Delay: 1, Wind: Wind{Speed: 6, From: 2, Profile: weather.NewProfile(weather.Parkland, 0)}}
		from := Release{Height: 50, Speed: 32, Heading: 0.7, Bank: 0.4, Place: field.Point{X: 5, Y: 7}}
		one := fly(t, loss, from)
		from.Heading, from.Bank, from.Place.X, loss.Wind.From = -from.Heading, -from.Bank, -from.Place.X, -loss.Wind.From
		loss.Model.SpiralBank = -loss.Model.SpiralBank
		other := fly(t, loss, from)
		near(t, action.String()+" east", other.Place.X, -one.Place.X, 1e-9)
		near(t, action.String()+" north", other.Place.Y, one.Place.Y, 1e-9)
	}
}

func TestTurnedLossIsTurned(t *testing.T) {
	t.Parallel()
	for _, action := range all {
		loss := Loss{Action: action, Model: madeUp(), Density: 1.2, Delay: 1, Wind: Wind{Speed: 6, From: 2, Profile: weather.NewProfile(weather.Parkland, 0)}}
		from := Release{Height: 50, Speed: 32, Heading: 0.7, Bank: 0.4}
		one := fly(t, loss, from)
		from.Heading, loss.Wind.From = from.Heading+math.Pi/2, loss.Wind.From+math.Pi/2
		other := fly(t, loss, from)
		near(t, action.String()+" east", other.Place.X, one.Place.Y, 1e-5)
		near(t, action.String()+" north", other.Place.Y, -one.Place.X, 1e-5)
	}
}

func TestFartherFromHigherUp(t *testing.T) {
	t.Parallel()
	for _, action := range []Action{FlyAway, CutNeutral, IdleNeutral, Breakup} {
		before := 0.0
		for height := 10.0; height <= 320; height *= 2 {
			impact := fly(t, Loss{Action: action, Model: madeUp(), Density: 1.2}, Release{Height: height, Speed: 30})
			if far := impact.Place.Length(); !(far > before) {
				t.Errorf("%v from %g m comes %g m after %g m", action, height, far, before)
			} else {
				before = far
			}
		}
	}
}

func TestLongerDelayCarriesFarther(t *testing.T) {
	t.Parallel()
	before := 0.0
	for _, delay := range []float64{0, 0.5, 1, 2, 5, 20} {
		impact := fly(t, Loss{Action: Breakup, Model: madeUp(), Density: 1.2, Delay: delay}, Release{Height: 50, Speed: 30})
		if delay > 0 {
			near(t, "delay at speed", impact.Place.Length(), before+30*delay, 1e-5)
			continue
		}
		before = impact.Place.Length()
	}
}

func TestFlyAwaysStayWithinTheirReach(t *testing.T) {
	t.Parallel()
	loss := Loss{Action: FlyAway, Model: madeUp(), Density: 1.2, Wind: Wind{Speed: 8, From: 1, Profile: weather.NewProfile(weather.OpenGrass, 0)}}
	speed := TopSpeed(loss.Model, loss.Density, standardGravity)
	for heading := 0.0; heading < 6; heading += 0.5 {
		from := Release{Height: 100, Speed: 30, Heading: heading, Place: field.Point{X: 40, Y: -20}}
		reach, err := FlyAwayReach(from, speed, loss.Model.FullEndurance, 9, loss.Wind)
		if err != nil {
			t.Fatal(err)
		}
		impact := fly(t, loss, from)
		if gone := impact.Place.Distance(reach.Centre); gone > reach.Radius || gone < 0.9*reach.Radius {
			t.Errorf("heading %g: %g m from the centre of a reach of %g m", heading, gone, reach.Radius)
		}
		if reach.Outline().SignedDistance(impact.Place) < 0 {
			t.Errorf("heading %g: outside the outline of the reach", heading)
		}
	}
}

func TestCoarseStepsComeNearFineOnes(t *testing.T) {
	t.Parallel()
	for _, action := range all {
		plan := planned(action, 60)
		plan.Samples = 100
		coarse := cloudOf(t, plan)
		plan.Precision = 1e-9
		fine := cloudOf(t, plan)
		off := make([]float64, 0, plan.Samples)
		for i := range coarse.Impacts {
			off = append(off, coarse.Impacts[i].Place.Distance(fine.Impacts[i].Place))
		}
		slices.Sort(off)
		if off[94] > 0.3 || off[99] > 2 {
			t.Errorf("%v: 95 %% of the impacts within %g m, the worst %g m off", action, off[94], off[99])
		}
	}
}

func TestOnTheGroundIsDown(t *testing.T) {
	t.Parallel()
	impact := fly(t, Loss{Action: CutNeutral, Model: madeUp(), Density: 1.2}, Release{Speed: 10, Place: field.Point{X: 3}})
	if impact.Place != (field.Point{X: 3}) || impact.Time != 0 {
		t.Errorf("a model on the ground comes down at %v after %g s", impact.Place, impact.Time)
	}
}

func TestImpossibleInputIsRefusedByName(t *testing.T) {
	t.Parallel()
	good := Loss{Action: Hold, Model: madeUp(), Density: 1.2}
	for name, spoil := range map[string]func(*Loss, *Release){
		"mass":             func(l *Loss, _ *Release) { l.Model.Mass = 0 },
		"area":             func(l *Loss, _ *Release) { l.Model.Area = math.NaN() },
		"hold endurance":   func(l *Loss, _ *Release) { l.Model.HoldEndurance = 0 },
		"drag area":        func(l *Loss, _ *Release) { l.Action, l.Model.DragArea = Breakup, 0 },
		"idle endurance":   func(l *Loss, _ *Release) { l.Action, l.Model.IdleEndurance = IdleNeutral, 0 },
		"full thrust":      func(l *Loss, _ *Release) { l.Action, l.Model.FullThrust = FlyAway, 0 },
		"full endurance":   func(l *Loss, _ *Release) { l.Action, l.Model.FullEndurance = FlyAway, 0 },
		"action":           func(l *Loss, _ *Release) { l.Action = 99 },
		"density":          func(l *Loss, _ *Release) { l.Density = 0 },
		"delay":            func(l *Loss, _ *Release) { l.Delay = -1 },
		"wind speed":       func(l *Loss, _ *Release) { l.Wind.Speed = math.Inf(1) },
		"height":           func(_ *Loss, r *Release) { r.Height = -1 },
		"bank":             func(_ *Loss, r *Release) { r.Bank = 1.6 },
		"place east":       func(_ *Loss, r *Release) { r.Place.X = math.NaN() },
		"roughness length": func(l *Loss, _ *Release) { l.Wind.Profile.RoughnessLength = 20 },
	} {
		loss, from := good, Release{Height: 50, Speed: 30}
		spoil(&loss, &from)
		if _, err := loss.From(from); err == nil || !strings.Contains(err.Error(), name) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestIdleWithoutThrustRunsDownAndLevelsAsACutDoes(t *testing.T) {
	t.Parallel()
	model := madeUp()
	model.IdleThrust, model.IdleEndurance, model.StoppedDrag = 0, 0, 0
	from := Release{Height: 50, Speed: 32, Bank: 0.5}
	cut := fly(t, Loss{Action: CutNeutral, Model: model, Density: 1.2}, from)
	near(t, "without endurance", fly(t, Loss{Action: IdleNeutral, Model: model, Density: 1.2}, from).Place.Distance(cut.Place), 0, 1e-6)
	model.IdleEndurance = 4
	near(t, "with the fuel's end on the way", fly(t, Loss{Action: IdleNeutral, Model: model, Density: 1.2}, from).Place.Distance(cut.Place), 0, 1e-6)
}
