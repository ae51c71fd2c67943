package assess

import (
	"fmt"
	"math"
)

const coreDefault = "core default"

// limit is a figure that a value is held against, and where it comes from.
type limit struct {
	value float64
	set   bool
	rule  string
	path  string // in the document; empty for the core's own
}

// limit returns the limit that the document gives, or the core's default.
func (p *pass) limit(f figure) limit {
	if given := p.optionalLimit(f); given.set {
		return given
	}
	return limit{value: f.core, set: true, rule: coreDefault}
}

// optionalLimit returns the limit that the document gives, or none.
func (p *pass) optionalLimit(f figure) limit {
	if p.in.Limits == nil {
		return limit{}
	}
	value := f.of(p.in.Limits)
	if value == nil {
		return limit{}
	}
	rule := "limits of the document"
	if p.in.Limits.RulePack != "" {
		rule = p.in.Limits.RulePack
	}
	return limit{value: *value, set: true, rule: rule, path: "limits." + f.name}
}

// answer is what a section found out for one question.
type answer struct {
	id      string
	missing []string
	value   float64
	limit   limit
	upper   float64 // upper end of a window
	note    string
	outside bool
	from    []string // sources beside those of the catalogue
	none    bool     // the question has an answer but no number: nothing stands in the way
	never   string   // the question has an answer but no number: it cannot be met at all, and why
}

// conclude turns an answer into a finding.
func (p *pass) conclude(a answer) {
	k, n := &catalogue[place(a.id)], p.memory().figure()
	f := Finding{
		ID: k.id, Title: k.title, Unit: k.unit, Method: k.method, Source: k.source, Validity: k.validity,
		Missing: a.missing, Note: a.note, OutsideValidity: a.outside, Rule: p.citation(&a), LimitSense: LimitSenseNone,
	}
	if a.limit.set {
		f.LimitSense = k.sense
		n.limit, f.Limit = a.limit.value, &n.limit
		if k.sense == LimitSenseWithin {
			n.upper, f.UpperLimit = a.upper, &n.upper
		}
	}
	f.judge(&a, n)
	if p.base() {
		f.FindingClass, _ = classOf(k.id)
	}
	if p.tells() {
		f.trace(k.from, &a)
	}
	p.results = append(p.results, f)
}

// trace says what the answer was computed from; an unknown one names what is missing instead.
func (f *Finding) trace(usual []string, a *answer) {
	if f.Verdict == VerdictUnknown {
		return
	}
	f.From = union(usual, a.from)
	if a.limit.path != "" {
		f.From = append(f.From, a.limit.path)
	}
}

// judge sets value, margin and the verdict of the middle value.
func (f *Finding) judge(a *answer, n *figures) {
	switch {
	case len(a.missing) > 0:
		f.unknown("")
	case a.never != "":
		f.Verdict, f.Note = VerdictFails, a.never
	case a.none:
		f.Verdict = VerdictHolds
	case !finite(a.value) || a.limit.set && !finite(a.limit.value):
		f.unknown("The computation gives no number for this input.")
	default:
		n.value, f.Value = a.value, &n.value
		f.Verdict = VerdictHolds
		f.setMargin(&n.margin)
	}
}

// unknown drops everything that was not computed.
func (f *Finding) unknown(note string) {
	f.Verdict, f.Note = VerdictUnknown, note
	f.OutsideValidity = false
	if f.Limit != nil && !finite(*f.Limit) {
		f.Limit = nil
	}
}

// setMargin computes how far the value is on the right side of its limit and lets the finding fail where it is not.
func (f *Finding) setMargin(room *float64) {
	margin, limited := f.marginOf(*f.Value)
	if !limited {
		return
	}
	*room, f.Margin = margin, room
	if margin < 0 {
		f.Verdict = VerdictFails
	}
}

// marginOf returns how much a value is on the right side of the limit, and false where there is none.
func (f *Finding) marginOf(value float64) (float64, bool) {
	switch f.LimitSense {
	case LimitSenseAtLeast:
		return value - *f.Limit, true
	case LimitSenseAtMost:
		return *f.Limit - value, true
	case LimitSenseWithin:
		return math.Min(value-*f.Limit, *f.UpperLimit-value), true
	default:
		return 0, false
	}
}

// citation returns the published rule behind a limit, of several the one that gave the figure, or where the figure comes from.
func (p *pass) citation(a *answer) string {
	if p.in.Limits != nil {
		for _, rule := range p.in.Limits.Rules {
			if (rule.ID == "" || yes(rule.Deciding)) && rule.BearsOn() == a.id {
				return cite(rule)
			}
		}
	}
	return a.limit.rule
}

// cite writes a published rule in one line and says whether a club officer confirmed it.
func cite(rule AppliedRule) string {
	text := rule.Authority
	for _, part := range []string{rule.Citation, rule.Date} {
		if part != "" && text != "" {
			text += ", "
		}
		text += part
	}
	if !yes(rule.Verified) {
		text += " (unverified)"
	}
	return text
}

// say writes the deciding numbers in a sentence.
func say(format string, values ...any) string { return fmt.Sprintf(format, values...) }

// sayNumbers is say for numbers alone, which need not be wrapped one by one where they are said.
func sayNumbers(format string, values ...float64) string {
	said := make([]any, len(values))
	for i, value := range values {
		said[i] = value
	}
	return fmt.Sprintf(format, said...)
}

// inWords is sayNumbers in the base pass. What a moved pass would say is told nowhere: there it is the format as it stands.
func (p *pass) inWords(format string, values ...float64) string {
	if !p.base() {
		return format
	}
	return sayNumbers(format, values...)
}
