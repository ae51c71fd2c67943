package api

import (
	"context"
	"encoding/json"
	"fmt"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/compare"
	"pitgate/server/document"
	"pitgate/server/physics/assess"
	"pitgate/server/postgres"
)

// PreviewComparison computes two documents and says what differs between them, without keeping anything. Kept assessments are computed anew, so that
// a finding moves by what was changed in the document and never by another version of the core.
func (s *assessmentsService) PreviewComparison(ctx context.Context, req *pb.PreviewComparisonRequest) (*pb.Comparison, error) {
	c, err := enter(ctx, req.GetParent())
	if err != nil {
		return nil, err
	}
	from, err := s.comparedSide(ctx, c, "from", req.GetFrom())
	if err != nil {
		return nil, err
	}
	to, err := s.comparedSide(ctx, c, "to", req.GetTo())
	if err != nil {
		return nil, err
	}
	found, err := s.compared(ctx, from, to)
	if err != nil {
		return nil, err
	}
	answer, err := json.Marshal(found)
	if err != nil {
		return nil, fmt.Errorf("comparison: %w", err)
	}
	comparison := &pb.Comparison{}
	return comparison, readDocument(answer, comparison)
}

// compared computes both documents when their turn has come.
func (b *backend) compared(ctx context.Context, from, to assess.Input) (compare.Comparison, error) {
	release, err := b.waitInLine(ctx)
	if err != nil {
		return compare.Comparison{}, err
	}
	defer release()
	before, err := document.Assess(from)
	if err != nil {
		return compare.Comparison{}, club.RefuseField("from", "NOT_COMPUTABLE", "%v", err)
	}
	after, err := document.Assess(to)
	if err != nil {
		return compare.Comparison{}, club.RefuseField("to", "NOT_COMPUTABLE", "%v", err)
	}
	return compare.Of(from, to, before, after), nil
}

// comparedSide finds the document of one side. Faults name the side first: "from.model.surfaces[0]...".
func (b *backend) comparedSide(ctx context.Context, c caller, field string, side *pb.ComparedSide) (assess.Input, error) {
	given := 0
	for _, there := range []bool{side.GetInput() != nil, side.GetAssessment() != "", side.GetKept() != nil} {
		if there {
			given++
		}
	}
	if given != 1 {
		return assess.Input{}, &invalidError{[]violation{{field, "give exactly one of input, assessment and kept"}}}
	}
	switch {
	case side.GetInput() != nil:
		in, err := decodeInput(side.GetInput())
		return in, prefixed(field, err)
	case side.GetAssessment() != "":
		return b.assessedInput(ctx, c, field, side.GetAssessment())
	}
	return b.keptInput(ctx, c, field, side.GetKept())
}

// assessedInput reads the document of a kept assessment that the caller may read.
func (b *backend) assessedInput(ctx context.Context, c caller, field, name string) (assess.Input, error) {
	_, id, err := locate(ctx, club.Assessments, field+".assessment", name)
	if err != nil {
		return assess.Input{}, err
	}
	var kept club.Assessment
	err = b.store.Read(ctx, c.club, func(tx *postgres.ReadTx) error {
		kept, err = readableAssessment(ctx, tx, c, id)
		return err
	})
	if err != nil {
		return assess.Input{}, err
	}
	return document.Decode(kept.Input)
}

// keptInput composes the document of a kept revision and a kept version of a field, by the rules in force.
func (b *backend) keptInput(ctx context.Context, c caller, field string, kept *pb.KeptParts) (assess.Input, error) {
	flight, err := flightOf(kept)
	if err != nil {
		return assess.Input{}, prefixed(field+".kept", err)
	}
	var model, place json.RawMessage
	var rules rulesInForce
	err = b.store.Read(ctx, c.club, func(tx *postgres.ReadTx) (err error) {
		if model, err = keptRevision(ctx, tx, c, field+".kept.modelRevision", kept.GetModelRevision()); err != nil {
			return err
		}
		if place, err = keptField(ctx, tx, field+".kept.field", kept); err != nil {
			return err
		}
		rules, err = readRules(ctx, tx)
		return err
	})
	if err != nil {
		return assess.Input{}, err
	}
	text, err := json.Marshal(composed(model, place, flight))
	if err != nil {
		return assess.Input{}, err
	}
	in, err := document.Decode(text)
	if err != nil {
		return in, prefixed(field+".kept", err)
	}
	return in, rules.put(&in)
}

// flightOf checks plan, day and limits, where they are given.
func flightOf(kept *pb.KeptParts) (p plannedFlight, err error) {
	if p.plan, err = planDocument(kept.GetLaunchPlan()); err != nil {
		return p, err
	}
	if p.day, err = dayDocument(kept.GetDay()); err != nil {
		return p, err
	}
	if kept.GetLimits() == nil {
		return p, nil
	}
	p.limits, err = limitsDocument(kept.GetLimits())
	return p, err
}

// keptRevision reads the description of a revision of a model that the caller may read.
func keptRevision(ctx context.Context, tx *postgres.ReadTx, c caller, field, name string) (json.RawMessage, error) {
	clubID, modelID, number, err := club.ParseRevision(field, name)
	if err != nil {
		return nil, err
	}
	if clubID != c.club {
		return nil, notFound("revision")
	}
	if _, err := readableModel(ctx, tx, c, modelID); err != nil {
		return nil, err
	}
	r, err := tx.Revision(ctx, modelID, number)
	return r.Description, err
}

// keptField reads the description of a version of a field, or of its latest.
func keptField(ctx context.Context, tx *postgres.ReadTx, at string, kept *pb.KeptParts) (json.RawMessage, error) {
	_, id, err := locate(ctx, club.Fields, at, kept.GetField())
	if err != nil {
		return nil, err
	}
	if kept.GetFieldVersion() == 0 {
		f, err := tx.Field(ctx, id)
		return f.Description, err
	}
	v, err := tx.FieldVersion(ctx, id, kept.GetFieldVersion())
	return v.Description, err
}
