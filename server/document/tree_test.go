package document

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
)

// standardTree reads a text by the standard library's tokens.
func standardTree(decoder *json.Decoder, depth int) (node, error) {
	if depth > MaximumDepth {
		return node{}, errDepth
	}
	token, err := decoder.Token()
	if err != nil {
		return node{}, err
	}
	switch t := token.(type) {
	case json.Number:
		return node{kind: kindNumber, text: t.String()}, nil
	case string:
		return node{kind: kindString, text: t}, nil
	case bool:
		return node{kind: kindBool, truth: t}, nil
	case json.Delim:
		return standardEntries(decoder, depth, t == '{')
	}
	return node{kind: kindNull}, nil
}

func standardEntries(decoder *json.Decoder, depth int, object bool) (node, error) {
	result := node{kind: kindArray}
	if object {
		result.kind = kindObject
	}
	for decoder.More() {
		var key any
		if object {
			var err error
			if key, err = decoder.Token(); err != nil {
				return node{}, err
			}
		}
		value, err := standardTree(decoder, depth+1)
		if err != nil {
			return node{}, err
		}
		if name, _ := key.(string); object {
			result.members = append(result.members, member{name, value})
		} else {
			result.items = append(result.items, value)
		}
	}
	_, err := decoder.Token()
	return result, err
}

// sameTree wants what the standard library reads, and a refusal where it refuses.
func sameTree(t *testing.T, data []byte) {
	t.Helper()
	decoder := json.NewDecoder(bytes.NewReader(data))
	decoder.UseNumber()
	want, wrong := standardTree(decoder, 0)
	if _, err := decoder.Token(); wrong == nil && !errors.Is(err, io.EOF) {
		wrong = errTrailing
	}
	var found faults
	got, ok := parse(data, &found)
	if ok != (wrong == nil) {
		t.Errorf("%.300q: got %v, the standard library says %v", data, found.list, wrong)
		return
	}
	if ok && !reflect.DeepEqual(got, want) {
		t.Errorf("%.300q: got %+v, want %+v", data, got, want)
	}
	early := errors.Is(wrong, io.EOF) || errors.Is(wrong, io.ErrUnexpectedEOF)
	if !ok && early != (found.list[0].Message == errEarly.Error()) {
		t.Errorf("%.300q: got %v, the standard library says %v", data, found.list, wrong)
	}
}

// trickyTexts are ends, numbers, escapes and commas that a reader may get wrong.
var trickyTexts = strings.Split(`{}|[]|[1,]|[,1]|[1 2]|{"a"}|{"a":}|{"a":1,}|{,}|{"a" 1}|{1:2}|{"a":1 "b":2}|[}|{]|01|-|-0|-0.0|0.|.5|1.5e|1e+|1E-07|1e400|+1|1.2.3|--1|`+
	`NaN|nul|nulls|true1|tru|True|"|"a|"\|"\u|"\u12|"\u12g4"|"\ud800"|"\ud800\u0041"|"\ud83d\ude00"|"\ude00\ud83d"|"\ud83d\ud83d\ude00"|"\x"|"\/\b\f\n\r\t\"\\"|`+
	`"\uD83D\uDE00"|"\u00E9\u00e9"|"é"|1 2|{} {}|[[[]]]|{"a":{"a":[null,true,false]}}|1 |# 1|"\ud83d\u"|"\ud83d\u12"|"\u 123"|"\u\u0010123"|`, "|")

func TestTreeIsThatOfTheStandardLibrary(t *testing.T) {
	t.Parallel()
	for _, text := range trickyTexts {
		sameTree(t, []byte(text))
		sameTree(t, []byte(" [\t"+text+"\r\n]"))
	}
	sameTree(t, []byte("\"a\x01\""))
	sameTree(t, []byte("\"a\x7f\u2028\""))
	for _, folder := range []string{brokenFolder, demoFolder} {
		files, err := filepath.Glob(filepath.Join(folder, "*.json"))
		if err != nil || len(files) == 0 {
			t.Fatalf("%s: %d files, %v", folder, len(files), err)
		}
		for _, file := range files {
			data, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			sameTree(t, data)
			sameTree(t, data[:len(data)/2])
		}
	}
}

func FuzzParse(f *testing.F) {
	for _, text := range trickyTexts {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		var found faults
		if _, ok := parse(data, &found); !ok && strings.Contains(found.list[0].Message, "UTF-8") {
			return // the standard library reads such texts
		}
		sameTree(t, data)
	})
}
