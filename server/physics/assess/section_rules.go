package assess

import "slices"

// The findings of published rules. They come last, since they hold the other findings' settled values against the figures of every rule, not of the
// strictest alone.
//
// What a rule is worth decides with its figure:
//   - past its last day: unknown, since nobody has looked up what replaced it; fails where even the old figure is not met;
//   - not read in its source by anybody, or not confirmed by a club officer: tight at best;
//   - its conditions not met, or its first day still to come: holds, and the note says why.

const (
	ruleMethod   = "The figure of the rule against the value that the report computes for it; a confirmation against the name and date given."
	ruleValidity = "As the pack restates the rule; the published text comes first."
)

// answerRules gives every published rule its finding, once all others are settled.
func (p *pass) answerRules() {
	if p.in.Limits == nil {
		return
	}
	settled := p.results
	for i := range p.in.Limits.Rules {
		if rule := &p.in.Limits.Rules[i]; rule.ID != "" {
			p.results = append(p.results, p.ruleFinding(rule, at("limits.rules", i), settled))
		}
	}
}

// ruleFinding is the finding of one rule.
func (p *pass) ruleFinding(rule *AppliedRule, path string, settled []Finding) Finding {
	f := Finding{
		ID: rule.Finding(), Title: rule.Requirement, Unit: rule.unit(), Method: ruleMethod, Source: ruleSource(rule), Validity: ruleValidity,
		Rule: cite(*rule), LimitSense: LimitSenseNone, FindingClass: FindingClassThirdParty,
	}
	told := p.application(rule.Conditions)
	days := p.datesOf(rule, path)
	switch {
	case len(days.missing) > 0:
		f.lacks(days.missing, "It cannot be told whether the rule is in force.")
	case days.early:
		f.Verdict, f.Note = VerdictHolds, say("Comes into force on %s.", rule.InForceDate)
	case !told.Applies:
		f.Verdict, f.Note = VerdictHolds, say("Does not apply: %s.", told.Why)
	case len(told.Missing) > 0:
		f.lacks(told.Missing, "It cannot be told whether the rule applies.")
	case rule.notAsked(settled):
		told.Applies = false
		f.Verdict, f.Note = VerdictHolds, say("Does not apply: %s is not asked of this model and launch.", rule.BearsOn())
	default:
		p.ruleVerdict(&f, rule, settled)
	}
	if f.Verdict != VerdictUnknown && len(f.From) == 0 {
		f.From = []string{path + ".conditions"}
	}
	f.standing(rule, path, days, told.Applies && !days.early)
	return f
}

// notAsked reports whether a rule limits what this report has no reason to answer, such as the strip of a model that a ramp launches: whatever cannot
// be answered for want of an input stands in the report as unknown.
func (r *AppliedRule) notAsked(settled []Finding) bool {
	return r.Kind == RuleKindLimit && ruleFacts.of(r.Limit) == "" && place(r.BearsOn()) < len(catalogue) && findingIn(settled, r.BearsOn()) == nil
}

// lacks makes a finding unknown and names what is missing.
func (f *Finding) lacks(missing []string, note string) {
	f.Missing = union(missing, nil)
	f.unknown(note)
}

// standing takes back what a rule that nobody verified, or that has run out, must not let pass.
func (f *Finding) standing(rule *AppliedRule, path string, days ruleDates, applies bool) {
	switch {
	case days.late && f.Verdict != VerdictFails:
		note := say("The rule ran out on %s: look up what replaced it.", rule.ExpiresDate)
		f.From, f.Value, f.Margin, f.BandLow, f.BandHigh = nil, nil, nil, nil, nil
		f.lacks([]string{path + ".expiresDate"}, note)
	case days.late:
		f.Note += say(" The rule ran out on %s.", rule.ExpiresDate)
	case !yes(rule.Verified) && applies && f.Verdict == VerdictHolds:
		f.Verdict = VerdictTight
		f.Note += " Nobody has verified the rule in its source."
	case !yes(rule.Verified) && f.Verdict != VerdictUnknown:
		f.Note += " Nobody has verified the rule in its source."
	}
}

// ruleSource is the published document of a rule.
func ruleSource(rule *AppliedRule) string {
	if rule.Citation == "" {
		return rule.Authority
	}
	return rule.Citation
}

// unit of the value: as given, else of the fact, else none.
func (r *AppliedRule) unit() string {
	switch {
	case r.Unit != "":
		return r.Unit
	case r.Fact.Unit() != "":
		return r.Fact.Unit()
	default:
		return "1"
	}
}

// ruleDates says how the day of the flight lies to the days of a rule.
type ruleDates struct {
	early, late bool
	missing     []string
}

func (p *pass) datesOf(rule *AppliedRule, path string) ruleDates {
	var out ruleDates
	if rule.InForceDate == "" && rule.ExpiresDate == "" {
		return out
	}
	now := localTimeOf(p.today().Time)
	if !now.known {
		return ruleDates{missing: []string{"day.time"}}
	}
	if rule.InForceDate != "" {
		first, ok := daysOf(rule.InForceDate)
		if out.early = now.days < first; !ok {
			out.missing = append(out.missing, path+".inForceDate")
		}
	}
	if rule.ExpiresDate != "" {
		last, ok := daysOf(rule.ExpiresDate)
		if out.late = now.days > last; !ok {
			out.missing = append(out.missing, path+".expiresDate")
		}
	}
	return out
}

// ruleVerdict judges a rule that applies.
func (p *pass) ruleVerdict(f *Finding, rule *AppliedRule, settled []Finding) {
	switch rule.Kind {
	case RuleKindConfirmation:
		p.confirmed(f, rule)
	case RuleKindLimit:
		p.limitRule(f, rule, settled)
	case RuleKindClass:
		p.factRule(f, rule, rule.Fact)
	default:
		f.lacks([]string{"limits.rules"}, "The rule does not say what kind it is.")
	}
}

// limitRule holds the figure of a rule against the value of the finding that answers for it.
func (p *pass) limitRule(f *Finding, rule *AppliedRule, settled []Finding) {
	if fact := ruleFacts.of(rule.Limit); fact != "" {
		p.factRule(f, rule, fact)
		return
	}
	computed := findingIn(settled, rule.BearsOn())
	switch {
	case rule.Value == nil:
		f.lacks([]string{"limits.rules"}, "The rule gives no figure.")
	case computed == nil:
		f.lacks([]string{"limits.rules"}, say("No finding answers for %s.", rule.Limit))
	case computed.Verdict == VerdictUnknown:
		f.lacks(computed.Missing, say("%s is unknown. %s", computed.ID, computed.Note))
	case computed.Value == nil:
		f.follow(computed)
		f.Note = say("As %s: %s", computed.ID, computed.Note)
	case ruleFindings.of(rule.Limit) == computed.ID:
		f.against(rule, computed, *rule.Value)
		p.oddsAgainst(f, computed)
	case ruleShares.of(rule.Limit) == computed.ID && p.shareInForce(rule.Limit) > 0 && computed.Limit != nil:
		f.against(rule, computed, *computed.Limit**rule.Value/p.shareInForce(rule.Limit))
		p.oddsAgainst(f, computed)
	default:
		f.follow(computed)
		f.Note = say("%s was computed with the strictest figure, which answers for this rule: %s", computed.ID, computed.Note)
	}
}

// follow takes over what a computed finding says where it answers for the rule by itself.
func (f *Finding) follow(computed *Finding) {
	f.Verdict, f.From, f.FindingClass = computed.Verdict, slices.Clone(computed.From), computed.FindingClass
	f.HoldsProbability, f.RequiredProbability = computed.HoldsProbability, computed.RequiredProbability
}

// shareInForce is the share of a length that the finding was held against.
func (p *pass) shareInForce(name string) float64 {
	for _, f := range []figure{stripUseFigure, landingUseFigure} {
		if f.name == name {
			return p.limit(f).value
		}
	}
	return 0
}

func findingIn(list []Finding, id string) *Finding {
	for i := range list {
		if list[i].ID == id {
			return &list[i]
		}
	}
	return nil
}

// against holds a computed finding's value and band against a rule's figure; where that is the figure in force, the finding's own verdict stands.
func (f *Finding) against(rule *AppliedRule, computed *Finding, figure float64) {
	value := *computed.Value
	f.Value, f.Unit, f.Limit, f.LimitSense = &value, computed.Unit, &figure, rule.sense()
	f.BandLow, f.BandHigh, f.From = computed.BandLow, computed.BandHigh, slices.Clone(computed.From)
	f.OutsideValidity, f.RestsOnEstimate = computed.OutsideValidity, computed.RestsOnEstimate
	f.holdBand()
	if f.FindingClass = computed.FindingClass; computed.Limit != nil && *computed.Limit == figure && computed.LimitSense == f.LimitSense {
		f.Verdict, f.HoldsProbability, f.RequiredProbability = computed.Verdict, computed.HoldsProbability, computed.RequiredProbability
	}
	f.Note = say("%s: %s against %s asked.", computed.Title, figureWords(value, f.Unit), figureWords(figure, f.Unit))
}

// factRule holds a fact against a rule's figure.
func (p *pass) factRule(f *Finding, rule *AppliedRule, name RuleFact) {
	fact := p.fact(name)
	f.factAgainst(rule, name, fact)
	if p.samples != nil && f.Value != nil {
		f.odds(p.samples.factValues(name, fact), p.required(f.FindingClass))
	}
}

func (f *Finding) factAgainst(rule *AppliedRule, name RuleFact, fact known) {
	switch {
	case len(fact.missing) > 0:
		f.lacks(fact.missing, "")
		return
	case rule.Value == nil || rule.sense() == LimitSenseNone:
		f.lacks([]string{"limits.rules"}, "The rule gives no figure or no side of it.")
		return
	}
	value, figure, half := fact.value, *rule.Value, float64(bandFactor*fact.deviation)
	f.Value, f.Unit, f.Limit, f.LimitSense, f.RestsOnEstimate = &value, name.Unit(), &figure, rule.sense(), fact.estimated
	if half > 0 {
		low, high := value-half, value+half
		f.BandLow, f.BandHigh = &low, &high
	}
	f.From = fact.from
	f.holdBand()
	f.Note = say("The %s is %s, and %s is asked.", factWords.of(name).name, figureWords(value, f.Unit), figureWords(figure, f.Unit))
}

// holdBand sets margin and verdict of a value and, where it has one, of its band.
func (f *Finding) holdBand() {
	f.Verdict = VerdictHolds
	f.setMargin(new(float64))
	if f.Verdict == VerdictHolds && f.BandLow != nil && f.BandHigh != nil && f.worstMargin(*f.BandLow, *f.BandHigh) < 0 {
		f.Verdict = VerdictTight
	}
}
