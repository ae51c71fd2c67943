package compare

import (
	"encoding/json"
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pitgate/server/physics/assess"
)

// applied writes the second document from the first and the differences alone: what a list of differences is worth.
func applied(t *testing.T, a assess.Input, differences []Difference) assess.Input {
	t.Helper()
	out := assess.Input{}
	p := patch{t: t, byTo: map[string]Difference{}, byFrom: map[string]Difference{}, orders: map[string]Difference{}}
	for _, d := range differences {
		switch d.Kind {
		case ChangeKindRemoved:
			p.byFrom[d.FromPath] = d
		case ChangeKindReordered:
			p.orders[d.ToPath] = d
		default:
			p.byTo[d.ToPath] = d
		}
	}
	p.parts(reflect.ValueOf(&out).Elem(), reflect.ValueOf(a), place{})
	return out
}

type patch struct {
	t                    *testing.T
	byTo, byFrom, orders map[string]Difference
}

func (p patch) parts(out, a reflect.Value, at place) {
	for i := range a.NumField() {
		name, _, _ := strings.Cut(a.Type().Field(i).Tag.Get("json"), ",")
		p.field(out.Field(i), a.Field(i), at.field(name))
	}
}

func (p patch) field(out, a reflect.Value, at place) {
	if d, ok := p.byTo[at.to]; ok {
		p.set(out, d.To)
		return
	}
	if _, ok := p.byFrom[at.from]; ok && at.from != "" {
		return
	}
	switch {
	case a.Kind() == reflect.Slice:
		p.list(out, a, at)
	case a.Kind() == reflect.Struct:
		p.parts(out, a, at)
	case a.Kind() == reflect.Pointer && !a.IsNil() && a.Type().Elem().Kind() == reflect.Struct && a.Type().Elem() != quantityType:
		out.Set(reflect.New(a.Type().Elem()))
		p.parts(out.Elem(), a.Elem(), at)
	default:
		out.Set(a)
	}
}

// list puts those added at their places and the others, in their order, into the rest.
func (p patch) list(out, a reflect.Value, at place) {
	var kept []int
	for i := range a.Len() {
		if _, gone := p.byFrom[fmt.Sprintf("%s[%d]", at.from, i)]; !gone {
			kept = append(kept, i)
		}
	}
	if d, ok := p.orders[at.to]; ok {
		kept = p.inOrder(a, kept, d)
	}
	fresh := reflect.MakeSlice(a.Type(), 0, a.Len())
	for i := 0; ; i++ {
		d := p.byTo[fmt.Sprintf("%s[%d]", at.to, i)]
		added := d.Kind == ChangeKindAdded
		if !added && len(kept) == 0 {
			break
		}
		item := reflect.New(a.Type().Elem()).Elem()
		if added {
			p.set(item, d.To)
		} else {
			p.field(item, a.Index(kept[0]), at.entry(kept[0], i, ""))
			kept = kept[1:]
		}
		fresh = reflect.Append(fresh, item)
	}
	if fresh.Len() > 0 {
		out.Set(fresh)
	}
}

// inOrder sorts the indexes of entries by the names that a change of order gives.
func (p patch) inOrder(a reflect.Value, kept []int, d Difference) []int {
	var names []string
	if err := json.Unmarshal([]byte(d.To.PartJSON), &names); err != nil {
		p.t.Fatal(err)
	}
	key := keyField(a.Type().Elem())
	slices.SortFunc(kept, func(i, j int) int {
		return slices.Index(names, a.Index(i).Field(key).String()) - slices.Index(names, a.Index(j).Field(key).String())
	})
	return kept
}

func (p patch) set(out reflect.Value, value *ComparedValue) {
	if out.Kind() == reflect.Pointer {
		out.Set(reflect.New(out.Type().Elem()))
		p.set(out.Elem(), value)
		return
	}
	switch {
	case value.Quantity != nil:
		out.Set(reflect.ValueOf(*value.Quantity))
	case value.Number != nil && out.CanFloat():
		out.SetFloat(*value.Number)
	case value.Number != nil:
		out.SetInt(int64(*value.Number))
	case value.Truth != nil:
		out.SetBool(*value.Truth)
	case value.PartJSON != "":
		if err := json.Unmarshal([]byte(value.PartJSON), out.Addr().Interface()); err != nil {
			p.t.Fatal(err)
		}
	default:
		out.SetString(value.Text)
	}
}
