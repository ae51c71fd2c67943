// Package answer takes the one document as text and gives the answer as text: the same bytes for whoever has a server and for the page's worker, which
// has none. It reads no file, no clock and no network.
package answer

import (
	"errors"
	"fmt"

	"pitgate/server/compare"
	"pitgate/server/document"
	"pitgate/server/document/jsonform"
	"pitgate/server/physics/assess"
)

// Report computes the report of one AssessmentInput. The watch, which may be nil, can stop it: the error is assess.ErrStopped then. Every other error
// is one that RefusalOf puts into words.
func Report(text []byte, watch assess.Watch) ([]byte, error) {
	in, err := document.Decode(text)
	if err != nil {
		return nil, err
	}
	report, err := document.AssessWatched(in, watch)
	if err != nil {
		return nil, err
	}
	return jsonform.Marshal(report)
}

// MostSamples is how many samples Spread takes: what they say of every finding is kept until the end, and a phone gives a page not much to keep it in.
const MostSamples = 4096

// Spread is Report with bands and probabilities from samples; options that say no count of them take the default.
func Spread(text []byte, options assess.SpreadOptions) ([]byte, error) {
	in, err := document.Decode(text)
	if err != nil {
		return nil, err
	}
	if options.Samples > MostSamples {
		return nil, fmt.Errorf("samples %d: give %d at most", options.Samples, MostSamples)
	}
	report, err := document.AssessSpread(in, options)
	if err != nil {
		return nil, err
	}
	return jsonform.Marshal(report)
}

// Remedied is Report, or Spread where the options say a count of samples, with the least changes that let its open findings hold; finding names the one to
// mend, or none for all. Its errors are those of Spread.
func Remedied(text []byte, finding string, options assess.SpreadOptions) ([]byte, error) {
	in, err := document.Decode(text)
	if err != nil {
		return nil, err
	}
	if options.Samples > MostSamples {
		return nil, fmt.Errorf("samples %d: give %d at most", options.Samples, MostSamples)
	}
	report, err := document.Mended(in, options, assess.RemedyOptions{FindingID: finding, Watch: options.Watch})
	if err != nil {
		return nil, err
	}
	return jsonform.Marshal(report)
}

// Values computes what of the report of one AssessmentInput comes first: values and verdicts, without bands and drawings. Its errors are those of Report.
func Values(text []byte) ([]byte, error) {
	in, err := document.Decode(text)
	if err != nil {
		return nil, err
	}
	report, err := document.Values(in)
	if err != nil {
		return nil, err
	}
	return jsonform.Marshal(report)
}

// Window finds the winds in which launch and circuit of one AssessmentInput hold. Its errors are those of Report.
func Window(text []byte) ([]byte, error) {
	in, err := document.Decode(text)
	if err != nil {
		return nil, err
	}
	window, err := document.Window(in)
	if err != nil {
		return nil, err
	}
	return jsonform.Marshal(window)
}

// Comparison computes two AssessmentInputs and says what changed from the first to the second and which findings moved. The watch, which may be nil,
// can stop either. Its errors are those of Report; the path of a fault begins with "from" or "to".
func Comparison(from, to []byte, watch assess.Watch) ([]byte, error) {
	var inputs [2]assess.Input
	var reports [2]assess.Report
	for i, text := range [][]byte{from, to} {
		var err error
		if inputs[i], err = document.Decode(text); err != nil {
			return nil, inSide([]string{"from", "to"}[i], err)
		}
		if reports[i], err = document.AssessWatched(inputs[i], watch); err != nil {
			return nil, err
		}
	}
	return jsonform.Marshal(compare.Of(inputs[0], inputs[1], reports[0], reports[1]))
}

// inSide puts the side in front of every fault's path.
func inSide(side string, err error) error {
	faults, invalid := errors.AsType[document.Errors](err)
	if !invalid {
		return err
	}
	out := make(document.Errors, len(faults))
	for i, f := range faults {
		out[i] = document.FieldError{Path: side + "." + f.Path, Message: f.Message}
		if f.Path == "document" {
			out[i].Path = side
		}
	}
	return out
}

// Refusal is why there is no answer, in the words in which the server refuses the same document over REST.
type Refusal struct {
	// Code is the status by name.
	Code string `json:"code"`
	// Reason is a stable word for programs.
	Reason string `json:"reason"`
	// Message tells a person what is wrong.
	Message string `json:"message"`
	// FieldViolations names each field at fault.
	FieldViolations []FieldViolation `json:"fieldViolations"`
}

// FieldViolation is one field at fault.
type FieldViolation struct {
	// Field is its path in the document, e.g. "model.surfaces[0].stations[1].chordMeters".
	Field string `json:"field"`
	// Description says what is wrong with it.
	Description string `json:"description"`
}

// RefusalOf puts an error of Report or Window into words.
func RefusalOf(err error) Refusal {
	refusal := Refusal{Code: "INVALID_ARGUMENT", Reason: "INVALID_DOCUMENT", Message: "the document has faults"}
	faults, invalid := errors.AsType[document.Errors](err)
	if !invalid {
		refusal.Reason, refusal.Message = "NOT_COMPUTABLE", "document: "+err.Error()
		refusal.FieldViolations = []FieldViolation{{"document", err.Error()}}
		return refusal
	}
	for _, fault := range faults {
		refusal.FieldViolations = append(refusal.FieldViolations, FieldViolation{fault.Path, fault.Message})
	}
	return refusal
}
