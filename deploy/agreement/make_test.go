package main

import (
	"bytes"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	contract "pitgate/server/document"
	"pitgate/server/physics/assess"
)

func TestMain(m *testing.M) {
	if err := os.Chdir("../.."); err != nil { // as run does
		panic(err)
	}
	os.Exit(m.Run())
}

func kept(t *testing.T) (keptSet, *maker) {
	t.Helper()
	set, err := keptDocuments("testdata")
	if err != nil {
		t.Fatal(err)
	}
	return set, newMaker(set.trees(), set.packs)
}

func still(m *maker) variation {
	return variation{by: rand.New(rand.NewPCG(1, 2)), scales: map[string]float64{}, known: m.known}
}

func TestSameSeedMakesTheSameDocuments(t *testing.T) {
	t.Parallel()
	_, a := kept(t)
	_, b := kept(t)
	other := 0
	for i := range 32 {
		first, recipe := a.document(i, 3)
		second, _ := b.document(i, 3)
		if !bytes.Equal(textOf(first), textOf(second)) {
			t.Errorf("%d, %s: made twice, two documents", i, recipe)
		}
		if changed, _ := a.document(i, 4); !bytes.Equal(textOf(first), textOf(changed)) {
			other++
		}
	}
	if other < 30 {
		t.Errorf("another seed makes %d of 32 documents anew", other)
	}
}

// Most of what is made can be answered, and every way of making leaves something to answer; some is refused by its fields.
func TestMostDocumentsAreWhole(t *testing.T) {
	t.Parallel()
	_, m := kept(t)
	whole, of := map[string]int{}, map[string]int{}
	sum := 0
	const made = 240
	for i := range made {
		root, recipe := m.document(i, 1)
		of[recipe]++
		if _, err := contract.Decode(textOf(root)); err == nil {
			whole[recipe]++
			sum++
		}
	}
	for _, r := range recipes {
		if whole[r.name] == 0 && !r.asIs {
			t.Errorf("%s: none of %d is whole", r.name, of[r.name])
		}
	}
	if sum < made*3/5 || sum > made*24/25 {
		t.Errorf("%d of %d are whole: %v of %v", sum, made, whole, of)
	}
}

// What an aim says is done is done, in one of the places it names.
func TestAimsAreCarriedOut(t *testing.T) {
	t.Parallel()
	_, m := kept(t)
	for what, aims := range m.aims {
		if len(aims) < 30 {
			t.Errorf("%s: only %d aims", what, len(aims))
		}
		for k := 0; k < len(aims); k += 1 + len(aims)/60 {
			a := aims[k]
			before, root := m.from[a.from[0]], copied(m.from[a.from[0]]).(map[string]any)
			still(m).apply(a, root)
			if bytes.Equal(textOf(before), textOf(root)) && !alike(before, a) {
				t.Errorf("%s %s %s: nothing changes", what, a.path, a.how)
			}
			if got := count(root, a); got == 0 {
				t.Errorf("%s %s %s: not to be found", what, a.path, a.how)
			}
		}
	}
}

// alike reports whether a document was so before.
func alike(root map[string]any, a *aim) bool {
	return (a.what == says || a.what == counts || a.what == bounds) && count(root, a) > 0
}

// count is how many places of a document are as the aim wants one.
func count(root map[string]any, a *aim) int {
	n := 0
	for _, s := range at(spotsOf(root), a.path) {
		value := s.in[s.name]
		list, _ := value.([]any)
		number, has := value.(float64)
		if quantity := s.number(); quantity != nil && !has {
			number, has = quantity["value"].(float64)
		}
		ok := map[change]bool{
			leavesOut: value == nil, fills: value != nil, says: value == a.how,
			counts: map[string]bool{none: len(list) == 0, one: len(list) == 1, many: len(list) > 2}[a.how],
			bounds: has && number == endOf(s.field, a.how), oversteps: has && number == endOf(s.field, a.how),
		}[a.what]
		if ok {
			n++
		}
	}
	return n
}

// A number beyond the end of its range is refused by its path.
func TestBeyondTheRangeIsRefused(t *testing.T) {
	t.Parallel()
	_, m := kept(t)
	for _, a := range m.aims[oversteps] {
		root := copied(m.from[a.from[0]]).(map[string]any)
		still(m).apply(a, root)
		_, err := contract.Decode(textOf(root))
		name := a.path[strings.LastIndex(a.path, ".")+1:]
		if err == nil || !strings.Contains(err.Error(), name) || !strings.Contains(err.Error(), "must") {
			t.Errorf("%s %s: %v", a.path, a.how, err)
		}
	}
}

func TestTurnKeepsTheField(t *testing.T) {
	t.Parallel()
	_, m := kept(t)
	field := copied(m.from[0]["field"])
	still(m).turn(field, math.Pi/2)
	turned, err := contract.Decode(textOf(map[string]any{"field": field}))
	if err != nil {
		t.Fatal(err)
	}
	whole, err := contract.Decode(textOf(map[string]any{"field": m.from[0]["field"]}))
	if err != nil {
		t.Fatal(err)
	}
	for i, p := range whole.Field.FlyingArea.Corners {
		q := turned.Field.FlyingArea.Corners[i]
		// North becomes east.
		if math.Abs(*q.XMeters-*p.YMeters) > 1e-9 || math.Abs(*q.YMeters+*p.XMeters) > 1e-9 {
			t.Errorf("corner %d goes from %g, %g to %g, %g", i, *p.XMeters, *p.YMeters, *q.XMeters, *q.YMeters)
		}
	}
}

// Every kind of question comes, and a line holds as many parts as a host reads.
func TestEveryQuestionIsAsked(t *testing.T) {
	t.Parallel()
	set, m := kept(t)
	asked := map[string]int{}
	for i := range 400 {
		ask, _ := askedOf(i, 1)
		asked[ask]++
		if ask == askRemedies || i > 60 {
			continue // what is open takes a report
		}
		d := set.made(m, i, 1)
		if parts := strings.Split(d.line(), "\t"); len(parts) != 6 || strings.Count(d.line(), "\n") != 1 {
			t.Errorf("%s: %d parts", d.name, len(parts))
		}
	}
	for _, ask := range []string{askReport, askValues, askWindow, askSpread, askRemedies, askCompare} {
		if asked[ask] == 0 {
			t.Errorf("%s is never asked", ask)
		}
	}
}

// What is told of findings is what the reports said.
func TestCoverageCounts(t *testing.T) {
	t.Parallel()
	c := newCoverage()
	told := func(verdict assess.Verdict) []byte {
		return fmt.Appendf(nil, `{"findings":[{"id":"a","verdict":%q},{"id":"b","verdict":"VERDICT_HOLDS"}],"benchItems":[{"id":"x"}]}`, verdict)
	}
	for _, verdict := range assess.Verdict("").Names() {
		c.add(document{ask: askReport, text: []byte(`{"day":{"frost":"FROST_NONE"}}`)}, answered, told(assess.Verdict(verdict)))
	}
	c.add(document{ask: askReport, text: []byte(`{"day":{"frost":"FROST_PRESENT"}}`)}, refused, nil)
	for _, want := range []string{"findings: 2, 0 of them of rules; with four verdicts 1, three 0, two 0, one 1 (not: b [VERDICT_HOLDS])", "bench items: 1, 1 of them in all of 4 reports"} {
		if !strings.Contains(c.String(), want) {
			t.Errorf("no %q in\n%s", want, c)
		}
	}
	if !c.said["day.frost = FROST_NONE"] || c.said["day.frost = FROST_PRESENT"] || !c.absent["model"] || !c.present["day.frost"] {
		t.Errorf("covered %v, %v", c.said, c.present)
	}
}
