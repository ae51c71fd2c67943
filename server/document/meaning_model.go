package document

import (
	"pitgate/server/physics/assess"
)

func checkModel(model *assess.ModelDescription, path string, found *faults) {
	for i := range model.Surfaces {
		at := index(join(path, "surfaces"), i)
		checkSurface(&model.Surfaces[i], at, found)
	}
	for i := range model.Bodies {
		checkBody(&model.Bodies[i], index(join(path, "bodies"), i), found)
	}
	checkUnique(surfaceNames(model), join(path, "surfaces"), found)
	for i := range model.Engines {
		checkEngine(&model.Engines[i], index(join(path, "engines"), i), found)
	}
	checkFuel(model, path, found)
	checkPacks(model.Packs, join(path, "packs"), found)
	checkMeasured(model.MeasuredResults, join(path, "measuredResults"), found)
	if model.Structure != nil {
		checkStructure(model.Structure, join(path, "structure"), found)
	}
	if model.Mass != nil {
		checkMass(model.Mass, join(path, "mass"), found)
	}
}

func surfaceNames(model *assess.ModelDescription) []string {
	names := make([]string, len(model.Surfaces))
	for i, surface := range model.Surfaces {
		names[i] = surface.Name
	}
	return names
}

// checkUnique refuses two things of one name, since others refer to them by it.
func checkUnique(names []string, path string, found *faults) {
	seen := map[string]int{}
	for i, name := range names {
		if first, ok := seen[name]; ok {
			found.add(join(index(path, i), "name"), "is the same as of "+index(path, first)+": "+name)
			continue
		}
		seen[name] = i
	}
}

// checkSurface wants stations from root to tip: none inboard of the one before, none at the same place.
func checkSurface(surface *assess.LiftingSurface, path string, found *faults) {
	if len(surface.Stations) == 1 {
		found.add(join(path, "stations"), "must have at least 2 entries, got 1")
	}
	for i := 1; i < len(surface.Stations); i++ {
		before, here := surface.Stations[i-1], surface.Stations[i]
		at := index(join(path, "stations"), i)
		y0, y1 := number(before.LeadingEdgeYMeters), number(here.LeadingEdgeYMeters)
		z0, z1 := number(before.LeadingEdgeZMeters), number(here.LeadingEdgeZMeters)
		switch {
		case y1 < y0:
			found.add(join(at, "leadingEdgeYMeters"), "must not lie inboard of the station before, "+plain(y0)+", got "+plain(y1))
		case y1 == y0 && z1 == z0:
			found.add(at, "lies at the place of the station before")
		}
	}
	for i, control := range surface.Controls {
		inner, outer := control.InnerSpanRatio, control.OuterSpanRatio
		if inner != nil && outer != nil && *inner >= *outer {
			found.add(join(index(join(path, "controls"), i), "outerSpanRatio"),
				"must be greater than innerSpanRatio "+plain(*inner)+", got "+plain(*outer))
		}
	}
}

// checkBody wants cross sections from nose to tail.
func checkBody(body *assess.Body, path string, found *faults) {
	for i := 1; i < len(body.Stations); i++ {
		x0, x1 := body.Stations[i-1].XMeters, body.Stations[i].XMeters
		if x0 != nil && x1 != nil && *x1 <= *x0 {
			found.add(join(index(join(path, "stations"), i), "xMeters"),
				"must lie aft of the station before, "+plain(*x0)+", got "+plain(*x1))
		}
	}
}

func checkMass(mass *assess.MassProperties, path string, found *faults) {
	forward, aft := mass.ForwardBalanceLimitXMeters, mass.AftBalanceLimitXMeters
	if forward != nil && aft != nil && *forward >= *aft {
		found.add(join(path, "aftBalanceLimitXMeters"),
			"must lie aft of forwardBalanceLimitXMeters "+plain(*forward)+", got "+plain(*aft))
	}
}

func number(value *float64) float64 {
	if value == nil {
		return 0
	}
	return *value
}
