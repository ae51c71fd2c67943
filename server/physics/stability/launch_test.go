package stability

import (
	"errors"
	"math"
	"strings"
	"testing"
)

// rampEnd is the model of jet as it leaves a ramp with the engine above the balance point.
func rampEnd() RampEnd {
	state, _, _ := jet()
	state.Speed = 17
	return RampEnd{
		State: state, Pitch: tailed(), Throw: Throw{NoseUp: -0.4, NoseDown: 0.35}, Push: Push{Thrust: 80, X: 0.5, Z: 0.12}, X: 0.4, Z: 0.02, Held: 0.1,
	}
}

func TestThrustArm(t *testing.T) {
	t.Parallel()
	for name, test := range map[string]struct {
		push Push
		want float64
	}{
		"above":                      {Push{Thrust: 50, Z: 0.1}, -5},
		"below":                      {Push{Thrust: 50, Z: -0.1}, 5},
		"through":                    {Push{Thrust: 50, X: 3}, 0},
		"aft, turned up":             {Push{Thrust: 50, X: 1, Angle: 0.1}, -50 * math.Sin(0.1)},
		"ahead, turned up":           {Push{Thrust: 50, X: -1, Angle: 0.1}, 50 * math.Sin(0.1)},
		"aft, turned down":           {Push{Thrust: 50, X: 1, Angle: -0.1}, 50 * math.Sin(0.1)},
		"line through though offset": {Push{Thrust: 50, X: 1, Z: -math.Tan(0.1), Angle: 0.1}, 0},
	} {
		if got := test.push.MomentAbout(0, 0); math.Abs(got-test.want) > 1e-9 {
			t.Errorf("%s: %g, want %g", name, got, test.want)
		}
	}
}

// Any other point of the thrust line must give the same moment.
func TestThrustMayBeMovedAlongItsLine(t *testing.T) {
	t.Parallel()
	push := Push{Thrust: 80, Angle: 0.07, X: 0.5, Z: 0.1}
	for _, step := range []float64{-2, 0.3, 5} {
		moved := push
		moved.X -= step * math.Cos(push.Angle)
		moved.Z += step * math.Sin(push.Angle)
		if got, want := moved.MomentAbout(0.3, 0.02), push.MomentAbout(0.3, 0.02); !near(got, want, 1e-10) {
			t.Errorf("%g along the line: %g, want %g", step, got, want)
		}
	}
}

func TestLaunchTrimLeavesNoMoment(t *testing.T) {
	t.Parallel()
	for _, thrust := range []float64{0, 20, 80} {
		for _, steady := range []bool{false, true} {
			end := rampEnd()
			end.Push.Thrust, end.Steady = thrust, steady
			got := must(end.LaunchTrim())
			scale := end.State.Pressure() * end.State.Area * end.State.Chord
			incidence := end.Held
			if steady {
				weight := (end.State.Mass*end.State.Gravity - end.Push.Upward()) / (end.State.Pressure() * end.State.Area)
				incidence = (weight - end.Pitch.LiftControl*got.Control) / end.Pitch.LiftSlope
			}
			p := end.Pitch
			moment := p.MomentZero + p.MomentSlope*incidence + p.MomentControl*got.Control + end.Push.MomentAbout(end.X, end.Z)/scale
			if math.Abs(moment) > 1e-12 {
				t.Errorf("thrust %g, steady %v: moment %g left", thrust, steady, moment)
			}
			if !near(got.Acceleration, got.MomentAtNeutral/end.State.Inertia.Pitch, 1e-12) || got.NoseUp != (got.MomentAtNeutral < 0) {
				t.Errorf("%+v", got)
			}
		}
	}
}

// An engine above the balance point asks for more nose-up control the more it pushes, one below for less; slower flight makes both worse.
func TestLaunchTrimFollowsThrustAndSpeed(t *testing.T) {
	t.Parallel()
	end := rampEnd()
	idle, full := end, end
	idle.Push.Thrust = 5
	a, b := must(idle.LaunchTrim()), must(full.LaunchTrim())
	if !(b.Control < a.Control) || !(b.Reserve < a.Reserve) || !b.NoseUp || !end.Throw.UsesNoseUp(b.Control) {
		t.Errorf("above: idle %+v, full %+v", a, b)
	}
	slow := full
	slow.State.Speed = 13
	if c := must(slow.LaunchTrim()); !(c.Reserve < b.Reserve) || !(c.NoseUpLeft < b.NoseUpLeft) {
		t.Errorf("slower: %+v after %+v", c, b)
	}
	below := full
	below.Push.Z = -0.15
	if d := must(below.LaunchTrim()); d.NoseUp || end.Throw.UsesNoseUp(d.Control) || d.Control < b.Control {
		t.Errorf("below: %+v", d)
	}
}

// What is left nose up is zero exactly where the reserve is.
func TestReserveAndMomentLeftAgree(t *testing.T) {
	t.Parallel()
	end := rampEnd()
	low, high := 0.0, 1000.0
	for range 100 {
		end.Push.Thrust = (low + high) / 2
		if must(end.LaunchTrim()).Reserve > 0 {
			low = end.Push.Thrust
		} else {
			high = end.Push.Thrust
		}
	}
	if got := must(end.LaunchTrim()); math.Abs(got.NoseUpLeft) > 1e-9 || math.Abs(got.Reserve) > 1e-9 || !near(got.Control, end.Throw.NoseUp, 1e-9) {
		t.Errorf("at the limit of the throw: %+v", got)
	}
}

// wheels is the same model on its wheels.
func wheels() Roll {
	end := rampEnd()
	return Roll{
		State: end.State, Pitch: end.Pitch, Throw: end.Throw, Push: Push{Thrust: 80, X: 0.5, Z: 0.06}, X: 0.4, Z: 0.02, WheelX: 0.46, GroundZ: -0.25,
		Incidence: 0.04, Friction: 0.06,
	}
}

// moments adds up every force about the contact point with the inertia force at the balance point: another way than the code goes.
func (r Roll) moments(control float64) float64 {
	q := r.State.Pressure()
	lift := q * r.State.Area * (r.Pitch.LiftSlope*r.Incidence + r.Pitch.LiftControl*control)
	pitching := q * r.State.Area * r.State.Chord * (r.Pitch.MomentZero + r.Pitch.MomentSlope*r.Incidence + r.Pitch.MomentControl*control)
	drag := q * r.State.Area * 0.05
	weight := r.State.Mass * r.State.Gravity
	up, forward := r.Push.Upward(), r.Push.Forward()
	normal := weight - lift - up
	inertia := forward - drag - r.Friction*normal
	height, thrustHeight := r.Z-r.GroundZ, r.Push.Z-r.GroundZ
	sum := pitching + (lift-weight)*(r.WheelX-r.X)
	sum += -forward*thrustHeight + up*(r.WheelX-r.Push.X)
	return sum + (drag+inertia)*height
}

func TestWheelMomentsAddUp(t *testing.T) {
	t.Parallel()
	for _, angle := range []float64{-0.1, 0, 0.15} {
		r := wheels()
		r.Push.Angle = angle
		got := must(r.LaunchTrim())
		if left := r.moments(got.Control); math.Abs(left) > 1e-9 {
			t.Errorf("thrust angle %g: %g N m left", angle, left)
		}
		if want := r.moments(0); !near(got.MomentAtNeutral, want, 1e-10) {
			t.Errorf("thrust angle %g: %g N m at neutral, want %g", angle, got.MomentAtNeutral, want)
		}
		if want := r.moments(r.Throw.NoseUp); !near(got.NoseUpLeft, want, 1e-10) {
			t.Errorf("thrust angle %g: %g N m left, want %g", angle, got.NoseUpLeft, want)
		}
	}
}

func TestRotationSpeed(t *testing.T) {
	t.Parallel()
	r := wheels()
	speed, ok, err := r.RotationSpeed()
	if err != nil || !ok || !(speed > 5 && speed < 40) {
		t.Fatalf("%g, %v, %v", speed, ok, err)
	}
	r.State.Speed = speed
	if got := must(r.LaunchTrim()); !near(got.Control, r.Throw.NoseUp, 1e-9) || math.Abs(got.Reserve) > 1e-9 {
		t.Errorf("at %g m/s: %+v", speed, got)
	}
	faster := func(change func(*Roll)) float64 {
		changed := wheels()
		change(&changed)
		v, ok, err := changed.RotationSpeed()
		if err != nil || !ok {
			t.Fatalf("%v, %v", ok, err)
		}
		return v - speed
	}
	if got := faster(func(r *Roll) { r.WheelX += 0.03 }); !(got > 0) {
		t.Errorf("wheels further aft: %g", got)
	}
	if got := faster(func(r *Roll) { r.Push.Z += 0.1 }); !(got > 0) {
		t.Errorf("engine higher: %g", got)
	}
	if got := faster(func(r *Roll) { r.Throw.NoseUp = -0.2 }); !(got > 0) {
		t.Errorf("less throw: %g", got)
	}
	if got := faster(func(r *Roll) { r.Friction = 0.2 }); !(got > 0) {
		t.Errorf("more friction: %g", got)
	}
	if got := faster(func(r *Roll) { r.Push.Z -= 0.1 }); !(got < 0) {
		t.Errorf("engine lower: %g", got)
	}
}

func TestRotationAtTheEnds(t *testing.T) {
	t.Parallel()
	heavy := wheels()
	heavy.WheelX = 0.3
	if v, ok, err := heavy.RotationSpeed(); v != 0 || !ok || err != nil {
		t.Errorf("wheels ahead of the balance point: %g, %v, %v", v, ok, err)
	}
	weak := wheels()
	weak.Throw.NoseUp, weak.Pitch.MomentZero, weak.Incidence = 0, -0.1, 0
	if v, ok, err := weak.RotationSpeed(); ok || err != nil {
		t.Errorf("no throw: %g, %v, %v", v, ok, err)
	}
}

func TestLaunchesThatCannotBe(t *testing.T) {
	t.Parallel()
	for field, call := range map[string]func() error{
		"state.mass":  func() error { r := rampEnd(); r.State.Mass = 0; _, err := r.LaunchTrim(); return err },
		"state.chord": func() error { r := rampEnd(); r.State.Chord = 0; _, err := r.LaunchTrim(); return err },
		"held":        func() error { r := rampEnd(); r.Held = math.NaN(); _, err := r.LaunchTrim(); return err },
		"push.thrust": func() error { r := rampEnd(); r.Push.Thrust = math.Inf(1); _, err := r.LaunchTrim(); return err },
		"groundZ":     func() error { r := wheels(); r.GroundZ = r.Z; _, err := r.LaunchTrim(); return err },
		"friction":    func() error { r := wheels(); r.Friction = math.NaN(); _, _, err := r.RotationSpeed(); return err },
		"state.area":  func() error { r := wheels(); r.State.Area = 0; _, _, err := r.RotationSpeed(); return err },
	} {
		if err := call(); !errors.Is(err, ErrInput) || !strings.Contains(err.Error(), field) {
			t.Errorf("%s: %v", field, err)
		}
	}
	powerless := rampEnd()
	powerless.Pitch.MomentControl, powerless.Pitch.LiftControl = 0, 0
	for _, steady := range []bool{false, true} {
		powerless.Steady = steady
		if _, err := powerless.LaunchTrim(); !errors.Is(err, ErrOutOfRange) {
			t.Errorf("steady %v: %v", steady, err)
		}
	}
}

// tailDragger is the model of wheels with its main wheels ahead of the balance point and its nose up.
func tailDragger() Roll {
	r := wheels()
	r.WheelX, r.Incidence = 0.3, 0.2
	return r
}

func TestTailUpSpeed(t *testing.T) {
	t.Parallel()
	r := tailDragger()
	r.Push.Thrust = 0
	speed, ok, err := r.TailUpSpeed()
	if err != nil || !ok || !(speed > 1) {
		t.Fatalf("%g, %v, %v", speed, ok, err)
	}
	r.State.Speed = speed
	if left := r.moments(r.Throw.NoseDown); math.Abs(left) > 1e-9 {
		t.Errorf("%g N m left at %g m/s", left, speed)
	}
	for name, change := range map[string]func(*Roll){
		"wheels farther ahead": func(r *Roll) { r.WheelX -= 0.03 }, "less throw": func(r *Roll) { r.Throw.NoseDown /= 2 },
	} {
		changed := r
		change(&changed)
		if v, ok, err := changed.TailUpSpeed(); err != nil || ok && !(v > speed) {
			t.Errorf("%s: %g after %g, %v, %v", name, v, speed, ok, err)
		}
	}
	r.WheelX = 0.7
	if v, ok, err := r.TailUpSpeed(); v != 0 || !ok || err != nil {
		t.Errorf("wheels behind the balance point: %g, %v, %v", v, ok, err)
	}
	weak := tailDragger()
	weak.Push.Thrust, weak.Throw.NoseDown, weak.Pitch.MomentZero, weak.Pitch.MomentSlope = 0, 0, 0.3, 0
	if v, ok, err := weak.TailUpSpeed(); ok || err != nil {
		t.Errorf("no throw: %g, %v, %v", v, ok, err)
	}
}

func TestStandingTurnsWithoutChangingArms(t *testing.T) {
	t.Parallel()
	r := tailDragger()
	flat, up := r.Standing(0, -0.2, 0.05), r.Standing(0.2, -0.2, 0.05)
	if !near(flat.GroundZ, -0.25, 1e-12) || flat.WheelX != r.WheelX || flat.X != r.X {
		t.Errorf("turned by nothing: %+v", flat)
	}
	if got, want := up.Push.MomentAbout(up.X, up.Z), r.Push.MomentAbout(r.X, r.Z); !near(got, want, 1e-9) {
		t.Errorf("the thrust's moment %g becomes %g", want, got)
	}
	if got, want := math.Hypot(up.WheelX-up.X, up.GroundZ+0.05-up.Z), math.Hypot(r.WheelX-r.X, -0.2-r.Z); !near(got, want, 1e-12) {
		t.Errorf("the arm %g becomes %g", want, got)
	}
	if !(up.X-up.WheelX > flat.X-flat.WheelX) {
		t.Error("nose up, a balance point over the wheels must move back")
	}
}
