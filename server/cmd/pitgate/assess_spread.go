package main

import (
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"runtime"
	"strconv"
	"strings"

	"pitgate/server/document"
	"pitgate/server/physics/assess"
	"pitgate/server/physics/sample"
)

// samples is how many samples a flag asks for; zero: none.
type samples int

// String returns the number.
func (s *samples) String() string { return strconv.Itoa(int(*s)) }

// IsBoolFlag lets the flag stand without a number.
func (s *samples) IsBoolFlag() bool { return true }

// Set reads the number, or takes 512 where the flag stands alone.
func (s *samples) Set(text string) error {
	if text == "true" {
		*s = sample.DefaultCount
		return nil
	}
	count, err := strconv.Atoi(text)
	if err != nil || count < sample.MinimumCount || count > sample.MaximumCount {
		return fmt.Errorf("give %d to %d samples", sample.MinimumCount, sample.MaximumCount)
	}
	*s = samples(count)
	return nil
}

// withCount joins "--spread 1024" into one word, as its number may be left out.
func withCount(args []string) []string {
	var out []string
	for i, word := range args {
		if i > 0 && (args[i-1] == "--spread" || args[i-1] == "-spread") {
			if _, err := strconv.Atoi(word); err == nil {
				out[len(out)-1] += "=" + word
				continue
			}
		}
		out = append(out, word)
	}
	return out
}

// assessed computes a document, with samples where they are asked for; it tells how far it is on a terminal.
func assessed(input assess.Input, count, seed int, progress io.Writer) (assess.Report, error) {
	if count == 0 {
		return document.Assess(input)
	}
	if seed < math.MinInt32 || seed > math.MaxInt32 {
		return assess.Report{}, errors.New("seed: give a number of 32 bits")
	}
	options := assess.SpreadOptions{Samples: count, Seed: int32(seed), Workers: min(runtime.NumCPU(), 64)}
	if terminal(progress) {
		options.Watch = watchOn(progress)
		defer tell(progress, "\r%s\r", strings.Repeat(" ", 20))
	}
	return document.AssessSpread(input, options)
}

// watchOn tells every twentieth of a run.
func watchOn(w io.Writer) assess.Watch {
	last := -1
	return func(done, total int) bool {
		if share := 20 * done / max(1, total); share != last {
			last = share
			tell(w, "\rsampling %3d %%", 5*share)
		}
		return true
	}
}

// terminal reports whether somebody looks on.
func terminal(w io.Writer) bool {
	file, ok := w.(*os.File)
	if !ok {
		return false
	}
	state, err := file.Stat()
	return err == nil && state.Mode()&os.ModeCharDevice != 0
}
