package footprint

import (
	"math"
	"testing"

	"pitgate/server/physics/weather"
)

// inDegrees turns radians into degrees.
func inDegrees(value float64) float64 { return value * 180 / math.Pi }

// tumble flies a row's fall with drag, due east, on equations with a fine step.
func tumble(t *testing.T, in inputs) Impact {
	t.Helper()
	loss := Loss{
		Action: Breakup, Model: Model{Mass: 1, Area: 1, CLMax: 1, DragArea: in["rate"] * 2}, Density: 1, Gravity: in["gravity"], Precision: 1e-11,
		Wind: Wind{Speed: in["wind"], From: 1.5 * math.Pi, Profile: weather.Profile{}},
	}
	impact, err := loss.From(Release{Height: in["height"], Heading: math.Pi / 2, Speed: in["speed"], Climb: degrees(in["climb"])})
	if err != nil || !impact.Landed {
		t.Fatal(err, impact)
	}
	return impact
}

func TestBallisticClosedForms(t *testing.T) {
	t.Parallel()
	vacuum := func(in inputs) VacuumFall {
		fall, err := InVacuum(in["height"], in["speed"], degrees(in["climb"]), in["gravity"])
		if err != nil {
			t.Error(err)
		}
		return fall
	}
	glide := func(in inputs) SteadyGlide {
		g, err := Glide(in["height"], in["speed"], in["ratio"], in["wind"])
		if err != nil {
			t.Error(err)
		}
		return g
	}
	checkPublished(t, "ballistic_closed_forms", map[string]method{
		"fall-distance":   func(in inputs) float64 { return tumble(t, in).Place.X },
		"fall-time":       func(in inputs) float64 { return tumble(t, in).Time },
		"fall-speed":      func(in inputs) float64 { return tumble(t, in).Speed },
		"fall-angle":      func(in inputs) float64 { return inDegrees(tumble(t, in).Angle) },
		"vacuum-distance": func(in inputs) float64 { return vacuum(in).Distance },
		"vacuum-time":     func(in inputs) float64 { return vacuum(in).Time },
		"vacuum-speed":    func(in inputs) float64 { return vacuum(in).Speed },
		"vacuum-angle":    func(in inputs) float64 { return inDegrees(vacuum(in).Angle) },
		"glide-distance":  func(in inputs) float64 { return glide(in).Distance },
		"glide-time":      func(in inputs) float64 { return glide(in).Time },
		"glide-sink":      func(in inputs) float64 { return glide(in).Sink },
	})
}

// struck is the critical area of a row.
func struck(t *testing.T, in inputs, ground Ground) CriticalArea {
	t.Helper()
	area, err := Strike{in["width"], in["mass"], in["speed"], degrees(in["angle"])}.CriticalArea(ground)
	if err != nil {
		t.Error(err)
	}
	return area
}

func TestCriticalAreaAsPublished(t *testing.T) {
	t.Parallel()
	area := func(in inputs) CriticalArea {
		ground := AnnexF().Obstructed()
		ground.Friction = in["friction"]
		return struck(t, in, ground)
	}
	open := func(in inputs) float64 {
		ground := AnnexF()
		ground.Friction = in["friction"]
		return struck(t, in, ground).Total
	}
	drop := func(in inputs) DecoupledFall {
		d, err := DecoupledFrom(in["mass"], in["drag"], 1.225, in["gravity"], in["height"], in["speed"])
		if err != nil {
			t.Error(err)
		}
		return d
	}
	risk := func(in inputs) (float64, float64) {
		raw, class, err := RiskClass(in["area"], in["density"]/1e6)
		if err != nil {
			t.Error(err)
		}
		return raw, float64(class)
	}
	checkPublished(t, "critical_area", map[string]method{
		"total":         func(in inputs) float64 { return area(in).Total },
		"glide":         func(in inputs) float64 { return area(in).Glide },
		"slide":         func(in inputs) float64 { return area(in).Slide },
		"length":        func(in inputs) float64 { return area(in).SlideLength },
		"time":          func(in inputs) float64 { return area(in).SlideTime },
		"open":          open,
		"risk-raw":      func(in inputs) float64 { raw, _ := risk(in); return raw },
		"risk-class":    func(in inputs) float64 { _, class := risk(in); return class },
		"restitution":   func(in inputs) float64 { return Restitution(degrees(in["angle"])) },
		"terminal":      func(in inputs) float64 { return TerminalSpeed(in["mass"], in["drag"], 1.225, in["gravity"]) },
		"drop-distance": func(in inputs) float64 { return drop(in).Distance },
		"drop-speed":    func(in inputs) float64 { return drop(in).Speed },
		"drop-angle":    func(in inputs) float64 { return inDegrees(drop(in).Angle) },
		"drop-time":     func(in inputs) float64 { return drop(in).Time },
		"drop-energy":   func(in inputs) float64 { return KineticEnergy(in["mass"], drop(in).Speed) / 1000 },
		"energy":        func(in inputs) float64 { return KineticEnergy(in["mass"], in["speed"]) },
		"energy-speed":  func(in inputs) float64 { return SpeedOfEnergy(in["mass"], in["energy"]) },
		"struck":        func(in inputs) float64 { return ExpectedStruck(in["area"], in["density"]/1e6) },
	})
}

func TestOperationalBuffers(t *testing.T) {
	t.Parallel()
	operation := func(in inputs) Operation {
		return Operation{
			Speed: in["speed"], Size: in["size"], Bank: degrees(in["bank"]), Reaction: in["reaction"], Height: in["height"],
			PositionError: 3, HoldError: 3, MapError: 1, HeightError: 1,
		}
	}
	volume := func(o Operation) Contingency {
		c, err := o.Contingency()
		if err != nil {
			t.Error(err)
		}
		return c
	}
	stopping := func(in inputs) Contingency {
		o := operation(in)
		o.Stops = true
		return volume(o)
	}
	height := func(in inputs) float64 { return volume(operation(in)).Height }
	checkPublished(t, "operational_buffers", map[string]method{
		"reaction":           func(in inputs) float64 { return volume(operation(in)).ReactionDistance },
		"manoeuvre":          func(in inputs) float64 { return volume(operation(in)).ManoeuvreDistance },
		"contingency":        func(in inputs) float64 { return volume(operation(in)).Distance },
		"reaction-height":    func(in inputs) float64 { return volume(operation(in)).ReactionHeight },
		"manoeuvre-height":   func(in inputs) float64 { return volume(operation(in)).ManoeuvreHeight },
		"contingency-height": height,
		"equal":              func(in inputs) float64 { return EqualBuffer(height(in), in["size"]) },
		"ballistic":          func(in inputs) float64 { return BallisticBuffer(height(in), in["speed"], in["size"], standardGravity) },
		"glide":              func(in inputs) float64 { return GlideBuffer(height(in), 8) },
		"stop":               func(in inputs) float64 { return stopping(in).ManoeuvreDistance },
		"stop-height":        func(in inputs) float64 { return stopping(in).ManoeuvreHeight },
		"turn":               func(in inputs) float64 { return volume(operation(in)).ManoeuvreDistance },
		"overshoot": func(in inputs) float64 {
			c := volume(operation(in))
			return c.ReactionDistance + c.ManoeuvreDistance
		},
		"two-seconds": func(in inputs) float64 { return TwoSecondDistance(in["speed"]) },
		"adjacent":    func(in inputs) float64 { return AdjacentRadius(in["speed"]) },
		"geography":   func(in inputs) float64 { return GeographySize(in["size"]) },
	})
}
