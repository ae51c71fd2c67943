package assess

import (
	"errors"
	"math"

	"pitgate/server/physics/field"
	"pitgate/server/physics/footprint"
)

// lossCounts are how many losses are flown: few, and many where few do not settle it. Of a command held, which lasts until the fuel ends, few must do.
var lossCounts = [...]int{768, 4096}

// clearOf is how many standard errors by chance a margin has to lie off its limit for few losses to be enough.
const clearOf = 4.0

// losing is a loss of link: what is flown, and how it came down once ended is closed. Only who set it off writes to it.
type losing struct {
	missing    []string
	limit      limit
	people     []site
	loss       lossSection
	plan       footprint.Plan
	draws      *footprint.Draws
	placesOnly bool
	read       []string      // what the plan was made from
	ended      chan struct{} // nil where nothing is flown
	fallen     fallen
	err        error
}

// setOff flies the losses beside what is done until ended is waited for.
func (l *losing) setOff() {
	l.ended = make(chan struct{})
	go func() {
		l.fallen, l.err = l.fall()
		close(l.ended)
	}()
}

// comeDown tells how the losses came down and what they meet.
func (p *pass) comeDown(l *losing, found *answer) {
	found.value = l.fallen.margin
	if l.err != nil {
		found.value = math.NaN()
		return
	}
	if p.tells() {
		p.tellComeDown(&l.fallen, l.loss, l.people, l.read, found)
	}
}

// fallen is where the losses came down, and how near to people.
type fallen struct {
	cloud   footprint.Cloud
	outline field.Polygon
	nearest *site
	margin  float64 // distance of the nearest people from the outline, m
	chance  float64 // one standard error of the margin, by the number of losses, m
}

// fall flies as many losses as tell on which side of the limit the margin lies: few, and many where the margin of few lies within clearOf standard
// errors of it.
//
// Source: A. Wald, Sequential Analysis, 1947.
func (l *losing) fall() (out fallen, err error) {
	counts := lossCounts[:]
	if l.plan.Action == footprint.Hold {
		counts = counts[:1]
	}
	for _, count := range counts {
		if out, err = l.fallOf(count); err != nil || math.Abs(out.margin-l.limit.value) > clearOf*out.chance {
			break
		}
	}
	return out, err
}

// fallOf flies a number of losses.
func (l *losing) fallOf(count int) (out fallen, err error) {
	plan := l.plan
	plan.Samples = count
	if out.cloud, err = plan.Estimate(l.draws, l.placesOnly); err != nil {
		return out, err
	}
	outlines, err := out.cloud.Outlines(nearlyAll)
	if err == nil && len(outlines.Middle) == 0 { // what comes down leaves no finite places
		err = errors.New("losses: leave no outline")
	}
	if err != nil {
		return out, err
	}
	out.outline = outlines.Middle
	if out.nearest, out.margin = nearestTo(out.outline, l.people); out.nearest != nil {
		out.chance = float64(0.5 * (out.nearest.apart(outlines.Inner) - out.nearest.apart(outlines.Outer)))
	}
	return out, nil
}

// tellComeDown draws the outlines and tells how the impacts are and what they meet.
func (p *pass) tellComeDown(fallen *fallen, loss lossSection, people []site, read []string, found *answer) {
	cloud, outline := fallen.cloud, fallen.outline
	if likely, err := cloud.Outline(likelyShare); err == nil {
		p.drawArea("area.link_loss_50", likely)
	}
	p.drawArea("area.link_loss_95", outline)
	p.tell("link_loss.outline_area", outline.Area(), read...)
	p.tell("link_loss.step_error", cloud.Error)
	p.tellCloud(cloud)
	p.tell("link_loss.losses", float64(len(cloud.Impacts)))
	p.tell("link_loss.margin", found.value, fallen.nearest.path)
	p.tell("link_loss.chance", fallen.chance, "link_loss.losses")
	found.note = say("%s. 95 %% of the losses end within %.1f ha at up to %.0f J; ", capital(loss.words), outline.Area()/squareMetersPerHectare, cloud.EnergyAt(nearlyAll))
	found.note += reachWords(fallen.nearest.name, found.value, fallen.chance)
	found.note += p.tellShares(cloud, outline, append(people, p.structures()...))
	found.from = p.toldUnder("link_loss.share.")
	if cloud.Aloft > 0 {
		found.note += say(" %d of %d losses are still in the air after two hours.", cloud.Aloft, len(cloud.Impacts))
	}
}

const squareMetersPerHectare = 1e4

// capital lets a sentence begin large.
func capital(text string) string {
	if text == "" || text[0] < 'a' || text[0] > 'z' {
		return text
	}
	return string(text[0]-'a'+'A') + text[1:]
}

// drawArea adds a closed outline to the report.
func (p *pass) drawArea(id string, outline field.Polygon) {
	path := ReportPath{ID: id}
	for i := range outline {
		path.Points = append(path.Points, PathPoint{XMeters: outline[i].X, YMeters: outline[i].Y})
	}
	if len(outline) > 0 {
		path.Points = append(path.Points, path.Points[0])
	}
	p.lines = append(p.lines, path)
}

// tellCloud tells speed, energy, time and struck ground of the impacts.
func (p *pass) tellCloud(cloud footprint.Cloud) {
	p.tell("link_loss.time", cloud.TimeAt(nearlyAll))
	p.tell("link_loss.speed", cloud.SpeedAt(nearlyAll))
	p.tell("link_loss.energy", cloud.EnergyAt(nearlyAll))
	if area, err := cloud.CriticalAreaAt(nearlyAll, footprint.AnnexF()); err == nil {
		p.tell("link_loss.critical_area", area)
	}
	if p.in.Field.PilotPosition != nil {
		p.tell("link_loss.farthest", cloud.FarthestFrom(flat(p.in.Field.PilotPosition)))
	}
}
