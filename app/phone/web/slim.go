package web

// The app does not use everything in its libraries: it loads nothing from the
// network, does not look for system fonts, reads no marked-up text, no
// photographs and no legacy text encodings, and has its own translations. Go
// links whatever could be reached, so the program is compiled against copies of
// the modules from which these parts are removed.

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// module is one from which something is left out.
type module struct {
	path string
	cuts []cut
}

// cut is a change of one file or folder of a module.
type cut struct {
	at     string
	change change
}

// slim copies the modules into work, makes the cuts and returns the path of a
// go.mod that names the copies.
func slim(ctx context.Context, folder, work string) (string, error) {
	modfile := filepath.Join(work, "slim.mod")
	for from, to := range map[string]string{"go.mod": modfile, "go.sum": filepath.Join(work, "slim.sum")} {
		text, err := os.ReadFile(filepath.Join(folder, from))
		if err != nil {
			return "", errors.Join(ErrNoSource, err)
		}
		if err := os.WriteFile(to, text, 0o644); err != nil {
			return "", err
		}
	}
	for i, m := range modules {
		from, err := tool(ctx, folder, "list", "-m", "-f", "{{.Dir}}", m.path)
		if err != nil {
			return "", err
		}
		to := filepath.Join(work, fmt.Sprint("module", i))
		if err := copyModule(to, strings.TrimSpace(from)); err != nil {
			return "", err
		}
		for _, c := range m.cuts {
			if err := c.change(filepath.Join(to, filepath.FromSlash(c.at))); err != nil {
				return "", fmt.Errorf("%s: %w; the version of %s has changed", c.at, err, m.path)
			}
		}
		if _, err := tool(ctx, folder, "mod", "edit", "-replace", m.path+"="+to, modfile); err != nil {
			return "", err
		}
	}
	return modfile, nil
}

// copyModule makes a writable copy of the files of a module that are compiled.
func copyModule(to, from string) error {
	return filepath.WalkDir(from, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		rel, err := filepath.Rel(from, path)
		if err != nil {
			return err
		}
		at := filepath.Join(to, rel)
		switch {
		case d.IsDir() && d.Name() == "testdata":
			return filepath.SkipDir
		case d.IsDir():
			return os.MkdirAll(at, 0o755)
		case strings.HasSuffix(path, "_test.go"):
			return nil
		}
		data, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		return os.WriteFile(at, data, 0o644)
	})
}
