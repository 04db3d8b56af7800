package android

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
)

// ErrMissing is wrapped by errors that name a program or file that has to be
// installed.
var ErrMissing = errors.New("something has to be installed first")

// need is a program or header that Build cannot do without.
type need struct {
	name    string // the command, or the file's path
	debian  string // the package that has it; empty: Debian's is too old
	forWhat string
}

// Programs and headers, by what uses them.
var (
	toPack = []need{
		{"go", "", "Go 1.25 or later, to compile the program"},
		{"aapt", "aapt", "to encode the manifest"},
		{"smali", "libsmali-java", "to assemble the service"},
		{"apksigner", "apksigner", "to sign the package"},
	}
	toCompile = []need{
		{"clang", "clang", "to compile the program's C"},
		{"ld.lld", "lld", "to link the library"},
		{"/usr/include/android/android/sensor.h", "android-platform-frameworks-native-headers", "for Android's own types"},
		{"/usr/include/android/nativehelper/jni.h", "android-libnativehelper-dev", "for the calls into Java"},
		{"/usr/include/EGL/egl.h", "libegl-dev", "to draw"},
		{"/usr/include/GLES2/gl2.h", "libgles-dev", "to draw"},
	}
)

// require looks for everything and names all that is missing at once.
func require(needs []need) error {
	var missing, packages []string
	for _, n := range needs {
		if n.there() {
			continue
		}
		missing = append(missing, n.name+" ("+n.forWhat+")")
		if n.debian != "" && !slices.Contains(packages, n.debian) {
			packages = append(packages, n.debian)
		}
	}
	if len(missing) == 0 {
		return nil
	}
	remedy := ""
	if len(packages) > 0 {
		remedy = ". On Debian: apt-get install " + strings.Join(packages, " ")
	}
	return fmt.Errorf("%w: %s%s", ErrMissing, strings.Join(missing, ", "), remedy)
}

func (n need) there() bool {
	if filepath.IsAbs(n.name) {
		_, err := os.Stat(n.name)
		return err == nil
	}
	_, err := exec.LookPath(n.name)
	return err == nil
}

// step runs one program and returns what it printed. The error contains its
// error output.
type step struct {
	folder string   // empty: the current one
	env    []string // in addition to that of this process
}

func (s step) run(ctx context.Context, name string, args ...string) (string, error) {
	cmd := exec.CommandContext(ctx, name, args...)
	cmd.Dir = s.folder
	cmd.Env = append(os.Environ(), s.env...)
	var out, complaint bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &complaint
	if err := cmd.Run(); err != nil {
		if ctx.Err() != nil {
			return "", ctx.Err()
		}
		return out.String(), fmt.Errorf("%s %s: %w\n%s%s", filepath.Base(name), args[0], err, out.String(), complaint.String())
	}
	return out.String(), nil
}
