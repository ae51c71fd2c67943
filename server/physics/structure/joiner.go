package structure

import "pitgate/server/physics/loads"

// DefaultBearing is the pressure that a socket of plywood, glass tube or hard balsa bedded in epoxy stands, Pa.
//
// Source: judgement; birch pressed across the grain stands about 7 to 10 MPa.
const DefaultBearing = 8e6

// Joiner is the bar, tube or blade that joins two panels.
type Joiner struct {
	Part Part
	// Engaged is the length inside one panel, m.
	Engaged float64
	// Bearing is the pressure that the socket stands, Pa; 0 for DefaultBearing.
	Bearing float64
}

// SocketLoad returns the greatest load per length between a joiner and its socket, at the mouth, N/m.
//
// Formula: w = 6 M/L^2 + 4 V/L; where M bending and V shear at the mouth, N m and N, L engaged length, m.
// Valid for: a stiff bar in an even socket: load straight along the length, its sum V, its moment about the mouth M.
// Source: statics of an embedded bar.
func SocketLoad(bending, shear, engaged float64) float64 {
	return float64(6*bending)/float64(engaged*engaged) + float64(4*shear)/engaged
}

// SocketShear returns the greatest shear in the joiner inside its socket, N: a bar that is gripped short carries far more shear there than the wing outside.
//
// Formula: V = 3 M/(2 L) + V_0/3; where M and V_0 at the mouth.
// Valid for: as SocketLoad; greatest where the load changes sign.
// Source: integration of the straight load of SocketLoad: 3 M/(2 L) + V_0/4 + V_0^2/(24 M/L + 12 V_0), whose last term is at most V_0/12.
func SocketShear(bending, shear, engaged float64) float64 {
	return 1.5*bending/engaged + shear/3
}

// gripWidth returns the breadth that presses on the socket, m.
func (j Joiner) gripWidth() float64 {
	if j.Part.Shape == ShapeTube {
		return j.Part.Outer
	}
	return j.Part.Width
}

// Assess returns what a joiner stands under the loads at the joint; checks of mode ModeBearing are of the socket. Errors name the impossible field.
//
// Formula: Measure, SocketLoad over the joiner's breadth, SocketShear; load factors as in Assess.
// Valid for: one joiner that carries all bending; twist is left to a second pin.
// Source: as named there.
func (j Joiner) Assess(joint loads.Load) (StationResult, error) {
	if err := checkPositive(named{"engagedLength", j.Engaged}, named{"width of the joiner", j.gripWidth()}); err != nil {
		return StationResult{}, err
	}
	if err := checkNotNegative(named{"bearing", j.Bearing}); err != nil {
		return StationResult{}, err
	}
	r, err := AssessStation(Station{Y: joint.Y, Parts: []Part{j.Part}}, joint, false)
	if err != nil {
		return StationResult{}, err
	}
	inside := loads.Load{Shear: combine(joint, j.Engaged, SocketShear)}
	allow, err := j.Part.Material.Allow(j.Part.KnockDown)
	if err != nil {
		return StationResult{}, err
	}
	r.Checks = shearChecks(r.Checks, 0, j.Part, r.Section.Parts[0], allow, nil, inside, 0)
	r.Checks = append(r.Checks, j.bearing(joint))
	r.govern()
	return r, checkResult(r.Stands, r.StandsInverted)
}

// combine returns a figure of bending and shear as it grows with the load factor.
func combine(at loads.Load, length float64, figure func(bending, shear, length float64) float64) loads.Line {
	return loads.Line{AtZero: figure(at.Bending.AtZero, at.Shear.AtZero, length), PerLoad: figure(at.Bending.PerLoad, at.Shear.PerLoad, length)}
}

func (j Joiner) bearing(joint loads.Load) Check {
	limit := j.Bearing
	if limit == 0 {
		limit = DefaultBearing
	}
	pressure := combine(joint, j.Engaged, SocketLoad).Times(1 / j.gripWidth())
	return check(0, ModeBearing, pressure, limit, limit)
}

// Bolts hold a wing on its seat.
type Bolts struct {
	Diameter float64 // of the thread outside, m
	Count    int
	Material Material
}

// Shares of bolts.
//
// Source: thread roots of ISO metric threads M3 to M8, 0.71 to 0.73 of the shank; the uneven share is judgement.
const (
	threadRoot  = 0.71
	unevenShare = 1.5
)

// Assess returns what the bolts stand of a pull that the seat carries, N over the load factor: lift less the weight of the wing times the load factor, which
// is twice
// the shear at the root. Errors name the impossible field.
//
// Formula: stress = 1.5 P/(N 0.71 pi D^2/4) against tension and, over the whole shank, against shear; where P pull, N count; the worst bolt takes 1.5 times
// its share.
// Valid for: bolts of one size; dowels sheared across count like bolts.
// Source: statics; shares as named.
func (b Bolts) Assess(pull loads.Line) (Check, error) {
	err := checkPositive(named{"boltDiameter", b.Diameter}, named{"boltCount", float64(b.Count)}, named{"tension", b.Material.Tension}, named{"shear", b.Material.Shear})
	if err != nil {
		return Check{}, err
	}
	if err := checkFinite(named{"pull", pull.AtZero}, named{"pull", pull.PerLoad}); err != nil {
		return Check{}, err
	}
	share := min(unevenShare, float64(b.Count)) / float64(b.Count)
	area := threadRoot * RingArea(b.Diameter, 0)
	limit := min(b.Material.Tension, b.Material.Shear/threadRoot)
	c := check(0, ModePulled, pull.Times(share/area), limit, limit)
	return c, checkResult(c.Stress.AtZero, c.Stress.PerLoad)
}

// ShearStress returns the shear stress in bolts or rivets cut in so many planes, Pa.
//
// Formula: t = P/(N k pi D^2/4); where k planes.
// Valid for: an even share.
// Source: any text on strength of materials.
func ShearStress(force, diameter float64, count, planes int) float64 {
	return force / (float64(count) * float64(planes) * RingArea(diameter, 0))
}
