package assess

// RuleKind says: what a rule asks.
type RuleKind string

// Values of RuleKind; the empty string means that nothing was said.
const (
	// A figure of Limits: the field named in limit is held against value.
	RuleKindLimit RuleKind = "RULE_KIND_LIMIT"
	// Something that a person confirms, with a date.
	RuleKindConfirmation RuleKind = "RULE_KIND_CONFIRMATION"
	// A fact of the model or the flight that is no field of Limits is held against value.
	RuleKindClass RuleKind = "RULE_KIND_CLASS"
)

// Names lists every value that may stand in a document.
func (RuleKind) Names() []string {
	return []string{string(RuleKindLimit), string(RuleKindConfirmation), string(RuleKindClass)}
}

// RuleSense says: what a rule's value is: the least or the greatest that it lets pass.
type RuleSense string

// Values of RuleSense; the empty string means that nothing was said.
const (
	RuleSenseLeast    RuleSense = "RULE_SENSE_LEAST"
	RuleSenseGreatest RuleSense = "RULE_SENSE_GREATEST"
)

// Names lists every value that may stand in a document.
func (RuleSense) Names() []string { return []string{string(RuleSenseLeast), string(RuleSenseGreatest)} }

// RuleFact says: a plain fact of the model or the flight.
type RuleFact string

// Values of RuleFact; the empty string means that nothing was said.
const (
	// With the fuel of the flight, kg.
	RuleFactTakeoffMass RuleFact = "RULE_FACT_TAKEOFF_MASS"
	// Without fuel, kg.
	RuleFactEmptyMass RuleFact = "RULE_FACT_EMPTY_MASS"
	// Of all engines as given, N.
	RuleFactStaticThrust RuleFact = "RULE_FACT_STATIC_THRUST"
	RuleFactEngineCount  RuleFact = "RULE_FACT_ENGINE_COUNT"
	// Planned for the circuit, m/s.
	RuleFactCircuitAirspeed RuleFact = "RULE_FACT_CIRCUIT_AIRSPEED"
	// Planned for the circuit over the ground, m.
	RuleFactHeight RuleFact = "RULE_FACT_HEIGHT"
	// From the loss of the link to the fail-safe's action, s.
	RuleFactFailSafeDelay RuleFact = "RULE_FACT_FAIL_SAFE_DELAY"
)

// Names lists every value that may stand in a document.
func (RuleFact) Names() []string {
	return []string{string(RuleFactTakeoffMass), string(RuleFactEmptyMass), string(RuleFactStaticThrust), string(RuleFactEngineCount),
		string(RuleFactCircuitAirspeed), string(RuleFactHeight), string(RuleFactFailSafeDelay)}
}

// RuleCondition: when a rule applies. Every part that is given must be met.
type RuleCondition struct {
	Fact RuleFact `json:"fact,omitempty"`
	// The fact is this or more.
	AtLeast *float64 `json:"atLeast,omitempty" range:"gte=0,lte=1000000"`
	// The fact is this or less.
	AtMost *float64 `json:"atMost,omitempty" range:"gte=0,lte=1000000"`
	// At least one engine is of one of these kinds.
	EngineKinds []EngineKind `json:"engineKinds,omitempty" range:"max_items=10"`
}

// AppliedRule: one published rule, as a pack holds it and as it is applied. With an id it has a finding of its own, "rule.<pack>.<id>"; without one it
// only cites where a figure of Limits comes from.
type AppliedRule struct {
	// Finding it bears on, e.g. "height.limit". Needed without an id; with one, absent: by the limit or fact.
	FindingID string `json:"findingId,omitempty" range:"max_len=80"`
	Authority string `json:"authority,omitempty" range:"max_len=120"`
	Citation  string `json:"citation,omitempty" range:"max_len=400"`
	// Date of the document, e.g. "2024-05-14".
	Date string `json:"date,omitempty" range:"max_len=10"`
	// False until somebody has read it in the source or a club officer confirms it.
	Verified *bool `json:"verified,omitempty"`
	// Small letters, digits and hyphens; unique within its pack.
	ID string `json:"id,omitempty" range:"max_len=40"`
	// Id of its pack; filled when it is applied.
	Pack string `json:"pack,omitempty" range:"max_len=40"`
	// What it asks, in plain words.
	Requirement string   `json:"requirement,omitempty" range:"max_len=400"`
	Kind        RuleKind `json:"kind,omitempty"`
	// Field of Limits by its JSON name, e.g. "maximumMassKg"; for kind limit.
	Limit string   `json:"limit,omitempty" range:"max_len=60"`
	Value *float64 `json:"value,omitempty" range:"gte=-1000000,lte=1000000"`
	// SI symbol of the value.
	Unit string `json:"unit,omitempty" range:"max_len=12"`
	// For kind class.
	Fact RuleFact `json:"fact,omitempty"`
	// For kind class; a limit's follows from its name.
	Sense RuleSense `json:"sense,omitempty"`
	// First day on which it counts; absent: its pack's.
	InForceDate string `json:"inForceDate,omitempty" range:"max_len=10"`
	// Last day on which it counts; absent: its pack's.
	ExpiresDate string `json:"expiresDate,omitempty" range:"max_len=10"`
	// When it applies; empty: always.
	Conditions []RuleCondition `json:"conditions,omitempty" range:"max_items=10"`
	// True when the figure in force is this rule's: the strictest of all that apply. Filled when packs are composed.
	Deciding *bool `json:"deciding,omitempty"`
	// Days for which a confirmation counts; 0: on its own day only. Absent: without end.
	ConfirmationDays *int32 `json:"confirmationDays,omitempty" range:"gte=0,lte=3660"`
	// Who read it in its source, or confirmed it for the club.
	VerifiedBy string `json:"verifiedBy,omitempty" range:"max_len=120"`
	// The day on which that was, e.g. "2026-05-16".
	VerifiedDate string `json:"verifiedDate,omitempty" range:"max_len=10"`
	// Of a confirmation: a safety officer must say so, the owner's own word does not count.
	Officer *bool `json:"officer,omitempty"`
}

// RuleConfirmation: somebody's word that what a rule asks for is so.
type RuleConfirmation struct {
	// "<pack>.<rule>"
	Rule string `json:"rule,omitempty" range:"min_len=1,max_len=81"`
	// False says that it is not so.
	Confirmed *bool `json:"confirmed,omitempty"`
	// Who says so.
	By string `json:"by,omitempty" range:"max_len=120"`
	// The day on which it was confirmed, e.g. "2026-05-16".
	Date string `json:"date,omitempty" range:"max_len=10"`
	// True when a safety officer of the club says so; on an approval the server fills it.
	Officer *bool `json:"officer,omitempty"`
}
