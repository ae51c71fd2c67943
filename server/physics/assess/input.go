package assess

// Input: the one document: a model, a field, how it is launched, a day, the limits that apply, and what people confirmed. Its proto3 JSON is what the command line reads, the
// database keeps, the page edits and the ledger digests.
type Input struct {
	Model      *ModelDescription `json:"model,omitempty"`
	Field      *FieldDescription `json:"field,omitempty"`
	LaunchPlan *LaunchPlan       `json:"launchPlan,omitempty"`
	Day        *DayConditions    `json:"day,omitempty"`
	Limits     *Limits           `json:"limits,omitempty"`
	// What somebody confirmed that a rule asks for.
	Confirmations []RuleConfirmation `json:"confirmations,omitempty" range:"max_items=200"`
}
