package motion

// bungeeForce returns the pull of the cord at a travel from full stretch, N, not below zero.
//
//	F = eta f(x0 - s)
//
// where eta is the share of energy that comes back, f the force at a stretch, x0 the stretch at release and s the travel (m).
// Valid for: the stretch of the pull test; the moving cord counts as a third of its mass. Source: Hooke's law, or the pull test.
func (l *Launch) bungeeForce(travel float64) float64 {
	return max(0, float64(l.Efficiency*l.cordForce(l.Stretch-travel)))
}

// cordForce returns the force of the cord at a stretch (m), N: linear, or straight between the points of the pull test.
func (l *Launch) cordForce(stretch float64) float64 {
	if len(l.PullTest) == 0 {
		return float64(l.Stiffness * stretch)
	}
	if first := l.PullTest[0]; stretch < first.Travel {
		return float64(first.Force * max(stretch, 0) / first.Travel)
	}
	return forceAlong(l.PullTest, stretch)
}

// hookTravel returns the travel from full stretch at which the pull has fallen to the hook's force, m: where the cord is slack when it has
// none, at once when the pull never exceeds it.
func (l *Launch) hookTravel() float64 {
	if !(l.HookForce > 0) {
		return l.Stretch
	}
	low, high := 0.0, l.Stretch
	if l.bungeeForce(0) <= l.HookForce {
		return 0
	}
	for range 100 {
		mid := low + float64((high-low)/2)
		if mid <= low || mid >= high {
			break
		}
		if l.bungeeForce(mid) > l.HookForce {
			low = mid
		} else {
			high = mid
		}
	}
	return high
}

// StoredEnergy returns the energy that the stretched cord gives back, J: the area under its force by stretch, times the efficiency.
//
//	E = eta integral of f(x) from 0 to x0
//
// Valid for: the stretch of the pull test. Source: work of a force.
func (l Launch) StoredEnergy() float64 {
	l = l.withDefaults()
	places := []float64{0}
	for _, p := range l.PullTest {
		if p.Travel > 0 && p.Travel < l.Stretch {
			places = append(places, p.Travel)
		}
	}
	places = append(places, l.Stretch)
	energy := 0.0
	for i := 1; i < len(places); i++ {
		mean := (l.cordForce(places[i-1]) + l.cordForce(places[i])) / 2
		energy += float64(mean * (places[i] - places[i-1]))
	}
	return l.Efficiency * energy
}

// stroke returns the travel at which the launcher lets go, m; zero for methods without a launcher.
func (l *Launch) stroke() float64 {
	switch l.Method {
	case Ramp:
		return l.Length
	case Bungee:
		return l.hookTravel()
	case Catapult:
		return l.Forces[len(l.Forces)-1].Travel
	case Wheels, Hand:
	}
	return 0
}

// holdTime returns the time on the thrust curve at which the thrust in the standing wind reaches the release force, s, and whether it does
// within a minute.
//
// Valid for: thrust that only grows with time. Source: root by bisection.
func (r *run) holdTime() (float64, bool) {
	l := r.launch
	wind := max(0, r.airspeed(State{}))
	enough := func(t float64) bool { return r.model.thrust(wind, t) >= l.ReleaseForce }
	low, high := l.ThrustTime, l.ThrustTime+longestTime
	if enough(low) {
		return low, true
	}
	if !enough(high) {
		return high, false
	}
	for high-low > 1e-9 {
		mid := low + float64((high-low)/2)
		if enough(mid) {
			high = mid
		} else {
			low = mid
		}
	}
	return high, true
}
