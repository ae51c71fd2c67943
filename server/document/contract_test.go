package document

import (
	"fmt"
	"reflect"
	"slices"
	"sort"
	"strings"
	"testing"

	"buf.build/gen/go/bufbuild/protovalidate/protocolbuffers/go/buf/validate"
	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/reflect/protoreflect"

	pitgatev1 "pitgate/proto/pitgate/v1"
	"pitgate/server/compare"
	"pitgate/server/physics/assess"
)

// TestStructsMatchContract walks the contract's descriptors against the core's structs, so that the two cannot drift.
func TestStructsMatchContract(t *testing.T) {
	t.Parallel()
	roots := []struct {
		message proto.Message
		value   any
	}{
		{&pitgatev1.AssessmentInput{}, assess.Input{}},
		{&pitgatev1.AssessmentReport{}, assess.Report{}},
		{&pitgatev1.RulePackContent{}, RulePack{}},
		{&pitgatev1.Comparison{}, compare.Comparison{}},
	}
	seen := map[protoreflect.FullName]bool{}
	for _, root := range roots {
		compareMessage(t, root.message.ProtoReflect().Descriptor(), reflect.TypeOf(root.value), seen)
	}
	if len(seen) < 60 {
		t.Errorf("walked only %d messages", len(seen))
	}
}

func compareMessage(t *testing.T, message protoreflect.MessageDescriptor, got reflect.Type, seen map[protoreflect.FullName]bool) {
	t.Helper()
	if seen[message.FullName()] {
		return
	}
	seen[message.FullName()] = true
	if told := toldFields(got); told != message.Fields().Len() {
		t.Errorf("%s: contract has %d fields, struct has %d", message.Name(), message.Fields().Len(), told)
	}
	for i := range message.Fields().Len() {
		field := message.Fields().Get(i)
		at := string(message.Name()) + "." + string(field.Name())
		own, ok := fieldNamed(got, field.JSONName())
		if !ok || jsonName(own) != field.JSONName() {
			t.Errorf("%s: no struct field named %q", at, field.JSONName())
			continue
		}
		if snake(jsonName(own)) != string(field.Name()) {
			t.Errorf("%s: snake form is %q", at, snake(jsonName(own)))
		}
		compareField(t, at, field, own, seen)
	}
}

// toldFields counts the fields that are written.
func toldFields(of reflect.Type) int {
	count := 0
	for i := range of.NumField() {
		if of.Field(i).IsExported() {
			count++
		}
	}
	return count
}

func compareField(t *testing.T, at string, field protoreflect.FieldDescriptor, own reflect.StructField, seen map[protoreflect.FullName]bool) {
	t.Helper()
	inner := own.Type
	switch {
	case field.IsList():
		if inner.Kind() != reflect.Slice {
			t.Errorf("%s: must be a slice, is %s", at, inner)
			return
		}
		inner = inner.Elem()
	case field.HasPresence():
		if inner.Kind() != reflect.Pointer {
			t.Errorf("%s: must be a pointer, is %s", at, inner)
			return
		}
		inner = inner.Elem()
	case inner.Kind() == reflect.Pointer:
		t.Errorf("%s: must not be a pointer", at)
		return
	}
	compareKind(t, at, field, inner, seen)
	if want, got := contractBounds(field), tagBounds(own); want != got {
		t.Errorf("%s: contract bounds %q, tags %q", at, want, got)
	}
}

func compareKind(t *testing.T, at string, field protoreflect.FieldDescriptor, inner reflect.Type, seen map[protoreflect.FullName]bool) {
	t.Helper()
	want := map[protoreflect.Kind]reflect.Kind{
		protoreflect.DoubleKind: reflect.Float64, protoreflect.Int32Kind: reflect.Int32, protoreflect.BoolKind: reflect.Bool,
		protoreflect.StringKind: reflect.String, protoreflect.EnumKind: reflect.String, protoreflect.MessageKind: reflect.Struct,
	}[field.Kind()]
	if inner.Kind() != want {
		t.Errorf("%s: must be %s, is %s", at, want, inner)
		return
	}
	switch field.Kind() {
	case protoreflect.MessageKind:
		compareMessage(t, field.Message(), inner, seen)
	case protoreflect.EnumKind:
		compareEnum(t, at, field.Enum(), inner)
	default: // plain values have nothing further to compare
	}
}

func compareEnum(t *testing.T, at string, enum protoreflect.EnumDescriptor, inner reflect.Type) {
	t.Helper()
	choices, ok := reflect.Zero(inner).Interface().(enumeration)
	if !ok {
		t.Errorf("%s: %s lists no names", at, inner)
		return
	}
	var want []string
	for i := range enum.Values().Len() {
		value := enum.Values().Get(i)
		if value.Number() != 0 {
			want = append(want, string(value.Name()))
			continue
		}
		if zero := unspecified(choices.Names()); zero != string(value.Name()) {
			t.Errorf("%s: zero name is %q, derived %q", at, value.Name(), zero)
		}
	}
	if !slices.Equal(want, choices.Names()) {
		t.Errorf("%s: contract names %v, struct names %v", at, want, choices.Names())
	}
}

// contractBounds writes the validation options of a field in one fixed form.
func contractBounds(field protoreflect.FieldDescriptor) string {
	var found []string
	if rules, ok := proto.GetExtension(field.Options(), validate.E_Field).(*validate.FieldRules); ok && rules != nil {
		ruleEntries(rules.ProtoReflect(), "", &found)
	}
	if rules, ok := proto.GetExtension(field.Options(), pitgatev1.E_Bounds).(*validate.DoubleRules); ok && rules != nil {
		ruleEntries(rules.ProtoReflect(), "", &found)
	}
	sort.Strings(found)
	return strings.Join(found, " ")
}

func ruleEntries(rules protoreflect.Message, prefix string, found *[]string) {
	rules.Range(func(field protoreflect.FieldDescriptor, value protoreflect.Value) bool {
		switch {
		case field.Name() == "items":
			ruleEntries(value.Message(), "items ", found)
		case field.Kind() == protoreflect.MessageKind:
			ruleEntries(value.Message(), prefix, found)
		case field.Name() == "finite":
			*found = append(*found, prefix+"finite")
		default:
			*found = append(*found, fmt.Sprintf("%s%s=%v", prefix, field.Name(), value.Interface()))
		}
		return true
	})
}

// tagBounds writes a field's tags in the same form.
func tagBounds(own reflect.StructField) string {
	var found []string
	for _, entry := range bounds(own) {
		if entry.name == "finite" {
			found = append(found, entry.name)
			continue
		}
		found = append(found, fmt.Sprintf("%s=%v", entry.name, entry.value))
	}
	if pattern := own.Tag.Get("pattern"); pattern != "" {
		found = append(found, "pattern="+pattern)
	}
	if items := own.Tag.Get("items"); items != "" {
		found = append(found, "items "+items)
	}
	sort.Strings(found)
	return strings.Join(found, " ")
}
