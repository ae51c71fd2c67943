package main

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"sync"

	"pitgate/server/answer"
)

// What a core says of a document.
const (
	answered = "answer"
	refused  = "refused"
)

// given is what a core answered: "answer" or "refused", and the SHA-256 of the text in hex.
type given struct{ kind, digest string }

// tally counts the answers of one core and digests all of them, whichever of its processes gave them first.
type tally struct {
	name              string
	guard             sync.Mutex
	answered, refused int
	differ            int
	all               [sha256.Size]byte
}

// add counts the answer to one question.
func (t *tally) add(number int, g given) {
	t.guard.Lock()
	defer t.guard.Unlock()
	if g.kind == answered {
		t.answered++
	} else {
		t.refused++
	}
	for i, b := range sha256.Sum256(fmt.Appendf(nil, "%d %s %s", number, g.kind, g.digest)) {
		t.all[i] ^= b
	}
}

// differs counts an answer that is not the one wanted.
func (t *tally) differs() {
	t.guard.Lock()
	defer t.guard.Unlock()
	t.differ++
}

// String is one line of the result.
func (t *tally) String() string {
	return fmt.Sprintf("%-13s %d documents answered, %d refused, %d differ, all answers digest to %s", t.name, t.answered, t.refused, t.differ,
		hex.EncodeToString(t.all[:8]))
}

// answer is that of this program, with its text.
func (t *tally) answer(number int, d document) (given, []byte) {
	g := given{kind: answered}
	text, err := d.answer()
	if err != nil {
		g.kind = refused
		text, _ = json.Marshal(answer.RefusalOf(err))
	}
	sum := sha256.Sum256(text)
	g.digest = hex.EncodeToString(sum[:])
	t.add(number, g)
	return g, text
}
