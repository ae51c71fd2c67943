package jsonform

import (
	"reflect"
	"strings"
	"sync"

	"pitgate/server/physics/order"
)

// member is one field of a struct as it is written.
type member struct {
	index     int
	head      string // name and colon
	omitEmpty bool
}

// known are the members of the structs written so far in each style, by type.
var known, knownSorted sync.Map

func (s style) membersOf(t reflect.Type) []member {
	cache := &known
	if s.canonical {
		cache = &knownSorted
	}
	if found, ok := cache.Load(t); ok {
		members, _ := found.([]member)
		return members
	}
	members := listMembers(t)
	if s.canonical {
		order.Stable(members, func(a, b member) int { return strings.Compare(a.head, b.head) })
	}
	cache.Store(t, members)
	return members
}

// listMembers lists the members of a struct in the order of its fields.
func listMembers(t reflect.Type) []member {
	members := make([]member, 0, t.NumField())
	for i := range t.NumField() {
		name, option, _ := strings.Cut(t.Field(i).Tag.Get("json"), ",")
		if name == "" {
			name = t.Field(i).Name
		}
		if name == "-" || !t.Field(i).IsExported() {
			continue
		}
		members = append(members, member{i, string(append(style{}.appendText(nil, name), ':')), option == "omitempty"})
	}
	return members
}
