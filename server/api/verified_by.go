package api

import (
	"context"
	"fmt"
	"slices"

	"pitgate/server/document"
	"pitgate/server/physics/assess"
	"pitgate/server/postgres"
	"pitgate/server/rulepack"
)

// checkVerifiers wants who is said to have verified a rule to be the caller, unless a former version of the pack says the same of the same figure:
// nobody verifies for another.
func checkVerifiers(ctx context.Context, tx *postgres.ReadTx, c caller, content []byte, before ...rulepack.Pack) error {
	pack, err := document.DecodeRulePack(content)
	if err != nil {
		return fmt.Errorf("rule pack as it is kept: %w", err)
	}
	rules, err := readRules(ctx, tx)
	if err != nil {
		return err
	}
	for _, p := range append(before, rules...) {
		if p.ID != pack.ID {
			continue
		}
		pack.Rules = withoutVerifiersOf(pack.Rules, p.Rules)
	}
	var refused []violation
	for i := range pack.Rules {
		if by := pack.Rules[i].VerifiedBy; by != "" && by != c.person.DisplayName {
			refused = append(refused, violation{fmt.Sprintf("rulePack.content.rules[%d].verifiedBy", i), "must be your own name: nobody verifies for another"})
		}
	}
	if len(refused) > 0 {
		return &invalidError{refused}
	}
	return nil
}

// withoutVerifiersOf clears the name where a former version says the same of the same rule.
func withoutVerifiersOf(rules, former []assess.AppliedRule) []assess.AppliedRule {
	out := slices.Clone(rules)
	for i := range out {
		at := slices.IndexFunc(former, func(r assess.AppliedRule) bool { return r.ID == out[i].ID })
		if at >= 0 && former[at].VerifiedBy == out[i].VerifiedBy && former[at].VerifiedDate == out[i].VerifiedDate && sameValue(former[at].Value, out[i].Value) {
			out[i].VerifiedBy = ""
		}
	}
	return out
}

func sameValue(a, b *float64) bool {
	return a == nil && b == nil || a != nil && b != nil && *a == *b
}
