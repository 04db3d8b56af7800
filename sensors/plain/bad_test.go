package plain

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"stillair/sensors"
)

func gone(string) string { return "" }

func text(s string) func(string) string { return func(string) string { return s } }

// TestRefused: what cannot be mended ends in an error that names file, place
// and mend.
func TestRefused(t *testing.T) {
	const header = "t_s,ax_mps2,ay_mps2,az_mps2\n"
	for _, c := range []struct {
		name, file string
		change     func(string) string
		want       string
	}{
		{"no motion", "motion.csv", gone, "ride: motion.csv is missing"},
		{"no fixes", "gnss.csv", gone, "ride: gnss.csv is missing"},
		{"empty file", "motion.csv", text("\n"), "ride/motion.csv: the file is empty"},
		{"header alone", "motion.csv", text(header), "ride/motion.csv: there is no row below the header"},
		{"fixes: header alone", "gnss.csv", text("t_s,speed_mps\n"), "ride/gnss.csv: there is no row below the header"},
		{"no header", "motion.csv", text("0,1,2,3\n"), "motion.csv:1: the first row holds numbers"},
		{"column missing", "motion.csv", replaceFirst("az_mps2", "up"), "motion.csv:1: column az_mps2 is missing"},
		{"column in another unit", "gnss.csv", replaceFirst("speed_mps", "speed_kmh"), `column speed_mps is missing; there is "speed_kmh"`},
		{"semicolons", "motion.csv", replaceAll(",", ";"), "motion.csv:1: the columns are not separated by commas"},
		{"UTF-16", "motion.csv", text("\xff\xfet\x00_\x00s\x00\n\x00"), "motion.csv:1: the file is not UTF-8 text"},
		{"old line ends", "motion.csv", func(s string) string { return strings.ReplaceAll(s[:9000], "\n", "\r") }, "the lines end in carriage returns"},
		{"long line", "motion.csv", func(s string) string { return s + strings.Repeat("9", 1<<17) }, "motion.csv:1502: line is longer than 64 KiB"},
		{"open quotation mark", "motion.csv", func(s string) string { return s + `1,"2` }, "motion.csv:1502: a quotation mark is opened"},
		{"many columns", "motion.csv", text(strings.Repeat("a,", 5000) + "t_s\n"), "motion.csv:1: more than 1000 columns"},
		{"words for numbers", "motion.csv", replaceAll("0.1,9.79", "x,y"), `1500 of 1500 rows cannot be read; first: ay_mps2 is "x"`},
		{"all NaN", "motion.csv", replaceAll("0.1,9.79", "NaN,NaN"), "1500 of 1500 rows"},
		{"binary", "motion.csv", func(string) string { return header + strings.Repeat("\x00\x01\xfe,\n", 30) }, "30 of 30 rows"},
		{"linear acceleration", "motion.csv", each(times(0.01), 1, 2, 3), "gravity is not in it"},
		{"ft/s²", "motion.csv", each(times(3.28), 1, 2, 3), "not the size of gravity"},
		{"slow times", "motion.csv", each(times(20_000), 0), "t_s does not look like seconds"},
		{"fixes on another clock", "gnss.csv", each(func(v float64) float64 { return v + 1e6 }, 0), "not on one clock"},
		{"fixes in milliseconds", "gnss.csv", each(func(v float64) float64 { return v*1000 + 40_000 }, 0), "not on one clock"},
		{"pressure on another clock", "pressure.csv", each(func(v float64) float64 { return v - 1e6 }, 0), "not on one clock"},
		{"speed in km/h, no positions", "gnss.csv", func(s string) string {
			return strings.Replace(each(times(9), 3)(s), "lat_deg", "unused", 1)
		}, "faster than any bike"},
		{"negative speeds", "gnss.csv", each(times(-1), 3), "below zero, which receivers write for unknown"},
		{"pressure in bar", "pressure.csv", each(times(1e-5), 1), "no pressure of the air"},
		{"ride cut short", "ride.json", text(`{"mass_kg": 29`), "ride.json: the file is no whole JSON text"},
		{"ride too deep", "ride.json", text(strings.Repeat("[", 1<<19)), "nested more than 32 deep"},
		{"ride too long", "ride.json", text(strings.Repeat(" ", 1<<20+1)), "longer than 1 MiB"},
	} {
		t.Run(c.name, func(t *testing.T) {
			log, err := ReadFS(sheet(map[string]func(string) string{c.file: c.change}), "ride")
			var input *sensors.InputError
			if !errors.As(err, &input) || input.Remedy.IsZero() || !strings.Contains(err.Error(), c.want) {
				t.Errorf("error %v, want an InputError with %q and a mend", err, c.want)
			}
			if log != nil {
				t.Error("a log beside the error")
			}
		})
	}
}

func TestPlacesThatAreNoLogs(t *testing.T) {
	dir := t.TempDir()
	write := func(name, content string) string {
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, []byte(content), 0o600); err != nil {
			t.Fatal(err)
		}
		return path
	}
	two := sheet(nil)
	two["Motion.CSV"] = two["motion.csv"]
	odd := sheet(nil)
	odd["gnss.csv"] = &fstest.MapFile{Mode: fs.ModeNamedPipe}
	lost := sheet(map[string]func(string) string{"gnss.csv": gone})
	lost["a.nmea"], lost["b.nmea"] = &fstest.MapFile{}, &fstest.MapFile{}
	for _, c := range []struct {
		name string
		read func() (*sensors.Log, error)
		want string
	}{
		{"nowhere", func() (*sensors.Log, error) { return Read(filepath.Join(dir, "nowhere")) }, "it cannot be opened"},
		{"empty folder", func() (*sensors.Log, error) { return Read(t.TempDir()) }, "motion.csv is missing"},
		{"text file", func() (*sensors.Log, error) { return Read(write("ride.txt", "hello")) }, "no table of contents"},
		{"another table", func() (*sensors.Log, error) { return Read(write("speed.csv", "a,b\n")) }, "none of the files of a log"},
		{"a file of a log that is not whole", func() (*sensors.Log, error) { return Read(write("gnss.csv", "t_s,speed_mps\n1,2\n")) }, "motion.csv is missing"},
		{"empty zip", func() (*sensors.Log, error) { return Read(write("ride.zip", "")) }, "no table of contents"},
		{"device", func() (*sensors.Log, error) { return Read("/dev/zero") }, "no ordinary file"},
		{"two motions", func() (*sensors.Log, error) { return ReadFS(two, "ride") }, "are both there"},
		{"pipe", func() (*sensors.Log, error) { return ReadFS(odd, "ride") }, "ride/gnss.csv: this is no ordinary file"},
		{"two sentence files", func() (*sensors.Log, error) { return ReadFS(lost, "ride") }, "several .nmea files"},
	} {
		_, err := c.read()
		var input *sensors.InputError
		if !errors.As(err, &input) || input.Remedy.IsZero() || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: error %v, want an InputError with %q", c.name, err, c.want)
		}
	}
}

// TestAFileThatBreaksOff keeps what came before.
func TestAFileThatBreaksOff(t *testing.T) {
	b := &bundle{name: "ride", files: map[string]entry{}}
	for name, f := range sheet(nil) {
		in := io.Reader(strings.NewReader(string(f.Data)))
		if name == motionFile {
			in = io.MultiReader(strings.NewReader(string(f.Data[:len(f.Data)/2])), badSector{})
		}
		b.files[name] = entry{name: "ride/" + name, size: int64(len(f.Data)), open: func() (io.ReadCloser, error) { return io.NopCloser(in), nil }}
	}
	log, err := b.read()
	if err != nil {
		t.Fatal(err)
	}
	if n := len(log.Motion); n < 700 || n > 800 || !strings.Contains(notes(log), "damaged from here on (input/output error)") {
		t.Errorf("%d motion samples, notes %q", n, notes(log))
	}
}

type badSector struct{}

func (badSector) Read([]byte) (int, error) { return 0, errors.New("input/output error") }
