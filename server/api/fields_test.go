package api_test

import (
	"strings"
	"testing"

	"google.golang.org/grpc/codes"
	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/types/known/fieldmaskpb"

	pb "pitgate/proto/pitgate/v1"
)

// TestFieldVersionsStay: the version an approval names is read as it was, whatever the field became.
func TestFieldVersionsStay(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	f := h.newField()
	changed := proto.CloneOf(f)
	changed.Description.KeeperNotes = "Drained."
	after, err := h.fields().UpdateField(h.as(kit), &pb.UpdateFieldRequest{Field: changed, UpdateMask: &fieldmaskpb.FieldMask{Paths: []string{"description"}}})
	h.must(err)
	if after.GetLatestVersion() != 2 {
		t.Fatalf("version %d after a change, want 2", after.GetLatestVersion())
	}
	for number, want := range map[int32]string{1: f.GetDescription().GetKeeperNotes(), 2: "Drained."} {
		v, err := h.fields().GetFieldVersion(h.as(bram), &pb.GetFieldVersionRequest{Name: f.GetName(), Number: number})
		h.must(err)
		if v.GetNumber() != number || v.GetDescription().GetKeeperNotes() != want || len(v.GetDigest()) != 64 || v.GetField() != f.GetName() {
			t.Errorf("version %d is %v with notes %q", number, v.GetNumber(), v.GetDescription().GetKeeperNotes())
		}
	}
	_, err = h.fields().GetFieldVersion(h.as(bram), &pb.GetFieldVersionRequest{Name: f.GetName(), Number: 3})
	wantRefusal(t, err, codes.NotFound, "NOT_FOUND")
}

// TestCheckFieldNamesPartAndCorner gives descriptions that cannot be kept and wants the fault, its path and the part's name.
func TestCheckFieldNamesPartAndCorner(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	point := func(x, y float64) *pb.Point { return &pb.Point{XMeters: &x, YMeters: &y} }
	rows := []struct {
		name, path, part, text string
		fault                  bool
		change                 func(d *pb.FieldDescription)
	}{
		{"crossing", "flyingArea", "", "crosses itself", true, func(d *pb.FieldDescription) {
			c := d.FlyingArea.Corners
			c[1], c[2] = c[2], c[1]
		}},
		{"doubly closed", "keepOuts[0].area", "farmyard", "same corner twice", true, func(d *pb.FieldDescription) {
			a := d.KeepOuts[0].Area
			a.Corners = append(a.Corners, proto.CloneOf(a.Corners[0]))
		}},
		{"too far out", "obstacles[0].points[1].xMeters", "east hedge", "at most 20000", true, func(d *pb.FieldDescription) { d.Obstacles[0].Points[1] = point(30000, 0) }},
		{"strip out of the area", "strips[0].end", "06/24", "out of the flying area", false, func(d *pb.FieldDescription) { d.Strips[0].End = point(600, 360) }},
	}
	for _, row := range rows {
		d := file(t, "long_acre", &pb.FieldDescription{})
		row.change(d)
		before := h.entryCount()
		out, err := h.fields().CheckField(h.as(ada), &pb.CheckFieldRequest{Parent: "clubs/" + home, Description: d})
		h.must(err)
		if h.entryCount() != before {
			t.Errorf("%s: the check wrote into the ledger", row.name)
		}
		if len(out.GetRemarks()) == 0 {
			t.Errorf("%s: nothing was remarked", row.name)
			continue
		}
		got := out.GetRemarks()[0]
		if got.GetPath() != row.path || got.GetPart() != row.part || got.GetFault() != row.fault || !strings.Contains(got.GetText(), row.text) {
			t.Errorf("%s: %v, want %s of %q with %q, fault %v", row.name, got, row.path, row.part, row.text, row.fault)
		}
	}
}
