package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestPlanLikeARide plans for a day and a road like those of the invented ride,
// without a given wind, and writes the card in German.
func TestPlanLikeARide(t *testing.T) {
	if testing.Short() {
		t.Skip("measures a whole ride")
	}
	t.Parallel()
	dir := t.TempDir()
	good(t, "demo", "--out", dir)
	sheet := filepath.Join(dir, "card.html")
	out := good(t, "plan", "--change", "5%", "--like", filepath.Join(dir, "ride.jsonl.gz"), "--card", sheet, "--language", "de")
	if !strings.Contains(out, "pairs of opposite coast-downs") || strings.Contains(out, "differing by 1.5 m/s") {
		t.Errorf("it does not plan for that day:\n%s", out)
	}
	page, err := os.ReadFile(sheet)
	if err != nil || !strings.Contains(string(page), "Versuchskarte") || !strings.Contains(string(page), "blockiert das Hinterrad") {
		t.Errorf("the card: %v, %.300s", err, page)
	}
}
