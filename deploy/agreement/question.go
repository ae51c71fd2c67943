package main

import (
	"encoding/json"
	"fmt"
	"strings"

	"pitgate/server/answer"
	"pitgate/server/physics/assess"
)

// What a core is asked.
const (
	askReport   = "report"
	askValues   = "values"
	askWindow   = "window"
	askSpread   = "spread"
	askRemedies = "remedies"
	askCompare  = "compare"
)

// document is one that every core answers.
type document struct {
	name string
	// recipe is how it was made.
	recipe string
	text   []byte // without line ends and tabs
	ask    string
	// samples is how many samples a spread or remedy is drawn from; zero: bands by propagation.
	samples int
	// finding is what a remedy is asked for.
	finding string
	// other is the document with which it is compared.
	other []byte
	// workers answer a spread here; a page's core has one.
	workers int
}

// spreadSeed is the seed of every sampled report.
const spreadSeed = -3

// askedOf is what is asked of a document that is made: all kinds in turn, those that take long more rarely, and of all but one in so many turns of the
// recipes the values alone.
func askedOf(i, reports int) (ask string, samples int) {
	switch {
	case i/len(recipes)%reports != 0:
		return askValues, 0
	case i%199 == 150:
		return askRemedies, 0
	case i%397 == 60:
		return askRemedies, 16
	case i%25 == 24:
		return askSpread, 16 + i%17
	case i%11 == 10:
		return askCompare, 0
	case i%41 == 30:
		return askWindow, 0
	case i%13 == 12:
		return askValues, 0
	}
	return askReport, 0
}

// line is the question as a host reads it: what is asked, how many samples, their seed, the finding, and the documents, with tabs between.
func (d *document) line() string {
	return strings.Join([]string{d.ask, fmt.Sprint(d.samples), fmt.Sprint(spreadSeed), d.finding, string(d.text), string(d.other)}, "\t") + "\n"
}

// answer is what this program answers.
func (d *document) answer() ([]byte, error) {
	options := assess.SpreadOptions{Samples: d.samples, Seed: spreadSeed, Workers: d.workers}
	switch d.ask {
	case askValues:
		return answer.Values(d.text)
	case askWindow:
		return answer.Window(d.text)
	case askSpread:
		return answer.Spread(d.text, options)
	case askRemedies:
		return answer.Remedied(d.text, d.finding, options)
	case askCompare:
		return answer.Comparison(d.text, d.other, nil)
	}
	return answer.Report(d.text, nil)
}

// openFinding is one that a report of the document has open, the one at a place among them; empty when there is none.
func openFinding(text []byte, place int) string {
	var report assess.Report
	told, err := answer.Values(text)
	if err != nil || json.Unmarshal(told, &report) != nil {
		return ""
	}
	var open []string
	for i := range report.Findings {
		if f := &report.Findings[i]; f.Verdict == assess.VerdictFails || f.Verdict == assess.VerdictTight {
			open = append(open, f.ID)
		}
	}
	if len(open) == 0 {
		return ""
	}
	return open[place%len(open)]
}
