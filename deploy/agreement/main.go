// Command agreement holds the core of the page's worker to that of the server: the same documents are answered here, by WebAssembly in Node and by
// WebAssembly in Chromium, and every answer has to be the same, byte for byte. The documents are those of testdata and others that are made from them.
//
//	./deploy/agreement/run [how many documents are made]
package main

import (
	"context"
	"flag"
	"fmt"
	"iter"
	"log/slog"
	"os"
	"os/signal"
	"strings"
	"time"
)

// settings are what the command line says.
type settings struct {
	made      int
	seed      uint64
	wasm      string
	hosts     []string
	processes int
	reports   int
}

func main() {
	var s settings
	flag.IntVar(&s.made, "made", 32, "how many documents are made from those of testdata")
	flag.Uint64Var(&s.seed, "seed", 1, "seed of what is made")
	flag.StringVar(&s.wasm, "wasm", "pwa/src/worker/go/pitgate.wasm", "the core to be held to this one")
	flag.IntVar(&s.processes, "processes", 1, "how many processes of each host share the documents")
	flag.IntVar(&s.reports, "reports", 1, "one turn of the ways of making in so many is asked for reports and more, the others for the values alone")
	hosts := flag.String("hosts", "node,chromium", "where it runs; none: only what the documents cover is told")
	flag.Parse()
	s.hosts = strings.FieldsFunc(*hosts, func(r rune) bool { return r == ',' })
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	start := time.Now()
	differ, err := run(ctx, s)
	if err != nil {
		slog.Error("agreement", "error", err)
		os.Exit(1)
	}
	fmt.Printf("agreement: %v\n", time.Since(start).Round(time.Second))
	if differ > 0 {
		os.Exit(1)
	}
}

// leastAnswered is the share of the documents made that has to be answered: one in so many.
const leastAnswered = 2

// run asks every host every document and returns how many answers differ from those of this program.
func run(ctx context.Context, s settings) (differ int, err error) {
	kept, err := keptDocuments("testdata")
	if err != nil {
		return 0, err
	}
	if s.reports < 1 {
		return 0, fmt.Errorf("-reports %d is less than 1", s.reports)
	}
	kept.reports = s.reports
	var hosts []*host
	for _, name := range s.hosts {
		h, err := startHost(ctx, name, s.wasm, s.processes)
		if err != nil {
			return 0, err
		}
		defer h.stop()
		hosts = append(hosts, h)
	}
	own, seen := &tally{name: "this program"}, newCoverage()
	askAll(kept.all(s.made, s.seed), own, seen, hosts)
	fmt.Print(seen)
	fmt.Println(own)
	if least := len(kept.whole) + s.made/leastAnswered; own.answered < least {
		return 0, fmt.Errorf("only %d documents are answered, fewer than %d: what is made is refused too often to hold anything", own.answered, least)
	}
	for _, h := range hosts {
		if err := h.finish(); err != nil {
			return 0, err
		}
		fmt.Println(h.tally)
		differ += h.differ
	}
	return differ, nil
}

// progress is after how many documents the log says how far it is.
const progress = 500

// askAll answers every document and hands it with the answer to the hosts.
func askAll(documents iter.Seq[document], own *tally, seen *coverage, hosts []*host) {
	number := 0
	for d := range documents {
		want, text := own.answer(number, d)
		seen.add(d, want.kind, text)
		for _, h := range hosts {
			h.ask(question{document: d, number: number, want: want})
		}
		if number++; number%progress == 0 {
			slog.Info("asked", "documents", number)
		}
	}
}
