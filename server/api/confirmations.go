package api

import (
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"time"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/physics/assess"
)

// confirmed adds the caller's words to those kept and returns the list as it is kept. Nobody speaks for another, so the name is the caller's; the date
// is today's where none is given, and never one to come. A word on the same rule takes the place of the former, but an officer's stands until an officer
// gives another: saying the same again is no fault, saying otherwise is refused.
func (b *backend) confirmed(c caller, kept json.RawMessage, said []*pb.RuleConfirmation) (json.RawMessage, error) {
	words, err := keptConfirmations(kept)
	if err != nil {
		return nil, err
	}
	today := b.now().UTC()
	var refused []violation
	for i, w := range said {
		if by, differs := answeredByOfficer(words, w); by != "" {
			if differs {
				refused = append(refused, violation{fmt.Sprintf("confirmations[%d]", i), "answered by " + by + ": an officer's word stands until an officer gives another"})
			}
			continue
		}
		word := assess.RuleConfirmation{Rule: w.GetRule(), Confirmed: w.Confirmed, By: c.person.DisplayName, Date: w.GetDate()}
		if word.Date, err = dateOfWord(word.Date, today); err != nil {
			refused = append(refused, violation{fmt.Sprintf("confirmations[%d].date", i), err.Error()})
		}
		words = withWord(words, word)
	}
	if len(refused) > 0 {
		return nil, &invalidError{refused}
	}
	return json.Marshal(words)
}

// errWordDate says what the day of a word must be.
var errWordDate = errors.New("must be a date such as 2026-05-16 and not lie ahead")

// dateOfWord is the day of a word, today where none is given. A day may have begun at the field that has not begun in Greenwich.
func dateOfWord(given string, today time.Time) (string, error) {
	if given == "" {
		return today.Format(time.DateOnly), nil
	}
	if on, err := time.Parse(time.DateOnly, given); err != nil || on.After(today.Add(14*time.Hour)) {
		return given, errWordDate
	}
	return given, nil
}

// withWord puts a word in the place of the former on the same rule.
func withWord(words []assess.RuleConfirmation, word assess.RuleConfirmation) []assess.RuleConfirmation {
	words = slices.DeleteFunc(words, func(former assess.RuleConfirmation) bool { return former.Rule == word.Rule })
	return append(words, word)
}

// answeredByOfficer names the officer who answered the rule of a word, and tells whether the word says otherwise.
func answeredByOfficer(words []assess.RuleConfirmation, said *pb.RuleConfirmation) (by string, differs bool) {
	at := slices.IndexFunc(words, func(former assess.RuleConfirmation) bool {
		return former.Rule == said.GetRule() && former.Officer != nil && *former.Officer
	})
	if at < 0 {
		return "", false
	}
	former := words[at]
	same := former.Confirmed != nil && said.Confirmed != nil && *former.Confirmed == said.GetConfirmed()
	return former.By, !same
}

// keptConfirmations reads a kept list.
func keptConfirmations(kept json.RawMessage) ([]assess.RuleConfirmation, error) {
	words := []assess.RuleConfirmation{}
	if len(kept) == 0 {
		return words, nil
	}
	if err := json.Unmarshal(kept, &words); err != nil {
		return nil, fmt.Errorf("kept confirmations: %w", err)
	}
	return words, nil
}

// showConfirmations writes a kept list.
func showConfirmations(kept json.RawMessage) ([]*pb.RuleConfirmation, error) {
	words, err := keptConfirmations(kept)
	if err != nil {
		return nil, err
	}
	var out []*pb.RuleConfirmation
	for _, w := range words {
		out = append(out, &pb.RuleConfirmation{Rule: w.Rule, Confirmed: w.Confirmed, By: w.By, Date: w.Date, Officer: w.Officer})
	}
	return out, nil
}
