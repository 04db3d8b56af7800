package app

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// Stillair uses no network. The one exception is the verb of the desk program
// that serves the phone app to a phone next to it, at the user's request. These
// tests check every source file, with any build tags; they find what the
// program could do, where observing it would show only what it did.

// mayServe are the only files that may use the network.
func mayServe(path string) bool {
	return strings.HasPrefix(path, "app/desk/phone") || path == "app/phone/web/handler.go" || path == "app/phone/web/web_test.go"
}

// mayStart are the only files that may start other programs, which could use
// the network: they start the Go tool, to build the phone app, the tools that
// package it, and tests.
func mayStart(path string) bool {
	return path == "app/phone/web/build.go" || path == "app/desk/android/tools.go" || strings.HasSuffix(path, "_test.go") || strings.HasPrefix(path, "sensors/internal/memtest/")
}

// netPackage reports whether a package can open or use a socket.
func netPackage(path string) bool {
	switch path {
	case "net/url", "net/netip": // addresses without access to the network
		return false
	case "crypto/tls", "log/syslog", "expvar":
		return true
	}
	for _, p := range []string{"net", "golang.org/x/net", "google.golang.org/grpc"} {
		if path == p || strings.HasPrefix(path, p+"/") {
			return true
		}
	}
	return false
}

func TestNoPackageOfTheNetworkIsImported(t *testing.T) {
	serves := 0
	for _, f := range sourceFiles(t) {
		for _, imp := range f.imports {
			switch {
			case netPackage(imp) && mayServe(f.path):
				serves++
			case netPackage(imp):
				t.Errorf("%s imports %s: nothing but the phone verb may use the network", f.path, imp)
			case imp == "os/exec" && !mayStart(f.path):
				t.Errorf("%s imports %s: another program could use the network", f.path, imp)
			}
		}
	}
	if serves == 0 {
		t.Fatal("not even the phone verb was seen to use the network: this test looks at nothing")
	}
}

// roundabout names functions that reach the network without an import of a
// network package: sockets of the system, and what Fyne fetches or opens.
var roundabout = map[string][]string{
	"syscall": {"Socket", "Connect", "Sendto", "Sendmsg", "RawSyscall", "Syscall", "Syscall6"},
	"unix":    {"Socket", "Connect", "Sendto", "Sendmsg", "Syscall"},
	"os":      {"StartProcess"},
	"fyne":    {"LoadResourceFromURLString", "LoadResourceFromURL"},
	"storage": {"ParseURI", "NewURI"},
}

func TestNoWayRoundToTheNetwork(t *testing.T) {
	calls := 0
	for _, f := range sourceFiles(t) {
		if mayServe(f.path) {
			continue
		}
		tree, err := parser.ParseFile(token.NewFileSet(), filepath.Join("..", f.path), nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(tree, func(n ast.Node) bool {
			s, ok := n.(*ast.SelectorExpr)
			if !ok {
				return true
			}
			calls++
			if s.Sel.Name == "OpenURL" {
				t.Errorf("%s opens a page in the browser", f.path)
			}
			if pkg, ok := s.X.(*ast.Ident); ok && slices.Contains(roundabout[pkg.Name], s.Sel.Name) {
				t.Errorf("%s uses %s.%s, which can reach the network", f.path, pkg.Name, s.Sel.Name)
			}
			return true
		})
	}
	if calls == 0 {
		t.Fatal("no call was seen: this test looks at nothing")
	}
}

// A script reaches the network by one of these names, or by an address.
var (
	scriptReach   = regexp.MustCompile(`\b(XMLHttpRequest|WebSocket|WebTransport|EventSource|sendBeacon|RTCPeerConnection|java\.net|HttpURLConnection)\b`)
	scriptFetch   = regexp.MustCompile(`\bfetch\(([^)]*)`)
	scriptImport  = regexp.MustCompile(`\bimportScripts\b(?:\(("[a-z][a-z._-]*"(?:, *)?)+\))?`) // matches completely if all are files next to it
	scriptAddress = regexp.MustCompile(`(?i)\b(?:https?|wss?|ftp)://[^\s"'<>` + "`" + `)]*|(?:src|href|action)\s*=\s*["']//[^"']*`)
)

// strayNetwork returns the part of a text that reaches beyond its own origin.
func strayNetwork(text string) []string {
	found := scriptReach.FindAllString(text, -1)
	for _, m := range scriptFetch.FindAllStringSubmatch(text, -1) {
		// The page's own files, and the kept copy's stand-in for the same request.
		if arg := strings.TrimSpace(m[1]); !regexp.MustCompile(`^"[a-z][a-z./-]*"(,|$)|^e\.request$`).MatchString(arg) {
			found = append(found, "fetch("+arg+")")
		}
	}
	for _, call := range scriptImport.FindAllString(text, -1) {
		if !strings.HasSuffix(call, ")") {
			found = append(found, call)
		}
	}
	for _, address := range scriptAddress.FindAllString(text, -1) {
		if !strings.HasPrefix(address, "http://www.w3.org/") && !strings.HasPrefix(address, "http://schemas.android.com/") { // names of XML, not addresses
			found = append(found, address)
		}
	}
	return found
}

// TestScriptsStayAtHome checks everything that a browser would run or load:
// scripts, pages, styles, and those written inside Go.
func TestScriptsStayAtHome(t *testing.T) {
	seen := 0
	err := filepath.WalkDir("..", func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		rel := filepath.ToSlash(strings.TrimPrefix(path, "../"))
		if d.IsDir() && path != ".." && (strings.HasPrefix(d.Name(), ".") || d.Name() == "node_modules" || d.Name() == "testdata") {
			return filepath.SkipDir
		}
		switch filepath.Ext(path) {
		case ".js", ".mjs", ".html", ".css", ".svg", ".webmanifest", ".xml", ".java", ".kt":
		default:
			inGo := strings.HasPrefix(rel, "sensors/device/") && strings.HasSuffix(rel, ".go")
			if !inGo {
				return nil
			}
		}
		text, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		seen++
		if strings.HasSuffix(rel, ".go") { // where fetch( is a method, and the browser's would be asked for by name
			text = regexp.MustCompile(`"fetch"`).ReplaceAll(regexp.MustCompile(`\bfetch\(`).ReplaceAll(text, nil), []byte("fetch(anything)"))
		}
		for _, stray := range strayNetwork(string(text)) {
			t.Errorf("%s reaches out: %s", rel, stray)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if seen < 5 {
		t.Fatalf("only %d files were seen: this test looks at nothing", seen)
	}
}

// TestStrayNetworkIsSeen checks that the test above can fail.
func TestStrayNetworkIsSeen(t *testing.T) {
	for _, text := range []string{
		`fetch("https://example.org/x")`, `fetch(address)`, "fetch(`${where}/x`)", `new WebSocket("wss://example.org")`, `navigator.sendBeacon("x")`,
		`<img src="//example.org/a.png">`, `@import url(http://example.org/a.css)`, `new XMLHttpRequest()`, `importScripts(where)`,
		`importScripts("//example.org/x.js")`, `importScripts("x.js", where)`, `const load = importScripts`,
	} {
		if len(strayNetwork(text)) == 0 {
			t.Errorf("%s was not seen", text)
		}
	}
	for _, text := range []string{`fetch("stillair.wasm", { credentials: "same-origin" })`, `fetch(e.request)`, `importScripts("x.js", "y-z.js");`, `addEventListener("fetch", (e) => 1)`, `xmlns="http://www.w3.org/2000/svg"`} {
		if stray := strayNetwork(text); len(stray) > 0 {
			t.Errorf("%s was taken for %v", text, stray)
		}
	}
}

// TestAndroidMayNotUseTheNetwork checks that the app does not request the
// permission: without it the system does not let the app, or any library in it,
// open a socket.
func TestAndroidMayNotUseTheNetwork(t *testing.T) {
	manifest, err := os.ReadFile("desk/android/files/AndroidManifest.xml")
	if err != nil {
		t.Fatal(err)
	}
	asked := regexp.MustCompile(`uses-permission[^>]*android:name="([^"]+)"`).FindAllStringSubmatch(string(manifest), -1)
	if len(asked) == 0 {
		t.Fatal("no right is asked for at all: this test looks at the wrong file")
	}
	for _, a := range asked {
		switch a[1] {
		case "android.permission.INTERNET", "android.permission.ACCESS_NETWORK_STATE", "android.permission.ACCESS_WIFI_STATE", "android.permission.BLUETOOTH":
			t.Error(fmt.Sprint("the app asks for ", a[1]))
		}
	}
}
