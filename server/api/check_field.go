package api

import (
	"context"
	"encoding/json"
	"errors"
	"slices"
	"strings"

	"google.golang.org/protobuf/encoding/protojson"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/document"
	"pitgate/server/physics/assess"
	"pitgate/server/site"
)

// CheckField says what is wrong with a description and what is worth a second look. A description at fault is an answer, not an error.
func (s *fieldsService) CheckField(ctx context.Context, req *pb.CheckFieldRequest) (*pb.CheckFieldResponse, error) {
	if _, err := enter(ctx, req.GetParent()); err != nil {
		return nil, err
	}
	remarks, err := fieldRemarks(req.GetDescription())
	return &pb.CheckFieldResponse{Remarks: remarks}, err
}

// fieldRemarks lists the faults of the document first, then what is worth a second look and not already said.
func fieldRemarks(description *pb.FieldDescription) ([]*pb.FieldRemark, error) {
	text, err := protojson.Marshal(description)
	if err != nil {
		return nil, &invalidError{[]violation{{"description", "cannot be written as JSON: " + err.Error()}}}
	}
	var faults document.Errors
	if _, err := document.DecodeField(text); err != nil && !errors.As(err, &faults) {
		return nil, err
	}
	var field assess.FieldDescription
	if err := json.Unmarshal(text, &field); err != nil {
		return nil, &invalidError{[]violation{{"description", "cannot be read: " + err.Error()}}}
	}
	out := make([]*pb.FieldRemark, 0, len(faults))
	for _, f := range faults {
		out = append(out, &pb.FieldRemark{Path: f.Path, Part: site.PartAt(field, f.Path), Text: f.Message, Fault: true})
	}
	for _, r := range site.Remarks(field) {
		if !slices.ContainsFunc(faults, func(f document.FieldError) bool { return strings.HasPrefix(f.Path, r.Path) }) {
			out = append(out, &pb.FieldRemark{Path: r.Path, Part: r.Part, Text: r.Text})
		}
	}
	return out, nil
}
