//go:build js && wasm

// Command wasm is the core for the page's worker: one document in, one report out, without network and files. The host defines globalThis.pitgateCore
// before it starts the program and is handed an object with
//
//	version                      of the core
//	report(text, watch, done)    the report of one document; watch(done, total, resume) is asked between passes and answers true to go on, false to
//	                             stop, or undefined when it will call resume(true or false) later
//	spread(text, samples, seed, watch, done)
//	                             the same with bands and probabilities from samples; zero samples: the core's own count
//	remedies(text, finding, samples, seed, watch, done)
//	                             the same with the least changes that let open findings hold, or the one named; zero samples: bands without samples
//	values(text, done)           its values and verdicts alone, which come sooner
//	window(text, done)           the winds in which it holds
//	compare(from, to, watch, done)  what changed between two documents and which findings moved
//	heap()                       bytes in use, after a collection
//
// where done(kind, text) is called once, with kind "answer", "refused", "stopped" or "broken". The host says by GOGC and GOMEMLIMIT in the program's
// environment when the collector runs.
package main

import (
	"syscall/js"

	"pitgate/server/physics/assess"
)

func main() {
	core := js.Global().Get("Object").New()
	core.Set("version", assess.Version)
	core.Set("report", js.FuncOf(report))
	core.Set("spread", js.FuncOf(spread))
	core.Set("remedies", js.FuncOf(remedies))
	core.Set("values", js.FuncOf(values))
	core.Set("window", js.FuncOf(window))
	core.Set("compare", js.FuncOf(comparison))
	core.Set("heap", js.FuncOf(heap))
	js.Global().Call("pitgateCore", core)
	select {}
}
