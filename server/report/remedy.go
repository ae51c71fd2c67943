package report

import (
	"fmt"
	"strings"

	"pitgate/server/physics/assess"
)

// efforts are how much work a remedy is, as printed.
var efforts = map[assess.RemedyEffort]string{
	assess.RemedyEffortAnotherDay: "another day", assess.RemedyEffortAdjust: "adjust", assess.RemedyEffortEquipment: "equipment",
	assess.RemedyEffortRebuild: "rebuild",
}

// remedies writes the changes that let findings hold, finding by finding, the least effort first.
func (p *page) remedies(r assess.Report) {
	if len(r.Remedies) == 0 {
		return
	}
	p.line("%s", strings.Repeat("-", Width))
	p.line("REMEDIES")
	finding := ""
	for i := range r.Remedies {
		m := &r.Remedies[i]
		if m.FindingID != finding {
			finding = m.FindingID
			p.paragraph("", titleOf(r, finding)+" ("+finding+")")
		}
		p.remedy(m)
	}
	p.paragraph("", "A remedy is a proposal to measure and to check, and no measurement. Apply it, measure what it changed, and assess again.")
	p.paragraph("", "Changes of structure and fuel system outside the builder's competence go to someone qualified.")
}

// remedy writes one remedy: what to change, what it mends and what it breaks.
func (p *page) remedy(m *assess.Remedy) {
	if len(m.Changes) == 0 {
		p.paragraph("  ", m.Note)
		return
	}
	parts := make([]string, len(m.Changes))
	for i := range m.Changes {
		parts[i] = changeWords(&m.Changes[i])
	}
	text := efforts[m.Effort] + ": " + strings.Join(parts, " and ")
	if m.HoldsProbability != nil {
		text += fmt.Sprintf("; then holds in %.1f %%", 100**m.HoldsProbability)
	}
	p.paragraph("  ", text)
	if len(m.Fixes) > 1 {
		p.paragraph("    ", fmt.Sprintf("mends %d: %s", len(m.Fixes), strings.Join(m.Fixes, ", ")))
	}
	if len(m.Breaks) > 0 {
		p.paragraph("    ", fmt.Sprintf("breaks %d: %s", len(m.Breaks), strings.Join(m.Breaks, ", ")))
	}
	if len(m.Changes) > 1 {
		p.paragraph("    ", m.Note)
	}
}

// changeWords writes one change with its figures.
func changeWords(c *assess.RemedyChange) string {
	if c.From == nil || c.To == nil {
		return c.Title
	}
	return c.Title + " from " + measure(*c.From, c.Unit) + " to " + measure(*c.To, c.Unit)
}

// titleOf returns the words of a finding.
func titleOf(r assess.Report, id string) string {
	for i := range r.Findings {
		if r.Findings[i].ID == id {
			return r.Findings[i].Title
		}
	}
	return "Finding"
}
