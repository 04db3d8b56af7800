package android

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// publicLibraries are those that the program may need: the NDK lists them as
// stable for every app.
var publicLibraries = []string{"libandroid.so", "libc.so", "libdl.so", "libEGL.so", "libGLESv2.so", "liblog.so", "libm.so"}

// lay puts the trial's headers and its empty libraries into a folder under
// base and returns it. The folder's name holds a hash of the headers: it stands
// in the compiler's flags, and Go's build cache sees a change of flags but none
// of such headers.
func lay(ctx context.Context, base string) (string, error) {
	sum := sha256.New()
	all := map[string][]byte{}
	err := fs.WalkDir(files, "files/include", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := files.ReadFile(path)
		all[strings.TrimPrefix(path, "files/")] = data
		sum.Write([]byte(path + "\x00"))
		sum.Write(data)
		return err
	})
	if err != nil {
		return "", err
	}
	folder := filepath.Join(base, "android-"+hex.EncodeToString(sum.Sum(nil))[:12])
	for name, data := range all {
		if err := write(filepath.Join(folder, name), data); err != nil {
			return "", err
		}
	}
	// Of /usr/include only these folders may be seen: the rest is another C
	// library's.
	for _, name := range []string{"EGL", "GLES2", "KHR"} {
		link := filepath.Join(folder, "drawing", name)
		if err := os.MkdirAll(filepath.Dir(link), 0o755); err != nil {
			return "", err
		}
		if err := os.Symlink("/usr/include/"+name, link); err != nil && !os.IsExist(err) {
			return "", err
		}
	}
	return folder, emptyLibraries(ctx, folder)
}

// emptyLibraries makes libraries that hold nothing but their name: enough to
// write down which one the program needs.
func emptyLibraries(ctx context.Context, folder string) error {
	source := filepath.Join(folder, "lib", "empty.c")
	if err := write(source, nil); err != nil {
		return err
	}
	for _, name := range publicLibraries {
		out := filepath.Join(folder, "lib", name)
		if _, err := os.Stat(out); err == nil {
			continue
		}
		if _, err := (step{}).run(ctx, "clang", target, "-shared", "-nostdlib", "-fuse-ld=lld", "-Wl,-soname,"+name, "-o", out, source); err != nil {
			return err
		}
	}
	return nil
}

// write writes a file and the folders it is in.
func write(path string, data []byte) error {
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return err
	}
	return os.WriteFile(path, data, 0o644)
}
