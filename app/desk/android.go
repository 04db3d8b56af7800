package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"github.com/spf13/pflag"

	"stillair/app/desk/android"
)

// androidFlags are the flags of android.
type androidFlags struct{ ndk, key, into, source string }

func androidCommand() command {
	return command{
		Name: "android", Summary: "build the phone app as an Android package",
		Help: `
Builds, packs, signs and checks an Android package (arm64, Android 8 or later)
that records with the screen off. It needs Go, this project's source and four
Debian packages, aapt, apksigner, clang and libsmali-java, with a few headers;
it names what is missing.

Without an NDK the result is a trial package: compiled against a few headers of
this project's own, never run on a phone, and labelled as such. It installs
beside a release and tests the phone at its first start; share what it finds.

With the folder of an Android NDK the result is a release, which has to be
signed with a key of your own:

  keytool -genkeypair -keyalg RSA -keysize 3072 -validity 20000 \
    -alias stillair -keystore stillair.p12
  ` + android.PasswordEnv + `=… desk android --ndk DIR --key stillair.p12

To install: copy the file to the phone and open it, or "adb install FILE".
Android asks whether packages from that source may be installed.`,
		Flags: func(f *pflag.FlagSet) runner {
			a := &androidFlags{}
			f.StringVar(&a.ndk, "ndk", "", "folder of an Android NDK (r26 or later), for a release")
			f.StringVar(&a.key, "key", "", "keystore with the signing key; its password in "+android.PasswordEnv)
			f.StringVar(&a.into, "into", ".", "folder for the package")
			f.StringVar(&a.source, "source", "", "folder of the project's source (default: found from here)")
			return a.run
		},
	}
}

func (a *androidFlags) run(ctx context.Context, w *world, args []string) error {
	if len(args) != 0 {
		return usage("it takes no arguments, only flags")
	}
	o := android.Options{Source: a.source, NDK: a.ndk, Key: a.key, Into: a.into, Now: w.Now()}
	var err error
	if o.Source == "" {
		if o.Source, err = findSource(); err != nil {
			return err
		}
	}
	if o.Cache, err = place(os.UserCacheDir); err != nil {
		return err
	}
	if o.Keep, err = place(os.UserConfigDir); err != nil {
		return err
	}
	fmt.Fprintln(w.Err, "Compiling the phone app for Android; the first time this takes two minutes…")
	path, kind, err := android.Build(ctx, o)
	if errors.Is(err, android.ErrNoKey) {
		return usage("%w", err)
	}
	if err != nil {
		return err
	}
	info, err := os.Stat(path)
	if err != nil {
		return err
	}
	return w.print(fmt.Sprintf("Wrote %s, %.1f MB: %s.\n", path, float64(info.Size())/1e6, packageNote(kind)))
}

// place is a folder of this program's own in one of the user's.
func place(of func() (string, error)) (string, error) {
	base, err := of()
	return filepath.Join(base, "stillair"), err
}

// packageNote says how far a package may be trusted.
func packageNote(k android.Kind) string {
	if k == android.Release {
		return "a release, checked, and signed with your key"
	}
	return "a trial package, checked, but never run on a phone; it tests the phone at its first start"
}
