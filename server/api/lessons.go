package api

import (
	"encoding/json"
	"errors"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
)

// compilePredicate compiles a lesson's predicate and names the request's field in its refusal.
func compilePredicate(field, text string) (*club.Predicate, error) {
	p, err := club.CompilePredicate(text)
	var refused *club.Error
	if errors.As(err, &refused) && refused.Field != "" {
		named := *refused
		named.Field = field
		err = &named
	}
	return p, err
}

// predicateMatches asks the predicate about a kept description.
func predicateMatches(p *club.Predicate, description json.RawMessage) (bool, error) {
	model := &pb.ModelDescription{}
	if err := readDocument(description, model); err != nil {
		return false, err
	}
	return p.Matches(model)
}

// lessonApplies asks an adopted lesson about a model. A question that cannot be answered for the model is never taken for a no: the
// approval is held and an officer looks.
func lessonApplies(p *club.Predicate, description json.RawMessage) (bool, error) {
	applies, err := predicateMatches(p, description)
	if club.CodeOf(err) == club.Invalid {
		return true, nil
	}
	return applies, err
}
