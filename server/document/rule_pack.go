package document

import "pitgate/server/physics/assess"

// RulePack is what a rule pack says, as its data file holds it.
type RulePack struct {
	// Small letters, digits and hyphens; the same for all versions of the pack.
	ID        string `json:"id,omitempty" range:"min_len=1,max_len=40"`
	Title     string `json:"title,omitempty" range:"min_len=1,max_len=120"`
	Authority string `json:"authority,omitempty" range:"min_len=1,max_len=120"`
	Version   string `json:"version,omitempty" range:"min_len=1,max_len=40"`
	// First day in force, e.g. "2026-03-01".
	InForceDate string `json:"inForceDate,omitempty" range:"min_len=1,max_len=10"`
	// Last day; empty: without end.
	ExpiresDate string `json:"expiresDate,omitempty" range:"max_len=10"`
	// The document that it restates.
	Source string               `json:"source,omitempty" range:"min_len=1,max_len=400"`
	Rules  []assess.AppliedRule `json:"rules,omitempty" range:"min_items=1,max_items=100"`
}

// DecodeRulePack reads a rule pack strictly. Its error, when the pack is at fault, is of type Errors.
func DecodeRulePack(data []byte) (RulePack, error) {
	var pack RulePack
	if err := decode(data, &pack); err != nil {
		return RulePack{}, err
	}
	return pack, nil
}

func checkRulePack(pack *RulePack, found *faults) {
	checkSlug(pack.ID, "id", found)
	checkDate(pack.InForceDate, "inForceDate", found)
	checkDate(pack.ExpiresDate, "expiresDate", found)
	if pack.ExpiresDate != "" && pack.ExpiresDate < pack.InForceDate {
		found.add("expiresDate", "must not lie before inForceDate "+pack.InForceDate+", got "+pack.ExpiresDate)
	}
	checkRules(pack.Rules, "rules", found)
	for i := range pack.Rules {
		rule, at := &pack.Rules[i], index("rules", i)
		if rule.ID == "" {
			found.add(join(at, "id"), "must be given in a pack")
		}
		if rule.Pack != "" || rule.Deciding != nil {
			found.add(at, "pack and deciding are filled when the pack is applied, not in it")
		}
	}
}
