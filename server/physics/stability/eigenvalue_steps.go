package stability

import "math"

// iteration is the state of the QR steps: the matrix, the last row that is not yet split off, the shift taken off so far.
type iteration struct {
	a     Matrix
	last  int
	shift float64
	roots [order]Root
}

// run splits off all roots and reports whether it came to an end.
func (t *iteration) run() bool {
	const most = 200
	tries := 0
	for t.last >= 0 {
		first := t.split()
		switch first {
		case t.last:
			t.takeOne()
			tries = 0
		case t.last - 1:
			t.takeTwo()
			tries = 0
		default:
			if tries == most {
				return false
			}
			tries++
			t.step(first, tries)
		}
	}
	return true
}

// split returns the first row of the block that ends at the last row and hangs together.
func (t *iteration) split() int {
	for i := t.last; i > 0; i-- {
		size := math.Abs(t.a[i-1][i-1]) + math.Abs(t.a[i][i])
		if size == 0 {
			size = t.norm()
		}
		if math.Abs(t.a[i][i-1])+size == size {
			t.a[i][i-1] = 0
			return i
		}
	}
	return 0
}

func (t *iteration) norm() float64 {
	sum := 0.0
	for i := range t.a {
		for j := max(0, i-1); j < order; j++ {
			sum += math.Abs(t.a[i][j])
		}
	}
	return sum
}

func (t *iteration) takeOne() {
	t.roots[t.last] = Root{Real: t.a[t.last][t.last] + t.shift}
	t.last--
}

// takeTwo takes both roots of the last two rows.
func (t *iteration) takeTwo() {
	i, j := t.last-1, t.last
	half := float64(0.5 * (t.a[i][i] - t.a[j][j]))
	product := float64(t.a[j][i] * t.a[i][j])
	under := float64(half*half) + product
	base := t.a[j][j] + t.shift
	swing := math.Sqrt(math.Abs(under))
	if under < 0 {
		t.roots[i], t.roots[j] = Root{base + half, swing}, Root{base + half, -swing}
	} else {
		far := half + math.Copysign(swing, half)
		near := far
		if far != 0 {
			near = -product / far
		}
		t.roots[i], t.roots[j] = Root{Real: base + far}, Root{Real: base + near}
	}
	t.last -= 2
}

// step does one double-shift QR step on the block from first to last.
func (t *iteration) step(first, tries int) {
	n := t.last
	x, y := t.a[n][n], t.a[n-1][n-1]
	w := float64(t.a[n][n-1] * t.a[n-1][n])
	if tries%10 == 0 {
		x, y, w = t.exceptionalShift()
	}
	start, p, q, r := t.bulge(first, x, y, w)
	for i := start + 2; i <= n; i++ {
		t.a[i][i-2] = 0
		if i > start+2 {
			t.a[i][i-3] = 0
		}
	}
	scale := 1.0
	for k := start; k < n; k++ {
		if k > start {
			p, q, r, scale = t.nextVector(k)
		}
		if scale != 0 {
			t.reflect(first, start, k, p, q, r, scale)
		}
	}
}

// exceptionalShift takes a shift that breaks a cycle.
func (t *iteration) exceptionalShift() (x, y, w float64) {
	n := t.last
	x = t.a[n][n]
	t.shift += x
	for i := 0; i <= n; i++ {
		t.a[i][i] -= x
	}
	s := math.Abs(t.a[n][n-1]) + math.Abs(t.a[n-1][n-2])
	return 0.75 * s, 0.75 * s, -0.4375 * float64(s*s)
}

// bulge looks for two consecutive small entries and returns where to start and the first vector.
func (t *iteration) bulge(first int, x, y, w float64) (start int, p, q, r float64) {
	a := &t.a
	for m := t.last - 2; ; m-- {
		z := a[m][m]
		dx, dy := x-z, y-z
		p = (float64(dx*dy)-w)/a[m+1][m] + a[m][m+1]
		q = a[m+1][m+1] - z - dx - dy
		r = a[m+2][m+1]
		if s := math.Abs(p) + math.Abs(q) + math.Abs(r); s != 0 {
			p, q, r = p/s, q/s, r/s
		}
		if m == first {
			return m, p, q, r
		}
		small := float64(math.Abs(a[m][m-1]) * (math.Abs(q) + math.Abs(r)))
		large := float64(math.Abs(p) * (math.Abs(a[m-1][m-1]) + math.Abs(z) + math.Abs(a[m+1][m+1])))
		if small+large == large {
			return m, p, q, r
		}
	}
}

// nextVector returns the column that the next reflection clears, scaled, and its scale.
func (t *iteration) nextVector(k int) (p, q, r, scale float64) {
	p, q = t.a[k][k-1], t.a[k+1][k-1]
	if k < t.last-1 {
		r = t.a[k+2][k-1]
	}
	scale = math.Abs(p) + math.Abs(q) + math.Abs(r)
	if scale == 0 {
		return p, q, r, 0
	}
	return p / scale, q / scale, r / scale, scale
}

// reflect applies the Householder reflection of the vector (p, q, r) to rows and columns from k on.
func (t *iteration) reflect(first, start, k int, p, q, r, scale float64) {
	s := math.Copysign(math.Sqrt(float64(p*p)+float64(q*q)+float64(r*r)), p)
	if s == 0 {
		return
	}
	switch {
	case k > start:
		t.a[k][k-1] = -float64(s * scale)
	case first != start:
		t.a[k][k-1] = -t.a[k][k-1]
	}
	p += s
	left := [3]float64{p / s, q / s, r / s}
	right := [3]float64{1, q / p, r / p}
	count := min(3, t.last-k+1)
	for j := k; j <= t.last; j++ {
		sum := 0.0
		for i := range count {
			sum += float64(right[i] * t.a[k+i][j])
		}
		for i := range count {
			t.a[k+i][j] -= float64(sum * left[i])
		}
	}
	for i := first; i <= min(t.last, k+3); i++ {
		sum := 0.0
		for j := range count {
			sum += float64(left[j] * t.a[i][k+j])
		}
		for j := range count {
			t.a[i][k+j] -= float64(sum * right[j])
		}
	}
}
