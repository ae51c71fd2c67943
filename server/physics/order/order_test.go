package order

import (
	"cmp"
	"math/rand/v2"
	"slices"
	"testing"
)

type pair struct{ key, place int }

func byKey(a, b pair) int { return cmp.Compare(a.key, b.key) }

func TestStableIsThatOfTheStandardLibrary(t *testing.T) {
	t.Parallel()
	by := rand.New(rand.NewPCG(3, 4))
	for length := range 200 {
		list := make([]pair, length)
		for i := range list {
			list[i] = pair{by.IntN(1 + length/3), i}
		}
		want := slices.Clone(list)
		slices.SortStableFunc(want, byKey)
		Stable(list, byKey)
		if !slices.Equal(list, want) {
			t.Fatalf("%d entries: got %v, want %v", length, list, want)
		}
		by.Shuffle(length, func(i, j int) { list[i], list[j] = list[j], list[i] })
		want, keys := slices.Clone(list), make([]int, length)
		for i := range list {
			keys[i] = list[i].key
		}
		slices.SortStableFunc(want, byKey)
		if By(list, keys); !slices.Equal(list, want) {
			t.Fatalf("%d entries by keys: got %v, want %v", length, list, want)
		}
	}
}

func TestNothingToOrder(t *testing.T) {
	t.Parallel()
	Stable(nil, byKey)
	Stable([]pair{}, byKey)
}
