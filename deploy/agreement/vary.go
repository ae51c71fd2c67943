package main

import (
	"maps"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
)

// newVariation is a variation of random strength.
func newVariation(by *rand.Rand, known knownValues) variation {
	return variation{by: by, width: widths[by.IntN(len(widths))], rate: rates[by.IntN(len(rates))], scales: map[string]float64{}, known: known}
}

// How far the numbers of a document move, as a standard deviation of their logarithm, and how many of its values are broken; one of each a document.
var (
	widths = []float64{0.003, 0.02, 0.1, 0.4}
	rates  = []float64{0, 0, 0, 0.002, 0.02}
)

// variation is how one document is varied.
type variation struct {
	by          *rand.Rand
	width, rate float64
	// scales are the factors by name: what stands in the same place of several points moves by the same, so that points keep their order.
	scales map[string]float64
	// known is what the documents of testdata say.
	known knownValues
}

// value varies one value, that of a name, and all below it.
func (v variation) value(name string, from any) any {
	if v.by.Float64() < v.rate {
		return v.broken(from)
	}
	switch from := from.(type) {
	case map[string]any:
		return v.object(from)
	case []any:
		return v.list(name, from)
	case float64:
		return v.number(name, from)
	case bool:
		return from != (v.by.Float64() < v.width/4)
	}
	return from
}

// object varies the members in the order of their names, so that a seed always makes the same; a name may be left out.
func (v variation) object(from map[string]any) any {
	to := make(map[string]any, len(from))
	for _, name := range slices.Sorted(maps.Keys(from)) {
		if v.by.Float64() >= v.rate {
			to[name] = v.value(name, from[name])
		}
	}
	if v.by.Float64() < v.rate/4 {
		to["noSuchField"] = v.by.Float64()
	}
	return to
}

func (v variation) list(name string, from []any) any {
	to := make([]any, 0, len(from)+1)
	for _, item := range from {
		to = append(to, v.value(name, item))
	}
	if len(to) > 0 && v.by.Float64() < v.rate {
		to = append(to, to[v.by.IntN(len(to))])
	}
	return to
}

// number moves a number in proportion: the value of a quantity by itself, others of one name together. A share stays a share, and what is counted stays
// whole. An angle only becomes smaller, because many stand at their bound.
func (v variation) number(name string, from float64) float64 {
	if from == math.Trunc(from) && math.Abs(from) < 10 && name != "value" {
		return from
	}
	scale := v.scale(name)
	if strings.HasSuffix(name, "Degrees") {
		scale = min(scale, 1/scale)
	}
	moved := from * scale
	if strings.HasSuffix(name, "Ratio") && from <= 1 {
		return min(moved, 1)
	}
	return moved
}

func (v variation) scale(name string) float64 {
	drawn := math.Exp(v.width * v.by.NormFloat64())
	if name == "value" {
		return drawn
	}
	if _, known := v.scales[name]; !known {
		v.scales[name] = drawn
	}
	return v.scales[name]
}

// broken puts something else in the place of a value.
func (v variation) broken(from any) any {
	number, _ := from.(float64)
	choices := []any{nil, 0.0, -number, number * 1e3, number * 1e-3, 1e308, "", "words", true, []any{}, map[string]any{}, []any{from, from}}
	return choices[v.by.IntN(len(choices))]
}
