package rulepack_test

import (
	"math/rand/v2"
	"strconv"
	"testing"

	"pitgate/server/physics/assess"
	"pitgate/server/rulepack"
)

// version is a version of the club's pack.
func version(first, name string) rulepack.Pack {
	return rulepack.Pack{ID: "larkmoor-club", Version: name, InForceDate: first}
}

// TestVersionInForceByDay asks for the version on days before, between, on and after the first days of three.
func TestVersionInForceByDay(t *testing.T) {
	t.Parallel()
	packs := []rulepack.Pack{version("2026-03-01", "one"), version("2026-06-01", "two"), version("2027-01-01", "three"), {ID: "other", Version: "o"}}
	for date, want := range map[string]string{
		"2020-01-01": "one", "2026-02-28": "one", "2026-03-01": "one", "2026-05-31": "one", "2026-06-01": "two", "2026-12-31": "two",
		"2027-01-01": "three", "2030-07-01": "three", "": "three",
	} {
		got := rulepack.InForce(packs, date)
		if len(got) != 2 || got[0].Version != want || got[1].Version != "o" {
			t.Errorf("on %q: %v, want %s and the other pack", date, got, want)
		}
	}
}

// TestVersionInForceIsTheNewestThatHasCome holds the choice against the sentence that defines it, for versions in any order.
func TestVersionInForceIsTheNewestThatHasCome(t *testing.T) {
	t.Parallel()
	random := rand.New(rand.NewPCG(5, 6))
	day := func() string { return "2026-01-" + strconv.Itoa(10+random.IntN(20)) }
	for range 2000 {
		var packs []rulepack.Pack
		seen := map[string]bool{}
		for range 1 + random.IntN(5) {
			if first := day(); !seen[first] {
				seen[first] = true
				packs = append(packs, version(first, first))
			}
		}
		date, want := day(), ""
		for first := range seen {
			if first <= date && first > want {
				want = first
			}
		}
		got := rulepack.InForce(packs, date)
		if len(got) != 1 || want != "" && got[0].InForceDate != want || want == "" && got[0].InForceDate <= date {
			t.Fatalf("on %s of %v: %v, want %s", date, packs, got, want)
		}
	}
}

// TestNoGapBetweenVersions composes two versions of a figure for days around the second one's first day: on every day one figure counts, and its rule
// says nothing of a day to come.
func TestNoGapBetweenVersions(t *testing.T) {
	t.Parallel()
	of := func(first string, most float64) rulepack.Pack {
		p := supplied(t)["eu-open-a3"]
		yes := true
		for _, rule := range p.Rules {
			if rule.ID == "mass" {
				rule.Value, rule.Verified = &most, &yes
				p.Rules = []assess.AppliedRule{rule}
				break
			}
		}
		p.InForceDate, p.Version = first, first
		return p
	}
	for date, want := range map[string]float64{"2026-05-31": 9, "2026-06-01": 7, "2026-06-02": 7} {
		in := demoInput(t, "dabchick_long_acre")
		in.Limits = nil
		in.Day.Time = date + in.Day.Time[len(date):]
		made := compose(t, in, of("2026-06-01", 7), of("2021-01-01", 9))
		f := figureOf(t, made, "maximumMassKg")
		if f.Value == nil || *f.Value != want || len(f.Asked) != 1 || !f.Asked[0].Applies {
			t.Errorf("on %s: %+v", date, f)
		}
	}
}
