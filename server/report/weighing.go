package report

import (
	"fmt"
	"math"

	"pitgate/server/physics/assess"
	"pitgate/server/physics/weighing"
)

// Tilted is a second weighing of the same model, nose up or down.
type Tilted struct {
	// Readings in the order of the level weighing.
	Readings []weighing.Reading
	// Angle nose-up and its spread, rad.
	Angle, Spread float64
}

// defaultMassDifference is the largest share by which weighed mass and list may differ where the limits give none.
const defaultMassDifference = 0.03

// NewWeighing works a weigh-in out: the model's mass from the input, neutral point, chord and window from the report computed from it.
// Its error is a *weighing.FieldError for a mass, place or tank that cannot be, or says what is wrong with the tilted weighing.
func NewWeighing(in assess.Input, computed assess.Report, tilted *Tilted) (Weighing, error) {
	w := Weighing{CoreVersion: computed.CoreVersion, InputDigest: computed.InputDigest, Cautions: computed.Cautions}
	b := bench{Weighing: &w, model: &assess.ModelDescription{}, report: &computed, limits: in.Limits}
	if in.Model != nil {
		b.model = in.Model
	}
	if b.model.Mass != nil {
		b.mass = b.model.Mass
	} else {
		b.mass = &assess.MassProperties{}
	}
	for _, step := range []func() error{b.scales, b.list, b.compare, b.travel, b.correct} {
		if err := step(); err != nil {
			return Weighing{}, err
		}
	}
	if err := b.height(tilted); err != nil {
		return Weighing{}, err
	}
	b.conclude()
	return w, nil
}

// bench is what the steps of a weigh-in share.
type bench struct {
	*Weighing
	model   *assess.ModelDescription
	mass    *assess.MassProperties
	report  *assess.Report
	limits  *assess.Limits
	weighed weighing.Weighed
	stated  weighing.State
	listed  weighing.Listed
	used    weighing.State
	burn    weighing.Travel
	needed  bool
}

func (b *bench) lack(path string) { b.Missing = append(b.Missing, path) }

// scales works out the scale readings and the stated mass.
func (b *bench) scales() error {
	b.stated = statedState(b.mass)
	if b.stated.Mass.Known {
		b.Stated = wireState(b.stated)
	}
	if len(b.mass.ScaleReadings) == 0 {
		return nil
	}
	weighed, err := weighing.Weigh(Readings(b.mass))
	if err != nil {
		return err
	}
	b.weighed, b.Scales = weighed, wireState(weighed.State)
	b.Notes = append(b.Notes, weighed.Notes...)
	once := true
	for i := range weighed.Lines {
		b.Supports = append(b.Supports, support(&weighed.Lines[i]))
		once = once && weighed.Lines[i].Count == 1
	}
	if once {
		b.Notes = append(b.Notes, "Each scale was read once: three readings, the model lifted off in between, tell how well the weighing repeats.")
	}
	return nil
}

func support(l *weighing.Line) Support {
	return Support{
		Name: l.Name, XMeters: l.X, YMeters: l.Y, ReadingCount: l.Count, MeanKg: l.Mean, TareKg: l.Tare, DeviationKg: l.Deviation,
		NetKg: Figure{l.Net.Value, l.Net.Spread}, ShareRatio: l.Share, Scattered: l.Scattered,
	}
}

// list adds up the items.
func (b *bench) list() error {
	b.items = itemsOf(b.mass)
	if len(b.items) == 0 {
		return nil
	}
	listed, err := weighing.Add(b.items)
	if err != nil {
		return err
	}
	b.listed, b.Listed = listed, wireState(listed.State)
	return nil
}

// compare holds the scales against what is stated, and the better of the two against the list.
func (b *bench) compare() (err error) {
	measured := b.weighed.State
	if b.Scales == nil {
		measured = b.stated
	}
	if b.Scales != nil && b.Stated != nil {
		if b.ScalesAgainstStated, err = comparison(b.weighed.State, b.stated, nil); err != nil {
			return err
		}
	}
	if measured.Mass.Known && b.Listed != nil {
		b.AgainstList, err = comparison(measured, b.listed.State, b.items)
	}
	return err
}

func comparison(weighed, other weighing.State, items []weighing.Item) (*Comparison, error) {
	d, err := weighing.Reconcile(weighed, other, items)
	if err != nil {
		return nil, err
	}
	c := &Comparison{
		MassDifferenceKg: Figure{d.Mass.Value, d.Mass.Spread}, MassDifferenceRatio: d.MassRatio, MassScore: d.MassScore, MomentScore: d.MomentScore,
		BalanceDifferenceMeters: figureOf(d.X), Agrees: d.Agrees, MissingXMeters: figureOf(d.MissingX), Note: d.Note,
	}
	for _, suspect := range d.Suspects {
		c.Explanations = append(c.Explanations, suspect.Note)
	}
	return c, nil
}

// figureOf returns a known estimate, or nothing.
func figureOf(e weighing.Estimate) *Figure {
	if !e.Known {
		return nil
	}
	return &Figure{e.Value, e.Spread}
}

func wireState(s weighing.State) *WeighedState {
	return &WeighedState{MassKg: figureOf(s.Mass), XMeters: figureOf(s.X), YMeters: figureOf(s.Y), ZMeters: figureOf(s.Z)}
}

// height finds how high the balance point lies from a tilted weighing.
func (b *bench) height(tilted *Tilted) error {
	if tilted == nil {
		return nil
	}
	second, err := weighing.Weigh(tilted.Readings)
	if err != nil {
		return err
	}
	height, err := weighing.BalanceHeight(b.weighed, second, tilted.Angle, tilted.Spread)
	if err != nil {
		return err
	}
	b.HeightMeters = figureOf(height)
	return nil
}

// conclude says whether the weigh-in holds, fails or is unknown, and why.
func (b *bench) conclude() {
	b.Verdict = assess.VerdictHolds
	switch {
	case len(b.Missing) > 0:
		b.Verdict = assess.VerdictUnknown
		b.Reasons = append(b.Reasons, "Not enough is known to say where the model balances in its window.")
	case b.needed:
		b.Verdict = assess.VerdictFails
		b.Reasons = append(b.Reasons, b.Correction)
	case b.tight():
		b.Verdict = assess.VerdictTight
		b.Reasons = append(b.Reasons, fmt.Sprintf("%s Its spread of %.1f mm reaches beyond the window: weigh again, or leave more room.",
			b.Correction, 1000*b.used.X.Spread))
	default:
		b.Reasons = append(b.Reasons, b.Correction)
	}
	b.concludeComparisons()
}

// bandFactor is how many standard deviations the 5 % and 95 % points lie from the middle.
const bandFactor = 1.645

// tight reports whether the balance point's own spread reaches beyond the window.
func (b *bench) tight() bool {
	band := bandFactor * b.used.X.Spread
	return b.Travel.ForwardXMeters-band < b.Window.ForwardXMeters || b.Travel.AftXMeters+band > b.Window.AftXMeters
}

// concludeComparisons tells what does not agree; more than the allowed share of the mass fails.
func (b *bench) concludeComparisons() {
	most := defaultMassDifference
	if b.limits != nil && b.limits.MaximumMassDifferenceRatio != nil {
		most = *b.limits.MaximumMassDifferenceRatio
	}
	for _, c := range []*Comparison{b.ScalesAgainstStated, b.AgainstList} {
		if c == nil || c.Agrees {
			continue
		}
		b.Reasons = append(b.Reasons, c.Note)
		if math.Abs(c.MassDifferenceRatio) > most {
			b.Verdict = assess.VerdictFails
		}
	}
}
