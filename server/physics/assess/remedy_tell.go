package assess

import (
	"cmp"
	"slices"
	"strings"

	"pitgate/server/physics/order"
)

// told puts a remedy into words.
func (r *remedySearch) told(t *target, m *mended) Remedy {
	out := Remedy{FindingID: t.finding.ID, Effort: RemedyEffort(efforts[m.effort]), Fixes: m.fixes, Breaks: m.breaks, HoldsProbability: &m.share}
	for _, c := range m.changes {
		out.Changes = append(out.Changes, c.told())
	}
	out.Note = say("Checked anew in full at this value, %d findings by their bands there; %.4g %% is asked for.", m.checked, 100*t.required)
	if len(m.changes) > 1 {
		out.Note = "No single change helps; both by the same share of their range. " + out.Note
	}
	out.changed = r.changedBy(m.changes)
	return out
}

// changedBy is the document with changes in it.
func (r *remedySearch) changedBy(changes []change) *Input {
	in := copyInput(r.in)
	for _, c := range changes {
		c.set(&in)
	}
	return &in
}

// without says that nothing helps, what was tried and what came nearest.
func (r *remedySearch) without(t *target) Remedy {
	var tried []string
	type reached struct {
		change change
		share  float64
	}
	var nearest []reached
	for i := range r.spots {
		s := &r.spots[i]
		if !r.named(s, t.at) {
			continue
		}
		if title := strings.ToLower(s.knob.title); !slices.Contains(tried, title) {
			tried = append(tried, title)
		}
		for _, one := range r.probes[i] {
			if f := one.found[t.number]; f != nil && f.Margin != nil {
				nearest = append(nearest, reached{one.change, t.height(f, t.spread)})
			}
		}
	}
	out := Remedy{FindingID: t.finding.ID}
	if len(tried) == 0 {
		out.Note = "No change helps: nothing that may be changed stands behind this finding."
		return out
	}
	out.Note = say("No single change helps, and no change of two among those tried: %s.", strings.Join(tried, ", "))
	order.Stable(nearest, func(a, b reached) int { return cmp.Compare(b.share, a.share) })
	if len(nearest) > 0 && t.finding.Margin != nil && nearest[0].share > t.height(&t.finding, t.spread) {
		out.Note += say(" Nearest comes: %s.", nearest[0].change.words())
	}
	return out
}

// words names a change with its figure.
func (c change) words() string {
	told := c.told()
	if told.To == nil {
		return told.Title
	}
	return strings.TrimSpace(say("%s of %.4g %s", told.Title, *told.To, told.Unit))
}

// confirm samples the spread of a remedy's document and tells the share found.
func (r *remedySearch) confirm(out *Remedy, m *mended) {
	report, err := r.geometryOf(out.changed, m.changes).Spread(*out.changed, SpreadOptions{Samples: r.options.Samples, Seed: r.options.Seed})
	if err != nil {
		return
	}
	i := indexOf(report.Findings, out.FindingID)
	if i < 0 || report.Findings[i].HoldsProbability == nil {
		return
	}
	share := *report.Findings[i].HoldsProbability
	out.HoldsProbability = &share
	out.Note = say("Holds in %.4g %% of %d samples, in %.4g %% by first-order bands. ", 100*share, r.options.Samples, 100*m.share) + out.Note
}
