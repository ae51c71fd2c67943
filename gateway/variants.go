package gateway

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"net/http"
	"path"
	"strings"
	"sync"
)

// compressAbove is the size in bytes from which a file is worth compressing.
const compressAbove = 1024

// variant is one file of the page as it is sent.
type variant struct {
	content  []byte
	tag      string
	encoding string
}

// variants makes each file's forms once: plain, and compressed where that is smaller. The page inside the binary never changes.
type variants struct{ made sync.Map }

// of picks the form for a request.
func (v *variants) of(name string, content []byte, r *http.Request) variant {
	encoding := ""
	if compressible(name) && len(content) > compressAbove && takesGzip(r) {
		encoding = "gzip"
	}
	key := encoding + " " + name
	if made, ok := v.made.Load(key); ok {
		return made.(variant)
	}
	made := makeVariant(content, encoding)
	v.made.Store(key, made)
	return made
}

// makeVariant compresses when asked for and it helps, and tags the form by a digest over the plain content.
func makeVariant(content []byte, encoding string) variant {
	sum := sha256.Sum256(content)
	tag := hex.EncodeToString(sum[:12])
	if encoding == "gzip" {
		if packed, err := packed(content); err == nil && len(packed) < len(content) {
			return variant{packed, fmt.Sprintf("%q", tag+"-gzip"), encoding}
		}
	}
	return variant{content, fmt.Sprintf("%q", tag), ""}
}

// packed compresses as far as it goes; it is done once a file.
func packed(content []byte) ([]byte, error) {
	var b bytes.Buffer
	w, err := gzip.NewWriterLevel(&b, gzip.BestCompression)
	if err != nil {
		return nil, err
	}
	if _, err := w.Write(content); err != nil {
		return nil, err
	}
	err = w.Close()
	return b.Bytes(), err
}

// compressible tells the kinds that are not compressed already.
func compressible(name string) bool {
	switch path.Ext(name) {
	case ".html", ".js", ".mjs", ".css", ".json", ".svg", ".wasm", ".webmanifest", ".txt":
		return true
	}
	return false
}

// takesGzip tells whether the caller can unpack it.
func takesGzip(r *http.Request) bool {
	for coding := range strings.SplitSeq(r.Header.Get("Accept-Encoding"), ",") {
		name, weight, _ := strings.Cut(strings.TrimSpace(coding), ";")
		if strings.EqualFold(name, "gzip") && strings.TrimSpace(weight) != "q=0" {
			return true
		}
	}
	return false
}
