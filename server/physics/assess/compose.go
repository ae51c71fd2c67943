package assess

import (
	"slices"

	"pitgate/server/physics/order"
)

// severity is the order of verdicts in a report, worst first.
var severity = pairings[Verdict, int]{{VerdictFails, 0}, {VerdictTight, 1}, {VerdictUnknown, 2}, {VerdictHolds, 3}}

// report gathers what the base pass found.
func (p *pass) report() Report {
	p.traceFrom()
	r := Report{
		CoreVersion: Version, Findings: p.results, Quantities: p.values, Paths: p.finiteLines(), Curves: p.curves, BallastOptions: p.ballast,
		Cautions: slices.Clone(cautions), Counts: &VerdictCounts{},
	}
	order.By(r.Findings, ranks(r.Findings))
	for i := range r.Findings {
		r.Counts.add(r.Findings[i].Verdict)
		r.RestsOnEstimates = r.RestsOnEstimates || r.Findings[i].RestsOnEstimate
	}
	if p.tells() {
		p.inspect(&r)
	}
	return r
}

// ranks are the places of findings in a report: by severity, then as the catalogue has them.
func ranks(findings []Finding) []int {
	out := make([]int, len(findings))
	for i := range findings {
		out[i] = severity.of(findings[i].Verdict)*(len(catalogue)+1) + place(findings[i].ID)
	}
	return out
}

func (c *VerdictCounts) add(v Verdict) {
	switch v {
	case VerdictHolds:
		c.HoldsCount++
	case VerdictTight:
		c.TightCount++
	case VerdictFails:
		c.FailsCount++
	default:
		c.UnknownCount++
	}
}

// finiteLines leaves out every point that is no number.
func (p *pass) finiteLines() []ReportPath {
	for k := range p.lines {
		p.lines[k].Points = slices.DeleteFunc(p.lines[k].Points, func(point PathPoint) bool {
			sum := point.XMeters + point.YMeters + point.ZMeters + point.AirspeedMetersPerSecond + point.TimeSeconds + point.HalfBandMeters
			return !finite(sum)
		})
	}
	return p.lines
}
