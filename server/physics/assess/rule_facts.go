package assess

import (
	"math"
	"slices"
	"strings"
)

// known is a fact as the document gives it, or what it lacks.
type known struct {
	value     float64
	deviation float64 // one standard deviation
	estimated bool
	missing   []string
	from      []string
}

// fact returns one plain fact of the model or the flight.
func (p *pass) fact(f RuleFact) known {
	switch f {
	case RuleFactTakeoffMass:
		return known{value: p.mass.takeoff, missing: p.mass.missing, from: []string{"model.mass"}}
	case RuleFactEmptyMass:
		return known{value: p.mass.empty, missing: p.mass.missing, from: []string{"model.mass"}}
	case RuleFactStaticThrust:
		return p.quotedThrust()
	case RuleFactEngineCount:
		return known{value: float64(len(p.modelEngines())), from: []string{"model.engines"}}
	case RuleFactCircuitAirspeed:
		return quoted("launchPlan.circuit.airspeedMetersPerSecond", p.circuitPlan().AirspeedMetersPerSecond)
	case RuleFactHeight:
		return quoted("launchPlan.circuit.heightMeters", p.circuitPlan().HeightMeters)
	case RuleFactFailSafeDelay:
		return quoted("model.radio.failSafeDelaySeconds", p.failSafeDelay())
	default:
		return known{}
	}
}

func (p *pass) modelEngines() []Engine {
	if p.in.Model == nil {
		return nil
	}
	return p.in.Model.Engines
}

func (p *pass) failSafeDelay() *Quantity {
	if p.in.Model == nil || p.in.Model.Radio == nil {
		return nil
	}
	return p.in.Model.Radio.FailSafeDelaySeconds
}

// quoted is a fact that the document gives as a quantity.
func quoted(path string, q *Quantity) known {
	if q == nil || q.Value == nil {
		return known{missing: []string{path}}
	}
	return known{value: *q.Value, deviation: q.Deviation(path), estimated: q.estimated(), from: []string{path}}
}

// quotedThrust is the sum of the static thrusts as given, their spreads taken as independent.
func (p *pass) quotedThrust() known {
	var sum known
	if len(p.modelEngines()) == 0 {
		return known{missing: []string{"model.engines"}}
	}
	for i := range p.in.Model.Engines {
		one := quoted(at("model.engines", i)+".staticThrustNewtons", p.in.Model.Engines[i].StaticThrustNewtons)
		sum.value += one.value
		sum.deviation = root(sum.deviation, one.deviation)
		sum.estimated = sum.estimated || one.estimated
		sum.missing, sum.from = append(sum.missing, one.missing...), append(sum.from, one.from...)
	}
	return sum
}

// Application says whether a rule applies to a document.
type Application struct {
	Applies bool
	// Missing are the paths without which it cannot be told; such a rule is taken to apply.
	Missing []string
	// Why it does not apply, in a sentence; empty when it does.
	Why string
}

// Applications tells for each rule whether it applies to a document by its conditions. Dates are not looked at.
func Applications(in Input, rules []AppliedRule) []Application {
	p := newPass(&in, nil)
	p.readMass()
	told := make([]Application, 0, len(rules))
	for i := range rules {
		told = append(told, p.application(rules[i].Conditions))
	}
	return told
}

// application holds the conditions one after the other. A condition that is not met decides even where another cannot be told.
func (p *pass) application(conditions []RuleCondition) Application {
	var missing []string
	for i := range conditions {
		one := p.condition(&conditions[i])
		if !one.Applies {
			return one
		}
		missing = append(missing, one.Missing...)
	}
	return Application{Applies: true, Missing: missing}
}

func (p *pass) condition(c *RuleCondition) Application {
	if len(c.EngineKinds) > 0 {
		if kinds := p.kindOfEngines(c.EngineKinds); !kinds.Applies || c.Fact == "" {
			return kinds
		}
	}
	if c.Fact == "" {
		return Application{Applies: true}
	}
	words, fact := factWords.of(c.Fact), p.fact(c.Fact)
	switch {
	case len(fact.missing) > 0:
		return Application{Applies: true, Missing: fact.missing}
	case c.AtLeast != nil && fact.value < *c.AtLeast:
		return Application{Why: say("the %s of %s is below %s", words.name, figureWords(fact.value, words.unit), figureWords(*c.AtLeast, words.unit))}
	case c.AtMost != nil && fact.value > *c.AtMost:
		return Application{Why: say("the %s of %s is over %s", words.name, figureWords(fact.value, words.unit), figureWords(*c.AtMost, words.unit))}
	}
	return Application{Applies: true}
}

func (p *pass) kindOfEngines(kinds []EngineKind) Application {
	engines := p.modelEngines()
	if len(engines) == 0 {
		return Application{Applies: true, Missing: []string{"model.engines"}}
	}
	var missing []string
	for i := range engines {
		if engines[i].Kind == "" {
			missing = append(missing, at("model.engines", i)+".kind")
		}
		if slices.Contains(kinds, engines[i].Kind) {
			return Application{Applies: true}
		}
	}
	if len(missing) > 0 {
		return Application{Applies: true, Missing: missing}
	}
	names := make([]string, 0, len(kinds))
	for _, kind := range kinds {
		names = append(names, engineWords.of(kind))
	}
	return Application{Why: "no engine is a " + strings.Join(names, " or ")}
}

// figureWords writes a figure with as many digits as it is worth, and its unit.
func figureWords(value float64, unit string) string {
	text := sayNumbers("%.4g", value)
	if math.Abs(value) >= 10000 {
		text = sayNumbers("%.0f", value)
	}
	if unit == "" || unit == "1" {
		return text
	}
	return text + " " + unit
}
