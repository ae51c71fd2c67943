package report

import (
	"fmt"
	"io"
	"strconv"
	"strings"
	"unicode/utf8"

	"pitgate/server/physics/assess"
	"pitgate/server/rulepack"
)

// Rule packs as text of 80 columns: the list, one pack, and the strictest of several for a document. Every text ends with the cautions.

// RulePacks writes a list of packs, with what is worth a look on the date given ("2026-05-16").
func RulePacks(w io.Writer, packs []rulepack.Pack, date string) error {
	p := page{to: w}
	p.line("RULE PACKS%*s", Width-len("RULE PACKS"), "on "+date)
	p.line("%s", strings.Repeat("-", Width))
	for _, pack := range packs {
		p.ends(pack.ID+" "+pack.Version, daysWords(pack.InForceDate, pack.ExpiresDate))
		p.paragraph(indent, fmt.Sprintf("%s: %d rules. %s.", pack.Title, len(pack.Rules), pack.Source))
		for _, remark := range rulepack.Remarks(pack, date) {
			p.paragraph(indent, "! "+remark)
		}
	}
	p.cautions(assess.Report{Cautions: assess.Cautions()})
	return p.err
}

// RulePack writes one pack with every rule.
func RulePack(w io.Writer, pack rulepack.Pack, date string) error {
	p := page{to: w}
	digest, err := rulepack.Digest(pack)
	if err != nil {
		return err
	}
	p.ends("RULE PACK "+pack.ID+" "+pack.Version, daysWords(pack.InForceDate, pack.ExpiresDate))
	p.line("digest %s", digest)
	p.paragraph("", pack.Title+". "+pack.Source+".")
	for _, remark := range rulepack.Remarks(pack, date) {
		p.paragraph("", "! "+remark)
	}
	p.line("%s", strings.Repeat("-", Width))
	for _, rule := range rulepack.Rules(pack) {
		p.publishedRule(&rule)
	}
	p.cautions(assess.Report{Cautions: assess.Cautions()})
	return p.err
}

// publishedRule writes one rule: its id and figure, what it asks, when, and by what.
func (p *page) publishedRule(rule *assess.AppliedRule) {
	p.ends(rule.ID, figureAsked(rule))
	p.paragraph(indent, rule.Requirement)
	if when := conditionWords(rule.Conditions); when != "" {
		p.paragraph(indent, "Applies when "+when+".")
	}
	if rule.ConfirmationDays != nil {
		p.paragraph(indent, confirmationWords(*rule.ConfirmationDays))
	}
	p.paragraph(indent, standingWords(rule.Verified != nil && *rule.Verified, rule.Citation, rule.Date))
}

func confirmationWords(days int32) string {
	if days == 0 {
		return "Confirmed on the day of the flight."
	}
	return fmt.Sprintf("A confirmation counts for %d days.", days)
}

// ends writes one text at the left and one at the right end of a line, or on two lines where they do not fit.
func (p *page) ends(left, right string) {
	room := Width - utf8.RuneCountInString(left)
	if right == "" || utf8.RuneCountInString(right) < room {
		p.line("%s%*s", left, room, right)
		return
	}
	p.paragraph("", left)
	p.paragraph(indent, right)
}

// figureAsked is a rule's figure with its side, or that a person confirms it.
func figureAsked(rule *assess.AppliedRule) string {
	if rule.Value == nil {
		return "a person confirms"
	}
	name := rule.Limit
	if rule.Fact != "" {
		name = factName(string(rule.Fact))
	}
	unit := rule.Unit
	if unit == "" {
		unit = rule.Fact.Unit()
	}
	return name + " " + sideWords(rule.RightSide()) + " " + printed(*rule.Value, unit)
}

// printed writes a published figure with all its digits.
func printed(value float64, unit string) string {
	text := strconv.FormatFloat(value, 'g', -1, 64)
	if unit == "" || unit == "1" {
		return text
	}
	return text + " " + unit
}

func sideWords(side assess.RuleSense) string {
	if side == assess.RuleSenseLeast {
		return "at least"
	}
	return "at most"
}

// factName is a fact in small letters: "static thrust".
func factName(name string) string {
	if name == string(assess.RuleFactTakeoffMass) {
		return "take-off mass"
	}
	return strings.ToLower(strings.ReplaceAll(strings.TrimPrefix(name, "RULE_FACT_"), "_", " "))
}

// conditionWords says when a rule applies; empty for always.
func conditionWords(conditions []assess.RuleCondition) string {
	var parts []string
	for _, c := range conditions {
		var kinds []string
		for _, kind := range c.EngineKinds {
			kinds = append(kinds, strings.ToLower(strings.ReplaceAll(strings.TrimPrefix(string(kind), "ENGINE_KIND_"), "_", " ")))
		}
		if len(kinds) > 0 {
			parts = append(parts, "an engine is a "+strings.Join(kinds, " or "))
		}
		if c.AtLeast != nil {
			parts = append(parts, factName(string(c.Fact))+" is at least "+printed(*c.AtLeast, c.Fact.Unit()))
		}
		if c.AtMost != nil {
			parts = append(parts, factName(string(c.Fact))+" is at most "+printed(*c.AtMost, c.Fact.Unit()))
		}
	}
	return strings.Join(parts, " and ")
}

func standingWords(verified bool, citation, date string) string {
	text := "unverified: "
	if verified {
		text = "verified: "
	}
	if date != "" {
		citation += ", " + date
	}
	return text + citation
}

func daysWords(from, to string) string {
	if to == "" {
		return "in force from " + from
	}
	return "in force " + from + " to " + to
}

// Strictest writes the strictest of several packs for one document: every figure, and what every rule asks.
func Strictest(w io.Writer, made rulepack.Composition) error {
	p := page{to: w}
	p.line("STRICTEST OF ALL RULES")
	p.paragraph("", made.Limits.RulePack)
	p.line("%s", strings.Repeat("-", Width))
	for _, f := range made.Figures {
		p.figure(f)
	}
	p.cautions(assess.Report{Cautions: assess.Cautions()})
	return p.err
}

// figure writes one figure of the strictest-of view.
func (p *page) figure(f rulepack.Figure) {
	name := f.Limit
	if strings.HasPrefix(name, "RULE_FACT_") {
		name = factName(name)
	}
	switch {
	case f.Value != nil:
		p.ends(name, sideWords(f.Sense)+" "+printed(*f.Value, f.Unit))
	case f.Core != nil:
		p.ends(name, sideWords(f.Sense)+" "+printed(*f.Core, f.Unit)+" (core default)")
	default:
		p.ends(name, "no rule applies")
	}
	for _, a := range f.Asked {
		p.paragraph(indent, askedWords(a, f.Unit))
	}
}

func askedWords(a rulepack.Asked, unit string) string {
	mark := "-"
	if a.Deciding {
		mark = ">"
	}
	text := fmt.Sprintf("%s %s %s", mark, strings.TrimPrefix(a.Rule, "rule."), printed(a.Value, unit))
	if !a.Applies {
		text += ", does not apply"
	}
	if a.Why != "" {
		text += ": " + a.Why
	}
	if !a.Verified {
		text += ", unverified"
	}
	if a.Expired {
		text += ", run out"
	}
	return text
}
