package api

import (
	"slices"
	"strings"

	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/reflect/protoreflect"
	"google.golang.org/protobuf/types/known/fieldmaskpb"

	"pitgate/server/club"
)

// merge copies from change into target what the mask names. Only the editable parts of the resource are looked at; what the server alone
// writes is passed over. An empty mask means every editable part that change fills.
func merge(target, change proto.Message, mask *fieldmaskpb.FieldMask, editable ...string) error {
	paths := mask.GetPaths()
	if len(paths) == 0 {
		paths = filled(change.ProtoReflect(), editable)
	} else if !mask.IsValid(change) {
		return club.RefuseField("updateMask", "BAD_MASK", "names a field that does not exist")
	}
	for _, path := range paths {
		parts := strings.Split(path, ".")
		if slices.Contains(editable, parts[0]) {
			copyPath(target.ProtoReflect(), change.ProtoReflect(), parts)
		}
	}
	return nil
}

// filled lists the editable parts that a message carries.
func filled(m protoreflect.Message, editable []string) []string {
	var out []string
	for _, name := range editable {
		if fd := m.Descriptor().Fields().ByName(protoreflect.Name(name)); fd != nil && m.Has(fd) {
			out = append(out, name)
		}
	}
	return out
}

// copyPath sets the field at the path as it is in from, or clears it when from has none.
func copyPath(to, from protoreflect.Message, path []string) {
	fd := to.Descriptor().Fields().ByName(protoreflect.Name(path[0]))
	switch {
	case fd == nil:
	case len(path) > 1 && fd.Message() != nil && !fd.IsList() && !fd.IsMap():
		if from.Has(fd) || to.Has(fd) {
			copyPath(to.Mutable(fd).Message(), from.Get(fd).Message(), path[1:])
		}
	case from.Has(fd):
		to.Set(fd, from.Get(fd))
	default:
		to.Clear(fd)
	}
}
