package main

import (
	"encoding/json"
	"errors"
	"maps"
	"math"
	"reflect"
	"slices"
	"time"

	contract "pitgate/server/document"
	"pitgate/server/physics/assess"
	"pitgate/server/rulepack"
)

// exchange takes field, plan and landing from another document, or the day, or the limits, so that every model meets every field.
func (v variation) exchange(root, other map[string]any) {
	for _, parts := range [][]string{{"field", "launchPlan"}, {"day"}, {"limits"}, {"model"}}[:1+v.by.IntN(4)] {
		for _, part := range parts {
			if value := other[part]; value != nil {
				root[part] = copied(value)
			}
		}
	}
	if field, ok := root["field"].(map[string]any); ok {
		v.turn(field, math.Pi/180*math.Round(360*v.by.Float64()))
	}
	if day, ok := root["day"].(map[string]any); ok {
		v.weather(day)
	}
}

// turn turns all places and headings below a value about the datum, clockwise as seen from above.
func (v variation) turn(value any, angle float64) {
	switch value := value.(type) {
	case []any:
		for _, entry := range value {
			v.turn(entry, angle)
		}
	case map[string]any:
		x, east := value["xMeters"].(float64)
		y, north := value["yMeters"].(float64)
		if east && north {
			value["xMeters"], value["yMeters"] = x*math.Cos(angle)+y*math.Sin(angle), y*math.Cos(angle)-x*math.Sin(angle)
		}
		if heading, ok := value["headingDegrees"].(float64); ok {
			value["headingDegrees"] = math.Mod(heading+angle*180/math.Pi, 360)
		}
		for _, name := range slices.Sorted(maps.Keys(value)) {
			v.turn(value[name], angle)
		}
	}
}

// weather is another wind, and often other air, ground and time.
func (v variation) weather(day map[string]any) {
	mean := 14 * v.by.Float64() * v.by.Float64()
	day["windSpeedMetersPerSecond"] = measured(mean)
	day["windDirectionDegrees"] = measured(math.Floor(360 * v.by.Float64()))
	delete(day, "gustSpeedMetersPerSecond")
	delete(day, "windChanges")
	if v.by.IntN(2) == 0 {
		day["gustSpeedMetersPerSecond"] = measured(mean * (1 + v.by.Float64()))
	}
	if v.by.IntN(2) == 0 {
		day["temperatureCelsius"] = measured(50*v.by.Float64() - 12)
		day["qnhPascals"] = measured(101325 + 4000*(v.by.Float64()-0.5))
	}
	if v.by.IntN(3) == 0 {
		day["time"] = time.Date(2026, time.Month(1+v.by.IntN(12)), 1+v.by.IntN(28), 6+v.by.IntN(14), 15*v.by.IntN(4), 0, 0, time.UTC).Format(time.RFC3339)
	}
	states := assess.SurfaceState("").Names()
	day["surfaceState"] = states[v.by.IntN(len(states))]
}

func measured(value float64) map[string]any {
	return map[string]any{"value": value, "basis": string(assess.BasisMeasured)}
}

// rule puts the strictest of some packs into the limits of a document that can be read, with some confirmations.
func (v variation) rule(root map[string]any, packs []rulepack.Pack) {
	in, err := contract.Decode(textOf(root))
	if err != nil {
		return
	}
	chosen := slices.DeleteFunc(slices.Clone(packs), func(rulepack.Pack) bool { return v.by.IntN(3) == 0 })
	for i := range chosen {
		chosen[i].Rules = slices.Clone(chosen[i].Rules)
		for j := range chosen[i].Rules {
			v.standing(&chosen[i].Rules[j])
		}
	}
	made, err := rulepack.Compose(chosen, in)
	if err != nil {
		return
	}
	root["limits"] = treeOf(made.Limits)
	root["confirmations"] = v.confirmations(made.Limits.Rules)
}

// standing makes one rule verified or not, and now and then one that has run out.
func (v variation) standing(rule *assess.AppliedRule) {
	verified := v.by.IntN(3) > 0
	rule.Verified = &verified
	if v.by.IntN(8) == 0 {
		rule.ExpiresDate = "2026-01-31"
	}
}

// confirmations are what somebody said to half of what the rules ask for.
func (v variation) confirmations(rules []assess.AppliedRule) []any {
	var out []any
	for i := range rules {
		if rules[i].Kind != assess.RuleKindConfirmation || v.by.IntN(2) == 0 {
			continue
		}
		said := map[string]any{"rule": rules[i].Pack + "." + rules[i].ID, "confirmed": v.by.IntN(5) > 0, "date": v.word("date")}
		if v.by.IntN(4) > 0 {
			said["by"] = "member 7"
		}
		out = append(out, said)
	}
	return out
}

// judge says of a tenth of the quantities that they are known in another way, or leaves their spread out.
func (v variation) judge(root map[string]any) {
	for _, s := range spotsOf(root) {
		switch {
		case v.by.IntN(10) > 0:
		case s.field.Type == reflect.TypeFor[assess.Basis]():
			bases := assess.Basis("").Names()
			s.in[s.name] = bases[v.by.IntN(len(bases))]
		case s.name == "spread":
			delete(s.in, s.name)
		}
	}
}

// limit makes the limits stricter or looser at random, some by far.
func (v variation) limit(root map[string]any) {
	limits, ok := root["limits"].(map[string]any)
	if !ok {
		limits = map[string]any{}
		root["limits"] = limits
	}
	for _, s := range spotsOf(root) {
		if number := s.in[s.name]; s.path == "limits."+s.name && bare(s.field.Type) == float64Type && v.by.IntN(2) == 0 {
			value, given := number.(float64)
			if !given {
				value = v.likely(s.name)
			}
			limits[s.name] = v.within(s.field, value*math.Exp(v.by.NormFloat64()))
		}
	}
}

// repair takes out what makes a document invalid, field by field, as far as that helps.
func repair(root map[string]any) {
	const tries = 12
	for range tries {
		_, err := contract.Decode(textOf(root))
		faults, invalid := errors.AsType[contract.Errors](err)
		if !invalid {
			return
		}
		gone := false
		for _, fault := range faults {
			gone = drop(root, fault.Path) || gone
		}
		if !gone {
			return
		}
	}
}

func textOf(root any) []byte {
	text, err := json.Marshal(root)
	if err != nil {
		panic(err) // a tree of numbers and texts always has a JSON form
	}
	return text
}

// treeOf is a value as plain JSON.
func treeOf(value any) map[string]any {
	var root map[string]any
	if err := json.Unmarshal(textOf(value), &root); err != nil {
		panic(err) // what was just written can be read
	}
	return root
}

// copied is a value of its own.
func copied(value any) any {
	var out any
	if err := json.Unmarshal(textOf(value), &out); err != nil {
		panic(err) // what was just written can be read
	}
	return out
}
