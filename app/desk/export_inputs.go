package main

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"

	"stillair/export/share"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// exportInput is one recording to export.
type exportInput struct {
	path string
	name string // of the files to write, unlike any other
}

// ownName is how the app names a recording: by when it began.
var ownName = regexp.MustCompile(`^ride-(\d{8})-\d{6}(-\d+)?$`)

// recordingEndings end the names of what is taken from a folder of recordings.
var recordingEndings = []string{".jsonl.gz", ".jsonl", ".zip", ".nmea"}

// exportInputs lists the recordings that the arguments stand for. A folder is
// a plain log where it holds motion.csv, and otherwise a folder of recordings.
//
// Where the ends of rides are cut off, the names that the app gives recordings
// are used without the time of day, which would show when the ride began.
func exportInputs(args []string, c share.Choice) ([]exportInput, error) {
	var inputs []exportInput
	taken := map[string]bool{}
	for _, arg := range args {
		paths, err := recordingsAt(arg)
		if err != nil {
			return nil, err
		}
		for _, p := range paths {
			inputs = append(inputs, exportInput{p, freeName(p, c, taken)})
		}
	}
	return inputs, nil
}

func recordingsAt(path string) ([]string, error) {
	info, err := os.Stat(path)
	if err != nil || !info.IsDir() {
		return []string{path}, nil // what is wrong with it is reported in its turn
	}
	if _, err := os.Stat(filepath.Join(path, "motion.csv")); err == nil {
		return []string{path}, nil
	}
	entries, err := os.ReadDir(path)
	if err != nil {
		return nil, &sensors.InputError{File: path, What: finding.New("input.cannot_open", sensors.Cause(err)), Remedy: finding.New("input.permission"), Err: err}
	}
	var found []string
	for _, e := range entries {
		_, isRecording := stem(e.Name())
		_, isLog := os.Stat(filepath.Join(path, e.Name(), "motion.csv"))
		if isRecording && !e.IsDir() || isLog == nil {
			found = append(found, filepath.Join(path, e.Name()))
		}
	}
	if len(found) == 0 {
		return nil, &sensors.InputError{File: path, What: finding.New("desk.empty_folder"),
			Remedy: finding.New("desk.give_folder")}
	}
	return found, nil
}

// stem is a file's name without the ending of a recording.
func stem(name string) (string, bool) {
	for _, ending := range recordingEndings {
		if n := len(name) - len(ending); n > 0 && strings.EqualFold(name[n:], ending) {
			return name[:n], true
		}
	}
	return name, false
}

// freeName is the name of a recording's files: its own, with a number where
// another has it.
func freeName(path string, c share.Choice, taken map[string]bool) string {
	abs, err := filepath.Abs(path) // "." is not a name
	if err != nil {
		abs = path
	}
	base, _ := stem(filepath.Base(abs))
	if m := ownName.FindStringSubmatch(base); m != nil && (c.EndsCut > 0 || c.Date != share.Dated) {
		if base = "ride-" + m[1]; c.Date == share.Undated {
			base = "ride"
		}
	}
	name := base
	for n := 2; taken[strings.ToLower(name)]; n++ {
		name = fmt.Sprintf("%s-%d", base, n)
	}
	taken[strings.ToLower(name)] = true
	return name
}
