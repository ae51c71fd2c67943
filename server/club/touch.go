package club

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strings"
)

// answer is what gates rest on in a report.
type answer struct {
	Findings   []answeredFinding `json:"findings"`
	BenchItems []inspection      `json:"benchItems"`
}

type answeredFinding struct {
	ID      string `json:"id"`
	Title   string `json:"title"`
	Verdict string `json:"verdict"`
}

// inspection is one point of the bench list, with the figure wanted.
type inspection struct {
	ID         string   `json:"id"`
	Title      string   `json:"title"`
	Input      string   `json:"input"`
	Wanted     string   `json:"wanted"`
	Unit       string   `json:"unit"`
	Low        *float64 `json:"low"`
	High       *float64 `json:"high"`
	FindingIDs []string `json:"findingIds"`
}

// TouchedBetween compares two reports, as JSON, and says which gates open again when the second takes the place of the first: the desk gate when a verdict
// got worse or a finding came, the bench gate when a point of the bench list came, went or wants another figure, or when the verdict of a finding changed
// (or it came or went) that a point of either list names.
func TouchedBetween(was, becomes json.RawMessage) (Touch, error) {
	return touchedBesides(was, becomes, "")
}

// TouchedByAnswer is TouchedBetween where an officer answered a rule, "<pack>.<rule>": the officer's word is the inspection that the bench list wants for
// that rule, so its finding by itself leaves the bench gate as it is.
func TouchedByAnswer(was, becomes json.RawMessage, rule string) (Touch, error) {
	return touchedBesides(was, becomes, "rule."+rule)
}

func touchedBesides(was, becomes json.RawMessage, inspected string) (Touch, error) {
	before, after := answer{}, answer{}
	if err := json.Unmarshal(was, &before); err != nil {
		return nil, fmt.Errorf("former report: %w", err)
	}
	if err := json.Unmarshal(becomes, &after); err != nil {
		return nil, fmt.Errorf("new report: %w", err)
	}
	touch := Touch{FieldGate: fieldAnew}
	turned := before.turned(after)
	if why := deskReasons(turned); len(why) > 0 {
		touch[DeskGate] = someOf(why)
	}
	turned = slices.DeleteFunc(turned, func(c turnedFinding) bool { return c.ID == inspected })
	if why := benchReasons(before, after, turned); len(why) > 0 {
		touch[BenchGate] = someOf(why)
	}
	return touch, nil
}

// turnedFinding is a finding whose verdict differs; an empty one means that there is no such finding.
type turnedFinding struct {
	answeredFinding
	from, to string
}

// turned lists what differs, in the order of the new report, what is gone last.
func (a answer) turned(by answer) []turnedFinding {
	var out []turnedFinding
	for _, f := range by.Findings {
		if from := a.verdict(f.ID); from != f.Verdict {
			out = append(out, turnedFinding{f, from, f.Verdict})
		}
	}
	for _, f := range a.Findings {
		if by.verdict(f.ID) == "" {
			out = append(out, turnedFinding{f, f.Verdict, ""})
		}
	}
	return out
}

func (a answer) verdict(id string) string {
	at := slices.IndexFunc(a.Findings, func(f answeredFinding) bool { return f.ID == id })
	if at < 0 {
		return ""
	}
	return a.Findings[at].Verdict
}

// deskReasons are the findings that came or got worse.
func deskReasons(turned []turnedFinding) []string {
	var out []string
	for _, c := range turned {
		if c.to != "" && c.from == "" || Worse(c.from, c.to) {
			out = append(out, c.words())
		}
	}
	return out
}

// gravity orders verdicts; a finding that is not there stands for nothing against, and a verdict nobody knows is as bad as any.
func gravity(verdict string) int {
	switch verdict {
	case "", "VERDICT_UNSPECIFIED", "VERDICT_HOLDS":
		return 0
	case "VERDICT_TIGHT":
		return 1
	case "VERDICT_UNKNOWN":
		return 2
	default:
		return 3
	}
}

// Worse tells whether a verdict, in its name on the wire, weighs more against a flight than another; an empty one means that there is no such finding.
func Worse(from, to string) bool { return gravity(to) > gravity(from) }

// VerdictWords is a verdict as people say it.
func VerdictWords(verdict string) string {
	if verdict == "" {
		return "not asked"
	}
	return strings.ToLower(strings.TrimPrefix(verdict, "VERDICT_"))
}

func (c turnedFinding) words() string {
	return fmt.Sprintf("%s: %s, now %s", named(c.Title, c.ID), VerdictWords(c.from), VerdictWords(c.to))
}

// named is a title without its stop, or the id of what has none.
func named(title, id string) string {
	if title == "" {
		return id
	}
	return strings.TrimSuffix(title, ".")
}

// benchReasons are the points that differ, and the changed findings that points of either list name.
func benchReasons(before, after answer, turned []turnedFinding) []string {
	out := differing(before.BenchItems, after.BenchItems)
	for _, c := range turned {
		for _, item := range slices.Concat(before.BenchItems, after.BenchItems) {
			if slices.Contains(item.FindingIDs, c.ID) {
				out = append(out, c.words())
				break
			}
		}
	}
	return out
}

// differing names the points that came, went or want another figure.
func differing(before, after []inspection) []string {
	var out []string
	for _, item := range after {
		at := slices.IndexFunc(before, item.isPoint)
		switch {
		case at < 0:
			out = append(out, "to be inspected now: "+named(item.Title, item.ID))
		case !item.wantsSame(before[at]):
			out = append(out, "another figure is wanted: "+named(item.Title, item.ID))
		}
	}
	for _, item := range before {
		if !slices.ContainsFunc(after, item.isPoint) {
			out = append(out, "no longer on the list: "+named(item.Title, item.ID))
		}
	}
	return out
}

// isPoint tells whether two points are the same one, which may want other figures.
func (i inspection) isPoint(o inspection) bool { return i.ID == o.ID && i.Input == o.Input }

func (i inspection) wantsSame(o inspection) bool {
	return i.Wanted == o.Wanted && i.Unit == o.Unit && sameFigure(i.Low, o.Low) && sameFigure(i.High, o.High)
}

// finestFigure is the share of a figure that no instrument of a bench tells.
const finestFigure = 1e-6

func sameFigure(a, b *float64) bool {
	if a == nil || b == nil {
		return a == b
	}
	return math.Abs(*a-*b) <= finestFigure*max(math.Abs(*a), math.Abs(*b))
}

// mostReasons is how many reasons a gate's fate names.
const mostReasons = 3

// someOf joins the first reasons and says how many more there are.
func someOf(reasons []string) string {
	if len(reasons) <= mostReasons {
		return strings.Join(reasons, "; ")
	}
	return fmt.Sprintf("%s; and %d more", strings.Join(reasons[:mostReasons], "; "), len(reasons)-mostReasons)
}
