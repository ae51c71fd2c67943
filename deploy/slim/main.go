// Command slim takes out of a Go program for WebAssembly what only a person reading a stack trace needs: names of functions, files and lines. What the
// program computes stays as it is; a panic still says what broke, but not where. It also packs what stays of the table of
// functions, which the module writes out when it starts, and lays the data out in few pieces, since the linker's hundred thousand little ones compress
// badly.
//
//	go run ./deploy/slim FILE.wasm
package main

import (
	"errors"
	"fmt"
	"os"
	"slices"
)

func main() {
	if len(os.Args) != 2 {
		fmt.Fprintln(os.Stderr, "usage: slim FILE.wasm")
		os.Exit(2)
	}
	if err := rewrite(os.Args[1]); err != nil {
		fmt.Fprintln(os.Stderr, "slim:", err)
		os.Exit(1)
	}
}

// rewrite makes the module of a file smaller in place.
func rewrite(file string) error {
	text, err := os.ReadFile(file)
	if err != nil {
		return err
	}
	slim, err := slimmed(text)
	if err != nil {
		return fmt.Errorf("%s: %w", file, err)
	}
	return os.WriteFile(file, slim, 0o644)
}

// slimmed returns the module without what only stack traces need, and with the rest of its table of functions packed.
func slimmed(module []byte) ([]byte, error) {
	parts, err := sections(module)
	if err != nil {
		return nil, err
	}
	parts = slices.DeleteFunc(parts, func(s section) bool { return s.id == customSection })
	data := slices.IndexFunc(parts, func(s section) bool { return s.id == dataSection })
	if data < 0 {
		return nil, errors.New("has no data")
	}
	at, image, err := load(parts[data].content)
	if err != nil {
		return nil, err
	}
	packed, err := condense(at, image)
	if err != nil {
		return nil, err
	}
	parts[data].content = store(at, image)
	if parts, err = withStart(parts, packed.unpacking()); err != nil {
		return nil, err
	}
	out := append([]byte(nil), module[:headerBytes]...)
	for _, part := range parts {
		out = part.append(out)
	}
	return out, nil
}
