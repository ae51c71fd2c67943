package report

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"pitgate/server/compare"
	"pitgate/server/physics/assess"
)

// Compared writes what differs between two documents, then the findings that moved, worst change first. The names are those of the two documents.
// Its error is that of the writer.
func Compared(w io.Writer, c compare.Comparison, from, to string) error {
	p := page{to: w}
	p.line("COMPARISON%*s", Width-len("COMPARISON"), "core "+c.CoreVersion)
	p.side("from", from, c.FromDigest, c.FromCounts)
	p.side("to", to, c.ToDigest, c.ToCounts)
	p.line("%d inputs differ, %d of %d findings moved", len(c.Differences), c.MovedCount, len(c.Moves))
	if c.RestsOnEstimates {
		p.line("Rests on estimated inputs.")
	}
	p.line("%s", strings.Repeat("-", Width))
	for _, d := range c.Differences {
		p.difference(d)
	}
	if len(c.Differences) > 0 {
		p.line("%s", strings.Repeat("-", Width))
	}
	for _, m := range c.Moves {
		if m.Moved {
			p.move(m)
		}
	}
	if still := len(c.Moves) - int(c.MovedCount); still > 0 {
		p.line("%d findings did not move.", still)
	}
	p.cautions(assess.Report{Cautions: c.Cautions})
	return p.err
}

// side writes one of the two documents.
func (p *page) side(word, name, digest string, counts *assess.VerdictCounts) {
	p.paragraph("", fmt.Sprintf("%-5s %s", word, name))
	if digest != "" {
		p.line("      input %s", digest)
	}
	if counts != nil {
		p.line("      %d fail, %d tight, %d unknown, %d hold", counts.FailsCount, counts.TightCount, counts.UnknownCount, counts.HoldsCount)
	}
}

var kindWords = map[compare.ChangeKind]string{
	compare.ChangeKindChanged: "changed", compare.ChangeKindAdded: "added", compare.ChangeKindRemoved: "removed", compare.ChangeKindReordered: "order",
}

// difference writes the path, the name of the part it belongs to, and what stands there.
func (p *page) difference(d compare.Difference) {
	name := d.Path()
	if d.PartName != "" {
		name += " (" + d.PartName + ")"
	}
	for i, line := range wrap(name, Width-len(indent)) {
		word := ""
		if i == 0 {
			word = kindWords[d.Kind]
		}
		p.line("%-9s%s", word, line)
	}
	p.paragraph(indent, changeText(d))
}

// changeText writes old and new; of a quantity only what differs.
func changeText(d compare.Difference) string {
	if len(d.QuantityParts) == 0 {
		return arrow(valueText(d.From), valueText(d.To))
	}
	var parts []string
	for _, part := range d.QuantityParts {
		parts = append(parts, part+" "+arrow(partText(d.From.Quantity, part), partText(d.To.Quantity, part)))
	}
	return strings.Join(parts, "; ")
}

// arrow joins old and new, of which one may be absent.
func arrow(from, to string) string {
	switch {
	case from == "":
		return to
	case to == "":
		return "was " + from
	}
	return from + " -> " + to
}

// partText writes value, basis or spread of a quantity.
func partText(q *assess.Quantity, part string) string {
	switch {
	case part == "basis" && q.Basis != "":
		return plainWord(string(q.Basis), "BASIS_")
	case part == "value" && q.Value != nil:
		return exact(*q.Value)
	case part == "spread" && q.Spread != nil:
		return exact(*q.Spread)
	}
	return "none"
}

func plainWord(name, prefix string) string {
	return strings.ToLower(strings.ReplaceAll(strings.TrimPrefix(name, prefix), "_", " "))
}

// exact writes a number of a document as it stands there.
func exact(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }

// valueText writes one value of a document; a part or list by what it is.
func valueText(v *compare.ComparedValue) string {
	switch {
	case v == nil:
		return ""
	case v.Number != nil:
		return exact(*v.Number)
	case v.Truth != nil:
		return strconv.FormatBool(*v.Truth)
	case v.Quantity != nil:
		return quantityText(v.Quantity)
	case v.EntryCount > 0:
		return fmt.Sprintf("list of %d", v.EntryCount)
	case v.PartJSON != "":
		return "a whole part"
	}
	return strconv.Quote(v.Text)
}

func quantityText(q *assess.Quantity) string {
	parts := []string{partText(q, "value")}
	if q.Basis != "" {
		parts = append(parts, partText(q, "basis"))
	}
	if q.Spread != nil {
		parts = append(parts, "spread "+partText(q, "spread"))
	}
	return strings.Join(parts, ", ")
}

// move writes a finding that moved: verdicts, values, margins, bands and the changed inputs that it reads.
func (p *page) move(m compare.Move) {
	told := m.To
	if told == nil {
		told = m.From
	}
	word := verdictWord(m.From) + " -> " + verdictWord(m.To)
	if !m.VerdictChanged {
		word = "still " + verdictWord(m.To)
	}
	p.entry(word, m.FindingID)
	p.paragraph(indent, told.Title)
	p.paragraph(indent, moveFigures(m))
	if len(m.ChangedInputs) > 0 {
		p.paragraph(indent, "reads "+strings.Join(m.ChangedInputs, ", "))
	} else {
		p.paragraph(indent, "none of the changed inputs stands in its chain")
	}
}

func (p *page) entry(left, right string) {
	p.line("%s%*s", left, max(1, Width-len(left)), right)
}

func verdictWord(f *assess.Finding) string {
	if f == nil {
		return "not asked"
	}
	return words[f.Verdict]
}

// moveFigures writes what is known of value, margin, limit and band in both.
func moveFigures(m compare.Move) string {
	from, to := m.From, m.To
	if from == nil {
		from = &assess.Finding{}
	}
	if to == nil {
		to = &assess.Finding{}
	}
	unit := to.Unit
	if unit == "" {
		unit = from.Unit
	}
	var parts []string
	add := func(name string, a, b *float64) {
		if a != nil || b != nil {
			parts = append(parts, strings.TrimSpace(name+" "+figure(a)+" -> "+figure(b)+" "+strings.TrimPrefix(unit, "1")))
		}
	}
	add("value", from.Value, to.Value)
	add("margin", from.Margin, to.Margin)
	if m.From != nil && m.To != nil && figure(from.Limit) != figure(to.Limit) {
		add("limit", from.Limit, to.Limit)
	}
	parts = append(parts, bandText(from, to)...)
	return strings.Join(parts, "; ")
}

func bandText(from, to *assess.Finding) []string {
	if from.BandLow == nil && to.BandLow == nil {
		return nil
	}
	one := func(f *assess.Finding) string {
		if f.BandLow == nil || f.BandHigh == nil {
			return "none"
		}
		return figure(f.BandLow) + " to " + figure(f.BandHigh)
	}
	return []string{"band " + one(from) + " -> " + one(to)}
}

func figure(v *float64) string {
	if v == nil {
		return "none"
	}
	return number(*v)
}
