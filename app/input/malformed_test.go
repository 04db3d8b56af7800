package input

import (
	"archive/zip"
	"bytes"
	"compress/gzip"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"stillair/sensors"
)

// spoiler makes malformed files out of good ones, the same for the same seed.
type spoiler struct {
	rng  *rand.Rand
	good map[string][]byte // by name
}

// forms are the good files that are spoilt, and inner those whose content is
// spoilt and compressed again, so that it passes the checksum.
var (
	forms = []string{"session", "log.dat", "unpacked.txt", "browser", "sentences"}
	inner = []string{"as one gzip member", "as a zip"}
)

// file makes malformed file i and says what it is.
func (s *spoiler) file(i int) (what string, data []byte) {
	n := len(forms) + len(inner)
	if k := i % n; k < len(forms) {
		how := s.some()
		return forms[k] + ", " + how, s.spoil(how, bytes.Clone(s.good[forms[k]]))
	}
	how := s.some()
	if i%n == len(forms) {
		return "a session packed again, " + how, gzipped(s.spoil(how, bytes.Clone(s.good["unpacked.txt"])))
	}
	return "a zip packed again, " + how, s.zip(how)
}

// ways of spoiling.
var ways = []string{"bits turned", "cut", "a block twice", "a block gone", "a flood of one byte", "a flood of lines", "numbers beyond all bounds",
	"another format inside", "nested without end", "quotation marks", "two spoilt at once"}

func (s *spoiler) some() string { return ways[s.rng.IntN(len(ways))] }

func (s *spoiler) spoil(how string, b []byte) []byte {
	at := s.rng.IntN(len(b))
	to := min(len(b), at+1+s.rng.IntN(5000))
	switch how {
	case "bits turned":
		for range 1 + s.rng.IntN(50) {
			b[s.rng.IntN(len(b))] ^= 1 << s.rng.IntN(8)
		}
	case "cut":
		return b[:at]
	case "a block twice":
		return slices.Insert(b, at, bytes.Clone(b[at:to])...)
	case "a block gone":
		return slices.Delete(b, at, to)
	case "a flood of one byte":
		return slices.Insert(b, at, bytes.Repeat([]byte{"9 ,\x00{[\"-\n"[s.rng.IntN(9)]}, 1<<(18+s.rng.IntN(8)))...)
	case "a flood of lines":
		line := append([]byte{'\n'}, lineAt(b, at)...)
		return slices.Insert(b, at, bytes.Repeat(line, min(50_000, 32<<20/len(line)))...)
	case "numbers beyond all bounds":
		odd := []string{"1e308", "-1e308", "1e999", "NaN", "Infinity", "-0", "9007199254740993", "0x10", "1e-320", strings.Repeat("9", 400)}
		for range 20 {
			if k := bytes.IndexAny(b[s.rng.IntN(len(b)):], ",:"); k > 0 {
				b = slices.Insert(b, k+1, []byte(odd[s.rng.IntN(len(odd))])...)
			}
		}
	case "another format inside":
		other := s.good[forms[s.rng.IntN(len(forms))]]
		return slices.Insert(b, at, other[:s.rng.IntN(len(other))]...)
	case "nested without end":
		return slices.Insert(b, at, bytes.Repeat([]byte(`{"ride":[`), 1<<(10+s.rng.IntN(9)))...)
	case "quotation marks":
		for range 5 {
			b[s.rng.IntN(len(b))] = '"'
		}
	case "two spoilt at once":
		once := s.spoil(ways[s.rng.IntN(len(ways)-1)], b)
		if len(once) == 0 {
			return once
		}
		return s.spoil(ways[s.rng.IntN(len(ways)-1)], once)
	}
	return b
}

// lineAt is the line around a place, at most 4 KiB of it.
func lineAt(b []byte, at int) []byte {
	from := bytes.LastIndexByte(b[:at], '\n') + 1
	to := bytes.IndexByte(b[at:], '\n')
	if to < 0 {
		to = len(b) - at
	}
	return bytes.Clone(b[from:min(at+to, from+4<<10)])
}

func gzipped(b []byte) []byte {
	var out bytes.Buffer
	gz, err := gzip.NewWriterLevel(&out, gzip.BestSpeed)
	if err == nil {
		_, err = gz.Write(b)
	}
	if err = errors.Join(err, gz.Close()); err != nil {
		panic(err) // into memory
	}
	return out.Bytes()
}

// zip packs the good log again with one member spoilt, and sometimes with a
// name that points outside the archive.
func (s *spoiler) zip(how string) []byte {
	in, err := zip.NewReader(bytes.NewReader(s.good["log.dat"]), int64(len(s.good["log.dat"])))
	if err != nil {
		panic(err) // it is a good one
	}
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	bad := s.rng.IntN(len(in.File))
	for i, f := range in.File {
		var content bytes.Buffer
		r, err := f.Open()
		if err == nil {
			_, err = content.ReadFrom(r)
		}
		b, name := content.Bytes(), f.Name
		if i == bad {
			b = s.spoil(how, b)
			name = []string{name, name, "../" + name, "/tmp/" + name, `..\` + name, "a/../../" + name, name + "\x00", strings.ToUpper(name)}[s.rng.IntN(8)]
		}
		to, err2 := w.Create(name)
		if err2 == nil {
			_, err2 = to.Write(b)
		}
		if err := errors.Join(err, err2); err != nil {
			panic(err) // into memory
		}
	}
	if err := w.Close(); err != nil {
		panic(err)
	}
	return out.Bytes()
}

// TestMalformedFiles opens adversarial files, alone in a folder: each gives an
// error that names the file and the remedy, or a log that is in order; and
// nothing is written to the folder.
func TestMalformedFiles(t *testing.T) {
	count := 200
	if testing.Short() {
		count = 40
	}
	dir, _ := recordings(t)
	s := &spoiler{rng: rand.New(rand.NewPCG(200, 6)), good: map[string][]byte{}}
	for _, name := range forms {
		b, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil {
			t.Fatal(err)
		}
		s.good[name] = b
	}
	outer := t.TempDir()
	place := filepath.Join(outer, "a", "b")
	if err := os.MkdirAll(place, 0o755); err != nil {
		t.Fatal(err)
	}
	t.Chdir(place)
	refused, noted := 0, 0
	for i := range count {
		what, data := s.file(i)
		if err := os.WriteFile("malformed", data, 0o600); err != nil {
			t.Fatal(err)
		}
		ride, err := Open("malformed")
		if err != nil {
			refused++
			mustSayWhatToDo(t, what, err)
			continue
		}
		noted += min(1, len(ride.Log.Notes))
		mustBeInOrder(t, what, ride.Log)
	}
	t.Logf("%d malformed files: %d refused, %d read with notes, %d read", count, refused, noted, count-refused-noted)
	if refused < count/10 || noted < count/10 {
		t.Error("the files are not malformed enough for this test to say anything")
	}
	mustBeAlone(t, outer, filepath.Join("a", "b", "malformed"))
}

func mustSayWhatToDo(t *testing.T, what string, err error) {
	t.Helper()
	var input *sensors.InputError
	if !errors.As(err, &input) || input.Remedy.IsZero() || input.What.IsZero() || !strings.HasPrefix(input.File, "malformed") {
		t.Errorf("%s: the error %v does not name the file and what to do", what, err)
	}
	if len(err.Error()) > 2000 {
		t.Errorf("%s: the error is %d bytes long", what, len(err.Error()))
	}
}

func mustBeInOrder(t *testing.T, what string, log *sensors.Log) {
	t.Helper()
	rising(t, what+", motion", log.Motion, func(m sensors.Motion) float64 { return m.T })
	rising(t, what+", fixes", log.Fixes, func(f sensors.Fix) float64 { return f.T })
	rising(t, what+", pressure", log.Pressure, func(p sensors.Pressure) float64 { return p.T })
	if n := len(fmt.Sprint(log.Notes)); n > 1<<20 {
		t.Errorf("%s: %d bytes of notes", what, n)
	}
}

func rising[S any](t *testing.T, what string, samples []S, at func(S) float64) {
	t.Helper()
	last := math.Inf(-1)
	for i, s := range samples {
		if now := at(s); !(now > last) {
			t.Errorf("%s: sample %d is at %v s, the one before at %v s", what, i, now, last)
			return
		}
		last = at(s)
	}
}

// mustBeAlone fails if a folder holds any file but one.
func mustBeAlone(t *testing.T, folder, only string) {
	t.Helper()
	err := filepath.WalkDir(folder, func(path string, d os.DirEntry, err error) error {
		if err == nil && !d.IsDir() && path != filepath.Join(folder, only) {
			t.Errorf("%s was written", path)
		}
		return err
	})
	if err != nil {
		t.Error(err)
	}
}
