package formats_test

import (
	"archive/zip"
	"bytes"
	"encoding/json"
	"encoding/xml"
	"errors"
	"io"
	"regexp"
	"slices"
	"strconv"
	"testing"
	"time"

	"stillair/app/formats"
	"stillair/export/exporttest"
	"stillair/export/shown"
	"stillair/sensors"
	"stillair/sensors/plain"
)

func ride() formats.Ride {
	return formats.Ride{Title: "loop", Started: time.Date(2026, 5, 1, 9, 0, 0, 0, time.UTC), Log: exporttest.Log(), Result: exporttest.Result(), Program: "test"}
}

// names are the files of an archive.
func names(t *testing.T, data []byte) (out []string) {
	t.Helper()
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range z.File {
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		if text, err := io.ReadAll(r); err != nil || len(text) == 0 {
			t.Errorf("%s: %d bytes, %v", f.Name, len(text), err)
		}
		out = append(out, f.Name)
	}
	return out
}

// still is a phone at rest.
func still() (out []sensors.Motion) {
	for i := range 6000 {
		m := sensors.Motion{T: float64(i) / 100}
		m.Force.Z = 9.81
		out = append(out, m)
	}
	return out
}

func TestEveryFormat(t *testing.T) {
	want := map[formats.Kind]func(t *testing.T, data []byte){
		formats.Report: func(t *testing.T, data []byte) {
			if !bytes.Contains(data, []byte("<svg")) || !bytes.Contains(data, []byte("loop")) {
				t.Error("no plots, or no title")
			}
		},
		formats.Tables: func(t *testing.T, data []byte) {
			if got := names(t, data); !slices.Equal(got, []string{"track.csv", "runs.csv", "marks.csv", "passes.csv", "road-load.csv", "comparisons.csv", "power.csv"}) {
				t.Errorf("holds %v", got)
			}
		},
		formats.Columns: func(t *testing.T, data []byte) {
			if got := names(t, data); len(got) != 7 || got[0] != "samples.parquet" {
				t.Errorf("holds %v", got)
			}
		},
		formats.Track: func(t *testing.T, data []byte) {
			var x struct {
				XMLName xml.Name `xml:"http://www.topografix.com/GPX/1/1 gpx"`
			}
			if err := xml.Unmarshal(data, &x); err != nil {
				t.Error(err)
			}
		},
		formats.Lines: func(t *testing.T, data []byte) {
			if !json.Valid(data) {
				t.Error("no JSON")
			}
		},
		formats.Samples: func(t *testing.T, data []byte) {
			log, err := plain.ReadZip(bytes.NewReader(data), int64(len(data)), "x.zip")
			if err != nil || len(log.Fixes) == 0 || len(log.Fixes) >= len(exporttest.Log().Fixes) {
				t.Errorf("%v, %v", log, err)
			}
		},
	}
	for _, f := range formats.Formats() {
		t.Run(string(f.Kind), func(t *testing.T) {
			log := exporttest.Log()
			r := ride()
			r.Log.Motion = still()
			data, _, err := f.Make(r)
			if err != nil {
				t.Fatal(err)
			}
			want[f.Kind](t, data)
			if len(r.Log.Fixes) != len(log.Fixes) || len(r.Result.Track.T) != 601 {
				t.Error("the ride itself was changed")
			}
		})
		delete(want, f.Kind)
	}
	if len(want) > 0 {
		t.Errorf("not offered: %v", want)
	}
}

// TestNoPlaceNearTheEnds searches the files for maps for the latitudes of the
// first and the last fix, and of all within 200 m of them.
func TestNoPlaceNearTheEnds(t *testing.T) {
	lat := regexp.MustCompile(`lat="([0-9.]+)"|\[\s*9\.5[0-9]*,\s*([0-9.]+)\s*\]`)
	first := exporttest.Log().Fixes[0].LatDeg
	for _, f := range formats.Formats() {
		if !f.Places {
			continue
		}
		data, _, err := f.Make(ride())
		if err != nil {
			t.Fatal(err)
		}
		found := lat.FindAllStringSubmatch(string(data), -1)
		if len(found) == 0 {
			t.Errorf("%s: no places seen", f.Kind)
		}
		for _, m := range found {
			x, err := strconv.ParseFloat(m[1]+m[2], 64)
			if err != nil {
				t.Fatal(err)
			}
			if metres := (x - first) * 111195; metres < 190 { // a degree on the sphere that package share uses
				t.Errorf("%s: a place %.0f m from the start", f.Kind, metres)
			}
		}
	}
}

func TestWhatIsMissingIsReported(t *testing.T) {
	nowhere, short, bare := ride(), ride(), ride()
	for i := range nowhere.Log.Fixes {
		f := sensors.NewFix(nowhere.Log.Fixes[i].T, nowhere.Log.Fixes[i].Speed)
		nowhere.Log.Fixes[i] = f
	}
	short.Log.Fixes = short.Log.Fixes[:5]
	bare.Result = nil
	for _, f := range formats.Formats() {
		if _, _, err := f.Make(nowhere); f.Places != errors.Is(err, formats.ErrNoPlace) {
			t.Errorf("%s without places: %v", f.Kind, err)
		}
		if _, _, err := f.Make(short); !errors.Is(err, formats.ErrNothingLeft) {
			t.Errorf("%s of a ride of 100 m: %v", f.Kind, err)
		}
		if _, _, err := f.Make(bare); f.Computed != errors.Is(err, formats.ErrNoResult) {
			t.Errorf("%s without results: %v", f.Kind, err)
		}
	}
}

// TestReportInTheLanguageOfTheApp checks that the page is in the rider's language
// and units.
func TestReportInTheLanguageOfTheApp(t *testing.T) {
	r := ride()
	r.Language, r.Units = shown.German, shown.Imperial
	for _, f := range formats.Formats() {
		if f.Kind != formats.Report {
			continue
		}
		page, _, err := f.Make(r)
		if err != nil {
			t.Fatal(err)
		}
		for _, want := range []string{`<html lang="de">`, "Luftwiderstandsfläche", "ft²"} {
			if !bytes.Contains(page, []byte(want)) {
				t.Errorf("the page does not say %s", want)
			}
		}
	}
}
