package lift

import (
	"slices"
	"testing"
)

// BenchmarkLinear400 decomposes and solves 400 unknowns for six right-hand sides.
func BenchmarkLinear400(b *testing.B) {
	const n = 400
	matrix := randomEntries(1, n*n)
	columns := make([][]float64, 6)
	for k := range columns {
		columns[k] = randomEntries(uint64(k+2), n)
	}
	work := slices.Clone(matrix)
	b.ReportAllocs()
	for b.Loop() {
		copy(work, matrix)
		if _, err := solveColumns(work, columns); err != nil {
			b.Fatal(err)
		}
	}
}
