package report

import (
	"fmt"
	"io"
	"strings"

	"pitgate/server/physics/assess"
)

// Window writes which winds hold: way by way, one line a direction. Its error is that of the writer.
func Window(w io.Writer, window assess.WindWindow) error {
	p := page{to: w}
	p.line("WINDS THAT HOLD%*s", Width-len("WINDS THAT HOLD"), "mean wind, m/s, values as given")
	if len(window.Missing) > 0 {
		p.paragraph("", "Unknown. Missing: "+strings.Join(window.Missing, ", "))
		return p.err
	}
	p.paragraph("", window.Note)
	p.line("%s", strings.Repeat("-", Width))
	for i := range window.Ways {
		p.way(&window.Ways[i])
	}
	p.line("%s", strings.Repeat("-", Width))
	p.paragraph("", "Asked: "+strings.Join(window.FindingIDs, ", ")+".")
	p.paragraph("", "The computation supports a decision and does not make it. Bands are left out: keep away from the ends.")
	return p.err
}

// way writes the ranges of one way, one direction a line.
func (p *page) way(way *assess.WindWay) {
	p.line("%s", way.Name)
	for i := range way.Ranges {
		r := &way.Ranges[i]
		p.line("  wind from %3.0f  %s", r.FromDegrees, rangeWords(r))
	}
}

// rangeWords writes a range and what decides its upper end.
func rangeWords(r *assess.WindRange) string {
	switch {
	case !r.Holds:
		return "none        " + r.Decides
	case r.Open:
		return fmt.Sprintf("%4.1f to %4.1f  and more", r.LeastMetersPerSecond, r.MostMetersPerSecond)
	case r.Split:
		return fmt.Sprintf("%4.1f to %4.1f  %s; stronger winds hold again", r.LeastMetersPerSecond, r.MostMetersPerSecond, r.Decides)
	}
	return fmt.Sprintf("%4.1f to %4.1f  %s", r.LeastMetersPerSecond, r.MostMetersPerSecond, r.Decides)
}

// WindowStatus is ExitHolds when some wind from the day's direction holds.
func WindowStatus(window assess.WindWindow) int {
	if window.BestWay == "" {
		return ExitDecision
	}
	return ExitHolds
}
