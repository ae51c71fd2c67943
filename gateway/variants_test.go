package gateway

import (
	"bytes"
	"compress/gzip"
	"io"
	"net/http"
	"net/http/httptest"
	"testing"
	"testing/fstest"
)

func TestPageIsCompressedForThoseWhoTakeIt(t *testing.T) {
	t.Parallel()
	long := bytes.Repeat([]byte("let approach = 1.3 * stall;\n"), 400)
	handler := pageHandler(fstest.MapFS{"index.html": {Data: long}, "main.js": {Data: long}, "short.js": {Data: long[:40]}, "icon.png": {Data: long}})
	for _, c := range []struct{ path, accept, encoding string }{
		{"/main.js", "gzip, deflate, br", "gzip"},
		{"/main.js", "br, gzip;q=0.5", "gzip"},
		{"/main.js", "gzip;q=0", ""},
		{"/main.js", "", ""},
		{"/short.js", "gzip", ""},
		{"/icon.png", "gzip", ""},
		{"/some/page", "gzip", "gzip"},
	} {
		r := httptest.NewRequest(http.MethodGet, c.path, nil)
		r.Header.Set("Accept-Encoding", c.accept)
		w := httptest.NewRecorder()
		handler.ServeHTTP(w, r)
		body := plain(t, w)
		if w.Code != 200 || w.Header().Get("Content-Encoding") != c.encoding || !bytes.HasPrefix(long, body) || len(body) < 40 {
			t.Errorf("%s for %q: %d, %q, %d bytes", c.path, c.accept, w.Code, w.Header().Get("Content-Encoding"), len(body))
		}
		r.Header.Set("If-None-Match", w.Header().Get("Etag"))
		again := httptest.NewRecorder()
		handler.ServeHTTP(again, r)
		if again.Code != http.StatusNotModified {
			t.Errorf("%s again: %d, want 304", c.path, again.Code)
		}
	}
}

// plain unpacks an answer where it is packed.
func plain(t *testing.T, w *httptest.ResponseRecorder) []byte {
	t.Helper()
	var in io.Reader = w.Body
	if w.Header().Get("Content-Encoding") == "gzip" {
		unpacked, err := gzip.NewReader(w.Body)
		if err != nil {
			t.Fatal(err)
		}
		in = unpacked
	}
	body, err := io.ReadAll(in)
	if err != nil {
		t.Fatal(err)
	}
	return body
}

func TestBrotliOfTheBuildIsSent(t *testing.T) {
	t.Parallel()
	long := bytes.Repeat([]byte("let approach = 1.3 * stall;\n"), 400)
	small := []byte("stands for the same in Brotli")
	handler := pageHandler(fstest.MapFS{
		"assets/core-Ab12Cd34.wasm": {Data: long}, "assets/core-Ab12Cd34.wasm.br": {Data: small},
		"assets/large-Ab12Cd34.js": {Data: long}, "assets/large-Ab12Cd34.js.br": {Data: append(long, small...)},
		"index.html": {Data: long},
	})
	for _, c := range []struct {
		path, accept, encoding string
		code                   int
	}{
		{"/assets/core-Ab12Cd34.wasm", "gzip, deflate, br", "br", 200},
		{"/assets/core-Ab12Cd34.wasm", "BR ;q=0.4", "br", 200},
		{"/assets/core-Ab12Cd34.wasm", "br;q=0, gzip", "gzip", 200},
		{"/assets/core-Ab12Cd34.wasm", "br;q=0.00", "", 200},
		{"/assets/core-Ab12Cd34.wasm", "gzip", "gzip", 200},
		{"/assets/core-Ab12Cd34.wasm", "", "", 200},
		{"/assets/core-Ab12Cd34.wasm.br", "br", "", 404},
		{"/assets/large-Ab12Cd34.js", "br", "", 200},
		{"/index.html", "br, gzip", "gzip", 200},
	} {
		r := httptest.NewRequest(http.MethodGet, c.path, nil)
		r.Header.Set("Accept-Encoding", c.accept)
		w := httptest.NewRecorder()
		handler.ServeHTTP(w, r)
		if w.Code != c.code || w.Header().Get("Content-Encoding") != c.encoding {
			t.Errorf("%s for %q: %d, %q", c.path, c.accept, w.Code, w.Header().Get("Content-Encoding"))
		}
		if c.encoding == "br" && (!bytes.Equal(w.Body.Bytes(), small) || w.Header().Get("Content-Type") != "application/wasm") {
			t.Errorf("%s: %q as %s", c.path, w.Body, w.Header().Get("Content-Type"))
		}
	}
}
