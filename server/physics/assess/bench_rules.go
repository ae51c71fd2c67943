package assess

const documentGroup = "Documents and rules"

// ruleItems are the confirmations that the packs in force ask for, and the field owner's permission.
func (v *benchView) ruleItems() []BenchItem {
	var out []BenchItem
	if f := v.found["field.permission"]; f != nil {
		out = append(out, BenchItem{
			ID: "bench.documents.permission", Group: documentGroup, Title: "Permission of the field's owner",
			How: "Read it: dates, quiet hours, kinds of model.", Wanted: "covers the day and the hour of the flight",
			Why: v.why("Without it the field is somebody else's land.", []string{f.ID}), Input: "field.permission", FindingIDs: []string{f.ID},
		})
	}
	if v.pass.in.Limits == nil {
		return out
	}
	for i := range v.pass.in.Limits.Rules {
		rule := &v.pass.in.Limits.Rules[i]
		if f := v.found[rule.Finding()]; rule.ID != "" && rule.Kind == RuleKindConfirmation && f != nil && v.pass.application(rule.Conditions).Applies {
			out = append(out, BenchItem{
				ID: "bench.documents." + rule.Key(), Group: documentGroup, Title: rule.Requirement, How: "Ask for it, look at it, write down who confirms it and the day." + officerWanted(rule),
				Wanted: "confirmed with name and date", Why: v.why(cite(*rule)+".", []string{f.ID}), Input: "confirmations", FindingIDs: []string{f.ID},
			})
		}
	}
	return out
}
