package engine

import "testing"

// TestDayGivesTheThrustOfTheEngine asks every kind at idle, full power and between, at speeds from rest up, in two airs.
func TestDayGivesTheThrustOfTheEngine(t *testing.T) {
	t.Parallel()
	for _, kind := range []Kind{Turbine, DuctedFan, Propeller} {
		e := Engine{Kind: kind, StaticThrust: 120, IdleThrust: 5, SpoolTime: 3, MassFlow: 0.3, JetArea: 0.01, InstallationLoss: 0.05}
		for _, air := range []Air{{}, {Temperature: 270, Pressure: 99000}} {
			day := e.In(air)
			for _, ratio := range []float64{0, e.IdleRatio(), 0.3, 0.7, 1} {
				for _, speed := range []float64{-3, 0, 20, 60} {
					if got, want := day.ThrustAtRatio(speed, ratio), e.ThrustAtRatio(speed, ratio, air); got != want {
						t.Errorf("kind %v, ratio %g, %g m/s: got %g N, want %g N", kind, ratio, speed, got, want)
					}
				}
			}
		}
	}
}
