package assess

import (
	"math"

	"pitgate/server/physics/field"
	"pitgate/server/physics/footprint"
)

// reachWords says how people stand to the outline, give or take what chance does.
func reachWords(name string, distance, chance float64) string {
	if distance < 0 {
		return say("their outline reaches %.0f m over %s, give or take %.0f m.", -distance, name, chance)
	}
	return say("the nearest people, %s, are %.0f m outside their outline, give or take %.0f m.", name, distance, chance)
}

// nearestTo finds the people nearest to an outline or deepest in it, and their distance, m.
func nearestTo(outline field.Polygon, people []site) (nearest *site, distance float64) {
	distance = math.Inf(1)
	for i := range people {
		if apart := people[i].apart(outline); nearest == nil || apart < distance {
			nearest, distance = &people[i], apart
		}
	}
	return nearest, distance
}

// apart returns the distance of a site from an outline, m; negative by how deep the site reaches into it.
//
// The depth is the greatest signed distance on the site's line, which is concave along a straight piece of a convex outline: thirds are cut off
// until a decimetre is left. It changes by no more than the way, which leaves out pieces whose ends are too far. Valid for: convex outlines. Source: plane geometry.
func (o *site) apart(outline field.Polygon) float64 {
	path := o.line
	if len(o.area) > 0 {
		path = append(field.Line(o.area), o.area[0])
	}
	deepest, before := 0.0, 0.0
	for i := range path {
		here := outline.SignedDistance(path[i])
		deepest = max(deepest, here)
		if i > 0 {
			piece := field.Segment{A: path[i-1], B: path[i]}
			if most := 0.5 * (before + here + piece.Length()); most > deepest {
				deepest = max(deepest, deepestOn(outline, piece))
			}
		}
		before = here
	}
	if deepest > 0 {
		return -deepest
	}
	if len(o.area) > 0 {
		apart, _ := outline.Separation(o.area)
		return apart
	}
	return outline.PathDistance(path)
}

// deepestOn returns the greatest signed distance to an outline on a straight piece, m.
func deepestOn(outline field.Polygon, s field.Segment) float64 {
	low, high := 0.0, 1.0
	for float64((high-low)*s.Length()) > 0.1 {
		third := (high - low) / 3
		if outline.SignedDistance(s.At(low+third)) < outline.SignedDistance(s.At(high-third)) {
			low += third
		} else {
			high -= third
		}
	}
	return outline.SignedDistance(s.At((low + high) / 2))
}

// tellShares tells the share of the losses that meet each place the outline reaches, and says so.
func (p *pass) tellShares(cloud footprint.Cloud, outline field.Polygon, sites []site) string {
	words := ""
	for i := range sites {
		o := &sites[i]
		hit, err := o.hit(cloud)
		if err != nil || hit.Share == 0 && o.apart(outline) > 0 {
			continue
		}
		id := numbered("link_loss.share.", i+1)
		p.tell(id, hit.Share, o.path)
		p.tellText(id+".name", o.name, o.path)
		words += say(" %.1f %% of them meet %s.", 100*hit.Share, o.name)
	}
	return words
}

// hit returns how many losses meet the site.
func (o *site) hit(cloud footprint.Cloud) (footprint.Hit, error) {
	if len(o.area) > 0 {
		return cloud.AreaHit(o.area, footprint.AnnexF())
	}
	return cloud.LineHit(o.line, roadHalfWidth, footprint.AnnexF())
}
