package web

import (
	"bytes"
	"compress/gzip"
	"encoding/json"
	"errors"
	"image/png"
	"io"
	"maps"
	"net/http"
	"net/http/httptest"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/andybalholm/brotli"
)

// page returns a whole page around a stand-in for the program.
func page(t *testing.T) Page {
	t.Helper()
	p, err := NewPage()
	if err != nil {
		t.Fatal(err)
	}
	p[Program] = bytes.Repeat([]byte("\x00asm stands in for the program. "), 4000)
	p[glue] = []byte("// glue")
	if err := p.Seal(); err != nil {
		t.Fatal(err)
	}
	return p
}

// TestPageHoldsWhatItNames follows every reference of the page, the manifest
// and the workers to a file.
func TestPageHoldsWhatItNames(t *testing.T) {
	p := page(t)
	var named []string
	for _, m := range regexp.MustCompile(`(?:src|href)="([^"]+)"`).FindAllStringSubmatch(string(p["index.html"]), -1) {
		named = append(named, m[1])
	}
	var manifest struct {
		Icons []struct{ Src, Sizes string }
	}
	if err := json.Unmarshal(p["manifest.webmanifest"], &manifest); err != nil {
		t.Fatal(err)
	}
	for _, i := range manifest.Icons {
		named = append(named, i.Src)
		img, err := png.DecodeConfig(bytes.NewReader(p[i.Src]))
		if err != nil || i.Sizes != strings.Join([]string{itoa(img.Width), itoa(img.Height)}, "x") {
			t.Errorf("icon %s is %dx%d, the manifest says %s (%v)", i.Src, img.Width, img.Height, i.Sizes, err)
		}
	}
	for _, text := range p {
		for _, m := range regexp.MustCompile(`new Worker\("([^"]+)"\)`).FindAllSubmatch(text, -1) {
			named = append(named, string(m[1]))
		}
	}
	loaded := slices.Collect(maps.Keys(p.ofWorkers()))
	if !slices.Contains(loaded, "keeping.js") {
		t.Errorf("of scripts that workers load only %q are seen", loaded)
	}
	named = append(named, loaded...)
	kept := workerFiles(t, p)
	named = append(named, kept[1:]...)
	for _, n := range named {
		if _, ok := p[n]; !ok {
			t.Errorf("%q is named and is not there", n)
		}
	}
	for name := range p {
		if !slices.Contains(kept, name) && name != worker && name != "index.html" {
			t.Errorf("the worker does not keep %s, so the program would not start without a network", name)
		}
	}
	if !strings.Contains(string(p["index.html"]), `name="viewport"`) {
		t.Error("the page does not say how wide it is")
	}
}

func itoa(n int) string { b, _ := json.Marshal(n); return string(b) }

func workerFiles(t *testing.T, p Page) (files []string) {
	t.Helper()
	m := regexp.MustCompile(`const FILES = (.*);`).FindSubmatch(p[worker])
	if err := json.Unmarshal(m[1], &files); err != nil || files[0] != "./" {
		t.Fatalf("worker keeps %s: %v", m[1], err)
	}
	return files
}

func TestVersionFollowsTheFiles(t *testing.T) {
	version := regexp.MustCompile(`const VERSION = "(stillair-[0-9a-f]{16})"`)
	a, b := page(t), page(t)
	if !bytes.Equal(a[worker], b[worker]) {
		t.Error("the same files give two versions")
	}
	c, err := NewPage()
	if err != nil {
		t.Fatal(err)
	}
	c[Program], c[glue] = []byte("another program"), []byte("// glue")
	if err := c.Seal(); err != nil {
		t.Fatal(err)
	}
	va, vc := version.FindSubmatch(a[worker]), version.FindSubmatch(c[worker])
	if va == nil || vc == nil || bytes.Equal(va[1], vc[1]) {
		t.Errorf("versions %q and %q of two programs", va, vc)
	}
}

func TestCompressedFilesUnpackToTheSame(t *testing.T) {
	p := page(t)
	if err := p.Compress(Quick); err != nil {
		t.Fatal(err)
	}
	br, err := io.ReadAll(brotli.NewReader(bytes.NewReader(p[Program+".br"])))
	if err != nil || !bytes.Equal(br, p[Program]) {
		t.Errorf("brotli gives back %d of %d bytes: %v", len(br), len(p[Program]), err)
	}
	r, err := gzip.NewReader(bytes.NewReader(p[Program+".gz"]))
	if err != nil {
		t.Fatal(err)
	}
	gz, err := io.ReadAll(r)
	if err != nil || !bytes.Equal(gz, p[Program]) {
		t.Errorf("gzip gives back %d of %d bytes: %v", len(gz), len(p[Program]), err)
	}
	if _, ok := p["icon-512.png.br"]; ok {
		t.Error("a picture was compressed once more")
	}
}

func TestHandler(t *testing.T) {
	p := page(t)
	if err := p.Compress(Quick); err != nil {
		t.Fatal(err)
	}
	h := p.Handler()
	for _, c := range []struct {
		name, method, path, accept string
		status                     int
		media, coding              string
	}{
		{"page", "GET", "/", "", 200, "text/html; charset=utf-8", ""},
		{"program, any browser of today", "GET", "/stillair.wasm", "gzip, deflate, br, zstd", 200, "application/wasm", "br"},
		{"program, gzip only", "GET", "/stillair.wasm", "gzip", 200, "application/wasm", "gzip"},
		{"program, brotli refused", "GET", "/stillair.wasm", "br;q=0, gzip;q=0.5", 200, "application/wasm", "gzip"},
		{"program, nothing taken", "GET", "/stillair.wasm", "", 200, "application/wasm", ""},
		{"head", "HEAD", "/stillair.wasm", "br", 200, "application/wasm", "br"},
		{"manifest", "GET", "/manifest.webmanifest", "", 200, "application/manifest+json", ""},
		{"not there", "GET", "/nothing", "", 404, "text/plain; charset=utf-8", ""},
		{"out of the folder", "GET", "/../go.mod", "", 404, "text/plain; charset=utf-8", ""},
		{"compressed file by name", "GET", "/stillair.wasm.br", "", 404, "text/plain; charset=utf-8", ""},
		{"post", "POST", "/", "", 405, "text/plain; charset=utf-8", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := httptest.NewRequest(c.method, "https://phone.invalid/", nil)
			r.URL.Path = c.path
			r.Header.Set("Accept-Encoding", c.accept)
			w := httptest.NewRecorder()
			h.ServeHTTP(w, r)
			got := w.Result()
			if got.StatusCode != c.status || got.Header.Get("Content-Type") != c.media || got.Header.Get("Content-Encoding") != c.coding {
				t.Errorf("%d, %q, coding %q", got.StatusCode, got.Header.Get("Content-Type"), got.Header.Get("Content-Encoding"))
			}
			if c.method == "HEAD" && w.Body.Len() > 0 {
				t.Error("an answer to HEAD has a body")
			}
		})
	}
}

// TestPolicyOfPageAndHandler: if a host sends no header, only the page's own
// policy applies, which must be the same.
func TestPolicyOfPageAndHandler(t *testing.T) {
	p := page(t)
	w := httptest.NewRecorder()
	p.Handler().ServeHTTP(w, httptest.NewRequest("GET", "/", nil))
	header, framed := strings.CutSuffix(w.Result().Header.Get("Content-Security-Policy"), "; frame-ancestors 'none'")
	m := regexp.MustCompile(`http-equiv="Content-Security-Policy" content="([^"]+)"`).FindSubmatch(p["index.html"])
	if !framed || m == nil || string(m[1]) != header {
		t.Errorf("the page says %q, the handler %q", m, header)
	}
	for _, foreign := range []string{"http:", "https:", "*", "unsafe-inline", "'unsafe-eval'"} {
		if strings.Contains(header, foreign) {
			t.Errorf("the policy %q lets in %s", header, foreign)
		}
	}
}

func TestHandlerSendsOnceWhatDoesNotChange(t *testing.T) {
	h := page(t).Handler()
	ask := func(tag string) *http.Response {
		r := httptest.NewRequest("GET", "/"+Program, nil)
		r.Header.Set("If-None-Match", tag)
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		return w.Result()
	}
	first := ask("")
	if first.StatusCode != 200 {
		t.Fatal(first.Status)
	}
	if again := ask(first.Header.Get("ETag")); again.StatusCode != 304 {
		t.Errorf("asked again with its tag: %s", again.Status)
	}
}

func TestWrittenPageReadsBack(t *testing.T) {
	p := page(t)
	folder := filepath.Join(t.TempDir(), "site")
	if err := p.Write(folder); err != nil {
		t.Fatal(err)
	}
	q, err := Read(folder)
	if err != nil {
		t.Fatal(err)
	}
	if !maps.EqualFunc(p, q, bytes.Equal) {
		t.Error("what was read differs from what was written")
	}
	if _, err := Read(t.TempDir()); err == nil || !strings.Contains(err.Error(), "index.html") {
		t.Errorf("an empty folder: %v", err)
	}
}

func TestBuildWithoutSource(t *testing.T) {
	if _, err := Build(t.Context(), t.TempDir(), Quick); !errors.Is(err, ErrNoSource) {
		t.Errorf("err = %v", err)
	}
}
