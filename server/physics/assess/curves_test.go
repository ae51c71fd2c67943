package assess_test

import (
	"math"
	"strings"
	"testing"

	"pitgate/server/physics/assess"
)

// curveOf returns the diagram with an id.
func curveOf(t *testing.T, report assess.Report, id string) assess.ReportCurve {
	t.Helper()
	for _, curve := range report.Curves {
		if curve.ID == id {
			return curve
		}
	}
	t.Fatalf("report has no curve %s", id)
	return assess.ReportCurve{}
}

// toldOf returns the value of a quantity.
func toldOf(t *testing.T, report assess.Report, id string) float64 {
	t.Helper()
	for _, q := range report.Quantities {
		if q.ID == id && q.Value != nil {
			return *q.Value
		}
	}
	t.Fatalf("report tells no %s", id)
	return 0
}

// TestEveryCurveHasWords wants title, axes and at least two points a series.
func TestEveryCurveHasWords(t *testing.T) {
	t.Parallel()
	for _, row := range demoVerdicts {
		report := assessed(t, demoInput(t, row.name))
		if len(report.Curves) < 3 {
			t.Errorf("%s: %d curves", row.name, len(report.Curves))
		}
		for _, curve := range report.Curves {
			if curve.Title == "" || curve.XTitle == "" || curve.YTitle == "" || curve.XUnit == "" || curve.YUnit == "" || curve.Note == "" {
				t.Errorf("%s: %s lacks words: %+v", row.name, curve.ID, curve)
			}
			for _, series := range curve.Series {
				if series.Name == "" || len(series.Points) < 2 {
					t.Errorf("%s: %s has a series %q of %d points", row.name, curve.ID, series.Name, len(series.Points))
				}
			}
		}
	}
}

func TestLiftCurveEndsAtTheStall(t *testing.T) {
	t.Parallel()
	report := assessed(t, demoInput(t, "sandmartin_long_acre"))
	curve := curveOf(t, report, "lift.curve")
	for i, id := range []string{"lift.maximum_coefficient", "lift.maximum_coefficient_takeoff"} {
		points, mark, want := curve.Series[i].Points, curve.Marks[i], toldOf(t, report, id)
		end := points[len(points)-1]
		if math.Abs(end.Y-want) > 1e-9 || mark.Y != want || !strings.Contains(mark.Name, "% of its half span stalls") {
			t.Errorf("%s: curve ends at %g, mark %+v, want %g", curve.Series[i].Name, end.Y, mark, want)
		}
		// In balance the tail's control takes back a part of the lift that the whole model gains with incidence.
		slope, whole := (end.Y-points[0].Y)/(end.X-points[0].X)*180/math.Pi, toldOf(t, report, "lift.slope")
		if !(slope < whole && slope > 0.85*whole) {
			t.Errorf("slope of the drawn line %g per rad of %g controls fixed", slope, whole)
		}
	}
}

func TestPolarHasItsBand(t *testing.T) {
	t.Parallel()
	report := assessed(t, demoInput(t, "dabchick_long_acre"))
	points := curveOf(t, report, "drag.polar").Series[0].Points
	if got := points[0].Y; math.Abs(got-toldOf(t, report, "drag.zero_lift")) > 1e-12 {
		t.Errorf("drag without lift %g", got)
	}
	for i, point := range points {
		if point.Low == nil || point.High == nil || !(*point.Low < point.Y && point.Y < *point.High) {
			t.Fatalf("point %d: %+v has no band around it", i, point)
		}
		if i > 0 && !(point.Y > points[i-1].Y) {
			t.Errorf("drag does not grow with lift at %g", point.X)
		}
	}
}

// TestLoadingTouchesItsLimitWhereItStalls wants the marked strip at its limit and every strip of the wing at or below it.
func TestLoadingTouchesItsLimitWhereItStalls(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"dabchick_long_acre", "redshank_quarry_top"} {
		curve := curveOf(t, assessed(t, demoInput(t, name)), "lift.span_loading")
		if len(curve.Marks) != 1 {
			t.Fatalf("%s: marks %v", name, curve.Marks)
		}
		touches := false
		for i := 0; i+1 < len(curve.Series); i += 2 {
			for k, point := range curve.Series[i].Points {
				limit := curve.Series[i+1].Points[k]
				touches = touches || point.X == curve.Marks[0].X && math.Abs(point.Y-limit.Y) < 2e-3
				if (i == 0 || curve.Series[i].Name == "canard") && point.Y > limit.Y+2e-3 {
					t.Errorf("%s: %s at %g m has %g, more than its limit %g", name, curve.Series[i].Name, point.X, point.Y, limit.Y)
				}
			}
		}
		if !touches {
			t.Errorf("%s: no strip reaches its limit at %g m", name, curve.Marks[0].X)
		}
	}
}
