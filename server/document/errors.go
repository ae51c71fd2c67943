package document

import (
	"slices"
	"strings"
)

// maximumFaults bounds how many faults one answer names.
const maximumFaults = 100

// FieldError is one fault: where it is and what is wrong with it.
type FieldError struct {
	// Path as written in the document, e.g. "model.surfaces[0].stations[1].chordMeters"; "document" for the whole.
	Path string
	// Message in words, e.g. "must be greater than 0, got -0.2".
	Message string
}

// Error joins path and message.
func (e FieldError) Error() string { return e.Path + ": " + e.Message }

// Errors are all faults of one document, in the order in which they stand in it.
type Errors []FieldError

// Error joins all faults, one a line.
func (e Errors) Error() string {
	lines := make([]string, len(e))
	for i, fault := range e {
		lines[i] = fault.Error()
	}
	return strings.Join(lines, "\n")
}

// faults collects what is wrong while a document is read.
type faults struct{ list Errors }

func (f *faults) add(path, message string) {
	if path == "" {
		path = "document"
	}
	if len(f.list) < maximumFaults {
		f.list = append(f.list, FieldError{Path: path, Message: message})
	}
}

// names tells whether a fault at this very path was found.
func (f *faults) names(path string) bool {
	return slices.ContainsFunc(f.list, func(e FieldError) bool { return e.Path == path })
}

func (f *faults) err() error {
	if len(f.list) == 0 {
		return nil
	}
	return f.list
}
