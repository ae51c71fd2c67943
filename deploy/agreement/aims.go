package main

import (
	"math/rand/v2"
	"slices"
	"strings"
)

// aim is one change that some document of the set has to carry: what is done to which path, and how.
type aim struct {
	what change
	path string
	how  string
	// from are the documents in which it can be done.
	from []int
}

// change is what is done to one path.
type change string

// The changes.
const (
	leavesOut change = "leaves out"
	says      change = "says"     // one value of an enumeration
	counts    change = "counts"   // a list of none, one or many entries
	fills     change = "fills in" // what no document of testdata says there
	bounds    change = "bounds"   // a number at the end of its range
	oversteps change = "oversteps"
)

// How a list counts and where a number lies.
const (
	none, one, many                        = "none", "one", "many"
	lowest, highest, belowLowest, overmuch = "lowest", "highest", "below", "above"
)

// aimsOf lists every change that can be done to one of the documents, by what is done.
func aimsOf(documents []map[string]any) map[change][]*aim {
	aims, known := map[change][]*aim{}, map[string]*aim{}
	add := func(what change, path, how string, from int) {
		key := string(what) + path + how
		a := known[key]
		if a == nil {
			a = &aim{what: what, path: path, how: how}
			known[key], aims[what] = a, append(aims[what], a)
		}
		if n := len(a.from); n == 0 || a.from[n-1] != from {
			a.from = append(a.from, from)
		}
	}
	for i, root := range documents {
		for _, s := range spotsOf(root) {
			for _, how := range s.says() {
				add(says, s.path, how, i)
			}
			for _, how := range s.counts() {
				add(counts, s.path, how, i)
			}
			for _, how := range s.bounds() {
				add(map[bool]change{true: bounds, false: oversteps}[how == lowest || how == highest], s.path, how, i)
			}
			if s.given() {
				add(leavesOut, s.path, "", i)
			} else {
				add(fills, s.path, "", i)
			}
		}
	}
	return aims
}

// says are the values of the spot's enumeration and one that it has not.
func (s spot) says() []string {
	names := namesOf(s.field.Type)
	if names == nil {
		return nil
	}
	return append(names, "NO_SUCH_VALUE")
}

func (s spot) counts() []string {
	if _, list := s.in[s.name].([]any); list {
		return []string{none, one, many}
	}
	return nil
}

// bounds are the ends of the spot's range where it has any.
func (s spot) bounds() []string {
	if s.number() == nil {
		return nil
	}
	var out []string
	for _, b := range rangeOf(s.field) {
		if strings.HasPrefix(b.name, "g") {
			out = append(out, lowest, belowLowest)
		} else {
			out = append(out, highest, overmuch)
		}
	}
	return out
}

// number is what holds the spot's number: its object, or the quantity that stands there; nil where it has none.
func (s spot) number() map[string]any {
	switch value := s.in[s.name].(type) {
	case float64:
		return s.in
	case map[string]any:
		if _, known := value["value"].(float64); known && bare(s.field.Type) == quantityType {
			return value
		}
	}
	return nil
}

// put sets the spot's number.
func (s spot) put(number float64) {
	switch in := s.number(); {
	case in == nil:
	case bare(s.field.Type) == quantityType:
		in["value"] = number
	default:
		in[s.name] = number
	}
}

// fits reports whether the aim can be carried out in a place of its path.
func (a *aim) fits(s spot) bool {
	switch a.what {
	case leavesOut, counts:
		return s.given()
	case fills:
		return !s.given()
	case bounds, oversteps:
		return s.number() != nil
	case says:
	}
	return true
}

// apply carries an aim out in one of the places that have its path and can take it.
func (v variation) apply(a *aim, root map[string]any) {
	places := slices.DeleteFunc(at(spotsOf(root), a.path), func(s spot) bool { return !a.fits(s) })
	if len(places) == 0 {
		return
	}
	s := places[v.by.IntN(len(places))]
	switch a.what {
	case leavesOut:
		delete(s.in, s.name)
	case says:
		s.in[s.name] = a.how
	case counts:
		v.count(s, a.how)
	case fills:
		s.in[s.name] = v.invented(s.field.Type, s.field, s.name)
	case bounds, oversteps:
		s.put(endOf(s.field, a.how))
	}
}

// count makes a list one of none, one or many entries; what is doubled gets a name of its own where it has one.
func (v variation) count(s spot, how string) {
	list, _ := s.in[s.name].([]any)
	switch {
	case how == none:
		s.in[s.name] = []any{}
	case how == one && len(list) > 0:
		s.in[s.name] = []any{list[v.by.IntN(len(list))]}
	case how == many && len(list) > 0:
		for range 2 + v.by.IntN(3) {
			list = append(list, v.another(list[v.by.IntN(len(list))]))
		}
		s.in[s.name] = list
	}
}

// another is a copy of an entry, moved a little, under another name.
func (v variation) another(entry any) any {
	moved := variation{by: v.by, width: 0.02, scales: map[string]float64{}, known: v.known}.value("", entry)
	if in, ok := moved.(map[string]any); ok && in["name"] != nil {
		in["name"] = v.name()
	}
	return moved
}

// endOf is the end of a field's range, or a number beyond it.
func endOf(field rangedField, how string) float64 {
	low, high := 0.0, 0.0
	for _, b := range rangeOf(field) {
		if strings.HasPrefix(b.name, "g") {
			low = b.value
		} else {
			high = b.value
		}
	}
	switch how {
	case lowest:
		return low
	case highest:
		return high
	case belowLowest:
		return low - 1
	}
	return high + 1
}

// pick takes the aims of one kind in turn, in an order that soon touches all parts of the document.
func pick(aims []*aim, turn int) *aim {
	const stride = 7919 // prime and larger than any list
	return aims[turn*stride%len(aims)]
}

// base is one of the documents in which an aim can be reached.
func (a *aim) base(by *rand.Rand) int { return a.from[by.IntN(len(a.from))] }
