package lift

import "math"

// solveColumns solves matrix x = column for each column by elimination with row pivots; the matrix (row by row, square) is destroyed.
//
// Every entry has its products taken off one by one in the order of the pivots, whatever the blocks and the processor, so that the
// result has the same bits everywhere.
//
// Errors: ErrUnsolvable when a pivot vanishes.
func solveColumns(matrix []float64, columns [][]float64) ([][]float64, error) {
	n := len(columns[0])
	order, err := decompose(matrix, n)
	if err != nil {
		return nil, err
	}
	return substitute(matrix, n, order, columns), nil
}

// elimination is a square matrix on its way to its factors.
type elimination struct {
	entries []float64 // row by row
	n       int
	order   []int     // where each row came from
	packed  []tileRow // room for one strip of the upper factor
}

// span is the indices from and below to.
type span struct{ from, to int }

// half cuts a span in two; the first part is a whole number of tiles.
func (s span) half() (first, second span) {
	middle := s.from + (s.to-s.from+tileColumns)/(2*tileColumns)*tileColumns
	return span{s.from, middle}, span{middle, s.to}
}

// narrow reports whether a span is not worth cutting.
func (s span) narrow() bool { return s.to-s.from <= tileColumns }

// decompose replaces the matrix by its lower and upper factors and returns the order of rows.
//
// Formula: P A = L U, unit lower diagonal, largest pivot of each column.
// Valid for: square matrices that are not singular.
// Source: Gaussian elimination with partial pivoting; columns halved as by Toledo, Locality of reference in LU decomposition with
// partial pivoting, SIAM J. Matrix Anal. Appl. 18 (1997).
func decompose(matrix []float64, n int) ([]int, error) {
	e := elimination{entries: matrix, n: n, order: make([]int, n), packed: make([]tileRow, n)}
	for i := range e.order {
		e.order[i] = i
	}
	if !e.columns(span{0, n}) {
		return nil, ErrUnsolvable
	}
	return e.order, nil
}

// row returns the entries of one row in some columns.
func (e *elimination) row(i int, columns span) []float64 {
	return e.entries[i*e.n+columns.from : i*e.n+columns.to]
}

// columns eliminates some columns in all rows from the diagonal down; it reports whether every pivot could be divided by.
func (e *elimination) columns(columns span) bool {
	if columns.narrow() {
		return e.oneByOne(columns)
	}
	left, right := columns.half()
	if !e.columns(left) {
		return false
	}
	e.triangle(left, right)
	e.subtract(span{left.to, e.n}, right, left)
	return e.columns(right)
}

// triangle takes the products of some pivots off the rows of these pivots themselves.
func (e *elimination) triangle(pivots, columns span) {
	if !pivots.narrow() {
		upper, lower := pivots.half()
		e.triangle(upper, columns)
		e.subtract(lower, columns, upper)
		e.triangle(lower, columns)
		return
	}
	for i := pivots.from + 1; i < pivots.to; i++ {
		e.subtractRow(i, columns, span{pivots.from, i})
	}
}

// oneByOne eliminates a few columns, one after the other.
func (e *elimination) oneByOne(columns span) bool {
	for k := columns.from; k < columns.to; k++ {
		pivot := e.largestPivot(k)
		value := e.entries[pivot*e.n+k]
		if !(math.Abs(value) > 1e-12) || math.IsInf(value, 0) {
			return false
		}
		e.swapRows(k, pivot)
		e.eliminate(k, columns.to, 1/value)
	}
	return true
}

// largestPivot returns the row at or below k with the largest entry of column k.
func (e *elimination) largestPivot(k int) int {
	best, largest := k, math.Abs(e.entries[k*e.n+k])
	for i := k + 1; i < e.n; i++ {
		if size := math.Abs(e.entries[i*e.n+k]); size > largest {
			best, largest = i, size
		}
	}
	return best
}

// swapRows exchanges two rows and their places in the order.
func (e *elimination) swapRows(a, b int) {
	if a == b {
		return
	}
	e.order[a], e.order[b] = e.order[b], e.order[a]
	ra, rb := e.row(a, span{0, e.n}), e.row(b, span{0, e.n})
	for j := range ra {
		ra[j], rb[j] = rb[j], ra[j]
	}
}

// eliminate removes column k below the diagonal from the columns that follow it below a limit.
func (e *elimination) eliminate(k, limit int, inverse float64) {
	top := e.row(k, span{k + 1, limit})
	for i := k + 1; i < e.n; i++ {
		row := e.row(i, span{k, limit})
		factor := float64(row[0] * inverse)
		row[0] = factor
		subtractMultiple(row[1:], top, factor)
	}
}

// subtract takes lower times upper factor off some rows and columns, for the pivots given, tile by tile.
func (e *elimination) subtract(rows, columns, pivots span) {
	j := columns.from
	for ; j+tileColumns <= columns.to; j += tileColumns {
		e.subtractStrip(rows, j, pivots)
	}
	for i := rows.from; i < rows.to && j < columns.to; i++ {
		e.subtractRow(i, span{j, columns.to}, pivots)
	}
}

// subtractStrip does one strip as wide as a tile.
func (e *elimination) subtractStrip(rows span, column int, pivots span) {
	strip := span{column, column + tileColumns}
	upper := e.pack(strip, pivots)
	i := rows.from
	for ; i+tileRows <= rows.to; i += tileRows {
		subtractTile(e.entries[i*e.n+column:], e.entries[i*e.n+pivots.from:], upper, e.n)
	}
	for ; i < rows.to; i++ {
		e.subtractRow(i, strip, pivots)
	}
}

// pack copies a strip of the upper factor together.
func (e *elimination) pack(strip, pivots span) []tileRow {
	packed := e.packed[:0]
	for k := pivots.from; k < pivots.to; k++ {
		packed = append(packed, tileRow(e.row(k, strip)))
	}
	return packed
}

// subtractRow does one row, pivot by pivot.
func (e *elimination) subtractRow(i int, columns, pivots span) {
	row := e.row(i, columns)
	for k := pivots.from; k < pivots.to; k++ {
		subtractMultiple(row, e.row(k, columns), e.entries[i*e.n+k])
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

// Solve answers the equations once more and leaves them as they are: for comparison with another program on the same matrix.
// Errors: ErrUnsolvable.
func (s LinearSystem) Solve() ([][]float64, error) {
	return solveColumns(append([]float64(nil), s.Matrix...), s.Columns)
}
