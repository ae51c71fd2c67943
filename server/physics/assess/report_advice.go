package assess

// FindingClass says: whom it hurts when a limit is not met.
type FindingClass string

// Values of FindingClass; the empty string means that nothing was said.
const (
	// People who did not choose the risk.
	FindingClassThirdParty FindingClass = "FINDING_CLASS_THIRD_PARTY"
	// The model and its owner.
	FindingClassModelLoss FindingClass = "FINDING_CLASS_MODEL_LOSS"
	// Handling, comfort, wear.
	FindingClassHandling FindingClass = "FINDING_CLASS_HANDLING"
)

// Names lists every value that may stand in a document.
func (FindingClass) Names() []string {
	return []string{string(FindingClassThirdParty), string(FindingClassModelLoss), string(FindingClassHandling)}
}

// SpreadRun: how the spread was sampled.
type SpreadRun struct {
	Seed        int32 `json:"seed"`
	SampleCount int32 `json:"sampleCount"`
	// Samples without an answer, left out.
	LostCount int32 `json:"lostCount"`
}

// MeasurementAdvice: a measurement and what it would settle.
type MeasurementAdvice struct {
	// Path of the input in the document.
	Input string `json:"input,omitempty"`
	Title string `json:"title,omitempty"`
	// How to measure it.
	How string `json:"how,omitempty"`
	// Findings that a measured value would settle, most first.
	FindingIDs []string `json:"findingIds,omitempty"`
	// Largest share of a finding's variance that it has.
	ShareRatio float64 `json:"shareRatio"`
}

// Remedy: a change of one or two inputs that makes a finding hold.
type Remedy struct {
	FindingID string `json:"findingId,omitempty"`
	// Empty: no change among those tried helps, and the note says so.
	Changes []RemedyChange `json:"changes,omitempty"`
	Effort  RemedyEffort   `json:"effort,omitempty"`
	// Findings that the change makes hold, the one above among them.
	Fixes []string `json:"fixes,omitempty"`
	// Findings that held and no longer would.
	Breaks []string `json:"breaks,omitempty"`
	Note   string   `json:"note,omitempty"`
	// Share of samples in which the finding holds after the change.
	HoldsProbability *float64 `json:"holdsProbability,omitempty"`
	// What turns the document into the changed one, for whoever does not know the knobs.
	Edits []InputEdit `json:"edits,omitempty"`
	// changed is the document with the changes in it; nil where nothing helps.
	changed *Input
}

// Changed is the document with the remedy in it; false where nothing helps.
func (r *Remedy) Changed() (Input, bool) {
	if r.changed == nil {
		return Input{}, false
	}
	return *r.changed, true
}

// RemedyChange: one changed input.
type RemedyChange struct {
	// "ramp.length", "mass", "wind.head": a plain name of the knob.
	Knob  string   `json:"knob,omitempty"`
	Title string   `json:"title,omitempty"`
	From  *float64 `json:"from,omitempty"`
	To    *float64 `json:"to,omitempty"`
	Unit  string   `json:"unit,omitempty"`
	// Paths of the document that change.
	Inputs []string `json:"inputs,omitempty"`
}

// InputEdit: a new value at one path of the document.
type InputEdit struct {
	// Path of the document down to a number, a word or a yes or no: "launchPlan.ramp.lengthMeters.value", "launchPlan.stripReversed".
	Input string `json:"input,omitempty"`
	// One of these three; none: what stood there is taken away.
	Number *float64 `json:"number,omitempty"`
	Text   *string  `json:"text,omitempty"`
	Flag   *bool    `json:"flag,omitempty"`
}

// RemedyEffort says: how much work a remedy is.
type RemedyEffort string

// Values of RemedyEffort; the empty string means that nothing was said.
const (
	// Come on another day or launch another way round.
	RemedyEffortAnotherDay RemedyEffort = "REMEDY_EFFORT_ANOTHER_DAY"
	// Move ballast, fuel, settings.
	RemedyEffortAdjust RemedyEffort = "REMEDY_EFFORT_ADJUST"
	// Longer ramp, more stretch, another tyre.
	RemedyEffortEquipment RemedyEffort = "REMEDY_EFFORT_EQUIPMENT"
	// Change the model itself.
	RemedyEffortRebuild RemedyEffort = "REMEDY_EFFORT_REBUILD"
)

// Names lists every value that may stand in a document.
func (RemedyEffort) Names() []string {
	return []string{string(RemedyEffortAnotherDay), string(RemedyEffortAdjust), string(RemedyEffortEquipment), string(RemedyEffortRebuild)}
}

// BenchItem: one point of the bench inspection.
type BenchItem struct {
	// Dotted and stable, e.g. "bench.fuel.trap".
	ID string `json:"id,omitempty"`
	// Heading under which it stands: "Mass and balance", "Controls", "Fuel".
	Group string `json:"group,omitempty"`
	Title string `json:"title,omitempty"`
	// How it is done.
	How string `json:"how,omitempty"`
	// The figure or state wanted.
	Wanted string `json:"wanted,omitempty"`
	// Why it is asked of this model.
	Why  string   `json:"why,omitempty"`
	Unit string   `json:"unit,omitempty"`
	Low  *float64 `json:"low,omitempty"`
	High *float64 `json:"high,omitempty"`
	// Path of the document that the measured value replaces; empty when it is only looked at.
	Input string `json:"input,omitempty"`
	// Findings that rest on it.
	FindingIDs []string `json:"findingIds,omitempty"`
	// True when a photo belongs with it.
	PhotoWanted bool `json:"photoWanted,omitempty"`
}

// ReportCard: a card in large print: what to do, the figures, when to stop.
type ReportCard struct {
	// "card.static_run", "card.taxi", "card.range_check", "card.first_flight".
	ID    string     `json:"id,omitempty"`
	Title string     `json:"title,omitempty"`
	Lines []CardLine `json:"lines,omitempty"`
}

// CardLine: one line of a card.
type CardLine struct {
	Heading string   `json:"heading,omitempty"`
	Text    string   `json:"text,omitempty"`
	Value   *float64 `json:"value,omitempty"`
	Unit    string   `json:"unit,omitempty"`
	// Id of the quantity or finding behind the figure.
	From string `json:"from,omitempty"`
}
