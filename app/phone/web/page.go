package web

import (
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"io/fs"
	"maps"
	"slices"
	"strings"

	device "stillair/sensors/device/web"
)

//go:embed index.html page.css begin.js early.js start.js touch.js worker.js manifest.webmanifest
var own embed.FS

// Names of the files that Build makes rather than copies.
const (
	Program = "stillair.wasm"
	glue    = "wasm_exec.js"
	worker  = "worker.js"
)

var iconSizes = []int{180, 192, 512}

// Page holds the files of the page by name.
type Page map[string][]byte

// NewPage collects the files that do not depend on the program.
func NewPage() (Page, error) {
	p := Page{}
	for _, from := range []fs.FS{own, device.Scripts} {
		if err := p.add(from); err != nil {
			return nil, err
		}
	}
	for _, size := range iconSizes {
		b, err := iconPNG(size)
		if err != nil {
			return nil, err
		}
		p[fmt.Sprintf("icon-%d.png", size)] = b
	}
	return p, nil
}

func (p Page) add(from fs.FS) error {
	return fs.WalkDir(from, ".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		p[path], err = fs.ReadFile(from, path)
		return err
	})
}

// Seal joins the scripts and writes into the worker which files there are and
// which version of them this is. It is called once, when all files are in place.
func (p Page) Seal() error {
	if err := p.joinScripts(); err != nil {
		return err
	}
	names := slices.Sorted(maps.Keys(p))
	sum := sha256.New()
	list := []string{"./"}
	for _, name := range names {
		fmt.Fprintf(sum, "%s %d\n", name, len(p[name]))
		sum.Write(p[name])
		if name != worker && name != "index.html" {
			list = append(list, name)
		}
	}
	quoted, err := json.Marshal(list)
	if err != nil {
		return err
	}
	version := "stillair-" + hex.EncodeToString(sum.Sum(nil))[:16]
	text := strings.Replace(string(p[worker]), `["@FILES@"]`, string(quoted), 1)
	p[worker] = []byte(strings.Replace(text, "@VERSION@", version, 1))
	return nil
}
