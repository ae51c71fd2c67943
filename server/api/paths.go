package api

import (
	"strconv"
	"strings"
	"unicode"

	"buf.build/gen/go/bufbuild/protovalidate/protocolbuffers/go/buf/validate"
	"google.golang.org/protobuf/reflect/protoreflect"
)

// jsonPath writes a violated field's path with the names of the JSON form, e.g. "incident.actions[1].dueDate".
func jsonPath(md protoreflect.MessageDescriptor, path *validate.FieldPath) string {
	var b strings.Builder
	for _, element := range path.GetElements() {
		name := element.GetFieldName()
		if md != nil {
			fd := md.Fields().ByName(protoreflect.Name(name))
			if md = nil; fd != nil {
				name, md = fd.JSONName(), fd.Message()
			}
		}
		if b.Len() > 0 {
			b.WriteByte('.')
		}
		b.WriteString(name)
		if element.HasIndex() {
			b.WriteString("[" + strconv.FormatUint(element.GetIndex(), 10) + "]")
		}
	}
	return b.String()
}

// jsonNames writes a path of contract names with the names of the JSON form: "request_id" becomes "requestId".
func jsonNames(path string) string {
	var b strings.Builder
	upper := false
	for _, r := range path {
		switch {
		case r == '_':
			upper = true
			continue
		case upper:
			r = unicode.ToUpper(r)
		}
		upper = false
		b.WriteRune(r)
	}
	return b.String()
}
