package footprint

import (
	"math"
	"testing"

	"pitgate/server/physics/field"
)

func TestDecoupledFallComesNearTheEquations(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ mass, drag, height, speed float64 }{{15, 0.2, 100, 60}, {15, 0.2, 50, 60}, {5, 0.08, 100, 30}, {10, 0.05, 120, 50}} {
		model := madeUp()
		model.Mass, model.DragArea = c.mass, c.drag
		full := fly(t, Loss{Action: Breakup, Model: model, Density: 1.225}, Release{Height: c.height, Speed: c.speed})
		short, err := DecoupledFrom(c.mass, c.drag, 1.225, standardGravity, c.height, c.speed)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "distance over the equations'", short.Distance/full.Place.Y, 1, 0.05)
		if short.Speed < full.Speed || short.Speed > 1.15*full.Speed || short.Time > full.Time || short.Time < 0.89*full.Time {
			t.Errorf("%+v: speed %g for %g, time %g for %g", c, short.Speed, full.Speed, short.Time, full.Time)
		}
		vacuum, err := InVacuum(c.height, c.speed, 0, standardGravity)
		if err != nil {
			t.Fatal(err)
		}
		if full.Place.Y > vacuum.Distance || full.Speed > vacuum.Speed || full.Time < vacuum.Time {
			t.Errorf("%+v: drag makes the fall %+v farther, faster or shorter than %+v", c, full, vacuum)
		}
	}
}

func TestCriticalAreaGrowsWithSpeedMassAndWidth(t *testing.T) {
	t.Parallel()
	base := Strike{Width: 2, Mass: 12, Speed: 30, Angle: 0.4}
	of := func(change func(*Strike, float64), by float64) float64 {
		s := base
		change(&s, by)
		return s.area(AnnexF()).Total
	}
	for name, change := range map[string]func(*Strike, float64){
		"speed": func(s *Strike, by float64) { s.Speed *= by },
		"mass":  func(s *Strike, by float64) { s.Mass *= by },
		"width": func(s *Strike, by float64) { s.Width *= by },
		"flat":  func(s *Strike, by float64) { s.Angle /= by },
	} {
		before := 0.0
		for _, by := range []float64{0.8, 1, 1.3, 2} {
			if area := of(change, by); !(area > before) {
				t.Errorf("%s times %g: %g m2 after %g", name, by, area, before)
			} else {
				before = area
			}
		}
	}
}

func TestTopSpeedBalancesThrustAndDrag(t *testing.T) {
	t.Parallel()
	for _, slope := range []float64{0, 0.3} {
		model := madeUp()
		model.ThrustSlope = slope
		speed := TopSpeed(model, 1.2, standardGravity)
		pressure := 0.5 * 1.2 * speed * speed
		lift := model.Mass * standardGravity / (pressure * model.Area)
		drag := pressure * model.Area * (model.CD0 + model.InducedFactor*lift*lift)
		near(t, "thrust over drag", (model.FullThrust-slope*speed)/drag, 1, 1e-6)
	}
	weak := madeUp()
	weak.FullThrust = 5
	near(t, "without enough thrust", TopSpeed(weak, 1.2, standardGravity), 0, 0)
}

func TestEnduranceAndReachRefuseNonsense(t *testing.T) {
	t.Parallel()
	if time, err := Endurance(2, 0.008); err != nil || math.Abs(time-250) > 1e-9 {
		t.Error(time, err)
	}
	for _, bad := range [][2]float64{{-1, 1}, {1, 0}, {math.NaN(), 1}, {1, math.NaN()}, {math.Inf(1), 1}} {
		if _, err := Endurance(bad[0], bad[1]); err == nil {
			t.Errorf("%v must be refused", bad)
		}
	}
	if _, err := FlyAwayReach(Release{Speed: 20, Height: 50}, math.NaN(), 100, 8, Wind{}); err == nil {
		t.Error("a speed that is no number must be refused")
	}
	reach, err := FlyAwayReach(Release{Speed: 20, Height: 50, Place: field.Point{X: 10}}, 40, 100, 8, Wind{Speed: 5, From: 1.5 * math.Pi})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "radius", reach.Radius, 4400, 1e-9)
	near(t, "centre", reach.Centre.X, 10+5*110, 1e-9)
	near(t, "farthest", reach.Farthest(field.Point{}), 4400+560, 1e-9)
}

func TestVacuumAndRiskRefuseNonsense(t *testing.T) {
	t.Parallel()
	for _, bad := range [][4]float64{{-1, 1, 0, 9}, {1, math.NaN(), 0, 9}, {1, 1, 2, 9}, {1, 1, 0, 0}} {
		if _, err := InVacuum(bad[0], bad[1], bad[2], bad[3]); err == nil {
			t.Errorf("fall %v must be refused", bad)
		}
	}
	for _, bad := range [][2]float64{{0, 1}, {1, 0}, {math.NaN(), 1}, {math.Inf(1), 1}} {
		if _, _, err := RiskClass(bad[0], bad[1]); err == nil {
			t.Errorf("area and density %v must be refused", bad)
		}
	}
	if _, err := (Operation{Speed: 20}).Contingency(); err == nil {
		t.Error("an operation without bank must be refused")
	}
	if buffer, err := ParachuteBuffer(100, 20, 2, 5, 4); err != nil || math.Abs(buffer-165) > 1e-12 {
		t.Error(buffer, err)
	}
	if _, err := ParachuteBuffer(100, 20, 2, 5, 0); err == nil {
		t.Error("a parachute that does not sink must be refused")
	}
	if _, err := Hodograph(Vector{Z: -3}, 0.002, 9.8); err == nil {
		t.Error("a hodograph without level speed must be refused")
	}
	if _, err := (Strike{Width: math.NaN()}).CriticalArea(AnnexF()); err == nil {
		t.Error("a width that is no number must be refused")
	}
	if _, err := (Strike{}).CriticalArea(Ground{Friction: -1}); err == nil {
		t.Error("friction below zero must be refused")
	}
	for name, value := range map[string]float64{
		"terminal speed": TerminalSpeed(1, 0, 1, 9), "drag rate": DragRate(0, 1, 1), "fall": FallSpeed(-1, 10, 9), "energy": SpeedOfEnergy(0, 10),
		"buffer": BallisticBuffer(-1, 10, 0, 9),
	} {
		near(t, name, value, 0, 0)
	}
}

func TestEqualBufferUnderstatesFastFalls(t *testing.T) {
	t.Parallel()
	height := 100.0
	turning := math.Sqrt(standardGravity * height / 2)
	for share, understates := range map[float64]bool{0.9: false, 1.1: true} {
		if got := BallisticBuffer(height, share*turning, 2, standardGravity) > EqualBuffer(height, 2); got != understates {
			t.Errorf("at %g of sqrt(g h/2): understates is %v", share, got)
		}
	}
}

// TestStoppedEnginePushesNothing wants a cut engine without thrust at any airspeed, whatever it lost with airspeed while it ran.
func TestStoppedEnginePushesNothing(t *testing.T) {
	t.Parallel()
	from := Release{Height: 60, Speed: 30}
	fall := func(slope, runDown float64) Impact {
		loss := Loss{Action: CutNeutral, Density: 1.2, Model: madeUp()}
		loss.Model.ThrustSlope, loss.Model.RunDown, loss.Model.NeutralLift = slope, runDown, 0.9
		impact, err := loss.From(from)
		if err != nil {
			t.Fatal(err)
		}
		return impact
	}
	still, sloped := fall(0, 0), fall(0.8, 0)
	near(t, "where it comes down, cut at once", sloped.Place.Distance(from.Place), still.Place.Distance(from.Place), 1e-9)
	if slow, plain := fall(0.8, 2), fall(0, 2); slow.Place.Distance(plain.Place) < 1e-3 {
		t.Error("while the engine runs down the slope must count")
	}
}
