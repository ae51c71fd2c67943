package assess

import (
	"math"

	"pitgate/server/physics/field"
	"pitgate/server/physics/reach"
)

// comeDown is the place nearest to where a model without thrust comes down, so far.
type comeDown struct {
	guarded []site
	touches []float64 // of each of the guarded: no way with a turn touches down nearer to it, m
	least   float64   // m
	whose   int       // of the guarded
	area    int       // it is reached on; -1 where none is
	point   int       // where the engine stops
}

// footprint finds how near the ground on which the model comes down lies to people and keep-outs.
func (p *pass) footprint(m *reach.Map, points []reach.Point, looks []reach.Outlook) {
	below := &p.glide.below
	c := comeDown{guarded: p.guarded(), least: math.Inf(1), area: -1}
	if len(c.guarded) == 0 {
		below.none, below.note = true, "The field describes neither people nor keep-outs."
		return
	}
	c.touches = make([]float64, len(c.guarded))
	places := m.Touchdowns()
	for k := range c.guarded {
		c.touches[k] = c.guarded[k].nearestOf(places)
	}
	for i := range points {
		if !looks[i].Reached {
			c.straightOn(m, points[i], i)
		}
	}
	for i := range points {
		if looks[i].Reached && c.mayMatter(&looks[i]) {
			c.landed(m, points[i], i)
		}
	}
	below.value = c.least
	below.note = p.footprintNote(&c, points, looks)
}

// nearestOf returns the least distance of some places from the site, m, negative within it as clear says it.
func (o *site) nearestOf(places []field.Point) float64 {
	least := math.Inf(1)
	for _, at := range places {
		least = min(least, o.clear(field.Segment{A: at, B: at}))
	}
	return least
}

// take takes a distance where it is the least so far.
func (c *comeDown) take(distance float64, whose, area, point int) {
	if distance < c.least {
		c.least, c.whose, c.area, c.point = distance, whose, area, point
	}
}

// straightOn holds the ground of a point without an area in reach.
func (c *comeDown) straightOn(m *reach.Map, point reach.Point, i int) {
	ground := straightOn(m, point)
	for k := range c.guarded {
		c.take(c.guarded[k].from(ground), k, -1, i)
	}
}

// from is apart in less time for ground that does not meet the site.
func (o *site) from(ground field.Polygon) float64 {
	if distance := o.between(ground); distance > 0 {
		return distance
	}
	return o.apart(ground)
}

// between returns the least distance between the site and some ground, m: zero where they meet.
func (o *site) between(ground field.Polygon) float64 {
	if len(o.area) == 0 {
		return ground.PathDistance(o.line)
	}
	distance, _ := ground.Separation(o.area)
	return distance
}

// mayMatter reports whether a way to an area can touch down nearer than the least so far.
func (c *comeDown) mayMatter(look *reach.Outlook) bool {
	for k := range c.guarded {
		if c.touches[k] < c.least || look.Straight && c.guarded[k].clear(field.Segment{A: look.At, B: look.At}) < c.least {
			return true
		}
	}
	return false
}

// landed holds the place at which the way that needs least height touches down.
func (c *comeDown) landed(m *reach.Map, point reach.Point, i int) {
	result := m.From(point)
	at, found := m.Touchdown(point, result)
	if !found {
		at = point.At
	}
	for k := range c.guarded {
		c.take(c.guarded[k].clear(field.Segment{A: at, B: at}), k, result.Area, i)
	}
}

// where says where the model comes down.
func (p *pass) where(c *comeDown, points []reach.Point, looks []reach.Outlook) string {
	if c.area >= 0 {
		return "on " + p.glide.names[c.area]
	}
	stretch := reach.Stretch{First: c.point, Last: c.point}
	for stretch.First > 0 && !looks[stretch.First-1].Reached {
		stretch.First--
	}
	for stretch.Last < len(looks)-1 && !looks[stretch.Last+1].Reached {
		stretch.Last++
	}
	return stretchWords(points, stretch)
}

func (p *pass) footprintNote(c *comeDown, points []reach.Point, looks []reach.Outlook) string {
	if !p.base() {
		return ""
	}
	least, whose, where := c.least, c.guarded[c.whose].name, p.where(c, points, looks)
	if least < 0 {
		return say("%s lies inside, by %.0f m at the deepest, where the model may come down %s.", whose, -least, where)
	}
	return say("Nearest is %s, %.0f m from where the model may come down %s.", whose, least, where)
}

// noseHeld is how many of the fan's directions to each side of the nose a pilot without a landing area in reach may hold: 5 degrees.
const noseHeld = 1

// straightOn returns the ground from below a point to where a glide straight on ends, the nose held within 5 degrees, drift not corrected.
func straightOn(m *reach.Map, point reach.Point) field.Polygon {
	nose := int(math.Round(point.Heading / (2 * math.Pi / reach.Headings)))
	area := make(field.Polygon, 1+2*noseHeld+1)
	area[0] = point.At
	m.Rays(point, nose-noseHeld, area[1:])
	return area
}

// stretchWords says from where nothing is reached.
func stretchWords(points []reach.Point, s reach.Stretch) string {
	low, high := math.Inf(1), 0.0
	for i := s.First; i <= s.Last; i++ {
		low, high = min(low, points[i].Height), max(high, points[i].Height)
	}
	return sayNumbers("from heights of %.0f to %.0f m about x %.0f m, y %.0f m, where no landing area is in reach", low, high, points[s.First].At.X, points[s.First].At.Y)
}
