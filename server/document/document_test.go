package document

import (
	"bytes"
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"google.golang.org/protobuf/encoding/protojson"

	pitgatev1 "pitgate/proto/pitgate/v1"
	"pitgate/server/physics/assess"
)

const demoFolder = "../../testdata/demo"

// wholeDocuments are the demo files that hold an AssessmentInput.
func wholeDocuments(t testing.TB) map[string][]byte {
	t.Helper()
	documents := map[string][]byte{}
	files, err := filepath.Glob(filepath.Join(demoFolder, "*.json"))
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if bytes.Contains(data, []byte(`"model"`)) {
			documents[filepath.Base(file)] = data
		}
	}
	if len(documents) < 6 {
		t.Fatalf("only %d whole documents in %s", len(documents), demoFolder)
	}
	return documents
}

// TestBothSpellingsAreOneDocument decodes what protojson writes in either spelling and wants the same digest.
func TestBothSpellingsAreOneDocument(t *testing.T) {
	t.Parallel()
	for name, data := range wholeDocuments(t) {
		in, err := Decode(data)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		var message pitgatev1.AssessmentInput
		if err := protojson.Unmarshal(data, &message); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		for _, protoNames := range []bool{false, true} {
			written, err := protojson.MarshalOptions{UseProtoNames: protoNames}.Marshal(&message)
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			again, err := Decode(written)
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			if Digest(again) != Digest(in) {
				t.Errorf("%s: digest changes with the spelling (proto names %v)", name, protoNames)
			}
		}
	}
}

func TestCanonicalFormIsStable(t *testing.T) {
	t.Parallel()
	for name, data := range wholeDocuments(t) {
		in, err := Decode(data)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		form, err := Canonical(in)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		again, err := Decode(form)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if !reflect.DeepEqual(in, again) {
			t.Errorf("%s: canonical form decodes to something else", name)
		}
	}
}

// TestDigest is the SHA-256 of two bytes for the empty input, an outside check of digest and form.
func TestDigest(t *testing.T) {
	t.Parallel()
	const sumOfEmptyObject = "44136fa355b3678a1146ad16f7e8649e94fb4fc21fe77e8310c060f61caaff8a"
	if got := Digest(assess.Input{}); got != sumOfEmptyObject {
		t.Errorf("digest of an empty input: got %s", got)
	}
}

func TestDecodeParts(t *testing.T) {
	t.Parallel()
	read := func(name string) []byte {
		data, err := os.ReadFile(filepath.Join(demoFolder, name))
		if err != nil {
			t.Fatal(err)
		}
		return data
	}
	model, err := DecodeModel(read("redshank.json"))
	if err != nil || model.DisplayName != "Redshank" {
		t.Errorf("model: %q, %v", model.DisplayName, err)
	}
	field, err := DecodeField(read("quarry_top.json"))
	if err != nil || field.DisplayName != "Quarry Top" {
		t.Errorf("field: %q, %v", field.DisplayName, err)
	}
	plan, err := DecodePlan(read("plan_redshank_quarry_top.json"))
	if err != nil || plan.Method != assess.LaunchMethodRamp {
		t.Errorf("plan: %q, %v", plan.Method, err)
	}
	day, err := DecodeDay(read("day_quarry_top_calm.json"))
	if err != nil || day.SurfaceState != assess.SurfaceStateDry {
		t.Errorf("day: %q, %v", day.SurfaceState, err)
	}
	limits, err := DecodeLimits(read("limits_larkmoor.json"))
	if err != nil || limits.RulePack == "" {
		t.Errorf("limits: %q, %v", limits.RulePack, err)
	}
	if _, err := DecodeModel([]byte(`{"surfaces":[{"name":"wing","stations":[{"chordMeters":-1}]}]}`)); err == nil ||
		!strings.HasPrefix(err.Error(), "surfaces[0].stations[0].chordMeters: ") {
		t.Errorf("model fault: %v", err)
	}
}

func TestSizeAndDepthCaps(t *testing.T) {
	t.Parallel()
	rows := []struct{ name, data, message string }{
		{"size", `{"model":{"builderNotes":"` + strings.Repeat("x", MaximumBytes) + `"}}`, "must be at most 1048576 bytes"},
		{"depth", strings.Repeat(`{"model":`, 100) + "1" + strings.Repeat("}", 100), "must not be nested deeper than 32"},
		{"list", "[]", "must be an object, got a list"},
		{"bytes", "\xff\xfe", "is not valid UTF-8"},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			_, err := Decode([]byte(row.data))
			if err == nil || !strings.Contains(err.Error(), row.message) {
				t.Errorf("got %v, want %q", err, row.message)
			}
		})
	}
}

func TestAllFaultsAreNamed(t *testing.T) {
	t.Parallel()
	_, err := Decode([]byte(`{"model":{"x":1,"y":2},"day":{"windHeightMeters":0},"limits":{"minimumLiftoffRatio":9}}`))
	var found Errors
	if !errors.As(err, &found) {
		t.Fatalf("got %v, want faults", err)
	}
	var paths []string
	for _, fault := range found {
		paths = append(paths, fault.Path)
	}
	want := []string{"model.x", "model.y", "day.windHeightMeters", "limits.minimumLiftoffRatio"}
	if !reflect.DeepEqual(paths, want) {
		t.Errorf("got %v, want %v", paths, want)
	}
}

func FuzzDecode(f *testing.F) {
	for _, data := range wholeDocuments(f) {
		f.Add(data)
	}
	f.Add([]byte(`{"model":{"surfaces":[{"name":"\ud800","role":"SURFACE_ROLE_UNSPECIFIED"}]}}`))
	f.Add([]byte(`{"model":null,"day":{"temperatureCelsius":{"value":-0.0}}}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		in, err := Decode(data)
		if err != nil {
			return
		}
		form, err := Canonical(in)
		if err != nil {
			t.Fatalf("decoded input has no canonical form: %v", err)
		}
		if !json.Valid(form) {
			t.Fatalf("canonical form is not JSON: %s", form)
		}
		again, err := Decode(form)
		if err != nil {
			t.Fatalf("canonical form is refused: %v", err)
		}
		if Digest(again) != Digest(in) {
			t.Fatalf("canonical form changes: %s", form)
		}
	})
}
