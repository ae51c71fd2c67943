package demo

import (
	"fmt"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
)

// fields of the club, kept by its field keeper.
func (l *loader) fields() error {
	client := pb.NewFieldsServiceClient(l.conn)
	for _, file := range []string{"long_acre", "quarry_top"} {
		description, err := read(file, &pb.FieldDescription{})
		if err != nil {
			return err
		}
		made, err := client.CreateField(l.as(Mei), &pb.CreateFieldRequest{Parent: club.ClubName(ClubID), RequestId: requestID(file),
			Field: &pb.Field{DisplayName: description.GetDisplayName(), Description: description}})
		if err != nil {
			return fmt.Errorf("field %s: %w", file, err)
		}
		l.made[file] = made.GetName()
	}
	return nil
}

// models and whose they are.
func (l *loader) models() error {
	client := pb.NewModelsServiceClient(l.conn)
	for _, m := range []struct{ file, owner string }{{"dabchick", Ada}, {"sandmartin", Bram}, {"redshank", Ada}, {"nightjar", Tomas}} {
		description, err := read(m.file, &pb.ModelDescription{})
		if err != nil {
			return err
		}
		made, err := client.CreateModel(l.as(m.owner), &pb.CreateModelRequest{Parent: club.ClubName(ClubID), RequestId: requestID(m.file),
			Model: &pb.Model{DisplayName: description.GetDisplayName(), Description: description}})
		if err != nil {
			return fmt.Errorf("model %s: %w", m.file, err)
		}
		l.made[m.file] = made.GetName()
	}
	return nil
}
