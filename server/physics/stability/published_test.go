package stability

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// inputs are the named inputs of one published row.
type inputs map[string]string

// number returns an input as a number; a missing or broken one fails the test.
func (in inputs) number(t *testing.T, name string) float64 {
	t.Helper()
	value, err := strconv.ParseFloat(in[name], 64)
	if err != nil {
		t.Fatalf("input %s: %v", name, err)
	}
	return value
}

// formula computes the figure of one row; name is the part of the row's id after the slash.
type formula func(t *testing.T, name string, in inputs) float64

// checkPublished compares every row of a source with the formula that the first part of its id names.
func checkPublished(t *testing.T, source string, formulas map[string]formula) {
	t.Helper()
	file, err := os.Open(filepath.Join("..", "..", "..", "testdata", "published", source, "values.csv"))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil || len(rows) < 2 {
		t.Fatalf("%s: %d rows, %v", source, len(rows), err)
	}
	for _, row := range rows[1:] {
		t.Run(row[0], func(t *testing.T) {
			t.Parallel()
			checkRow(t, row, formulas)
		})
	}
}

// checkRow compares one row: id, inputs, expected, tolerance, page, status.
func checkRow(t *testing.T, row []string, formulas map[string]formula) {
	t.Helper()
	group, name, _ := strings.Cut(row[0], "/")
	compute, known := formulas[group]
	if !known {
		t.Fatalf("no formula for %q", group)
	}
	in := inputs{}
	for _, field := range strings.Fields(row[1]) {
		key, value, _ := strings.Cut(field, "=")
		in[key] = value
	}
	want, err := strconv.ParseFloat(row[2], 64)
	if err != nil {
		t.Fatal(err)
	}
	amount, kind, _ := strings.Cut(row[3], " ")
	tolerance, err := strconv.ParseFloat(amount, 64)
	if err != nil || (kind != "rel" && kind != "abs") {
		t.Fatalf("tolerance %q: %v", row[3], err)
	}
	if kind == "rel" {
		tolerance *= math.Abs(want)
	}
	if got := compute(t, name, in); !(math.Abs(got-want) <= tolerance) {
		t.Errorf("got %.8g, want %.8g within %.2g (%s, %s)", got, want, tolerance, row[4], row[5])
	}
}
