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

// ahead is how many documents may wait for a process.
const ahead = 32

// question is a document with its number and the answer that is wanted of a host.
type question struct {
	document
	number int
	want   given
}

// host is a core elsewhere, in one process or several that share the documents.
type host struct {
	*tally
	processes []*process
}

// process answers a line of text by a line of its own.
type process struct {
	*tally
	command *exec.Cmd
	in      io.WriteCloser
	out     *bufio.Scanner
	queue   chan question
	ended   chan error
}

// startHost starts the processes of a host by name: node or chromium.
func startHost(ctx context.Context, name, wasm string, processes int) (*host, error) {
	h := &host{tally: &tally{name: name}}
	for range processes {
		p, err := startProcess(ctx, h.tally, wasm)
		if err != nil {
			h.stop()
			return nil, err
		}
		h.processes = append(h.processes, p)
	}
	return h, nil
}

func startProcess(ctx context.Context, of *tally, wasm string) (*process, error) {
	command := exec.CommandContext(ctx, "node", "deploy/agreement/host.mjs", of.name, wasm)
	command.Stderr = os.Stderr
	in, err := command.StdinPipe()
	if err != nil {
		return nil, err
	}
	out, err := command.StdoutPipe()
	if err != nil {
		return nil, err
	}
	p := &process{tally: of, command: command, in: in, out: bufio.NewScanner(out), queue: make(chan question, ahead), ended: make(chan error, 1)}
	if err := command.Start(); err != nil {
		return nil, err
	}
	go func() { p.ended <- p.work() }()
	return p, nil
}

// ask gives the document to the process that has the fewest waiting.
func (h *host) ask(q question) {
	least := h.processes[0]
	for _, p := range h.processes {
		if len(p.queue) < len(least.queue) {
			least = p
		}
	}
	least.queue <- q
}

// finish waits for the answers that are still to come.
func (h *host) finish() error {
	var first error
	for _, p := range h.processes {
		close(p.queue)
		if err := <-p.ended; err != nil && first == nil {
			first = err
		}
	}
	return first
}

// stop ends the processes.
func (h *host) stop() {
	for _, p := range h.processes {
		_ = p.in.Close()
		_ = p.command.Wait()
	}
}

// work asks one document after the other. After a fault it only empties the queue.
func (p *process) work() (err error) {
	for q := range p.queue {
		if err == nil {
			err = p.compare(q)
		}
	}
	return err
}

// compare asks one document and says what differs.
func (p *process) compare(q question) error {
	if _, err := io.WriteString(p.in, q.line()); err != nil {
		return fmt.Errorf("%s: %w", p.name, err)
	}
	if !p.out.Scan() {
		return fmt.Errorf("%s ended at document %s: %w", p.name, q.name, p.out.Err())
	}
	kind, digest, _ := strings.Cut(p.out.Text(), " ")
	got := given{kind, digest}
	p.add(q.number, got)
	if got != q.want {
		p.differs()
		fmt.Printf("%s: %s is %s %.16s here, %s %.16s there\n", p.name, q.name, q.want.kind, q.want.digest, got.kind, got.digest)
	}
	return nil
}
