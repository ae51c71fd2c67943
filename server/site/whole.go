package site

import (
	"fmt"

	"pitgate/server/physics/assess"
)

// checkWhole names what every field needs.
func checkWhole(f assess.FieldDescription, found *remarks) {
	if f.DatumLatitudeDegrees == nil || f.DatumLongitudeDegrees == nil {
		found.add("datumLatitudeDegrees", "", "no datum is given: the field can neither be placed on a map nor take a survey in latitude and longitude")
	}
	if f.FlyingArea == nil || len(f.FlyingArea.Corners) == 0 {
		found.add("flyingArea", "", "no flying area is given: no circuit can be judged")
	}
	if len(f.Strips)+len(f.LaunchSpots) == 0 {
		found.add("strips", "", "there is neither a strip nor a launch spot: nothing can be launched")
	}
	if !given(f.HeightLimitMeters) {
		found.add("heightLimitMeters", "", "no height limit is given: ask the field owner and look at the airspace above")
	}
	checkPermission(f.Permission, found)
}

// checkPermission wants both dates in order. RFC 3339 dates sort as text.
func checkPermission(p *assess.Permission, found *remarks) {
	switch {
	case p == nil || p.ValidFromDate == "" || p.ValidToDate == "":
		found.add("permission", "", "the owner's permission lacks its dates")
	case p.ValidToDate < p.ValidFromDate:
		found.add("permission.validToDate", "", "the permission ends on %s, before it begins on %s", p.ValidToDate, p.ValidFromDate)
	}
}

// checkPilot wants the pilot inside the flying area and outside every keep-out.
func checkPilot(f assess.FieldDescription, s shapes, found *remarks) {
	if f.PilotPosition == nil {
		found.add("pilotPosition", "", "no place for the pilot is given: sight and distances cannot be judged")
		return
	}
	p := pointOf(*f.PilotPosition)
	if s.flying != nil && !within(s.flying, p) {
		found.add("pilotPosition", "", "the pilot stands %.1f m outside the flying area", -s.flying.SignedDistance(p))
	}
	for _, r := range s.strips {
		if r.outline.SignedDistance(p) > edge {
			found.add("pilotPosition", "", "the pilot stands on strip %s", r.name)
		}
	}
}

// checkNames wants each name once in a list, since findings tell parts apart by it.
func checkNames(list string, all []string, found *remarks) {
	first := map[string]int{}
	for i, name := range all {
		if at, twice := first[name]; twice && name != "" {
			found.add(fmt.Sprintf("%s[%d].name", list, i), name, "has the same name as number %d of its kind: findings could not tell them apart", at+1)
			continue
		}
		first[name] = i
	}
}
