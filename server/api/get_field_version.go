package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// GetFieldVersion reads one frozen description of a field.
func (s *fieldsService) GetFieldVersion(ctx context.Context, req *pb.GetFieldVersionRequest) (*pb.FieldVersion, error) {
	c, id, err := locate(ctx, club.Fields, "name", req.GetName())
	if err != nil {
		return nil, err
	}
	var v club.FieldVersion
	err = s.store.Read(ctx, c.club, func(tx *postgres.ReadTx) error {
		v, err = tx.FieldVersion(ctx, id, req.GetNumber())
		return err
	})
	if err != nil {
		return nil, err
	}
	return showFieldVersion(c.club, v)
}

// showFieldVersion writes a frozen description.
func showFieldVersion(clubID string, v club.FieldVersion) (*pb.FieldVersion, error) {
	out := &pb.FieldVersion{Field: club.Fields.Name(clubID, v.FieldID), Number: v.Number, Description: &pb.FieldDescription{}, Digest: v.Digest,
		CreateTime: showTime(v.CreateTime)}
	return out, readDocument(v.Description, out.Description)
}
