package main

import (
	"strings"
	"testing"
)

func TestAndroidMistakes(t *testing.T) {
	for _, c := range []struct {
		name string
		args []string
		code int
		says string
	}{
		{"an argument", []string{"stillair.apk"}, exitUsage, "takes no arguments"},
		{"a release without a key", []string{"--ndk", t.TempDir()}, exitUsage, "keytool -genkeypair"},
		{"no source", []string{"--source", t.TempDir(), "--into", t.TempDir()}, exitFailed, "to be installed first"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Setenv("XDG_CACHE_HOME", t.TempDir())
			t.Setenv("XDG_CONFIG_HOME", t.TempDir())
			w, _, complaints := phoneWorld()
			if code := run(t.Context(), w, append([]string{"android"}, c.args...)); code != c.code || !strings.Contains(complaints.String(), c.says) {
				t.Errorf("exit %d, want %d: %s", code, c.code, complaints)
			}
		})
	}
}
