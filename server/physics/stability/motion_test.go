package stability

import (
	"errors"
	"math"
	"strings"
	"testing"
)

// jet is a 12 kg model with a 2 m wing at 30 m/s; the tests vary it.
func jet() (State, Longitudinal, Lateral) {
	state := State{
		Mass: 12, Speed: 30, Density: 1.225, Area: 0.65, Chord: 0.33, Span: 2, Lift: 0.3285, Drag: 0.04, Gravity: 9.80665,
		Inertia: Inertia{Roll: 0.75, Pitch: 1.6, Yaw: 2.2, Product: 0.04},
	}
	pitch := Longitudinal{LiftSlope: 4.6, DragSlope: 0.2, MomentSlope: -0.46, PitchDamping: -9, IncidenceRateDamping: -3, LiftPitchRate: 5}
	lateral := Lateral{
		SideForceBeta: -0.4, RollBeta: -0.06, YawBeta: 0.09, RollRollRate: -0.45, YawRollRate: -0.03, RollYawRate: 0.12, YawYawRate: -0.14,
		SideForceYawRate: 0.2, SideForceRollRate: 0.02,
	}
	return state, pitch, lateral
}

func near(got, want, relative float64) bool {
	return math.Abs(got-want) <= relative*math.Max(math.Abs(got), math.Abs(want))+1e-13
}

func TestMoreMarginMakesPitchFaster(t *testing.T) {
	t.Parallel()
	state, pitch, _ := jet()
	last := 0.0
	for margin := 0.02; margin < 0.4; margin += 0.02 {
		pitch.MomentSlope = MomentSlope(pitch.LiftSlope, margin)
		m, err := pitch.Motions(state)
		if err != nil || m.Merged {
			t.Fatalf("margin %.2f: %+v, %v", margin, m, err)
		}
		if m.ShortPeriod.NaturalFrequency <= last {
			t.Errorf("margin %.2f: %.4f rad/s, before %.4f", margin, m.ShortPeriod.NaturalFrequency, last)
		}
		last = m.ShortPeriod.NaturalFrequency
	}
}

// The constant term of the characteristic equation is g (Z_u M_w - M_u Z_w): a root is zero exactly at the neutral point.
func TestRootIsZeroAtTheNeutralPoint(t *testing.T) {
	t.Parallel()
	state, pitch, _ := jet()
	slowest := func(margin float64) Root {
		pitch.MomentSlope = MomentSlope(pitch.LiftSlope, margin)
		f, err := pitch.Dimensional(state)
		if err != nil {
			t.Fatal(err)
		}
		return rootsOf(t, f.Matrix())[3]
	}
	if root := slowest(0); root.modulus() > 1e-12 {
		t.Errorf("at the neutral point: %v", root)
	}
	for _, behind := range []float64{-1e-4, -0.02, -0.1} {
		pitch.MomentSlope = MomentSlope(pitch.LiftSlope, behind)
		m, err := pitch.Motions(state)
		if err != nil {
			t.Fatal(err)
		}
		if grows := m.ShortPeriod.Real > 0 || m.Phugoid.Real > 0; !grows || !m.Merged {
			t.Errorf("margin %g: %+v", behind, m)
		}
	}
}

func TestFarBehindTheManoeuvrePointTheShortPeriodDiverges(t *testing.T) {
	t.Parallel()
	state, pitch, _ := jet()
	pitch.MomentSlope = MomentSlope(pitch.LiftSlope, -0.5)
	m, err := pitch.Motions(state)
	if err != nil {
		t.Fatal(err)
	}
	if m.ShortPeriod.Oscillates() || !(m.ShortPeriod.DoubleTime > 0) || !(m.ShortPeriod.DoubleTime < 1) || m.ShortPeriod.Decays() {
		t.Errorf("short period %+v", m.ShortPeriod)
	}
	if !m.Merged || m.ShortPeriod.NaturalFrequency != 0 || m.ShortPeriod.Damping != 0 {
		t.Errorf("%+v", m)
	}
}

// scaled returns the state of a model of the same shape and load, larger by a factor, at the speed that keeps V^2/(g l).
func scaled(s State, factor float64) State {
	s.Mass *= factor * factor * factor
	s.Speed *= math.Sqrt(factor)
	s.Area *= factor * factor
	s.Chord *= factor
	s.Span *= factor
	fifth := factor * factor * factor * factor * factor
	s.Inertia = Inertia{Roll: s.Inertia.Roll * fifth, Pitch: s.Inertia.Pitch * fifth, Yaw: s.Inertia.Yaw * fifth, Product: s.Inertia.Product * fifth}
	return s
}

func TestMotionsFollowFroude(t *testing.T) {
	t.Parallel()
	state, pitch, lateral := jet()
	for _, factor := range []float64{0.25, 3, 9} {
		large := scaled(state, factor)
		time := FroudeTime(factor, 1)
		a, b := must(pitch.Motions(state)), must(pitch.Motions(large))
		c, d := must(lateral.Motions(state)), must(lateral.Motions(large))
		for i, pair := range [][2]Mode{
			{a.ShortPeriod, b.ShortPeriod}, {a.Phugoid, b.Phugoid}, {c.DutchRoll, d.DutchRoll}, {c.Roll, d.Roll}, {c.Spiral, d.Spiral},
		} {
			small, big := pair[0], pair[1]
			if !near(big.Real*time, small.Real, 1e-9) || !near(big.Imaginary*time, small.Imaginary, 1e-9) || !near(big.Damping, small.Damping, 1e-9) {
				t.Errorf("factor %g, motion %d: %+v against %+v", factor, i, big, small)
			}
		}
	}
}

func TestUnitsDoNotMatter(t *testing.T) {
	t.Parallel()
	const foot, slug = 0.3048, 14.5939029372
	state, pitch, lateral := jet()
	us := state
	us.Mass, us.Speed, us.Area, us.Chord, us.Span = state.Mass/slug, state.Speed/foot, state.Area/foot/foot, state.Chord/foot, state.Span/foot
	us.Density, us.Gravity = state.Density/slug*foot*foot*foot, state.Gravity/foot
	us.Inertia = Inertia{
		Roll: state.Inertia.Roll / slug / foot / foot, Pitch: state.Inertia.Pitch / slug / foot / foot, Yaw: state.Inertia.Yaw / slug / foot / foot,
		Product: state.Inertia.Product / slug / foot / foot,
	}
	a, b := must(pitch.Motions(state)), must(pitch.Motions(us))
	c, d := must(lateral.Motions(state)), must(lateral.Motions(us))
	if !near(a.ShortPeriod.Real, b.ShortPeriod.Real, 1e-10) || !near(a.Phugoid.Imaginary, b.Phugoid.Imaginary, 1e-10) {
		t.Errorf("%+v against %+v", a, b)
	}
	if !near(c.Spiral.Real, d.Spiral.Real, 1e-9) || !near(c.DutchRoll.Imaginary, d.DutchRoll.Imaginary, 1e-10) {
		t.Errorf("%+v against %+v", c, d)
	}
}

// Roll counted positive to port turns the sign of all that couples roll with sideslip and yaw; the motions stay.
func TestSignOfRollDoesNotMatter(t *testing.T) {
	t.Parallel()
	state, _, lateral := jet()
	state.Inertia.Product = 0
	other := lateral
	other.RollBeta, other.SideForceRollRate = -lateral.RollBeta, -lateral.SideForceRollRate
	other.YawRollRate, other.RollYawRate = -lateral.YawRollRate, -lateral.RollYawRate
	direct, flipped := must(lateral.Dimensional(state)), must(other.Dimensional(state))
	flipped.Gravity = -flipped.Gravity
	a, b := rootsOf(t, direct.Matrix()), rootsOf(t, flipped.Matrix())
	for i := range a {
		if apart(a[i], b[i]) > 1e-10 {
			t.Errorf("root %d: %v against %v", i, a[i], b[i])
		}
	}
}

func TestEstimatesNearTheWholeSystem(t *testing.T) {
	t.Parallel()
	state, pitch, lateral := jet()
	forces, whole := must(pitch.Dimensional(state)), must(pitch.Motions(state))
	if e := forces.ShortPeriodEstimate(); !near(e.NaturalFrequency, whole.ShortPeriod.NaturalFrequency, 0.03) {
		t.Errorf("short period %.4f against %.4f", e.NaturalFrequency, whole.ShortPeriod.NaturalFrequency)
	}
	if e := forces.PhugoidEstimate(); !near(e.NaturalFrequency, whole.Phugoid.NaturalFrequency, 0.35) {
		t.Errorf("phugoid %.4f against %.4f", e.NaturalFrequency, whole.Phugoid.NaturalFrequency)
	}
	side, motions := must(lateral.Dimensional(state)), must(lateral.Motions(state))
	if e := side.RollEstimate(); !near(e.Real, motions.Roll.Real, 0.1) {
		t.Errorf("roll %.4f against %.4f", e.Real, motions.Roll.Real)
	}
	if e, ok := side.SpiralEstimate(); !ok || !near(e.Real, motions.Spiral.Real, 0.1) {
		t.Errorf("spiral %.5f against %.5f", e.Real, motions.Spiral.Real)
	}
	if e := side.DutchRollEstimate(); !near(e.NaturalFrequency, motions.DutchRoll.NaturalFrequency, 0.2) {
		t.Errorf("Dutch roll %.4f against %.4f", e.NaturalFrequency, motions.DutchRoll.NaturalFrequency)
	}
	if got, want := LanchesterPeriod(30, 9.80665), math.Sqrt2*math.Pi*30/9.80665; !near(got, want, 1e-15) || LanchesterPeriod(30, 0) != 0 {
		t.Errorf("Lanchester %.4f", got)
	}
}

// Spiral stability goes with L_v N_r - N_v L_r: more dihedral or less fin turns it.
func TestSpiralTurnsWithDihedral(t *testing.T) {
	t.Parallel()
	state, _, lateral := jet()
	state.Inertia.Product = 0
	neutral := -lateral.YawBeta * lateral.RollYawRate / -lateral.YawYawRate
	for _, test := range []struct {
		factor float64
		want   Tendency
	}{{0.2, SpiralDiverges}, {1, SpiralNeutral}, {3, SpiralReturns}} {
		lateral.RollBeta = neutral * test.factor
		m := must(lateral.Motions(state))
		if got := SpiralTendency(m.Spiral, 0); got != test.want {
			t.Errorf("dihedral times %g: %v, root %g", test.factor, got, m.Spiral.Real)
		}
	}
	lateral.RollBeta = neutral
	if m := must(lateral.Motions(state)); math.Abs(m.Spiral.Real) > 1e-10 {
		t.Errorf("neutral dihedral: root %g", m.Spiral.Real)
	}
}

func TestTendencyInWords(t *testing.T) {
	t.Parallel()
	seen := map[string]bool{}
	for _, tendency := range []Tendency{SpiralReturns, SpiralNeutral, SpiralDiverges} {
		seen[tendency.String()] = true
	}
	if len(seen) != 3 {
		t.Errorf("%v", seen)
	}
}

func TestLateralRootsOfEveryPattern(t *testing.T) {
	t.Parallel()
	for name, test := range map[string]struct {
		roots   [order]Root
		dutch   float64
		roll    float64
		spiral  float64
		coupled bool
	}{
		"swing fastest":   {[order]Root{{-1, 5}, {-1, -5}, {-3, 0}, {0.1, 0}}, 5, -3, 0.1, false},
		"roll fastest":    {[order]Root{{-8, 0}, {-1, 3}, {-1, -3}, {-0.1, 0}}, 3, -8, -0.1, false},
		"spiral is fast":  {[order]Root{{-8, 0}, {4, 0}, {-1, 2}, {-1, -2}}, 2, -8, 4, false},
		"roll and spiral": {[order]Root{{-1, 5}, {-1, -5}, {-0.5, 0.3}, {-0.5, -0.3}}, 5, -0.5, -0.5, true},
		"no swing at all": {[order]Root{{-8, 0}, {5, 0}, {-4, 0}, {-0.1, 0}}, 0, -8, -0.1, false},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			m := partLateral(test.roots)
			if m.DutchRoll.Imaginary != test.dutch || m.Roll.Real != test.roll || m.Spiral.Real != test.spiral || m.Coupled != test.coupled {
				t.Errorf("%+v", m)
			}
		})
	}
}

func TestPitchRootsOfEveryPattern(t *testing.T) {
	t.Parallel()
	for name, test := range map[string]struct {
		roots       [order]Root
		short, slow float64 // imaginary parts
		real, other float64 // of the short period
		merged      bool
	}{
		"both swing":               {[order]Root{{-2, 3}, {-2, -3}, {-0.1, 0.2}, {-0.1, -0.2}}, 3, 0.2, -2, -2, false},
		"short period overdamped":  {[order]Root{{-9, 0}, {-2, 0}, {-0.1, 0.2}, {-0.1, -0.2}}, 0, 0.2, -2, -9, false},
		"phugoid overdamped":       {[order]Root{{-2, 3}, {-2, -3}, {-0.4, 0}, {-0.1, 0}}, 3, 0, -2, -2, false},
		"phugoid diverges":         {[order]Root{{-2, 3}, {-2, -3}, {-0.4, 0}, {0.1, 0}}, 3, 0, -2, -2, true},
		"short period diverges":    {[order]Root{{-9, 0}, {4, 0}, {-0.1, 0.2}, {-0.1, -0.2}}, 0, 0.2, 4, -9, true},
		"oscillation between":      {[order]Root{{-9, 0}, {-0.5, 0.6}, {-0.5, -0.6}, {0.1, 0}}, 0, 0.6, 0.1, -9, true},
		"four aperiodic, all calm": {[order]Root{{-9, 0}, {-2, 0}, {-0.5, 0}, {-0.1, 0}}, 0, 0, -2, -9, false},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			m := partPitch(test.roots)
			if m.ShortPeriod.Imaginary != test.short || m.Phugoid.Imaginary != test.slow || m.ShortPeriod.Real != test.real ||
				m.ShortPeriod.Other != test.other || m.Merged != test.merged {
				t.Errorf("%+v", m)
			}
		})
	}
}

func TestStatesThatCannotBe(t *testing.T) {
	t.Parallel()
	for field, spoil := range map[string]func(*State){
		"mass": func(s *State) { s.Mass = 0 }, "speed": func(s *State) { s.Speed = -1 }, "density": func(s *State) { s.Density = math.NaN() },
		"area": func(s *State) { s.Area = math.Inf(1) }, "gravity": func(s *State) { s.Gravity = 0 }, "lift": func(s *State) { s.Lift = math.NaN() },
		"drag": func(s *State) { s.Drag = math.Inf(-1) }, "pathAngle": func(s *State) { s.PathAngle = math.NaN() },
		"chord": func(s *State) { s.Chord = 0 }, "inertia.pitch": func(s *State) { s.Inertia.Pitch = 0 },
	} {
		state, pitch, _ := jet()
		spoil(&state)
		if _, err := pitch.Motions(state); !errors.Is(err, ErrInput) || !strings.Contains(err.Error(), "state."+field) {
			t.Errorf("%s: %v", field, err)
		}
	}
	for field, spoil := range map[string]func(*State){
		"span": func(s *State) { s.Span = 0 }, "inertia.roll": func(s *State) { s.Inertia.Roll = -1 }, "inertia.yaw": func(s *State) { s.Inertia.Yaw = 0 },
		"inertia.product": func(s *State) { s.Inertia.Product = math.NaN() }, "product squared": func(s *State) { s.Inertia.Product = 100 },
	} {
		state, _, lateral := jet()
		spoil(&state)
		if _, err := lateral.Motions(state); !errors.Is(err, ErrInput) || !strings.Contains(err.Error(), field) {
			t.Errorf("%s: %v", field, err)
		}
	}
}

func TestQuadraticModes(t *testing.T) {
	t.Parallel()
	for _, test := range []struct{ square, twice, real, other, imaginary float64 }{
		{4, 0, 0, 0, 2}, {0, 0, 0, 0, 0}, {2, 3, -1, -2, 0}, {-2, 1, 1, -2, 0}, {0, 3, 0, -3, 0}, {1e-12, 1e6, -1e-18, -1e6, 0}, {5, -2, 1, 1, 2},
	} {
		m := quadraticMode(test.square, test.twice)
		if !near(m.Real, test.real, 1e-12) || !near(m.Other, test.other, 1e-12) || !near(m.Imaginary, test.imaginary, 1e-12) {
			t.Errorf("%+v: %+v", test, m)
		}
		if m.Real != 0 && !near(m.Real, test.real, 1e-9) {
			t.Errorf("small root %g, want %g", m.Real, test.real)
		}
	}
}

func FuzzMotions(f *testing.F) {
	f.Add(12.0, 30.0, 0.65, 0.33, 4.6, -0.46, -9.0, 1.6)
	f.Add(1e-3, 1e3, 1e-6, 1e3, -50.0, 1e6, 1e9, 1e-9)
	f.Fuzz(func(t *testing.T, mass, speed, area, chord, slope, moment, damping, inertia float64) {
		state, pitch, lateral := jet()
		state.Mass, state.Speed, state.Area, state.Chord, state.Span = mass, speed, area, chord, 6*chord
		state.Inertia = Inertia{Roll: inertia, Pitch: inertia, Yaw: 2 * inertia, Product: 0.1 * inertia}
		pitch.LiftSlope, pitch.MomentSlope, pitch.PitchDamping = slope, moment, damping
		lateral.RollBeta, lateral.YawBeta, lateral.RollRollRate = moment, -moment, damping
		modes := []Mode{}
		if m, err := pitch.Motions(state); err == nil {
			modes = append(modes, m.ShortPeriod, m.Phugoid)
		}
		if m, err := lateral.Motions(state); err == nil {
			modes = append(modes, m.DutchRoll, m.Roll, m.Spiral)
		}
		for _, m := range modes {
			if math.IsNaN(m.Real+m.Imaginary+m.Other) || math.IsNaN(m.NaturalFrequency) || math.IsNaN(m.Damping) || math.IsNaN(m.Period+m.HalfTime+m.DoubleTime) {
				t.Errorf("%+v", m)
			}
		}
	})
}
