package assess

import (
	"slices"
	"strconv"
	"strings"
)

// benchRow is a point of the bench inspection as a kind: whom it is asked of, how it is done, which figure is wanted and what rests on it.
type benchRow struct {
	id, group, title, how, why string
	// input is the path that the measured value replaces: whole where the row stands once, else what follows the subject's own path.
	input, unit string
	findings    []string
	// byRole takes the findings that rest on a control of this role instead.
	byRole bool
	photo  bool
	// each lists the parts that the row is asked of; nil asks once.
	each func(*benchView) []benchSubject
	// applies says whether a model, or one of its parts, needs the row; nil: always.
	applies func(*benchView, *benchSubject) bool
	wanted  func(*benchView, *benchSubject) benchWanted
}

// benchSubject is one part that a row is asked of.
type benchSubject struct {
	name, path string
	// input is the path that the measured value replaces.
	input   string
	index   int
	hinged  hingedControl
	surface *LiftingSurface
	control *Control
}

// benchWanted is the figure or the state that an inspection is to find.
type benchWanted struct {
	text      string
	low, high *float64
}

// benchRows lists every kind of point, group by group.
var benchRows = slices.Concat(benchMassRows, benchControlRows, benchStructureRows, benchFuelRows, benchEngineRows, benchHeatRows, benchRadioRows, benchPackRows,
	benchGearRows, benchLauncherRows)

// benchView is what rows and cards look at: the document and what the report found.
type benchView struct {
	pass  *pass
	model *ModelDescription
	plan  *LaunchPlan
	value map[string]float64
	text  map[string]string
	found map[string]*Finding
}

// inspect adds the bench list and the cards to a report whose findings are settled.
func (p *pass) inspect(r *Report) {
	v := p.benchView(r)
	if p.in.Model != nil {
		for i := range benchRows {
			r.BenchItems = append(r.BenchItems, v.items(&benchRows[i])...)
		}
		r.BenchItems = append(r.BenchItems, v.ruleItems()...)
	}
	r.Cards = v.cards()
}

func (p *pass) benchView(r *Report) *benchView {
	v := &benchView{pass: p, model: p.in.Model, plan: p.in.LaunchPlan, value: make(map[string]float64, len(r.Quantities)), text: map[string]string{},
		found: make(map[string]*Finding, len(r.Findings))}
	if v.model == nil {
		v.model = &ModelDescription{}
	}
	if v.plan == nil {
		v.plan = &LaunchPlan{}
	}
	for i := range r.Quantities {
		if q := &r.Quantities[i]; q.Value != nil {
			v.value[q.ID] = *q.Value
		} else {
			v.text[q.ID] = q.Text
		}
	}
	for i := range r.Findings {
		v.found[r.Findings[i].ID] = &r.Findings[i]
	}
	return v
}

// items are the points of one row.
func (v *benchView) items(row *benchRow) []BenchItem {
	subjects := []benchSubject{{}}
	if row.each != nil {
		subjects = row.each(v)
	}
	var out []BenchItem
	for i := range subjects {
		s := &subjects[i]
		if row.applies == nil || row.applies(v, s) {
			out = append(out, v.item(row, s))
		}
	}
	return out
}

func (v *benchView) item(row *benchRow, s *benchSubject) BenchItem {
	if row.input != "" {
		s.input = s.path + row.input
	}
	wanted, findings := row.wanted(v, s), row.findings
	if row.byRole {
		findings = controlFindings.of(s.control.Role)
	}
	item := BenchItem{
		ID: row.id + numbersIn(s.path), Group: row.group, Title: row.title, Input: s.input, How: row.how, Wanted: wanted.text, Low: wanted.low, High: wanted.high,
		FindingIDs: v.asked(findings), PhotoWanted: row.photo,
	}
	if s.name != "" {
		item.Title += " (" + s.name + ")"
	}
	if item.Low != nil || item.High != nil {
		item.Unit = row.unit
	}
	item.Why = v.why(row.why, item.FindingIDs)
	return item
}

// asked leaves out the findings that this report does not have.
func (v *benchView) asked(ids []string) []string {
	out := make([]string, 0, len(ids))
	for _, id := range ids {
		if v.found[id] != nil {
			out = append(out, id)
		}
	}
	return out
}

// benchVerdicts are the verdicts in a sentence.
var benchVerdicts = pairings[Verdict, string]{{VerdictHolds, "holds"}, {VerdictTight, "tight"}, {VerdictFails, "fails"}, {VerdictUnknown, "unknown"}}

// why says what an inspection is for and how the findings stand that rest on it.
func (v *benchView) why(text string, ids []string) string {
	if len(ids) == 0 {
		return text
	}
	parts := make([]string, 0, len(ids))
	for _, id := range ids {
		f := v.found[id]
		parts = append(parts, f.Title+": "+benchVerdicts.of(f.Verdict))
	}
	return text + " On it rest: " + strings.Join(parts, "; ") + "."
}

// numbersIn writes the places of a path, counted from one, as the end of an id: "model.packs[0]" gives ".1".
func numbersIn(path string) string {
	var out strings.Builder
	for rest := path; ; {
		_, after, found := strings.Cut(rest, "[")
		if !found {
			return out.String()
		}
		digits, behind, _ := strings.Cut(after, "]")
		if i, err := strconv.Atoi(digits); err == nil {
			out.WriteString("." + strconv.Itoa(i+1))
		}
		rest = behind
	}
}

// limitOf returns the figure that a finding was held against, nil where there is none.
func (v *benchView) limitOf(id string) *float64 {
	if f := v.found[id]; f != nil {
		return f.Limit
	}
	return nil
}

// number returns a quantity of the report, nil where it was not computed.
func (v *benchView) number(id string) *float64 {
	if value, ok := v.value[id]; ok {
		return &value
	}
	return nil
}

// turbine reports whether an engine burns fuel.
func (v *benchView) turbine() bool {
	return slices.ContainsFunc(v.model.Engines, func(e Engine) bool { return e.Kind == EngineKindTurbine })
}
