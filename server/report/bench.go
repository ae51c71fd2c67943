package report

import (
	"fmt"
	"io"
	"strings"

	"pitgate/server/physics/assess"
)

// Bench writes what is to be inspected on a model in 80 columns, group by group, each point with an empty box for tick, value and name. Its error is
// that of the writer.
func Bench(w io.Writer, r assess.Report) error {
	p := page{to: w}
	p.line("BENCH INSPECTION%*s", Width-len("BENCH INSPECTION"), "core "+r.CoreVersion)
	if r.InputDigest != "" {
		p.line("input %s", r.InputDigest)
	}
	p.paragraph("", "A reading outside its figure is entered in the document and everything is computed again.")
	group := ""
	for i := range r.BenchItems {
		item := &r.BenchItems[i]
		if item.Group != group {
			group = item.Group
			p.rule()
			p.line("%s", strings.ToUpper(group))
		}
		p.benchItem(item)
	}
	p.cautions(r)
	return p.err
}

// boxes indents what belongs to a point of the list.
const boxes = "    "

func (p *page) benchItem(item *assess.BenchItem) {
	for i, line := range wrap(item.Title, Width-len(boxes)) {
		mark := boxes
		if i == 0 {
			mark = "[ ] "
		}
		p.line("%s%s", mark, line)
	}
	p.paragraph(boxes, item.How)
	p.paragraph(boxes, "Wanted: "+wanted(item))
	p.paragraph(boxes, "Why: "+item.Why)
	if item.Input != "" {
		p.paragraph(boxes, "Enters: "+item.Input)
	}
	photo := ""
	if item.PhotoWanted {
		photo = "  photo [ ]"
	}
	p.line("%svalue ____________ %-6s name ____________________%s", boxes, unitOf(item), photo)
}

func unitOf(item *assess.BenchItem) string {
	if item.Unit == "1" {
		return ""
	}
	return item.Unit
}

// wanted writes the figure's ends and what they are.
func wanted(item *assess.BenchItem) string {
	switch {
	case item.Low != nil && item.High != nil && *item.Low == *item.High:
		return onBench(*item.Low, item.Unit) + ", " + item.Wanted
	case item.Low != nil && item.High != nil:
		return onBench(*item.Low, item.Unit) + " to " + onBench(*item.High, item.Unit) + ", " + item.Wanted
	case item.Low != nil:
		return "at least " + onBench(*item.Low, item.Unit) + ", " + item.Wanted
	case item.High != nil:
		return "at most " + onBench(*item.High, item.Unit) + ", " + item.Wanted
	default:
		return item.Wanted
	}
}

// smallParts are units that are read in thousandths below a tenth.
var smallParts = map[string]string{"m": "mm", "l": "ml"}

// onBench writes a figure as it is read with a rule or a syringe.
func onBench(value float64, unit string) string {
	if part := smallParts[unit]; part != "" && value > -0.1 && value < 0.1 {
		return measure(1000*value, part)
	}
	return measure(value, unit)
}

// Cards writes the cards in 80 columns, each figure ahead of what it is. Its error is that of the writer.
func Cards(w io.Writer, r assess.Report) error {
	p := page{to: w}
	for i := range r.Cards {
		if i > 0 {
			p.line("")
		}
		p.card(&r.Cards[i])
	}
	return p.err
}

// figureColumn is where the figures of a card begin, textColumn where their words do.
const (
	figureColumn = 26
	textColumn   = 40
)

func (p *page) card(card *assess.ReportCard) {
	title := strings.ToUpper(card.Title)
	p.line("%s%*s", title, Width-len(title), "core "+assess.Version)
	p.rule()
	for i := range card.Lines {
		p.cardLine(&card.Lines[i])
	}
	p.rule()
}

// cardLine writes heading, figure and words side by side; a line without a figure gives its words the room.
func (p *page) cardLine(line *assess.CardLine) {
	heading, at := wrap(line.Heading, figureColumn-1), figureColumn
	figure := ""
	if line.Value != nil {
		figure, at = onCard(*line.Value, line.Unit), textColumn
	}
	text := wrap(line.Text, Width-at)
	for i := range max(len(heading), len(text), 1) {
		left := fmt.Sprintf("%-*s%s", figureColumn, lineOf(heading, i), "")
		if i == 0 {
			left += figure
		}
		p.line("%-*s%s", at, left, lineOf(text, i))
	}
}

func lineOf(lines []string, i int) string {
	if i < len(lines) {
		return lines[i]
	}
	return ""
}

// onCard writes a figure as it is read out: minutes and seconds from a minute and a half on.
func onCard(value float64, unit string) string {
	const spoken = 90
	if unit == "s" && value >= spoken {
		whole := int(value + 0.5)
		return fmt.Sprintf("%d:%02d min", whole/60, whole%60)
	}
	return measure(value, unit)
}
