package drag

import (
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/planform"
)

// Mounts of a pod.
const (
	MountFlush = "flush" // directly on wing or body
	MountNear  = "near"  // on a pylon shorter than its diameter
	MountFar   = "far"   // farther away
)

// Junction is the factor that the corner with its neighbours multiplies friction by.
type Junction struct {
	Factor float64
	Spread float64 // one standard deviation of the factor
	Source string
}

// Sources of the factors.
const (
	courseJunction = "published university course example"
	raymerJunction = "Raymer, chapter 12 (from memory)"
	ownJunction    = "judgement"
)

// Junctions of surfaces, bodies and pods.
//
// Source: wing and body 1.0 and tails 1.04 as in a published university course example; low wing without fillet 1.1 to 1.4 (middle), V-tail
// 1.03, tailplane between two fins 1.08, pods 1.5, 1.3 and 1.0 Raymer, chapter 12, from memory; winglet as a tail by judgement.
var (
	junctionWing     = Junction{1, 0.02, courseJunction}
	junctionLowWing  = Junction{1.25, 0.09, raymerJunction}
	junctionTail     = Junction{1.04, 0.01, courseJunction}
	junctionVTail    = Junction{1.03, 0.01, raymerJunction}
	junctionTwinFins = Junction{1.08, 0.02, raymerJunction}
	junctionWinglet  = Junction{1.04, 0.02, ownJunction}
	junctionBody     = Junction{1, 0.02, courseJunction}
	junctionPod      = map[string]Junction{
		MountFlush: {1.5, 0.1, raymerJunction}, MountNear: {1.3, 0.1, raymerJunction}, MountFar: {1, 0.03, raymerJunction},
	}
)

// lowWing is how far below the middle a wing must lie, over half the height of the body, to count as a low wing.
const lowWing = 0.5

// JunctionOf returns the junction of a surface among the others.
//
// Valid for: one wing through or on a body, tails of usual kind; a wing counts as low when its root lies more than half of the half height
// below the middle of the body there and no fillet is given.
// Source: with each factor.
func JunctionOf(s planform.Surface, a Aircraft) Junction {
	switch s.Role {
	case planform.RoleVTail:
		return junctionVTail
	case planform.RoleWinglet:
		return junctionWinglet
	case planform.RoleTailplane, planform.RoleFin:
		if twinFins(a.Surfaces) {
			return junctionTwinFins
		}
		return junctionTail
	case planform.RoleCanard:
		return junctionTail
	}
	if !a.Filleted && wingIsLow(s, a.Bodies) {
		return junctionLowWing
	}
	return junctionWing
}

// twinFins reports a tailplane together with a fin on each side.
func twinFins(surfaces []planform.Surface) bool {
	fins, tailplane := false, false
	for _, s := range surfaces {
		fins = fins || s.Role == planform.RoleFin && s.Mirrored
		tailplane = tailplane || s.Role == planform.RoleTailplane
	}
	return fins && tailplane
}

// wingIsLow reports whether the root of a wing meets a body on its lower part.
func wingIsLow(s planform.Surface, bodies []Body) bool {
	if len(s.Stations) == 0 {
		return false
	}
	root := s.Stations[0]
	for _, b := range bodies {
		section, ok := sectionAt(b, root.X+float64(0.25*root.Chord))
		if !ok || b.Mirrored || b.Pod {
			continue
		}
		return root.Z < section.Z-float64(lowWing*float64(0.5*section.Height))
	}
	return false
}

// sectionAt returns the cross section of a body at x, straight between its stations; false outside of it.
func sectionAt(b Body, x float64) (BodyStation, bool) {
	for i := 1; i < len(b.Stations); i++ {
		p, q := b.Stations[i-1], b.Stations[i]
		if x < p.X || x > q.X || !(q.X > p.X) {
			continue
		}
		f := (x - p.X) / (q.X - p.X)
		return BodyStation{
			X: x, Width: p.Width + float64(f*(q.Width-p.Width)), Height: p.Height + float64(f*(q.Height-p.Height)),
			Z: p.Z + float64(f*(q.Z-p.Z)),
		}, true
	}
	return BodyStation{}, false
}

// Upsweep returns by how much the axis of a body rises from its greatest cross section to its end, rad; 0 when it does not rise.
//
// Formula: atan((z_end - z_greatest)/(x_end - x_greatest)); a body whose greatest section is its end has none.
// Valid for: bodies whose stations run aft.
// Source: definition of the upsweep of a fuselage.
func Upsweep(b Body) float64 {
	if len(b.Stations) == 0 {
		return 0
	}
	greatest := 0
	for i, s := range b.Stations {
		if sectionArea(s, b.SquareSided) > sectionArea(b.Stations[greatest], b.SquareSided) {
			greatest = i
		}
	}
	from, to := b.Stations[greatest], b.Stations[len(b.Stations)-1]
	if !(to.X > from.X) || !(to.Z > from.Z) || math.IsInf(to.Z, 0) {
		return 0
	}
	return elementary.Atan2(to.Z-from.Z, to.X-from.X)
}
