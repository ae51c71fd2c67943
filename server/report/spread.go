package report

import (
	"fmt"
	"strings"

	"pitgate/server/physics/assess"
)

// classes are whom a finding is about, as printed.
var classes = map[assess.FindingClass]string{
	assess.FindingClassThirdParty: "other people", assess.FindingClassModelLoss: "loss of the model", assess.FindingClassHandling: "handling",
}

// odds writes in how many samples a finding holds beside what its class asks for; empty where nothing was sampled.
func odds(f *assess.Finding) string {
	if f.HoldsProbability == nil || f.RequiredProbability == nil {
		return ""
	}
	required := strings.TrimSuffix(strings.TrimRight(fmt.Sprintf("%.1f", 100**f.RequiredProbability), "0"), ".")
	text := fmt.Sprintf("holds in %.1f %% of the samples, of %s %% asked for (%s)", 100**f.HoldsProbability, required, classes[f.FindingClass])
	if f.Median != nil {
		text += "; median " + measure(*f.Median, f.Unit)
	}
	return text
}

// measureNext writes the measurements worth taking, the one that settles most first.
func (p *page) measureNext(r assess.Report) {
	if len(r.MeasureNext) == 0 {
		return
	}
	p.line("%s", strings.Repeat("-", Width))
	p.line("MEASURE NEXT")
	for i := range r.MeasureNext {
		m := &r.MeasureNext[i]
		gain := "settles nothing alone"
		switch len(m.FindingIDs) {
		case 0:
		case 1:
			gain = "settles 1 finding"
		default:
			gain = fmt.Sprintf("settles %d findings", len(m.FindingIDs))
		}
		p.paragraph("", fmt.Sprintf("%d. %s: %s; up to %.0f %% of a spread", i+1, m.Title, gain, 100*m.ShareRatio))
		p.paragraph("   ", m.Input)
		p.paragraph("   ", m.How)
		if len(m.FindingIDs) > 0 {
			p.paragraph("   ", "settles: "+strings.Join(m.FindingIDs, ", "))
		}
	}
}
