// Package published holds values printed elsewhere, one folder a source; its test keeps them in form and in use.
package published

import (
	"encoding/csv"
	"fmt"
	"io/fs"
	"maps"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// server is where the tests that read the values are.
const server = "../../server"

// parts is what a package's tests count for in the table.
var parts = map[string]string{
	"physics/planform": aerodynamics, "physics/section": aerodynamics, "physics/lift": aerodynamics, "physics/drag": aerodynamics,
	"physics/stability": aerodynamics, "physics/weighing": aerodynamics,
	"physics/air": airAndWeather, "physics/weather": airAndWeather, "physics/sun": airAndWeather, "metar": airAndWeather,
	"physics/field": field, "survey": field,
	"physics/engine": "engine",
	"physics/motion": motion, "physics/landing": motion, "physics/reach": motion, "physics/footprint": motion,
	"physics/loads": structure, "physics/structure": structure, "physics/aeroelastic": structure,
	"physics/fuel": systems, "physics/heat": systems, "physics/radio": systems, "physics/packs": systems,
	"physics/assess":     "whole assessment",
	"physics/sample":     "spread",
	"physics/elementary": "arithmetic",
}

const (
	aerodynamics  = "aerodynamics and balance"
	airAndWeather = "air, weather and sun"
	field         = "field"
	motion        = "launch, landing, fall"
	structure     = "structure and speeds"
	systems       = "fuel, heat, radio, packs"
	elsewhere     = "records and keys"
	leastTextSize = 80
)

// least is what must be printed elsewhere for a part.
var least = map[string]struct{ rows, sources int }{aerodynamics: {40, 12}, airAndWeather: {100, 6}, field: {20, 3}, motion: {60, 6}, structure: {35, 4}}

var (
	columns  = []string{"id", "inputs", "expected", "tolerance", "page", "status"}
	statuses = []string{"verified", "from memory", "common practice"}
	// computedApart are folders whose numbers come from other programs of this project's authors, not from print.
	computedApart = map[string]bool{"separate_lattice": true, "separate_ephemeris": true, "separate_fall": true, "separate_integration": true}
	year          = regexp.MustCompile(`\b(1[89]|20)\d\d\b`)
)

// source is one folder.
type source struct {
	name    string
	readers []string // packages whose tests name the folder, from server
	rows    [][]string
}

// folders lists the folders with values.
func folders(t *testing.T) []string {
	t.Helper()
	entries, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, entry := range entries {
		if entry.IsDir() {
			out = append(out, entry.Name())
		}
	}
	if len(out) == 0 {
		t.Fatal("no folders")
	}
	return out
}

// readRows returns the rows below the header of a folder's values.
func readRows(t *testing.T, folder string) [][]string {
	t.Helper()
	file, err := os.Open(filepath.Join(folder, "values.csv"))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil || len(rows) < 2 {
		t.Fatalf("%s: %d rows, %v", folder, len(rows), err)
	}
	if !slices.Equal(rows[0], columns) {
		t.Fatalf("%s: columns %v, want %v", folder, rows[0], columns)
	}
	return rows[1:]
}

// readersOf returns, for each folder, the packages below server whose tests name it in quotes.
func readersOf(t *testing.T, names []string) map[string][]string {
	t.Helper()
	readers := map[string][]string{}
	err := filepath.WalkDir(server, func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || !strings.HasSuffix(path, "_test.go") {
			return err
		}
		text, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		place, err := filepath.Rel(server, filepath.Dir(path))
		if err != nil {
			return err
		}
		for _, name := range names {
			if strings.Contains(string(text), `"`+name+`"`) && !slices.Contains(readers[name], place) {
				readers[name] = append(readers[name], filepath.ToSlash(place))
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return readers
}

// sources reads every folder.
func sources(t *testing.T) []source {
	t.Helper()
	names := folders(t)
	readers := readersOf(t, names)
	out := make([]source, len(names))
	for i, name := range names {
		out[i] = source{name: name, readers: readers[name], rows: readRows(t, name)}
	}
	return out
}

// part returns the part of the work that a source's first reader belongs to; aerodynamics comes before others.
func (s source) part() string {
	found := elsewhere
	for _, reader := range s.readers {
		switch part := parts[reader]; {
		case part == aerodynamics:
			return part
		case part != "":
			found = part
		}
	}
	return found
}

func TestEveryRowIsInForm(t *testing.T) {
	t.Parallel()
	for _, name := range folders(t) {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			seen := map[string]bool{}
			for _, row := range readRows(t, name) {
				if row[0] == "" || seen[row[0]] {
					t.Errorf("id %q is empty or double", row[0])
				}
				seen[row[0]] = true
				if err := rowFault(row); err != nil {
					t.Errorf("%s: %v", row[0], err)
				}
			}
		})
	}
}

// rowFault returns what is wrong with a row: a number that is none, a tolerance that is none, a status that is none, no page.
func rowFault(row []string) error {
	if !slices.Contains(statuses, row[5]) {
		return fmt.Errorf("status %q", row[5])
	}
	if strings.TrimSpace(row[4]) == "" {
		return fmt.Errorf("no page")
	}
	if row[3] == "exact" {
		return nil
	}
	amount, kind, _ := strings.Cut(row[3], " ")
	tolerance, err := strconv.ParseFloat(amount, 64)
	if err != nil || !(tolerance > 0) || math.IsInf(tolerance, 0) || (kind != "abs" && kind != "rel") {
		return fmt.Errorf("tolerance %q", row[3])
	}
	if value, err := strconv.ParseFloat(row[2], 64); err != nil || math.IsNaN(value) || math.IsInf(value, 0) {
		return fmt.Errorf("expected %q", row[2])
	}
	return inputFault(row[1])
}

// inputFault returns the first input that is no name=value, or a value that is not finite.
func inputFault(inputs string) error {
	for _, field := range strings.Fields(inputs) {
		name, text, ok := strings.Cut(field, "=")
		if !ok || name == "" || text == "" {
			return fmt.Errorf("input %q", field)
		}
		if value, err := strconv.ParseFloat(text, 64); err == nil && (math.IsNaN(value) || math.IsInf(value, 0)) {
			return fmt.Errorf("input %q", field)
		}
	}
	return nil
}

func TestBrokenRowsAreFound(t *testing.T) {
	t.Parallel()
	good := []string{"a/1", "x=1 y=two", "2.5", "1e-3 rel", "page 4", "verified"}
	if err := rowFault(good); err != nil {
		t.Fatal(err)
	}
	for column, bad := range map[int][]string{
		1: {"x", "=1", "x=NaN"}, 2: {"", "NaN", "+Inf", "two"}, 3: {"0 abs", "-1 rel", "1e-3", "NaN rel", "1 per"}, 4: {"", " "}, 5: {"", "checked"},
	} {
		for _, text := range bad {
			row := slices.Clone(good)
			row[column] = text
			if rowFault(row) == nil {
				t.Errorf("%s %q must be refused", columns[column], text)
			}
		}
	}
}

func TestEveryFolderSaysWhereItsValuesComeFrom(t *testing.T) {
	t.Parallel()
	index, err := os.ReadFile("README.md")
	if err != nil {
		t.Fatal(err)
	}
	lines := map[string]string{}
	for line := range strings.Lines(string(index)) {
		cells := strings.Split(line, "|")
		if len(cells) < 2 || strings.Contains(line, "---") || strings.HasPrefix(line, "| folder ") {
			continue
		}
		if len(cells) != 6 || slices.ContainsFunc(cells[1:5], func(cell string) bool { return strings.TrimSpace(cell) == "" }) {
			t.Errorf("README.md: %q needs folder, author, publication and year", line)
		}
		lines[strings.TrimSpace(cells[1])] = line
	}
	for _, name := range folders(t) {
		text, err := os.ReadFile(filepath.Join(name, "SOURCE.md"))
		if err != nil {
			t.Error(err)
			continue
		}
		if !strings.HasPrefix(string(text), "# ") || len(text) < leastTextSize {
			t.Errorf("%s: SOURCE.md needs a title and a text", name)
		}
		if lines[name] == "" && !year.MatchString(string(text)) {
			t.Errorf("%s: give author, publication and year in README.md or a year in SOURCE.md", name)
		}
		delete(lines, name)
	}
	for name := range lines {
		t.Errorf("README.md lists %q, which is no folder", name)
	}
}

func TestEveryFolderIsRead(t *testing.T) {
	t.Parallel()
	for _, s := range sources(t) {
		if len(s.readers) == 0 {
			t.Errorf("%s: no test below server names it, its %d rows are dead", s.name, len(s.rows))
		}
	}
}

// tally counts rows of one part.
type tally struct {
	folders, printed, computed, memory, practice int
	sources                                      int // folders with a printed row
}

// add counts the rows of a folder.
func (c *tally) add(rows [][]string) {
	c.folders++
	before := c.printed
	for _, row := range rows {
		switch {
		case row[5] == "common practice":
			c.practice++
		case row[5] == "from memory":
			c.memory++
		case strings.Contains(row[4], "computed"):
			c.computed++
		default:
			c.printed++
		}
	}
	if c.printed > before {
		c.sources++
	}
}

func TestCountOfRows(t *testing.T) {
	t.Parallel()
	counts, outside := map[string]*tally{}, map[string]*tally{}
	for _, s := range sources(t) {
		part := s.part()
		if counts[part] == nil {
			counts[part], outside[part] = &tally{}, &tally{}
		}
		counts[part].add(s.rows)
		if !computedApart[s.name] {
			outside[part].add(s.rows)
		}
	}
	t.Logf("%-26s %8s %8s %9s %12s %16s", "part", "folders", "printed", "computed", "from memory", "common practice")
	for _, part := range slices.Sorted(maps.Keys(counts)) {
		c := counts[part]
		t.Logf("%-26s %8d %8d %9d %12d %16d", part, c.folders, c.printed, c.computed, c.memory, c.practice)
	}
	t.Logf("verified rows are printed, or computed apart from a formula that was read; %s: %d printed rows in %d of %d outside sources",
		aerodynamics, outside[aerodynamics].printed, outside[aerodynamics].sources, outside[aerodynamics].folders)
	for part, want := range least {
		if c := outside[part]; c == nil || c.printed < want.rows || c.sources < want.sources {
			t.Errorf("%s: %+v, want at least %d printed rows in %d outside sources", part, c, want.rows, want.sources)
		}
	}
}
