package android

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// toolkitHash pins the toolkit's own classes (files/toolkit-license.txt).
const toolkitHash = "4e7b63d6958b1668535cb2c726313a1660ba115fd407481e9b0fbc1706cf0432"

// classes gives the two files of classes: the toolkit's, and ours assembled
// from smali. work is an empty folder.
func classes(ctx context.Context, work string) ([]entry, error) {
	toolkit, err := read("toolkit.dex")
	if err != nil {
		return nil, err
	}
	if sum := sha256.Sum256(toolkit); hex.EncodeToString(sum[:]) != toolkitHash {
		return nil, fmt.Errorf("files/toolkit.dex has the hash %x and not %s", sum, toolkitHash)
	}
	err = fs.WalkDir(files, "files/smali", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		return copyOut(path, filepath.Join(work, strings.TrimPrefix(path, "files/")))
	})
	if err != nil {
		return nil, err
	}
	// The version of classes belongs to the oldest Android of the manifest.
	if _, err := (step{folder: work}).run(ctx, "smali", "assemble", "--api", "26", "-o", "own.dex", "smali"); err != nil {
		return nil, err
	}
	own, err := os.ReadFile(filepath.Join(work, "own.dex"))
	return []entry{{"classes.dex", toolkit}, {"classes2.dex", own}}, err
}
