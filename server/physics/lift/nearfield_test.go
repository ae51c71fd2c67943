package lift

import (
	"math"
	"testing"

	"pitgate/server/physics/planform"
)

// nearFieldFactor returns K of CDi = K CL^2 from the wash at the bound legs instead of the one far behind.
//
// Formula: D/q = -2 sum g (w ly - v lz), both sides, by the Kutta-Joukowski theorem.
func nearFieldFactor(s *Solution) float64 {
	sum := 0.0
	for i := range s.lattice.panels {
		p := &s.lattice.panels[i]
		var wash velocity
		for j := range s.lattice.panels {
			source := &s.lattice.panels[j]
			own, twin := s.lattice.induced(source, p.boundBelow(&s.lattice.strips[p.strip]), s.lattice.coreBetween(p.strip, source.strip))
			wash.y += s.slopeStrength[j] * (own.y + twin.y)
			wash.z += s.slopeStrength[j] * (own.z + twin.z)
		}
		sum -= 4 * s.slopeStrength[i] * (wash.z*(p.b.y-p.a.y) - wash.y*(p.b.z-p.a.z))
	}
	return sum / s.Reference.Area / (s.LiftSlope * s.LiftSlope)
}

// boundBelow returns the place on the bound leg abreast of the control point, where the strips of sine spacing are most exact.
func (p *panel) boundBelow(strip *latticeStrip) point {
	share := math.Hypot(strip.middle.y-strip.a.y, strip.middle.z-strip.a.z) / strip.Width
	return point{blend(p.a.x, p.b.x, share), blend(p.a.y, p.b.y, share), blend(p.a.z, p.b.z, share)}
}

// Forces at the wing and the energy left in the wake are two ways to the same drag: on a fine mesh they agree within 1 % without sweep,
// with dihedral, winglet and ground too.
func TestNearFieldDragIsThatOfTheWake(t *testing.T) {
	t.Parallel()
	straight := tapered(7, 0.5, 0)
	raised := tapered(6, 0.6, 0)
	raised.Stations[1].Z = 0.5
	cases := map[string]struct {
		surfaces []planform.Surface
		height   float64
	}{
		"rectangle": {[]planform.Surface{tapered(6, 1, 0)}, 0}, "tapered": {[]planform.Surface{straight}, 0}, "dihedral": {[]planform.Surface{raised}, 0},
		"winglet": {[]planform.Surface{straight, wingletOf(straight, 0.6)}, 0}, "ground": {[]planform.Surface{straight}, 1},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			s, err := Solve(c.surfaces, Reference{GroundHeight: c.height, Grid: Grid{Chordwise: 6, Spanwise: 60}})
			if err != nil {
				t.Fatal(err)
			}
			near(t, "near field over wake", nearFieldFactor(s)/s.InducedFactor, 1, 0.01)
		})
	}
}

// Under sweep the wash at the kink of the middle converges slowly with the rows: the difference must shrink with them and lie within 5 %
// at 8 rows. This is why the drag is taken from the wake.
func TestNearFieldDragOfSweptWingsConverges(t *testing.T) {
	t.Parallel()
	for _, sweep := range []float64{10, 25} {
		last := 1.0
		for _, rows := range []int{2, 4, 8} {
			s := mustSolve(t, []planform.Surface{tapered(6, 0.6, sweep)}, Grid{Chordwise: rows, Spanwise: 40})
			short := math.Abs(nearFieldFactor(s)/s.InducedFactor - 1)
			if short >= 0.75*last {
				t.Errorf("sweep %v, %d rows: off by %v, want clearly less than %v", sweep, rows, short, last)
			}
			last = short
		}
		near(t, "off at 8 rows", last, 0, 0.05)
	}
}
