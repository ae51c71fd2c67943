package gateway

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io/fs"
	"net/http"
	"path"
	"strings"
	"sync"
)

// compressAbove is the size in bytes from which a file is worth compressing.
const compressAbove = 1024

// brotliEnding is put to a file's name for its form in Brotli.
const brotliEnding = ".br"

// variant is one file of the page as it is sent.
type variant struct {
	content  []byte
	tag      string
	encoding string
}

// variants makes each file's forms once: plain, and compressed where that is smaller. The page inside the binary never changes. Brotli is the page's
// build's: it writes name.br beside a file whose name changes with its content.
type variants struct {
	page fs.FS
	made sync.Map
}

// of picks the form for a request.
func (v *variants) of(name string, content []byte, r *http.Request) variant {
	encoding := ""
	switch {
	case !compressible(name) || len(content) <= compressAbove:
	case takes(r, "br") && v.hasBrotli(name):
		encoding = "br"
	case takes(r, "gzip"):
		encoding = "gzip"
	}
	key := encoding + " " + name
	if made, ok := v.made.Load(key); ok {
		return made.(variant)
	}
	made := v.make(name, content, encoding)
	v.made.Store(key, made)
	return made
}

func (v *variants) hasBrotli(name string) bool {
	info, err := fs.Stat(v.page, name+brotliEnding)
	return err == nil && info.Mode().IsRegular()
}

// make compresses when asked for and it helps, and tags the form by a digest over the plain content.
func (v *variants) make(name string, content []byte, encoding string) variant {
	sum := sha256.Sum256(content)
	tag := hex.EncodeToString(sum[:12])
	small, err := v.compressed(name, content, encoding)
	if err == nil && encoding != "" && len(small) < len(content) {
		return variant{small, fmt.Sprintf("%q", tag+"-"+encoding), encoding}
	}
	return variant{content, fmt.Sprintf("%q", tag), ""}
}

func (v *variants) compressed(name string, content []byte, encoding string) ([]byte, error) {
	if encoding == "br" {
		return fs.ReadFile(v.page, name+brotliEnding)
	}
	return packed(content)
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

// takes tells whether the caller can unpack an encoding.
func takes(r *http.Request, encoding string) bool {
	for coding := range strings.SplitSeq(r.Header.Get("Accept-Encoding"), ",") {
		name, weight, _ := strings.Cut(strings.TrimSpace(coding), ";")
		if strings.EqualFold(strings.TrimSpace(name), encoding) && !refused(weight) {
			return true
		}
	}
	return false
}

// refused tells a weight of nothing: q=0, q=0.0 and so on.
func refused(weight string) bool {
	number, ok := strings.CutPrefix(strings.TrimSpace(weight), "q=")
	return ok && strings.Trim(number, "0.") == ""
}
