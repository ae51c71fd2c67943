package main

import (
	"context"
	"slices"
	"time"

	"golang.org/x/sync/errgroup"
)

// row is one line of the table: something that can be called again and again.
type row struct {
	name string
	call func(context.Context) error
}

// load says how hard and how long to call.
type load struct {
	duration time.Duration
	callers  int
}

// result is what one row came to.
type result struct {
	perSecond float64
	p50, p99  time.Duration
}

// measure calls from several callers until the time is over. One failed call fails the row.
func (l load) measure(ctx context.Context, call func(context.Context) error) (result, error) {
	if err := call(ctx); err != nil { // warm up, and say at once what is wrong
		return result{}, err
	}
	group, ctx := errgroup.WithContext(ctx)
	times := make([][]time.Duration, l.callers)
	start := time.Now()
	for i := range l.callers {
		group.Go(func() error {
			for time.Since(start) < l.duration {
				began := time.Now()
				if err := call(ctx); err != nil {
					return err
				}
				times[i] = append(times[i], time.Since(began))
			}
			return nil
		})
	}
	if err := group.Wait(); err != nil {
		return result{}, err
	}
	took := time.Since(start)
	all := slices.Concat(times...)
	slices.Sort(all)
	at := func(share float64) time.Duration {
		return all[int(share*float64(len(all)-1))].Round(10 * time.Microsecond)
	}
	return result{perSecond: float64(len(all)) / took.Seconds(), p50: at(0.5), p99: at(0.99)}, nil
}
