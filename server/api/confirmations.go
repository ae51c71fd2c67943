package api

import (
	"encoding/json"
	"fmt"
	"slices"
	"time"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/physics/assess"
)

// confirmed adds the caller's words to those kept and returns the list as it is kept. Nobody speaks for another, so the name is the caller's; the date
// is today's where none is given, and never one to come. A word on the same rule takes the place of the former.
func (b *backend) confirmed(c caller, kept json.RawMessage, said []*pb.RuleConfirmation) (json.RawMessage, error) {
	words, err := keptConfirmations(kept)
	if err != nil {
		return nil, err
	}
	today := b.now().UTC()
	var refused []violation
	for i, w := range said {
		word := assess.RuleConfirmation{Rule: w.GetRule(), Confirmed: w.Confirmed, By: c.person.DisplayName, Date: w.GetDate()}
		if word.Date == "" {
			word.Date = today.Format(time.DateOnly)
		}
		// A day may have begun at the field that has not begun in Greenwich.
		if on, err := time.Parse(time.DateOnly, word.Date); err != nil || on.After(today.Add(14*time.Hour)) {
			refused = append(refused, violation{fmt.Sprintf("confirmations[%d].date", i), "must be a date such as 2026-05-16 and not lie ahead"})
		}
		words = slices.DeleteFunc(words, func(former assess.RuleConfirmation) bool { return former.Rule == word.Rule })
		words = append(words, word)
	}
	if len(refused) > 0 {
		return nil, &invalidError{refused}
	}
	return json.Marshal(words)
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
		out = append(out, &pb.RuleConfirmation{Rule: w.Rule, Confirmed: w.Confirmed, By: w.By, Date: w.Date})
	}
	return out, nil
}
