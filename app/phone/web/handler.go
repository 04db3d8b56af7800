package web

import (
	"crypto/sha256"
	"encoding/hex"
	"net/http"
	"path"
	"strconv"
	"strings"
)

// shrinks reports whether compression makes a file smaller: pictures are
// compressed already.
func shrinks(name string) bool { return path.Ext(name) != ".png" }

// mediaTypes by suffix; a browser runs a program only as application/wasm.
var mediaTypes = map[string]string{
	".html":        "text/html; charset=utf-8",
	".css":         "text/css; charset=utf-8",
	".js":          "text/javascript; charset=utf-8",
	".wasm":        "application/wasm",
	".webmanifest": "application/manifest+json",
	".png":         "image/png",
}

// served is one file as it is sent.
type served struct {
	media, tag string
	plain      []byte
	packed     map[string][]byte // by content coding
}

// policy lets the page run its own program and scripts and load nothing from
// anywhere else (W3C, Content Security Policy Level 3). index.html says the same
// for hosts that send no header, except for the last clause, which browsers obey
// only in a header: no other page may show this one in a frame.
const policy = "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'; img-src 'self' data: blob:; style-src 'self'; " +
	"object-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"

// Handler serves the page: each file in the best coding that the browser
// accepts, sent again only when it has changed, with the sensors allowed for
// this page and for no frame inside it.
func (p Page) Handler() http.Handler {
	files := map[string]served{}
	for name, data := range p {
		if strings.HasSuffix(name, ".br") || strings.HasSuffix(name, ".gz") {
			continue
		}
		sum := sha256.Sum256(data)
		files["/"+name] = served{media: mediaTypes[path.Ext(name)], tag: hex.EncodeToString(sum[:8]), plain: data,
			packed: map[string][]byte{"br": p[name+".br"], "gzip": p[name+".gz"]}}
	}
	files["/"] = files["/index.html"]
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.Method != http.MethodGet && r.Method != http.MethodHead {
			w.Header().Set("Allow", "GET, HEAD")
			http.Error(w, "only GET and HEAD", http.StatusMethodNotAllowed)
			return
		}
		f, ok := files[r.URL.Path]
		if !ok {
			http.NotFound(w, r)
			return
		}
		f.serve(w, r)
	})
}

func (f served) serve(w http.ResponseWriter, r *http.Request) {
	coding, data := f.choose(r.Header.Get("Accept-Encoding"))
	tag := strconv.Quote(f.tag + coding)
	h := w.Header()
	h.Set("Content-Type", f.media)
	h.Set("Cache-Control", "no-cache")
	h.Set("Vary", "Accept-Encoding")
	h.Set("ETag", tag)
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("Referrer-Policy", "no-referrer")
	h.Set("Content-Security-Policy", policy)
	h.Set("Permissions-Policy", "accelerometer=(self), gyroscope=(self), geolocation=(self), camera=(), microphone=(self)")
	if r.Header.Get("If-None-Match") == tag {
		w.WriteHeader(http.StatusNotModified)
		return
	}
	if coding != "" {
		h.Set("Content-Encoding", coding)
	}
	h.Set("Content-Length", strconv.Itoa(len(data)))
	if r.Method == http.MethodGet {
		w.Write(data)
	}
}

// choose picks brotli before gzip before plain (RFC 9110, section 12.5.3; a
// quality of zero refuses).
func (f served) choose(accept string) (coding string, data []byte) {
	takes := map[string]bool{}
	for part := range strings.SplitSeq(accept, ",") {
		name, weight, _ := strings.Cut(strings.TrimSpace(part), ";")
		takes[strings.TrimSpace(name)] = !zero(weight)
	}
	for _, c := range []string{"br", "gzip"} {
		if takes[c] && f.packed[c] != nil {
			return c, f.packed[c]
		}
	}
	return "", f.plain
}

func zero(weight string) bool {
	value, ok := strings.CutPrefix(strings.TrimSpace(weight), "q=")
	if !ok {
		return false
	}
	q, err := strconv.ParseFloat(value, 64)
	return err == nil && q == 0
}
