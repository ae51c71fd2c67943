package aeroelastic

import (
	"math"
	"testing"
)

func degrees(value float64) float64 { return value * math.Pi / 180 }

// speedOf turns a dynamic pressure into a speed by hand.
func speedOf(pressure, density float64) float64 { return math.Sqrt(2 * pressure / density) }

func uniformPressure(t *testing.T, in inputs) float64 {
	t.Helper()
	q, happens := UniformDivergencePressure(in["stiffness"], in["length"], in["chord"], in["arm"], in["slope"])
	if !happens {
		t.Error("no divergence")
	}
	return q
}

func TestDivergenceAgainstTextbooks(t *testing.T) {
	t.Parallel()
	checkPublished(t, "torsional_divergence", map[string]method{
		"uniform":  func(in inputs) float64 { return speedOf(uniformPressure(t, in), in["density"]) },
		"pressure": func(in inputs) float64 { return uniformPressure(t, in) },
		"by-iteration": func(in inputs) float64 {
			w := Wing{Stiffness: in["stiffness"] / in["length"], HalfSpan: in["length"], Chords: []float64{in["chord"], in["chord"]},
				Axis: aerodynamicCentre + in["arm"]/in["chord"], LiftSlope: in["slope"]}
			d, err := w.Divergence()
			if err != nil || !d.Happens || !d.Inside {
				t.Errorf("%+v, %v", d, err)
			}
			return d.Speed(in["density"])
		},
		"section-arm": func(in inputs) float64 {
			perMetre, _ := SectionDivergencePressure(in["spring"], in["area"], 1, in["slope"])
			return perMetre / (0.5 * in["density"] * in["speed"] * in["speed"])
		},
	})
}

func TestHingeMomentsAgainstThinAerofoilTheory(t *testing.T) {
	t.Parallel()
	checkPublished(t, "flap_hinge_moments", map[string]method{
		"incidence": func(in inputs) float64 { slope, _ := HingeSlopes(in["ratio"]); return slope },
		"angle":     func(in inputs) float64 { _, slope := HingeSlopes(in["ratio"]); return slope },
		"moment": func(in inputs) float64 {
			c := Control{MomentArea: TaperedMomentArea(in["breadth"], in["chord"], in["chord"]), ChordRatio: in["ratio"],
				Throw: degrees(in["throw"]), Incidence: degrees(in["incidence"])}
			h, err := c.HingeMoment(0.5*in["density"]*in["speed"]*in["speed"], 1)
			if err != nil {
				t.Error(err)
			}
			return h
		},
		"servo-torque": func(in inputs) float64 {
			travel, err := Linkage{Torque: 1, Count: 1, ServoArm: in["servo"], HornArm: in["horn"]}.Travel(1e-9)
			if err != nil {
				t.Error(err)
			}
			return in["moment"] * travel.Ratio
		},
	})
}

func TestFinFlutterAgainstWorkedFins(t *testing.T) {
	t.Parallel()
	const inch, psi, foot = 0.0254, 6894.757293168, 0.3048
	flutter := func(f PlateFin, pressure, sound float64) float64 {
		r, err := f.Flutter(pressure, sound)
		if err != nil || !r.Inside {
			t.Errorf("%+v, %v", r, err)
		}
		return r.Speed
	}
	checkPublished(t, "thin_fin_flutter", map[string]method{
		"inches": func(in inputs) float64 {
			return flutter(PlateFin{in["root"] * inch, in["tip"] * inch, in["span"] * inch, in["thickness"] * inch, in["modulus_psi"] * psi},
				in["pressure_psi"]*psi, in["sound_fps"]*foot)
		},
		"metres": func(in inputs) float64 {
			return flutter(PlateFin{in["root"], in["tip"], in["span"], in["thickness"], in["modulus"]}, in["pressure"], in["sound"])
		},
	})
}
