package assess

// Report: what the core says about one AssessmentInput.
type Report struct {
	// Version of the core that computed it.
	CoreVersion string `json:"coreVersion,omitempty"`
	// SHA-256 over the canonical JSON of the input, in hex.
	InputDigest string `json:"inputDigest,omitempty"`
	// Worst first: fails, tight, unknown, holds; within one verdict in the order of the catalogue.
	Findings []Finding `json:"findings,omitempty"`
	// Every intermediate an engineer would ask for.
	Quantities []ReportQuantity `json:"quantities,omitempty"`
	// Lines to draw, in metres.
	Paths []ReportPath `json:"paths,omitempty"`
	// What to bear in mind with every verdict.
	Cautions []string `json:"cautions,omitempty"`
	// True when any input the findings rest on is estimated.
	RestsOnEstimates bool `json:"restsOnEstimates,omitempty"`
	// Count of findings by verdict.
	Counts *VerdictCounts `json:"counts,omitempty"`
	// Curves to draw that are no lines in space: polar, lift curve, trim, span loading, balance along the burn.
	Curves []ReportCurve `json:"curves,omitempty"`
	// Ways to bring the balance point into its window by ballast, least mass first; empty when none is needed.
	BallastOptions []BallastOption `json:"ballastOptions,omitempty"`
	// What the spread was drawn from; absent when bands come from first-order propagation.
	SpreadRun *SpreadRun `json:"spreadRun,omitempty"`
	// Measurements worth taking, the one that settles most findings first.
	MeasureNext []MeasurementAdvice `json:"measureNext,omitempty"`
	// Smallest changes that make findings hold, least effort first; empty unless asked for.
	Remedies []Remedy `json:"remedies,omitempty"`
	// What is to be inspected on this model at the bench.
	BenchItems []BenchItem `json:"benchItems,omitempty"`
	// Cards for the static run, the taxi runs, the range check and the first flight.
	Cards []ReportCard `json:"cards,omitempty"`
}

// Verdict says: answer to one question.
type Verdict string

// Values of Verdict; the empty string means that nothing was said.
const (
	// The limit is met across the whole band.
	VerdictHolds Verdict = "VERDICT_HOLDS"
	// The middle value meets the limit, the band does not.
	VerdictTight Verdict = "VERDICT_TIGHT"
	// The middle value does not meet the limit.
	VerdictFails Verdict = "VERDICT_FAILS"
	// An input is missing. Never treated as holds.
	VerdictUnknown Verdict = "VERDICT_UNKNOWN"
)

// Names lists every value that may stand in a document.
func (Verdict) Names() []string {
	return []string{string(VerdictHolds), string(VerdictTight), string(VerdictFails), string(VerdictUnknown)}
}

// LimitSense says: which side of the limit is the right one.
type LimitSense string

// Values of LimitSense; the empty string means that nothing was said.
const (
	LimitSenseAtLeast LimitSense = "LIMIT_SENSE_AT_LEAST"
	LimitSenseAtMost  LimitSense = "LIMIT_SENSE_AT_MOST"
	// Between limit and upper_limit.
	LimitSenseWithin LimitSense = "LIMIT_SENSE_WITHIN"
	// No limit: told for information, always holds when known.
	LimitSenseNone LimitSense = "LIMIT_SENSE_NONE"
)

// Names lists every value that may stand in a document.
func (LimitSense) Names() []string {
	return []string{string(LimitSenseAtLeast), string(LimitSenseAtMost), string(LimitSenseWithin), string(LimitSenseNone)}
}

// Finding: one question answered.
type Finding struct {
	// Dotted and stable, e.g. "stall.speed".
	ID string `json:"id,omitempty"`
	// Plain words, e.g. "Stall speed, straight flight".
	Title   string   `json:"title,omitempty"`
	Verdict Verdict  `json:"verdict,omitempty"`
	Value   *float64 `json:"value,omitempty"`
	// Unit of value, limit, band and margin in SI symbols: "m/s", "m", "1", "deg".
	Unit  string   `json:"unit,omitempty"`
	Limit *float64 `json:"limit,omitempty"`
	// Upper end of the window when the sense is "within".
	UpperLimit *float64   `json:"upperLimit,omitempty"`
	LimitSense LimitSense `json:"limitSense,omitempty"`
	// How much the value is on the right side of the limit; negative when it is not.
	Margin *float64 `json:"margin,omitempty"`
	// 5 % and 95 % of the value's spread.
	BandLow  *float64 `json:"bandLow,omitempty"`
	BandHigh *float64 `json:"bandHigh,omitempty"`
	// How it was computed, in a sentence.
	Method string `json:"method,omitempty"`
	// Published source of the method.
	Source string `json:"source,omitempty"`
	// Where the method ends; says so when the input lies outside.
	Validity string `json:"validity,omitempty"`
	// True when the input lies outside that range.
	OutsideValidity bool `json:"outsideValidity,omitempty"`
	// The deciding numbers in a sentence.
	Note string `json:"note,omitempty"`
	// Inputs that are missing, as paths of the document.
	Missing []string `json:"missing,omitempty"`
	// Citation of the rule behind the limit, or "core default".
	Rule string `json:"rule,omitempty"`
	// True when the value rests on an estimated input.
	RestsOnEstimate bool `json:"restsOnEstimate,omitempty"`
	// Inputs that decide the spread, largest first.
	SpreadShares []SpreadShare `json:"spreadShares,omitempty"`
	// What the value was computed from: ids of quantities of this report, or paths of the document.
	From []string `json:"from,omitempty"`
	// Share of the samples in which the limit holds.
	HoldsProbability *float64 `json:"holdsProbability,omitempty"`
	// Share that this class of finding asks for.
	RequiredProbability *float64     `json:"requiredProbability,omitempty"`
	FindingClass        FindingClass `json:"findingClass,omitempty"`
	// Median of the samples.
	Median *float64 `json:"median,omitempty"`
}

// SpreadShare: share of one input in a finding's variance.
type SpreadShare struct {
	// Path of the input in the document, or the name of a method's own spread.
	Input      string  `json:"input,omitempty"`
	ShareRatio float64 `json:"shareRatio"`
}

// ReportQuantity: one computed intermediate.
type ReportQuantity struct {
	// Dotted and stable, e.g. "lift.slope".
	ID    string   `json:"id,omitempty"`
	Value *float64 `json:"value,omitempty"`
	// SI symbol: "m/s", "1/rad", "1".
	Unit string `json:"unit,omitempty"`
	// Text value where it is not a number, e.g. the stalling strip.
	Text string `json:"text,omitempty"`
	// Plain words, e.g. "Lift slope of the whole model".
	Title string `json:"title,omitempty"`
	// The formula or method that gave it, e.g. "Vs = sqrt(2 m g / (rho S CLmax))".
	Formula string `json:"formula,omitempty"`
	// Published source of the formula.
	Source string `json:"source,omitempty"`
	// What it was computed from: ids of other quantities, or paths of the document.
	From []string `json:"from,omitempty"`
}

// ReportPath: a line to draw.
type ReportPath struct {
	// "launch.profile", "launch.dolly_fall", "landing.profile" (distance, height), "launch.plan", "launch.dolly_plan", "landing.plan", "circuit.plan" (x east, y north), "ground.profile".
	ID     string      `json:"id,omitempty"`
	Points []PathPoint `json:"points,omitempty"`
}

// PathPoint: one point of a drawn line.
type PathPoint struct {
	XMeters float64 `json:"xMeters"`
	YMeters float64 `json:"yMeters"`
	// Height above the datum where it matters.
	ZMeters float64 `json:"zMeters"`
	// Speed through the air there.
	AirspeedMetersPerSecond float64 `json:"airspeedMetersPerSecond"`
	TimeSeconds             float64 `json:"timeSeconds"`
	// Half width of the 5 to 95 % band.
	HalfBandMeters float64 `json:"halfBandMeters"`
}

// ReportCurve: a diagram: one or more series over one axis.
type ReportCurve struct {
	// Dotted and stable: "drag.polar", "lift.curve", "lift.span_loading", "trim.elevator", "balance.burn".
	ID    string `json:"id,omitempty"`
	Title string `json:"title,omitempty"`
	// The deciding numbers in a sentence.
	Note   string `json:"note,omitempty"`
	XTitle string `json:"xTitle,omitempty"`
	// SI symbol.
	XUnit  string        `json:"xUnit,omitempty"`
	YTitle string        `json:"yTitle,omitempty"`
	YUnit  string        `json:"yUnit,omitempty"`
	Series []CurveSeries `json:"series,omitempty"`
	// Points worth a word: the stall, the trimmed speed, the tip.
	Marks []CurveMark `json:"marks,omitempty"`
}

// CurveSeries: one line of a diagram.
type CurveSeries struct {
	// Plain words, e.g. "Section limit".
	Name   string       `json:"name,omitempty"`
	Points []CurvePoint `json:"points,omitempty"`
}

// CurvePoint: one point of a line, with the ends of its 5 to 95 % band where it has one.
type CurvePoint struct {
	X    float64  `json:"x"`
	Y    float64  `json:"y"`
	Low  *float64 `json:"low,omitempty"`
	High *float64 `json:"high,omitempty"`
}

// CurveMark: a named point of a diagram.
type CurveMark struct {
	Name string  `json:"name,omitempty"`
	X    float64 `json:"x"`
	Y    float64 `json:"y"`
}

// BallastOption: one place for ballast and the least mass there that brings the balance into its window.
type BallastOption struct {
	// Name of the place as the model gives it.
	Place   string  `json:"place,omitempty"`
	XMeters float64 `json:"xMeters"`
	// Least mass; absent when no mass that the place holds is enough.
	MassKg *float64 `json:"massKg,omitempty"`
	// Static margins with it, over the mean chord.
	MarginFullRatio  *float64 `json:"marginFullRatio,omitempty"`
	MarginEmptyRatio *float64 `json:"marginEmptyRatio,omitempty"`
	// Why it works or does not.
	Note string `json:"note,omitempty"`
}

// VerdictCounts: findings by verdict.
type VerdictCounts struct {
	HoldsCount   int32 `json:"holdsCount"`
	TightCount   int32 `json:"tightCount"`
	FailsCount   int32 `json:"failsCount"`
	UnknownCount int32 `json:"unknownCount"`
}
