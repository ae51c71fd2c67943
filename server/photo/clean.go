// Package photo makes uploaded pictures harmless: what comes out is a new JPEG of modest size made from the pixels
// alone, so that place, camera, owner and anything hidden behind the picture stay out of the record.
package photo

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/jpeg"
	"image/png"
	"io"

	"golang.org/x/image/webp"
)

const (
	// LongestSide of a cleaned photo, in pixels.
	LongestSide = 1600
	// RawLimit is the largest upload, in bytes.
	RawLimit = 16 << 20
	// sideLimit is the longest side that is decoded, in pixels.
	sideLimit = 16_000
	// quality of the new JPEG, 1 to 100.
	quality = 82
)

// ErrRefused is wrapped by every error of this package; its text says why, for the person who sent the photo.
var ErrRefused = errors.New("photo")

// format is a kind of picture, known by its first bytes whatever the upload calls itself.
type format struct {
	name   string
	is     func(raw []byte) bool
	config func(io.Reader) (image.Config, error)
	decode func(io.Reader) (image.Image, error)
	// pixelLimit bounds the memory that decoding takes.
	pixelLimit int
}

var formats = []format{
	{"JPEG", startsWith("\xff\xd8\xff"), jpeg.DecodeConfig, jpeg.Decode, 50_000_000},
	{"PNG", startsWith("\x89PNG\r\n\x1a\n"), png.DecodeConfig, png.Decode, 25_000_000},
	{"WebP", isWebP, webp.DecodeConfig, webp.Decode, 25_000_000},
}

func startsWith(magic string) func([]byte) bool {
	return func(raw []byte) bool { return bytes.HasPrefix(raw, []byte(magic)) }
}

func isWebP(raw []byte) bool {
	return len(raw) >= 12 && string(raw[:4]) == "RIFF" && string(raw[8:12]) == "WEBP"
}

// workbench bounds how many photos are decoded at a time; each may take some hundred megabytes.
var workbench = make(chan struct{}, 2)

// Clean returns a new JPEG made from an uploaded JPEG, PNG or WebP, upright, at most LongestSide pixels long, and
// its size in pixels. Transparent parts become white. It carries no metadata of the original. Errors wrap
// ErrRefused: not a picture of these kinds, too large in bytes or pixels, or damaged.
func Clean(raw []byte) (cleaned []byte, width, height int, err error) {
	kind, err := recognise(raw)
	if err != nil {
		return nil, 0, 0, err
	}
	if err := kind.checkSize(raw); err != nil {
		return nil, 0, 0, err
	}
	workbench <- struct{}{}
	defer func() { <-workbench }()
	picture, err := kind.decode(bytes.NewReader(raw))
	if err != nil {
		return nil, 0, 0, damaged(kind, err)
	}
	upright := turn(shrink(picture, LongestSide), orientation(raw))
	var out bytes.Buffer
	if err := jpeg.Encode(&out, upright, &jpeg.Options{Quality: quality}); err != nil {
		return nil, 0, 0, fmt.Errorf("%w: cannot be written as JPEG: %w", ErrRefused, err)
	}
	return out.Bytes(), upright.Rect.Dx(), upright.Rect.Dy(), nil
}

func recognise(raw []byte) (format, error) {
	if len(raw) == 0 {
		return format{}, fmt.Errorf("%w: it is empty", ErrRefused)
	}
	if len(raw) > RawLimit {
		return format{}, fmt.Errorf("%w: it has %d bytes, at most %d are accepted", ErrRefused, len(raw), RawLimit)
	}
	for _, f := range formats {
		if f.is(raw) {
			return f, nil
		}
	}
	return format{}, fmt.Errorf("%w: it is not a JPEG, PNG or WebP picture", ErrRefused)
}

// checkSize reads only the picture's header, before anything of the announced size is allocated.
func (f format) checkSize(raw []byte) error {
	config, err := f.config(bytes.NewReader(raw))
	if err != nil {
		return damaged(f, err)
	}
	w, h := config.Width, config.Height
	if w < 1 || h < 1 {
		return fmt.Errorf("%w: it has no pixels", ErrRefused)
	}
	if w > sideLimit || h > sideLimit || w*h > f.pixelLimit {
		return fmt.Errorf("%w: %d x %d pixels are too many for a %s, at most %d megapixels and %d along a side are accepted",
			ErrRefused, w, h, f.name, f.pixelLimit/1_000_000, sideLimit)
	}
	return nil
}

func damaged(f format, err error) error {
	return fmt.Errorf("%w: the %s is damaged or of an unusual kind: %w", ErrRefused, f.name, err)
}
