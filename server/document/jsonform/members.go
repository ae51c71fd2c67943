package jsonform

import (
	"reflect"
	"strings"
	"sync"
)

// member is one field of a struct as it is written.
type member struct {
	index     int
	head      string // name and colon
	omitEmpty bool
}

// known are the members of the structs written so far, by type.
var known sync.Map

func membersOf(t reflect.Type) []member {
	if found, ok := known.Load(t); ok {
		members, _ := found.([]member)
		return members
	}
	members := make([]member, 0, t.NumField())
	for i := range t.NumField() {
		name, option, _ := strings.Cut(t.Field(i).Tag.Get("json"), ",")
		if name == "" {
			name = t.Field(i).Name
		}
		if name == "-" || !t.Field(i).IsExported() {
			continue
		}
		members = append(members, member{i, string(append(appendText(nil, name), ':')), option == "omitempty"})
	}
	known.Store(t, members)
	return members
}
