package android

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// problems collects what is wrong with a package.
type problems []string

func (p *problems) add(format string, args ...any) { *p = append(*p, fmt.Sprintf(format, args...)) }

// err is nil where nothing is wrong.
func (p problems) err(path string) error {
	if len(p) == 0 {
		return nil
	}
	return fmt.Errorf("%s is not fit for a phone:\n  %s", path, strings.Join(p, "\n  "))
}

// Check looks into the package at path and returns an error that names all
// that is wrong with it.
func Check(ctx context.Context, path string) error {
	data, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	var p problems
	parts := checkPlaces(&p, data)
	names, err := knownNames()
	if err != nil {
		return err
	}
	exports := checkLibrary(&p, parts["lib/arm64-v8a/"+library], names)
	manifest, err := readManifest(ctx, path)
	if err != nil {
		return err
	}
	checkManifest(&p, manifest)
	checkClasses(&p, parts, manifest, exports)
	checkSignature(ctx, &p, path)
	return p.err(filepath.Base(path))
}

// knownNames are the names that the library may leave to the phone. Each was
// found in bionic's or the NDK's reference before it was added.
func knownNames() ([]string, error) {
	data, err := read("names.txt")
	return strings.Fields(string(data)), err
}

// checkClasses checks that every class of the manifest is there, and every
// native method of those in the library.
func checkClasses(p *problems, parts map[string][]byte, m manifest, exports []string) {
	var all []class
	for name, data := range parts {
		if !strings.HasSuffix(name, ".dex") {
			continue
		}
		some, err := readDex(data)
		if err != nil {
			p.add("%s: %v", name, err)
		}
		all = append(all, some...)
	}
	for _, want := range m.classes() {
		if !slices.ContainsFunc(all, func(c class) bool { return c.name == want }) {
			p.add("the manifest names the class %s, which is in no file of classes", want)
		}
	}
	for _, c := range all {
		for _, method := range c.native {
			if name := nativeName(c.name, method); !slices.Contains(exports, name) {
				p.add("the class %s has the native method %s, and the library no %s", c.name, method, name)
			}
		}
	}
}

// checkSignature has apksigner verify the package.
func checkSignature(ctx context.Context, p *problems, path string) {
	said, err := step{}.run(ctx, "apksigner", "verify", "--verbose", path)
	if err != nil {
		p.add("the signature does not hold: %v", err)
		return
	}
	for _, scheme := range []string{"v2", "v3"} {
		if !strings.Contains(said, "Verified using "+scheme+" scheme (APK Signature Scheme "+scheme+"): true") {
			p.add("no signature of scheme %s", scheme)
		}
	}
}
