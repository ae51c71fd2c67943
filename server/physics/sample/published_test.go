package sample

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// published is one row: its inputs, what was printed, and how far off an answer may be.
type published struct {
	inputs              map[string]float64
	expected, tolerance float64
}

// rows reads the rows of one kind from a source, by the rest of their id.
func rows(t *testing.T, source, kind string) map[string]published {
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
	out := map[string]published{}
	for _, record := range records[1:] {
		of, name, _ := strings.Cut(record[0], "/")
		if of != kind {
			continue
		}
		row := published{inputs: map[string]float64{}, expected: number(t, record[2]), tolerance: number(t, strings.TrimSuffix(record[3], " abs"))}
		for _, pair := range strings.Fields(record[1]) {
			key, value, _ := strings.Cut(pair, "=")
			row.inputs[key] = number(t, value)
		}
		out[name] = row
	}
	if len(out) == 0 {
		t.Fatalf("%s: no rows of kind %s", source, kind)
	}
	return out
}

func number(t *testing.T, text string) float64 {
	t.Helper()
	value, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return value
}

func (p published) check(t *testing.T, got float64) {
	t.Helper()
	if !(math.Abs(got-p.expected) <= p.tolerance) {
		t.Errorf("got %.17g, want %.17g within %g", got, p.expected, p.tolerance)
	}
}

func TestSobolSequence(t *testing.T) {
	t.Parallel()
	for name, row := range rows(t, "sobol_sequence", "coordinate") {
		v := directionColumns(int(row.inputs["dimension"]) - 1)
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			row.check(t, float64(v.at(int(row.inputs["point"])))/(1<<32))
		})
	}
}

func TestNormalQuantile(t *testing.T) {
	t.Parallel()
	for name, row := range rows(t, "normal_quantile", "quantile") {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			row.check(t, NormalQuantile(row.inputs["share"]))
		})
	}
}

// ishigami has shares in closed form; its inputs run over -pi to pi.
func ishigami(u []float64) float64 {
	x := func(i int) float64 { return math.Pi * (2*u[i] - 1) }
	s1, s2 := math.Sin(x(0)), math.Sin(x(1))
	return s1 + 7*s2*s2 + 0.1*math.Pow(x(2), 4)*s1
}

var gConstants = []float64{0, 1, 4.5, 9, 99, 99, 99, 99}

// gFunction is the product of (|4 u - 2| + a)/(1 + a).
func gFunction(u []float64) float64 {
	out := 1.0
	for i, a := range gConstants {
		out *= (math.Abs(4*u[i]-2) + a) / (1 + a)
	}
	return out
}

func straight(u []float64) float64 {
	sum := 0.0
	for i, x := range u {
		sum += float64(i+1) * x
	}
	return sum
}

func TestClosedFormsAgreeWithPrint(t *testing.T) {
	t.Parallel()
	const a, b = 7.0, 0.1
	pi4 := math.Pow(math.Pi, 4)
	whole := a*a/8 + b*pi4/5 + b*b*pi4*pi4/18 + 0.5
	one := 0.5 * (1 + b*pi4/5) * (1 + b*pi4/5)
	both := b * b * pi4 * pi4 * (1.0/18 - 1.0/50)
	first := map[float64]float64{1: one / whole, 2: a * a / 8 / whole, 3: 0}
	total := map[float64]float64{1: (one + both) / whole, 2: a * a / 8 / whole, 3: both / whole}
	for _, row := range rows(t, "global_sensitivity", "ishigami-first") {
		row.check(t, first[row.inputs["input"]])
	}
	for _, row := range rows(t, "global_sensitivity", "ishigami-total") {
		row.check(t, total[row.inputs["input"]])
	}
	part := func(a float64) float64 { return 1 / (3 * (1 + a) * (1 + a)) }
	product := 1.0
	for _, a := range gConstants {
		product *= 1 + part(a)
	}
	for _, row := range rows(t, "global_sensitivity", "g-first") {
		row.check(t, part(row.inputs["a"])/(product-1))
	}
}

// printed returns the shares of one kind in the order of the inputs.
func printed(t *testing.T, kind string, inputs int) []float64 {
	t.Helper()
	found := rows(t, "global_sensitivity", kind)
	out := make([]float64, inputs)
	for i := range out {
		row, ok := found[strconv.Itoa(i+1)]
		if !ok {
			row = found[strconv.Itoa(len(found))] // further inputs have the last one's constant
		}
		out[i] = row.expected
	}
	return out
}

// known are the functions with printed shares.
var known = []struct {
	name, first string
	inputs      int
	of          func([]float64) float64
}{
	{"ishigami", "ishigami-first", 3, ishigami},
	{"g-function", "g-first", 8, gFunction},
	{"linear", "linear-first", 3, straight},
}

func TestPickSharesAreThoseInPrint(t *testing.T) {
	t.Parallel()
	for _, k := range known {
		t.Run(k.name, func(t *testing.T) {
			t.Parallel()
			pick, err := Evaluate(k.inputs, 8192, 3, k.of)
			if err != nil {
				t.Fatal(err)
			}
			first, total, err := pick.Shares()
			if err != nil {
				t.Fatal(err)
			}
			near(t, "first", first, printed(t, k.first, k.inputs), 0.01)
			if k.name == "ishigami" {
				near(t, "total", total, printed(t, "ishigami-total", k.inputs), 0.01)
			}
		})
	}
}

func TestPlainSampleSharesAreThoseInPrint(t *testing.T) {
	t.Parallel()
	for _, k := range known {
		t.Run(k.name, func(t *testing.T) {
			t.Parallel()
			inputs, y := plainSample(t, k.inputs, 8192, 5, k.of)
			near(t, "plain", inputs.Shares(y), printed(t, k.first, k.inputs), 0.01)
		})
	}
}

// The neighbours that ranks compare must be independent, as those of points drawn by chance are.
func TestRankSharesAreThoseInPrint(t *testing.T) {
	t.Parallel()
	const count = 16384
	for _, k := range known {
		t.Run(k.name, func(t *testing.T) {
			t.Parallel()
			x, y := make([][]float64, k.inputs), make([]float64, count)
			for j := range y {
				point := make([]float64, k.inputs)
				for i := range point {
					point[i] = byChance(i, j)
					x[i] = append(x[i], point[i])
				}
				y[j] = k.of(point)
			}
			shares := make([]float64, k.inputs)
			for i := range shares {
				shares[i] = RankShare(OrderOf(x[i]), y)
			}
			near(t, "rank", shares, printed(t, k.first, k.inputs), 4/math.Sqrt(count))
		})
	}
}

// byChance is a number between 0 and 1 that has nothing to do with its neighbours.
func byChance(input, point int) float64 {
	return fraction(uint32(mix(stream(77, input)+uint64(point)) >> 32))
}

// plainSample asks a function at the points of one run.
func plainSample(t *testing.T, inputs, count int, seed uint64, of func([]float64) float64) (*Inputs, []float64) {
	t.Helper()
	points, err := New(inputs, count, seed)
	if err != nil {
		t.Fatal(err)
	}
	x, y := make([]float64, inputs), make([]float64, count)
	for j := range y {
		for i := range x {
			x[i] = points.Along(i)[j]
		}
		y[j] = of(x)
	}
	by := make([][]float64, inputs)
	for i := range by {
		by[i] = points.Along(i)
	}
	return NewInputs(by), y
}

func near(t *testing.T, what string, got, want []float64, tolerance float64) {
	t.Helper()
	for i := range want {
		if !(math.Abs(got[i]-want[i]) <= tolerance) {
			t.Errorf("%s share %d is %.4f, want %.4f within %g", what, i+1, got[i], want[i], tolerance)
		}
	}
}
