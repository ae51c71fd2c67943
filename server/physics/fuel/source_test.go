package fuel

import (
	"math"
	"testing"
)

// millilitre is a millilitre a minute, m3/s.
const millilitre = 1e-6 / 60

func TestPipeFlowHandbook(t *testing.T) {
	t.Parallel()
	flow := func(in inputs) float64 { return in.at("flow") }
	heads := func(in inputs, reynolds float64) float64 { return FittingLoss(reynolds, int(in.at("elbows")), 2, 1) }
	checkPublished(t, "pipe_flow_handbook", map[string]method{
		"laminar-friction":   func(in inputs) float64 { return Friction(in.at("reynolds")) },
		"blasius-friction":   func(in inputs) float64 { return Friction(in.at("reynolds")) },
		"colebrook-friction": func(in inputs) float64 { return ColebrookFriction(in.at("reynolds"), in.at("roughness")) },
		"pipe-loss": func(in inputs) float64 {
			line := Line{Length: in.at("length"), Bore: in.at("bore")}
			mix := Mix{Density: in.at("density"), Viscosity: in.at("dynamic") / in.at("density")}
			return line.Loss(in.at("mass")/in.at("density"), mix).Tube
		},
		"tube-loss": func(in inputs) float64 {
			return TubeLoss(in.at("friction"), in.at("length"), in.at("bore"), in.at("density"), Speed(flow(in), in.at("bore")))
		},
		"elbow-heads":    func(in inputs) float64 { return heads(in, 1e9) - FittingLoss(1e9, 0, 2, 1) },
		"entry-and-exit": func(in inputs) float64 { return heads(in, 1e9) },
		"reynolds": func(in inputs) float64 {
			return Reynolds(in.at("speed"), in.at("bore"), in.at("dynamic")/in.at("density"))
		},
	})
}

func TestKeroseneProperties(t *testing.T) {
	t.Parallel()
	viscosity := func(l Liquid) method {
		return func(in inputs) float64 { return 1e6 * l.Viscosity(in.at("celsius")+celsius) }
	}
	checkPublished(t, "kerosene_properties", map[string]method{
		"kerosene-viscosity": viscosity(Kerosene),
		"diesel-viscosity":   viscosity(Diesel),
		"kerosene-density":   func(in inputs) float64 { return Kerosene.Density(in.at("celsius") + celsius) },
		"kerosene-lowest":    func(inputs) float64 { return Kerosene.LowestMade },
		"kerosene-highest":   func(inputs) float64 { return Kerosene.HighestMade },
		"diesel-lowest":      func(inputs) float64 { return Diesel.LowestMade },
		"diesel-highest":     func(inputs) float64 { return Diesel.HighestMade },
		"oil-share":          func(in inputs) float64 { return OilShare(in.at("ratio")) },
		"mix-density":        func(in inputs) float64 { return MixDensity(in.at("first"), in.at("second"), in.at("share")) },
	})
}

func TestFuelSuction(t *testing.T) {
	t.Parallel()
	checkPublished(t, "fuel_suction", map[string]method{
		"air-release": func(inputs) float64 { return AirReleaseSuction },
		"head": func(in inputs) float64 {
			return HeadSuction(in.at("density"), Load{Normal: in.at("normal"), Forward: in.at("forward")}, in.at("height"), in.at("ahead"))
		},
		"tube": func(in inputs) float64 {
			line := Line{Length: 1, Bore: in.at("bore") * 1e-3}
			return line.Loss(in.at("flow")*millilitre, Mix{Density: in.at("density"), Viscosity: in.at("viscosity")}).Tube
		},
		"hold":         func(in inputs) float64 { return TrapSeconds(in.at("volume")*1e-6, in.at("flow")*millilitre) },
		"slug":         func(in inputs) float64 { return SlugGap(in.at("air")*1e-6, in.at("flow")*millilitre) },
		"bubble-point": func(in inputs) float64 { return ScreenHold(SurfaceTension, in.at("pore")*1e-6) },
		"released":     func(in inputs) float64 { return 100 * ReleasedAir(in.at("suction")*1e3, standardOutside) },
		"contents": func(in inputs) float64 {
			line := Line{Length: in.at("length"), Bore: in.at("bore") * 1e-3}
			return 1e6 * line.Loss(millilitre, Mix{Density: 800, Viscosity: 2e-6}).Contents
		},
	})
}

func TestAirReleasedInAWholeLine(t *testing.T) {
	t.Parallel()
	// 600 ml/min, 4 mm by 1.2 m, lift 0.15 m at 8 g and a filter of 2000 Pa: the parts are in fuel_suction, their sum is above the limit.
	head := HeadSuction(800, Load{Normal: 8}, 0.15, 0)
	line := Line{Length: 1.2, Bore: 0.004}.Loss(600*millilitre, Mix{Density: 800, Viscosity: 2e-6})
	if sum := head + line.Tube + 2000; math.Abs(sum-14470.2) > 1 || sum < AirReleaseSuction {
		t.Errorf("suction of the line is %g", sum)
	}
}
