package drag

import "math"

// Lips of an intake: share of the pre-entry drag that the lip does not recover.
//
// Source: judgement: a sharp lip recovers nothing, a round one most of it.
const (
	sharpLipLoss = 1.0
	roundLipLoss = 0.3
)

// Duct is the air duct of a buried engine.
type Duct struct {
	IntakeArea, Length, WettedArea, ExitArea float64 // m2, m, m2, m2
	MassFlow                                 float64 // what the engine swallows, kg/s; 0 = not known
	SharpLip                                 bool
}

// MassFlowRatio returns the speed in the intake over flight speed.
//
// Formula: m/(rho V A); where m mass flow, kg/s, A intake area, m2.
// Valid for: incompressible flow; 1 (air inside as fast as the model) when something is missing.
// Source: continuity.
func MassFlowRatio(d Duct, density, speed float64) float64 {
	swept := float64(float64(density*speed) * d.IntakeArea)
	if !(d.MassFlow > 0) || !(swept > 0) || math.IsInf(swept, 0) {
		return 1
	}
	return d.MassFlow / swept
}

// SpillageDrag returns drag over dynamic pressure of the air that an intake turns away, m2.
//
// Formula: D/q = k (1 - r)^2 A; where r mass-flow ratio, k share that the lip does not recover, A intake area, m2.
// Valid for: r below 1; 0 above, where the loss is the engine's.
// Source: momentum theorem for the stream tube ahead of the intake (pre-entry drag); lip share judgement.
func SpillageDrag(ratio, intakeArea, lipLoss float64) float64 {
	if !(ratio < 1) {
		return 0
	}
	short := 1 - max(0, ratio)
	return float64(float64(lipLoss*usable(intakeArea)) * float64(short*short))
}

// RamArea returns the momentum of the swallowed air over dynamic pressure, m2. The engine's net thrust already lacks it; the build-up never
// adds it.
//
// Formula: m V/q = 2 m/(rho V).
// Valid for: positive density and speed; 0 otherwise.
// Source: momentum theorem.
func RamArea(massFlow, density, speed float64) float64 {
	if !(density > 0) || !(speed > 0) {
		return 0
	}
	return 2 * usable(massFlow) / float64(density*speed)
}

// ductParts returns the inner friction and the spillage of a duct.
//
// Formula: D/q = Cf Swet r^2; where Cf turbulent at the length of the duct and the speed inside, r mass-flow ratio, at most 2.
// Valid for: ducts of about constant section. Momentum and the loss of thrust behind the intake belong to the engine.
// Source: friction of a plate in the air inside; common practice.
func ductParts(d Duct, finish string, c Conditions) []Component {
	ratio := min(2, MassFlowRatio(d, c.Air.Density, c.Speed))
	part := Component{
		Name: "duct", Kind: KindDuct, WettedArea: ductWetted(d), FormFactor: 1, Interference: 1, spread: spreadDuct,
		Source: "Prandtl and Schlichting at the speed inside",
	}
	if d.Length > 0 {
		part.Reynolds = Reynolds(c.Air.Density, float64(c.Speed*ratio), usable(d.Length), c.Air.Viscosity)
		part.Friction = float64(RoughnessFactor(finish) * Friction(part.Reynolds, 0))
		part.Area = float64(FrictionArea(part.Friction, 1, 1, part.WettedArea) * float64(ratio*ratio))
	}
	parts := []Component{part}
	loss := roundLipLoss
	if d.SharpLip {
		loss = sharpLipLoss
	}
	if spilled := SpillageDrag(ratio, d.IntakeArea, loss); spilled > 0 {
		parts = append(parts, Component{Name: "intake spillage", Kind: KindDuct, Area: spilled, spread: spreadSpillage, Source: "momentum theorem; lip by judgement"})
	}
	return parts
}

// ductWetted returns the skin inside, from the intake's girth when it is not given, m2.
func ductWetted(d Duct) float64 {
	if wetted := usable(d.WettedArea); wetted > 0 {
		return wetted
	}
	return float64(2*math.Sqrt(float64(math.Pi*usable(d.IntakeArea)))) * usable(d.Length)
}
