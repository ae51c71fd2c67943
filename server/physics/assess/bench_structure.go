package assess

import "strings"

const structureGroup = "Structure"

var benchStructureRows = []benchRow{
	{id: "bench.structure.sandbags", group: structureGroup, title: "Sandbag test of the wing", input: "model.structure.proofLoadFactor", unit: "1", photo: true,
		how: "Model on its back, held at the wing's seat. Lay bags along both panels, most at the root, as the lift is spread; hold a minute, unload, look for set, cracks and wrinkles.",
		why: "A wing that has carried the load is known; a calculated one is hoped for.", findings: []string{"loads.wing", "loads.joiner", "loads.bolts", "loads.gust"},
		applies: hasStructure, wanted: wantedSandbags},
	{id: "bench.structure.joiner", group: structureGroup, title: "Joiner inside each panel", input: "model.structure.joiner.engagedLengthMeters", unit: "m", photo: true,
		how: "Push it home, mark it at the root, pull it out and measure. No play in the sockets, no crack at their mouths.",
		why: "A short joiner breaks out of its socket long before the spar does.", findings: []string{"loads.joiner"},
		applies: func(v *benchView, s *benchSubject) bool { return hasStructure(v, s) && v.model.Structure.Joiner != nil },
		wanted:  notUnder(func(v *benchView, _ *benchSubject) *Quantity { return v.model.Structure.Joiner.EngagedLengthMeters })},
	{id: "bench.structure.bolts", group: structureGroup, title: "Bolts of the wing's seat", input: "model.structure.wingBoltDiameterMeters", unit: "m", photo: true,
		how: "Count and measure them; their heads bear on plates, their nuts are glued or screwed in, none turns by finger.",
		why: "The seat carries the whole pull-up.", findings: []string{"loads.bolts"},
		applies: func(v *benchView, s *benchSubject) bool {
			return hasStructure(v, s) && (v.model.Structure.WingBoltDiameterMeters != nil || v.model.Structure.WingBoltCount != nil)
		}, wanted: wantedBolts},
	{id: "bench.structure.twist", group: structureGroup, title: "Twist of a panel", unit: "N m/rad", input: "model.structure.wingTwistStiffnessNewtonMetersPerRadian",
		how: "Root held, a bar across the tip, a weight at its end: moment over the angle that the bar turns.",
		why: "A soft panel turns ailerons round and lets the wing diverge.", findings: []string{"roll.reversal", "speed.never_exceed"}, applies: hasStructure,
		wanted: notUnder(func(v *benchView, _ *benchSubject) *Quantity {
			return v.model.Structure.WingTwistStiffnessNewtonMetersPerRadian
		})},
	{id: "bench.structure.skin", group: structureGroup, title: "Skin at the root", input: "model.structure.torsionBox.skinThicknessMeters", unit: "m",
		how: "Measure where it is cut, or by weight of a cut-out; tap it for places that have come loose.", why: "The skin carries the twist.",
		findings: []string{"loads.skin", "speed.never_exceed"},
		applies: func(v *benchView, s *benchSubject) bool {
			return hasStructure(v, s) && v.model.Structure.TorsionBox != nil
		},
		wanted: notUnder(func(v *benchView, _ *benchSubject) *Quantity { return v.model.Structure.TorsionBox.SkinThicknessMeters })},
	{id: "bench.structure.boom", group: structureGroup, title: "Tail booms", unit: "N m",
		how: "Hold the wing, load the tail until this moment is reached at the boom's last fastening, both ways; nothing may creak or stay bent.",
		why: "A boom that gives way takes the tail with it.", findings: []string{"loads.boom"},
		applies: func(v *benchView, s *benchSubject) bool { return hasStructure(v, s) && len(v.model.Structure.Boom) > 0 },
		wanted: func(v *benchView, _ *benchSubject) benchWanted {
			return least(v.number("loads.boom_bending"), "bending of one boom that the flight asks for")
		}},
	{id: "bench.structure.hinges", group: structureGroup, title: "Hinges", each: benchControls, unit: "N",
		how: "Linkage off. Pull the surface straight back at each end with a spring scale, then look for a hinge that has moved.",
		why: "A lost hinge is a lost control.", findings: []string{"servo.torque", "controls.free_play"}, wanted: wantedHinge},
	{id: "bench.structure.closed", group: structureGroup, title: "Canopy, hatches, screws",
		how: "Pull at each from outside, shake the model. Count the screws against the drawing.", why: "What comes off in the air hits the tail or the engine.",
		wanted: state("all closed and held, no screw missing")},
}

func hasStructure(v *benchView, _ *benchSubject) bool { return v.model.Structure != nil }

// wantedSandbags is the load factor to be held and the mass of bags that makes it.
func wantedSandbags(v *benchView, _ *benchSubject) benchWanted {
	asked := v.number("loads.asked")
	if asked == nil {
		return benchWanted{text: "the load factor is not computed yet, an input is missing"}
	}
	text := "load factor held without damage"
	if bags, known := v.value["loads.sandbag_mass"]; known {
		text += sayNumbers("; %.1f kg of bags on both panels together make it", bags)
	}
	return benchWanted{text: text, low: asked}
}

func wantedBolts(v *benchView, s *benchSubject) benchWanted {
	d := v.model.Structure
	wanted := bandOf(d.WingBoltDiameterMeters, s.input)
	wanted.high = nil
	if d.WingBoltCount != nil {
		wanted.text = strings.TrimSuffix(say("%d of them, %s", *d.WingBoltCount, d.WingBoltMaterial), ", ") + ", as the report takes them"
	}
	return wanted
}

// wantedHinge is the pull of the air on the hinged part at full throw in the circuit, both ends together: F = 1/2 rho V^2 S, the flat plate's coefficient
// taken as 1.
//
// Where: rho air density (kg/m3), V speed of the circuit (m/s), S area of the hinged part (m2), F in N.
// Valid for: throws up to 45 degrees, where a plate's normal force stays near its dynamic pressure.
// Source: common practice for the pull, no source; Hoerner, Fluid-Dynamic Drag, chapter 3 (inclined plates) for the coefficient, from memory.
func wantedHinge(v *benchView, s *benchSubject) benchWanted {
	density, speed := v.number("air.density"), v.number("circuit.airspeed")
	span := s.surface.controlSpan(s.control)
	if density == nil || speed == nil || span <= 0 {
		return benchWanted{text: "a firm pull; its figure is not computed yet, an input is missing"}
	}
	chord := s.hinged.chord
	if chord <= 0 {
		chord = orElse(s.control.ChordRatio, defaultChordRatio) * orElse(s.surface.Stations[0].ChordMeters, 0)
	}
	pull := 0.5 * *density * *speed * *speed * chord * span
	return benchWanted{text: "what the air pulls at full throw in the circuit; nothing moves", low: &pull}
}

// controlSpan is the length of a control along its surface, m.
func (s *LiftingSurface) controlSpan(c *Control) float64 {
	if len(s.Stations) < 2 {
		return 0
	}
	inner, tip := &s.Stations[0], &s.Stations[len(s.Stations)-1]
	half := root(orElse(tip.LeadingEdgeYMeters, 0)-orElse(inner.LeadingEdgeYMeters, 0), orElse(tip.LeadingEdgeZMeters, 0)-orElse(inner.LeadingEdgeZMeters, 0))
	return half * (orElse(c.OuterSpanRatio, 1) - orElse(c.InnerSpanRatio, 0))
}
