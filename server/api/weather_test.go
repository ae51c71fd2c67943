package api_test

import (
	"strings"
	"testing"

	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"

	pb "pitgate/proto/pitgate/v1"
)

// TestDecodedReportFillsTheDay pastes a report and wants the conditions of the day, and what is not understood by its place.
func TestDecodedReportFillsTheDay(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	ask := func(text string) (*pb.DecodeWeatherResponse, error) {
		return h.assessments().DecodeWeather(h.as(ada), &pb.DecodeWeatherRequest{Parent: "clubs/" + home, Text: text, NearTime: "2026-05-16T11:00:00+01:00"})
	}
	out, err := ask("METAR EGXX 160950Z 05006KT 9999 SCT030 14/05 Q1019")
	if err != nil {
		t.Fatal(err)
	}
	day := out.GetDay()
	if day.GetTime() != "2026-05-16T09:50:00Z" || day.GetQnhPascals().GetValue() != 101900 || day.GetWindDirectionDegrees().GetValue() != 50 ||
		day.GetTemperatureCelsius().GetValue() != 14 || day.GetFrost() != pb.Frost_FROST_UNSPECIFIED || out.GetStation() != "EGXX" {
		t.Errorf("got %v from %s", day, out.GetStation())
	}
	if _, err := ask("METAR EGXX 160950Z 05006"); status.Code(err) != codes.InvalidArgument || !strings.Contains(err.Error(), "05006") {
		t.Errorf("got %v, want the group that is not understood", err)
	}
}

// TestPreviewWindowSaysWhichWindsHold asks for the demo's Dabchick and for a document that holds nothing.
func TestPreviewWindowSaysWhichWindsHold(t *testing.T) {
	t.Parallel()
	h := open(t, "")
	ask := func(in *pb.AssessmentInput) *pb.WindWindow {
		t.Helper()
		out, err := h.assessments().PreviewWindow(h.as(ada), &pb.PreviewWindowRequest{Parent: "clubs/" + home, Input: in})
		if err != nil {
			t.Fatal(err)
		}
		return out
	}
	whole := ask(file(t, "dabchick_long_acre", &pb.AssessmentInput{}))
	if len(whole.GetWays()) != 2 || len(whole.GetWays()[0].GetRanges()) != 36 || whole.GetBestWay() == "" {
		t.Errorf("got %d ways, best %q: %s", len(whole.GetWays()), whole.GetBestWay(), whole.GetNote())
	}
	if empty := ask(&pb.AssessmentInput{}); len(empty.GetWays()) != 0 || len(empty.GetMissing()) == 0 {
		t.Errorf("an empty document gives %v", empty)
	}
}
