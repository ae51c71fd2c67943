package assess

import "slices"

// cardWriter writes the lines of one card. A figure is that of a quantity or finding of the report; one that was not computed names what is missing.
type cardWriter struct {
	v    *benchView
	card ReportCard
}

// cards are the cards that the model needs: static run, taxi on wheels, range check, first flight.
func (v *benchView) cards() []ReportCard {
	var out []ReportCard
	if len(v.model.Engines) > 0 {
		out = append(out, v.card("card.static_run", "Static run", (*cardWriter).staticRun))
	}
	if onWheels(v, nil) && v.plan.Method == LaunchMethodWheels {
		out = append(out, v.card("card.taxi", "Taxi runs", (*cardWriter).taxi))
	}
	if v.model.Radio != nil {
		out = append(out, v.card("card.range_check", "Range check", (*cardWriter).rangeCheck))
	}
	if v.pass.in.Model != nil {
		out = append(out, v.card("card.first_flight", "First flight", (*cardWriter).firstFlight))
	}
	return out
}

// card writes one card; the cautions stand on each.
func (v *benchView) card(id, title string, write func(*cardWriter)) ReportCard {
	w := cardWriter{v: v, card: ReportCard{ID: id, Title: title}}
	write(&w)
	for _, caution := range cautions {
		w.say("Bear in mind", caution)
	}
	return w.card
}

// say adds a line without a figure.
func (w *cardWriter) say(heading, text string) {
	w.card.Lines = append(w.card.Lines, CardLine{Heading: heading, Text: text})
}

// figure adds a line with a figure and where it is from.
func (w *cardWriter) figure(heading, text string, value float64, unit, from string) {
	w.card.Lines = append(w.card.Lines, CardLine{Heading: heading, Text: text, Value: &value, Unit: unit, From: from})
}

// quantity adds a line with a quantity of the report; where it was not computed the line names what the finding behind it lacks.
func (w *cardWriter) quantity(heading, text, id, unit, finding string) {
	if value, known := w.v.value[id]; known {
		w.figure(heading, text, value, unit, id)
		return
	}
	w.lacks(heading, finding)
}

// lacks adds a line that says why there is no figure.
func (w *cardWriter) lacks(heading, finding string) {
	line := CardLine{Heading: heading, Text: "No figure: the report does not compute it for this input."}
	if f := w.v.found[finding]; f != nil {
		line.From = finding
		if f.Verdict == VerdictUnknown && len(f.Missing) > 0 {
			line.Text = "No figure: missing is " + listed(f.Missing) + "."
		} else if f.Note != "" {
			line.Text = "No figure. " + f.Note
		}
	}
	w.card.Lines = append(w.card.Lines, line)
}

// listed writes at most three names, and says how many more there are.
func listed(names []string) string {
	const most = 3
	text := ""
	for i, name := range names[:min(most, len(names))] {
		if i > 0 {
			text += ", "
		}
		text += name
	}
	if more := len(names) - most; more > 0 {
		text += say(" and %d more", more)
	}
	return text
}

// limit adds a line with the figure that a finding is held against.
func (w *cardWriter) limit(heading, text, finding, missing string) {
	f := w.v.found[finding]
	if f == nil || f.Limit == nil {
		w.card.Lines = append(w.card.Lines, CardLine{Heading: heading, Text: "No limit is given: " + missing + "."})
		return
	}
	w.figure(heading, text, *f.Limit, f.Unit, finding)
}

// open lists the findings that fail or are unknown, since a card is no permission.
func (w *cardWriter) open() {
	fails, unknown := 0, 0
	for _, f := range w.v.found {
		switch f.Verdict {
		case VerdictFails:
			fails++
		case VerdictUnknown:
			unknown++
		default:
		}
	}
	switch {
	case fails > 0 && unknown > 0:
		w.say("Not yet", say("Findings that fail: %d; unknown: %d. This card is no permission.", fails, unknown))
	case fails > 0:
		w.say("Not yet", say("Findings that fail: %d. This card is no permission.", fails))
	case unknown > 0:
		w.say("Not yet", say("Findings unknown: %d. This card is no permission.", unknown))
	default:
	}
}

// givenQuantity adds a line with a quantity of the document.
func (w *cardWriter) givenQuantity(heading, text string, q *Quantity, unit, path string) {
	if q == nil || q.Value == nil {
		w.card.Lines = append(w.card.Lines, CardLine{Heading: heading, Text: "No figure: missing is " + path + ".", From: path})
		return
	}
	w.figure(heading, text, *q.Value, unit, path)
}

// engine returns the first engine that burns fuel, else the first.
func (v *benchView) engine() (int, *Engine) {
	i := max(0, slices.IndexFunc(v.model.Engines, func(e Engine) bool { return e.Kind == EngineKindTurbine }))
	return i, &v.model.Engines[i]
}
