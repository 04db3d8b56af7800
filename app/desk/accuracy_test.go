package main

import (
	"bytes"
	"context"
	"crypto/rand"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// TestAccuracy runs two seeds of the six cases that have many and one of those
// that have few, and checks that a second call finds them done.
func TestAccuracy(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	records, page := filepath.Join(dir, "a", "rides.jsonl"), filepath.Join(dir, "page.html")
	args := []string{"accuracy", "--study", "coast-downs", "--share", "0.002", "--records", records, "--report", page}
	out := good(t, args...)
	for _, want := range []string{"limits met", "unclear", page, records} {
		if !strings.Contains(out, want) {
			t.Errorf("says nothing of %q:\n%s", want, out)
		}
	}
	first, err := os.ReadFile(records)
	if err != nil || bytes.Count(first, []byte("\n")) != 18 {
		t.Fatalf("%d records, %v", bytes.Count(first, []byte("\n")), err)
	}
	good(t, args...)
	if again, _ := os.ReadFile(records); !bytes.Equal(first, again) {
		t.Error("the second time added to what was done")
	}
	if html, err := os.ReadFile(page); err != nil || !bytes.Contains(html, []byte("tourer, wind 1.5")) {
		t.Errorf("the page lacks a case: %v", err)
	}
}

// TestAccuracyStopped: results from before Ctrl-C are kept and shown.
func TestAccuracyStopped(t *testing.T) {
	t.Parallel()
	ctx, stop := context.WithCancel(t.Context())
	stop()
	dir := t.TempDir()
	page := filepath.Join(dir, "page.html")
	var out, errs bytes.Buffer
	w := &world{Out: &out, Err: &errs, Now: time.Now, After: time.After, Random: rand.Reader}
	code := run(ctx, w, []string{"accuracy", "--records", filepath.Join(dir, "r.jsonl"), "--report", page})
	if _, err := os.Stat(page); code != exitInterrupted || err != nil {
		t.Errorf("exit %d, %v", code, err)
	}
}

func TestAccuracyAskedBadly(t *testing.T) {
	t.Parallel()
	bad := filepath.Join(t.TempDir(), "bad.jsonl")
	if err := os.WriteFile(bad, []byte("hello\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		args []string
		code int
		says string
	}{
		{[]string{"--study", "moon"}, exitUsage, "coast-downs"},
		{[]string{"--share", "2"}, exitUsage, "at most 1"},
		{[]string{"more"}, exitUsage, "no arguments"},
		{[]string{"--records", bad}, exitFailed, "line 1"},
	} {
		code, _, err := desk(t, append([]string{"accuracy"}, c.args...)...)
		if code != c.code || !strings.Contains(err, c.says) {
			t.Errorf("%v: exit %d: %s", c.args, code, err)
		}
	}
}
