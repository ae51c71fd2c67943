//go:build !js

// Command wasm is the core for the page's worker; only a build for js and wasm computes anything.
package main

import (
	"fmt"
	"os"
)

func main() {
	fmt.Fprintln(os.Stderr, "this program runs in the page's worker: build it with GOOS=js GOARCH=wasm")
	os.Exit(2)
}
