package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"iter"
	"os"
	"path/filepath"

	"pitgate/server/rulepack"
)

// keptSet are the documents of testdata.
type keptSet struct {
	// reports: one turn of the recipes in so many is asked for more than values.
	reports int
	whole   []document // documents that can be computed, to make others from
	broken  []document
	packs   []rulepack.Pack
}

// keptDocuments reads them.
func keptDocuments(folder string) (keptSet, error) {
	set := keptSet{reports: 1}
	for _, part := range []string{"demo", "broken"} {
		files, err := filepath.Glob(filepath.Join(folder, part, "*.json"))
		if err != nil {
			return set, err
		}
		for _, file := range files {
			text, err := os.ReadFile(file)
			if err != nil {
				return set, err
			}
			set.add(document{name: part + "/" + filepath.Base(file), recipe: part, ask: askReport, text: oneLine(text)})
		}
	}
	if len(set.whole) == 0 || len(set.broken) == 0 {
		return set, fmt.Errorf("no documents in %s", folder)
	}
	var err error
	set.packs, err = rulepack.Supplied()
	return set, err
}

// oneLine puts spaces for the line ends and tabs between the parts of a document.
func oneLine(text []byte) []byte {
	return bytes.Map(func(r rune) rune {
		if r == '\n' || r == '\r' || r == '\t' {
			return ' '
		}
		return r
	}, text)
}

// add puts a document where it belongs: whole is what has a model and is meant to be right.
func (s *keptSet) add(d document) {
	var parts map[string]json.RawMessage
	if json.Unmarshal(d.text, &parts) == nil && parts["model"] != nil && filepath.Dir(d.name) == "demo" {
		s.whole = append(s.whole, d)
		return
	}
	s.broken = append(s.broken, d)
}

// sampledKept is how many samples the documents of testdata are drawn from.
const sampledKept = 64

// all are the documents of testdata, the whole ones once more in every way of asking, then those made from them. The same seed makes the same documents
// anywhere.
func (s *keptSet) all(made int, seed uint64) iter.Seq[document] {
	return func(yield func(document) bool) {
		for _, list := range [][]document{s.whole, s.broken, s.askedOtherwise()} {
			for _, d := range list {
				if !yield(d) {
					return
				}
			}
		}
		m := newMaker(s.trees(), s.packs)
		for i := range made {
			if !yield(s.made(m, i, seed)) {
				return
			}
		}
	}
}

// trees are the whole documents as plain JSON.
func (s *keptSet) trees() []map[string]any {
	var out []map[string]any
	for _, d := range s.whole {
		var root map[string]any
		if err := json.Unmarshal(d.text, &root); err != nil {
			panic(err) // whole documents were read as JSON before
		}
		out = append(out, root)
	}
	return out
}

// askedOtherwise asks for whole documents what a report does not answer: bands from samples for each, in turn the winds in which it holds or what differs
// from the next, and remedies, which are dear, for a few.
func (s *keptSet) askedOtherwise() []document {
	var out []document
	for i, d := range s.whole {
		sampled, other := d, d
		sampled.ask, sampled.samples, sampled.workers = askSpread, sampledKept, 2
		other.ask = askWindow
		switch i % 4 {
		case 1, 3:
			other.ask, other.other = askCompare, s.whole[(i+1)%len(s.whole)].text
		case 2:
			other.ask, other.finding = askRemedies, openFinding(d.text, i)
		}
		out = append(out, sampled, other)
	}
	for i := range out {
		out[i].name += " " + out[i].ask
	}
	return out
}

// made is a document made from those of testdata with what is asked of it.
func (s *keptSet) made(m *maker, i int, seed uint64) document {
	root, recipe := m.document(i, seed)
	d := document{text: textOf(root), recipe: recipe, workers: 1 + i%3}
	d.ask, d.samples = askedOf(i, s.reports)
	d.name = fmt.Sprintf("made %d, %s, asked %s", i, recipe, d.ask)
	switch d.ask {
	case askCompare:
		d.other = s.whole[i%len(s.whole)].text
	case askRemedies:
		d.finding = openFinding(d.text, i)
	}
	return d
}
