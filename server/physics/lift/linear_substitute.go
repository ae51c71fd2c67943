package lift

// together is how many right-hand sides are solved side by side: their sums do not wait for each other.
const together = 4

// substitute solves with the factors for each right-hand side.
//
// Formula: L y = P b, U x = y; the sums run over ascending columns.
// Valid for: factors of decompose.
// Source: forward and back substitution.
func substitute(factors []float64, n int, order []int, columns [][]float64) [][]float64 {
	out := make([][]float64, len(columns))
	for first := 0; first < len(columns); first += together {
		some := columns[first:min(first+together, len(columns))]
		x := gather(some, order)
		forward(factors, n, x)
		backward(factors, n, x)
		for k := range some {
			out[first+k] = pick(x, k)
		}
	}
	return out
}

// gather puts up to four right-hand sides side by side in the order of the rows.
func gather(columns [][]float64, order []int) [][together]float64 {
	x := make([][together]float64, len(order))
	for k, column := range columns {
		for i, from := range order {
			x[i][k] = column[from]
		}
	}
	return x
}

// pick returns one of the right-hand sides that stand side by side.
func pick(x [][together]float64, k int) []float64 {
	column := make([]float64, len(x))
	for i := range x {
		column[i] = x[i][k]
	}
	return column
}

// forward solves with the lower factor.
func forward(factors []float64, n int, x [][together]float64) {
	for i := range x {
		x[i] = subtractProducts(x[i], factors[i*n:i*n+i], x[:i])
	}
}

// backward solves with the upper factor.
func backward(factors []float64, n int, x [][together]float64) {
	for i := n - 1; i >= 0; i-- {
		sums := subtractProducts(x[i], factors[i*n+i+1:(i+1)*n], x[i+1:])
		pivot := factors[i*n+i]
		for k := range sums {
			x[i][k] = sums[k] / pivot
		}
	}
}

// subtractProducts takes the products of a row of factors with the solutions off the sums.
func subtractProducts(sums [together]float64, row []float64, x [][together]float64) [together]float64 {
	s0, s1, s2, s3 := sums[0], sums[1], sums[2], sums[3]
	x = x[:len(row)]
	for j, factor := range row {
		s0 -= float64(factor * x[j][0])
		s1 -= float64(factor * x[j][1])
		s2 -= float64(factor * x[j][2])
		s3 -= float64(factor * x[j][3])
	}
	return [together]float64{s0, s1, s2, s3}
}
