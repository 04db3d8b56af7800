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

// TestRefused: what cannot be corrected gives an error that names file, place
// and remedy.
func TestRefused(t *testing.T) {
	const header = "t_s,ax_mps2,ay_mps2,az_mps2\n"
	for _, c := range []struct {
		name, file string
		change     func(string) string
		want       string
	}{
		{"no motion", "motion.csv", gone, `ride: plain.file_missing file="motion.csv"`},
		{"no fixes", "gnss.csv", gone, `ride: plain.file_missing file="gnss.csv"`},
		{"empty file", "motion.csv", text("\n"), "ride/motion.csv: plain.empty_file"},
		{"header alone", "motion.csv", text(header), "ride/motion.csv: plain.no_rows"},
		{"fixes: header alone", "gnss.csv", text("t_s,speed_mps\n"), "ride/gnss.csv: plain.no_rows"},
		{"no header", "motion.csv", text("0,1,2,3\n"), "motion.csv:1: plain.no_header"},
		{"column missing", "motion.csv", replaceFirst("az_mps2", "up"), `motion.csv:1: plain.column_missing column="az_mps2"`},
		{"column in another unit", "gnss.csv", replaceFirst("speed_mps", "speed_kmh"), `plain.column_other column="speed_mps" has="speed_kmh"`},
		{"semicolons", "motion.csv", replaceAll(",", ";"), "motion.csv:1: plain.no_commas"},
		{"UTF-16", "motion.csv", text("\xff\xfet\x00_\x00s\x00\n\x00"), "motion.csv:1: plain.not_utf8"},
		{"old line ends", "motion.csv", func(s string) string { return strings.ReplaceAll(s[:9000], "\n", "\r") }, "plain.carriage_returns"},
		{"long line", "motion.csv", func(s string) string { return s + strings.Repeat("9", 1<<17) }, "motion.csv:1502: input.long_line most=65536"},
		{"open quotation mark", "motion.csv", func(s string) string { return s + `1,"2` }, "motion.csv:1502: plain.open_quote"},
		{"many columns", "motion.csv", text(strings.Repeat("a,", 5000) + "t_s\n"), "motion.csv:1: plain.many_columns most=1000"},
		{"words for numbers", "motion.csv", replaceAll("0.1,9.79", "x,y"), `plain.bad_rows bad=1500 of=1500 first=(plain.row_left_out why=(plain.no_number column="ay_mps2" value="x"))`},
		{"all NaN", "motion.csv", replaceAll("0.1,9.79", "NaN,NaN"), "plain.bad_rows bad=1500 of=1500"},
		{"binary", "motion.csv", func(string) string { return header + strings.Repeat("\x00\x01\xfe,\n", 30) }, "plain.bad_rows bad=30 of=30"},
		{"linear acceleration", "motion.csv", each(times(0.01), 1, 2, 3), "force.no_gravity"},
		{"ft/s²", "motion.csv", each(times(3.28), 1, 2, 3), "force.not_gravity"},
		{"slow times", "motion.csv", each(times(20_000), 0), "plain.not_seconds"},
		{"fixes on another clock", "gnss.csv", each(func(v float64) float64 { return v + 1e6 }, 0), "plain.other_clock"},
		{"fixes in milliseconds", "gnss.csv", each(func(v float64) float64 { return v*1000 + 40_000 }, 0), "plain.other_clock"},
		{"pressure on another clock", "pressure.csv", each(func(v float64) float64 { return v - 1e6 }, 0), "plain.other_clock"},
		{"speed in km/h, no positions", "gnss.csv", func(s string) string {
			return strings.Replace(each(times(9), 3)(s), "lat_deg", "unused", 1)
		}, "speed.too_fast"},
		{"negative speeds", "gnss.csv", each(times(-1), 3), "plain.negative_speed"},
		{"pressure in bar", "pressure.csv", each(times(1e-5), 1), "pressure.no_air"},
		{"ride cut short", "ride.json", text(`{"mass_kg": 29`), "ride.json: json.not_whole"},
		{"ride too deep", "ride.json", text(strings.Repeat("[", 1<<19)), "json.deep most=32"},
		{"ride too long", "ride.json", text(strings.Repeat(" ", 1<<20+1)), "plain.long_file most=1.04858e+06"},
	} {
		t.Run(c.name, func(t *testing.T) {
			log, err := ReadFS(sheet(map[string]func(string) string{c.file: c.change}), "ride")
			var input *sensors.InputError
			if !errors.As(err, &input) || input.Remedy.IsZero() || !strings.Contains(err.Error(), c.want) {
				t.Errorf("error %v, want an InputError with %q and a remedy", err, c.want)
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
		{"nowhere", func() (*sensors.Log, error) { return Read(filepath.Join(dir, "nowhere")) }, "input.cannot_open"},
		{"empty folder", func() (*sensors.Log, error) { return Read(t.TempDir()) }, `plain.file_missing file="motion.csv"`},
		{"text file", func() (*sensors.Log, error) { return Read(write("ride.txt", "hello")) }, "archive.no_directory"},
		{"another table", func() (*sensors.Log, error) { return Read(write("speed.csv", "a,b\n")) }, "plain.no_log_file"},
		{"a file of a log that is not whole", func() (*sensors.Log, error) { return Read(write("gnss.csv", "t_s,speed_mps\n1,2\n")) }, `plain.file_missing file="motion.csv"`},
		{"empty zip", func() (*sensors.Log, error) { return Read(write("ride.zip", "")) }, "archive.no_directory"},
		{"device", func() (*sensors.Log, error) { return Read("/dev/zero") }, "plain.no_regular_file"},
		{"two motions", func() (*sensors.Log, error) { return ReadFS(two, "ride") }, "plain.two_files"},
		{"pipe", func() (*sensors.Log, error) { return ReadFS(odd, "ride") }, "ride/gnss.csv: plain.no_regular_file"},
		{"two sentence files", func() (*sensors.Log, error) { return ReadFS(lost, "ride") }, "plain.one_nmea"},
	} {
		_, err := c.read()
		var input *sensors.InputError
		if !errors.As(err, &input) || input.Remedy.IsZero() || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: error %v, want an InputError with %q", c.name, err, c.want)
		}
	}
}

// TestAFileThatBreaksOff: the part before the break is kept.
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
	if n := len(log.Motion); n < 700 || n > 800 || !strings.Contains(notes(log), `input.damaged why="input/output error"`) {
		t.Errorf("%d motion samples, notes %q", n, notes(log))
	}
}

type badSector struct{}

func (badSector) Read([]byte) (int, error) { return 0, errors.New("input/output error") }
