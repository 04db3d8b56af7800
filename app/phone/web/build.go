package web

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
)

// ErrNoSource is returned if the program cannot be compiled because the
// project's source, or Go, is missing.
var ErrNoSource = errors.New("the phone program has to be compiled, and that needs Go and the project's source here")

// Build compiles the phone program for the browser from the module in folder
// and assembles the whole page.
func Build(ctx context.Context, folder string, e Effort) (Page, error) {
	p, err := NewPage()
	if err != nil {
		return nil, err
	}
	if p[Program], err = compile(ctx, folder); err != nil {
		return nil, err
	}
	if p[glue], err = readGlue(ctx, folder); err != nil {
		return nil, err
	}
	if err := p.Seal(); err != nil {
		return nil, err
	}
	return p, p.Compress(e)
}

// compile builds the program without the parts of its libraries that it does not use
// (see slim).
func compile(ctx context.Context, folder string) ([]byte, error) {
	work, err := os.MkdirTemp("", "stillair-web-*")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(work)
	modfile, err := slim(ctx, folder, work)
	if err != nil {
		return nil, err
	}
	root, err := goRoot(ctx, folder)
	if err != nil {
		return nil, err
	}
	changed, err := overlay(root, work)
	if err != nil {
		return nil, err
	}
	out := filepath.Join(work, Program)
	args := slices.Concat([]string{"build", "-o", out, "-overlay=" + changed}, flags(modfile), short(), []string{"./app/phone"})
	if _, err := tool(ctx, folder, args...); err != nil {
		return nil, err
	}
	return os.ReadFile(out)
}

// flags leave out the symbol table, the paths of this machine, the emoji font,
// which alone is 4 MB, and the toolkit's check of which goroutine draws, which
// the app does not need and which takes time.
func flags(modfile string) []string {
	return []string{"-trimpath", "-buildvcs=false", "-tags", "no_emoji,no_metadata,minimal,migrated_fynedo", "-ldflags", "-s -w", "-modfile", modfile}
}

// readGlue reads the script that comes with the compiler and must match its
// version.
func readGlue(ctx context.Context, folder string) ([]byte, error) {
	root, err := goRoot(ctx, folder)
	if err != nil {
		return nil, err
	}
	return os.ReadFile(filepath.Join(root, "lib", "wasm", glue))
}

func tool(ctx context.Context, folder string, args ...string) (string, error) {
	if _, err := os.Stat(filepath.Join(folder, "go.mod")); err != nil {
		return "", errors.Join(ErrNoSource, err)
	}
	cmd := exec.CommandContext(ctx, "go", args...)
	cmd.Dir = folder
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm", "CGO_ENABLED=0", "GOFLAGS=")
	var out, complaint bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &complaint
	if err := cmd.Run(); err != nil {
		if errors.Is(err, exec.ErrNotFound) {
			return "", errors.Join(ErrNoSource, err)
		}
		return "", fmt.Errorf("go %s: %w\n%s", args[0], err, complaint.String())
	}
	return out.String(), nil
}

// Write puts the page into a folder, for any host that serves files.
func (p Page) Write(folder string) error {
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return err
	}
	for name, data := range p {
		if err := os.WriteFile(filepath.Join(folder, name), data, 0o644); err != nil {
			return err
		}
	}
	return nil
}

// Read takes a page that Write wrote.
func Read(folder string) (Page, error) {
	if _, err := os.Stat(folder); err != nil {
		return nil, err
	}
	p := Page{}
	if err := p.add(os.DirFS(folder)); err != nil {
		return nil, err
	}
	for _, name := range []string{"index.html", Program, scripts, worker} {
		if _, ok := p[name]; !ok {
			return nil, fmt.Errorf("%s: no %s in it; this is not a page that was written by this program", folder, name)
		}
	}
	return p, nil
}
