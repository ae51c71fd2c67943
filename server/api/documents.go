package api

import (
	"encoding/json"
	"errors"
	"fmt"

	"google.golang.org/protobuf/encoding/protojson"
	"google.golang.org/protobuf/proto"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/document"
)

// Documents are checked by the document package alone, so that a builder sees the same faults at the same paths over REST, gRPC and the
// command line. Each function here returns the canonical JSON that is kept.

// modelDocument checks a model's description; paths start with "model.".
func modelDocument(m *pb.ModelDescription) (json.RawMessage, error) {
	return checked("model", orEmpty(m, &pb.ModelDescription{}), document.DecodeModel)
}

// fieldDocument checks a field's description; paths start with "field.".
func fieldDocument(m *pb.FieldDescription) (json.RawMessage, error) {
	return checked("field", orEmpty(m, &pb.FieldDescription{}), document.DecodeField)
}

// planDocument checks a launch plan; paths start with "launchPlan.".
func planDocument(m *pb.LaunchPlan) (json.RawMessage, error) {
	return checked("launchPlan", orEmpty(m, &pb.LaunchPlan{}), document.DecodePlan)
}

// dayDocument checks a day; paths start with "day.".
func dayDocument(m *pb.DayConditions) (json.RawMessage, error) {
	return checked("day", orEmpty(m, &pb.DayConditions{}), document.DecodeDay)
}

// limitsDocument checks limits; paths start with "limits.".
func limitsDocument(m *pb.Limits) (json.RawMessage, error) {
	return checked("limits", orEmpty(m, &pb.Limits{}), document.DecodeLimits)
}

// ownersLimits checks limits that the owner of a model gives: they may ask for more than the core's own figures, never for less, and confirm no
// rule.
func ownersLimits(m *pb.Limits) (json.RawMessage, error) {
	text, err := limitsDocument(m)
	if err != nil {
		return nil, err
	}
	limits, err := document.DecodeLimits(text)
	if err != nil {
		return nil, err
	}
	var refused []violation
	for _, name := range limits.Looser() {
		refused = append(refused, violation{"limits." + name, "lets more pass than the core's own figure, which is not the owner's to allow"})
	}
	for i, rule := range limits.Rules {
		if rule.Verified != nil && *rule.Verified {
			refused = append(refused, violation{fmt.Sprintf("limits.rules[%d].verified", i), "a rule is confirmed by a club officer, not by the owner"})
		}
	}
	if len(refused) > 0 {
		return nil, &invalidError{refused}
	}
	return text, nil
}

// orEmpty replaces an absent message by an empty one.
func orEmpty[M interface {
	comparable
	proto.Message
}](m, empty M) M {
	var absent M
	if m == absent {
		return empty
	}
	return m
}

// checked writes the message as proto3 JSON, decodes that strictly and returns the decoded form as canonical JSON.
func checked[D document.Part](prefix string, m proto.Message, decode func([]byte) (D, error)) (json.RawMessage, error) {
	text, err := protojson.Marshal(m)
	if err != nil {
		return nil, &invalidError{[]violation{{prefix, "cannot be written as JSON: " + err.Error()}}}
	}
	decoded, err := decode(text)
	if err != nil {
		return nil, prefixed(prefix, err)
	}
	return document.Canonical(decoded)
}

// prefixed puts the document's part in front of every fault's path.
func prefixed(prefix string, err error) error {
	var faults document.Errors
	if !errors.As(err, &faults) {
		return err
	}
	out := make(document.Errors, 0, len(faults))
	for _, f := range faults {
		if f.Path == "document" {
			f.Path = prefix
		} else {
			f.Path = prefix + "." + f.Path
		}
		out = append(out, f)
	}
	return out
}

// readDocument fills a message from kept JSON.
func readDocument(text json.RawMessage, into proto.Message) error {
	if len(text) == 0 {
		return nil
	}
	if err := protojson.Unmarshal(text, into); err != nil {
		return fmt.Errorf("kept document %s: %w", into.ProtoReflect().Descriptor().Name(), err)
	}
	return nil
}
