package stability

import (
	"cmp"
	"math"
	"slices"
)

// Matrix is the system matrix of four first-order equations of motion.
type Matrix [4][4]float64

const order = 4

// Roots returns the four roots of the motion, the fastest first; of a conjugate pair the positive imaginary part comes first.
//
// It returns ErrOutOfRange when an entry or a root is not a finite number.
// Formula: balancing by powers of two, Hessenberg form by elimination, double-shift QR steps.
// Valid for: all real matrices; exact to rounding times the norm.
// Source: Martin, Peters, Wilkinson, The QR algorithm for real Hessenberg matrices, Numerische Mathematik 14 (1970).
func (m Matrix) Roots() ([order]Root, error) {
	for i := range m {
		if err := checkResult(m[i][:]...); err != nil {
			return [order]Root{}, err
		}
	}
	m.balance()
	m.reduce()
	iteration := iteration{a: m, last: order - 1}
	if !iteration.run() {
		return [order]Root{}, ErrOutOfRange
	}
	roots := iteration.roots
	for _, root := range roots {
		if err := checkResult(root.Real, root.Imaginary); err != nil {
			return roots, err
		}
	}
	slices.SortStableFunc(roots[:], fasterFirst)
	return roots, nil
}

// fasterFirst orders roots by modulus, conjugates side by side.
func fasterFirst(a, b Root) int {
	return cmp.Or(-cmp.Compare(a.modulus(), b.modulus()), cmp.Compare(a.Real, b.Real), -cmp.Compare(a.Imaginary, b.Imaginary))
}

func (r Root) modulus() float64 {
	return math.Sqrt(float64(r.Real*r.Real) + float64(r.Imaginary*r.Imaginary))
}

// balance scales rows against columns by powers of two, which changes no root and no digit.
//
// Source: Parlett and Reinsch, Numerische Mathematik 13 (1969).
func (m *Matrix) balance() {
	const sweeps = 60
	for range sweeps {
		changed := false
		for i := range m {
			changed = m.balanceOne(i) || changed
		}
		if !changed {
			return
		}
	}
}

// balanceOne scales one row and column and reports whether that helped.
func (m *Matrix) balanceOne(i int) bool {
	column, row := m.offDiagonal(i)
	if column == 0 || row == 0 {
		return false
	}
	factor, sum := 1.0, column+row
	for range 64 {
		if column >= row/2 {
			break
		}
		factor, column, row = factor*2, column*2, row/2
	}
	for range 64 {
		if column < row*2 {
			break
		}
		factor, column, row = factor/2, column/2, row*2
	}
	if column+row >= 0.95*sum {
		return false
	}
	for j := range m {
		m[i][j] /= factor
		m[j][i] *= factor
	}
	return true
}

// offDiagonal returns the sums of the sizes of a column and a row without the diagonal.
func (m *Matrix) offDiagonal(i int) (column, row float64) {
	for j := range m {
		if j != i {
			column += math.Abs(m[j][i])
			row += math.Abs(m[i][j])
		}
	}
	return column, row
}

// reduce brings the matrix to Hessenberg form: nothing left of the diagonal but one.
//
// Source: Martin and Wilkinson, Numerische Mathematik 12 (1968), elimination with pivots.
func (m *Matrix) reduce() {
	for k := 1; k < order-1; k++ {
		m.exchange(k, m.pivot(k))
		if m[k][k-1] == 0 {
			continue
		}
		for i := k + 1; i < order; i++ {
			m.eliminate(k, i)
		}
	}
}

// pivot returns the row at or under k with the largest entry in the column before k.
func (m *Matrix) pivot(k int) int {
	best := k
	for i := k + 1; i < order; i++ {
		if math.Abs(m[i][k-1]) > math.Abs(m[best][k-1]) {
			best = i
		}
	}
	return best
}

// exchange swaps two rows and the same two columns.
func (m *Matrix) exchange(i, j int) {
	m[i], m[j] = m[j], m[i]
	for k := range m {
		m[k][i], m[k][j] = m[k][j], m[k][i]
	}
}

// eliminate clears one entry under the pivot by a similarity.
func (m *Matrix) eliminate(k, i int) {
	factor := m[i][k-1] / m[k][k-1]
	if factor == 0 {
		return
	}
	for j := range m {
		m[i][j] -= float64(factor * m[k][j])
	}
	m[i][k-1] = 0
	for j := range m {
		m[j][k] += float64(factor * m[j][i])
	}
}
