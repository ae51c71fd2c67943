package assess

import (
	"slices"
	"strings"
)

// figureKind is what a told quantity always says: its words, its unit, the formula that gives it, whose formula that is, and what it
// is computed from. A star in an id stands for any name; what is more
// particular comes first.
type figureKind struct {
	id, title, unit string
	formula, source string
	// from are ids of other quantities and paths of the document; the pass adds what it read on the way.
	from []string
}

// figureKinds lists every quantity that a report may tell.
var figureKinds = slices.Concat(airFigures, massFigures, liftFigures, dragFigures, flightFigures, launchFigures, landingFigures, handlingFigures, loadFigures, dayFigures, rollingFigures, radioFigures, packFigures, feedFigures)

// figurePlaces holds where the quantities with a whole id stand, figurePatterns those whose id has a star.
var figurePlaces, figurePatterns = func() (map[string]int, []int) {
	whole, open := map[string]int{}, []int(nil)
	for i := range figureKinds {
		if strings.Contains(figureKinds[i].id, "*") {
			open = append(open, i)
		} else if _, known := whole[figureKinds[i].id]; !known {
			whole[figureKinds[i].id] = i
		}
	}
	return whole, open
}()

// methodPrefix marks a name as a method's own data rather than an input.
const methodPrefix = "method: "

// kindOf returns what is always said of a quantity.
func kindOf(id string) figureKind {
	if i, known := figurePlaces[id]; known {
		return figureKinds[i]
	}
	for _, i := range figurePatterns {
		k := &figureKinds[i]
		stem, end, open := strings.Cut(k.id, "*")
		if open && strings.HasPrefix(id, stem) && strings.HasSuffix(id, end) {
			return *k
		}
	}
	return figureKind{id: id}
}

// tell adds a computed intermediate to the report, with what it was computed from beside the sources of its kind; a value that is no
// number is left out.
func (p *pass) tell(id string, value float64, from ...string) {
	if p.tells() && finite(value) {
		told := value
		p.keep(id, ReportQuantity{Value: &told}, from)
	}
}

// tellText adds an intermediate that is a text.
func (p *pass) tellText(id, text string, from ...string) {
	if p.tells() {
		p.keep(id, ReportQuantity{Text: text}, from)
	}
}

func (p *pass) keep(id string, q ReportQuantity, from []string) {
	k := kindOf(id)
	q.ID, q.Title, q.Unit, q.Formula, q.Source = id, k.title, k.unit, k.formula, k.source
	q.From = union(k.from, from)
	q.replace(p.replaced)
	p.values = append(p.values, q)
}

// replacement is a measured result that stands in place of a computed quantity.
type replacement struct{ id, path, method string }

// replace lets a quantity that was measured say so instead of the formula that was not used.
func (q *ReportQuantity) replace(list []replacement) {
	for _, r := range list {
		if r.id != q.ID {
			continue
		}
		q.Formula, q.Source, q.From = "measured, in place of the computed value", r.method, []string{r.path}
		if q.Source == "" {
			q.Source = "the builder's measurement"
		}
	}
}

// toldUnder returns the ids of the numbers told that begin with a stem.
func (p *pass) toldUnder(stem string) []string {
	var ids []string
	for i := range p.values {
		if q := &p.values[i]; q.Value != nil && strings.HasPrefix(q.ID, stem) {
			ids = append(ids, q.ID)
		}
	}
	return ids
}

// mark remembers how far the inputs have been read; since returns the names of those read after it, each once.
func (p *pass) mark() int { return len(p.trail) }

func (p *pass) since(mark int) []string {
	if !p.tells() {
		return nil
	}
	return union(p.trail[mark:], nil)
}

// union returns the names of both lists, each once, in their order.
func union(a, b []string) []string {
	var names []string
	for _, name := range slices.Concat(a, b) {
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return names
}

// traceFrom leaves in every list of sources what this report tells, what the document may hold and what a method brings along: an
// input that was not asked for in this document, and a quantity that could not be computed, are no sources.
func (p *pass) traceFrom() {
	told := make(map[string]bool, len(p.values))
	for i := range p.values {
		told[p.values[i].ID] = true
	}
	foreign := func(name string) bool { return !told[name] && !isInput(name) }
	for i := range p.values {
		p.values[i].From = slices.DeleteFunc(p.values[i].From, foreign)
	}
	for i := range p.results {
		p.results[i].From = slices.DeleteFunc(p.results[i].From, foreign)
	}
}

// documentParts are the beginnings of every path of the document.
var documentParts = []string{"model.", "field.", "launchPlan.", "day.", "limits.", "confirmations["}

// IsMethod reports whether a source is a method's own data rather than a quantity or an input.
func IsMethod(source string) bool { return strings.HasPrefix(source, methodPrefix) }

// isInput reports whether a name is a path of the document or a method's own data.
func isInput(name string) bool {
	if IsMethod(name) {
		return true
	}
	return slices.ContainsFunc(documentParts, func(part string) bool { return strings.HasPrefix(name, part) })
}
