package assess

// portions are portions of a document that a knob may change, one bit each: a section that asks for none of those changed answers as before, as long as
// no part that it reads was computed anew.
type portions uint32

const (
	portionWind portions = 1 << iota
	portionTemperature
	portionVisibility
	portionGround
	portionWay // of launch and landing along their places
	portionSetting
	portionCircuit
	portionRamp
	portionBungee
	portionMass
	portionEngines
	portionFuel
	portionRadio
	portionPacks
	portionHeated
	portionStructure
	portionThrows
	portionLinkage
)

// portionPaths are the portions by their paths in the document; the first that fits counts.
var portionPaths = []struct {
	path string
	of   portions
}{
	{windSpeedPath, portionWind}, {windDirectionPath, portionWind}, {gustPath, portionWind},
	{"day.temperatureCelsius", portionTemperature}, {"day.visibilityMeters", portionVisibility},
	{"day.surfaceState", portionGround}, {"field.strips", portionGround},
	{"launchPlan.stripReversed", portionWay}, {"launchPlan.landing", portionWay}, {"launchPlan.thrustSettingRatio", portionSetting},
	{"launchPlan.circuit", portionCircuit}, {"launchPlan.ramp", portionRamp}, {"launchPlan.bungee", portionBungee},
	{"model.mass", portionMass}, {"model.engines", portionEngines}, {"model.fuelSystem", portionFuel}, {"model.radio", portionRadio},
	{"model.packs", portionPacks}, {"model.heatedParts", portionHeated}, {"model.structure", portionStructure},
}

// portionOf returns the portions in which a path of a document lies: of a control, by the end of its path.
func portionOf(path string) portions {
	for i := range portionPaths {
		if p := &portionPaths[i]; path == p.path || isBelow(path, p.path) {
			return p.of
		}
	}
	if isBelow(path, surfacesPath) {
		return portionThrows | portionLinkage
	}
	return ^portions(0)
}

// askers returns the sections that ask for some portions, one bit each.
func askers(changed portions) uint64 {
	asked := uint64(0)
	for at := range sections {
		if sections[at].asks&changed != 0 {
			asked |= 1 << at
		}
	}
	return asked
}
