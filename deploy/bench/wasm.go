package main

import (
	"bufio"
	"fmt"
	"io"
	"slices"
	"strings"
	"time"
)

// What is wanted of the page's core: at most so many times the native time, and so many bytes as sent.
const (
	wantedRatio = 6
	wantedBytes = 1_200_000
)

// wasmRows are what is asked of the page's core and, by a benchmark of the same name, of the native one.
var wasmRows = []struct{ name, benchmark string }{
	{"from document to report in the page's core, WebAssembly in Node, by model", "Assess"},
	{"the same of Redshank's ramp launch with the remedies of all its open findings", "Mended"},
}

// printWasm prints the rows of the page's core.
func printWasm(file io.ReadSeeker, found map[string]measured) error {
	if _, err := file.Seek(0, io.SeekStart); err != nil {
		return err
	}
	sizes, err := wasmSizes(file)
	if err != nil {
		return err
	}
	for _, row := range wasmRows {
		times, err := wasmTimes(row.name, found["document."+row.benchmark], found["wasm."+row.benchmark])
		if err != nil {
			return err
		}
		fmt.Print(times)
	}
	fmt.Print(sizes)
	return nil
}

// wasmTimes returns the rows of the page's core beside the native one, from the benchmarks of both.
func wasmTimes(name string, native, wasm measured) (string, error) {
	var ratios []float64
	for part, there := range wasm.best {
		here, ok := partOf(native, part)
		if !ok {
			return "", fmt.Errorf("no native figures of %s", part)
		}
		ratios = append(ratios, float64(there)/float64(here))
	}
	if len(ratios) == 0 {
		return "", fmt.Errorf("no figures of the page's core")
	}
	verdict := fmt.Sprintf("at most %d", wantedRatio)
	if slices.Max(ratios) > wantedRatio {
		verdict += ", missed"
	}
	return fmt.Sprintf("| %s | %s | |\n| times the native time | %.1f to %.1f | %s |\n", name, wasm, slices.Min(ratios), slices.Max(ratios), verdict), nil
}

// partOf finds a part by its name without the number of processors.
func partOf(m measured, name string) (time.Duration, bool) {
	for other, best := range m.best {
		if other == name || strings.HasPrefix(other, name+"-") {
			return best, true
		}
	}
	return 0, false
}

// wasmSizes reads the line of sizes and returns its row.
func wasmSizes(from io.Reader) (string, error) {
	for lines := bufio.NewScanner(from); lines.Scan(); {
		var raw, gz, br int
		if n, _ := fmt.Sscanf(lines.Text(), "core as sent: %d %d %d", &raw, &gz, &br); n == 3 {
			verdict := fmt.Sprintf("at most %.1f MB in brotli", wantedBytes/1e6)
			if br > wantedBytes {
				verdict += ", missed"
			}
			return fmt.Sprintf("| the page's core: plain, gzip, brotli | %.2f, %.2f, %.2f MB | %s |\n", float64(raw)/1e6, float64(gz)/1e6, float64(br)/1e6,
				verdict), nil
		}
	}
	return "", fmt.Errorf("no line of the core's sizes")
}
