package assess

import (
	"math"
	"testing"

	"pitgate/server/physics/sample"
)

// No number is drawn that cannot be, the median stays, and so does the spread where it is narrow.
func TestDrawsArePossible(t *testing.T) {
	t.Parallel()
	points, err := sample.New(1, 4096, 1)
	if err != nil {
		t.Fatal(err)
	}
	z := points.Deviates(0)
	for _, c := range []struct {
		input       uncertain
		least, most float64
	}{
		{uncertain{name: "model.mass.emptyMassKg", value: 7.3, spread: 0.04}, 0, math.Inf(1)},
		{uncertain{name: "model.mass.emptyMassKg", value: 7.3, spread: 1.46}, 0, math.Inf(1)},
		{uncertain{name: "day.windSpeedMetersPerSecond", value: 1, spread: 0.9}, 0, math.Inf(1)},
		{uncertain{name: "day.windSpeedMetersPerSecond", value: 0, spread: 0.9}, math.Inf(-1), math.Inf(1)},
		{uncertain{name: "day.relativeHumidityRatio", value: 0.9, spread: 0.15}, 0, 1},
		{uncertain{name: "launchPlan.bungee.efficiencyRatio", value: 0.8, spread: 0.02}, 0, 1},
		{uncertain{name: "model.mass.emptyBalanceXMeters", value: 0.01, spread: 0.02}, math.Inf(-1), math.Inf(1)},
		{uncertain{name: "day.temperatureCelsius", value: 2, spread: 3}, math.Inf(-1), math.Inf(1)},
		{uncertain{name: "method: zero-lift drag", value: 1, spread: 0.3}, 0, math.Inf(1)},
	} {
		sum, square := 0.0, 0.0
		for _, deviate := range z {
			v := c.input.value + c.input.draw(deviate)
			if !(v > c.least && v < c.most) {
				t.Errorf("%+v: drawn %g", c.input, v)
			}
			sum, square = sum+v, square+v*v
		}
		if math.Abs(c.input.draw(0)) > 1e-15 || !(c.input.draw(1) > 0) || !(c.input.draw(-1) < 0) {
			t.Errorf("%+v: the middle moves", c.input)
		}
		mean := sum / 4096
		spread := math.Sqrt(square/4096 - mean*mean)
		if c.input.spread < 0.5*c.input.value && c.most != 1 && math.Abs(spread/mean*c.input.value/c.input.spread-1) > 0.02 {
			t.Errorf("%+v: coefficient of variation %g", c.input, spread/mean)
		}
		if slope := (c.input.draw(0.01) - c.input.draw(-0.01)) / 0.02; math.Abs(slope/c.input.spread-1) > 0.03 {
			t.Errorf("%+v: slope %g in the middle", c.input, slope)
		}
	}
}
