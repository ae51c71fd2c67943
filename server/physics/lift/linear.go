package lift

import "math"

// solveColumns solves matrix x = column for each column by elimination with row pivots; the matrix (row by row, square) is destroyed.
//
// Errors: ErrUnsolvable when a pivot vanishes.
func solveColumns(matrix []float64, columns [][]float64) ([][]float64, error) {
	n := len(columns[0])
	order, err := decompose(matrix, n)
	if err != nil {
		return nil, err
	}
	out := make([][]float64, len(columns))
	for k, column := range columns {
		out[k] = substitute(matrix, n, order, column)
	}
	return out, nil
}

// decompose replaces the matrix by its lower and upper factors and returns the order of rows.
//
// Formula: P A = L U, unit lower diagonal, largest pivot of each column.
// Valid for: square matrices that are not singular.
// Source: Gaussian elimination with partial pivoting.
func decompose(matrix []float64, n int) ([]int, error) {
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	for k := range n {
		pivot := largestPivot(matrix, n, k)
		top := matrix[pivot*n : (pivot+1)*n]
		if !(math.Abs(top[k]) > 1e-12) || math.IsInf(top[k], 0) {
			return nil, ErrUnsolvable
		}
		swapRows(matrix, n, order, k, pivot)
		eliminate(matrix, n, k)
	}
	return order, nil
}

// largestPivot returns the row at or below k with the largest entry of column k.
func largestPivot(matrix []float64, n, k int) int {
	best := k
	for i := k + 1; i < n; i++ {
		if math.Abs(matrix[i*n+k]) > math.Abs(matrix[best*n+k]) {
			best = i
		}
	}
	return best
}

// swapRows exchanges two rows and their places in the order.
func swapRows(matrix []float64, n int, order []int, a, b int) {
	if a == b {
		return
	}
	order[a], order[b] = order[b], order[a]
	ra, rb := matrix[a*n:(a+1)*n], matrix[b*n:(b+1)*n]
	for j := range ra {
		ra[j], rb[j] = rb[j], ra[j]
	}
}

// eliminate removes column k below the diagonal.
func eliminate(matrix []float64, n, k int) {
	top := matrix[k*n+k+1 : (k+1)*n]
	inverse := 1 / matrix[k*n+k]
	for i := k + 1; i < n; i++ {
		factor := float64(matrix[i*n+k] * inverse)
		matrix[i*n+k] = factor
		subtractMultiple(matrix[i*n+k+1:(i+1)*n], top, factor)
	}
}

// subtractMultiple takes factor times top from row, four entries a turn, which the compiler turns into faster code than one.
func subtractMultiple(row, top []float64, factor float64) {
	for len(row) >= 4 && len(top) >= 4 {
		r, t := row[:4:4], top[:4:4]
		r[0] -= float64(factor * t[0])
		r[1] -= float64(factor * t[1])
		r[2] -= float64(factor * t[2])
		r[3] -= float64(factor * t[3])
		row, top = row[4:], top[4:]
	}
	for j := range row {
		row[j] -= float64(factor * top[j])
	}
}

// substitute solves with the factors for one right-hand side.
func substitute(matrix []float64, n int, order []int, column []float64) []float64 {
	x := make([]float64, n)
	for i := range n {
		sum := column[order[i]]
		for j := range i {
			sum -= float64(matrix[i*n+j] * x[j])
		}
		x[i] = sum
	}
	for i := n - 1; i >= 0; i-- {
		sum := x[i]
		for j := i + 1; j < n; j++ {
			sum -= float64(matrix[i*n+j] * x[j])
		}
		x[i] = sum / matrix[i*n+i]
	}
	return x
}
