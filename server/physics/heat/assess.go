package heat

import "fmt"

// Part is a part that the exhaust may heat.
type Part struct {
	Name     string
	Material string // words; Named reads them
	// Behind is the distance behind the nozzle along the thrust line, m; below or at 0 the part lies beside the tailpipe.
	Behind float64
	// From is the distance from the thrust line behind the nozzle, and from the tailpipe's wall beside it, m.
	From float64
	Foil bool // foil shield on the face towards the heat
	// Measured is the highest temperature seen in a static run, K; 0: not measured. It replaces the computation.
	Measured float64
	// MeasuredAir is the air temperature of that run, K; 0: that of the day. The part is told as much warmer as the day is.
	MeasuredAir float64
}

// Run is the exhaust and the air of the sizing case: standing at full power.
type Run struct {
	Exhaust Exhaust
	Air     Air
	// Pipe is the temperature of the tailpipe's wall, K; 0: that of the gas, an upper bound.
	// A double-walled pipe has a far cooler wall: measure it.
	Pipe float64
}

// Cause is what makes a part hot.
type Cause string

// Causes.
const (
	ByPlume     Cause = "plume"
	ByRadiation Cause = "radiation of the tailpipe"
	BySoakBack  Cause = "heat that soaks through after shut-down"
	ByMeasured  Cause = "measured in a static run"
)

// Verdict says where a part stands.
type Verdict int

// Verdicts, best first.
const (
	Cool      Verdict = iota // the conservative temperature is under the limit
	Uncertain                // only the best temperature is: measure it
	Hot                      // also the best temperature is above
)

// Answer is how hot a part becomes.
type Answer struct {
	Part     Part
	Material Material
	Known    bool    // false when the material's name says nothing: the weakest common limit was taken
	Best     float64 // K
	Worst    float64 // conservative temperature, K; equal to Best when measured
	Flux     float64 // radiation on the part at the temperature of the air, W/m2; 0 in the plume
	Cause    Cause   // BySoakBack: the part is hottest after shut-down by the best answer
	Margin   float64 // limit less Worst, K
	Verdict  Verdict
	Soak     Soak // beside the pipe only
	// Warming is the least time from full power until a thin skin (1 mm of laminate) reaches its limit by the conservative answer, s; an hour
	// where it never does, 0 for a measured part.
	Warming float64
	Fixes   []Fix
}

// Assess returns how hot each part becomes in the sizing case, in the order given. Impossible input is an error that names the field.
func Assess(run Run, parts []Part) ([]Answer, error) {
	best, worst, err := run.plumes()
	if err != nil {
		return nil, err
	}
	out := make([]Answer, len(parts))
	for i := range parts {
		if err := parts[i].check(fmt.Sprintf("parts[%d].", i)); err != nil {
			return nil, err
		}
		out[i] = run.answer(parts[i], best, worst)
		out[i].Fixes = run.fixes(&out[i], worst)
	}
	return out, nil
}

// plumes returns the best and the conservative plume.
func (r Run) plumes() (best, worst Plume, err error) {
	if best, err = NewPlume(r.Exhaust, r.Air, Best); err != nil {
		return best, worst, err
	}
	if r.Pipe != 0 {
		if err = checkWithin("pipe", r.Pipe, coldestAir, hottestGas); err != nil {
			return best, worst, err
		}
	}
	worst, err = NewPlume(r.Exhaust, r.Air, Conservative)
	return best, worst, err
}

// check names the first impossible field.
func (p Part) check(prefix string) error {
	for _, err := range []error{
		checkWithin(prefix+"behind", p.Behind, -20, 100), checkWithin(prefix+"from", p.From, 0, 100),
	} {
		if err != nil {
			return err
		}
	}
	if p.Measured != 0 {
		if err := checkWithin(prefix+"measured", p.Measured, coldestAir, hottestGas); err != nil {
			return err
		}
	}
	if p.MeasuredAir != 0 {
		return checkWithin(prefix+"measuredAir", p.MeasuredAir, coldestAir, hottestAir)
	}
	return nil
}

// answer returns how hot one part becomes.
func (r Run) answer(part Part, best, worst Plume) Answer {
	a := Answer{Part: part}
	a.Material, a.Known = Named(part.Material)
	switch {
	case part.Measured > 0:
		a.Best = part.Measured
		if part.MeasuredAir > 0 {
			a.Best += r.Air.Temperature - part.MeasuredAir
		}
		a.Worst, a.Cause = a.Best, ByMeasured
	case part.Behind > 0:
		a.Best, a.Worst, a.Cause = best.Temperature(part.Behind, part.From), worst.Temperature(part.Behind, part.From), ByPlume
	default:
		r.beside(&a)
	}
	a.Margin = a.Material.Service - a.Worst
	a.Warming = r.warming(&a, worst)
	a.Verdict = a.verdict()
	return a
}

// warmingLength is the length of skin that the stream of a plume heats, m.
const warmingLength = 0.1

// warming returns the least time until a thin skin reaches its limit: in the plume heated as a plate in turbulent flow, beside the pipe by
// the flux on a skin still as cold as the air.
func (r Run) warming(a *Answer, worst Plume) float64 {
	limit := a.Material.Service
	switch {
	case a.Cause == ByMeasured:
		return 0
	case a.Part.Behind > 0:
		film := (a.Worst + r.Air.Temperature) / 2
		speed := max(0.1, worst.AxisSpeed(a.Part.Behind))
		h := PlateCoefficient(speed, warmingLength, film, r.Air.pressure(), true)
		return WarmTime(skinStore, h, a.Worst, r.Air.Temperature, limit)
	case a.Worst <= limit || !(a.Flux > 0):
		return longestWarming
	}
	return min(longestWarming, skinStore*max(0, limit-r.Air.Temperature)/a.Flux)
}

// beside fills in the temperatures of a part beside the pipe: best in the open with the air that a run draws along it, and after shut-down
// without; conservative in a tunnel in still air for ever, which what soaks through never exceeds.
func (r Run) beside(a *Answer) {
	skin := r.skin(a.Part)
	drawn := skin
	drawn.Open, drawn.Inner, drawn.Outer = true, drawnCoefficient, drawnCoefficient
	a.Flux = skin.Gained(skin.Air)
	a.Best, a.Worst, a.Cause = drawn.Temperature(), skin.Temperature(), ByRadiation
	a.Soak = drawn.SoakBack(a.Best)
	if a.Soak.Peak > a.Best {
		a.Best, a.Cause = a.Soak.Peak, BySoakBack
	}
}

// drawnCoefficient is the heat transfer of the air that intake and jet draw along a skin in a run, W/(m2 K) (common practice, 20 to 30).
const drawnCoefficient = 25.0

// skin returns the skin of a part beside the pipe.
func (r Run) skin(part Part) Skin {
	pipe := r.Pipe
	if pipe == 0 {
		pipe = max(r.Exhaust.Temperature, r.Air.Temperature)
	}
	return Skin{Pipe: pipe, Radius: r.Exhaust.Diameter / 2, Gap: part.From, Air: r.Air.Temperature, Foil: part.Foil}
}

// verdict compares with the limit.
func (a *Answer) verdict() Verdict {
	switch {
	case a.Worst <= a.Material.Service:
		return Cool
	case a.Best <= a.Material.Service:
		return Uncertain
	}
	return Hot
}
