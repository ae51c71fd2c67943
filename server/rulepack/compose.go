package rulepack

import (
	"encoding/json"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"pitgate/server/document"
	"pitgate/server/physics/assess"
)

// Owner stands where the owner of a model asks for more than any rule.
const Owner = "owner"

// Figure is one figure of the limits, or of a class: the strictest, and what every rule asks.
type Figure struct {
	// Limit is the field of Limits by its JSON name, or the fact of a class.
	Limit, Unit string
	Sense       assess.RuleSense
	// Value is nil when no rule that asks for it applies.
	Value *float64
	// Deciding is the finding of the rule that gave the value, or Owner.
	Deciding string
	// Core is the core's own figure, which counts when Value is nil; nil where it has none.
	Core  *float64
	Asked []Asked
}

// Asked is what one rule asks for a figure.
type Asked struct {
	// Rule is the rule's finding, or Owner.
	Rule                      string
	Authority, Citation, Date string
	Value                     float64
	Applies                   bool
	// Why it does not apply, or that this cannot be told.
	Why                         string
	Verified, Expired, Deciding bool
	at                          int // index among the rules
}

// Composition is what several packs make for one document.
type Composition struct {
	Limits  assess.Limits
	Figures []Figure
}

// Compose makes the strictest figures of several packs and of the document's own limits into the limits of that document.
//
// Of figures that are a least value the greatest counts, of those that are a greatest value the least. A rule counts when its conditions are met or
// cannot be told and its first day has come; one that has run out still counts, marked so, since no figure must grow looser by a date alone. Rules of
// packs that the document's limits hold already are replaced, so that composing twice changes nothing. The deciding rule of each figure is marked. Of
// several versions of a pack the one counts that is in force on the day of the flight.
func Compose(packs []Pack, in assess.Input) (Composition, error) {
	own, err := ownLimits(in.Limits)
	if err != nil {
		return Composition{}, err
	}
	packs = InForce(packs, dateOf(in))
	var rules []assess.AppliedRule
	for _, pack := range packs {
		rules = append(rules, Rules(pack)...)
	}
	figures := figuresOf(rules, assess.Applications(in, rules), dateOf(in), own)
	for i := range figures {
		figures[i].decide(rules)
		figures[i].put(own)
	}
	limits, err := limitsFrom(own)
	if err != nil {
		return Composition{}, err
	}
	limits.Rules = append(citationsOnly(limits.Rules), rules...)
	if len(packs) > 0 {
		limits.RulePack = label(packs)
	}
	return Composition{Limits: limits, Figures: figures}, nil
}

// InForce picks of every pack the version in force on a day ("2026-05-16"): the newest whose first day has come. Before the first day of all of them it
// is the one that comes first, which says itself that it is still to come; of a day that is not told it is the newest. Packs stay in their order.
func InForce(packs []Pack, date string) []Pack {
	var out []Pack
	for _, pack := range packs {
		at := slices.IndexFunc(out, func(p Pack) bool { return p.ID == pack.ID })
		switch {
		case at < 0:
			out = append(out, pack)
		case takesPlace(pack.InForceDate, out[at].InForceDate, date):
			out[at] = pack
		}
	}
	return out
}

// takesPlace tells whether a version that begins on first counts on the date rather than one that begins on other.
func takesPlace(first, other, date string) bool {
	come, otherCome := date == "" || first <= date, date == "" || other <= date
	switch {
	case come && otherCome:
		return first >= other
	case come || otherCome:
		return come
	default:
		return first < other
	}
}

// ownLimits returns the figures that a document gives by itself, by JSON name. Figures that an earlier composition put there are taken out.
func ownLimits(given *assess.Limits) (map[string]any, error) {
	own := map[string]any{}
	if given == nil {
		return own, nil
	}
	text, err := json.Marshal(given)
	if err != nil {
		return nil, fmt.Errorf("limits: %w", err)
	}
	if err := json.Unmarshal(text, &own); err != nil {
		return nil, fmt.Errorf("limits: %w", err)
	}
	composed := false
	for i := range given.Rules {
		rule := &given.Rules[i]
		composed = composed || rule.ID != ""
		if rule.Kind == assess.RuleKindLimit && rule.Deciding != nil && *rule.Deciding && sameFigure(own[rule.Limit], rule.Value) {
			delete(own, rule.Limit)
		}
	}
	if composed {
		delete(own, "rulePack")
	}
	return own, nil
}

func sameFigure(given any, value *float64) bool {
	number, ok := given.(float64)
	return ok && value != nil && number == *value
}

// limitsFrom reads limits back; a figure out of its range is an error that names the field.
func limitsFrom(own map[string]any) (assess.Limits, error) {
	text, err := json.Marshal(own)
	if err != nil {
		return assess.Limits{}, fmt.Errorf("limits: %w", err)
	}
	return document.DecodeLimits(text)
}

// citationsOnly keeps the rules that only cite.
func citationsOnly(rules []assess.AppliedRule) []assess.AppliedRule {
	return slices.DeleteFunc(slices.Clone(rules), func(r assess.AppliedRule) bool { return r.ID != "" })
}

// maximumLabel is the longest that the name of a composition may be.
const maximumLabel = 120

// label names the packs in one line.
func label(packs []Pack) string {
	names := make([]string, 0, len(packs))
	for _, pack := range packs {
		names = append(names, Label(pack))
	}
	text := strings.Join(names, ", ")
	if runes := []rune(text); len(runes) > maximumLabel {
		return string(runes[:maximumLabel-3]) + "..."
	}
	return text
}

// dateOf is the date of the flight at the field; empty when it is not given.
func dateOf(in assess.Input) string {
	if in.Day == nil || len(in.Day.Time) < len("2026-05-16") {
		return ""
	}
	return in.Day.Time[:len("2026-05-16")]
}

// figuresOf gathers what rules and owner ask, one figure for every field or fact, in the order of the rules.
func figuresOf(rules []assess.AppliedRule, told []assess.Application, date string, own map[string]any) []Figure {
	var figures []Figure
	at := map[string]int{}
	for i := range rules {
		rule := &rules[i]
		name := rule.Limit
		if rule.Kind == assess.RuleKindClass {
			name = string(rule.Fact) + " " + string(rule.Sense)
		}
		if name == "" || rule.Value == nil {
			continue
		}
		place, seen := at[name]
		if !seen {
			place = len(figures)
			at[name] = place
			figures = append(figures, newFigure(rule, own))
		}
		figures[place].Asked = append(figures[place].Asked, asked(rule, told[i], date, i))
	}
	return figures
}

// newFigure opens a figure with what the owner asks.
func newFigure(rule *assess.AppliedRule, own map[string]any) Figure {
	f := Figure{Limit: rule.Limit, Unit: orElse(rule.Unit, rule.Fact.Unit()), Sense: rule.RightSide()}
	if rule.Kind == assess.RuleKindClass {
		f.Limit = string(rule.Fact)
		return f
	}
	if core, ok := assess.CoreFigure(rule.Limit); ok {
		f.Core = &core
	}
	if value, ok := own[rule.Limit].(float64); ok {
		f.Asked = append(f.Asked, Asked{Rule: Owner, Value: value, Applies: true, Verified: true, at: -1})
	}
	return f
}

func asked(rule *assess.AppliedRule, told assess.Application, date string, at int) Asked {
	out := Asked{
		Rule: rule.Finding(), Authority: rule.Authority, Citation: rule.Citation, Date: rule.Date, Value: *rule.Value, Applies: told.Applies, Why: told.Why,
		Verified: rule.Verified != nil && *rule.Verified, Expired: date != "" && rule.ExpiresDate != "" && date > rule.ExpiresDate, at: at,
	}
	switch {
	case date != "" && date < rule.InForceDate:
		out.Applies, out.Why = false, "comes into force on "+rule.InForceDate
	case len(told.Missing) > 0:
		out.Why = "taken to apply, since the document lacks " + strings.Join(told.Missing, ", ")
	}
	return out
}

// decide finds the strictest of those that apply: the first of several equal ones. It marks the rule.
func (f *Figure) decide(rules []assess.AppliedRule) {
	best := -1
	for i := range f.Asked {
		if f.Asked[i].Applies && (best < 0 || f.stricter(f.Asked[i].Value, f.Asked[best].Value)) {
			best = i
		}
	}
	if best < 0 {
		return
	}
	chosen := &f.Asked[best]
	chosen.Deciding, f.Deciding = true, chosen.Rule
	value := chosen.Value
	f.Value = &value
	if yes := true; chosen.at >= 0 {
		rules[chosen.at].Deciding = &yes
	}
}

// stricter reports whether a asks for more than b.
func (f *Figure) stricter(a, b float64) bool {
	if f.Sense == assess.RuleSenseLeast {
		return a > b
	}
	return a < b
}

// limitNames are the figures of Limits by JSON name.
var limitNames = func() map[string]bool {
	names := map[string]bool{}
	of := reflect.TypeFor[assess.Limits]()
	for i := range of.NumField() {
		if of.Field(i).Type == reflect.TypeFor[*float64]() {
			name, _, _ := strings.Cut(of.Field(i).Tag.Get("json"), ",")
			names[name] = true
		}
	}
	return names
}()

// put writes the figure into limits by JSON name; a class has no place there.
func (f *Figure) put(own map[string]any) {
	if f.Value != nil && limitNames[f.Limit] {
		own[f.Limit] = *f.Value
	}
}
