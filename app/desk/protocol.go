package main

import (
	"crypto/sha256"
	"encoding/hex"
	"io"
	"os"
	"path/filepath"
	"runtime/debug"

	"stillair/export/results"
	"stillair/runs"
)

// tested is a study with the identity of its recording.
func (s *study) tested(path string) (results.Tested, error) {
	o := s.reportOptions("")
	t := results.Tested{Result: s.result, Recording: filepath.Base(path), Started: o.Started, Invented: o.Invented}
	info, err := os.Stat(path)
	if err != nil || info.IsDir() {
		return t, err
	}
	f, err := os.Open(path)
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

// protocol is the test protocol of studies of the recordings at paths.
func protocol(studies []*study, paths []string, across []runs.Comparison) (*results.Protocol, error) {
	var all []results.Tested
	for i, s := range studies {
		t, err := s.tested(paths[i])
		if err != nil {
			return nil, err
		}
		all = append(all, t)
	}
	return results.NewProtocol(program+" "+versionOf(debug.ReadBuildInfo()), all, across), nil
}

func saveProtocol(path string, p *results.Protocol) error {
	return save(path, func(out io.Writer) error { return results.WriteProtocol(out, p) })
}
