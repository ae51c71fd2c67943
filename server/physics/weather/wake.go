package weather

import (
	"fmt"
	"math"

	"pitgate/server/physics/elementary"
)

// Windbreak is a hedge, a belt of trees, a fence, a wall or a bank across the wind.
type Windbreak struct {
	Height   float64 // m
	Porosity float64 // share of its face that is open, 0 for a wall or bank to 1; about 0.5 for a hedge in leaf
}

// Porosities to take where nobody measured one (common practice, no source). The denser is the more cautious: its wake is rougher.
const (
	WallPorosity  = 0.0 // walls, buildings, and banks, which are taken as if their lee were steep
	TreePorosity  = 0.4 // belts and woods in leaf
	HedgePorosity = 0.5 // hedges in leaf
)

// Zone is the part of the flow about a windbreak that a place lies in.
type Zone int

// Zones, in order along the wind.
const (
	// OpenWind is beyond the reach of the windbreak.
	OpenWind Zone = iota
	// AirAhead is upwind within five heights, where the air slows and rises.
	AirAhead
	// QuietAir is behind a porous windbreak below the wake that sinks from its top to the ground at eight heights: slow, not rough.
	QuietAir
	// RoughAir is the wake itself up to ten heights: slow and rough; a low approach through it is to be avoided.
	RoughAir
	// FadingAir is the wake from ten to twenty heights: caution.
	FadingAir
	// SlowedAir is from twenty to thirty-five heights, where only the mean wind is less.
	SlowedAir
)

// Reaches of a windbreak along the wind, in heights.
const (
	// ReachAhead is how far upwind the wind is slowed.
	ReachAhead = 5.0
	// ReachOfWake is where the sinking wake meets the ground.
	ReachOfWake = 8.0
	// ReachOfRoughAir is where the wake begins to fade.
	ReachOfRoughAir = 10.0
	// ReachOfFadingAir is where it has faded.
	ReachOfFadingAir = 20.0
	// ReachOfSlowedAir is where the mean wind is back.
	ReachOfSlowedAir = 35.0
	// solidDensity is the density above which air flows back behind the windbreak, so that there is no quiet zone.
	solidDensity = 0.8
	// nearestFar is the distance, and highestFar the height, in heights, beyond which FarLoss is nothing.
	nearestFar, highestFar = 1.0, 50.0
	// wakeGrowth is the rise of the wake's upper edge along the wind.
	wakeGrowth = 0.1
)

// Shelter is what a windbreak does to the wind at one place.
type Shelter struct {
	// WindFactor is the mean wind over that at the same height without the windbreak, 0 to 1.
	WindFactor float64
	// TurbulenceFactor is the strength of the fluctuations over that without the windbreak, from 1: shelter is given no credit.
	TurbulenceFactor float64
	Zone             Zone
	// Heights is the distance along the wind in heights of the windbreak, negative upwind.
	Heights float64
}

// Open is the shelter of no windbreak.
var Open = Shelter{WindFactor: 1, TurbulenceFactor: 1}

// Check returns an error that names what is impossible about a windbreak.
func (w Windbreak) Check() error {
	if !(w.Height > 0 && w.Height <= 200) {
		return fmt.Errorf("windbreak height: has to lie above 0 and up to 200 m")
	}
	if !(w.Porosity >= 0 && w.Porosity <= 1) {
		return fmt.Errorf("windbreak porosity: has to lie between 0 and 1")
	}
	return nil
}

// At returns what the windbreak does at a distance along the wind (m, negative upwind) and a height over the ground (m), over ground of a
// roughness length (m). A windbreak that cannot be, a distance that is no number, and a place out of reach give Open.
//
// The loss of mean wind is the greater of NearLoss and FarLoss, because each is measured where the other is not.
// Valid for: a long windbreak across the wind, neutral air. An error of 0.15 of the wind is common between field measurements.
// Source: see NearLoss, FarLoss and the zones.
func (w Windbreak) At(distance, height, roughnessLength float64) Shelter {
	x, z := distance/w.Height, max(0, height/w.Height)
	if w.Check() != nil || !(x > -ReachAhead && x < ReachOfSlowedAir) || math.IsNaN(z) {
		return Open
	}
	loss := max(w.nearLossAt(x, z), w.farLossAt(x, z, roughnessLength))
	zone := w.zone(x, z)
	return Shelter{
		WindFactor:       1 - loss,
		TurbulenceFactor: w.turbulence(x, zone),
		Zone:             zone,
		Heights:          x,
	}
}

// Density returns the share of the face that is closed.
func (w Windbreak) Density() float64 { return 1 - w.Porosity }

// zone returns the zone of a place, x and z in heights.
//
// Valid for: a long windbreak across the wind. Source: McNaughton's review of shelter (1988): the wake from the top meets the ground at about
// eight heights and the air below it is quiet; reaches of ten and twenty heights are engineering judgement (common practice, no source).
func (w Windbreak) zone(x, z float64) Zone {
	top := 1.5 + float64(wakeGrowth*max(0, x))
	switch {
	case z > top:
		return OpenWind
	case x < 0:
		return AirAhead
	case x < ReachOfWake && z < 1-float64(x/ReachOfWake) && w.Density() < solidDensity:
		return QuietAir
	case x < ReachOfRoughAir:
		return RoughAir
	case x < ReachOfFadingAir:
		return FadingAir
	}
	return SlowedAir
}

// turbulence returns the factor on the fluctuations in a zone at a distance x in heights.
//
//	1 + d in the wake up to 10 heights, falling along a straight line to 1 at 20 heights
//
// where d is the density. Valid for: as At. Source: engineering judgement: behind solid fences in wind tunnels the fluctuations about double,
// behind half-open ones they grow by about half (Raine and Stevenson 1977, from memory).
func (w Windbreak) turbulence(x float64, zone Zone) float64 {
	switch zone {
	case RoughAir:
		return 1 + w.Density()
	case FadingAir:
		return 1 + float64(w.Density()*(ReachOfFadingAir-x)/(ReachOfFadingAir-ReachOfRoughAir))
	case OpenWind, AirAhead, QuietAir, SlowedAir:
	}
	return 1
}

// nearLossAt returns the loss of mean wind below and at the height of the windbreak, x and z in heights: NearLoss up to one height, falling
// along a straight line to nothing at one and a half; half of it at the windbreak on the windward side, falling to nothing five heights ahead.
func (w Windbreak) nearLossAt(x, z float64) float64 {
	loss := NearLoss(max(0, x), w.Density())
	if x < 0 {
		loss *= float64(0.5 * (1 + x/ReachAhead))
	}
	return float64(loss * max(0, min(1, 3-float64(2*z))))
}

// farLossAt returns FarLoss held to what is lost close behind the windbreak.
func (w Windbreak) farLossAt(x, z, roughnessLength float64) float64 {
	return min(FarLoss(x, z, w.Height/roughnessLength, w.Porosity), NearLoss(0, w.Density()))
}

// FarLoss returns the loss of mean wind, over the wind without the windbreak, in the far wake of a fence.
//
//	u/U(H) = 9.8 (1 - p) (H/x) s exp(-0.67 s^1.5),  s = (z/H) (0.32/ln(H/z0) x/H)^-0.47
//
// where x is the distance along the wind and z the height, both over the height H of the fence, p its porosity and z0 the roughness length;
// U(H) is turned into the wind at z by the logarithmic profile. It is held between 0 and 1; it is 0 nearer than one height, above fifty, and
// without a roughness length below the fence.
// Valid for: fences of porosity up to 0.5, distances from about six heights. Source: form of Counihan, Hunt and Jackson, Journal of Fluid
// Mechanics 64 (1974) 529; constants of Perera, Journal of Wind Engineering and Industrial Aerodynamics 8 (1981) 93 (from memory).
func FarLoss(x, z, heightOverRoughness, porosity float64) float64 {
	logarithm := elementary.Log(heightOverRoughness)
	if !(x >= nearestFar && z < highestFar && logarithm > 0.7 && z*heightOverRoughness > 2) || math.IsInf(logarithm, 0) {
		return 0
	}
	s := z / elementary.Pow(0.32/logarithm*x, 0.47)
	loss := 9.8 * (1 - porosity) / x * s * elementary.Exp(-float64(0.67*float64(s*math.Sqrt(s))))
	return max(0, min(1, loss*logarithm/elementary.Log(z*heightOverRoughness)))
}

// Nodes of NearLoss: the share of the open wind left at distances in heights, for densities.
var (
	nearDistances = [...]float64{5, 10, 15, 20, 25, 30, ReachOfSlowedAir}
	nearDensities = [...]float64{0, 0.30, 0.50, 0.70, 1}
	nearWind      = [len(nearDensities)][len(nearDistances)]float64{
		{1, 1, 1, 1, 1, 1, 1},
		{0.50, 0.65, 0.80, 0.85, 0.95, 1, 1},
		{0.30, 0.50, 0.60, 0.75, 0.85, 0.95, 1},
		{0.25, 0.35, 0.65, 0.85, 0.90, 0.95, 1},
		{0.25, 0.70, 0.90, 0.95, 1, 1, 1},
	}
)

// NearLoss returns the loss of mean wind near the ground at a distance along the wind, in heights, behind a windbreak of a density from 0 to 1,
// by straight lines between the nodes of a table. Nearer than five heights it is that at five.
//
// Valid for: hedges, belts and fences across the wind, up to about their own height. Source: J. R. Brandle and S. Finch, How Windbreaks Work,
// University of Nebraska Extension EC 91-1763 (1991), table of open wind by density: 25 to 35 %, 40 to 60 %, 60 to 80 % and solid (from memory);
// a density of 0 added.
func NearLoss(x, density float64) float64 {
	column, across := bracket(nearDistances[:], x)
	row, down := bracket(nearDensities[:], density)
	upper := mix(nearWind[row][column], nearWind[row][column+1], across)
	lower := mix(nearWind[row+1][column], nearWind[row+1][column+1], across)
	return 1 - mix(upper, lower, down)
}

// bracket returns the step of increasing nodes a value lies in and its share of the step; values beyond the nodes are held at the ends.
func bracket(nodes []float64, value float64) (step int, share float64) {
	for step < len(nodes)-2 && value >= nodes[step+1] {
		step++
	}
	return step, max(0, min(1, (value-nodes[step])/(nodes[step+1]-nodes[step])))
}

// mix returns the value at a share of the way from one to another.
func mix(from, to, share float64) float64 {
	return from + float64((to-from)*share)
}
