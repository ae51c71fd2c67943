// Command bench prints one table of how fast pitgate computes and reads: computations from the output of Go benchmarks, reads beside references run in
// the same minute on the same machine, a bare gRPC call and a bare SQL select. It starts its own demo server and database, sends traffic to loopback
// only and stops by itself.
//
//	./deploy/bench/run
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"log/slog"
	"os"
	"os/signal"
	"time"
)

func main() {
	seconds := flag.Duration("for", 4*time.Second, "how long each row runs")
	callers := flag.Int("callers", 8, "concurrent callers")
	core := flag.String("core", "", "output of the Go benchmarks; left out when empty")
	binary := flag.String("binary", ".bin/pitgate", "server to measure")
	flag.Parse()
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	if err := run(ctx, load{duration: *seconds, callers: *callers}, *binary, *core); err != nil {
		slog.Error("bench", "error", err)
		os.Exit(1)
	}
}

func run(ctx context.Context, l load, binary, core string) error {
	fmt.Println("| what | figure | wanted or reference |")
	fmt.Println("|---|---:|---|")
	if core != "" {
		if err := printCore(core); err != nil {
			return err
		}
	}
	return serve(ctx, l, binary)
}

// serve measures the server and prints its rows.
func serve(ctx context.Context, l load, binary string) (err error) {
	system, err := startDemo(ctx, binary)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, system.stop()) }()
	select1, closeSQL, err := bareSelect(ctx)
	if err != nil {
		return err
	}
	defer closeSQL()
	echo, closeEcho, err := bareGRPC(ctx)
	if err != nil {
		return err
	}
	defer closeEcho()

	rows := []row{
		{"bare gRPC call, health check without interceptors", echo},
		{"bare SQL select by key", select1},
		{"reads of a model, gRPC", system.getModelGRPC},
		{"reads of a model, REST", system.getModelREST},
		{"assessments with spread, gRPC", system.preview},
	}
	var results []result
	for _, r := range rows {
		got, err := l.measure(ctx, r.call)
		if err != nil {
			return fmt.Errorf("%s: %w", r.name, err)
		}
		results = append(results, got)
		fmt.Printf("| %s, %d callers | %.0f per second, half within %v, 99 %% within %v | %s |\n", r.name, l.callers, got.perSecond, got.p50, got.p99,
			against(got, results))
	}
	return nil
}

// against is this row's rate over those of the two references, or nothing before they have run.
func against(got result, references []result) string {
	if len(references) < 3 {
		return "reference"
	}
	return fmt.Sprintf("%.2g of a bare gRPC call, %.2g of a bare SQL select", got.perSecond/references[0].perSecond, got.perSecond/references[1].perSecond)
}
