package loads

import "math"

// Load factors that regulations ask of full-size light aeroplanes; a model is flown harder.
//
// Source: CS-VLA 337 (from memory); 14 CFR 23.337 asks 3.8 to 6.
const (
	RegulationPositive = 3.8
	RegulationNegative = -1.5
)

// DiveRatio is the least design dive speed over the greatest level speed.
//
// Source: 14 CFR 23.335(b) before 2017, 1.25 of the design cruising speed.
const DiveRatio = 1.25

// Limits are what the diagram is drawn for.
type Limits struct {
	Positive  float64 // limit load factor, above 1
	Negative  float64 // limit load factor upside down, 0 or below
	TopSpeed  float64 // greatest level, true, m/s: the regulations' design cruising speed
	DiveSpeed float64 // true, m/s; 0 for DiveRatio times the top speed
	TopGust   float64 // m/s, up to the top speed
	DiveGust  float64 // m/s, at the dive speed; between the two the gust falls evenly
}

func (l Limits) check() error {
	err := checkPositive(named{"positive limit less 1", l.Positive - 1}, named{"topSpeed", l.TopSpeed})
	if err != nil {
		return err
	}
	return checkNotNegative(named{"-negative limit", -l.Negative}, named{"diveSpeed", l.DiveSpeed}, named{"topGust", l.TopGust}, named{"diveGust", l.DiveGust})
}

// Names of the corners of a diagram.
const (
	CornerStall              = "stall"
	CornerManoeuvring        = "manoeuvring"
	CornerTop                = "limit at top speed"
	CornerDive               = "limit at dive speed"
	CornerInvertedStall      = "inverted stall"
	CornerInverted           = "inverted manoeuvring"
	CornerInvertedTop        = "inverted limit at top speed"
	CornerInvertedDive       = "inverted limit at dive speed"
	CornerUpGustTop          = "up-gust at top speed"
	CornerDownGustTop        = "down-gust at top speed"
	CornerUpGustDive         = "up-gust at dive speed"
	CornerDownGustDive       = "down-gust at dive speed"
	CornerUpGustManoeuvring  = "up-gust at manoeuvring speed"
	CornerDownGustManoeuvred = "down-gust at manoeuvring speed"
)

// Corner is a point of the diagram.
type Corner struct {
	Name       string
	Speed      float64 // true, m/s
	LoadFactor float64
}

// Bounds are the load factors at a speed.
type Bounds struct {
	Stall, InvertedStall   float64 // what the wing's greatest and least lift give
	Upper, Lower           float64 // manoeuvres: the stall lines cut off at the limits
	UpGust, DownGust       float64 // level flight in the design gust, as the regulations draw it: not cut off by the stall
	Greatest, Least        float64 // of manoeuvre and gust together, no more than the wing can lift
	GustBeyondLimit        bool    // the gust goes beyond a limit load factor, cut off at the stall
	StallsBeforeDesignGust bool    // the wing stalls before the gust is felt in full
}

// Diagram is the manoeuvre and gust diagram of a model.
type Diagram struct {
	// StallSpeed at a load factor of 1, ManoeuvringSpeed where the stall line meets the positive limit: below it full pitch control stalls the wing before it
	// overloads it; InvertedSpeed likewise upside down (0 for a negative limit of 0). All true, m/s.
	StallSpeed, ManoeuvringSpeed, InvertedSpeed float64
	TopSpeed, DiveSpeed                         float64
	// Corners in the order of their names; those of gusts as the regulations draw them.
	Corners []Corner
	// Greatest and Least are reached anywhere up to the dive speed, no more than the wing can lift.
	Greatest, Least Corner

	aircraft Aircraft
	limits   Limits
}

// Diagram returns the manoeuvre and gust diagram. Errors name the impossible field.
//
// Formula: stall lines n = rho V^2 S CL/(2 W); limits; gust lines 1 + dn and 1 - dn; the negative limit falls evenly to 0 at the dive speed.
// Valid for: subsonic speed, lift along the weight. A gust that is met within a few chords can lift more than the wing's steady maximum, briefly.
// Source: 14 CFR 23.333 to 23.341 before 2017; CS-VLA 333 to 341.
func (a Aircraft) Diagram(l Limits) (Diagram, error) {
	if err := a.check(); err != nil {
		return Diagram{}, err
	}
	if err := l.check(); err != nil {
		return Diagram{}, err
	}
	if l.DiveSpeed == 0 {
		l.DiveSpeed = l.TopSpeed * DiveRatio
	}
	if a.MinimumLift == 0 {
		a.MinimumLift = -InvertedShare * a.MaximumLift
	}
	if err := checkNotNegative(named{"diveSpeed less topSpeed", l.DiveSpeed - l.TopSpeed}); err != nil {
		return Diagram{}, err
	}
	stall := math.Sqrt(2 * a.weightPerArea() / (a.Density * a.MaximumLift))
	d := Diagram{
		StallSpeed: stall, ManoeuvringSpeed: stall * math.Sqrt(l.Positive), TopSpeed: l.TopSpeed, DiveSpeed: l.DiveSpeed, aircraft: a, limits: l,
		InvertedSpeed: math.Sqrt(2 * a.weightPerArea() * -l.Negative / (a.Density * -a.MinimumLift)),
	}
	d.setCorners()
	d.setExtremes()
	for _, corner := range d.Corners {
		if err := checkResult(corner.Speed, corner.LoadFactor); err != nil {
			return Diagram{}, err
		}
	}
	return d, checkResult(d.StallSpeed, d.ManoeuvringSpeed, d.InvertedSpeed, d.Greatest.LoadFactor, d.Least.LoadFactor)
}

// setCorners lists the corners.
func (d *Diagram) setCorners() {
	l, inverted := d.limits, math.Sqrt(2*d.aircraft.weightPerArea()/(d.aircraft.Density*-d.aircraft.MinimumLift))
	top, dive, manoeuvring := d.At(l.TopSpeed), d.At(l.DiveSpeed), d.At(d.ManoeuvringSpeed)
	d.Corners = []Corner{
		{CornerStall, d.StallSpeed, 1}, {CornerManoeuvring, d.ManoeuvringSpeed, l.Positive}, {CornerTop, l.TopSpeed, top.Upper},
		{CornerDive, l.DiveSpeed, dive.Upper}, {CornerInvertedStall, inverted, -1}, {CornerInverted, d.InvertedSpeed, l.Negative},
		{CornerInvertedTop, l.TopSpeed, top.Lower}, {CornerInvertedDive, l.DiveSpeed, dive.Lower},
		{CornerUpGustTop, l.TopSpeed, top.UpGust}, {CornerDownGustTop, l.TopSpeed, top.DownGust},
		{CornerUpGustDive, l.DiveSpeed, dive.UpGust}, {CornerDownGustDive, l.DiveSpeed, dive.DownGust},
		{CornerUpGustManoeuvring, d.ManoeuvringSpeed, manoeuvring.UpGust}, {CornerDownGustManoeuvred, d.ManoeuvringSpeed, manoeuvring.DownGust},
	}
}

// setExtremes finds the greatest and least load factor on a fine grid of speeds up to the dive speed that holds every corner within it.
func (d *Diagram) setExtremes() {
	const steps = 100
	for i := 1; i <= steps; i++ {
		d.widen(d.DiveSpeed * float64(i) / steps)
	}
	for _, corner := range d.Corners {
		if corner.Speed <= d.DiveSpeed {
			d.widen(corner.Speed)
		}
	}
}

// widen takes the bounds at a speed into the extremes.
func (d *Diagram) widen(speed float64) {
	b := d.At(speed)
	if b.Greatest > d.Greatest.LoadFactor {
		d.Greatest = Corner{d.nameOf(b.Greatest > b.Upper, CornerUpGustTop, CornerManoeuvring), speed, b.Greatest}
	}
	if b.Least < d.Least.LoadFactor {
		d.Least = Corner{d.nameOf(b.Least < b.Lower, CornerDownGustTop, CornerInverted), speed, b.Least}
	}
}

func (d *Diagram) nameOf(gust bool, ofGust, ofManoeuvre string) string {
	if gust {
		return ofGust
	}
	return ofManoeuvre
}

// At returns the load factors at a true speed, m/s; beyond the dive speed those of the dive speed's limits and gust with the stall lines of the speed itself.
func (d *Diagram) At(speed float64) Bounds {
	pressure := float64(0.5*d.aircraft.Density*speed*speed) / d.aircraft.weightPerArea()
	b := Bounds{Stall: pressure * d.aircraft.MaximumLift, InvertedStall: pressure * d.aircraft.MinimumLift}
	b.Upper = min(b.Stall, d.limits.Positive)
	b.Lower = max(b.InvertedStall, d.limits.Negative*(1-d.beyondTop(speed)))
	increment := d.aircraft.increment(speed, d.gustAt(speed))
	b.UpGust, b.DownGust = 1+increment, 1-increment
	gustUp, gustDown := min(b.UpGust, b.Stall), max(b.DownGust, b.InvertedStall)
	b.Greatest, b.Least = max(b.Upper, gustUp), min(b.Lower, gustDown)
	b.GustBeyondLimit = gustUp > d.limits.Positive || gustDown < d.limits.Negative
	b.StallsBeforeDesignGust = b.UpGust > b.Stall
	return b
}

// beyondTop returns how far between the top and the dive speed a speed lies, 0 to 1.
func (d *Diagram) beyondTop(speed float64) float64 {
	if !(d.limits.DiveSpeed > d.limits.TopSpeed) || !(speed > d.limits.TopSpeed) {
		return 0
	}
	return min(1, (speed-d.limits.TopSpeed)/(d.limits.DiveSpeed-d.limits.TopSpeed))
}

// gustAt returns the design gust at a speed, m/s.
func (d *Diagram) gustAt(speed float64) float64 {
	return d.limits.TopGust + float64((d.limits.DiveGust-d.limits.TopGust)*d.beyondTop(speed))
}
