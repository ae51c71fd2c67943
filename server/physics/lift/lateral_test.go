package lift

import (
	"math"
	"testing"

	"pitgate/server/physics/planform"
)

func mustSolveLateral(t testing.TB, surfaces []planform.Surface, reference Reference) *Lateral {
	t.Helper()
	a, err := SolveLateral(surfaces, reference)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// list returns the nine derivatives in a row.
func (d LateralDerivatives) list() [9]float64 {
	return [9]float64{
		d.SideForceBeta, d.RollBeta, d.YawBeta, d.SideForceRollRate, d.RollRollRate, d.YawRollRate, d.SideForceYawRate, d.RollYawRate, d.YawYawRate,
	}
}

// finAt returns a fin of height 0.3 in the plane of symmetry with its root at x and height z.
func finAt(x, z float64) planform.Surface {
	return planform.Surface{
		Name: "fin", Role: planform.RoleFin,
		Stations: []planform.Station{{X: x, Z: z, Chord: 0.2}, {X: x + 0.08, Z: z + 0.3, Chord: 0.12}},
		Controls: []planform.Control{{Name: "rudder", Role: planform.ControlRudder, Outer: 1, ChordRatio: 0.35}},
	}
}

// glider is a wing with ailerons and dihedral, a tail and a fin.
func glider() []planform.Surface {
	surfaces := append(wingAndTail(0.1), finAt(0.7, 0.02))
	surfaces[0].Incidence = degrees(2)
	surfaces[0].Stations[1].Z = math.Tan(degrees(4))
	surfaces[0].Controls = []planform.Control{{Name: "aileron", Role: planform.ControlAileron, Inner: 0.5, Outer: 0.95, ChordRatio: 0.25}}
	return surfaces
}

func TestSignsOfAnOrdinaryModel(t *testing.T) {
	t.Parallel()
	a := mustSolveLateral(t, glider(), Reference{})
	d := a.At(0.08, 0, 0.6)
	for name, value := range map[string]float64{
		"side force by sideslip": -d.SideForceBeta, "roll by sideslip": -d.RollBeta, "yaw by sideslip": d.YawBeta, "damping in roll": -d.RollRollRate,
		"yaw by roll": -d.YawRollRate, "roll by yaw": d.RollYawRate, "damping in yaw": -d.YawYawRate, "side force by yaw": d.SideForceYawRate,
	} {
		if !(value > 0.001) {
			t.Errorf("%s has the wrong sign: %+v", name, d)
		}
	}
	controls := a.Controls(0.08, 0, 0.6)
	if len(controls) != 2 || controls[0].Role != planform.ControlAileron || controls[1].Role != planform.ControlRudder {
		t.Fatalf("controls %+v, want aileron and rudder", controls)
	}
	if aileron := controls[0]; aileron.Roll < 0.1 || aileron.Yaw >= 0 {
		t.Errorf("aileron %+v, want roll to the side whose trailing edge is up and adverse yaw", aileron)
	}
	if rudder := controls[1]; rudder.SideForce <= 0 || rudder.Yaw >= -0.01 || rudder.Roll <= 0 {
		t.Errorf("rudder to port %+v, want side force to starboard and the nose to port", rudder)
	}
	if p := a.ProfileYawDamping(0.02); p >= 0 {
		t.Errorf("profile drag damps yaw: %v", p)
	}
}

// The half lattice with images and the whole lattice of both sides are the same problem.
func TestHalfAndWholeLatticeAgree(t *testing.T) {
	t.Parallel()
	surfaces := glider()
	half := mustSolveLateral(t, surfaces, Reference{GroundHeight: 0.5, ReynoldsPerMeter: 1e6})
	// A speck far away on one side unfolds the lattice without doing anything.
	speck := rectangle(planform.RoleSecondWing, 0.002, 0.001, 60, 60)
	speck.Mirrored = false
	whole := mustSolveLateral(t, append(surfaces, speck), Reference{GroundHeight: 0.5, ReynoldsPerMeter: 1e6})
	for _, lift := range []float64{0, 0.7} {
		one, two := half.At(0.1, 0.05, lift).list(), whole.At(0.1, 0.05, lift).list()
		for i := range one {
			near(t, "derivative", two[i], one[i], 2e-6)
		}
		c, d := half.Controls(0.1, 0.05, lift), whole.Controls(0.1, 0.05, lift)
		for i := range c {
			near(t, c[i].Name+" roll", d[i].Roll, c[i].Roll, 2e-6)
			near(t, c[i].Name+" yaw", d[i].Yaw, c[i].Yaw, 2e-6)
			near(t, c[i].Name+" side force", d[i].SideForce, c[i].SideForce, 2e-6)
		}
	}
}

// A model with a fin on one wing and its mirror image: what sideways motion does to sideways forces is the same for both.
func TestAMirroredModelHasTheSameDerivatives(t *testing.T) {
	t.Parallel()
	starboard := append(wingAndTail(0.1), finAt(0.7, 0))
	port := append(wingAndTail(0.1), finAt(0.7, 0))
	for i := range starboard[2].Stations {
		starboard[2].Stations[i].Y, port[2].Stations[i].Y = 0.37, -0.37
	}
	one, two := mustSolveLateral(t, starboard, Reference{}), mustSolveLateral(t, port, Reference{})
	a, b := one.At(0.1, 0, 0.5).list(), two.At(0.1, 0, 0.5).list()
	for i := range a {
		near(t, "derivative", b[i], a[i], 1e-9)
	}
	near(t, "rudder", two.Controls(0.1, 0, 0.5)[0].SideForce, one.Controls(0.1, 0, 0.5)[0].SideForce, 1e-9)
	middle := mustSolveLateral(t, append(wingAndTail(0.1), finAt(0.7, 0)), Reference{}).At(0.1, 0, 0)
	near(t, "a fin aside pushes about as one in the middle", one.At(0.1, 0, 0).SideForceBeta/middle.SideForceBeta, 1, 0.15)
}

func TestASymmetricModelDoesNotFeelItsMirror(t *testing.T) {
	t.Parallel()
	d := mustSolveLateral(t, []planform.Surface{tapered(6, 0.7, 0)}, Reference{}).At(0.25, 0, 0)
	near(t, "a flat wing without lift feels no sideslip", math.Abs(d.RollBeta)+math.Abs(d.YawBeta)+math.Abs(d.SideForceBeta), 0, 1e-12)
	near(t, "nor yaw", math.Abs(d.RollYawRate)+math.Abs(d.YawYawRate)+math.Abs(d.SideForceYawRate), 0, 1e-12)
	near(t, "nor does roll turn or push it", math.Abs(d.YawRollRate)+math.Abs(d.SideForceRollRate), 0, 1e-12)
}

func TestLateralScaleAndDatum(t *testing.T) {
	t.Parallel()
	base := mustSolveLateral(t, glider(), Reference{}).At(0.1, 0.03, 0.6).list()
	moved := glider()
	for i := range moved {
		for j := range moved[i].Stations {
			moved[i].Stations[j].X += 1.7
			moved[i].Stations[j].Z += 0.4
		}
	}
	for i, v := range mustSolveLateral(t, moved, Reference{}).At(1.8, 0.43, 0.6).list() {
		near(t, "moved datum", v, base[i], 1e-9)
	}
	scaled := glider()
	for i := range scaled {
		for j := range scaled[i].Stations {
			s := &scaled[i].Stations[j]
			s.X, s.Y, s.Z, s.Chord = 7*s.X, 7*s.Y, 7*s.Z, 7*s.Chord
		}
	}
	for i, v := range mustSolveLateral(t, scaled, Reference{}).At(0.7, 0.21, 0.6).list() {
		near(t, "scaled", v, base[i], 1e-9)
	}
}

func TestLateralTrends(t *testing.T) {
	t.Parallel()
	roll := func(sweep, dihedral, lift float64) float64 {
		wing := tapered(6, 0.7, sweep)
		wing.Stations[1].Z = 3 * math.Tan(degrees(dihedral))
		return mustSolveLateral(t, []planform.Surface{wing}, Reference{}).At(1, 0, lift).RollBeta
	}
	if !(roll(0, 5, 0) < roll(0, 2, 0) && roll(0, 2, 0) < -0.01 && roll(0, -2, 0) > 0.01) {
		t.Error("dihedral must roll the model away from the sideslip in proportion")
	}
	if !(roll(30, 0, 0.8) < roll(15, 0, 0.8) && roll(15, 0, 0.8) < roll(0, 0, 0.8) && roll(30, 0, 0.8) < roll(30, 0, 0.4)) {
		t.Error("sweep under lift must roll the model away from the sideslip, more with more of either")
	}
	yaw := func(x float64) float64 { return mustSolveLateral(t, glider(), Reference{}).At(x, 0, 0.3).YawBeta }
	if !(yaw(0) > yaw(0.1) && yaw(0.1) > yaw(0.3)) {
		t.Error("a balance point further forward must stiffen the model in yaw")
	}
	low, high := mustSolveLateral(t, glider(), Reference{}).At(0.1, 0, 0.9), mustSolveLateral(t, glider(), Reference{}).At(0.1, 0.1, 0.9)
	near(t, "a higher axis takes the arm from the side force", low.RollBeta-high.RollBeta, 0.05*low.SideForceBeta, 1e-3)
}

func TestLateralErrors(t *testing.T) {
	t.Parallel()
	if _, err := SolveLateral(nil, Reference{}); err == nil {
		t.Error("nothing must be refused")
	}
	broken := glider()
	broken[2].Stations[1].Z = math.Inf(1)
	if _, err := SolveLateral(broken, Reference{}); err == nil {
		t.Error("a broken fin must be refused")
	}
}
