package report

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"pitgate/server/physics/assess"
)

// words are the verdicts as printed.
var words = map[assess.Verdict]string{
	assess.VerdictHolds: "holds", assess.VerdictTight: "TIGHT", assess.VerdictFails: "FAILS", assess.VerdictUnknown: "UNKNOWN",
}

// indent of what belongs to a finding.
const indent = "         "

func (p *page) finding(f *assess.Finding, options Options) {
	word, ok := words[f.Verdict]
	if !ok {
		word = "UNKNOWN"
	}
	for i, line := range wrap(f.Title, Width-len(indent)-len(f.ID)-2) {
		if i == 0 {
			p.line("%-9s%s%*s", word, line, Width-len(indent)-len([]rune(line)), f.ID)
			continue
		}
		p.line("%s%s", indent, line)
	}
	if f.Value != nil {
		p.paragraph(indent, figures(f))
	}
	p.paragraph(indent, odds(f))
	for _, missing := range f.Missing {
		p.paragraph(indent, "missing: "+missing)
	}
	p.paragraph(indent, f.Note)
	p.doubts(f)
	if options.Methods {
		p.paragraph(indent, "Method: "+f.Method)
		p.paragraph(indent, "Source: "+f.Source)
		p.paragraph(indent, "Valid for: "+f.Validity)
	}
}

// doubts says what makes the answer less than it seems.
func (p *page) doubts(f *assess.Finding) {
	if f.OutsideValidity {
		p.paragraph(indent, "Outside the method's range: "+f.Validity)
	}
	if f.RestsOnEstimate {
		p.paragraph(indent, "Rests on an estimated input.")
	}
	if len(f.SpreadShares) > 0 && f.Verdict != assess.VerdictHolds {
		share := f.SpreadShares[0]
		p.paragraph(indent, fmt.Sprintf("Spread mostly from %s (%.0f %%).", share.Input, 100*share.ShareRatio))
	}
}

// figures writes value, limit, margin and band in one line.
func figures(f *assess.Finding) string {
	parts := []string{"value " + measure(*f.Value, f.Unit)}
	switch {
	case f.Limit == nil:
	case f.LimitSense == assess.LimitSenseAtLeast:
		parts = append(parts, "least "+measure(*f.Limit, f.Unit))
	case f.LimitSense == assess.LimitSenseAtMost:
		parts = append(parts, "most "+measure(*f.Limit, f.Unit))
	case f.LimitSense == assess.LimitSenseWithin && f.UpperLimit != nil:
		parts = append(parts, "within "+number(*f.Limit)+" to "+measure(*f.UpperLimit, f.Unit))
	}
	if f.Margin != nil {
		parts = append(parts, "margin "+measure(*f.Margin, f.Unit))
	}
	if f.BandLow != nil && f.BandHigh != nil {
		parts = append(parts, "band "+number(*f.BandLow)+" to "+measure(*f.BandHigh, f.Unit))
	}
	if f.Rule != "" && f.Limit != nil {
		parts = append(parts, "rule: "+f.Rule)
	}
	return strings.Join(parts, "; ")
}

// measure writes a number with its unit.
func measure(value float64, unit string) string {
	if unit == "" || unit == "1" {
		return number(value)
	}
	return number(value) + " " + unit
}

// number writes four digits, and no more than three decimals.
func number(value float64) string {
	decimals := 3
	for size := math.Abs(value); size >= 10 && decimals > 0; size /= 10 {
		decimals--
	}
	return strconv.FormatFloat(value, 'f', decimals, 64)
}
