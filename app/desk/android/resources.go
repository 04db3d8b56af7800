package android

import (
	"archive/zip"
	"bytes"
	"context"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// trialManifest turns the manifest into that of a trial, which has another id,
// so that it installs beside a release, and says in its name what it is.
var trialManifest = strings.NewReplacer(
	`package="stillair.phone"`, `package="stillair.phone.trial"`,
	`android:label="Stillair"`, `android:label="Stillair trial"`,
	`android:versionName="1.0.0"`, `android:versionName="1.0.0-trial, never run on a phone"`,
)

// resources has aapt encode the manifest and the icons, and returns the
// entries that belong into the package. work is an empty folder.
func resources(ctx context.Context, icon []byte, kind Kind, work string) ([]entry, error) {
	if err := fs.WalkDir(files, "files/framework", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		return copyOut(path, filepath.Join(work, strings.TrimPrefix(path, "files/")))
	}); err != nil {
		return nil, err
	}
	manifest, err := read("AndroidManifest.xml")
	if err != nil {
		return nil, err
	}
	if kind == Trial {
		manifest = []byte(trialManifest.Replace(string(manifest)))
	}
	sign, err := statusIcon()
	if err != nil {
		return nil, err
	}
	for name, data := range map[string][]byte{"AndroidManifest.xml": manifest, "res/drawable-nodpi/icon.png": icon, "res/drawable-nodpi/status.png": sign} {
		if err := write(filepath.Join(work, "app", name), data); err != nil {
			return nil, err
		}
	}
	in := step{folder: work}
	if _, err := in.run(ctx, "aapt", "package", "-f", "-x", "-M", "framework/AndroidManifest.xml", "-S", "framework/res", "-F", "framework.zip"); err != nil {
		return nil, err
	}
	if _, err := in.run(ctx, "aapt", "package", "-f", "-M", "app/AndroidManifest.xml", "-S", "app/res", "-I", "framework.zip", "-F", "app.zip"); err != nil {
		return nil, err
	}
	data, err := os.ReadFile(filepath.Join(work, "app.zip"))
	if err != nil {
		return nil, err
	}
	return unpack(data)
}

func copyOut(from, to string) error {
	data, err := files.ReadFile(from)
	if err != nil {
		return err
	}
	return write(to, data)
}

// entry is one file of a package.
type entry struct {
	name string
	data []byte
}

func unpack(data []byte) ([]entry, error) {
	r, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return nil, err
	}
	var out []entry
	for _, f := range r.File {
		e := entry{name: f.Name}
		if e.data, err = inside(f); err != nil {
			return nil, err
		}
		out = append(out, e)
	}
	return out, nil
}

func inside(f *zip.File) ([]byte, error) {
	r, err := f.Open()
	if err != nil {
		return nil, err
	}
	defer r.Close()
	return io.ReadAll(r)
}
