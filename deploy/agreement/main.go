// Command agreement holds the core of the page's worker to that of the server: the same documents are answered here, by WebAssembly in Node and by
// WebAssembly in Chromium, and every answer has to be the same, byte for byte. The documents are those of testdata and others that are made from them.
//
//	./deploy/agreement/run [how many documents are made]
package main

import (
	"context"
	"flag"
	"fmt"
	"log/slog"
	"os"
	"os/signal"
	"strings"
	"time"
)

func main() {
	made := flag.Int("made", 60, "how many documents are made from those of testdata")
	seed := flag.Uint64("seed", 1, "seed of what is made")
	wasm := flag.String("wasm", "pwa/src/worker/go/pitgate.wasm", "the core to be held to this one")
	hosts := flag.String("hosts", "node,chromium", "where it runs")
	flag.Parse()
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	start := time.Now()
	differ, err := run(ctx, *made, *seed, *wasm, strings.Split(*hosts, ","))
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
const leastAnswered = 4

// run asks every host every document and returns how many answers differ from those of this program.
func run(ctx context.Context, made int, seed uint64, wasm string, names []string) (differ int, err error) {
	kept, err := keptDocuments("testdata")
	if err != nil {
		return 0, err
	}
	documents := kept.all(made, seed)
	var hosts []*host
	for _, name := range names {
		h, err := startHost(ctx, name, wasm)
		if err != nil {
			return 0, err
		}
		defer h.stop()
		hosts = append(hosts, h)
	}
	own := &tally{name: "this program"}
	for d := range documents {
		want := own.answer(d)
		for _, h := range hosts {
			h.ask(d, want)
		}
	}
	fmt.Println(own)
	if least := 2*len(kept.whole) + made/leastAnswered; own.answered < least {
		return 0, fmt.Errorf("only %d documents are answered, fewer than %d: what is made from them is refused too often to hold anything", own.answered, least)
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
