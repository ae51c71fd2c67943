package photo

import (
	"bytes"
	"encoding/base64"
	"encoding/binary"
	"errors"
	"hash/crc32"
	"image"
	"image/color"
	"image/gif"
	"image/jpeg"
	"image/png"
	"runtime"
	"strings"
	"testing"
)

// Pictures of one pixel, since nothing here writes WebP: lossless, lossy, and lossy with transparency.
const (
	webpLossless = "UklGRhoAAABXRUJQVlA4TA0AAAAvAAAAEAcQERGIiP4HAA=="
	webpLossy    = "UklGRiIAAABXRUJQVlA4IBYAAAAwAQCdASoBAAEADsD+JaQAA3AAAAAA"
	webpAlpha    = "UklGRkoAAABXRUJQVlA4WAoAAAAQAAAAAAAAAAAAQUxQSAwAAAARBxAR/Q9ERP8DAABWUDggGAAAABQBAJ0BKgEAAQAAAP4AAA3AAP7mtQAAAA=="
)

var (
	red   = color.RGBA{200, 30, 30, 255}
	green = color.RGBA{30, 160, 40, 255}
	blue  = color.RGBA{30, 40, 200, 255}
	white = color.RGBA{255, 255, 255, 255}
)

// quarters is a w by h picture: red, green above blue, white.
func quarters(w, h int) *image.RGBA {
	m := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			switch {
			case y < h/2 && x < w/2:
				m.SetRGBA(x, y, red)
			case y < h/2:
				m.SetRGBA(x, y, green)
			case x < w/2:
				m.SetRGBA(x, y, blue)
			default:
				m.SetRGBA(x, y, white)
			}
		}
	}
	return m
}

func asJPEG(t testing.TB, m image.Image) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := jpeg.Encode(&out, m, &jpeg.Options{Quality: 95}); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func asPNG(t testing.TB, m image.Image) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := png.Encode(&out, m); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func unbase64(t testing.TB, s string) []byte {
	t.Helper()
	raw, err := base64.StdEncoding.DecodeString(s)
	if err != nil {
		t.Fatal(err)
	}
	return raw
}

// clean cleans raw and decodes what came out.
func clean(t *testing.T, raw []byte) image.Image {
	t.Helper()
	out, w, h, err := Clean(raw)
	if err != nil {
		t.Fatal(err)
	}
	m, err := jpeg.Decode(bytes.NewReader(out))
	if err != nil {
		t.Fatal(err)
	}
	if m.Bounds() != image.Rect(0, 0, w, h) {
		t.Errorf("told %d x %d, the picture is %v", w, h, m.Bounds())
	}
	return m
}

// near tells whether a pixel has nearly the colour; JPEG blurs.
func near(got color.Color, want color.RGBA) bool {
	r, g, b, _ := got.RGBA()
	for _, pair := range [][2]int{{int(r >> 8), int(want.R)}, {int(g >> 8), int(want.G)}, {int(b >> 8), int(want.B)}} {
		if d := pair[0] - pair[1]; d < -24 || d > 24 {
			return false
		}
	}
	return true
}

// corners names the colours in the middle of each quarter: top left, top right, bottom left, bottom right.
func corners(m image.Image) string {
	names := ""
	w, h := m.Bounds().Dx(), m.Bounds().Dy()
	for _, at := range []image.Point{{w / 4, h / 4}, {3 * w / 4, h / 4}, {w / 4, 3 * h / 4}, {3 * w / 4, 3 * h / 4}} {
		name := "?"
		for letter, want := range map[string]color.RGBA{"r": red, "g": green, "b": blue, "w": white} {
			if near(m.At(at.X, at.Y), want) {
				name = letter
			}
		}
		names += name
	}
	return names
}

func TestSizes(t *testing.T) {
	t.Parallel()
	tests := []struct{ w, h, wantW, wantH int }{
		{64, 48, 64, 48},
		{1600, 1200, 1600, 1200},
		{1601, 1201, 1600, 1200},
		{4000, 3000, 1600, 1200},
		{900, 3600, 400, 1600},
		{16000, 10, 1600, 1},
	}
	for _, test := range tests {
		m := clean(t, asJPEG(t, quarters(test.w, test.h)))
		if got := m.Bounds().Size(); got != image.Pt(test.wantW, test.wantH) {
			t.Errorf("%d x %d became %v, want %d x %d", test.w, test.h, got, test.wantW, test.wantH)
		}
		if got := corners(m); test.wantH > 10 && got != "rgbw" {
			t.Errorf("%d x %d: colours %s", test.w, test.h, got)
		}
	}
}

// A fine checkerboard must become an even grey, not a pattern of its own.
func TestShrinkingAverages(t *testing.T) {
	t.Parallel()
	board := image.NewGray(image.Rect(0, 0, 3200, 3200))
	for i := range board.Pix {
		if (i%3200+i/3200)%2 == 0 {
			board.Pix[i] = 255
		}
	}
	m := shrink(board, LongestSide)
	for _, at := range []image.Point{{0, 0}, {1, 0}, {800, 801}, {1599, 1599}} {
		if got := m.RGBAAt(at.X, at.Y).R; got < 120 || got > 135 {
			t.Errorf("pixel %v is %d, want about 127", at, got)
		}
	}
}

func TestKindsOfPicture(t *testing.T) {
	t.Parallel()
	deep := image.NewRGBA64(image.Rect(0, 0, 20, 20))
	palette := image.NewPaletted(image.Rect(0, 0, 20, 20), color.Palette{red, blue})
	for name, raw := range map[string][]byte{
		"PNG":           asPNG(t, quarters(20, 20)),
		"PNG, 16 bit":   asPNG(t, deep),
		"PNG, palette":  asPNG(t, palette),
		"JPEG, grey":    asJPEG(t, image.NewGray(image.Rect(0, 0, 20, 20))),
		"WebP lossless": unbase64(t, webpLossless),
		"WebP lossy":    unbase64(t, webpLossy),
		"WebP alpha":    unbase64(t, webpAlpha),
	} {
		if out, _, _, err := Clean(raw); err != nil || !bytes.HasPrefix(out, []byte("\xff\xd8\xff")) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestTransparentBecomesWhite(t *testing.T) {
	t.Parallel()
	m := image.NewNRGBA(image.Rect(0, 0, 40, 40))
	for y := range 40 {
		for x := range 20 {
			m.SetNRGBA(x, y, color.NRGBA{200, 30, 30, 255})
		}
	}
	if got := corners(clean(t, asPNG(t, m))); got != "rwrw" {
		t.Errorf("colours %s, want rwrw", got)
	}
}

// place is what stands for a position in the test pictures; it must not be found afterwards.
const place = "55 deg 2 min N, 2 deg 11 min W"

// withExif puts an Exif segment with an orientation and a position, and a comment, into a JPEG.
func withExif(picture []byte, order binary.AppendByteOrder, orientation uint16) []byte {
	tiff := []byte("II*\x00")
	if order == binary.AppendByteOrder(binary.BigEndian) {
		tiff = []byte("MM\x00*")
	}
	entry := func(tag, kind uint16, count uint32) {
		tiff = order.AppendUint16(tiff, tag)
		tiff = order.AppendUint16(tiff, kind)
		tiff = order.AppendUint32(tiff, count)
	}
	tiff = order.AppendUint32(tiff, 8)
	tiff = order.AppendUint16(tiff, 2)
	entry(tagOrientation, typeShort, 1)
	tiff = order.AppendUint16(tiff, orientation)
	tiff = append(tiff, 0, 0)
	entry(0x8825, 4, 1) // where the position directory begins
	tiff = order.AppendUint32(tiff, 38)
	tiff = order.AppendUint32(tiff, 0)
	tiff = append(tiff, place...)
	out := append([]byte(nil), picture[:2]...)
	out = appendSegment(out, markerApp1, append([]byte("Exif\x00\x00"), tiff...))
	out = appendSegment(out, markerApp1, []byte("http://ns.adobe.com/xap/1.0/\x00"+place))
	out = appendSegment(out, 0xfe, []byte(place))
	return append(out, picture[2:]...)
}

func appendSegment(out []byte, marker byte, content []byte) []byte {
	out = append(out, 0xff, marker)
	out = binary.BigEndian.AppendUint16(out, uint16(len(content)+2))
	return append(out, content...)
}

func TestOrientationIsAppliedAndMetadataGone(t *testing.T) {
	t.Parallel()
	// Each stored picture is r g over b w; told is what a viewer that honours the tag shows.
	told := map[uint16]string{0: "rgbw", 1: "rgbw", 2: "grwb", 3: "wbgr", 4: "bwrg", 5: "rbgw", 6: "brwg", 7: "wgbr", 8: "gwrb", 9: "rgbw"}
	picture := asJPEG(t, quarters(120, 80))
	for value, want := range told {
		for _, order := range []binary.AppendByteOrder{binary.LittleEndian, binary.BigEndian} {
			raw := withExif(picture, order, value)
			if !bytes.Contains(raw, []byte(place)) {
				t.Fatal("the test picture names no place")
			}
			m := clean(t, raw)
			if got := corners(m); got != want {
				t.Errorf("orientation %d, %v: colours %s, want %s", value, order, got, want)
			}
			wide := m.Bounds().Dx() == 120
			if wide != (value < 5 || value > 8) {
				t.Errorf("orientation %d: size %v", value, m.Bounds())
			}
			checkBare(t, raw)
		}
	}
}

// checkBare holds that the cleaned picture has no segment that could carry anything but the picture.
func checkBare(t *testing.T, raw []byte) {
	t.Helper()
	out, _, _, err := Clean(raw)
	if err != nil {
		t.Fatal(err)
	}
	for _, trace := range []string{place, "Exif", "adobe"} {
		if bytes.Contains(out, []byte(trace)) {
			t.Errorf("%q is still there", trace)
		}
	}
	for at := 2; out[at+1] != markerScan; at += 2 + int(binary.BigEndian.Uint16(out[at+2:])) {
		if marker := out[at+1]; marker >= 0xe0 {
			t.Errorf("segment %x is still there", marker)
		}
	}
}

func TestTextInPNGIsGone(t *testing.T) {
	t.Parallel()
	raw := asPNG(t, quarters(20, 20))
	header := 8 + 12 + 13
	hidden := append(append(append([]byte(nil), raw[:header]...), pngChunk("tEXt", "Comment\x00"+place)...), raw[header:]...)
	hidden = append(hidden, place...)
	out, _, _, err := Clean(hidden)
	if err != nil || bytes.Contains(out, []byte(place)) {
		t.Errorf("text is still there, or %v", err)
	}
}

func pngChunk(kind, content string) []byte {
	out := binary.BigEndian.AppendUint32(nil, uint32(len(content)))
	out = append(out, kind+content...)
	return binary.BigEndian.AppendUint32(out, crc32.ChecksumIEEE([]byte(kind+content)))
}

// hugePNG announces w by h pixels and holds none.
func hugePNG(w, h uint32) []byte {
	header := binary.BigEndian.AppendUint32(nil, w)
	header = binary.BigEndian.AppendUint32(header, h)
	header = append(header, 8, 6, 0, 0, 0)
	return append([]byte("\x89PNG\r\n\x1a\n"), pngChunk("IHDR", string(header))...)
}

// hugeJPEG is a real picture whose frame header announces w by h pixels.
func hugeJPEG(t testing.TB, w, h uint16) []byte {
	raw := asJPEG(t, quarters(16, 16))
	at := bytes.Index(raw, []byte{0xff, 0xc0})
	binary.BigEndian.PutUint16(raw[at+5:], h)
	binary.BigEndian.PutUint16(raw[at+7:], w)
	return raw
}

// hugeWebP is a lossy picture whose header announces the most pixels that the format can.
func hugeWebP(t testing.TB) []byte {
	raw := unbase64(t, webpLossy)
	copy(raw[26:], []byte{0xff, 0x3f, 0xff, 0x3f})
	return raw
}

func TestRefused(t *testing.T) {
	t.Parallel()
	var animation bytes.Buffer
	if err := gif.Encode(&animation, quarters(8, 8), nil); err != nil {
		t.Fatal(err)
	}
	good := asJPEG(t, quarters(64, 64))
	tests := []struct {
		name string
		raw  []byte
		says string
	}{
		{"empty", nil, "empty"},
		{"text", []byte("a log file"), "not a JPEG, PNG or WebP"},
		{"GIF", animation.Bytes(), "not a JPEG, PNG or WebP"},
		{"SVG", []byte("<svg xmlns='http://www.w3.org/2000/svg'/>"), "not a JPEG, PNG or WebP"},
		{"other RIFF", []byte("RIFF\x04\x00\x00\x00WAVE"), "not a JPEG, PNG or WebP"},
		{"too many bytes", append(good, make([]byte, RawLimit)...), "at most 16777216"},
		{"cut off", good[:len(good)/2], "damaged"},
		{"only the first bytes", good[:4], "damaged"},
		{"huge PNG", hugePNG(60_000, 60_000), "too many"},
		{"PNG over its limit", hugePNG(5_001, 5_000), "25 megapixels"},
		{"PNG without pixels", hugePNG(0, 5), "damaged"},
		{"huge JPEG", hugeJPEG(t, 65_500, 65_500), "too many"},
		{"long JPEG", hugeJPEG(t, 16_001, 10), "16000 along a side"},
		{"huge WebP", hugeWebP(t), "16383 x 16383 pixels are too many"},
	}
	for _, test := range tests {
		out, _, _, err := Clean(test.raw)
		if out != nil || !errors.Is(err, ErrRefused) || !strings.Contains(err.Error(), test.says) {
			t.Errorf("%s: got %v, want %q", test.name, err, test.says)
		}
	}
}

// Refusing by the header must not allocate what the header announces. Not parallel: it counts what is allocated.
func TestHugePicturesCostLittle(t *testing.T) {
	for name, raw := range map[string][]byte{"PNG": hugePNG(60_000, 60_000), "JPEG": hugeJPEG(t, 65_500, 65_500), "WebP": hugeWebP(t)} {
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		if _, _, _, err := Clean(raw); err == nil {
			t.Errorf("%s: accepted", name)
		}
		runtime.ReadMemStats(&after)
		if got := after.TotalAlloc - before.TotalAlloc; got > 200_000 {
			t.Errorf("%s: refusing takes %d bytes", name, got)
		}
	}
}

func TestOrientationOfDamagedExif(t *testing.T) {
	t.Parallel()
	whole := withExif(asJPEG(t, quarters(8, 8)), binary.LittleEndian, 6)
	if orientation(whole) != 6 {
		t.Fatal("the whole one is not read")
	}
	for n := range 34 { // cut anywhere before the value
		if got := orientation(whole[:n]); got != 1 {
			t.Errorf("cut to %d bytes: %d", n, got)
		}
	}
	far := bytes.Replace(whole, []byte("II*\x00\x08\x00\x00\x00"), []byte("II*\x00\xff\xff\xff\xff"), 1)
	if got := orientation(far); got != 1 {
		t.Errorf("directory out of reach: %d", got)
	}
}

// FuzzClean holds that no upload crashes, and that whatever is accepted comes out as a bare JPEG within the limits.
func FuzzClean(f *testing.F) {
	f.Add(withExif(asJPEG(f, quarters(16, 12)), binary.BigEndian, 6))
	f.Add(asPNG(f, quarters(16, 12)))
	for _, s := range []string{webpLossless, webpLossy, webpAlpha} {
		f.Add(unbase64(f, s))
	}
	f.Add(hugePNG(60_000, 60_000))
	f.Fuzz(func(t *testing.T, raw []byte) {
		if kind, err := recognise(raw); err == nil {
			if c, err := kind.config(bytes.NewReader(raw)); err == nil && c.Width*c.Height > 1_000_000 {
				return // decoding many pixels teaches nothing new and takes long
			}
		}
		out, w, h, err := Clean(raw)
		if err != nil {
			if !errors.Is(err, ErrRefused) {
				t.Errorf("unnamed error: %v", err)
			}
			return
		}
		c, err := jpeg.DecodeConfig(bytes.NewReader(out))
		if err != nil || c.Width != w || c.Height != h || max(w, h) > LongestSide {
			t.Errorf("%d x %d, told %d x %d, %v", c.Width, c.Height, w, h, err)
		}
	})
}
