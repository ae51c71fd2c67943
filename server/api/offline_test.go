package api

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"google.golang.org/genproto/googleapis/rpc/errdetails"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/encoding/protojson"
	"google.golang.org/protobuf/proto"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/answer"
)

// documentsIn reads the documents of a folder of testdata that the contract can read at all.
func documentsIn(t *testing.T, folder string) map[string]*pb.AssessmentInput {
	t.Helper()
	files, err := filepath.Glob(filepath.Join("../../testdata", folder, "*.json"))
	if err != nil {
		t.Fatal(err)
	}
	read := map[string]*pb.AssessmentInput{}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		in := &pb.AssessmentInput{}
		if protojson.Unmarshal(text, in) == nil && in.GetModel() != nil {
			read[filepath.Base(file)] = in
		}
	}
	return read
}

// TestPreviewIsTheAnswerOfTheDevice compares what the server computes from a document with what a page without a server is answered, byte for byte.
func TestPreviewIsTheAnswerOfTheDevice(t *testing.T) {
	t.Parallel()
	documents := documentsIn(t, "demo")
	if len(documents) < 7 {
		t.Fatalf("only %d documents", len(documents))
	}
	server := &backend{computing: make(chan struct{}, 1)}
	for name, in := range documents {
		computed, err := server.computeInput(t.Context(), in)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		text, err := os.ReadFile(filepath.Join("../../testdata/demo", name))
		if err != nil {
			t.Fatal(err)
		}
		device, err := answer.Report(text, nil)
		if err != nil || !bytes.Equal(computed.Report, device) {
			t.Errorf("%s: %d bytes of the server, %d of the device, error %v", name, len(computed.Report), len(device), err)
		}
	}
}

// TestRefusalIsThatOfTheDevice compares the words in which server and device refuse the same document.
func TestRefusalIsThatOfTheDevice(t *testing.T) {
	t.Parallel()
	documents := documentsIn(t, "broken")
	impossible := documentsIn(t, "demo")["dabchick_long_acre.json"]
	twin, _ := proto.Clone(impossible.GetModel().GetSurfaces()[0]).(*pb.LiftingSurface)
	twin.Name, twin.Role = "twin", pb.SurfaceRole_SURFACE_ROLE_WING
	impossible.Model.Surfaces = append(impossible.Model.Surfaces, twin)
	documents["two wings in one place"] = impossible
	if len(documents) < 20 {
		t.Fatalf("only %d documents", len(documents))
	}
	server := &backend{computing: make(chan struct{}, 1)}
	reasons := map[string]int{}
	for name, in := range documents {
		_, err := server.computeInput(t.Context(), in)
		text, marshalErr := protojson.Marshal(in)
		_, deviceErr := answer.Report(text, nil)
		if marshalErr != nil || (err == nil) != (deviceErr == nil) {
			t.Errorf("%s: server says %v, device %v", name, err, deviceErr)
			continue
		}
		if err == nil {
			continue
		}
		got, want := answer.RefusalOf(deviceErr), refusalOf(err)
		reasons[want.Reason]++
		if a, b := wordsOf(got), wordsOf(want); a != b {
			t.Errorf("%s: device says %s, server %s", name, a, b)
		}
	}
	if reasons["INVALID_DOCUMENT"] < 20 || reasons["NOT_COMPUTABLE"] == 0 {
		t.Errorf("refusals by reason: %v", reasons)
	}
}

func wordsOf(r answer.Refusal) string {
	text, _ := json.Marshal(r)
	return string(text)
}

// refusalOf reads a server's refusal as the gateway does.
func refusalOf(err error) answer.Refusal {
	st := status.Convert(statusOf(err, ""))
	refusal := answer.Refusal{Code: "INVALID_ARGUMENT", Message: st.Message()}
	for _, detail := range st.Details() {
		switch d := detail.(type) {
		case *errdetails.ErrorInfo:
			refusal.Reason = d.GetReason()
		case *errdetails.BadRequest:
			for v := range slices.Values(d.GetFieldViolations()) {
				refusal.FieldViolations = append(refusal.FieldViolations, answer.FieldViolation{Field: v.GetField(), Description: v.GetDescription()})
			}
		}
	}
	return refusal
}
