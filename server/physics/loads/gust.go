package loads

// Gusts of regulations for full-size aeroplanes, m/s. At a model's wing loading they give load factors of about ten: a club declares its own.
//
// Source: 14 CFR 23.333(c) before 2017, 50 and 25 ft/s; CS-VLA 333.
const (
	RegulationTopGust  = 15.24
	RegulationDiveGust = 7.62
)

// MassRatio returns the mass ratio of an aeroplane, the mass of it over that of the air it disturbs.
//
// Formula: mu = 2 (M/S)/(rho c a); where M/S mass per wing area, kg/m2, rho density, kg/m3, c mean geometric chord, m, a lift slope of the aeroplane per rad.
// Valid for: positive input.
// Source: 14 CFR 23.341(c) before 2017.
func MassRatio(massPerArea, density, chord, liftSlope float64) float64 {
	return 2 * massPerArea / (density * chord * liftSlope)
}

// GustAlleviation returns the share of a sharp-edged gust that is felt: the aeroplane rises while the gust builds up.
//
// Formula: K = 0.88 mu/(5.3 + mu).
// Valid for: one-minus-cosine gusts of 25 chords, subsonic.
// Source: 14 CFR 23.341(c) before 2017; K. G. Pratt, NACA TN 2964.
func GustAlleviation(massRatio float64) float64 {
	return 0.88 * massRatio / (5.3 + massRatio)
}

// GustIncrement returns what an up-gust adds to the load factor; as much is taken off by a down-gust.
//
// Formula: dn = rho V a K U/(2 W/S); where V speed and U gust, m/s, W/S weight per wing area, N/m2, K alleviation.
// Valid for: attached flow. V, U and rho together: true speeds with the day's density, or equivalent speeds with 1.225 kg/m3 as the regulations write it.
// Source: CS-VLA 341; 14 CFR 23.341(c) before 2017, whose 498 rounds the units by 0.1 %.
func GustIncrement(density, speed, liftSlope, alleviation, gust, weightPerArea float64) float64 {
	return float64(density*speed*liftSlope) * float64(alleviation*gust) / (2 * weightPerArea)
}

// Aircraft is what the load factors of a model depend on.
type Aircraft struct {
	Mass        float64 // kg
	Area        float64 // of the wing, m2
	Chord       float64 // mean geometric: area over span, m
	LiftSlope   float64 // of the model, per rad
	MaximumLift float64 // greatest lift coefficient of the model
	MinimumLift float64 // least, negative; 0 when unknown, then 0.6 of the greatest is taken inverted
	Density     float64 // of the air, kg/m3
}

// InvertedShare is the part of its greatest lift coefficient that a cambered wing reaches upside down.
//
// Source: judgement; 0.5 to 0.8 in textbooks, 1 for a symmetrical section.
const InvertedShare = 0.6

func (a Aircraft) check() error {
	err := checkPositive(named{"mass", a.Mass}, named{"area", a.Area}, named{"chord", a.Chord}, named{"liftSlope", a.LiftSlope},
		named{"maximumLift", a.MaximumLift}, named{"density", a.Density})
	if err != nil {
		return err
	}
	return checkNotNegative(named{"-minimumLift", -a.MinimumLift})
}

// weightPerArea returns the wing loading, N/m2.
func (a Aircraft) weightPerArea() float64 { return a.Mass * StandardGravity / a.Area }

// alleviation returns GustAlleviation of this model.
func (a Aircraft) alleviation() float64 {
	return GustAlleviation(MassRatio(a.Mass/a.Area, a.Density, a.Chord, a.LiftSlope))
}

// GustIncrement returns what an up-gust (true, m/s) adds to the load factor at a true speed (m/s). Errors name the impossible field.
//
// Formula, validity, source: GustIncrement, GustAlleviation and MassRatio.
func (a Aircraft) GustIncrement(speed, gust float64) (float64, error) {
	if err := a.check(); err != nil {
		return 0, err
	}
	if err := checkNotNegative(named{"speed", speed}, named{"gust", gust}); err != nil {
		return 0, err
	}
	increment := a.increment(speed, gust)
	return increment, checkResult(increment)
}

func (a Aircraft) increment(speed, gust float64) float64 {
	return GustIncrement(a.Density, speed, a.LiftSlope, a.alleviation(), gust, a.weightPerArea())
}

// GustSpeed returns the true speed at which an up-gust takes level flight to a load factor, m/s; false when the load factor is not above 1 or there is no
// gust. Errors name the impossible field.
//
// Formula: V = 2 (n - 1) (W/S)/(rho a K U).
// Valid for: as GustIncrement.
// Source: GustIncrement solved for V.
func (a Aircraft) GustSpeed(loadFactor, gust float64) (float64, bool, error) {
	perSpeed, err := a.GustIncrement(1, gust)
	if err != nil {
		return 0, false, err
	}
	if err := checkFinite(named{"loadFactor", loadFactor}); err != nil {
		return 0, false, err
	}
	speed := (loadFactor - 1) / perSpeed
	if !(loadFactor > 1) || !(perSpeed > 0) || !finite(speed) {
		return 0, false, nil
	}
	return speed, true, nil
}
