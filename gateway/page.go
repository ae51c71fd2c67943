package gateway

import (
	"bytes"
	"io/fs"
	"mime"
	"net/http"
	"path"
	"regexp"
	"strings"
	"time"
)

// hashedName is a file whose name changes with its content, as the page's build writes them: name-Ab12Cd34.js.
var hashedName = regexp.MustCompile(`[-.][A-Za-z0-9_-]{8,}\.[a-z0-9]+$`)

// mediaTypes are those that a bare machine's table may lack.
var mediaTypes = map[string]string{
	".wasm":        "application/wasm",
	".webmanifest": "application/manifest+json",
	".js":          "text/javascript; charset=utf-8",
	".mjs":         "text/javascript; charset=utf-8",
	".css":         "text/css; charset=utf-8",
	".html":        "text/html; charset=utf-8",
	".json":        "application/json",
	".svg":         "image/svg+xml",
	".woff2":       "font/woff2",
}

// pageHandler serves the page. A path without an extension that is no file is one of the page's own addresses and gets index.html.
func pageHandler(page fs.FS) http.Handler {
	forms := &variants{page: page}
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.Method != http.MethodGet && r.Method != http.MethodHead {
			w.Header().Set("Allow", "GET, HEAD")
			http.Error(w, "method not allowed", http.StatusMethodNotAllowed)
			return
		}
		name, content, ok := pageFile(page, r.URL.Path)
		if !ok {
			http.NotFound(w, r)
			return
		}
		w.Header().Set("Content-Type", mediaType(name))
		w.Header().Set("Cache-Control", cacheRule(name))
		form := forms.of(name, content, r)
		w.Header().Set("Vary", "Accept-Encoding")
		w.Header().Set("Etag", form.tag)
		if form.encoding != "" {
			w.Header().Set("Content-Encoding", form.encoding)
		}
		http.ServeContent(w, r, name, time.Time{}, bytes.NewReader(form.content))
	})
}

// pageFile finds the file for a URL path.
func pageFile(page fs.FS, urlPath string) (string, []byte, bool) {
	name := strings.TrimPrefix(path.Clean("/"+urlPath), "/")
	if name == "" {
		name = "index.html"
	}
	if path.Ext(name) == brotliEnding {
		return name, nil, false // a form of a file is none of its own
	}
	content, err := fs.ReadFile(page, name)
	if err != nil && path.Ext(name) == "" {
		name = "index.html"
		content, err = fs.ReadFile(page, name)
	}
	return name, content, err == nil
}

// cacheRule keeps hashed assets for a year and asks again for everything else.
func cacheRule(name string) string {
	if strings.HasPrefix(name, "assets/") && hashedName.MatchString(name) {
		return "public, max-age=31536000, immutable"
	}
	return "no-cache"
}

// mediaType goes by the extension.
func mediaType(name string) string {
	ext := path.Ext(name)
	if t, ok := mediaTypes[ext]; ok {
		return t
	}
	if t := mime.TypeByExtension(ext); t != "" {
		return t
	}
	return "application/octet-stream"
}
