package photo

import (
	"image"

	"golang.org/x/image/draw"
)

// shrink paints the picture on white, no longer than longest along either side. It halves as often as it can, which
// averages whole pixels, and does the rest in one step; nothing larger than half the original is allocated.
func shrink(picture image.Image, longest int) *image.RGBA {
	size := picture.Bounds().Size()
	target := fit(size, longest)
	for size.X > 2*target.X || size.Y > 2*target.Y {
		size = image.Pt(max(size.X/2, target.X), max(size.Y/2, target.Y))
		picture = paint(picture, size)
	}
	return paint(picture, target)
}

// fit returns size scaled down so that no side is longer than longest, and no side vanishes.
func fit(size image.Point, longest int) image.Point {
	side := max(size.X, size.Y)
	if side <= longest {
		return size
	}
	return image.Pt(max(1, (size.X*longest+side/2)/side), max(1, (size.Y*longest+side/2)/side))
}

// paint draws the picture at the given size on white.
func paint(picture image.Image, size image.Point) *image.RGBA {
	canvas := image.NewRGBA(image.Rectangle{Max: size})
	draw.Draw(canvas, canvas.Rect, image.White, image.Point{}, draw.Src)
	draw.ApproxBiLinear.Scale(canvas, canvas.Rect, picture, picture.Bounds(), draw.Over, nil)
	return canvas
}

// turn brings a picture upright. The orientation names where the stored first row and first column belong:
//
//	1 top left      2 top right   3 bottom right  4 bottom left
//	5 left top      6 right top   7 right bottom  8 left bottom
//
// Source: TIFF 6.0, Orientation tag, which Exif uses unchanged.
func turn(picture *image.RGBA, orientation int) *image.RGBA {
	if orientation < 2 || orientation > 8 {
		return picture
	}
	w, h := picture.Rect.Dx(), picture.Rect.Dy()
	size := image.Pt(w, h)
	if orientation >= 5 {
		size = image.Pt(h, w)
	}
	turned := image.NewRGBA(image.Rectangle{Max: size})
	for y := range size.Y {
		for x := range size.X {
			fromX, fromY := origin(orientation, x, y, w, h)
			turned.SetRGBA(x, y, picture.RGBAAt(fromX, fromY))
		}
	}
	return turned
}

// origin returns which stored pixel of a w by h picture belongs at x, y of the upright one.
func origin(orientation, x, y, w, h int) (fromX, fromY int) {
	right, down := w-1, h-1
	switch orientation {
	case 2:
		return right - x, y
	case 3:
		return right - x, down - y
	case 4:
		return x, down - y
	case 5:
		return y, x
	case 6:
		return y, down - x
	case 7:
		return right - y, down - x
	case 8:
		return right - y, x
	}
	return x, y
}
