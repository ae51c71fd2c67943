package lift

import (
	"math"

	"pitgate/server/physics/planform"
)

// LateralDerivatives are the coefficients of side force (to starboard), rolling moment (starboard down) and yawing moment (nose to
// starboard) per radian of sideslip (stream from starboard) and per unit of p b/(2 V) and r b/(2 V), moments and rates over span.
type LateralDerivatives struct {
	SideForceBeta, RollBeta, YawBeta             float64
	SideForceRollRate, RollRollRate, YawRollRate float64
	SideForceYawRate, RollYawRate, YawYawRate    float64
}

// LateralControl is what one control does per radian: aileron, elevon, flaperon and ruddervator with the starboard trailing edge up and the
// port one down, a rudder with the trailing edge to port.
type LateralControl struct {
	Surface, Name, Role  string
	SideForce, Roll, Yaw float64
}

// Lateral is the answer of the lattice in sideslip, roll and yaw for one geometry.
type Lateral struct {
	Reference Reference
	LiftSlope float64 // of the symmetric solution, per rad; 0 of a fin alone
	ZeroLift  float64 // incidence of the model's x axis without lift, rad

	terms    [motions]lateralTerms
	controls []lateralControl
	yawDrag  [2][2]float64 // yaw of the induced drag that the yaw rate makes of lift by incidence and of basic lift
	spread   float64       // yaw damping per profile drag
}

// lateralTerms are the coefficients of one motion: without lift, and per rad of incidence and for the loading at zero incidence.
type lateralTerms struct {
	linear lateralForces
	lift   [2]lateralForces
}

// lateralControl are the coefficients of one control.
type lateralControl struct {
	LateralControl
	terms lateralTerms
}

// SolveLateral solves the lattice of all surfaces for sideslip, roll, yaw and lateral controls; fins, twin fins, V-tails, winglets and
// surfaces on one side only take part. Errors as Solve.
//
// Valid for: attached flow, small angles, Mach below 0.3; bodies and propellers take no part.
// Source: vortex-lattice method with the image reversed; forces by the Kutta-Joukowski theorem.
func SolveLateral(surfaces []planform.Surface, reference Reference) (*Lateral, error) {
	return solveLateralWith(surfaces, reference, tableSlope)
}

// solveLateralWith is SolveLateral with the lift slopes of the sections by another rule.
func solveLateralWith(surfaces []planform.Surface, reference Reference, slope slopeOf) (*Lateral, error) {
	_, reference, err := prepare(surfaces, reference, slope)
	if err != nil {
		return nil, err
	}
	l := newLateralLattice(surfaces, reference, slope)
	if len(l.panels) == 0 {
		return nil, ErrNothingLifts
	}
	answers, err := l.solveSides(lateralControls(surfaces, &l), reference.Span)
	if err != nil {
		return nil, err
	}
	a := &Lateral{Reference: reference, spread: l.wingSpread(reference)}
	a.fill(&l, answers)
	if !a.finite() {
		return nil, ErrUnsolvable
	}
	return a, nil
}

// fill turns the circulations into coefficients.
func (a *Lateral) fill(l *lattice, answers sideAnswers) {
	span, area := a.Reference.Span, a.Reference.Area
	lift, _ := l.liftAndMoment(answers.lift[0])
	basic, _ := l.liftAndMoment(answers.lift[1])
	if a.LiftSlope = lift / area; a.LiftSlope > leastSlope {
		a.ZeroLift = -basic / lift
	}
	same, opposite := l.farMatrix(1), l.farMatrix(-1)
	loadings := [2]loading{l.loadingOf(answers.lift[0], same), l.loadingOf(answers.lift[1], same)}
	for m := range motions {
		a.terms[m] = a.termsOf(l, answers.motion[m], opposite, loadings)
		for k := range answers.lift {
			cross := l.crossForces(answers.lift[k], m, span).plus(1, l.forcesOf(answers.skewLift[m][k]))
			a.terms[m].lift[k] = a.terms[m].lift[k].plus(1, a.coefficients(cross))
		}
	}
	for k := range answers.yawLift {
		a.terms[yawRate].lift[k] = a.terms[yawRate].lift[k].plus(1, a.coefficients(l.forcesOf(answers.yawLift[k])))
		turned := l.loadingOf(answers.yawLift[k], opposite)
		for j := range loadings {
			a.yawDrag[j][k] = l.dragYaw(loadings[j], turned) / float64(area*span)
		}
	}
	for i, c := range answers.controls {
		a.controls = append(a.controls, lateralControl{
			LateralControl{Surface: c.surface, Name: c.name, Role: c.role}, a.termsOf(l, answers.control[i], opposite, loadings),
		})
	}
}

// termsOf returns the coefficients of one lateral answer with the yaw of its induced drag under lift.
func (a *Lateral) termsOf(l *lattice, strength, far []float64, loadings [2]loading) lateralTerms {
	own := l.loadingOf(strength, far)
	terms := lateralTerms{linear: a.coefficients(l.forcesOf(strength))}
	for k := range loadings {
		inclined := l.inclinedForces(strength, k == 1)
		terms.lift[k] = a.coefficients(inclined.plus(1, lateralForces{yaw: l.dragYaw(loadings[k], own)}))
	}
	return terms
}

// coefficients divides forces by the reference area and moments by area times span.
func (a *Lateral) coefficients(f lateralForces) lateralForces {
	area, volume := a.Reference.Area, float64(a.Reference.Area*a.Reference.Span)
	return lateralForces{f.side / area, f.roll / volume, f.yaw / volume}
}

// finite reports whether every figure that leaves the package is a number.
func (a *Lateral) finite() bool {
	sum := a.LiftSlope + a.ZeroLift + a.spread
	for _, row := range a.yawDrag {
		sum += row[0] + row[1]
	}
	for _, t := range a.terms {
		sum += t.sum()
	}
	for _, c := range a.controls {
		sum += c.terms.sum()
	}
	return !math.IsNaN(sum) && !math.IsInf(sum, 0)
}

// sum adds all figures.
func (t lateralTerms) sum() float64 {
	f := t.linear.plus(1, t.lift[0]).plus(1, t.lift[1])
	return f.side + f.roll + f.yaw
}
