// Package document reads and writes the one document: the proto3 JSON of AssessmentInput.
//
// Decode refuses everything that is not exactly such a document and names every fault by its path, so that a builder
// can find it in the file. The canonical form (RFC 8785) is the same whoever wrote the document; its digest names it.
// The package needs no protobuf runtime, so that the command line and the page's worker use the same code.
package document

import (
	"encoding/hex"
	"fmt"

	"pitgate/server/document/jsonform"
	"pitgate/server/physics/assess"
)

// MaximumBytes is the largest document that Decode reads.
const MaximumBytes = 1 << 20

// MaximumDepth is the deepest nesting that Decode reads.
const MaximumDepth = 32

// Decode reads one AssessmentInput. Its error, when the document is at fault, is of type Errors.
func Decode(data []byte) (assess.Input, error) {
	var in assess.Input
	err := decode(data, &in)
	if err != nil {
		return assess.Input{}, err
	}
	return in, nil
}

// DecodeModel reads a ModelDescription alone. Paths in its errors start inside the model.
func DecodeModel(data []byte) (assess.ModelDescription, error) {
	var model assess.ModelDescription
	err := decode(data, &model)
	if err != nil {
		return assess.ModelDescription{}, err
	}
	return model, nil
}

// DecodeField reads a FieldDescription alone. Paths in its errors start inside the field.
func DecodeField(data []byte) (assess.FieldDescription, error) {
	var field assess.FieldDescription
	err := decode(data, &field)
	if err != nil {
		return assess.FieldDescription{}, err
	}
	return field, nil
}

// DecodePlan reads a LaunchPlan alone. The strip or spot it names is looked up only by Decode.
func DecodePlan(data []byte) (assess.LaunchPlan, error) {
	var plan assess.LaunchPlan
	err := decode(data, &plan)
	if err != nil {
		return assess.LaunchPlan{}, err
	}
	return plan, nil
}

// DecodeDay reads DayConditions alone.
func DecodeDay(data []byte) (assess.DayConditions, error) {
	var day assess.DayConditions
	err := decode(data, &day)
	if err != nil {
		return assess.DayConditions{}, err
	}
	return day, nil
}

// DecodeLimits reads Limits alone.
func DecodeLimits(data []byte) (assess.Limits, error) {
	var limits assess.Limits
	err := decode(data, &limits)
	if err != nil {
		return assess.Limits{}, err
	}
	return limits, nil
}

// Part is what the one document is made of.
type Part interface {
	assess.ModelDescription | assess.FieldDescription | assess.LaunchPlan | assess.DayConditions | assess.Limits | RulePack
}

// Canonical writes the RFC 8785 form of a decoded document or of a decoded part of one: keys sorted, one spelling of every number, no space. An
// error only comes for a number that JSON cannot write, which no decoded document holds.
func Canonical[D assess.Input | Part](decoded D) ([]byte, error) {
	form, err := jsonform.Canonical(decoded)
	if err != nil {
		return nil, fmt.Errorf("canonical form: %w", err)
	}
	return form, nil
}

// Digest is the SHA-256 of the canonical form, in hex; empty when the input holds a number that JSON cannot write,
// which no decoded document does.
func Digest(in assess.Input) string {
	form, err := Canonical(in)
	if err != nil {
		return ""
	}
	sum := sum256(form)
	return hex.EncodeToString(sum[:])
}

// Assess computes the report of an input and writes the input's digest into it. What follows from the geometry alone is kept and used
// again for every document of the same geometry.
func Assess(in assess.Input) (assess.Report, error) { return AssessWatched(in, nil) }

// AssessWatched is Assess with a watch that can stop it; its error is assess.ErrStopped then.
func AssessWatched(in assess.Input, watch assess.Watch) (assess.Report, error) {
	geometry, err := geometries.of(in)
	if err != nil {
		return assess.Report{}, err
	}
	report, err := geometry.RunWatched(in, watch)
	if err != nil {
		return assess.Report{}, err
	}
	report.InputDigest = Digest(in)
	return report, nil
}

// AssessSpread is Assess with every band and probability from samples.
func AssessSpread(in assess.Input, options assess.SpreadOptions) (assess.Report, error) {
	geometry, err := geometries.of(in)
	if err != nil {
		return assess.Report{}, err
	}
	report, err := geometry.Spread(in, options)
	if err != nil {
		return assess.Report{}, err
	}
	report.InputDigest = Digest(in)
	return report, nil
}

// Values is Assess without bands, lines, diagrams and quantities, in a fraction of the time: its values, limits and margins are the same, and its
// verdicts are those of the values as given.
func Values(in assess.Input) (assess.Report, error) {
	geometry, err := geometries.of(in)
	if err != nil {
		return assess.Report{}, err
	}
	report, err := geometry.RunWith(in, assess.Options{})
	if err != nil {
		return assess.Report{}, err
	}
	report.InputDigest = Digest(in)
	return report, nil
}

// Answers is Assess without lines, diagrams and quantities: its findings, bands and verdicts are the same.
func Answers(in assess.Input) (assess.Report, error) {
	geometry, err := geometries.of(in)
	if err != nil {
		return assess.Report{}, err
	}
	report, err := geometry.RunWith(in, assess.Options{Bands: true})
	if err != nil {
		return assess.Report{}, err
	}
	report.InputDigest = Digest(in)
	return report, nil
}

// Remedies looks for the least changes that let the open findings of an input hold, and tells each as edits of the document as well. Its errors are those of Assess and of the options.
func Remedies(in assess.Input, options assess.RemedyOptions) ([]assess.Remedy, error) {
	geometry, err := geometries.of(in)
	if err != nil {
		return nil, err
	}
	list, err := geometry.Remedies(in, options)
	for i := range list {
		if changed, ok := list[i].Changed(); ok {
			list[i].Edits = Edits(in, changed)
		}
	}
	return list, err
}

// Mended is Assess, or AssessSpread where samples are asked for, with the remedies of what the report leaves open.
func Mended(in assess.Input, spread assess.SpreadOptions, remedy assess.RemedyOptions) (assess.Report, error) {
	remedy.Strict = spread.Samples > 0
	report, err := assessedBy(in, spread)
	if err != nil {
		return assess.Report{}, err
	}
	report.Remedies, err = Remedies(in, remedy)
	return report, err
}

// assessedBy is AssessSpread where samples are asked for, else AssessWatched.
func assessedBy(in assess.Input, spread assess.SpreadOptions) (assess.Report, error) {
	if spread.Samples > 0 {
		return AssessSpread(in, spread)
	}
	return AssessWatched(in, spread.Watch)
}
