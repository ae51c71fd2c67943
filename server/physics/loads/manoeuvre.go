package loads

import (
	"math"

	"pitgate/server/physics/elementary"
)

// TurnLoad returns the load factor of a level turn; 0 for a bank of a quarter turn or more, which no level turn has.
//
// Formula: n = 1/cos(bank).
// Valid for: steady turns without sideslip.
// Source: equilibrium of forces; any text on flight mechanics.
func TurnLoad(bank float64) float64 {
	c := elementary.Cos(bank)
	if !(math.Abs(bank) < math.Pi/2) || !(c > 0) {
		return 0
	}
	return 1 / c
}

// PullUpRadius returns the radius of the path at the bottom of a dive, m; 0 for a load factor of 1 or less, which does not curve it upwards.
//
// Formula: R = V^2/(g (n - 1)); where V true speed, m/s.
// Valid for: the lowest point; higher up the weight helps less or more.
// Source: Megson, Aircraft Structures for Engineering Students, Eq. 13.16; Anderson, Aircraft Performance and Design, Eq. 6.41.
func PullUpRadius(speed, loadFactor float64) float64 {
	if !(loadFactor > 1) {
		return 0
	}
	return float64(speed*speed) / (StandardGravity * (loadFactor - 1))
}

// PullUpLoad returns the load factor at the bottom of a dive of a radius (m) at a true speed (m/s); 0 without a radius.
//
// Formula: n = 1 + V^2/(g R).
// Valid for, source: PullUpRadius.
func PullUpLoad(speed, radius float64) float64 {
	if !(radius > 0) {
		return 0
	}
	return 1 + float64(speed*speed)/(StandardGravity*radius)
}

// PullUpSpeed returns the true speed at which a pull-up of a radius (m) takes the load factor, m/s; 0 when the load factor does not exceed 1.
//
// Formula: V = sqrt(g R (n - 1)).
// Valid for, source: PullUpRadius.
func PullUpSpeed(radius, loadFactor float64) float64 {
	if !(loadFactor > 1) || !(radius > 0) {
		return 0
	}
	return math.Sqrt(StandardGravity * radius * (loadFactor - 1))
}

// Turn is one turn of a circuit.
type Turn struct {
	Bank  float64 // rad
	Speed float64 // true, m/s
}

// Use is a load factor that is used and where.
type Use struct {
	Turn       int     // index of the turn; -1 for straight flight
	LoadFactor float64 // with the gust
	Gust       float64 // the gust's part of it
	Speed      float64 // m/s
}

// CircuitLoad returns the greatest load factor of a circuit: of each turn that of the bank and of an up-gust (m/s) met in it, and of straight flight at
// the speed cruise (m/s) in the same gust. It is not held below the stall: see Diagram.At. Errors name the impossible field.
//
// Formula: n = 1/cos(bank) + dn.
// Valid for: banks below a quarter turn; the gust acts along the lift.
// Source: TurnLoad and GustIncrement added, which is the cautious choice for a gust that meets a banked wing.
func CircuitLoad(a Aircraft, cruise float64, turns []Turn, gust float64) (Use, error) {
	increment, err := a.GustIncrement(cruise, gust)
	if err != nil {
		return Use{}, err
	}
	greatest := Use{Turn: -1, LoadFactor: 1 + increment, Gust: increment, Speed: cruise}
	for i, turn := range turns {
		n := TurnLoad(turn.Bank)
		err := checkPositive(named{"turns load factor", n}, named{"turns speed", turn.Speed})
		if err != nil {
			return Use{}, err
		}
		increment := a.increment(turn.Speed, gust)
		if n+increment > greatest.LoadFactor {
			greatest = Use{Turn: i, LoadFactor: n + increment, Gust: increment, Speed: turn.Speed}
		}
	}
	return greatest, checkResult(greatest.LoadFactor)
}
