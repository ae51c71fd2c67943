package api

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"time"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/document"
	"pitgate/server/metar"
)

// DecodeWeather reads an aerodrome report into conditions of the day. What is not understood is refused by group and place.
func (s *assessmentsService) DecodeWeather(ctx context.Context, req *pb.DecodeWeatherRequest) (*pb.DecodeWeatherResponse, error) {
	if _, err := enter(ctx, req.GetParent()); err != nil {
		return nil, err
	}
	near := s.now()
	if req.GetNearTime() != "" {
		given, err := time.Parse(time.RFC3339, req.GetNearTime())
		if err != nil {
			return nil, &invalidError{[]violation{{"near_time", "has to be a time with its offset, such as 2026-11-25T14:30:00+01:00"}}}
		}
		near = given
	}
	report, err := metar.Decode(req.GetText())
	var group *metar.GroupError
	if errors.As(err, &group) {
		return nil, &invalidError{[]violation{{"text", group.Error()}}}
	}
	if err != nil {
		return nil, err
	}
	day, notes := document.DayOf(report, req.GetText(), near)
	text, err := json.Marshal(day)
	if err != nil {
		return nil, fmt.Errorf("conditions of the day: %w", err)
	}
	out := &pb.DecodeWeatherResponse{Day: &pb.DayConditions{}, Station: report.Station, Absent: report.Absent(), Notes: notes}
	return out, readDocument(text, out.GetDay())
}
