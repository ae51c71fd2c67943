package assess

import (
	"math"
	"strings"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/heat"
	"pitgate/server/physics/planform"
)

// How finely surfaces and bodies are looked at for what lies in the plume.
const (
	spanSteps, chordSteps, bodySteps = 12, 8, 24
)

// jetAxis is the axis of a jet: it leaves a nozzle and runs aft.
type jetAxis struct {
	x, y, z float64 // of the nozzle or the end of its pipe, m
	fall    float64 // height lost for each metre aft: a thrust line that pushes up throws the jet down
}

// from returns how far a point lies behind the nozzle and off the axis, m.
func (a jetAxis) from(x, y, z float64) (behind, off float64) {
	behind = x - a.x
	return behind, root(y-a.y, z-(a.z-float64(a.fall*behind)))
}

// needNozzle wants the place of every nozzle.
func (p *pass) needNozzle(n *need) {
	for _, i := range p.turbines() {
		e, name := &p.in.Model.Engines[i], at("model.engines", i)
		n.number(name+".xMeters", e.XMeters)
		n.number(name+".zMeters", e.ZMeters)
		if yes(e.Tailpipe) {
			n.number(name+".tailpipeLengthMeters", e.TailpipeLengthMeters)
		}
	}
}

// jets returns the axes of all jets.
func (p *pass) jets() []jetAxis {
	var axes []jetAxis
	for _, i := range p.turbines() {
		e := &p.in.Model.Engines[i]
		axis := jetAxis{x: orElse(e.XMeters, 0), y: orElse(e.YMeters, 0), z: orElse(e.ZMeters, 0)}
		slope := radians(valueOr(e.ThrustLineDegrees, 0))
		axis.fall = elementary.Sin(slope) / max(0.1, elementary.Cos(slope))
		if yes(e.Tailpipe) {
			length := orElse(e.TailpipeLengthMeters, 0)
			axis.x, axis.z = axis.x+length, axis.z-float64(axis.fall*length)
		}
		axes = append(axes, axis)
	}
	return axes
}

// found returns the surfaces and bodies in the plume that nobody declared as parts behind the nozzle: each where it is hottest. The base pass
// looks for them; they do not move.
func (p *pass) found(declared []nearPart) []nearPart {
	if !p.base() {
		return p.drawing.found
	}
	plume, err := heat.NewPlume(p.feed.hot.run.Exhaust, p.feed.hot.run.Air, heat.Conservative)
	if err != nil {
		return nil
	}
	axes := p.jets()
	var found []nearPart
	for i := range p.whole.surfaces {
		s := &p.whole.surfaces[i]
		found = p.keepFound(found, declared, s.Name, surfaceInPlume(s, axes, &plume))
	}
	for i := range p.in.Model.Bodies {
		b := &p.in.Model.Bodies[i]
		found = p.keepFound(found, declared, b.Name, bodyInPlume(b, axes, &plume))
	}
	p.drawing.found = found
	return found
}

// keepFound adds a part that is hot and not declared.
func (p *pass) keepFound(found, declared []nearPart, name string, spot hotSpot) []nearPart {
	if spot.temperature < heat.Unknown.Service || isDeclared(declared, name) {
		return found
	}
	return append(found, nearPart{part: heat.Part{Name: name, Behind: spot.behind, From: spot.off}})
}

// isDeclared reports whether a part behind the nozzle is named after a surface or body.
func isDeclared(declared []nearPart, name string) bool {
	want := strings.ToLower(name)
	for i := range declared {
		part := &declared[i].part
		if (part.Behind > 0 || part.Measured > 0) && want != "" && strings.Contains(strings.ToLower(part.Name), want) {
			return true
		}
	}
	return false
}

// hotSpot is the hottest place of a surface.
type hotSpot struct{ behind, off, temperature float64 }

// see keeps a place where it is hotter.
func (h *hotSpot) see(behind, off float64, plume *heat.Plume) {
	if !(behind > 0) {
		return
	}
	if t := plume.Temperature(behind, off); t > h.temperature {
		*h = hotSpot{behind, off, t}
	}
}

// surfaceInPlume looks over a surface, on both sides where it is mirrored.
func surfaceInPlume(s *planform.Surface, axes []jetAxis, plume *heat.Plume) hotSpot {
	spot := hotSpot{}
	for k := 1; k < len(s.Stations); k++ {
		a, b := &s.Stations[k-1], &s.Stations[k]
		for i := range spanSteps + 1 {
			share := float64(i) / spanSteps
			between := func(from, to float64) float64 { return from + float64(share*(to-from)) }
			x, y, z, chord := between(a.X, b.X), between(a.Y, b.Y), between(a.Z, b.Z), between(a.Chord, b.Chord)
			for c := range chordSteps + 1 {
				spot.seeBoth(x+float64(chord*float64(c)/chordSteps), y, z, s.Mirrored, axes, plume)
			}
		}
	}
	return spot
}

// seeBoth looks at a point and at its mirror image.
func (h *hotSpot) seeBoth(x, y, z float64, mirrored bool, axes []jetAxis, plume *heat.Plume) {
	for _, axis := range axes {
		behind, off := axis.from(x, y, z)
		h.see(behind, off, plume)
		if mirrored && y != 0 {
			behind, off = axis.from(x, -y, z)
			h.see(behind, off, plume)
		}
	}
}

// bodyInPlume looks along a body; where its skin goes round the axis, how far it stands off counts.
func bodyInPlume(b *Body, axes []jetAxis, plume *heat.Plume) hotSpot {
	spot := hotSpot{}
	y, mirrored := orElse(b.YMeters, 0), yes(b.Mirrored)
	for k := 1; k < len(b.Stations); k++ {
		from, to := &b.Stations[k-1], &b.Stations[k]
		if from.XMeters == nil || to.XMeters == nil {
			continue
		}
		for i := range bodySteps + 1 {
			share := float64(i) / bodySteps
			between := func(a, b *float64) float64 { return orElse(a, 0) + float64(share*(orElse(b, 0)-orElse(a, 0))) }
			radius := float64(min(between(from.WidthMeters, to.WidthMeters), between(from.HeightMeters, to.HeightMeters)) / 2)
			spot.seeRing(between(from.XMeters, to.XMeters), y, between(from.CenterZMeters, to.CenterZMeters), radius, axes, plume)
			if mirrored && y != 0 {
				spot.seeRing(between(from.XMeters, to.XMeters), -y, between(from.CenterZMeters, to.CenterZMeters), radius, axes, plume)
			}
		}
	}
	return spot
}

// seeRing looks at the skin of one cross section.
func (h *hotSpot) seeRing(x, y, z, radius float64, axes []jetAxis, plume *heat.Plume) {
	for _, axis := range axes {
		behind, off := axis.from(x, y, z)
		h.see(behind, math.Abs(off-radius), plume)
	}
}
