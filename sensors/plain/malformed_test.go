package plain

import (
	"archive/zip"
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"stillair/sensors"
)

// pack makes a zip of files; a file's text is repeated a given number of times.
type member struct {
	name  string
	text  string
	times int
}

func pack(t *testing.T, files ...member) []byte {
	t.Helper()
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	for _, f := range files {
		w, err := z.Create(f.name)
		if err != nil {
			t.Fatal(err)
		}
		for range max(1, f.times) {
			if _, err := io.WriteString(w, f.text); err != nil {
				t.Fatal(err)
			}
		}
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// endless is a file that never ends, like a device or a pipe.
type endless struct {
	head    *strings.Reader
	pattern string
	at      int
	left    int64
}

func (e *endless) Read(p []byte) (int, error) {
	if n, err := e.head.Read(p); err == nil {
		return n, nil
	}
	if e.left <= 0 {
		return 0, io.EOF
	}
	for i := range p {
		p[i] = e.pattern[e.at%len(e.pattern)]
		e.at++
	}
	e.left -= int64(len(p))
	return len(p), nil
}

// growing is endless rows with increasing times.
type growing struct {
	buf bytes.Buffer
	row int
}

func (g *growing) Read(p []byte) (int, error) {
	if g.row == 0 {
		g.buf.WriteString("t_s,ax_mps2,ay_mps2,az_mps2\n")
	}
	for g.buf.Len() < len(p) {
		g.row++
		fmt.Fprintf(&g.buf, "%d.%02d,0,0,9.8\n", g.row/100, g.row%100)
	}
	return g.buf.Read(p)
}

// TestMalformed: each gives a clear error, quickly and in little memory, and
// writes nothing.
func TestMalformed(t *testing.T) {
	const motionHead = "t_s,ax_mps2,ay_mps2,az_mps2\n"
	good := sheet(nil)
	goodFiles := []member{{name: "motion.csv", text: string(good["motion.csv"].Data)}, {name: "gnss.csv", text: string(good["gnss.csv"].Data)}}
	stream := func(in func() io.Reader, size int64) func() (*sensors.Log, error) {
		return func() (*sensors.Log, error) {
			b := &bundle{name: "ride", files: map[string]entry{motionFile: {name: "ride/motion.csv", size: size,
				open: func() (io.ReadCloser, error) { return io.NopCloser(in()), nil }}}}
			return b.read()
		}
	}
	zipped := func(b []byte) func() (*sensors.Log, error) {
		return func() (*sensors.Log, error) { return ReadZip(bytes.NewReader(b), int64(len(b)), "ride.zip") }
	}
	const gigabyte = 1 << 30
	for _, c := range []struct {
		name string
		read func() (*sensors.Log, error)
		want string
	}{
		{"zip bomb of one row", zipped(pack(t, member{name: "motion.csv", text: motionHead}, member{name: "x/gnss.csv", text: strings.Repeat("0,0,0,9.8\n", 1000), times: 6000})),
			"archive.bomb packed=116498 unpacked=6e+07"},
		{"a zip's path upwards", zipped(pack(t, append(goodFiles, member{name: "../../escape.csv", text: "x"})...)), `archive.outside name="../../escape.csv"`},
		{"a zip's path from the root", zipped(pack(t, append(goodFiles, member{name: "/etc/ride.json", text: "{}"})...)), "archive.outside"},
		{"a zip's path for Windows", zipped(pack(t, append(goodFiles, member{name: `..\motion.csv`, text: "x"})...)), "archive.outside"},
		{"two rides in a zip", zipped(pack(t, append(goodFiles, member{name: "b/motion.csv", text: "x"})...)), "plain.two_files"},
		{"a hundred thousand files", zipped(manyFiles(t, 30_000)), "archive.many_files"},
		{"locked", zipped(locked(t)), "archive.locked"},
		{"gigabyte line", stream(func() io.Reader {
			return &endless{head: strings.NewReader(motionHead), pattern: "9", left: gigabyte}
		}, gigabyte), "input.long_line most=65536"},
		{"gigabyte of commas", stream(func() io.Reader {
			return &endless{head: strings.NewReader(motionHead), pattern: ",", left: gigabyte}
		}, gigabyte), "input.long_line"},
		{"gigabyte of quotation marks", stream(func() io.Reader {
			return &endless{head: strings.NewReader(motionHead), pattern: "\"\n", left: gigabyte}
		}, gigabyte), "plain.bad_rows"},
		{"gigabyte of rubbish rows", stream(func() io.Reader {
			return &endless{head: strings.NewReader(motionHead), pattern: "a,b,c,d\n", left: gigabyte}
		}, gigabyte), "plain.bad_rows"},
		{"rows without end, size stated", stream(func() io.Reader { return &growing{} }, 100*gigabyte), "input.too_many most=3e+06"},
		{"rows that grow shorter", stream(func() io.Reader {
			return io.MultiReader(strings.NewReader(motionHead+strings.Repeat("0,0,0,"+strings.Repeat("9", 1000)+"\n", 1)), &growing{row: 1})
		}, gigabyte), "input.too_many most=3e+06"},
	} {
		t.Run(c.name, func(t *testing.T) {
			log, err := c.read()
			var input *sensors.InputError
			if !errors.As(err, &input) || input.Remedy.IsZero() || !strings.Contains(err.Error(), c.want) || log != nil {
				t.Errorf("error %v, want an InputError with %q", err, c.want)
			}
		})
	}
}

func manyFiles(t *testing.T, n int) []byte {
	files := make([]member, n)
	for i := range files {
		files[i].name = fmt.Sprint(i)
	}
	return pack(t, files...)
}

// locked sets the flag of a password in both headers of a zip's first file.
func locked(t *testing.T) []byte {
	b := pack(t, member{name: "motion.csv", text: "x"})
	b[6] |= 1
	b[bytes.Index(b, []byte("PK\x01\x02"))+8] |= 1
	return b
}

// TestZipWhoseSizesLie: the size in the table of contents is enforced when
// unpacking.
func TestZipWhoseSizesLie(t *testing.T) {
	good := sheet(nil)
	b := pack(t, member{name: "gnss.csv", text: string(good["gnss.csv"].Data)}, member{name: "motion.csv", text: string(good["motion.csv"].Data)})
	at := bytes.LastIndex(b, []byte("PK\x01\x02"))
	for _, size := range []uint32{10, 3000, 1 << 31} {
		binary.LittleEndian.PutUint32(b[at+24:], size)
		log, err := ReadZip(bytes.NewReader(b), int64(len(b)), "ride.zip")
		var input *sensors.InputError
		switch {
		case err != nil && !errors.As(err, &input):
			t.Errorf("size %d: %v", size, err)
		case err == nil && !strings.Contains(notes(log), "input.damaged"):
			t.Errorf("size %d: %d samples and no word of damage", size, len(log.Motion))
		}
	}
}

// TestZipCutAnywhere never gives a log silently, and never panics.
func TestZipCutAnywhere(t *testing.T) {
	good := sheet(nil)
	b := pack(t, member{name: "motion.csv", text: string(good["motion.csv"].Data)}, member{name: "gnss.csv", text: string(good["gnss.csv"].Data)})
	for n := 0; n < len(b); n += 37 {
		if log, err := ReadZip(bytes.NewReader(b[:n]), int64(n), "ride.zip"); err == nil {
			t.Fatalf("cut to %d of %d bytes it is read: %v", n, len(b), log.Notes)
		}
		spoilt := bytes.Clone(b)
		spoilt[n] ^= 0x55
		if log, err := ReadZip(bytes.NewReader(spoilt), int64(len(b)), "ride.zip"); err == nil && len(log.Motion) == 0 {
			t.Fatalf("with byte %d changed it is read and empty", n)
		}
	}
}

func TestNothingIsWritten(t *testing.T) {
	dir := t.TempDir()
	t.Chdir(dir)
	b := pack(t, member{name: "../escape.csv", text: "x"}, member{name: "motion.csv", text: "x"})
	if err := os.WriteFile("ride.zip", b, 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := Read("ride.zip"); err == nil {
		t.Error("the zip was accepted")
	}
	for _, place := range []string{dir, filepath.Dir(dir)} {
		list, err := os.ReadDir(place)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range list {
			if strings.Contains(f.Name(), "escape") {
				t.Errorf("%s was written", filepath.Join(place, f.Name()))
			}
		}
	}
}

// TestZipInAFolder: packing a folder puts its name before each file.
func TestZipInAFolder(t *testing.T) {
	good := sheet(nil)
	var files []member
	for name, f := range good {
		files = append(files, member{name: "my ride/" + name, text: string(f.Data)})
	}
	files = append(files, member{name: "__MACOSX/my ride/._motion.csv", text: "x"}, member{name: "my ride/photo.jpg", text: "x"})
	b := pack(t, files...)
	log, err := ReadZip(bytes.NewReader(b), int64(len(b)), "ride.zip")
	if err != nil || len(log.Motion) != 1500 || len(log.Fixes) != 30 || len(log.Pressure) != 30 {
		t.Fatalf("%v", err)
	}
}
