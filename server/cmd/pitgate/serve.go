package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"log/slog"

	"pitgate/server/demo"
)

// runServe serves until it is told to stop.
func runServe(ctx context.Context, args []string, std streams) (int, error) {
	s, err := readSettings("serve", args, std.err)
	if err != nil {
		return 0, err
	}
	return 0, serve(ctx, s, std)
}

// runDemo serves the demo's club; since anybody may choose whom to be, only from this machine.
func runDemo(ctx context.Context, args []string, std streams) (int, error) {
	s, err := readSettings("demo", args, std.err)
	if err != nil {
		return 0, err
	}
	s.demo = true
	if !loopback(s.addr) || s.grpcAddr != "" && !loopback(s.grpcAddr) {
		return 0, errors.New("addr: the demo needs no password, so that it serves this machine only: use localhost")
	}
	return 0, serve(ctx, s, std)
}

// serve opens the database, starts the listeners, says that it is ready, and stops in order when the context ends.
func serve(ctx context.Context, s settings, std streams) (err error) {
	log := newLog(std.err, s.json)
	base, err := openDatabase(ctx, s, log)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, base.close()) }()
	if s.demo {
		if err := demo.Load(ctx, base.store); err != nil {
			return fmt.Errorf("demo data: %w", err)
		}
	}
	house, err := openHouse(ctx, s, base.store, log)
	if err != nil {
		return err
	}
	house.start()
	if err := house.work(ctx, base.store); err != nil {
		return errors.Join(err, house.stop(context.WithoutCancel(ctx)))
	}
	tell(std.out, "pitgate ready: %s\n", house.url())
	select {
	case <-ctx.Done():
		log.Info("stopping")
	case err = <-house.failed:
	case <-base.lost():
		err = errors.New("the private database ended and could not be started again")
	}
	return errors.Join(err, house.stop(context.WithoutCancel(ctx)))
}

// newLog writes to w, as text for people or as JSON for machines.
func newLog(w io.Writer, asJSON bool) *slog.Logger {
	if asJSON {
		return slog.New(slog.NewJSONHandler(w, nil))
	}
	return slog.New(slog.NewTextHandler(w, nil))
}
