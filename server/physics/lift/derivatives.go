package lift

// IncidenceFor returns the incidence of the model's x axis at a lift coefficient, controls neutral, rad; 0 where nothing lifts.
func (a *Lateral) IncidenceFor(liftCoefficient float64) float64 {
	if !(a.LiftSlope > leastSlope) {
		return 0
	}
	return a.ZeroLift + liftCoefficient/a.LiftSlope
}

// At returns the derivatives in stability axes through the point (x, 0, z) at a lift coefficient.
//
// Formula: linear part of the lattice about the point, the sideslip arms of the rates shifted with it; roll and roll rate turned by the
// incidence a (L + a N, p + a r) for what acts sideways, its arms behind the point longer by a z; plus the parts that grow with lift: forces
// of the motion on the loading of the lift and of its moved wake, on the surface that sheds it and on all others; side force of the motion's
// loading on inclined legs; change of the lift's loading by the yaw rate, induced drag of either loading with the other.
// Valid for: attached flow. Left out: bodies, propellers, what the profile drag damps in yaw (ProfileYawDamping), the rolling up of wakes, and
// what grows with the square of the lift other than the drag in yaw rate: the forces of moved wakes on the loading of the lift itself, hence
// the yaw stiffness of a wing by its own wake (package stability, WingYaw) and that of a wing or tail by a wake from ahead.
// Source: vortex lattice; Etkin, Dynamics of Flight, for the axes.
func (a *Lateral) At(x, z, liftCoefficient float64) LateralDerivatives {
	incidence := a.IncidenceFor(liftCoefficient)
	var linear, all [motions]lateralForces
	for m := range motions {
		linear[m] = a.terms[m].linear.about(x/a.Reference.Span, z/a.Reference.Span)
		lift := a.terms[m].lift[1].plus(incidence, a.terms[m].lift[0])
		if m == yawRate {
			lift.yaw += a.yawRateDrag(incidence)
		}
		all[m] = linear[m].plus(1, lift.about(x/a.Reference.Span, z/a.Reference.Span))
	}
	for _, set := range []*[motions]lateralForces{&linear, &all} {
		beta := set[sideslip]
		set[rollRate] = set[rollRate].plus(-float64(2*z)/a.Reference.Span, beta)
		set[yawRate] = set[yawRate].plus(float64(2*x)/a.Reference.Span, beta)
	}
	all[rollRate] = all[rollRate].plus(incidence, linear[yawRate])
	all[yawRate] = all[yawRate].plus(float64(incidence*float64(2*z))/a.Reference.Span, linear[sideslip])
	for m := range motions {
		all[m].roll += float64(incidence * linear[m].yaw)
		all[m].yaw += float64(float64(incidence*linear[m].side)*z) / a.Reference.Span
	}
	return LateralDerivatives{
		all[sideslip].side, all[sideslip].roll, all[sideslip].yaw,
		all[rollRate].side, all[rollRate].roll, all[rollRate].yaw,
		all[yawRate].side, all[yawRate].roll, all[yawRate].yaw,
	}
}

// yawRateDrag returns the yaw damping that the induced drag of the turned loading adds at an incidence.
func (a *Lateral) yawRateDrag(incidence float64) float64 {
	square := float64(a.yawDrag[0][0] * float64(incidence*incidence))
	return square + float64((a.yawDrag[0][1]+a.yawDrag[1][0])*incidence) + a.yawDrag[1][1]
}

// Controls returns what each lateral control does about the point (x, 0, z) at a lift coefficient, in stability axes.
func (a *Lateral) Controls(x, z, liftCoefficient float64) []LateralControl {
	incidence := a.IncidenceFor(liftCoefficient)
	out := make([]LateralControl, len(a.controls))
	for i, c := range a.controls {
		linear := c.terms.linear.about(x/a.Reference.Span, z/a.Reference.Span)
		lift := c.terms.lift[1].plus(incidence, c.terms.lift[0])
		out[i] = c.LateralControl
		out[i].SideForce, out[i].Roll = linear.side, linear.roll+float64(incidence*linear.yaw)
		out[i].Yaw = linear.yaw + lift.yaw
	}
	return out
}

// ProfileYawDamping returns the part of the yaw damping (yawing moment per unit r b/(2 V)) that a profile drag of the wings adds.
//
// Formula: -8 cd/(S b^2) integral c y^2 dy over the half span; where cd profile-drag coefficient of the wings.
// Valid for: the same drag coefficient along the span.
// Source: strip integration, Etkin, Dynamics of Flight (from memory).
func (a *Lateral) ProfileYawDamping(profileDrag float64) float64 {
	return -float64(a.spread * profileDrag)
}

// wingSpread returns 8/(S b^2) integral c y^2 dy of the wings, half of it for strips without image.
func (l *lattice) wingSpread(r Reference) float64 {
	sum := 0.0
	for i := range l.strips {
		s := &l.strips[i]
		if s.stallsTheModel() {
			sum += float64(float64(4*s.sides()) * float64(float64(s.Chord*s.Width)*float64(s.middle.y*s.middle.y)))
		}
	}
	return sum / float64(r.Area*float64(r.Span*r.Span))
}
