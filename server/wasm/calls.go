//go:build js && wasm

package main

import (
	"errors"
	"fmt"
	"runtime"
	"syscall/js"

	"pitgate/server/answer"
	"pitgate/server/document/jsonform"
	"pitgate/server/physics/assess"
)

// report answers report(text, watch, done).
func report(_ js.Value, given []js.Value) any {
	text, watch, done := given[0].String(), given[1], given[2]
	go reply(done, func() ([]byte, error) {
		return watched(watch, func(w assess.Watch) ([]byte, error) { return answer.Report([]byte(text), w) })
	})
	return nil
}

// spread answers spread(text, samples, seed, watch, done).
func spread(_ js.Value, given []js.Value) any {
	text, watch, done := given[0].String(), given[3], given[4]
	options := assess.SpreadOptions{Samples: given[1].Int(), Seed: int32(given[2].Int())}
	go reply(done, func() ([]byte, error) {
		return watched(watch, func(w assess.Watch) ([]byte, error) {
			options.Watch = w
			return answer.Spread([]byte(text), options)
		})
	})
	return nil
}

// remedies answers remedies(text, finding, samples, seed, watch, done).
func remedies(_ js.Value, given []js.Value) any {
	text, finding, watch, done := given[0].String(), given[1].String(), given[4], given[5]
	options := assess.SpreadOptions{Samples: given[2].Int(), Seed: int32(given[3].Int())}
	go reply(done, func() ([]byte, error) {
		return watched(watch, func(w assess.Watch) ([]byte, error) {
			options.Watch = w
			return answer.Remedied([]byte(text), finding, options)
		})
	})
	return nil
}

// watched runs what the host watches, where it gave a function for that.
func watched(watch js.Value, run func(assess.Watch) ([]byte, error)) ([]byte, error) {
	if watch.Type() != js.TypeFunction {
		return run(nil)
	}
	asked := newAsking(watch)
	defer asked.resume.Release()
	return run(asked.goOn)
}

// values answers values(text, done).
func values(_ js.Value, given []js.Value) any {
	text, done := given[0].String(), given[1]
	go reply(done, func() ([]byte, error) { return answer.Values([]byte(text)) })
	return nil
}

// window answers window(text, done).
func window(_ js.Value, given []js.Value) any {
	text, done := given[0].String(), given[1]
	go reply(done, func() ([]byte, error) { return answer.Window([]byte(text)) })
	return nil
}

// comparison answers compare(from, to, watch, done).
func comparison(_ js.Value, given []js.Value) any {
	from, to, watch, done := given[0].String(), given[1].String(), given[2], given[3]
	go reply(done, func() ([]byte, error) {
		return watched(watch, func(w assess.Watch) ([]byte, error) { return answer.Comparison([]byte(from), []byte(to), w) })
	})
	return nil
}

// heap answers heap().
func heap(js.Value, []js.Value) any {
	runtime.GC()
	var stats runtime.MemStats
	runtime.ReadMemStats(&stats)
	return float64(stats.HeapAlloc)
}

// reply computes and tells what came of it.
func reply(done js.Value, compute func() ([]byte, error)) {
	defer func() {
		if broken := recover(); broken != nil {
			done.Invoke("broken", fmt.Sprint(broken))
		}
	}()
	text, err := compute()
	switch {
	case errors.Is(err, assess.ErrStopped):
		done.Invoke("stopped", "")
	case err != nil:
		refusal, _ := jsonform.Marshal(answer.RefusalOf(err))
		done.Invoke("refused", string(refusal))
	default:
		done.Invoke("answer", string(text))
	}
}

// asking is one run's conversation with the host, which may need a turn of its own to hear of a stop.
type asking struct {
	watch  js.Value
	resume js.Func
	later  chan bool
}

func newAsking(watch js.Value) *asking {
	a := &asking{watch: watch, later: make(chan bool, 1)}
	a.resume = js.FuncOf(func(_ js.Value, given []js.Value) any {
		a.later <- given[0].Bool()
		return nil
	})
	return a
}

// goOn is the watch of a run.
func (a *asking) goOn(done, total int) bool {
	now := a.watch.Invoke(done, total, a.resume)
	if now.Type() == js.TypeBoolean {
		return now.Bool()
	}
	return <-a.later
}
