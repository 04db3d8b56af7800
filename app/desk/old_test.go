package main

import (
	"encoding/json"
	"math"
	"path/filepath"
	"reflect"
	"testing"
)

// TestOldRecordingsMeasureTheSame analyses recordings written by earlier programs:
// the first one that could analyse, the last of version 1 and the first of version
// 2. Each is of an invented ride (their simulate, --seed 3; the second and third
// with --ride short --browser), cut off in the middle of its parts, with one
// launch whose times are in its truth.json. The results agree with the truth
// within their uncertainty, and with those of the recording as today's program
// writes it.
func TestOldRecordingsMeasureTheSame(t *testing.T) {
	t.Parallel()
	truth := map[string]float64{"0-60 km/h": 2.361, "0-100 km/h": 4.518} // s from the first movement
	for _, name := range []string{"first-of-version-1", "last-of-version-1", "first-of-version-2"} {
		t.Run(name, func(t *testing.T) {
			dir := t.TempDir()
			old := filepath.Join("testdata", "old", name+".jsonl.gz")
			was := measured(t, old, filepath.Join(dir, "was"))
			good(t, "export", old, "--as", "session", "--ends", "0", "--into", dir)
			is := measured(t, filepath.Join(dir, filepath.Base(old)), filepath.Join(dir, "is"))
			if len(was) == 0 || !reflect.DeepEqual(was, is) {
				t.Errorf("measured are\n%v\nand as today's program writes it\n%v", was, is)
			}
			found := 0
			for _, m := range was["runs"].([]any)[0].(map[string]any)["marks"].([]any) {
				mark := m.(map[string]any)
				if want, ok := truth[mark["mark"].(string)]; ok {
					found++
					if s, se := mark["s"].(float64), mark["se_s"].(float64); math.Abs(s-want) > 2*se || se > 0.15 {
						t.Errorf("%v after %.3f ± %.3f s, want %.3f", mark["mark"], s, 2*se, want)
					}
				}
			}
			if found != len(truth) || len(was["runs"].([]any)) != 1 {
				t.Errorf("%d runs, with %d of the marks", len(was["runs"].([]any)), found)
			}
		})
	}
}

// measured are the results of a recording, without the notes about the file.
func measured(t *testing.T, path, into string) map[string]any {
	t.Helper()
	good(t, "export", path, "--as", "results", "--ends", "0", "--into", into)
	found, err := filepath.Glob(filepath.Join(into, "*.json"))
	if err != nil || len(found) != 1 {
		t.Fatalf("%v: %v", found, err)
	}
	var all map[string]any
	if err := json.Unmarshal(readFile(t, found[0]), &all); err != nil {
		t.Fatal(err)
	}
	delete(all, "notes")
	delete(all, "findings")
	return all
}
