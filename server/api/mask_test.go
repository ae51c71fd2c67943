package api

import (
	"testing"

	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/types/known/fieldmaskpb"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
)

func TestMerge(t *testing.T) {
	t.Parallel()
	before := &pb.Model{DisplayName: "Dabchick", Owner: "clubs/larkmoor/people/ada", LatestRevision: 3,
		Description: &pb.ModelDescription{DisplayName: "Dabchick", BuilderNotes: "old"}}
	for _, c := range []struct {
		name   string
		change *pb.Model
		paths  []string
		want   *pb.Model
	}{
		{"without a mask only what is filled", &pb.Model{DisplayName: "Two"}, nil, with(before, func(m *pb.Model) { m.DisplayName = "Two" })},
		{"one part deep inside", &pb.Model{Description: &pb.ModelDescription{BuilderNotes: "new"}}, []string{"description.builder_notes"},
			with(before, func(m *pb.Model) { m.Description.BuilderNotes = "new" })},
		{"the whole description", &pb.Model{Description: &pb.ModelDescription{BuilderNotes: "new"}}, []string{"description"},
			with(before, func(m *pb.Model) { m.Description = &pb.ModelDescription{BuilderNotes: "new"} })},
		{"a named but absent part is cleared", &pb.Model{}, []string{"description.builder_notes"},
			with(before, func(m *pb.Model) { m.Description.BuilderNotes = "" })},
		{"what the server alone writes stays", &pb.Model{Owner: "clubs/larkmoor/people/bram", LatestRevision: 9}, []string{"owner", "latest_revision"}, before},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			got := proto.CloneOf(before)
			if err := merge(got, c.change, &fieldmaskpb.FieldMask{Paths: c.paths}, "display_name", "description"); err != nil {
				t.Fatal(err)
			}
			if !proto.Equal(got, c.want) {
				t.Errorf("got %v\nwant %v", got, c.want)
			}
		})
	}
	err := merge(&pb.Model{}, &pb.Model{}, &fieldmaskpb.FieldMask{Paths: []string{"no_such_field"}}, "display_name")
	if club.CodeOf(err) != club.Invalid {
		t.Errorf("an unknown path: %v", err)
	}
}

// with is a changed copy.
func with(m *pb.Model, change func(*pb.Model)) *pb.Model {
	out := proto.CloneOf(m)
	change(out)
	return out
}

func TestFillEtag(t *testing.T) {
	t.Parallel()
	flat := &pb.DecisionRequest{}
	fillEtag(flat.ProtoReflect(), "v7", true)
	if flat.GetEtag() != "v7" {
		t.Errorf("etag %q", flat.GetEtag())
	}
	nested := &pb.UpdateModelRequest{Model: &pb.Model{}}
	fillEtag(nested.ProtoReflect(), "v7", true)
	if nested.GetModel().GetEtag() != "v7" {
		t.Errorf("etag of the resource %q", nested.GetModel().GetEtag())
	}
	given := &pb.DecisionRequest{Etag: "v2"}
	fillEtag(given.ProtoReflect(), "v7", true)
	if given.GetEtag() != "v2" {
		t.Errorf("a given etag was replaced by %q", given.GetEtag())
	}
}

func TestEntryToken(t *testing.T) {
	t.Parallel()
	for _, index := range []int64{0, 1, 500, 1 << 40} {
		if got, err := entryIndex(entryToken(index)); err != nil || got != index {
			t.Errorf("%d became %d, %v", index, got, err)
		}
	}
	for _, token := range []string{"zz", "ZQ", "ZS0x", "ZTF4", "!"} {
		if _, err := entryIndex(token); club.CodeOf(err) != club.Invalid {
			t.Errorf("token %q: %v", token, err)
		}
	}
}
