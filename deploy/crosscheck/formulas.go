package main

import (
	"errors"
	"maps"

	"pitgate/server/physics/aeroelastic"
	thrust "pitgate/server/physics/engine"
	"pitgate/server/physics/loads"
	"pitgate/server/physics/radio"
	"pitgate/server/physics/structure"
)

// inputs are the named values of a formula.
type inputs map[string]float64

// formula is one closed form of the core at some inputs; formulas.py solves the equations behind it.
type formula struct {
	Kind   string  `json:"kind"`
	Inputs inputs  `json:"inputs"`
	Value  float64 `json:"value"`
}

// finely is into how many strips a half span is cut.
const finely = 4000

// formulas returns what the core makes of closed forms whose printed values are few.
func formulas() ([]formula, error) {
	all := append(hinges(), momentum()...)
	all = append(append(all, struts()...), reflections()...)
	spans, err := spanLoads()
	fins, fault := fins()
	return append(append(all, spans...), fins...), errors.Join(err, fault)
}

// hinges returns the hinge moments of plain flaps.
func hinges() (all []formula) {
	for _, ratio := range []float64{0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.4, 0.5, 0.7, 0.9} {
		incidence, angle := aeroelastic.HingeSlopes(ratio)
		in := inputs{"ratio": ratio}
		all = append(all, formula{"hinge-incidence", in, incidence}, formula{"hinge-angle", in, angle})
	}
	return all
}

// momentum returns propellers and ducted fans at rest and in flight.
func momentum() (all []formula) {
	for _, speed := range []float64{0, 8, 20, 45} {
		for _, power := range []float64{300, 1500, 6000} {
			disc := inputs{"density": 1.2, "area": 0.09, "power": power, "speed": speed}
			duct := inputs{"density": 1.2, "area": 0.006, "power": power, "speed": speed}
			all = append(all,
				formula{"propeller-thrust", disc, thrust.PropellerThrust(1.2, 0.09, power, speed)},
				formula{"propeller-inflow", disc, thrust.PropellerInflow(1.2, 0.09, power, speed)},
				formula{"fan-thrust", duct, thrust.FanThrust(1.2, 0.006, power, speed)},
				formula{"fan-exit-speed", duct, thrust.FanExitSpeed(1.2, 0.006, power, speed)})
			if speed == 0 {
				all = append(all, formula{"propeller-thrust", disc, thrust.PropellerStaticThrust(1.2, 0.09, power)},
					formula{"fan-thrust", duct, thrust.FanStaticThrust(1.2, 0.006, power)})
			}
		}
	}
	return all
}

// struts returns straight struts by their ends, and how much shorter bent pushrods get.
func struts() (all []formula) {
	for _, k := range []float64{1, 2, 0.5} {
		for _, length := range []float64{0.12, 0.4, 1.1} {
			in := inputs{"outer": 0.01, "inner": 0.008, "modulus": 127e9, "length": length, "ends": k}
			all = append(all, formula{"strut", in, structure.EulerLoad(127e9, structure.RingInertia(0.01, 0.008), length, k)})
		}
	}
	for _, share := range []float64{0.1, 0.4, 0.8} {
		for _, rod := range []inputs{
			{"length": 0.12, "diameter": 0.002, "modulus": 205e9, "bow": 0.0006}, {"length": 0.5, "diameter": 0.004, "modulus": 127e9, "bow": 0.0025},
		} {
			euler := structure.EulerLoad(rod["modulus"], structure.RingInertia(rod["diameter"], 0), rod["length"], 1)
			in := maps.Clone(rod)
			in["push"] = share * euler
			stiffness := rod["modulus"] * structure.RingArea(rod["diameter"], 0)
			all = append(all, formula{"pushrod", in, aeroelastic.RodShortening(in["push"], rod["length"], stiffness, rod["bow"], euler)})
		}
	}
	return all
}

// reflections returns waves that the soils throw back.
func reflections() (all []formula) {
	const frequency = 2.44e9
	for _, ground := range []radio.Ground{radio.DryGround(frequency), radio.MediumGround(frequency), radio.WetGround(frequency)} {
		for _, angle := range []float64{0.5, 2, 6, 12, 25, 60, 89} {
			in := inputs{"permittivity": ground.Permittivity, "conductivity": ground.Conductivity, "frequency": frequency, "angle": radians(angle)}
			upright, level := ground.Reflect(frequency, radians(angle), radio.Vertical), ground.Reflect(frequency, radians(angle), radio.Horizontal)
			all = append(all, formula{"upright-real", in, upright.Real}, formula{"upright-imaginary", in, upright.Imaginary},
				formula{"level-real", in, level.Real}, formula{"level-imaginary", in, level.Imaginary})
		}
	}
	return all
}

// spanLoads returns shear and bending of tapered wings by Schrenk's rule, by the ellipse and by the chord.
func spanLoads() (all []formula, err error) {
	const lift, span = 1059.1182, 2.0
	for _, taper := range []float64{0, 0.35, 0.6, 1} {
		cuts := []loads.Cut{{Y: 0, Chord: 0.4}, {Y: span / 2, Chord: 0.4 * taper}}
		schrenk, e1 := loads.SchrenkStrips(cuts, lift, finely)
		ellipse, e2 := loads.EllipticStrips(span, lift, finely)
		chord, e3 := loads.ChordStrips(cuts, lift, finely)
		err = errors.Join(err, e1, e2, e3)
		for kind, loading := range map[string][]loads.Strip{"schrenk": schrenk, "ellipse": ellipse, "chord": chord} {
			at, fault := loads.Integrate(loading, nil, loads.Axis{}, []float64{0, 0.3, 0.7, 0.9})
			err = errors.Join(err, fault)
			for _, l := range at {
				in := inputs{"lift": lift, "span": span, "root": 0.4, "tip": 0.4 * taper, "place": l.Y}
				all = append(all, formula{kind + "-shear", in, l.Shear.PerLoad}, formula{kind + "-bending", in, l.Bending.PerLoad})
			}
		}
	}
	return all, err
}

// fins returns the screening speed of rectangular plates of balsa, glass and aluminium.
func fins() (all []formula, err error) {
	for _, sheet := range []inputs{
		{"thickness": 0.006, "shearModulus": 0.15e9, "density": 160}, {"thickness": 0.002, "shearModulus": 4e9, "density": 1850},
		{"thickness": 0.0015, "shearModulus": 27e9, "density": 2780},
	} {
		for _, aspect := range []float64{1, 1.5, 2, 3} {
			in := maps.Clone(sheet)
			in["chord"], in["span"], in["pressure"], in["sound"] = 0.17, 0.17*aspect, 101325, 340.294
			fin := aeroelastic.PlateFin{Root: in["chord"], Tip: in["chord"], Span: in["span"], Thickness: in["thickness"], ShearModulus: in["shearModulus"]}
			flutter, fault := fin.Flutter(in["pressure"], in["sound"])
			err = errors.Join(err, fault)
			all = append(all, formula{"fin", in, flutter.Speed})
		}
	}
	return all, err
}
