package main

import (
	"bufio"
	"context"
	"fmt"
	"io"
	"os"
	"os/exec"
	"strings"
)

// ahead is how many documents may wait for a host.
const ahead = 64

// question is a document with the answer that is wanted of a host.
type question struct {
	document
	want given
}

// line is the question as a host reads it.
func (d *document) line() []byte {
	if d.samples == 0 {
		return fmt.Appendf(nil, "report %s\n", d.text)
	}
	return fmt.Appendf(nil, "spread %d %d %s\n", d.samples, spreadSeed, d.text)
}

// host is a core in another process that answers a line of text by a line of its own.
type host struct {
	*tally
	command *exec.Cmd
	in      io.WriteCloser
	out     *bufio.Scanner
	queue   chan question
	ended   chan error
}

// startHost starts a host by name: node or chromium.
func startHost(ctx context.Context, name, wasm string) (*host, error) {
	command := exec.CommandContext(ctx, "node", "deploy/agreement/host.mjs", name, wasm)
	command.Stderr = os.Stderr
	in, err := command.StdinPipe()
	if err != nil {
		return nil, err
	}
	out, err := command.StdoutPipe()
	if err != nil {
		return nil, err
	}
	h := &host{tally: &tally{name: name}, command: command, in: in, out: bufio.NewScanner(out), queue: make(chan question, ahead), ended: make(chan error, 1)}
	if err := command.Start(); err != nil {
		return nil, err
	}
	go func() { h.ended <- h.work() }()
	return h, nil
}

// ask gives the host a document.
func (h *host) ask(d document, want given) { h.queue <- question{d, want} }

// finish waits for the answers that are still to come.
func (h *host) finish() error {
	close(h.queue)
	return <-h.ended
}

// stop ends the process.
func (h *host) stop() {
	_ = h.in.Close()
	_ = h.command.Wait()
}

// work asks one document after the other. After a fault it only empties the queue.
func (h *host) work() (err error) {
	for q := range h.queue {
		if err == nil {
			err = h.compare(q)
		}
	}
	return err
}

// compare asks one document and says what differs.
func (h *host) compare(q question) error {
	if _, err := h.in.Write(q.line()); err != nil {
		return fmt.Errorf("%s: %w", h.name, err)
	}
	if !h.out.Scan() {
		return fmt.Errorf("%s ended at document %s: %w", h.name, q.name, h.out.Err())
	}
	kind, digest, _ := strings.Cut(h.out.Text(), " ")
	got := given{kind, digest}
	h.add(got)
	if got != q.want {
		h.differ++
		fmt.Printf("%s: %s is %s %.16s here, %s %.16s there\n", h.name, q.name, q.want.kind, q.want.digest, got.kind, got.digest)
	}
	return nil
}
