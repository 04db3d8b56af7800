package android

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

// target is arm64 with the oldest Android that the manifest takes: 8 (API 26),
// which has channels of notifications and AAudio.
const target = "--target=aarch64-linux-android26"

// pageSize is what the library's segments must be aligned to: phones with
// Android 15 may have pages of 16 KiB.
const pageSize = 16384

// library is the name of the program on the phone; the manifest has it as
// android.app.lib_name, without lib and .so.
const library = "libphone.so"

// compiler is how C is compiled and linked for the phone.
type compiler struct {
	command string // for CC: the program with flags
	link    string // more flags for the linker
}

// trialCompiler uses Debian's clang with the headers that lay put into folder.
func trialCompiler(ctx context.Context, folder string) (compiler, error) {
	own, err := (step{}).run(ctx, "clang", "-print-resource-dir")
	if err != nil {
		return compiler{}, err
	}
	args := []string{"clang", target, "-nostdinc", "-D__BIONIC__", "-Wno-unused-command-line-argument"}
	for _, include := range []string{filepath.Join(strings.TrimSpace(own), "include"), filepath.Join(folder, "include"),
		filepath.Join(folder, "drawing"), "/usr/include/android", "/usr/include/android/nativehelper"} {
		args = append(args, "-isystem", quote(include))
	}
	return compiler{strings.Join(args, " "), "-L" + quote(filepath.Join(folder, "lib")) + " -fuse-ld=lld -nostartfiles -nodefaultlibs"}, nil
}

// ndkCompiler finds the NDK's clang.
func ndkCompiler(ndk string) (compiler, error) {
	found, err := filepath.Glob(filepath.Join(ndk, "toolchains", "llvm", "prebuilt", "*", "bin", "clang"))
	if err != nil || len(found) == 0 {
		return compiler{}, fmt.Errorf("%s: no toolchains/llvm/prebuilt/…/bin/clang in it; give the folder of an Android NDK (r26 or later) with --ndk", ndk)
	}
	return compiler{command: quote(found[0]) + " " + target}, nil
}

// quote protects spaces in what Go splits into words.
func quote(s string) string {
	if strings.ContainsAny(s, " \t") {
		return "'" + s + "'"
	}
	return s
}

func (c compiler) env() []string {
	return []string{"GOOS=android", "GOARCH=arm64", "CGO_ENABLED=1", "GOFLAGS=", "CC=" + c.command, "CGO_CFLAGS=-O2",
		fmt.Sprintf("CGO_LDFLAGS=%s -lc -lm -ldl -Wl,-z,max-page-size=%d -Wl,-soname,%s", c.link, pageSize, library)}
}

// sizes has the compiler hold what files/sizes.c asserts.
func (c compiler) sizes(ctx context.Context, work string) error {
	data, err := read("sizes.c")
	if err != nil {
		return err
	}
	source := filepath.Join(work, "sizes.c")
	if err := write(source, data); err != nil {
		return err
	}
	// A shell splits the command as Go does.
	_, err = step{}.run(ctx, "sh", "-c", c.command+` -c -o "$1" "$2"`, "sh", filepath.Join(work, "sizes.o"), source)
	return err
}

// program compiles the phone app of the module in folder to out. Left out are
// the table of symbols, the paths of this machine, and the font of emojis.
func (c compiler) program(ctx context.Context, folder, out string, kind Kind) error {
	if _, err := os.Stat(filepath.Join(folder, "app", "phone")); err != nil {
		return fmt.Errorf("%w: the project's source, which is not in %s", ErrMissing, folder)
	}
	tags := "netgo,no_emoji,migrated_fynedo"
	if kind == Trial {
		tags += ",trial"
	}
	_, err := step{folder, c.env()}.run(ctx, "go", "build", "-trimpath", "-buildvcs=false", "-tags", tags,
		"-ldflags", "-s -w -buildid=", "-buildmode=c-shared", "-o", out, "./app/phone")
	return err
}
