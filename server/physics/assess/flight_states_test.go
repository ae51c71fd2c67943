package assess

import (
	"math"
	"testing"

	"pitgate/server/physics/loads"
)

// TestSurfacesTogetherCarryTheModel wants the loads of all surfaces in a held pull-up to be the weight times its load factor.
func TestSurfacesTogetherCarryTheModel(t *testing.T) {
	t.Parallel()
	in := demoDocument(t)
	whole, err := Prepare(in)
	if err != nil {
		t.Fatal(err)
	}
	p := newPass(&in, whole)
	p.walk()
	held := p.flightStates()[1]
	lift := 0.0
	for i := range whole.surfaces {
		if whole.surfaces[i].Vertical() {
			continue
		}
		var o outer
		p.loadSurface(&o, whole.surfaces[i].Name)
		lift += 2 * o.force.at(held)
	}
	want := held.load * p.mass.takeoff * loads.StandardGravity
	if !(held.load > 5) || math.Abs(lift-want) > 0.01*want {
		t.Errorf("surfaces carry %.1f N of %.1f N at %.1f", lift, want, held.load)
	}
}

// TestPitchControlPutAtOnceStaysWithinItsStops and goes farther up than the held pull-up asks for.
func TestPitchControlPutAtOnceStaysWithinItsStops(t *testing.T) {
	t.Parallel()
	in := demoDocument(t)
	whole, err := Prepare(in)
	if err != nil {
		t.Fatal(err)
	}
	p := newPass(&in, whole)
	p.walk()
	states := p.flightStates()
	for i := 0; i < 4; i += 2 {
		begun, held := states[i], states[i+1]
		low, high := min(p.pitch.throw.NoseUp, p.pitch.throw.NoseDown), max(p.pitch.throw.NoseUp, p.pitch.throw.NoseDown)
		if begun.control < low || begun.control > high {
			t.Errorf("%s: %g rad beyond %g to %g", begun.words, begun.control, low, high)
		}
		if p.pitch.throw.NoseUp*(begun.control-held.control) < 0 || begun.incidence >= held.incidence {
			t.Errorf("%s: %+v, held %+v", begun.words, begun, held)
		}
	}
}
