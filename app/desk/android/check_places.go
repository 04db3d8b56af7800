package android

import (
	"archive/zip"
	"bytes"
)

// checkPlaces checks how the entries are aligned in the package and returns
// their contents.
func checkPlaces(p *problems, data []byte) map[string][]byte {
	r, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		p.add("it is no zip: %v", err)
		return nil
	}
	parts := map[string][]byte{}
	for _, f := range r.File {
		if parts[f.Name], err = inside(f); err != nil {
			p.add("%s: %v", f.Name, err)
		}
		at, err := f.DataOffset()
		switch to := int64(alignment(f.Name)); {
		case err != nil:
			p.add("%s: %v", f.Name, err)
		case f.Method != zip.Store:
			p.add("%s is compressed; Android maps it from within the package", f.Name)
		case at%to != 0:
			p.add("%s begins at %d, which is no multiple of %d", f.Name, at, to)
		}
	}
	for _, name := range []string{"AndroidManifest.xml", "resources.arsc", "classes.dex", "classes2.dex", "lib/arm64-v8a/" + library,
		"res/drawable-nodpi-v4/icon.png", "res/drawable-nodpi-v4/status.png"} {
		if len(parts[name]) == 0 {
			p.add("%s is missing", name)
		}
	}
	return parts
}
