package lift

// wide says whether the processor and its operating system have registers of four numbers.
var wide = hasAVX()

// hasAVX reports whether 256-bit registers can be used.
func hasAVX() bool

// subtractTileAVX is subtractTilePortable with four numbers an instruction: the same products and differences in the same order, none
// fused, so that both give the same bits.
//
//go:noescape
func subtractTileAVX(tile, lower *float64, upper *tileRow, stride, pivots int)

// subtractTile takes lower times upper off one tile; see subtractTilePortable.
func subtractTile(tile, lower []float64, upper []tileRow, stride int) {
	if !wide {
		subtractTilePortable(tile, lower, upper, stride)
		return
	}
	// The slices are as long as the assembly reads and writes, or this stops here.
	tile = tile[:(tileRows-1)*stride+tileColumns]
	lower = lower[:(tileRows-1)*stride+len(upper)]
	subtractTileAVX(&tile[0], &lower[0], &upper[0], stride, len(upper))
}
