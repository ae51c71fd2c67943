package main

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"math/rand/v2"
	"os/exec"
	"slices"
	"testing"
)

// fixtureAt is where the fixture lies in memory.
const fixtureAt = 72

// places of the fixture, each ended by a zero: depths of the stack, lines, live variables, what another thread may stop.
var fixturePlaces = [][]byte{{2, 3, 0}, {72, 73, 0}, {6, 7, 0}, {70, 71, 0}, {0, 2, 3, 6, 0}, {0x85, 1, 0x86, 2, 0}}

// fixture is a table of functions as the toolchain lays it. The first function keeps its name, the others do not.
func fixture(count int) []byte {
	by := rand.New(rand.NewPCG(1, uint64(count)))
	names := []byte("\x00runtime.bgsweep\x00there.gone\x00")
	files := []byte("\x01\x00\x00\x00there.go\x00")
	places, starts := []byte{0}, []uint32{}
	for _, sequence := range fixturePlaces {
		starts = append(starts, uint32(len(places)))
		places = append(places, sequence...)
	}
	sequence := func() uint32 { return starts[[]int{0, 2, 4, 5}[by.IntN(4)]] }
	functions := make([]byte, 8*count+8)
	for i := range count {
		binary.LittleEndian.PutUint32(functions[8*i:], uint32(4096+i))
		binary.LittleEndian.PutUint32(functions[8*i+4:], uint32(len(functions)))
		name := uint32(17)
		if i == 0 {
			name = 1
		}
		words := []uint32{uint32(4096 + i), name, by.Uint32N(64), 8, sequence(), starts[1], starts[1], 4, 0, 77, 8<<24 | 0x102}
		words = append(words, starts[3], sequence(), 0, starts[3])
		for range 5 {
			words = append(words, []uint32{none, by.Uint32(), 1 << 31, 4}[by.IntN(4)])
		}
		for _, word := range append(words, 55, 56, 57) {
			functions = binary.LittleEndian.AppendUint32(functions, word)
		}
	}
	image := append([]byte("before--"), magic...)
	offset := uint64(72)
	for _, word := range []uint64{uint64(count), 1, 0} {
		image = binary.LittleEndian.AppendUint64(image, word)
	}
	for _, part := range [][]byte{names, files[:4], files[4:], places} {
		image = binary.LittleEndian.AppendUint64(image, offset)
		offset += uint64(len(part))
	}
	image = binary.LittleEndian.AppendUint64(image, offset)
	return slices.Concat(image, names, files, places, functions, []byte("between-"), fixtureFinder(count), []byte("behind--"))
}

// fixtureFinder finds the function of an instruction; the last function has one entry.
func fixtureFinder(count int) []byte {
	var finder []byte
	for i := range (count-1)*bucketsOfOne + 1 {
		finder = append(binary.LittleEndian.AppendUint32(finder, uint32(i/bucketsOfOne)), make([]byte, 16)...)
	}
	return finder
}

// moduleOf is a module with a function, four pages of memory and data.
func moduleOf(image []byte) []byte {
	head := []byte("\x00asm\x01\x00\x00\x00\x01\x05\x01\x60\x01\x7f\x00\x03\x02\x01\x00\x05\x03\x01\x00\x04\x07\x07\x01\x03mem\x02\x00\x0a\x04\x01\x02\x00\x0b")
	return section{dataSection, store(fixtureAt, image)}.append(head)
}

// started is the memory of a module after its start.
func started(t *testing.T, module []byte) []byte {
	t.Helper()
	run := exec.CommandContext(t.Context(), "node", "-e",
		`WebAssembly.instantiate(require("fs").readFileSync(0)).then(({ instance }) => process.stdout.write(new Uint8Array(instance.exports.mem.buffer)))`)
	run.Stdin = bytes.NewReader(module)
	var complaint bytes.Buffer
	run.Stderr = &complaint
	memory, err := run.Output()
	if err != nil {
		t.Fatalf("%v: %s", err, complaint.Bytes())
	}
	return memory
}

func TestAStartedModuleHasItsTableOfFunctions(t *testing.T) {
	t.Parallel()
	for _, count := range []int{3, 40, 400} {
		t.Run(fmt.Sprint(count), func(t *testing.T) {
			t.Parallel()
			slim, err := slimmed(moduleOf(fixture(count)))
			if err != nil {
				t.Fatal(err)
			}
			want := fixture(count)
			got := started(t, slim)[fixtureAt:][:len(want)]
			before, err := find(want)
			if err != nil {
				t.Fatal(err)
			}
			after, err := find(got)
			if err != nil {
				t.Fatal(err)
			}
			for i := range count {
				compareFunctions(t, i, before, after)
			}
			if finder := slices.Concat([]byte("between-"), fixtureFinder(count), []byte("behind--")); !bytes.HasSuffix(got, finder) {
				t.Error("the finder of functions is another one")
			}
		})
	}
}

// compareFunctions holds what is known of a function after to what was known before.
func compareFunctions(t *testing.T, i int, before, after table) {
	t.Helper()
	was, err := before.function(i)
	if err != nil {
		t.Fatal(err)
	}
	is, err := after.function(i)
	if err != nil {
		t.Fatal(err)
	}
	for _, field := range []int{0, argumentsField, deferField} {
		if is.word(field) != was.word(field) {
			t.Errorf("function %d: word %d is %d, was %d", i, field, is.word(field), was.word(field))
		}
	}
	name := 0
	if i == 0 {
		name = 1
	}
	if is.word(nameField) != name || is.word(kindsField-3) != keptData<<24|0x102 || is.word(countField) != keptPlaces {
		t.Errorf("function %d: got %v", i, is[:fixedFields])
	}
	for _, gone := range []int{20, 24, 32, 36, fixedFields} {
		if is.word(gone) != 0 {
			t.Errorf("function %d: word %d is still there", i, gone)
		}
	}
	for _, field := range []int{depthField, fixedFields + 4} {
		if want, got := sequenceAt(t, before, was.word(field)), sequenceAt(t, after, is.word(field)); !bytes.Equal(got, want) {
			t.Errorf("function %d: places of word %d are %v, were %v", i, field, got, want)
		}
	}
	for kind := range keptData {
		if want, got := was.word(fixedFields+16+4*kind), is.word(fixedFields+4*keptPlaces+4*kind); got != want {
			t.Errorf("function %d: data %d is %d, was %d", i, kind, got, want)
		}
	}
}

func sequenceAt(t *testing.T, of table, offset int) []byte {
	t.Helper()
	sequence, err := of.sequence(offset)
	if err != nil {
		t.Fatal(err)
	}
	return sequence
}

func TestNothingElseStaysOfTheTable(t *testing.T) {
	t.Parallel()
	slim, err := slimmed(moduleOf(fixture(40)))
	if err != nil {
		t.Fatal(err)
	}
	for _, gone := range []string{"there", "HI\x00", "FG\x00"} {
		if bytes.Contains(slim, []byte(gone)) {
			t.Errorf("%q is still there", gone)
		}
	}
	for _, stays := range []string{"before--", "runtime.bgsweep", "between-", "behind--"} {
		if !bytes.Contains(slim, []byte(stays)) {
			t.Errorf("%q is gone", stays)
		}
	}
}

func TestAnotherLayoutIsRefused(t *testing.T) {
	t.Parallel()
	for name, spoil := range map[string]func([]byte) []byte{
		"twice":          func(image []byte) []byte { return append(image, image...) },
		"not there":      func(image []byte) []byte { return bytes.Replace(image, magic, make([]byte, len(magic)), 1) },
		"cut off":        func(image []byte) []byte { return image[:90] },
		"another order":  func(image []byte) []byte { return bytes.ReplaceAll(image, []byte{1, 16, 0, 0}, []byte{9, 16, 0, 0}) },
		"another finder": func(image []byte) []byte { image[len(image)-30] = 1; return image },
		"unknown places": func(image []byte) []byte {
			return bytes.ReplaceAll(image, []byte{4, 0, 0, 0, 0, 0, 0, 0, 77}, []byte{5, 0, 0, 0, 0, 0, 0, 0, 77})
		},
		"other functions": func(image []byte) []byte { return bytes.ReplaceAll(image, []byte{0, 16, 0, 0}, []byte{9, 16, 0, 0}) },
	} {
		if _, err := slimmed(moduleOf(spoil(fixture(40)))); err == nil {
			t.Errorf("%s is taken", name)
		}
	}
}
