package heat

import (
	"testing"

	"pitgate/server/physics/air"
)

// cold is a jet of the air's density, 1 m wide, 1 m/s, barely hotter: distances are in diameters and the axis falls as the decay.
var cold = Plume{Diameter: 1, Nozzle: 1, Speed: 1, Hot: 1, Air: 0, Spread: HeatSpread, Reach: 1}

func TestRoundJet(t *testing.T) {
	t.Parallel()
	distance := func(in inputs) float64 { return in.at("distance") }
	checkPublished(t, "round_jet", map[string]method{
		"axis-speed":       func(in inputs) float64 { return cold.AxisSpeed(distance(in)) },
		"axis-heat":        func(in inputs) float64 { return cold.AxisTemperature(distance(in)) },
		"half-width":       func(in inputs) float64 { return cold.HalfWidth(distance(in)) },
		"widest":           func(in inputs) float64 { return WideHeatSpread * distance(in) },
		"speed-half-width": func(in inputs) float64 { return SpeedSpread * distance(in) },
		"width-ratio":      func(in inputs) float64 { return HeatSpread / SpeedSpread * distance(in) },
		"schmidt": func(in inputs) float64 {
			return SpeedSpread * SpeedSpread / (HeatSpread * HeatSpread) * distance(in)
		},
		"entrained": func(in inputs) float64 { return cold.Entrained(distance(in)) },
		"momentum":  func(in inputs) float64 { return SpeedDecay * SpeedSpread * distance(in) },
	})
}

// plumeOf returns the plume of a row.
func plumeOf(in inputs) Plume {
	e := Exhaust{Diameter: in.at("diameter"), Temperature: in.at("celsius") + Celsius, Total: in.at("total") == 1, Speed: in.at("speed")}
	width := Best
	if in.at("wide") == 1 {
		width = Conservative
	}
	p, err := NewPlume(e, Air{Temperature: in.at("air") + Celsius}, width)
	if err != nil {
		return Plume{}
	}
	return p
}

func TestExhaustPlumes(t *testing.T) {
	t.Parallel()
	checkPublished(t, "exhaust_plumes", map[string]method{
		"axis-speed":   func(in inputs) float64 { return plumeOf(in).AxisSpeed(in.at("behind")) },
		"axis-heat":    func(in inputs) float64 { return plumeOf(in).AxisTemperature(in.at("behind")) - Celsius },
		"off-axis":     func(in inputs) float64 { return plumeOf(in).Temperature(in.at("behind"), in.at("from")) - Celsius },
		"heat-reach":   func(in inputs) float64 { return plumeOf(in).ReachOf(in.at("wanted") + Celsius) },
		"ground-reach": func(in inputs) float64 { return plumeOf(in).AlongWall().ReachOf(in.at("wanted") + Celsius) },
		"speed-reach":  func(in inputs) float64 { return plumeOf(in).SpeedReach(in.at("wanted")) },
		"momentum-diameter": func(in inputs) float64 {
			return 1e3 * MomentumDiameter(in.at("flow"), in.at("density"), in.at("thrust"))
		},
	})
}

func TestHeatTransferTextbooks(t *testing.T) {
	t.Parallel()
	coefficient := func(in inputs) float64 {
		return PlateCoefficient(in.at("speed"), in.at("length"), in.at("film"), in.at("pressure"), in.at("plume") == 1)
	}
	plates := func(in inputs) float64 {
		return BetweenPlates(in.at("hot"), in.at("cold"), in.at("first"), in.at("second"))
	}
	checkPublished(t, "heat_transfer_textbooks", map[string]method{
		"radiated": func(in inputs) float64 { return Radiated(in.at("emissivity"), in.at("hot"), in.at("cold")) },
		"plates":   plates,
		"facing": func(in inputs) float64 {
			return BetweenPlates(in.at("hot")+Celsius, in.at("cold")+Celsius, in.at("first"), in.at("second"))
		},
		"shield": func(in inputs) float64 {
			return WithFreeShield(in.at("hot"), in.at("cold"), in.at("first"), in.at("second"), in.at("shield"))
		},
		"enclosed": func(in inputs) float64 {
			return FluxOnSkin(in.at("hot"), in.at("cold"), in.at("first"), in.at("second"), in.at("factor"))
		},
		"tunnel": func(in inputs) float64 {
			factor := in.at("factor")
			return FluxOnSkin(in.at("pipe")+Celsius, in.at("skin")+Celsius, in.at("first"), in.at("second"), factor) / factor
		},
		"laminar-plate":     func(in inputs) float64 { return LaminarPlate(in.at("reynolds"), in.at("prandtl")) },
		"mixed-plate":       func(in inputs) float64 { return MixedPlate(in.at("reynolds"), in.at("prandtl")) },
		"plate-coefficient": coefficient,
		"plate-heat":        func(in inputs) float64 { return coefficient(in) * in.at("length") * in.at("difference") },
		"skin": func(in inputs) float64 {
			return Skin{
				Pipe: in.at("pipe") + Celsius, Radius: 0.03, Gap: 0.03, Air: in.at("air") + Celsius,
				Outer: in.at("outer"), Emissivity: in.at("emissivity"),
			}.Temperature() - Celsius
		},
		"warm-time": func(in inputs) float64 {
			return WarmTime(in.at("store"), in.at("coefficient"), in.at("gas"), in.at("start"), in.at("limit"))
		},
	})
}

func TestMaterialTemperatures(t *testing.T) {
	t.Parallel()
	named := func(in inputs) Material {
		m, known := Named(wordsOf(in["material"]))
		if !known {
			return Material{}
		}
		return m
	}
	surfaces := map[string]float64{"foil": FoilEmissivity, "pipe": PipeEmissivity, "skin": SkinEmissivity, "wood": WoodFlux, "quick": QuickFlux}
	surface := func(in inputs) float64 { return surfaces[in["surface"]] }
	service := func(in inputs) float64 { return named(in).Service - Celsius }
	checkPublished(t, "material_temperatures", map[string]method{
		"service": service, "below": service,
		"short":      func(in inputs) float64 { return named(in).Short - Celsius },
		"emissivity": surface, "flux": surface,
	})
	for _, record := range readPublished(t, "material_temperatures") {
		if kind := record[0][:5]; kind == "below" && service(parseInputs(record[1])) >= parse(t, record[2]) {
			t.Errorf("%s: the limit is not below the printed figure", record[0])
		}
	}
}

// wordsOf turns the name of a row into words.
func wordsOf(name string) string {
	out := []byte(name)
	for i := range out {
		if out[i] == '_' {
			out[i] = ' '
		}
	}
	return string(out)
}

func TestConductivityAgreesWithTheStandardAtmosphere(t *testing.T) {
	t.Parallel()
	// US Standard Atmosphere 1976: 2.5326e-2 W/(m K) at 288.15 K; Prandtl's number with 1005 J/(kg K) is then 0.71.
	if k := Conductivity(288.15); k < 2.5325e-2 || k > 2.5327e-2 {
		t.Errorf("conductivity at 15 C is %g", k)
	}
	if pr := air.Viscosity(288.15) * 1005 / Conductivity(288.15); pr < 0.705 || pr > 0.715 {
		t.Errorf("Prandtl number at 15 C is %g", pr)
	}
}
