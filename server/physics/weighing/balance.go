package weighing

// part is one mass on one axis.
type part struct {
	mass, massSpread   float64
	place, placeSpread float64
}

// balance returns where masses balance on one axis, and the covariance of that place with the total mass.
//
//	x = sum(m_i x_i) / M,  M = sum(m_i)
//	u(x)^2 = sum(((x_i - x)/M)^2 u(m_i)^2 + (m_i/M)^2 u(x_i)^2)
//	u(M, x) = sum((x_i - x)/M u(m_i)^2)
//
// where m_i are the masses (kg), x_i their places (m), and u one standard deviation of each.
// Valid for: errors that are independent of each other; places and masses that are off by little.
// Source: JCGM 100:2008, 5.1.2 (equation 10) and H.2.3 (covariance of results from the same readings).
func balance(parts []part) (Estimate, float64) {
	mass, x := center(parts)
	variance, covariance := 0.0, 0.0
	for _, p := range parts {
		arm := (p.place - x) / mass
		variance += square(arm*p.massSpread) + square(p.mass/mass*p.placeSpread)
		covariance += float64(arm * square(p.massSpread))
	}
	return known(x, variance), covariance
}

// center returns the total of masses and where they balance.
func center(parts []part) (mass, x float64) {
	moment := 0.0
	for _, p := range parts {
		mass += p.mass
		moment += float64(p.mass * p.place)
	}
	return mass, moment / mass
}

// total returns the sum of masses with its spread.
//
//	u(M)^2 = sum(u(m_i)^2)
//
// Valid for: errors that are independent of each other. Source: JCGM 100:2008, 5.1.2.
func total(parts []part) Estimate {
	mass, variance := 0.0, 0.0
	for _, p := range parts {
		mass += p.mass
		variance += square(p.massSpread)
	}
	return known(mass, variance)
}
