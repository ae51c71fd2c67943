package main

import (
	"encoding/json"
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strings"

	"pitgate/server/physics/assess"
)

// coverage is what the answered documents of a set say, and what was found about them.
type coverage struct {
	asked    map[string]int
	verdicts map[string]map[assess.Verdict]int // by finding
	bench    map[string]int                    // documents by bench item
	reports  int
	said     map[string]bool // "path = value" of enumerations
	present  map[string]bool // paths given in some document
	absent   map[string]bool // paths left out of some document whose object is there
	lists    map[string]bool // "path none", "path one", "path many"
	recipes  map[string][2]int
}

func newCoverage() *coverage {
	return &coverage{
		asked: map[string]int{}, verdicts: map[string]map[assess.Verdict]int{}, bench: map[string]int{}, said: map[string]bool{},
		present: map[string]bool{}, absent: map[string]bool{}, lists: map[string]bool{}, recipes: map[string][2]int{},
	}
}

// add counts one document with what it was answered; only what could be answered covers anything.
func (c *coverage) add(d document, kind string, answer []byte) {
	c.asked[d.ask]++
	count := c.recipes[d.recipe]
	if kind != answered {
		count[1]++
		c.recipes[d.recipe] = count
		return
	}
	count[0]++
	c.recipes[d.recipe] = count
	c.document(d.text)
	if d.ask != askCompare && d.ask != askWindow {
		c.report(answer)
	}
}

// report counts the verdicts and bench items of a report.
func (c *coverage) report(answer []byte) {
	var r struct {
		Findings   []struct{ ID, Verdict string }
		BenchItems []struct{ ID string }
	}
	if err := json.Unmarshal(answer, &r); err != nil {
		panic(err) // the core just wrote it
	}
	c.reports++
	for _, f := range r.Findings {
		if c.verdicts[f.ID] == nil {
			c.verdicts[f.ID] = map[assess.Verdict]int{}
		}
		c.verdicts[f.ID][assess.Verdict(f.Verdict)]++
	}
	for _, item := range r.BenchItems {
		c.bench[item.ID]++
	}
}

// document notes which fields a document gives, which values of enumerations it says and how long its lists are.
func (c *coverage) document(text []byte) {
	var root map[string]any
	if err := json.Unmarshal(text, &root); err != nil {
		return // answered in a spelling that is no plain JSON; none of the documents that are made
	}
	for _, s := range spotsOf(root) {
		if !s.given() {
			c.absent[s.path] = true
			continue
		}
		c.present[s.path] = true
		switch value := s.in[s.name].(type) {
		case string:
			c.said[s.path+" = "+value] = true
		case []any:
			c.lists[s.path+" "+[]string{none, one, many}[min(len(value), 2)]] = true
		}
	}
}

// wanted are what the contract could have covered.
func wanted() (said, paths, lists []string) {
	eachPath("", inputType, func(path string, field reflect.StructField) {
		paths = append(paths, path)
		for _, name := range namesOf(bare(field.Type)) {
			said = append(said, path+" = "+name)
		}
		if field.Type.Kind() == reflect.Slice {
			lists = append(lists, path+" "+none, path+" "+one, path+" "+many)
		}
	})
	return said, paths, lists
}

// String tells what was covered, one subject a line, and what was not.
func (c *coverage) String() string {
	said, paths, lists := wanted()
	out := fmt.Sprintf("asked: %s\n", counted(c.asked))
	for _, name := range slices.Sorted(maps.Keys(c.recipes)) {
		out += fmt.Sprintf("  %-10s %d answered, %d refused\n", name, c.recipes[name][0], c.recipes[name][1])
	}
	out += covered("values of enumerations said", said, c.said) + covered("fields given", paths, c.present) + covered("fields left out", paths, c.absent) +
		covered("lists of none, one and many", lists, c.lists)
	return out + c.findings() + c.benches()
}

// findings tells how many verdicts each finding had.
func (c *coverage) findings() string {
	var by [5]int
	var single []string
	rules := 0
	for _, id := range slices.Sorted(maps.Keys(c.verdicts)) {
		n := len(c.verdicts[id])
		by[n]++
		if strings.HasPrefix(id, "rule.") {
			rules++
		}
		if n < 2 {
			single = append(single, fmt.Sprintf("%s %v", id, slices.Collect(maps.Keys(c.verdicts[id]))))
		}
	}
	return fmt.Sprintf("findings: %d, %d of them of rules; with four verdicts %d, three %d, two %d, one %d %s\n", len(c.verdicts), rules, by[4], by[3],
		by[2], by[1], firstOf(single))
}

// benches tells which bench items came in some reports and not in others.
func (c *coverage) benches() string {
	always := 0
	for _, n := range c.bench {
		if n == c.reports {
			always++
		}
	}
	return fmt.Sprintf("bench items: %d, %d of them in all of %d reports\n", len(c.bench), always, c.reports)
}

func covered(what string, wanted []string, got map[string]bool) string {
	missing := slices.DeleteFunc(slices.Clone(wanted), func(name string) bool { return got[name] })
	return fmt.Sprintf("%s: %d of %d %s\n", what, len(wanted)-len(missing), len(wanted), firstOf(missing))
}

// firstOf names a few of what is missing.
func firstOf(missing []string) string {
	const few = 12
	switch {
	case len(missing) == 0:
		return ""
	case len(missing) > few:
		return fmt.Sprintf("(not: %s and %d more)", strings.Join(missing[:few], ", "), len(missing)-few)
	}
	return fmt.Sprintf("(not: %s)", strings.Join(missing, ", "))
}

func counted(counts map[string]int) string {
	var out []string
	for _, name := range slices.Sorted(maps.Keys(counts)) {
		out = append(out, fmt.Sprintf("%s %d", name, counts[name]))
	}
	return strings.Join(out, ", ")
}
