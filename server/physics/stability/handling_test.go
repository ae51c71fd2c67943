package stability

import (
	"math"
	"testing"
)

func TestLevels(t *testing.T) {
	t.Parallel()
	for _, test := range []struct {
		quantity CriterionQuantity
		phase    FlightPhase
		value    float64
		want     int
	}{
		{ShortPeriodDamping, PhaseB, 0.7, 1}, {ShortPeriodDamping, PhaseB, 0.25, 2}, {ShortPeriodDamping, PhaseB, 0.17, 3}, {ShortPeriodDamping, PhaseB, 0.1, 4},
		{ShortPeriodDamping, PhaseA, 1.5, 2}, {ShortPeriodDamping, PhaseA, 2.5, 3}, {ShortPeriodDamping, PhaseA, math.NaN(), 4},
		{RollTime, PhaseA, 0.3, 1}, {RollTime, PhaseA, 1.2, 2}, {RollTime, PhaseA, 5, 4}, {RollTime, PhaseB, 5, 3},
		{SpiralDouble, PhaseB, 25, 1}, {SpiralDouble, PhaseB, 15, 2}, {SpiralDouble, PhaseB, 5, 3}, {SpiralDouble, PhaseB, 1, 4},
		{PhugoidDamping, PhaseB, 0.05, 1}, {PhugoidDamping, PhaseB, 0.01, 2}, {PhugoidDamping, PhaseB, -0.01, 4},
		{DutchRollDamping, PhaseA, 0.1, 2}, {AnticipationRatio, PhaseC, 0.5, 1}, {"something else", PhaseA, 1, 4}, {RollTime, "D", 0.1, 4},
	} {
		if got := LevelOf(test.quantity, test.phase, test.value); got != test.want {
			t.Errorf("%s, phase %s, %g: level %d, want %d", test.quantity, test.phase, test.value, got, test.want)
		}
	}
}

// A better level never allows what a worse one forbids, and no limit stands twice.
func TestLevelsAreNested(t *testing.T) {
	t.Parallel()
	type key struct {
		quantity CriterionQuantity
		phase    FlightPhase
		level    int
	}
	seen := map[key]bool{}
	for _, c := range criteria {
		k := key{c.Quantity, c.Phase, c.Level}
		if seen[k] || c.Level < 1 || c.Level > 3 || (c.High != 0 && c.High <= c.Low) {
			t.Errorf("%+v", c)
		}
		seen[k] = true
		worse, found := CriterionFor(c.Quantity, c.Phase, c.Level+1)
		if !found {
			continue
		}
		if worse.Low > c.Low || (worse.High != 0 && (c.High == 0 || worse.High < c.High)) {
			t.Errorf("%+v is stricter than %+v", worse, c)
		}
	}
}

func TestFroudeTime(t *testing.T) {
	t.Parallel()
	for _, bad := range [][2]float64{{0, 1}, {1, 0}, {-1, 1}, {1, -1}, {math.NaN(), 1}, {math.Inf(1), 1}, {0, 0}} {
		if got := FroudeTime(bad[0], bad[1]); got != 1 {
			t.Errorf("%v: %g", bad, got)
		}
	}
	if got := FroudeTime(2, 8) * FroudeTime(8, 2); !near(got, 1, 1e-15) {
		t.Errorf("there and back: %g", got)
	}
}

// Frequency squared over load factor per radian is margin, size and inertia alone: twice the speed does not change it, twice the margin nearly doubles it.
func TestAnticipation(t *testing.T) {
	t.Parallel()
	state, pitch, _ := jet()
	at := func() float64 {
		f := must(pitch.Dimensional(state))
		return Anticipation(Mode{NaturalFrequency: math.Sqrt(-state.Speed * f.MW)}, pitch.LiftSlope, state)
	}
	base := at()
	if want := -pitch.MomentSlope / pitch.LiftSlope * state.Mass * state.Gravity * state.Chord / state.Inertia.Pitch; !near(base, want, 1e-12) {
		t.Errorf("%g, want %g", base, want)
	}
	state.Speed *= 2
	if got := at(); !near(got, base, 1e-12) {
		t.Errorf("twice the speed: %g, before %g", got, base)
	}
	if got := Anticipation(Mode{NaturalFrequency: 3}, -1, state); got != 0 {
		t.Errorf("no lift slope: %g", got)
	}
}
