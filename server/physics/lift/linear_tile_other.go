//go:build !amd64

package lift

// subtractTile takes lower times upper off one tile; see subtractTilePortable.
func subtractTile(tile, lower []float64, upper []tileRow, stride int) {
	subtractTilePortable(tile, lower, upper, stride)
}
