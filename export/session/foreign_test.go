package session

import (
	"bytes"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// TestForeignClients reads a session with zcat and jq and compares counts, sums
// and end values with ours.
func TestForeignClients(t *testing.T) {
	for _, tool := range []string{"zcat", "jq"} {
		if _, err := exec.LookPath(tool); err != nil {
			t.Skipf("%s is not installed (sh .ci/install does it)", tool)
		}
	}
	log := invented(70, 100)
	path := filepath.Join(t.TempDir(), "ride.jsonl.gz")
	if err := os.WriteFile(path, written(t, log), 0o600); err != nil {
		t.Fatal(err)
	}
	speeds, forces := 0.0, 0.0
	for _, f := range log.Fixes {
		speeds += f.Speed
	}
	for _, m := range log.Motion {
		forces += m.Force.Z
	}
	last := log.Motion[len(log.Motion)-1]
	checks := []struct {
		name, filter string
		want         float64
	}{
		{"motion samples", `[.[]|select(.type=="motion").t_s|length]|add`, float64(len(log.Motion))},
		{"sum of az", `[.[]|select(.type=="motion").az_mps2[]]|add`, forces},
		{"last motion time", `[.[]|select(.type=="motion").t_s[]]|last`, last.T},
		{"last gz", `[.[]|select(.type=="motion").gz_radps[]]|last`, last.Turn.Z},
		{"fixes", `[.[]|select(.type=="fix")]|length`, float64(len(log.Fixes))},
		{"sum of speeds", `[.[]|select(.type=="fix").speed_mps]|add`, speeds},
		{"pressures", `[.[]|select(.type=="pressure").pressure_pa[]]|length`, float64(len(log.Pressure))},
		{"mass", `[.[]|select(.type=="ride").ride.mass_kg]|last`, 290},
		{"repeated headers", `[.[]|select(.type=="header")]|length`, 4},
		{"closed", `[.[]|select(.type=="end")]|length`, 1},
	}
	filters := make([]string, len(checks))
	for i, c := range checks {
		filters[i] = "(" + c.filter + ")"
	}
	text, err := exec.Command("zcat", path).Output()
	if err != nil {
		t.Fatalf("zcat: %v", err)
	}
	jq := exec.Command("jq", "-s", strings.Join(filters, ","))
	jq.Stdin = bytes.NewReader(text)
	out, err := jq.Output()
	if err != nil {
		t.Fatalf("jq: %v", err)
	}
	lines := strings.Fields(string(out))
	if len(lines) != len(checks) {
		t.Fatalf("jq answered %d of %d", len(lines), len(checks))
	}
	for i, c := range checks {
		got, err := strconv.ParseFloat(lines[i], 64)
		if err != nil || math.Abs(got-c.want) > 1e-9*math.Max(1, math.Abs(c.want)) {
			t.Errorf("%s: jq says %s, want %v", c.name, lines[i], c.want)
		}
	}
}

// TestRecompressed reads a session that was unpacked and packed again as one
// gzip member.
func TestRecompressed(t *testing.T) {
	if _, err := exec.LookPath("gzip"); err != nil {
		t.Skip("gzip is not installed (sh .ci/install does it)")
	}
	log := invented(70, 100)
	unpack := exec.Command("gzip", "-dc")
	unpack.Stdin = bytes.NewReader(written(t, log))
	text, err := unpack.Output()
	if err != nil {
		t.Fatal(err)
	}
	if rec, err := ReadText(bytes.NewReader(text), "ride.jsonl"); err != nil || !sameSamples(log, rec.Log) || len(rec.Log.Notes) != 0 {
		t.Errorf("unpacked: %v", err)
	}
	pack := exec.Command("gzip", "-9c")
	pack.Stdin = bytes.NewReader(text)
	data, err := pack.Output()
	if err != nil {
		t.Fatal(err)
	}
	if rec := read(t, data); !sameSamples(log, rec.Log) || !rec.Closed || len(rec.Log.Notes) != 0 {
		t.Errorf("%d of %d samples, notes %v", samples(rec.Log), samples(log), rec.Log.Notes)
	}
}
