package radio

import (
	"math"

	"pitgate/server/physics/elementary"
)

// Shape of the search over attitudes.
const (
	directionCount  = 256 // directions to the transmitter, spread evenly over half the sphere: the other half loses the same
	fieldCount      = 12  // directions of the field across each
	lossStep        = 0.5 // dB
	lossSteps       = 101 // up to NullFloor and ShadingMost together
	goldenTurnRatio = 0.6180339887498949
)

// Attitudes is how much the best antenna of a model loses over all attitudes, each as likely as any other.
type Attitudes struct {
	below [lossSteps + 1]int // how many attitudes lose at most i steps
	total int
	worst float64
}

// Mounted is an antenna with what it has lost already.
type Mounted struct {
	Axis Vector
	Loss float64 // dB, what shades it in every attitude
	// Short says that the wire is below a tenth of a wavelength; otherwise it is half a wavelength long.
	Short bool
}

// OverAttitudes returns the losses of the best of several antennas over all attitudes against one linear field, shading included.
//
//	loss = min over antennas of -20 log10(F(t) |e . a'|) + shading, never deeper than NullFloor below the antenna's own peak
//
// where F is the half-wave pattern over the sine, e the field and a' the axis across the path. Valid for: receivers that take the better antenna; no
// antennas give the floor everywhere. Source: HalfWavePattern, Malus' law; directions by a golden spiral.
func OverAttitudes(antennas []Mounted) Attitudes {
	out := Attitudes{}
	shapes := make([]mountedShape, len(antennas))
	for i, a := range antennas {
		shapes[i] = mountedShape{axis: a.Axis.unit(), power: Ratio(-clamp(a.Loss, 0, ShadingMost)), short: a.Short, factor: 1}
	}
	least := 1.0
	for i := range views {
		least = math.Min(least, out.count(shapes, &views[i]))
	}
	out.worst = -Decibels(least)
	for i := 1; i <= lossSteps; i++ {
		out.below[i] += out.below[i-1]
	}
	return out
}

// mountedShape is an antenna prepared for the search.
type mountedShape struct {
	axis   Vector
	power  float64 // ratio left by shading
	short  bool
	factor float64 // shape toward the present direction, 1 for a short wire
}

// count adds every field of a direction and returns the least ratio of powers met.
func (a *Attitudes) count(shapes []mountedShape, v *view) float64 {
	for i := range shapes {
		if !shapes[i].short {
			shapes[i].factor = halfWaveShape(shapes[i].axis.dot(v.direction))
		}
	}
	least := 1.0
	for k := range v.fields {
		best := bestRatio(shapes, v.fields[k])
		least = math.Min(least, best)
		a.total++
		a.add(best)
	}
	return least
}

// bestRatio returns the ratio of powers of the best antenna in a field; no antenna leaves the floor.
func bestRatio(shapes []mountedShape, field Vector) float64 {
	best := 0.0
	for i := range shapes {
		s := &shapes[i]
		ratio := math.Max(square(s.factor*s.axis.dot(field)), nullFloorRatio)
		best = math.Max(best, s.power*ratio)
	}
	if len(shapes) == 0 {
		return nullFloorRatio
	}
	return best
}

// nullFloorRatio is NullFloor as a ratio of powers: 10^(-20/10).
const nullFloorRatio = 0.01

// add counts a ratio at the first threshold it stays above.
func (a *Attitudes) add(ratio float64) {
	low, high := 0, lossSteps
	for low < high {
		if middle := (low + high) / 2; ratio >= lossThresholds[middle] {
			high = middle
		} else {
			low = middle + 1
		}
	}
	a.below[low]++
}

// lossThresholds are the ratios of powers of every step of loss.
var lossThresholds = func() (out [lossSteps + 1]float64) {
	for i := range out {
		out[i] = Ratio(-float64(i) * lossStep)
	}
	return out
}()

// view is a direction to the transmitter with the fields across it.
type view struct {
	direction Vector
	fields    [fieldCount]Vector
}

// views are the attitudes searched, the same in every run.
var views = func() (out [directionCount]view) {
	for i := range out {
		direction := spiral(i)
		first := across(direction)
		second := direction.cross(first)
		out[i].direction = direction
		for k := range out[i].fields {
			out[i].fields[k] = fieldOf(first, second, k)
		}
	}
	return out
}()

// spiral returns a direction of the golden spiral.
func spiral(i int) Vector {
	z := 1 - float64((float64(i)+0.5)/directionCount)
	ring := math.Sqrt(1 - square(z))
	turn := float64(float64(i) * goldenTurnRatio)
	angle := 2 * math.Pi * (turn - math.Floor(turn))
	return Vector{float64(ring * elementary.Cos(angle)), float64(ring * elementary.Sin(angle)), z}
}

// across returns a direction at right angles to another.
func across(direction Vector) Vector {
	helper := Vector{Z: 1}
	if math.Abs(direction.Z) > 0.9 {
		helper = Vector{X: 1}
	}
	return direction.cross(helper).unit()
}

// fieldOf returns a field across the path, one of fieldCount evenly spread over half a turn.
func fieldOf(first, second Vector, k int) Vector {
	angle := math.Pi * (float64(k) + 0.5) / fieldCount
	c, s := elementary.Cos(angle), elementary.Sin(angle)
	return Vector{float64(c*first.X) + float64(s*second.X), float64(c*first.Y) + float64(s*second.Y), float64(c*first.Z) + float64(s*second.Z)}
}

// ShareDeeper returns the share of attitudes that lose more than a number of dB (0 to 50), 0 to 1, linear between half decibels.
//
// One wire alone loses more than 10 dB in about one attitude in three, two at right angles in one in fifteen. Valid for: as OverAttitudes.
func (a *Attitudes) ShareDeeper(loss float64) float64 {
	if a.total == 0 {
		return 1
	}
	x := clamp(loss/lossStep, 0, float64(lossSteps))
	i := min(int(x), lossSteps-1)
	part := x - float64(i)
	kept := float64(float64(a.below[i])*(1-part)) + float64(float64(a.below[i+1])*part)
	return 1 - kept/float64(a.total)
}

// Exceeded returns the loss that a share of attitudes (0 to 1) exceeds, dB, to half a decibel, the greater side; the worst when none is so rare.
func (a *Attitudes) Exceeded(share float64) float64 {
	for i := range lossSteps + 1 {
		if a.total > 0 && 1-float64(a.below[i])/float64(a.total) <= share {
			return math.Min(float64(i)*lossStep, a.worst)
		}
	}
	return a.worst
}

// Worst returns the loss in the worst attitude found, dB.
func (a *Attitudes) Worst() float64 { return a.worst }
