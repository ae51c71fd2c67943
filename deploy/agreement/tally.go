package main

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"

	"pitgate/server/answer"
	"pitgate/server/physics/assess"
)

// document is one that every core answers.
type document struct {
	name string
	text []byte // without line ends
	// samples is how many samples its report is drawn from; zero: bands by propagation.
	samples int
}

// spreadSeed is the seed of every sampled report.
const spreadSeed = -3

// answer is what this program answers.
func (d *document) answer() ([]byte, error) {
	if d.samples == 0 {
		return answer.Report(d.text, nil)
	}
	return answer.Spread(d.text, assess.SpreadOptions{Samples: d.samples, Seed: spreadSeed, Workers: 2})
}

// given is what a core answered: "answer" or "refused", and the SHA-256 of the text in hex.
type given struct{ kind, digest string }

// tally counts the answers of one core and digests all of them in their order.
type tally struct {
	name              string
	answered, refused int
	differ            int
	all               [sha256.Size]byte
}

// add counts one answer.
func (t *tally) add(g given) {
	if g.kind == "answer" {
		t.answered++
	} else {
		t.refused++
	}
	t.all = sha256.Sum256(append(t.all[:], g.digest...))
}

// String is one line of the result.
func (t *tally) String() string {
	return fmt.Sprintf("%-13s %d documents answered, %d refused, %d differ, all answers digest to %s", t.name, t.answered, t.refused, t.differ,
		hex.EncodeToString(t.all[:8]))
}

// answer is that of this program.
func (t *tally) answer(d document) given {
	g := given{kind: "answer"}
	text, err := d.answer()
	if err != nil {
		g.kind = "refused"
		text, _ = json.Marshal(answer.RefusalOf(err))
	}
	sum := sha256.Sum256(text)
	g.digest = hex.EncodeToString(sum[:])
	t.add(g)
	return g
}
