package lift

import (
	"math"

	"pitgate/server/physics/elementary"
)

// reception is a control point or one of its images, at the other side and below the ground, as it feels the wakes of the strips themselves:
// where it lies, the ends of its strip beside it, and with which parts it takes the velocity there. The wakes do not move as mirror images,
// as the loading is one: to port and starboard they move the same way aside, opposite ways up.
type reception struct {
	control, a, b    point
	normalY, normalZ float64
	perWidth         float64 // 1/width of the strip, 1/m, against it below the ground
	bare             bool    // feels no core
}

// receptions appends the control point of a panel with its image below the ground, then the same at the other side.
func (l *lattice) receptions(p *panel, list []reception) []reception {
	strip := &l.strips[p.strip]
	at := reception{control: p.control, a: strip.a, b: strip.b, normalY: p.normalY, normalZ: p.normalZ, perWidth: 1 / strip.Width}
	at.a.x, at.b.x = p.control.x, p.control.x
	list = append(list, at)
	if l.ground > 0 {
		list = append(list, at.below(l.ground))
	}
	for _, r := range list {
		list = append(list, r.mirrored())
	}
	return list
}

// below returns the image below the ground.
func (r reception) below(height float64) reception {
	for _, p := range []*point{&r.control, &r.a, &r.b} {
		p.z = -float64(2*height) - p.z
	}
	r.normalZ, r.perWidth, r.bare = -r.normalZ, -r.perWidth, true
	return r
}

// mirrored returns the image at the other side of the plane of symmetry.
func (r reception) mirrored() reception {
	r.control, r.a, r.b, r.normalZ = r.control.mirrored(), r.a.mirrored(), r.b.mirrored(), -r.normalZ
	return r
}

// skewed returns the entry of skewMatrix of a strip's wake for one control point with its images.
func (s *latticeStrip) skewed(seen []reception, core float64, joined bool) wakeMotion {
	a, b := s.a, s.b
	a.x += s.chordA
	b.x += s.chordB
	var sum wakeMotion
	for i := range seen {
		r, felt := &seen[i], core
		if r.bare {
			felt = 0
		}
		in, inAhead := r.turned(a, felt, joined)
		out, outAhead := r.turned(b, felt, joined)
		sum = sum.plus(1, out).plus(-1, in)
		sum.bent += float64(float64(0.5*r.normalZ) * elementary.Log(outAhead/inAhead))
		if !joined {
			sum = sum.plus(r.perWidth, passing(a, b, r.b, felt)).plus(-r.perWidth, passing(a, b, r.a, felt))
		}
	}
	return wakeMotion{}.plus(inverseFourPi, sum)
}

// turned returns the change of the normal velocity, times 4 pi, by a leg from a place along x as it turns or bends; between surfaces that are
// not joined without the part by the shift of the whole leg past the control point. The logarithm of ahead, |r| - x, is left to skewed: only
// the difference between two legs has a meaning.
//
// Formula: aside y t k + nz x f, raised -z t k + ny x f, bent y t m + nz (x^2 f + 1 + x/|r| + ln(|r| - x))/2; where t = ny z - nz y, k = 1/|r|^3 +
// x g, m = (1 + x^3/|r|^3)/(2 s) + x/|r|^3 + x^2 g/2, f = (1 + x/|r|)/s, g = (2 f + x/|r|^3)/s, s = y^2 + z^2. The parts with f and g are the
// shift: x, x and x^2/2 times the change of the velocity f (0, -z, y) with y and -z. With a core its square is added to s in m and |r| - x,
// and 1/|r|^3 has legFactor's share.
// Valid for: any place; nothing on the leg; no core between joined surfaces.
// Source: Biot-Savart law for legs displaced by e and e^2/2, e distance from the start, first order, integrated.
func (r *reception) turned(from point, core float64, joined bool) (change wakeMotion, ahead float64) {
	x, y, z := r.control.x-from.x, r.control.y-from.y, r.control.z-from.z
	square := float64(y*y) + float64(z*z)
	distance := math.Sqrt(float64(x*x) + square)
	if !(square > float64(1e-12*float64(distance*distance))) {
		return wakeMotion{}, 1
	}
	sum := square + max(0, core-float64(z*z))
	cosine, cube := x/distance, 1/float64(distance*float64(distance*distance))
	ahead = distance - x
	if x > 0 {
		ahead = sum / (distance + x)
	}
	turn := float64(float64(square*(float64(3*sum)-float64(2*square))) / float64(sum*sum) * cube)
	bend := (1+float64(cosine*float64(cosine*cosine)))/float64(2*sum) + float64(x*cube)
	factor := 0.0
	if joined {
		factor = 1 / float64(distance*ahead)
		slope := float64(x*(float64(2*factor)+float64(x*cube))) / square
		turn += slope
		bend += float64(0.5 * float64(x*slope))
	}
	cross, shift := float64(r.normalY*z)-float64(r.normalZ*y), float64(x*factor)
	return wakeMotion{
		aside:  float64(float64(y*cross)*turn) + float64(r.normalZ*shift),
		raised: float64(r.normalY*shift) - float64(float64(z*cross)*turn),
		bent:   float64(float64(y*cross)*bend) + float64(float64(0.5*r.normalZ)*(float64(x*shift)+1+cosine)),
	}, ahead
}

// passing returns how far the wake of a strip, by the starts of its legs, has moved at a place, times the part of its velocity there of which
// the difference between the ends of the receiving strip over its width is the mean change of the normal velocity, all times 4 pi. A wake
// close to a control point changes the velocity there by any amount whatever, but over the strip by no more than its ends feel.
//
// Formula: x w aside, x v raised, x^2/2 w bent; where v, w velocities to starboard and up. Across the stream the velocity of a wake has neither
// source nor, but for what turned holds, rotation: its normal part changes with y and z as w and v do along the strip.
// Valid for: legs along x.
// Source: mean of a derivative; continuity.
func passing(a, b, place point, core float64) wakeMotion {
	return passingLeg(b, place, core).plus(-1, passingLeg(a, place, core))
}

// passingLeg returns passing of one leg.
func passingLeg(from, place point, core float64) wakeMotion {
	x, y, z := place.x-from.x, place.y-from.y, place.z-from.z
	square := float64(y*y) + float64(z*z)
	shift := float64(x * legFactor(x, square, math.Sqrt(float64(x*x)+square), core-float64(z*z)))
	return wakeMotion{aside: float64(shift * y), raised: -float64(shift * z), bent: float64(float64(0.5*float64(x*shift)) * y)}
}
