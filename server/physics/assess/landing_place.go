package assess

import (
	"pitgate/server/physics/elementary"
	"pitgate/server/physics/field"
)

// landingPlace is where and which way the model lands.
type landingPlace struct {
	missing     []string
	name        string // of the strip or area
	path        string // of it in the document
	threshold   field.Point
	ground      float64 // height of the threshold over the datum, m
	heading     float64 // rad
	length      float64 // m
	slope       float64 // along the landing, rad, uphill positive
	surface     Surface
	surfacePath string
}

// placeLanding finds the place once; passes that move the wind keep the direction chosen.
func (p *pass) placeLanding() landingPlace {
	if !p.base() {
		return p.drawing.place
	}
	n := p.need()
	var place landingPlace
	if p.in.Field == nil {
		n.lack("field")
	} else {
		place = p.findPlace(&n)
	}
	place.missing = n.missing
	p.drawing.place = place
	return place
}

// findPlace looks for the place named: a strip, then an area; without a name the launch's strip, the only strip, or the only area.
func (p *pass) findPlace(n *need) landingPlace {
	plan := p.launchPlan()
	name := plan.LandingPlace
	if name == "" {
		name = plan.Strip
	}
	if i, found := p.strip(name); found {
		return p.onStrip(&p.in.Field.Strips[i], at("field.strips", i), n)
	}
	areas := p.in.Field.LandingAreas
	for i := range areas {
		if areas[i].Name == name || name == "" && len(areas) == 1 {
			return p.onArea(&areas[i], at("field.landingAreas", i), n)
		}
	}
	n.lack("launchPlan.landingPlace")
	return landingPlace{}
}

// onStrip lands on a strip in the direction nearest to that planned, else in that of the better head wind.
func (p *pass) onStrip(strip *Strip, path string, n *need) landingPlace {
	if strip.Start == nil || strip.End == nil {
		n.lack(path + ".start")
		return landingPlace{}
	}
	from, to := strip.Start, strip.End
	if !p.favours(flat(from).Heading(flat(to))) {
		from, to = to, from
	}
	place := landingPlace{
		name: strip.Name, path: path, threshold: flat(from), ground: orElse(from.ZMeters, 0), heading: flat(from).Heading(flat(to)),
		length: flat(from).Distance(flat(to)), surface: strip.Surface, surfacePath: path + ".surface",
	}
	if place.length > 0 {
		place.slope = elementary.Atan2(orElse(to.ZMeters, 0)-place.ground, place.length)
	}
	return place
}

// favours reports whether to land on a heading (rad) rather than on its reverse.
func (p *pass) favours(heading float64) bool {
	if landing := p.launchPlan().Landing; landing != nil && landing.HeadingDegrees != nil {
		p.note("launchPlan.landing.headingDegrees")
		return field.Ahead(heading).Dot(field.Ahead(radians(*landing.HeadingDegrees))) >= 0
	}
	head, _ := p.windAlong(heading)
	return head >= 0
}

// onArea lands along the longest free run of an area, or along the longest in the direction planned.
func (p *pass) onArea(area *NamedArea, path string, n *need) landingPlace {
	corners := normalOutline(area.Area)
	ground := field.Ground{Area: corners}
	ground.Blocked, ground.Posts = p.standing(corners)
	run, err := p.freeRun(ground)
	if err != nil || !(run.Length > 0) {
		n.lack(path + ".area")
		return landingPlace{}
	}
	from, to := run.Middle.A, run.Middle.B
	if !p.favours(from.Heading(to)) {
		from, to = to, from
	}
	return landingPlace{
		name: area.Name, path: path, threshold: from, ground: areaGround(area.Area), heading: from.Heading(to), length: run.Length,
		surface: area.Surface, surfacePath: path + ".surface",
	}
}

// freeRun returns the longest run of an area as wide as the span with something to spare, in the direction planned where one is.
func (p *pass) freeRun(ground field.Ground) (field.Run, error) {
	width := p.wing.span + float64(2*corridorSpare)
	if landing := p.launchPlan().Landing; landing != nil && landing.HeadingDegrees != nil {
		return ground.LongestAlong(radians(*landing.HeadingDegrees), width)
	}
	if p.drawing.run == nil {
		run, err := ground.Longest(width)
		p.drawing.run = &longestRun{run, err}
	}
	return p.drawing.run.run, p.drawing.run.err
}

// longestRun is the longest free run of the area landed on, which the base pass looks for once.
type longestRun struct {
	run field.Run
	err error
}

// hedgeHalfWidth is how far to each side of its line a hedge, fence or bank stands, m (judgement, no source).
const hedgeHalfWidth = 0.5

// standing returns the obstacles that stand in an area: outlines, lines as strips about their pieces, and single points.
func (p *pass) standing(area field.Polygon) (blocked []field.Polygon, posts []field.Point) {
	for i := range p.in.Field.Obstacles {
		o := shape(&p.in.Field.Obstacles[i])
		switch {
		case len(o.Points) == 0:
		case o.Closed && len(o.Points) >= 3:
			if outline := field.Polygon(o.Points); outline.Check() == nil && outline.Overlaps(area) {
				blocked = append(blocked, outline)
			}
		case len(o.Points) == 1:
			posts = append(posts, o.Points[0])
		default:
			blocked = append(blocked, pieces(o.Points, area)...)
		}
	}
	return blocked, posts
}

// pieces returns the strips about the pieces of a line that lie in an area.
func pieces(points []field.Point, area field.Polygon) []field.Polygon {
	var strips []field.Polygon
	for i := 1; i < len(points); i++ {
		side := field.Right(points[i-1].Heading(points[i])).Times(hedgeHalfWidth)
		strip := field.Polygon{points[i-1].Plus(side), points[i].Plus(side), points[i].Minus(side), points[i-1].Minus(side)}
		if strip.Check() == nil && strip.Overlaps(area) {
			strips = append(strips, strip)
		}
	}
	return strips
}

// normalOutline returns the corners of an area in normal form, or none where the outline cannot be.
func normalOutline(area *Polygon) field.Polygon {
	normal, _, err := outlineOf(area).Normal()
	if err != nil {
		return nil
	}
	return normal
}

// areaGround returns the mean height of an area's corners over the datum, m.
func areaGround(area *Polygon) float64 {
	sum := 0.0
	for i := range area.Corners {
		sum += orElse(area.Corners[i].ZMeters, 0)
	}
	return sum / float64(len(area.Corners))
}
