package document

import (
	"reflect"
	"strings"

	"pitgate/server/physics/assess"
	"pitgate/server/physics/weather"
)

// isSlug tells whether a text has the form of the id of a rule or a pack: small letters, digits and, not at its ends, hyphens.
func isSlug(text string) bool {
	if text == "" || strings.HasPrefix(text, "-") || strings.HasSuffix(text, "-") {
		return false
	}
	return strings.Trim(text, "abcdefghijklmnopqrstuvwxyz0123456789-") == ""
}

// checkRules wants every rule to say what its kind needs, and no rule twice.
func checkRules(rules []assess.AppliedRule, path string, found *faults) {
	seen := map[string]bool{}
	for i := range rules {
		rule, at := &rules[i], index(path, i)
		checkRule(rule, at, found)
		if rule.ID == "" {
			continue
		}
		if seen[rule.Key()] {
			found.add(join(at, "id"), "stands twice: "+rule.Key())
		}
		seen[rule.Key()] = true
	}
}

func checkRule(rule *assess.AppliedRule, path string, found *faults) {
	checkDate(rule.Date, join(path, "date"), found)
	if rule.ID == "" {
		if rule.FindingID == "" {
			found.add(join(path, "findingId"), "must be given where the rule has no id")
		}
		return
	}
	checkSlug(rule.ID, join(path, "id"), found)
	if rule.Pack != "" {
		checkSlug(rule.Pack, join(path, "pack"), found)
	}
	checkDate(rule.InForceDate, join(path, "inForceDate"), found)
	checkDate(rule.ExpiresDate, join(path, "expiresDate"), found)
	checkDate(rule.VerifiedDate, join(path, "verifiedDate"), found)
	if rule.Requirement == "" {
		found.add(join(path, "requirement"), "must say in plain words what is asked")
	}
	if rule.Officer != nil && *rule.Officer && rule.Kind != assess.RuleKindConfirmation {
		found.add(join(path, "officer"), "must be left out: only what is confirmed can take an officer's word")
	}
	checkRuleKind(rule, path, found)
	for i := range rule.Conditions {
		checkCondition(&rule.Conditions[i], index(join(path, "conditions"), i), found)
	}
}

// checkRuleKind wants what a rule of its kind cannot do without.
func checkRuleKind(rule *assess.AppliedRule, path string, found *faults) {
	switch rule.Kind {
	case assess.RuleKindLimit:
		checkRuleLimit(rule, path, found)
	case assess.RuleKindClass:
		if rule.Fact == "" {
			found.add(join(path, "fact"), "must name a fact for a rule of kind class")
		}
		if rule.Sense == "" {
			found.add(join(path, "sense"), "must say whether the value is the least or the greatest")
		}
		needValue(rule, path, found)
		if unit := rule.Fact.Unit(); rule.Unit != "" && rule.Unit != unit {
			found.add(join(path, "unit"), "must be "+unit+" for this fact, got "+rule.Unit)
		}
	case assess.RuleKindConfirmation:
		if rule.Value != nil || rule.Limit != "" || rule.Fact != "" {
			found.add(join(path, "kind"), "a confirmation has no value, limit or fact")
		}
	default:
		found.add(join(path, "kind"), "must be given")
	}
}

func needValue(rule *assess.AppliedRule, path string, found *faults) {
	if rule.Value == nil {
		found.add(join(path, "value"), "must be given for a rule of this kind")
	}
}

// checkRuleLimit wants the limit to be a figure of Limits and the value within that field's range.
func checkRuleLimit(rule *assess.AppliedRule, path string, found *faults) {
	field, ok := fieldNamed(reflect.TypeFor[assess.Limits](), rule.Limit)
	if !ok || field.Type != reflect.TypeFor[*float64]() || jsonName(field) != rule.Limit {
		found.add(join(path, "limit"), "must name a figure of the limits, got "+rule.Limit)
		return
	}
	needValue(rule, path, found)
	if rule.Value == nil {
		return
	}
	if message := rangeFault(field, *rule.Value); message != "" {
		found.add(join(path, "value"), message)
	}
}

func checkCondition(c *assess.RuleCondition, path string, found *faults) {
	switch {
	case c.Fact == "" && len(c.EngineKinds) == 0:
		found.add(path, "must name a fact or a kind of engine")
	case c.Fact == "" && (c.AtLeast != nil || c.AtMost != nil):
		found.add(join(path, "fact"), "must be named where a figure is given")
	case c.Fact != "" && c.AtLeast == nil && c.AtMost == nil:
		found.add(path, "must give atLeast or atMost for its fact")
	case c.AtLeast != nil && c.AtMost != nil && *c.AtLeast > *c.AtMost:
		found.add(join(path, "atMost"), "must not be less than atLeast "+plain(*c.AtLeast)+", got "+plain(*c.AtMost))
	}
}

func checkSlug(text, path string, found *faults) {
	if !isSlug(text) {
		found.add(path, "must be small letters, digits and hyphens, got "+text)
	}
}

// checkDate wants a date that is given to be one.
func checkDate(text, path string, found *faults) {
	if text == "" {
		return
	}
	if _, err := weather.Moment(text + "T00:00:00Z"); err != nil || len(text) != len("2026-05-16") {
		found.add(path, "must be a date such as 2026-05-16, got "+text)
		return
	}
	checkYear(text, path, found)
}
