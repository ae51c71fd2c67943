package lift

// A tile is the block of entries that stay in registers while the products of all pivots are taken off them.
const (
	tileRows    = 4
	tileColumns = 8
)

// tileRow is one row of a tile.
type tileRow = [tileColumns]float64

// subtractTilePortable takes lower times upper off one tile.
//
// Formula: t[i][j] -= l[i][k] u[k][j] for each k in turn; where t and l rows of the matrix, stride apart.
// Valid for: 4 rows of t and l, 8 columns of t, a row of u for each column of l.
// Source: definition of the matrix product.
func subtractTilePortable(tile, lower []float64, upper []tileRow, stride int) {
	for i := 0; i < tileRows; i += 2 {
		for j := 0; j < tileColumns; j += 4 {
			subtractCorner(tile[i*stride+j:], lower[i*stride:], upper, stride, j)
		}
	}
}

// subtractCorner does 2 rows and 4 columns of a tile, from column j on, as many as the registers of every processor hold.
func subtractCorner(tile, lower []float64, upper []tileRow, stride, j int) {
	top, bottom := (*[4]float64)(tile), (*[4]float64)(tile[stride:])
	a0, a1, a2, a3 := top[0], top[1], top[2], top[3]
	b0, b1, b2, b3 := bottom[0], bottom[1], bottom[2], bottom[3]
	la, lb := lower[:len(upper)], lower[stride:stride+len(upper)]
	for k := range upper {
		a, b, u := la[k], lb[k], (*[4]float64)(upper[k][j:])
		a0 -= float64(a * u[0])
		a1 -= float64(a * u[1])
		a2 -= float64(a * u[2])
		a3 -= float64(a * u[3])
		b0 -= float64(b * u[0])
		b1 -= float64(b * u[1])
		b2 -= float64(b * u[2])
		b3 -= float64(b * u[3])
	}
	*top = [4]float64{a0, a1, a2, a3}
	*bottom = [4]float64{b0, b1, b2, b3}
}
