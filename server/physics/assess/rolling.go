package assess

import "errors"

// errNoRolling says that a document holds no rolling test.
var errNoRolling = errors.New(rollingPath + ": no rolling test is given")

// Rolled is what the rolling tests of a document give.
type Rolled struct {
	Tests []RolledTest `json:"tests"`
	// Missing are the paths that a test lacks; then there is no mean.
	Missing []string `json:"missing,omitempty"`
	// FrictionRatio is the mean over the tests, SpreadRatio one standard deviation of it.
	FrictionRatio *float64 `json:"frictionRatio,omitempty"`
	SpreadRatio   *float64 `json:"spreadRatio,omitempty"`
	// RestsOnEstimate is set when a value of a test is estimated.
	RestsOnEstimate bool     `json:"restsOnEstimate,omitempty"`
	Cautions        []string `json:"cautions"`
}

// RolledTest is what one test gives; without a ratio where something is missing.
type RolledTest struct {
	Name          string   `json:"name,omitempty"`
	Way           string   `json:"way"`
	FrictionRatio *float64 `json:"frictionRatio,omitempty"`
	SpreadRatio   *float64 `json:"spreadRatio,omitempty"`
}

// Rolling works out the rolling tests of an input alone. The error names a test, a geometry or a mass that cannot be.
func Rolling(in Input) (Rolled, error) {
	geometry, err := Prepare(in)
	if err != nil {
		return Rolled{}, err
	}
	p := newPass(&in, geometry)
	for _, read := range []func(){p.readAir, p.readMass, p.readLift, p.readDrag} {
		read()
	}
	out := Rolled{Cautions: cautions}
	p.readRolling()
	if !p.rolling.given {
		return Rolled{}, errNoRolling
	}
	n := p.need()
	for i := range in.Model.Gear.RollingTests {
		test := &in.Model.Gear.RollingTests[i]
		done, ok := p.rollOnce(test, at(rollingPath, i), &n)
		line := RolledTest{Name: test.Name, Way: done.way}
		if ok {
			line.FrictionRatio, line.SpreadRatio = &done.friction.Value, &done.friction.Spread
		}
		out.Tests = append(out.Tests, line)
	}
	if p.fault != nil {
		return Rolled{}, p.fault
	}
	out.Missing, out.RestsOnEstimate = p.rolling.missing, p.rolling.estimate
	if len(out.Missing) == 0 {
		out.FrictionRatio, out.SpreadRatio = &p.rolling.friction.Value, &p.rolling.friction.Spread
	}
	return out, nil
}
