package main

import (
	"crypto/sha256"
	"encoding/hex"
	"io"
	"os"
	"runtime/debug"
	"slices"

	"stillair/export/report"
	"stillair/export/results"
	"stillair/export/shown"
	"stillair/runs"
)

// tested is a study with the identity of its recording.
func (s *study) tested(name string) (results.Tested, error) {
	o := s.reportOptions(shown.Style{})
	t := results.Tested{Result: s.result, Recording: name, Started: o.Started, Invented: o.Invented}
	info, err := os.Stat(s.path)
	if err != nil || info.IsDir() {
		return t, err
	}
	f, err := os.Open(s.path)
	if err != nil {
		return t, err
	}
	defer f.Close()
	h := sha256.New()
	if t.Bytes, err = io.Copy(h, f); err != nil {
		return t, err
	}
	t.SHA256 = hex.EncodeToString(h.Sum(nil))
	return t, nil
}

// testOf is the coast-down test of studies, for a protocol.
func testOf(studies []*study, across []runs.Comparison) (*report.Test, error) {
	out := &report.Test{Across: across}
	var all []results.Tested
	for _, s := range studies {
		t, err := s.tested(s.name(studies))
		if err != nil {
			return nil, err
		}
		all, out.Rides = append(all, t), append(out.Rides, s.result)
	}
	out.Protocol = results.NewProtocol(program+" "+versionOf(debug.ReadBuildInfo()), all, across)
	return out, nil
}

func saveProtocol(path string, t *report.Test) error {
	return save(path, func(out io.Writer) error { return results.WriteProtocol(out, t.Protocol) })
}

// parseLanguage reads the language of a page.
func parseLanguage(tag string) (shown.Language, error) {
	if l := shown.Language(tag); slices.Contains(shown.Languages(), l) {
		return l, nil
	}
	return "", usage("--language %q is not known; it must be en or de", tag)
}
