package fmt

import "errors"

// Errorf formats an error; those given for %w are wrapped.
func Errorf(format string, given ...any) error {
	p := printer{given: given}
	p.format(format)
	switch text := string(p.out); len(p.wrapped) {
	case 0:
		return errors.New(text)
	case 1:
		return &one{text, p.wrapped[0]}
	default:
		return &several{text, p.wrapped}
	}
}

type one struct {
	text string
	err  error
}

// Error is the formatted text.
func (e *one) Error() string { return e.text }

// Unwrap is what was given for %w.
func (e *one) Unwrap() error { return e.err }

type several struct {
	text string
	errs []error
}

// Error is the formatted text.
func (e *several) Error() string { return e.text }

// Unwrap are those given for %w.
func (e *several) Unwrap() []error { return e.errs }
