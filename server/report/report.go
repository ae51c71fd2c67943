// Package report writes an assessment as text of 80 columns for a terminal or a mail.
package report

import (
	"fmt"
	"io"
	"strings"

	"pitgate/server/physics/assess"
)

// Width of the text in columns.
const Width = 80

// Options of the text.
type Options struct {
	// Quantities adds every computed intermediate.
	Quantities bool
	// Methods adds method, source and validity of every finding.
	Methods bool
}

// Text writes a report: findings worst first, then the cautions.
func Text(w io.Writer, r assess.Report) error { return Write(w, r, Options{}) }

// Write writes a report with the parts that the options ask for. Its error is that of the writer.
func Write(w io.Writer, r assess.Report, options Options) error {
	p := page{to: w}
	p.head(r)
	for i := range r.Findings {
		p.finding(&r.Findings[i], options)
	}
	p.measureNext(r)
	p.remedies(r)
	if options.Quantities {
		p.quantities(r.Quantities)
	}
	p.cautions(r)
	return p.err
}

// Exit statuses of a command that prints a report.
const (
	ExitHolds    = 0
	ExitDecision = 1
)

// ExitStatus is 0 when every finding holds, tight ones included, and 1 when one fails or is unknown: an unknown answer is never
// taken for a good one. A report without findings is unknown as a whole.
func ExitStatus(r assess.Report) int {
	for i := range r.Findings {
		switch r.Findings[i].Verdict {
		case assess.VerdictHolds, assess.VerdictTight:
		default:
			return ExitDecision
		}
	}
	if len(r.Findings) == 0 {
		return ExitDecision
	}
	return ExitHolds
}

// page writes lines and keeps the first error.
type page struct {
	to  io.Writer
	err error
}

func (p *page) line(format string, values ...any) {
	if p.err == nil {
		_, p.err = fmt.Fprintln(p.to, strings.TrimRight(fmt.Sprintf(format, values...), " "))
	}
}

// paragraph writes a text wrapped at the page's width behind an indent.
func (p *page) paragraph(indent, text string) {
	for _, line := range wrap(text, Width-len(indent)) {
		p.line("%s%s", indent, line)
	}
}

func (p *page) head(r assess.Report) {
	p.line("ASSESSMENT%*s", Width-len("ASSESSMENT"), "core "+r.CoreVersion)
	if r.InputDigest != "" {
		p.line("input %s", r.InputDigest)
	}
	if c := r.Counts; c != nil {
		p.line("%d fail, %d tight, %d unknown, %d hold", c.FailsCount, c.TightCount, c.UnknownCount, c.HoldsCount)
	}
	if s := r.SpreadRun; s != nil {
		p.line("Spread from %d samples, seed %d, %d without an answer.", s.SampleCount, s.Seed, s.LostCount)
	}
	if r.RestsOnEstimates {
		p.line("Rests on estimated inputs.")
	}
	p.line("%s", strings.Repeat("-", Width))
}

func (p *page) cautions(r assess.Report) {
	p.line("%s", strings.Repeat("-", Width))
	for _, caution := range r.Cautions {
		p.paragraph("", caution)
	}
}
