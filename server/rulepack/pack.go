// Package rulepack holds what authorities and the club ask of a flight, as versioned, dated packs of rules, and makes the strictest of several packs
// into the limits of one document. It does no input or output: the supplied packs are embedded, the club's come from its records.
package rulepack

import (
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"fmt"
	"path"
	"slices"
	"strings"

	"pitgate/server/document"
	"pitgate/server/physics/assess"
)

// Pack is one version of what an authority or the club asks.
type Pack = document.RulePack

//go:embed data/*.json
var files embed.FS

// Decode reads a pack strictly: every field known, every rule complete, every date a date. Its error is of type document.Errors and names each fault
// by its path.
func Decode(data []byte) (Pack, error) { return document.DecodeRulePack(data) }

// Canonical writes a pack's one canonical JSON form.
func Canonical(p Pack) ([]byte, error) { return document.Canonical(p) }

// Digest is the SHA-256 over a pack's canonical form, in hex: what a committee member gives the word for.
func Digest(p Pack) (string, error) {
	form, err := Canonical(p)
	if err != nil {
		return "", err
	}
	sum := sha256.Sum256(form)
	return hex.EncodeToString(sum[:]), nil
}

// Supplied returns the packs that come with the program, by id. An error means that an embedded file is broken.
func Supplied() ([]Pack, error) {
	entries, err := files.ReadDir("data")
	if err != nil {
		return nil, fmt.Errorf("supplied packs: %w", err)
	}
	var packs []Pack
	for _, entry := range entries {
		text, err := files.ReadFile(path.Join("data", entry.Name()))
		if err != nil {
			return nil, fmt.Errorf("supplied packs: %w", err)
		}
		pack, err := Decode(text)
		if err != nil {
			return nil, fmt.Errorf("supplied pack %s: %w", entry.Name(), err)
		}
		packs = append(packs, pack)
	}
	slices.SortFunc(packs, func(a, b Pack) int { return strings.Compare(a.ID, b.ID) })
	return packs, nil
}

// Label names a pack and its version in one line.
func Label(p Pack) string { return p.ID + " " + p.Version }

// Rules returns the pack's rules as they are applied: each names its pack, its authority and the days on which it counts.
func Rules(p Pack) []assess.AppliedRule {
	out := make([]assess.AppliedRule, 0, len(p.Rules))
	for _, rule := range p.Rules {
		rule.Pack = p.ID
		rule.Authority = orElse(rule.Authority, p.Authority)
		rule.Citation = orElse(rule.Citation, p.Source)
		rule.InForceDate = later(rule.InForceDate, p.InForceDate)
		rule.ExpiresDate = earlier(rule.ExpiresDate, p.ExpiresDate)
		out = append(out, rule)
	}
	return out
}

// Remarks lists what is worth a look before a pack is published or trusted: rules that nobody verified, and a last day that lies before the date
// given ("2026-05-16").
func Remarks(p Pack, date string) []string {
	var out []string
	open := 0
	for i := range p.Rules {
		if p.Rules[i].Verified == nil || !*p.Rules[i].Verified {
			open++
		}
	}
	if open > 0 {
		out = append(out, fmt.Sprintf("%d of %d rules are unverified: what rests on them is tight at best", open, len(p.Rules)))
	}
	if p.ExpiresDate != "" && date > p.ExpiresDate {
		out = append(out, "ran out on "+p.ExpiresDate+": look up what replaced it; until then its findings are unknown")
	}
	if p.InForceDate != "" && date < p.InForceDate {
		out = append(out, "comes into force on "+p.InForceDate)
	}
	return out
}

func orElse(text, fallback string) string {
	if text == "" {
		return fallback
	}
	return text
}

// later is the later of two dates; an empty one does not count.
func later(a, b string) string { return max(a, b) }

// earlier is the earlier of two dates; an empty one does not count.
func earlier(a, b string) string {
	if a == "" || b != "" && b < a {
		return b
	}
	return a
}
