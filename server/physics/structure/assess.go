package structure

import (
	"slices"

	"pitgate/server/physics/loads"
)

// Station is the spar at one place.
type Station struct {
	Y     float64 // from the plane of symmetry, m
	Parts []Part
}

// StationResult is what one station stands.
type StationResult struct {
	Y       float64
	Section Section // of the parts that carry: without skins that have buckled
	Load    loads.Load
	Checks  []Check
	// Governs is the index of the check that limits the greatest load factor.
	Governs int
	// Stands and StandsInverted are the limit load factors between which nothing fails with the safety factor.
	Stands, StandsInverted float64
	// ShearUncarried is true when no part carries shear (caps without web, skins without core): what the station stands is then not known.
	ShearUncarried bool
	// SkinBuckles is true when skins buckle first and the rest then stands more alone: Checks are of the rest.
	SkinBuckles bool
	// SkinBucklesAt is the limit load factor at which they do, 0 when they do not.
	SkinBucklesAt float64
}

// Result is what a spar stands.
type Result struct {
	Stations []StationResult
	// Station is the index of the one that governs the greatest load factor.
	Station                int
	Stands, StandsInverted float64
}

// Governing returns the check that limits the greatest load factor.
func (r Result) Governing() Check {
	s := r.Stations[r.Station]
	return s.Checks[s.Governs]
}

// Assess returns what a spar stands under loads at its stations, load i being of station i (loads.Integrate at the stations' places; the first station's
// parts are taken to begin at the root, so ask for its load at y = 0). Twist is given to the spar's tubes when twisted is true, that is when there is no
// closed box or
// skin that carries it. Errors name the impossible field.
//
// Formula: for every fibre, wall, web and cap the limit load factors n at which 1.5 times the stress, which grows evenly with n, is the allowable.
// Valid for: parts of a station run unchanged to the next; bending and shear do not weaken each other; slender spars.
// Source: Measure, Material.Allow and the buckling formulas; 14 CFR 25.303 for the factor.
func Assess(stations []Station, at []loads.Load, twisted bool) (Result, error) {
	if err := checkPositive(named{"count of stations", float64(len(stations))}); err != nil {
		return Result{}, err
	}
	if err := checkNotNegative(named{"loads less stations", float64(len(at) - len(stations))}); err != nil {
		return Result{}, err
	}
	r := Result{Stations: make([]StationResult, len(stations)), Stands: Unlimited, StandsInverted: -Unlimited}
	for i, station := range stations {
		s, err := AssessStation(station, at[i], twisted)
		if err != nil {
			return Result{}, err
		}
		r.Stations[i] = s
		if i == 0 || s.Stands < r.Stands {
			r.Stands, r.Station = s.Stands, i
		}
		r.StandsInverted = max(r.StandsInverted, s.StandsInverted)
	}
	return r, nil
}

// AssessStation returns what one station stands; for a boom or a canard's root it is all there is. Errors, formula, validity and source: Assess.
func AssessStation(station Station, at loads.Load, twisted bool) (StationResult, error) {
	whole, err := standing(station, at, twisted)
	if err != nil || whole.Checks[whole.Governs].Mode != ModeSkinBuckling {
		return whole, err
	}
	rest := Station{Y: station.Y, Parts: withoutSkins(station.Parts)}
	if len(rest.Parts) == 0 {
		return whole, nil
	}
	bare, err := standing(rest, at, twisted)
	if err != nil || bare.Stands <= whole.Stands {
		return whole, err
	}
	bare.SkinBuckles, bare.SkinBucklesAt = true, whole.Stands
	bare.renumber(station.Parts)
	return bare, nil
}

// withoutSkins returns the parts that are no skins.
func withoutSkins(parts []Part) []Part {
	return slices.DeleteFunc(slices.Clone(parts), func(p Part) bool { return p.Shape == ShapeSheet })
}

// renumber turns indices of the parts that are no skins into those of all parts.
func (s *StationResult) renumber(all []Part) {
	var index []int
	for i, p := range all {
		if p.Shape != ShapeSheet {
			index = append(index, i)
		}
	}
	for i := range s.Checks {
		s.Checks[i].Part = index[s.Checks[i].Part]
	}
}

// standing returns what the parts of a station stand together.
func standing(station Station, at loads.Load, twisted bool) (StationResult, error) {
	section, err := Measure(station.Parts)
	if err != nil {
		return StationResult{}, err
	}
	if err := checkLoad(at); err != nil {
		return StationResult{}, err
	}
	r := StationResult{Y: station.Y, Section: section, Load: at, Checks: make([]Check, 0, 7*len(station.Parts))}
	core, torsion := coreOf(station.Parts), 0.0
	if twisted {
		torsion = torsionStiffness(station.Parts)
	}
	for i, p := range station.Parts {
		allow, err := p.Material.Allow(p.KnockDown)
		if err != nil {
			return StationResult{}, err
		}
		r.Checks = fibreChecks(r.Checks, i, section.Parts[i], allow, at)
		r.Checks = bucklingChecks(r.Checks, i, p, section.Parts[i], core, at)
		r.Checks = shearChecks(r.Checks, i, p, section.Parts[i], allow, core, at, p.perTorque(torsion))
	}
	r.ShearUncarried = section.Shear == 0
	r.govern()
	return r, nil
}

func checkLoad(l loads.Load) error {
	return checkFinite(named{"load.bending", l.Bending.AtZero}, named{"load.bending", l.Bending.PerLoad}, named{"load.shear", l.Shear.AtZero},
		named{"load.shear", l.Shear.PerLoad}, named{"load.torsion", l.Torsion.AtZero}, named{"load.torsion", l.Torsion.PerLoad})
}

// govern finds the check with the least load factor.
func (s *StationResult) govern() {
	s.Stands, s.StandsInverted = Unlimited, -Unlimited
	for i, c := range s.Checks {
		if i == 0 || c.Upper < s.Stands {
			s.Stands, s.Governs = c.Upper, i
		}
		s.StandsInverted = max(s.StandsInverted, c.Lower)
	}
}

// coreOf returns the foam that skins and webs are bonded to, nil without one.
func coreOf(parts []Part) *Material {
	for i := range parts {
		if parts[i].Shape == ShapeFoamCore {
			return &parts[i].Material
		}
	}
	return nil
}

// torsionStiffness returns the sum of G J of the tubes, N m2.
func torsionStiffness(parts []Part) float64 {
	sum := 0.0
	for _, p := range parts {
		if p.Shape == ShapeTube {
			sum += float64(p.Material.ShearModulus * 2 * RingInertia(p.Outer, p.inner()))
		}
	}
	return sum
}

// perTorque returns the shear stress of a tube for a torque of 1 N m shared as G J, Pa; 0 for other parts and without twist.
//
// Formula: t = G D/(2 sum G J).
// Valid for: round tubes and rods that twist together.
// Source: Saint-Venant.
func (p Part) perTorque(stiffness float64) float64 {
	if p.Shape != ShapeTube || !(stiffness > 0) {
		return 0
	}
	return float64(0.5*p.Material.ShearModulus*p.Outer) / stiffness
}
