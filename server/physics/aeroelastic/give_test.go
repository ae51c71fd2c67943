package aeroelastic

import (
	"errors"
	"math"
	"testing"

	"pitgate/server/physics/structure"
)

func TestPublishedBentStruts(t *testing.T) {
	t.Parallel()
	checkPublished(t, "bent_struts", map[string]method{
		"shortening": func(in inputs) float64 {
			area, inertia := structure.RingArea(in["diameter"], 0), structure.RingInertia(in["diameter"], 0)
			return RodShortening(in["push"], in["length"], in["modulus"]*area, in["bow"], structure.EulerLoad(in["modulus"], inertia, in["length"], 1))
		},
		"growth": func(in inputs) float64 {
			return RodShortening(in["ratio"], 1, math.Inf(1), 1, 1) * 4 / (math.Pi * math.Pi)
		},
	})
}

// pushrod is a linkage with a steel rod.
func pushrod(t *testing.T, length, diameter float64) Linkage {
	t.Helper()
	wire, known := structure.FindMaterial("spring steel wire")
	if !known {
		t.Fatal("no spring steel in the table")
	}
	return Linkage{Torque: 2, Count: 1, ServoArm: 0.012, HornArm: 0.018, RodLength: length, RodDiameter: diameter, RodMaterial: wire}
}

// TestLongerAndThinnerRodsGiveWaySooner by both speeds.
func TestLongerAndThinnerRodsGiveWaySooner(t *testing.T) {
	t.Parallel()
	control := Control{MomentArea: 0.0012, ChordRatio: 0.25, Throw: 0.15}
	limits := func(length, diameter float64) RodLimits {
		r, err := pushrod(t, length, diameter).RodLimits(control, 0.1, 1.225)
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	base, long, thick := limits(0.12, 0.003), limits(0.24, 0.003), limits(0.12, 0.004)
	if !(long.Buckles < base.Buckles && long.Soft < base.Soft && thick.Buckles > base.Buckles && thick.Soft > base.Soft) {
		t.Errorf("base %+v, long %+v, thick %+v", base, long, thick)
	}
	if base.Least() != min(base.Buckles, base.Soft) {
		t.Errorf("least of %+v is %g", base, base.Least())
	}
}

// TestSoftSpeedMeetsItsGive wants the hinge moment at the soft speed to give the share of the throw.
func TestSoftSpeedMeetsItsGive(t *testing.T) {
	t.Parallel()
	const share, density = 0.1, 1.225
	control, l := Control{MomentArea: 0.0012, ChordRatio: 0.25, Throw: 0.15}, pushrod(t, 0.4, 0.002)
	limits, err := l.RodLimits(control, share, density)
	if err != nil {
		t.Fatal(err)
	}
	moment, err := control.HingeMoment(0.5*density*limits.Soft*limits.Soft, 0)
	if err != nil {
		t.Fatal(err)
	}
	give, err := l.Give(moment, control.Throw)
	if err != nil || math.Abs(give-share*control.Throw) > 1e-6 {
		t.Errorf("gives %g of %g: %v", give, share*control.Throw, err)
	}
	if give, err := l.Give(1e6, control.Throw); err != nil || !math.IsInf(give, 1) {
		t.Errorf("a buckled rod gives %g: %v", give, err)
	}
}

func TestRodErrorsNameTheField(t *testing.T) {
	t.Parallel()
	control := Control{MomentArea: 0.0012, ChordRatio: 0.25, Throw: 0.15}
	for name, l := range map[string]Linkage{"no length": pushrod(t, 0, 0.003), "no diameter": pushrod(t, 0.1, 0), "negative": pushrod(t, -1, 0.003)} {
		if _, err := l.RodLimits(control, 0.1, 1.225); !errors.Is(err, ErrInput) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if give, err := pushrod(t, 0, 0.003).Give(1, 0.1); give != 0 || err != nil {
		t.Errorf("without a rod: %g, %v", give, err)
	}
	if _, err := pushrod(t, 0.1, 0.003).RodLimits(control, 0, 1.225); !errors.Is(err, ErrInput) {
		t.Errorf("no share: %v", err)
	}
}
