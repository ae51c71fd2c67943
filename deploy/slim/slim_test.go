package main

import (
	"bytes"
	"math/rand/v2"
	"slices"
	"testing"
)

// TestStoreFillsTheSameMemory lays out memories with and without long gaps and loads them again.
func TestStoreFillsTheSameMemory(t *testing.T) {
	t.Parallel()
	by := rand.New(rand.NewPCG(1, 2))
	for range 200 {
		image := make([]byte, 1+by.IntN(8000))
		for at := 0; at < len(image); at += 1 + by.IntN(2*gap) {
			for n := by.IntN(40); n > 0 && at < len(image); n-- {
				image[at] = byte(by.IntN(256))
				at++
			}
		}
		image[0], image[len(image)-1] = 1, 1
		from := by.IntN(1 << 20)
		at, again, err := load(store(from, image))
		if err != nil || at != from || !bytes.Equal(again, image) {
			t.Fatalf("%d bytes at %d: got %d bytes at %d, %v", len(image), from, len(again), at, err)
		}
	}
}

func TestStoreLeavesGapsOut(t *testing.T) {
	t.Parallel()
	image := slices.Concat([]byte{7}, make([]byte, 5*gap), []byte{8}, make([]byte, gap-1), []byte{9})
	if got := store(64, image); len(got) > gap+20 {
		t.Errorf("%d bytes are written for one short gap", len(got))
	}
}

func TestSectionsKeepTheirBytes(t *testing.T) {
	t.Parallel()
	module := []byte("\x00asm\x01\x00\x00\x00\x01\x03abc\x0a\x00\x00\x01x")
	parts, err := sections(module)
	if err != nil || len(parts) != 3 {
		t.Fatalf("%d sections, %v", len(parts), err)
	}
	out := append([]byte(nil), module[:headerBytes]...)
	for _, part := range parts {
		out = part.append(out)
	}
	if !bytes.Equal(out, module) {
		t.Errorf("got %q", out)
	}
}

func TestBrokenModulesAreRefused(t *testing.T) {
	t.Parallel()
	head := "\x00asm\x01\x00\x00\x00"
	for name, module := range map[string]string{
		"text":              "no module",
		"half a section":    head + "\x01\x05ab",
		"no length":         head + "\x01",
		"data of no memory": head + "\x0b\x01\x00",
		"passive data":      head + "\x0b\x04\x01\x01\x01x",
		"no table":          head + "\x0b\x07\x01\x00\x41\x08\x0b\x01x",
		"no data":           head + "\x01\x01\x00",
		"no functions":      head + string(section{dataSection, store(fixtureAt, fixture(3))}.append(nil)),
	} {
		if _, err := slimmed([]byte(module)); err == nil {
			t.Errorf("%s is taken", name)
		}
	}
}

func FuzzSlimmed(f *testing.F) {
	f.Add([]byte("\x00asm\x01\x00\x00\x00\x0b\x07\x01\x00\x41\x08\x0b\x01x"))
	f.Add(moduleOf(fixture(3)))
	f.Fuzz(func(t *testing.T, module []byte) {
		slim, err := slimmed(module)
		if err != nil {
			return
		}
		if _, err := sections(slim); err != nil {
			t.Errorf("a module became none: %v", err)
		}
	})
}
