// Command bench measures how fast pitgate reads and computes, beside references run in the same minute on the same machine: a bare gRPC call and a
// bare SQL select. It starts its own demo server and database, sends traffic to loopback only and stops by itself.
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
	binary := flag.String("binary", ".bin/pitgate", "server to measure")
	flag.Parse()
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	if err := run(ctx, load{duration: *seconds, callers: *callers}, *binary); err != nil {
		slog.Error("bench", "error", err)
		os.Exit(1)
	}
}

func run(ctx context.Context, l load, binary string) (err error) {
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
		{"bare gRPC call (health check, no interceptors)", echo},
		{"bare SQL select by key (pgx pool)", select1},
		{"gRPC GetModel", system.getModelGRPC},
		{"REST GET a model", system.getModelREST},
		{"gRPC PreviewAssessment (compute, with spread)", system.preview},
	}
	fmt.Printf("%d callers, %v a row\n\n", l.callers, l.duration)
	fmt.Println("| what | per second | p50 | p99 | against bare gRPC | against bare SQL |")
	fmt.Println("|---|---:|---:|---:|---:|---:|")
	var results []result
	for _, r := range rows {
		got, err := l.measure(ctx, r.call)
		if err != nil {
			return fmt.Errorf("%s: %w", r.name, err)
		}
		results = append(results, got)
		fmt.Printf("| %s | %.0f | %v | %v | %s | %s |\n", r.name, got.perSecond, got.p50, got.p99,
			ratio(got, results, 0), ratio(got, results, 1))
	}
	return nil
}

// ratio is this row's rate over the reference row's, or a dash before the reference has run.
func ratio(got result, results []result, reference int) string {
	if len(results) <= reference {
		return "-"
	}
	return fmt.Sprintf("%.3f", got.perSecond/results[reference].perSecond)
}
