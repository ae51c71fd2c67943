package report

import (
	"fmt"
	"io"
	"strconv"
	"strings"
	"unicode/utf8"

	"pitgate/server/physics/assess"
)

// UnknownIDError says that a report holds no finding and no quantity of an id.
type UnknownIDError struct {
	ID string
	// Near are the ids that resemble it, best first.
	Near []string
}

// Error names the id and those near it.
func (e UnknownIDError) Error() string {
	if len(e.Near) == 0 {
		return fmt.Sprintf("no finding or quantity %q in this report", e.ID)
	}
	return fmt.Sprintf("no finding or quantity %q in this report; near it: %s", e.ID, strings.Join(e.Near, ", "))
}

// step is how far each level of the chain stands to the right of the one above.
const step = "  "

// deepest indent; what lies deeper stays there so that a line keeps room for words.
const deepest = 16

// Explain writes the chain behind a finding or a quantity: value, formula and source of each, down to the inputs of the document with
// how they are known and how far they may be off. A quantity that was explained above is not explained again. Its errors are
// UnknownIDError and the writer's.
func Explain(w io.Writer, in assess.Input, r assess.Report, id string) error {
	e := explanation{page: page{to: w}, quantities: map[string]*assess.ReportQuantity{}, shown: map[string]bool{}, document: tree(in)}
	for i := range r.Quantities {
		e.quantities[r.Quantities[i].ID] = &r.Quantities[i]
	}
	finding := findingOf(r, id)
	if finding == nil && e.quantities[id] == nil {
		return UnknownIDError{ID: id, Near: near(r, id)}
	}
	e.page.line("EXPLANATION%*s", Width-len("EXPLANATION"), "core "+r.CoreVersion)
	e.page.line("%s", strings.Repeat("-", Width))
	if finding != nil {
		e.finding(finding)
	} else {
		e.quantity(id, "")
	}
	e.page.cautions(r)
	return e.page.err
}

func findingOf(r assess.Report, id string) *assess.Finding {
	for i := range r.Findings {
		if r.Findings[i].ID == id {
			return &r.Findings[i]
		}
	}
	return nil
}

// explanation is the chain as far as it is written.
type explanation struct {
	page       page
	quantities map[string]*assess.ReportQuantity
	shown      map[string]bool
	document   any
}

func (e *explanation) finding(f *assess.Finding) {
	e.page.finding(f, Options{Methods: true})
	e.page.line("")
	for _, name := range f.From {
		e.source(name, step)
	}
}

// source writes one source: another quantity, a method's own data or an input.
func (e *explanation) source(name, indent string) {
	switch {
	case e.quantities[name] != nil:
		e.quantity(name, indent)
	case assess.IsMethod(name):
		e.entry(indent, name, "the method's own spread")
	default:
		e.entry(indent, name, e.input(name))
	}
}

func (e *explanation) quantity(id, indent string) {
	q := e.quantities[id]
	if e.shown[id] {
		e.entry(indent, id, told(q)+", above")
		return
	}
	e.shown[id] = true
	e.entry(indent, id, told(q))
	inner := deeper(indent)
	e.page.paragraph(inner, q.Title+": "+q.Formula)
	e.page.paragraph(inner, "Source: "+q.Source)
	for _, name := range q.From {
		e.source(name, inner)
	}
}

func deeper(indent string) string {
	if len(indent) >= deepest {
		return indent
	}
	return indent + step
}

// entry writes a name with its value to the right of it, on a line of its own where both do not fit.
func (e *explanation) entry(indent, name, value string) {
	left := indent + name
	if room := Width - utf8.RuneCountInString(left) - 2; utf8.RuneCountInString(value) <= room {
		e.page.line("%s%*s", left, Width-utf8.RuneCountInString(left), value)
		return
	}
	e.page.paragraph(indent, name)
	e.page.paragraph(indent+step, value)
}

// told writes the value of a quantity with its unit.
func told(q *assess.ReportQuantity) string {
	if q.Value == nil {
		return q.Text
	}
	value := strconv.FormatFloat(*q.Value, 'g', 6, 64)
	if q.Unit != "" && q.Unit != "1" {
		value += " " + q.Unit
	}
	return value
}
