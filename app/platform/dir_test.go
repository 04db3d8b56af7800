package platform_test

import (
	"errors"
	"os"
	"path/filepath"
	"testing"

	"stillair/app/platform"
	"stillair/app/platform/platformtest"
)

func TestDirKeepsTheContract(t *testing.T) {
	platformtest.TestFiles(t, func(t *testing.T) platform.Files {
		d, err := platform.NewDir(filepath.Join(t.TempDir(), "made", "here"))
		if err != nil {
			t.Fatal(err)
		}
		return d
	})
}

func TestMemoryKeepsTheContract(t *testing.T) {
	platformtest.TestFiles(t, func(*testing.T) platform.Files { return platformtest.NewMemory() })
}

// TestTwoDirsShareOneLock represents two processes on one folder: flock ties
// the lock to the open file, not to the process.
func TestTwoDirsShareOneLock(t *testing.T) {
	path := t.TempDir()
	a, err := platform.NewDir(path)
	if err != nil {
		t.Fatal(err)
	}
	b, err := platform.NewDir(path)
	if err != nil {
		t.Fatal(err)
	}
	unlock, err := a.Lock("recorder")
	if err != nil {
		t.Fatal(err)
	}
	if _, err := b.Lock("recorder"); !errors.Is(err, platform.ErrBusy) {
		t.Errorf("err = %v, want ErrBusy", err)
	}
	unlock()
	unlock, err = b.Lock("recorder")
	if err != nil {
		t.Fatal(err)
	}
	unlock()
}

func TestDirOnReadOnlyStorageSaysSo(t *testing.T) {
	if os.Getuid() == 0 {
		t.Skip("the superuser may write anywhere")
	}
	path := t.TempDir()
	d, err := platform.NewDir(path)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.Chmod(path, 0o500); err != nil {
		t.Fatal(err)
	}
	if _, err := d.Create("a"); !errors.Is(err, os.ErrPermission) {
		t.Errorf("err = %v, want a permission error", err)
	}
}
