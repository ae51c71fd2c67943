package api

import (
	"strings"

	"buf.build/go/protovalidate"
	"google.golang.org/protobuf/reflect/protoreflect"
)

// outsideDocuments keeps the contract's validator out of the one document's parts: the document package checks those, with the same words
// at the same paths wherever a document comes from.
var outsideDocuments = protovalidate.FilterFunc(func(_ protoreflect.Message, d protoreflect.Descriptor) bool {
	switch file := strings.TrimPrefix(d.ParentFile().Path(), "pitgate/v1/"); file {
	case "quantity.proto", "model_description.proto", "field_description.proto", "assessment_input.proto", "assessment_report.proto":
		return false
	}
	return true
})
