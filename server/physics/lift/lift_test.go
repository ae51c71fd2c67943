package lift

import (
	"math"
	"testing"

	"pitgate/server/physics/planform"
	"pitgate/server/physics/section"
)

func degrees(d float64) float64 { return d * math.Pi / 180 }

// tapered returns a wing of mean chord 1 with a straight quarter-chord line of the sweep given in degrees.
func tapered(aspect, taper, sweep float64) planform.Surface {
	root := 2 / (1 + taper)
	x := 0.25*root + aspect/2*math.Tan(degrees(sweep)) - 0.25*root*taper
	return planform.Surface{Name: "wing", Role: planform.RoleWing, Mirrored: true, Stations: []planform.Station{
		{Chord: root}, {X: x, Y: aspect / 2, Chord: root * taper},
	}}
}

// rectangle returns a surface of span b and chord c with its leading edge at x and height z.
func rectangle(role string, b, c, x, z float64) planform.Surface {
	return planform.Surface{Name: role, Role: role, Mirrored: true, Stations: []planform.Station{
		{X: x, Z: z, Chord: c}, {X: x, Y: b / 2, Z: z, Chord: c},
	}}
}

// wingAndTail is the wing with tail of the separate lattice.
func wingAndTail(height float64) []planform.Surface {
	return []planform.Surface{
		rectangle(planform.RoleWing, 2, 0.25, 0, 0), rectangle(planform.RoleTailplane, 0.6, 0.15, 0.725, height),
	}
}

func mustSolve(t testing.TB, surfaces []planform.Surface, grid Grid) *Solution {
	t.Helper()
	s, err := Solve(surfaces, Reference{Grid: grid})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %.8g, want %.8g within %g", what, got, want, tolerance)
	}
}

func TestLiftIsLinearAndBalanced(t *testing.T) {
	t.Parallel()
	wing := tapered(7, 0.5, 20)
	wing.Incidence = degrees(2)
	wing.Stations[1].Twist = degrees(-3)
	wing.Stations[0].Section.Designation, wing.Stations[1].Section.Designation = "2412", "2412"
	s := mustSolve(t, []planform.Surface{wing}, Grid{})
	near(t, "zero lift", s.Lift(s.ZeroLiftIncidence), 0, 1e-12)
	near(t, "linear", s.Lift(0.1)-s.Lift(0.05), s.Lift(0.05)-s.Lift(0), 1e-12)
	near(t, "inverse", s.Lift(s.IncidenceFor(0.7)), 0.7, 1e-12)
	near(t, "moment about the neutral point", s.MomentAt(s.NeutralPointX, 0.1), s.MomentAt(s.NeutralPointX, -0.1), 1e-12)
	near(t, "moment without lift", s.MomentAt(s.NeutralPointX, 0.1), s.ZeroLiftMoment, 1e-12)
	near(t, "moment shift", s.MomentAt(1, 0.1)-s.MomentAt(0, 0.1), s.Lift(0.1)/s.Reference.Chord, 1e-12)
	if s.ZeroLiftIncidence > degrees(-2) || s.ZeroLiftIncidence < degrees(-4) {
		t.Errorf("zero-lift incidence %v degrees, want about -2 of camber, -2 of incidence, and half the twist back", s.ZeroLiftIncidence/degrees(1))
	}
	if s.InducedDrag(0) <= 0 {
		t.Error("a twisted wing without lift must still have induced drag")
	}
}

func TestScaleLeavesCoefficients(t *testing.T) {
	t.Parallel()
	base := mustSolve(t, wingAndTail(0.1), Grid{})
	for _, k := range []float64{0.05, 3, 40} {
		surfaces := wingAndTail(0.1)
		for i := range surfaces {
			for j := range surfaces[i].Stations {
				st := &surfaces[i].Stations[j]
				st.X, st.Y, st.Z, st.Chord = k*st.X, k*st.Y, k*st.Z, k*st.Chord
			}
		}
		s := mustSolve(t, surfaces, Grid{})
		near(t, "lift slope", s.LiftSlope, base.LiftSlope, 1e-9)
		near(t, "neutral point", s.NeutralPointX, k*base.NeutralPointX, 1e-9*k)
		near(t, "efficiency", s.SpanEfficiency, base.SpanEfficiency, 1e-9)
	}
}

func TestPlaceOfTheDatumDoesNotMatter(t *testing.T) {
	t.Parallel()
	base := mustSolve(t, wingAndTail(0.1), Grid{})
	surfaces := wingAndTail(0.1)
	for i := range surfaces {
		for j := range surfaces[i].Stations {
			surfaces[i].Stations[j].X += 2.5
			surfaces[i].Stations[j].Z -= 0.7
		}
	}
	s := mustSolve(t, surfaces, Grid{})
	near(t, "lift slope", s.LiftSlope, base.LiftSlope, 1e-9)
	near(t, "neutral point", s.NeutralPointX, base.NeutralPointX+2.5, 1e-9)
	_, here := s.PitchRateAt(2.7)
	_, there := base.PitchRateAt(0.2)
	near(t, "pitch damping", here, there, 1e-8)
	if there >= 0 {
		t.Errorf("pitch damping %v, want negative", there)
	}
}

func TestLimitsOfTheAspectRatio(t *testing.T) {
	t.Parallel()
	last := 0.0
	for _, aspect := range []float64{0.3, 0.5, 1, 2, 4, 7, 12, 25} {
		s := mustSolve(t, []planform.Surface{tapered(aspect, 1, 0)}, Grid{})
		if s.LiftSlope <= last || s.LiftSlope >= EllipticSlope(2*math.Pi, aspect) {
			t.Errorf("aspect %v: slope %v, want rising and below the elliptic wing's %v", aspect, s.LiftSlope, EllipticSlope(2*math.Pi, aspect))
		}
		if s.SpanEfficiency > 1.0005 || s.SpanEfficiency < 0.8 {
			t.Errorf("aspect %v: span efficiency %v, want at most 1", aspect, s.SpanEfficiency)
		}
		last = s.LiftSlope
	}
	slender := mustSolve(t, []planform.Surface{tapered(0.1, 1, 0)}, Grid{Chordwise: 16})
	near(t, "slender wing", slender.LiftSlope, math.Pi*0.1/2, 0.004)
}

func TestEllipticWingReachesTheBestEfficiency(t *testing.T) {
	t.Parallel()
	wing := planform.Surface{Name: "wing", Role: planform.RoleWing, Mirrored: true}
	const n = 24
	for i := range n + 1 {
		y := math.Sin(math.Pi / 2 * float64(i) / n)
		c := max(0.02, math.Sqrt(max(0, 1-y*y)))
		wing.Stations = append(wing.Stations, planform.Station{X: -0.25 * c, Y: 4 * y, Chord: c})
	}
	s := mustSolve(t, []planform.Surface{wing}, Grid{})
	near(t, "efficiency", s.SpanEfficiency, 1, 0.004)
	near(t, "lift slope", s.LiftSlope, EllipticSlope(2*math.Pi, s.Reference.Span*s.Reference.Span/s.Reference.Area), 0.35)
}

func TestSweepForwardAndBackGiveAlikeLift(t *testing.T) {
	t.Parallel()
	back := mustSolve(t, []planform.Surface{tapered(6, 1, 25)}, Grid{})
	forward := mustSolve(t, []planform.Surface{tapered(6, 1, -25)}, Grid{})
	near(t, "lift slope", forward.LiftSlope, back.LiftSlope, 0.01*back.LiftSlope)
	tip := len(back.Strips) - 2
	if back.Strips[tip].LiftSlope/back.LiftSlope <= forward.Strips[tip].LiftSlope/forward.LiftSlope {
		t.Error("sweep back must load the tip more than sweep forward")
	}
}

func TestClosedFormBoundsTheLattice(t *testing.T) {
	t.Parallel()
	for _, sweep := range []float64{0, 15, 30, 45} {
		for _, aspect := range []float64{3, 5, 8, 12} {
			wing := tapered(aspect, 0.6, sweep)
			m, err := planform.Measure(wing)
			if err != nil {
				t.Fatal(err)
			}
			s := mustSolve(t, []planform.Surface{wing}, Grid{})
			near(t, "closed form over lattice", SweptSlope(2*math.Pi, aspect, m.HalfChordSweep)/s.LiftSlope, 1, 0.09)
		}
	}
}

func TestTailMovesTheNeutralPointAft(t *testing.T) {
	t.Parallel()
	last := mustSolve(t, wingAndTail(0)[:1], Grid{}).NeutralPointX
	for _, chord := range []float64{0.05, 0.1, 0.15, 0.2} {
		surfaces := []planform.Surface{wingAndTail(0)[0], rectangle(planform.RoleTailplane, 0.6, chord, 0.725, 0.05)}
		now := mustSolve(t, surfaces, Grid{}).NeutralPointX
		if now <= last {
			t.Errorf("tail chord %v: neutral point %v, want aft of %v", chord, now, last)
		}
		last = now
	}
	canard := []planform.Surface{wingAndTail(0)[0], rectangle(planform.RoleCanard, 0.6, 0.15, -0.7, 0)}
	if x := mustSolve(t, canard, Grid{}).NeutralPointX; x >= 0 {
		t.Errorf("canard: neutral point %v, want ahead of the wing", x)
	}
}

func TestControls(t *testing.T) {
	t.Parallel()
	surfaces := wingAndTail(0.1)
	surfaces[1].Controls = []planform.Control{{Name: "elevator", Role: planform.ControlElevator, Outer: 1, ChordRatio: 0.3}}
	surfaces[0].Controls = []planform.Control{
		{Name: "flap", Role: planform.ControlFlap, Outer: 0.5, ChordRatio: 0.25},
		{Name: "aileron", Role: planform.ControlAileron, Inner: 0.5, Outer: 0.95, ChordRatio: 0.25},
	}
	s := mustSolve(t, surfaces, Grid{})
	if len(s.Controls) != 3 {
		t.Fatalf("%d controls, want 3", len(s.Controls))
	}
	flap, elevator := s.Controls[0], s.Controls[2]
	if elevator.Name != "elevator" || elevator.LiftSlope <= 0 || elevator.MomentAt(0.1) >= -0.7 || elevator.MomentAt(0.1) <= -1.2 {
		t.Errorf("elevator %+v with moment %v, want lift up and a strong nose-down moment", elevator, elevator.MomentAt(0.1))
	}
	if flap.LiftSlope <= elevator.LiftSlope {
		t.Errorf("flap lift %v, want above the elevator's %v", flap.LiftSlope, elevator.LiftSlope)
	}
	near(t, "moment shift", elevator.MomentAt(0.2)-elevator.MomentAt(0.1), elevator.LiftSlope*0.1/0.25, 1e-12)
	surfaces[1].Controls[0].ChordRatio = 1
	surfaces[1].AllMoving = true
	whole := mustSolve(t, surfaces, Grid{}).Controls
	near(t, "a flap of the whole chord is the whole tail", whole[3].LiftSlope, section.FlapEfficiency*whole[2].LiftSlope, 1e-9)
	surfaces[1].Controls = nil
	turned := wingAndTail(0.1)
	turned[1].Incidence = 0.01
	near(t, "an all-moving tail is its incidence", mustSolve(t, turned, Grid{}).Lift(0), 0.01*whole[2].LiftSlope, 1e-9)
}

func TestBody(t *testing.T) {
	t.Parallel()
	s := mustSolve(t, wingAndTail(0.1), Grid{})
	body := []BodySection{{-0.6, 0}, {-0.4, 0.12}, {0.3, 0.12}, {0.9, 0.02}}
	slope := s.BodyMomentSlope(body, 0, 0.25, 0)
	if slope <= 0 || slope > 1 {
		t.Errorf("body moment slope %v, want destabilising and below 1", slope)
	}
	if np := s.NeutralPointWith(slope); np >= s.NeutralPointX {
		t.Errorf("neutral point with body %v, want ahead of %v", np, s.NeutralPointX)
	}
	longer := []BodySection{{-0.9, 0}, {-0.7, 0.12}, {0.3, 0.12}, {0.9, 0.02}}
	if s.BodyMomentSlope(longer, 0, 0.25, 0) <= slope {
		t.Error("a longer nose must be worse")
	}
	near(t, "no body", s.BodyMomentSlope(nil, 0, 0.25, 0), 0, 0)
	if ahead, behind := s.UpwashAt(-0.2, 0, 0), s.UpwashAt(0.8, 0, 0); ahead <= 0 || behind >= 0 || behind < -1 {
		t.Errorf("upwash ahead %v and behind %v", ahead, behind)
	}
	near(t, "sphere", ApparentMassFactor(1), 0, 0)
	near(t, "needle", ApparentMassFactor(1000), 1, 1e-4)
	near(t, "fineness 6", ApparentMassFactor(6), 0.87, 0.01)
	near(t, "Munk", MunkMomentSlope(2, 1000), 4, 1e-3)
}

func TestControlsCountFromThePlaneOfSymmetry(t *testing.T) {
	t.Parallel()
	wing := tapered(6, 1, 0)
	wing.Stations[0].Y = 1.2
	wing.Controls = []planform.Control{{Name: "flap", Inner: 0, Outer: 0.4, ChordRatio: 0.3}, {Name: "aileron", Inner: 0.4, Outer: 1, ChordRatio: 0.3}}
	s := mustSolve(t, []planform.Surface{wing}, Grid{})
	near(t, "flap ends where the panel begins", s.Controls[0].LiftSlope, 0, 1e-9)
	if s.Controls[1].LiftSlope <= 0 {
		t.Error("the aileron must lift")
	}
	near(t, "upright end", overlap(0.4, 1, 1, 1), 1, 0)
	near(t, "upright end outside", overlap(0.4, 0.9, 1, 1), 0, 0)
}

func TestTheTwoClosedFormsAgree(t *testing.T) {
	t.Parallel()
	for _, aspect := range []float64{0.8, 3, 7, 15} {
		for _, sweep := range []float64{-20, 0, 30, 50} {
			near(t, "slopes", CompressibleSlope(aspect, 0, degrees(sweep)), SweptSlope(2*math.Pi, aspect, degrees(sweep)), 1e-12)
		}
	}
}
