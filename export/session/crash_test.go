package session

import (
	"bufio"
	"cmp"
	"encoding/binary"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"testing"
	"time"

	"stillair/sensors"
)

// The recording process of TestKilled is this test binary, started again with
// the file's path in this variable.
const recordInto = "STILLAIR_TEST_RECORD_INTO"

func TestMain(m *testing.M) {
	if path := os.Getenv(recordInto); path != "" {
		if err := recordForever(path, os.Stdout); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
	}
	os.Exit(m.Run())
}

// dribble is a file that is written in small pieces, so that a kill often hits
// the middle of a part.
type dribble struct{ *os.File }

func (d dribble) Write(p []byte) (int, error) {
	const piece = 8
	for at := 0; at < len(p); at += piece {
		if n, err := d.File.Write(p[at:min(at+piece, len(p))]); err != nil {
			return at + n, err
		}
	}
	return len(p), nil
}

// recordForever begins a session at path and prints the time up to which it is
// synced after each part. It records much faster than real time, so that many
// parts are being written when it is killed.
func recordForever(path string, stdout io.Writer) error {
	f, err := os.OpenFile(path, os.O_CREATE|os.O_RDWR|os.O_APPEND, 0o600)
	if err != nil {
		return err
	}
	info, err := f.Stat()
	if err != nil {
		return err
	}
	id := testID
	binary.LittleEndian.PutUint64(id[:], uint64(info.Size())+1) // different for each recording of the file
	w, err := NewWriter(ToFile(dribble{f}), Header{ID: id}, sensors.UnknownRide())
	if err != nil {
		return err
	}
	t := 0.0
	rng := rand.New(rand.NewPCG(1, 1))
	for {
		for range 103 {
			m := sensors.Motion{T: t}
			m.Force.X, m.Force.Y, m.Force.Z = rng.NormFloat64(), rng.NormFloat64(), rng.NormFloat64()
			w.Motion(m)
			t += 0.01
		}
		if err := w.Flush(); err != nil {
			return err
		}
		fmt.Fprintln(stdout, strconv.FormatFloat(t-0.01, 'f', 3, 64))
	}
}

// TestKilled kills a recording process at random times and lets another append a
// recording to the same file, after the remains of the first. Everything reported
// as synced must be there, every sample without a gap, and the recordings must be
// separate.
func TestKilled(t *testing.T) {
	kills := 1000
	if testing.Short() {
		kills = 25
	}
	rng := rand.New(rand.NewPCG(11, 11))
	path := filepath.Join(t.TempDir(), "ride.jsonl.gz")
	torn := 0
	var synced []float64
	for k := range kills {
		if k%10 == 0 { // to limit the size of the file
			_ = os.Remove(path)
			synced = nil
		}
		synced = append(synced, killedAfter(t, path, time.Duration(rng.IntN(12000))*time.Microsecond))
		torn += checkSynced(t, path, synced)
		if t.Failed() {
			t.Fatalf("kill %d", k)
		}
	}
	t.Logf("%d kills, %d of them in the middle of a part", kills, torn)
	if torn == 0 && !testing.Short() {
		t.Error("no kill fell into the middle of a part: this tests less than it says")
	}
}

// killedAfter starts a recording, kills it some time after its first part, and
// returns the time up to which it reported to be synced.
func killedAfter(t *testing.T, path string, after time.Duration) float64 {
	t.Helper()
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), recordInto+"="+path)
	cmd.Stderr = os.Stderr
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	lines := bufio.NewScanner(out)
	lines.Scan()
	synced := lines.Text()
	go func() {
		time.Sleep(after)
		_ = cmd.Process.Kill()
	}()
	for lines.Scan() {
		synced = lines.Text()
	}
	_ = cmd.Wait() // always an error, since it was killed
	at, err := strconv.ParseFloat(synced, 64)
	if err != nil {
		t.Fatalf("the recording said %q", synced)
	}
	return at
}

// checkSynced checks that the file holds every sample that its recordings
// reported as synced, and returns 1 if it ends in a torn part.
func checkSynced(t *testing.T, path string, synced []float64) int {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	all, err := ReadAll(f, path)
	if err != nil || len(all) != len(synced) {
		t.Errorf("%d recordings of %d read: %v", len(all), len(synced), err)
		return 0
	}
	slices.SortFunc(all, func(a, b *Recording) int { // as they were appended
		return cmp.Compare(binary.LittleEndian.Uint64(a.Header.ID[:]), binary.LittleEndian.Uint64(b.Header.ID[:]))
	})
	for k, rec := range all {
		ms := rec.Log.Motion
		if len(ms) == 0 || ms[len(ms)-1].T < synced[k]-1e-6 {
			t.Errorf("recording %d: synced up to %.2f s, read %d samples", k, synced[k], len(ms))
			return 0
		}
		for i := 1; i < len(ms); i++ {
			if step := ms[i].T - ms[i-1].T; step > 0.0101 {
				t.Errorf("recording %d: a gap of %.2f s at %.2f s", k, step, ms[i].T)
				return 0
			}
		}
	}
	for _, n := range all[len(all)-1].Log.Notes {
		if n.What.Code == "session.torn" || n.What.Code == "session.torn_at_once" {
			return 1
		}
	}
	return 0
}
