package heat

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// inputs are the named values of a published row.
type inputs map[string]string

// at reads a number; a row without it stops the test.
func (in inputs) at(name string) float64 {
	value, err := strconv.ParseFloat(in[name], 64)
	if err != nil {
		return math.NaN()
	}
	return value
}

// method computes what the rows of one kind expect.
type method func(in inputs) float64

// checkPublished compares the rows of a source with the method of their kind, the part of the id before the slash. A row without a method, a
// method without a row and an input no method could read are failures.
func checkPublished(t *testing.T, source string, methods map[string]method) {
	t.Helper()
	used := map[string]bool{}
	for _, record := range readPublished(t, source) {
		kind, _, _ := strings.Cut(record[0], "/")
		compute, known := methods[kind]
		if !known {
			t.Fatalf("%s: no method for row %s", source, record[0])
		}
		used[kind] = true
		t.Run(record[0], func(t *testing.T) {
			t.Parallel()
			compare(t, compute(parseInputs(record[1])), record[2], record[3])
		})
	}
	for kind := range methods {
		if !used[kind] {
			t.Errorf("%s: no row of kind %s", source, kind)
		}
	}
}

// readPublished returns the rows of a source without its head.
func readPublished(t *testing.T, source string) [][]string {
	t.Helper()
	file, err := os.Open(filepath.Join("..", "..", "..", "testdata", "published", source, "values.csv"))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	records, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return records[1:]
}

// parseInputs reads "name=value name=value".
func parseInputs(text string) inputs {
	in := inputs{}
	for _, pair := range strings.Fields(text) {
		name, value, _ := strings.Cut(pair, "=")
		in[name] = value
	}
	return in
}

// parse reads a number.
func parse(t *testing.T, text string) float64 {
	t.Helper()
	value, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return value
}

// compare fails when got is farther from want than the tolerance, "1e-6 rel" or "0.01 abs"; NaN is always farther.
func compare(t *testing.T, got float64, expected, tolerance string) {
	t.Helper()
	want := parse(t, expected)
	size, kind, _ := strings.Cut(tolerance, " ")
	allowed := parse(t, size)
	if kind == "rel" {
		allowed *= math.Abs(want)
	}
	if !(math.Abs(got-want) <= allowed) {
		t.Errorf("got %.9g, published %.9g, tolerance %s", got, want, tolerance)
	}
}
