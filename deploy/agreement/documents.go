package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"iter"
	"math/rand/v2"
	"os"
	"path/filepath"
)

// keptSet are the documents of testdata.
type keptSet struct {
	whole  []document // documents that can be computed, to make others from
	broken []document
}

// keptDocuments reads them.
func keptDocuments(folder string) (keptSet, error) {
	var set keptSet
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
			set.add(document{name: part + "/" + filepath.Base(file), text: bytes.ReplaceAll(text, []byte("\n"), []byte(" "))})
		}
	}
	if len(set.whole) == 0 || len(set.broken) == 0 {
		return set, fmt.Errorf("no documents in %s", folder)
	}
	return set, nil
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

// samplesOf is how many samples the report of a document made is drawn from: one in twenty is drawn at all.
func samplesOf(i int) int {
	if i%20 == 19 {
		return 16
	}
	return 0
}

// all are the documents of testdata, the whole ones once more with samples, then those made from them. The same seed makes the same documents anywhere.
func (s *keptSet) all(made int, seed uint64) iter.Seq[document] {
	return func(yield func(document) bool) {
		for _, list := range [][]document{s.whole, s.broken} {
			for _, d := range list {
				if !yield(d) {
					return
				}
			}
		}
		for _, d := range s.whole {
			d.name, d.samples = d.name+" sampled", 64
			if !yield(d) {
				return
			}
		}
		for i := range made {
			from := s.whole[i%len(s.whole)]
			text := vary(from.text, rand.New(rand.NewPCG(seed, uint64(i))))
			if !yield(document{name: fmt.Sprintf("made %d from %s", i, from.name), text: text, samples: samplesOf(i)}) {
				return
			}
		}
	}
}
