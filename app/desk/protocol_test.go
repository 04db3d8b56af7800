package main

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"stillair/export/results"
)

// TestProtocol writes the protocol of two rides: it identifies the recordings
// by their content and has each run once, and the page exists in both
// languages.
func TestProtocol(t *testing.T) {
	dir := t.TempDir()
	at := func(name string) string { return filepath.Join(dir, name) }
	for _, seed := range []string{"3", "4"} {
		good(t, "simulate", "--ride", "short", "--seed", seed, "--out", at(seed))
	}
	one, other := filepath.Join(at("3"), "ride.jsonl.gz"), filepath.Join(at("4"), "ride.jsonl.gz")
	good(t, "compare", one, other, "--protocol", at("test.json"), "--report", at("page.html"), "--language", "de")
	text, err := os.ReadFile(at("test.json"))
	if err != nil {
		t.Fatal(err)
	}
	var p results.Protocol
	if err := json.Unmarshal(text, &p); err != nil {
		t.Fatal(err)
	}
	recording, err := os.ReadFile(one)
	if err != nil {
		t.Fatal(err)
	}
	sum := sha256.Sum256(recording)
	if got := p.Rides[0]; got.SHA256 != hex.EncodeToString(sum[:]) || got.Bytes != int64(len(recording)) || got.Recording == p.Rides[1].Recording {
		t.Errorf("recording %q of %d bytes, %s", got.Recording, got.Bytes, got.SHA256)
	}
	if len(p.Rides) != 2 || len(p.Across) != 1 || p.Across[0].Recordings != [2]int{0, 1} {
		t.Fatalf("%d rides, %d comparisons: %+v", len(p.Rides), len(p.Across), p.Across)
	}
	for _, r := range p.Rides {
		if len(r.Runs) != 2 || len(r.Pairs) != 1 || len(r.Setups) != 1 {
			t.Errorf("%d runs, %d pairs, %d setups", len(r.Runs), len(r.Pairs), len(r.Setups))
		}
	}
	page, err := os.ReadFile(at("page.html"))
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{`lang="de"`, "Versuchsprotokoll", "Luftdichte", "Unterschrift", p.Rides[1].SHA256, "Rauschen", "Luftwiderstand"} {
		if !strings.Contains(string(page), want) {
			t.Errorf("the page does not say %q", want)
		}
	}
	if foreign := regexp.MustCompile(`<script[^>]+|src=|<link|@import|url\(|NaN`).FindString(string(page)); foreign != "" {
		t.Errorf("the page holds %s", foreign)
	}
	if code, _, said := desk(t, "compare", one, other, "--report", at("x.html"), "--language", "fr"); code != exitUsage || !strings.Contains(said, "en or de") {
		t.Errorf("exit %d: %s", code, said)
	}
}
