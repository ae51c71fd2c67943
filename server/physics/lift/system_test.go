package lift

import (
	"math"
	"testing"
)

// The exported equations must be those that Solve answers: the residual vanishes and the lift slope is the same.
func TestSystemIsWhatSolveSolves(t *testing.T) {
	t.Parallel()
	surfaces := wingAndTail(0.1)
	system, err := System(surfaces, Reference{})
	if err != nil {
		t.Fatal(err)
	}
	for k, column := range system.Columns {
		for i, want := range column {
			sum := 0.0
			for j, g := range system.Strengths[k] {
				sum += system.Matrix[i*system.Size+j] * g
			}
			if math.Abs(sum-want) > 1e-11 {
				t.Fatalf("column %d row %d: residual %g", k, i, sum-want)
			}
		}
	}
	s := mustSolve(t, surfaces, Grid{})
	lift, _ := s.lattice.liftAndMoment(system.Strengths[columnIncidence])
	near(t, "lift slope", lift/s.Reference.Area, s.LiftSlope, 1e-12)
	if _, err := System(nil, Reference{}); err == nil {
		t.Error("nothing must be refused")
	}
}
