package assess

import (
	"encoding/json"
	"testing"

	"pitgate/testdata/demo"
)

func demoDocument(b testing.TB) Input {
	b.Helper()
	text, err := demo.Files.ReadFile("redshank_quarry_top.json")
	if err != nil {
		b.Fatal(err)
	}
	var in Input
	if err := json.Unmarshal(text, &in); err != nil {
		b.Fatal(err)
	}
	return in
}

// BenchmarkRun is one whole assessment: lattice, all findings, and the band of each over every uncertain input.
func BenchmarkRun(b *testing.B) {
	in := demoDocument(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Run(in); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkSinglePass is the same without bands on a geometry that is kept: the deterministic answer alone.
func BenchmarkSinglePass(b *testing.B) {
	in := demoDocument(b)
	whole, err := Prepare(in)
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		p := newPass(&in, whole)
		p.walk()
		if r := p.report(); len(r.Findings) == 0 {
			b.Fatal("no findings")
		}
	}
}

// BenchmarkMovedPass is one walk through every section as the bands take it, with another air temperature: all answers but the maps that the
// base pass draws once (engine out, link lost, thrust lost along the launch).
func BenchmarkMovedPass(b *testing.B) {
	in := demoDocument(b)
	whole, err := Prepare(in)
	if err != nil {
		b.Fatal(err)
	}
	base := newPass(&in, whole)
	base.walk()
	b.ReportAllocs()
	for b.Loop() {
		p := base.moving(uncertain{name: "day.temperatureCelsius", spread: 0.5}, 1)
		p.walk()
		if len(p.results) == 0 {
			b.Fatal("no findings")
		}
		p.release()
	}
}

// BenchmarkPrepare is the lattice and what else follows from the geometry alone.
func BenchmarkPrepare(b *testing.B) {
	in := demoDocument(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Prepare(in); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkAnswers is what a verdict needs on a geometry that is kept: value, limit and verdict of every finding, no drawings, no bands.
func BenchmarkAnswers(b *testing.B) {
	in := demoDocument(b)
	whole, err := Prepare(in)
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if r, err := whole.RunWith(in, Options{}); err != nil || len(r.Findings) == 0 {
			b.Fatal("no findings", err)
		}
	}
}

// BenchmarkFeeds is fuel, heat and the engine's figures alone in a moved pass, with another air temperature.
func BenchmarkFeeds(b *testing.B) {
	in := demoDocument(b)
	whole, err := Prepare(in)
	if err != nil {
		b.Fatal(err)
	}
	base := newPass(&in, whole)
	base.walk()
	p := base.moving(uncertain{name: "day.temperatureCelsius", spread: 0.5}, 1)
	p.walk()
	b.ReportAllocs()
	for b.Loop() {
		p.feed, p.results = feedSection{}, p.results[:0]
		p.answerFeeds()
	}
}
