package main

import (
	"bytes"
	"encoding/binary"
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
	} {
		if _, err := slimmed([]byte(module)); err == nil {
			t.Errorf("%s is taken", name)
		}
	}
}

// fixture is a table of two functions: runtime.bgsweep keeps its name, there.gone does not. Places are, from 1 on: depth, line, live
// variables, where another thread may stop it.
func fixture() []byte {
	names := []byte("\x00runtime.bgsweep\x00there.gone\x00")
	files := []byte("\x01\x00\x00\x00there.go\x00")
	places := []byte{0, 2, 3, 0, 4, 5, 0, 6, 7, 0, 8, 9, 0}
	functions := make([]byte, 2*8+4)
	for i, name := range []uint32{1, 17} {
		binary.LittleEndian.PutUint32(functions[8*i:], uint32(i))
		binary.LittleEndian.PutUint32(functions[8*i+4:], uint32(len(functions)))
		for _, word := range []uint32{uint32(i), name, 0, 0, 1, 4, 4, 2, 0, 77, 6 << 24, 10, 7, 50, 51, 52, 53, 54, 55} {
			functions = binary.LittleEndian.AppendUint32(functions, word)
		}
	}
	image := append([]byte("before--"), magic...)
	offset := uint64(72)
	for _, word := range []uint64{2, 1, 0} {
		image = binary.LittleEndian.AppendUint64(image, word)
	}
	for _, part := range [][]byte{names, files[:4], files[4:], places} {
		image = binary.LittleEndian.AppendUint64(image, offset)
		offset += uint64(len(part))
	}
	image = binary.LittleEndian.AppendUint64(image, offset)
	return slices.Concat(image, names, files, places, functions)
}

func TestForgetKeepsWhatAProgramNeeds(t *testing.T) {
	t.Parallel()
	image := fixture()
	if err := forget(image); err != nil {
		t.Fatal(err)
	}
	for _, gone := range []string{"there", "\x04\x05", "\x08\x09"} {
		if bytes.Contains(image, []byte(gone)) {
			t.Errorf("%q is still there", gone)
		}
	}
	for _, stays := range []string{"before--", "runtime.bgsweep", "\x00\x02\x03\x00", "\x00\x06\x07\x00"} {
		if !bytes.Contains(image, []byte(stays)) {
			t.Errorf("%q is gone", stays)
		}
	}
	table, err := find(image)
	if err != nil {
		t.Fatal(err)
	}
	for i, name := range []int{1, 0} {
		f, err := table.function(i)
		if err != nil || f.word(nameField) != name || f.word(lineField) != 0 || f.word(depthField) != 1 || f.word(firstLineField) != 0 {
			t.Errorf("function %d: %v, %v", i, f[:fixedFields], err)
		}
		for j, want := range []int{0, 7, 50, 51, 52, 53, 54, none} {
			if got := f.word(fixedFields + 4*j); got != want {
				t.Errorf("function %d: word %d behind the fixed fields is %d, want %d", i, j, got, want)
			}
		}
	}
}

func TestForgetRefusesAnotherLayout(t *testing.T) {
	t.Parallel()
	for name, spoil := range map[string]func([]byte) []byte{
		"twice":           func(image []byte) []byte { return append(image, image...) },
		"not there":       func(image []byte) []byte { return bytes.Replace(image, magic, make([]byte, len(magic)), 1) },
		"cut off":         func(image []byte) []byte { return image[:90] },
		"other functions": func(image []byte) []byte { image[len(image)-2*76] = 9; return image },
	} {
		if err := forget(spoil(fixture())); err == nil {
			t.Errorf("%s is taken", name)
		}
	}
}

func FuzzSlimmed(f *testing.F) {
	f.Add([]byte("\x00asm\x01\x00\x00\x00\x0b\x07\x01\x00\x41\x08\x0b\x01x"))
	f.Add(dataSectionOf(fixture()))
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

func dataSectionOf(image []byte) []byte {
	return section{dataSection, store(8, image)}.append([]byte("\x00asm\x01\x00\x00\x00"))
}
