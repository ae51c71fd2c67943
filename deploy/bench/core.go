package main

import (
	"bufio"
	"fmt"
	"io"
	"maps"
	"os"
	"slices"
	"strconv"
	"strings"
	"time"
)

// coreRow is a line of the table that a Go benchmark fills: the range over its parts, each the best of its repeats, because other work on the machine
// only ever makes a repeat longer.
type coreRow struct {
	name      string
	benchmark string        // package and name
	wanted    time.Duration // zero means that nothing is asked of it
}

// coreRows are the computations, in the order of the table.
var coreRows = []coreRow{
	{"one assessment with the spread of every finding", "assess.Run", 0},
	{"from decoded document to report, by model", "document.Assess", 0},
	{"one assessment without spread, geometry kept, maps of engine out and link lost included", "assess.SinglePass", 0},
	{"value and verdict of every finding alone, geometry kept", "assess.Answers", 2e6},
	{"all answers once more for one changed input, maps kept", "assess.MovedPass", 2e6},
	{"512 samples with all inputs moved at once, geometry kept, two workers", "assess.Spread", 250 * time.Millisecond},
	{"one of these samples", "assess.SampledPass", 0},
	{"remedies for all open findings of Redshank's ramp launch, geometry kept, two workers", "assess.Remedies", 500 * time.Millisecond},
	{"from decoded document to report with those remedies, one worker", "document.Mended", 0},
	{"geometry and lattice of one model", "assess.Prepare", 0},
	{"lattice of 400 horseshoes", "lift.SolveFourHundred", 0},
	{"one launch path, by method", "motion.Launch", 100 * time.Microsecond},
	{"thrust lost at 25 moments of a launch", "motion.FailureSweep", 0},
	{"one landing", "landing.Fly", 0},
	{"engine out: 200 points of a circuit, ground at 72 headings each", "reach.Map", 50 * time.Millisecond},
	{"engine out: areas in reach from 200 places on 72 headings each", "reach.Zones", 50 * time.Millisecond},
	{"link lost: 1,000 samples with outlines, by action", "footprint.Footprint", 100 * time.Millisecond},
	{"one aerodrome report decoded", "metar.Decode", 0},
}

// measured are the figures of one benchmark.
type measured struct {
	best  map[string]time.Duration // of the repeats, by part
	bytes float64                  // the most a part allocates
}

// times returns the least and the most time of a part.
func (m measured) times() (least, most time.Duration) {
	all := slices.Collect(maps.Values(m.best))
	return slices.Min(all), slices.Max(all)
}

// printCore prints the rows that the output of benchmarks holds, and that of the equations beside OpenBLAS. It is an error when one is missing.
func printCore(path string) error {
	file, err := os.Open(path)
	if err != nil {
		return err
	}
	defer func() { _ = file.Close() }()
	found, beside, err := readBenchmarks(file)
	if err != nil {
		return err
	}
	for _, row := range coreRows {
		m, ok := found[row.benchmark]
		if !ok {
			return fmt.Errorf("no figures of benchmark %s", row.benchmark)
		}
		fmt.Printf("| %s | %s | %s |\n", row.name, m, row.verdict(m)+row.ratio(m, found[reference]))
	}
	fmt.Printf("| %s | %s | |\n", beside[0], beside[1])
	return printWasm(file, found)
}

// reference is the benchmark of the same run that assessments are told as a multiple of, so that machines can be compared.
const reference = "assess.Prepare"

// ratio returns how many times the reference an assessment takes; nothing for other rows.
func (r coreRow) ratio(m, reference measured) string {
	if !strings.HasPrefix(r.benchmark, "assess.") || len(reference.best) == 0 {
		return ""
	}
	_, most := m.times()
	_, base := reference.times()
	return fmt.Sprintf(" (%.2f times geometry and lattice)", float64(most)/float64(base))
}

// verdict returns what is wanted of a row, and whether it is missed.
func (r coreRow) verdict(m measured) string {
	if r.wanted == 0 {
		return ""
	}
	text := "at most " + short(r.wanted)
	if _, most := m.times(); most > r.wanted {
		text += ", missed"
	}
	return text
}

// String returns the range of times, and what is allocated where it is known.
func (m measured) String() string {
	least, most := m.times()
	text := short(most)
	if len(m.best) > 1 {
		text = short(least) + " to " + text
	}
	switch {
	case m.bytes >= 1e6:
		return fmt.Sprintf("%s, %.1f MB", text, m.bytes/1e6)
	case m.bytes > 0:
		return fmt.Sprintf("%s, %.1f kB", text, m.bytes/1e3)
	}
	return text
}

// short returns a time with two or three digits.
func short(d time.Duration) string {
	switch {
	case d < 10*time.Microsecond:
		return fmt.Sprintf("%.1f µs", float64(d)/1e3)
	case d < time.Millisecond:
		return fmt.Sprintf("%.0f µs", float64(d)/1e3)
	case d < 10*time.Millisecond:
		return fmt.Sprintf("%.1f ms", float64(d)/1e6)
	}
	return fmt.Sprintf("%.0f ms", float64(d)/1e6)
}

// readBenchmarks reads what go test -bench prints, with the line of the equations beside OpenBLAS somewhere in it.
func readBenchmarks(from io.Reader) (found map[string]measured, beside [2]string, err error) {
	found = map[string]measured{}
	owner := ""
	for lines := bufio.NewScanner(from); lines.Scan(); err = lines.Err() {
		line := lines.Text()
		words := strings.Fields(line)
		switch {
		case strings.HasPrefix(line, "pkg: "):
			owner = line[strings.LastIndex(line, "/")+1:]
		case strings.Contains(line, "times OpenBLAS"):
			beside[0], beside[1], _ = strings.Cut(line, ": ")
		case strings.HasPrefix(line, "Benchmark") && len(words) > 3:
			name := benchmarkName(owner, words[0])
			found[name] = found[name].with(words)
		}
	}
	if err == nil && beside[0] == "" {
		err = fmt.Errorf("no line of the equations beside OpenBLAS")
	}
	return found, beside, err
}

// benchmarkName returns package and name of a benchmark without its part and the number of processors.
func benchmarkName(owner, word string) string {
	name, _, _ := strings.Cut(strings.TrimPrefix(word, "Benchmark"), "/")
	if at := strings.LastIndex(name, "-"); at > 0 {
		name = name[:at]
	}
	return owner + "." + name
}

// with adds the figures of one line: name, repeats, then values with their units.
func (m measured) with(words []string) measured {
	if m.best == nil {
		m.best = map[string]time.Duration{}
	}
	for i := 3; i < len(words); i += 2 {
		value, err := strconv.ParseFloat(words[i-1], 64)
		if err != nil {
			continue
		}
		switch words[i] {
		case "ns/op":
			if best, known := m.best[words[0]]; !known || time.Duration(value) < best {
				m.best[words[0]] = time.Duration(value)
			}
		case "B/op":
			m.bytes = max(m.bytes, value)
		}
	}
	return m
}
