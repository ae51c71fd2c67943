package api

import (
	"encoding/json"
	"fmt"

	"github.com/gowebpki/jcs"
)

// canonicalJSON writes a value in the RFC 8785 form.
func canonicalJSON(v any) (json.RawMessage, error) {
	plain, err := json.Marshal(v)
	if err != nil {
		return nil, fmt.Errorf("canonical form: %w", err)
	}
	form, err := jcs.Transform(plain)
	if err != nil {
		return nil, fmt.Errorf("canonical form: %w", err)
	}
	return form, nil
}
