package jsonform

import (
	"bytes"
	"encoding/json"
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/gowebpki/jcs"
)

type inner struct {
	Name  string  `json:"name"`
	Size  float64 `json:"size,omitempty"`
	Count int32   `json:"count,omitempty"`
}

type sample struct {
	Text   string     `json:"text"`
	Maybe  *float64   `json:"maybe,omitempty"`
	Whole  int        `json:"whole"`
	Truth  bool       `json:"truth,omitempty"`
	Part   inner      `json:"part,omitempty"`
	Point  *inner     `json:"point"`
	List   []inner    `json:"list"`
	Few    []float64  `json:"few,omitempty"`
	Pair   [2]float64 `json:"pair"`
	Hidden int        `json:"-"`
	own    int
}

func TestMarshalIsThatOfTheStandardLibrary(t *testing.T) {
	t.Parallel()
	zero, tiny := 0.0, 1e-9
	for _, value := range []any{
		sample{}, &sample{Text: "plain", Maybe: &zero, own: 3}, []sample{{Maybe: &tiny, Truth: true, Few: []float64{}}},
		sample{List: []inner{{"a", 1.5, -3}, {}}, Point: &inner{Size: -1e-7}, Few: []float64{1e20, 1e21, -0.25, math.MaxFloat64}, Pair: [2]float64{1, -2}},
		(*sample)(nil), []float64(nil), struct{}{}, "only a text", 12, true,
	} {
		same(t, value)
	}
}

func TestEveryCharacterIsThatOfTheStandardLibrary(t *testing.T) {
	t.Parallel()
	var all strings.Builder
	for character := range rune(0x3000) {
		all.WriteRune(character)
	}
	for _, text := range []string{all.String(), "\xff\xfe", "\xed\xa0\x80", "cut \xe2\x82", "\U0001f6e9", "\ufffd"} {
		same(t, text)
	}
}

func TestWhatCannotBeWritten(t *testing.T) {
	t.Parallel()
	for _, number := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		if _, err := Marshal(sample{Maybe: &number}); !errors.Is(err, errNumber) {
			t.Errorf("%v: %v", number, err)
		}
	}
	if _, err := Marshal([]any{map[string]int{}}); !errors.Is(err, errKind) {
		t.Errorf("a map: %v", err)
	}
}

func FuzzMarshal(f *testing.F) {
	f.Add("Larkmoor", 0.1)
	f.Add("<&\u2028\x00\xff", math.Copysign(0, -1))
	f.Add("", 5e-324)
	f.Fuzz(func(t *testing.T, text string, number float64) {
		if math.IsNaN(number) || math.IsInf(number, 0) {
			return
		}
		same(t, sample{Text: text, Maybe: &number, List: []inner{{text, number, 0}}})
	})
}

func same(t *testing.T, value any) {
	t.Helper()
	want, err := json.Marshal(value)
	if err != nil {
		t.Fatal(err)
	}
	got, err := Marshal(value)
	if err != nil || !bytes.Equal(got, want) {
		t.Errorf("got %.400q, %v\nwant %.400q", got, err, want)
	}
	sameCanonical(t, value, want)
}

// sameCanonical holds the canonical form to what another program makes of the plain one; that one takes no bare numbers and truth values.
func sameCanonical(t *testing.T, value any, plain []byte) {
	t.Helper()
	want, err := jcs.Transform([]byte(`{"value":` + string(plain) + `}`))
	if err != nil {
		t.Fatal(err)
	}
	got, err := Canonical(value)
	if got = []byte(`{"value":` + string(got) + `}`); err != nil || !bytes.Equal(got, want) {
		t.Errorf("canonical: got %.400q, %v\nwant %.400q", got, err, want)
	}
}
