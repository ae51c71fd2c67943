package heat

import "math"

const (
	// GrassIgnition is the temperature at which dry grass may begin to glow, K: 250 C, that of wood at its least igniting flux
	// (Babrauskas 2001; grass itself not found).
	GrassIgnition = 250 + Celsius
	// GrassCaution is where dry grass is scorched, K: 120 C, where wood begins to char in long contact.
	GrassCaution = 120 + Celsius
	// WoodFlux is the least flux that ever lit wood, W/m2 (Babrauskas 2001); QuickFlux the one within minutes (Bartlett and others 2019).
	WoodFlux  = 4300.0
	QuickFlux = 12000.0
	// groundSteps is how finely the ground behind the nozzle is looked at.
	groundSteps = 200
)

// Ground is what a plume does to the ground behind a model that stands.
type Ground struct {
	Hottest float64 // temperature of the gas at the ground, K
	Where   float64 // distance behind the nozzle of the hottest place, m
	// Ignition and Caution are the distances behind the nozzle to which the ground is at least GrassIgnition or GrassCaution; 0: nowhere.
	Ignition, Caution float64
	// Attached is true when the plume runs along the ground (nozzle lower than two half-widths at the end of its core).
	Attached bool
}

// OnGround returns what an exhaust does to the ground when its axis is level at a height (m): a normal run, not a start that throws burning
// fuel, which lights grass at once and farther than any plume.
//
// Formula: gas temperature of the plume at the distance of the ground from its axis; with the image of the plume where it is attached.
// Valid for: level ground, still air, full power standing. An upper bound for grass itself, which wind cools.
// Source: Plume.Temperature; Plume.AlongWall.
func OnGround(p Plume, height float64) (Ground, error) {
	if err := checkWithin("height", height, 0, 20); err != nil {
		return Ground{}, err
	}
	free := p
	if height <= 2*p.HalfWidth(p.core()) {
		p = p.AlongWall()
	}
	g := Ground{Attached: p.Reach > free.Reach, Hottest: p.Air}
	farthest := 1.05 * p.ReachOf(GrassCaution)
	for i := range groundSteps + 1 {
		x := farthest * float64(i) / groundSteps
		t := p.Temperature(x, height)
		if t > g.Hottest {
			g.Hottest, g.Where = t, x
		}
		if t >= GrassCaution {
			g.Caution = x
		}
		if t >= GrassIgnition {
			g.Ignition = x
		}
	}
	return g, nil
}

// LeastHeight returns the height of a level axis from which the ground stays under a temperature (m).
//
// Formula: greatest radius of the plume at that temperature, over all distances.
// Valid for: as OnGround, free plume.
// Source: Plume.EdgeRadius.
func LeastHeight(p Plume, temperature float64) float64 {
	farthest, height := p.ReachOf(temperature), 0.0
	for i := range groundSteps + 1 {
		height = math.Max(height, p.EdgeRadius(farthest*float64(i)/groundSteps, temperature))
	}
	return height
}
