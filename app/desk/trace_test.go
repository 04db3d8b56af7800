package main

import (
	"archive/zip"
	"bytes"
	"compress/gzip"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/parquet-go/parquet-go"

	"stillair/export/session"
	"stillair/sensors"
	"stillair/sensors/sim"
)

var tracedRides = flag.Int("traced", 0, "how many rides to search for traces of what was cut; 0: a few")

// TestNoTraceOfWhatWasCut exports invented rides in every format with the default
// cut, and searches all that was written, unpacked, for anything that would
// reveal the rider's address: a time on the recording's clock (which begins far
// from zero here), a date or a time of day from before the cut, a place near
// either end, a distance that does not begin at zero, a remark or a name that
// contains the time.
func TestNoTraceOfWhatWasCut(t *testing.T) {
	t.Parallel()
	rides := max(*tracedRides, 6)
	rng := rand.New(rand.NewPCG(17, 300))
	for n := range rides {
		dir := t.TempDir()
		x := tracedRide(t, rng, uint64(n), filepath.Join(dir, "ride-20260503-074811.jsonl.gz"))
		date := []string{"exact", "day", "none"}[n%3]
		args := []string{"export", x.path, "--as", allFormats, "--into", filepath.Join(dir, "out"), "--date", date}
		if n%2 == 1 {
			args = append(args, "--places", "moved")
		}
		if code, _, errs := desk(t, args...); code != exitDone {
			t.Fatalf("ride %d: %s", n, errs)
		}
		files := 0
		err := filepath.WalkDir(filepath.Join(dir, "out"), func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() {
				return err
			}
			files++
			name, err := filepath.Rel(dir, path)
			if err != nil {
				return err
			}
			for what, text := range unpackedAll(t, name, readFile(t, path)) {
				x.search(t, fmt.Sprintf("ride %d, %s", n, what), name+"\n"+text, date)
			}
			return nil
		})
		if err != nil || files < 15 {
			t.Fatalf("%d files: %v", files, err)
		}
		if t.Failed() {
			return
		}
	}
}

// traced is a ride and the data that must not be found.
type traced struct {
	path       string
	log        *sensors.Log
	start, end float64   // of the recording, on its clock
	began      time.Time // the date at start
	left       time.Time // at which 190 m were ridden
}

// tracedRide is an invented ride whose clock begins at a number that is far from
// all others in it.
func tracedRide(t *testing.T, rng *rand.Rand, seed uint64, path string) traced {
	t.Helper()
	sc := sim.DefaultScenario(sim.Bikes()[rng.IntN(len(sim.Bikes()))])
	sc.ClockZero = 7_000_000 + 1e6*rng.Float64()
	fast := 80 + 30*rng.Float64()
	sc.Plan = []sim.Act{sim.Stand{Seconds: 5 + 10*rng.Float64()}, sim.RollOn{From: 50 / 3.6, To: fast / 3.6}, sim.Hold{Speed: fast / 3.6, Seconds: 15 + 20*rng.Float64()},
		sim.Brake{}, sim.Stand{Seconds: 5}}
	ride, err := sim.Run(sc, seed)
	if err != nil {
		t.Fatal(err)
	}
	log := ride.Log
	x := traced{path: path, log: log, start: log.Motion[0].T, end: log.Motion[len(log.Motion)-1].T}
	x.began = time.Date(2026, 5, 3, 7, 48, 11, 0, time.UTC)
	for i := range log.Fixes { // the receiver's date follows the header's
		log.Fixes[i].UTC = x.began.Add(time.Duration((log.Fixes[i].T - x.start) * float64(time.Second))).Round(time.Millisecond)
	}
	x.left = x.began.Add(time.Duration((whenGone(log, 190) - x.start) * float64(time.Second)))
	log.Ride.Setups = []sensors.Setup{{From: x.start, Name: "short screen", Mass: math.NaN()}, {From: x.start + 30, Name: "tall screen", Mass: math.NaN()}}
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	rec := &session.Recording{Header: session.Header{ID: session.ID{1, byte(seed), byte(seed >> 8)}, Start: x.start, Started: x.began, Device: "invented"}, Log: log,
		Remarks: []session.Remark{{T: x.start + 1, Text: "leaving the invented door"}}}
	if err := session.WriteRecording(session.ToFile(f), rec); err != nil {
		t.Fatal(err)
	}
	if err := f.Close(); err != nil {
		t.Fatal(err)
	}
	return x
}

var (
	numberPattern = regexp.MustCompile(`-?\d+(\.\d+)?([eE][-+]?\d+)?`)
	datePattern   = regexp.MustCompile(`20\d\d-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?Z`)
	placePattern  = regexp.MustCompile(`(-?\d{1,3}\.\d{4,})[^0-9-]{1,14}(-?\d{1,3}\.\d{4,})`)
)

// search looks for traces in one text.
func (x traced) search(t *testing.T, what, text, date string) {
	t.Helper()
	for _, word := range []string{"leaving the invented door", "0503-074811", "07:48:1"} {
		if strings.Contains(text, word) {
			t.Errorf("%s tells %q", what, word)
		}
	}
	first := x.left.UnixMilli()
	for _, m := range numberPattern.FindAllString(text, -1) {
		v, err := strconv.ParseFloat(m, 64)
		if err != nil {
			continue
		}
		if v >= x.start-10 && v <= x.end+10 {
			t.Errorf("%s tells the time %s on the recording's clock", what, m)
			return
		}
		if ms := int64(v); ms > x.began.Add(-time.Hour).UnixMilli() && ms < x.began.Add(time.Hour).UnixMilli() && (ms < first || date != "exact") {
			t.Errorf("%s tells the date %s, that is %s", what, m, time.UnixMilli(ms).UTC())
			return
		}
	}
	for _, m := range datePattern.FindAllString(text, -1) {
		at, err := time.Parse(time.RFC3339, m)
		midnight := err == nil && at.Hour() == 0 && at.Minute() == 0
		if err == nil && (date == "none" || date == "day" && !midnight || at.Before(x.left.Add(-time.Second))) && at.Year() == 2026 && !midnight {
			t.Errorf("%s tells %s; 190 m were ridden at %s", what, m, x.left)
			return
		}
	}
	ends := []sensors.Fix{x.log.Fixes[0], x.log.Fixes[len(x.log.Fixes)-1]}
	for _, m := range placePattern.FindAllStringSubmatch(text, -1) {
		a, errA := strconv.ParseFloat(m[1], 64)
		b, errB := strconv.ParseFloat(m[2], 64)
		for _, e := range ends {
			if errA == nil && errB == nil && (metres(a, b, e) < 199 || metres(b, a, e) < 199) {
				t.Errorf("%s tells the place %s, %s", what, m[1], m[2])
				return
			}
		}
	}
	if strings.Contains(what, "track.csv") {
		x.firstDistance(t, what, text)
	}
}

// firstDistance checks that the distances of a table begin at zero.
func (x traced) firstDistance(t *testing.T, what, text string) {
	t.Helper()
	lines := strings.Split(text, "\r\n")
	header := strings.Split(lines[0][strings.LastIndex(lines[0], "\n")+1:], ",")
	for i, name := range header {
		if name != "distance_m" {
			continue
		}
		if d, err := strconv.ParseFloat(strings.Split(lines[1], ",")[i], 64); err != nil || math.Abs(d) > 0.01 {
			t.Errorf("%s begins at %v m: %v", what, d, err)
		}
		return
	}
	t.Errorf("%s has no distances: %v", what, header)
}

// unpackedAll is all text of a file after unpacking.
func unpackedAll(t *testing.T, name string, data []byte) map[string]string {
	t.Helper()
	out := map[string]string{}
	switch {
	case strings.HasSuffix(name, ".gz"):
		gz, err := gzip.NewReader(bytes.NewReader(data))
		if err != nil {
			t.Fatal(err)
		}
		text, err := io.ReadAll(gz)
		if err != nil {
			t.Fatal(err)
		}
		out[name] = string(text)
	case strings.HasSuffix(name, ".zip"):
		z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range z.File {
			r, err := f.Open()
			if err != nil {
				t.Fatal(err)
			}
			text, err := io.ReadAll(r)
			if err != nil {
				t.Fatal(err)
			}
			out[name+"/"+f.Name] = f.Modified.UTC().Format(time.RFC3339) + "\n" + string(text)
		}
	case strings.HasSuffix(name, ".parquet"):
		f, err := parquet.OpenFile(bytes.NewReader(data), int64(len(data)))
		if err != nil {
			t.Fatal(err)
		}
		var text strings.Builder
		for _, group := range f.RowGroups() {
			rows := group.Rows()
			buffer := make([]parquet.Row, 512)
			for {
				n, err := rows.ReadRows(buffer)
				for _, row := range buffer[:n] {
					fmt.Fprintf(&text, "%v\n", row)
				}
				if err != nil {
					break
				}
			}
			if err := rows.Close(); err != nil {
				t.Fatal(err)
			}
		}
		out[name] = text.String()
	default:
		out[name] = string(data)
	}
	return out
}
