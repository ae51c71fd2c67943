package api

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"google.golang.org/genproto/googleapis/rpc/errdetails"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/encoding/protojson"
	"google.golang.org/protobuf/proto"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/answer"
	"pitgate/server/club"
	"pitgate/server/physics/assess"
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
		computed, err := server.computeInput(t.Context(), in, assess.SpreadOptions{})
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

// TestSampledPreviewIsTheAnswerOfTheDevice compares sampled reports, byte for byte, and wants another seed to give another one.
func TestSampledPreviewIsTheAnswerOfTheDevice(t *testing.T) {
	t.Parallel()
	documents := documentsIn(t, "demo")
	server := &backend{computing: make(chan struct{}, 1)}
	for _, name := range []string{"redshank_quarry_top.json", "dabchick_long_acre.json"} {
		text, err := os.ReadFile(filepath.Join("../../testdata/demo", name))
		if err != nil {
			t.Fatal(err)
		}
		reports := map[int32][]byte{}
		for _, seed := range []int32{0, -7} {
			options := assess.SpreadOptions{Samples: 32, Seed: seed}
			computed, err := server.computeInput(t.Context(), documents[name], options)
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			device, err := answer.Spread(text, options)
			if err != nil || !bytes.Equal(computed.Report, device) {
				t.Errorf("%s: %d bytes of the server, %d of the device, error %v", name, len(computed.Report), len(device), err)
			}
			reports[seed] = device
		}
		if bytes.Equal(reports[0], reports[-7]) {
			t.Errorf("%s: both seeds give one report", name)
		}
	}
}

// TestRemediesAreTheAnswerOfTheDevice compares reports with remedies, byte for byte, with bands by first order and by samples, and wants the finding asked
// for to be the only one mended.
func TestRemediesAreTheAnswerOfTheDevice(t *testing.T) {
	t.Parallel()
	const name = "redshank_quarry_top.json"
	in := documentsIn(t, "demo")[name]
	text, err := os.ReadFile(filepath.Join("../../testdata/demo", name))
	if err != nil {
		t.Fatal(err)
	}
	server := &backend{computing: make(chan struct{}, 1)}
	for _, samples := range []int{0, 32} {
		options := assess.SpreadOptions{Samples: samples, Seed: 3}
		computed, err := server.computeRemedies(t.Context(), in, options, "launch.end_speed")
		if err != nil {
			t.Fatal(err)
		}
		device, err := answer.Remedied(text, "launch.end_speed", options)
		if err != nil || !bytes.Equal(computed.Report, device) {
			t.Errorf("%d samples: %d bytes of the server, %d of the device, error %v", samples, len(computed.Report), len(device), err)
		}
		var report assess.Report
		if err := json.Unmarshal(device, &report); err != nil || len(report.Remedies) < 2 {
			t.Fatalf("%d samples: %d remedies, error %v", samples, len(report.Remedies), err)
		}
		for _, remedy := range report.Remedies {
			if remedy.FindingID != "launch.end_speed" {
				t.Errorf("%d samples: mends %s", samples, remedy.FindingID)
			}
		}
	}
}

// TestSampledPreviewEndsWithItsCaller cancels a run that nobody waits for any more.
func TestSampledPreviewEndsWithItsCaller(t *testing.T) {
	t.Parallel()
	server := &backend{computing: make(chan struct{}, 1)}
	ctx, cancel := context.WithCancel(t.Context())
	server.computing <- struct{}{}
	time.AfterFunc(20*time.Millisecond, cancel)
	in := documentsIn(t, "demo")["redshank_quarry_top.json"]
	if _, err := server.computeInput(ctx, in, assess.SpreadOptions{Samples: 4096}); !errors.Is(err, context.Canceled) {
		t.Errorf("waiting in line ends with %v", err)
	}
	<-server.computing
	ctx, cancel = context.WithTimeout(t.Context(), 100*time.Millisecond)
	defer cancel()
	if _, err := server.computeInput(ctx, in, assess.SpreadOptions{Samples: 4096}); !errors.Is(err, context.DeadlineExceeded) {
		t.Errorf("a run past its time ends with %v", err)
	}
	if len(server.computing) != 0 {
		t.Error("the processor is not given back")
	}
}

func TestCountsOfSamples(t *testing.T) {
	t.Parallel()
	member, officer := caller{}, caller{person: club.Person{Roles: []club.Role{club.SafetyOfficer}}}
	for _, row := range []struct {
		who   caller
		count int
		taken bool
	}{
		{member, 0, true}, {member, 15, false}, {member, 16, true}, {member, 1024, true}, {member, 1025, false},
		{officer, 1025, true}, {officer, 4096, true}, {officer, 4097, false}, {officer, 3, false},
	} {
		if err := row.who.checkSamples(row.count); (err == nil) != row.taken {
			t.Errorf("%d samples by %v: %v", row.count, row.who.person.Roles, err)
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
		_, err := server.computeInput(t.Context(), in, assess.SpreadOptions{})
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
