package results

import (
	"bytes"
	"encoding/json"
	"errors"
	"flag"
	"math"
	"os"
	"reflect"
	"slices"
	"sort"
	"strings"
	"testing"

	"stillair/export/internal/invented"
	"stillair/runs"
	"stillair/sensors"
	"stillair/sensors/spoil"
)

var update = flag.Bool("update", false, "write the goldens again")

// golden compares got with a file under testdata.
func golden(t *testing.T, path string, got []byte) {
	t.Helper()
	if *update {
		if err := os.WriteFile(path, got, 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Errorf("%s differs; look at what -update makes of it", path)
	}
}

func TestGolden(t *testing.T) {
	var out bytes.Buffer
	if err := Write(&out, From(invented.Result())); err != nil {
		t.Fatal(err)
	}
	golden(t, "testdata/invented.json", out.Bytes())
}

// TestContract reads the contract's example, which was not made by this
// package, and checks that no field is lost when it is written again.
func TestContract(t *testing.T) {
	data, err := os.ReadFile("testdata/contract-v1.json")
	if err != nil {
		t.Fatal(err)
	}
	d, err := Read(bytes.NewReader(data), "contract-v1.json")
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := Write(&out, d); err != nil {
		t.Fatal(err)
	}
	var want, got any
	if err := errors.Join(json.Unmarshal(data, &want), json.Unmarshal(out.Bytes(), &got)); err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("the contract's example came back as\n%s", out.Bytes())
	}
}

// TestSchema checks the names and types of version 2 against a golden file, to
// which lines may only be added, and that all of version 1 is still there.
func TestSchema(t *testing.T) {
	var lines []string
	describe(reflect.TypeFor[Document](), "", &lines)
	sort.Strings(lines)
	golden(t, "testdata/schema-v2.txt", []byte(strings.Join(lines, "\n")+"\n"))
	first, err := os.ReadFile("testdata/schema-v1.txt")
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range strings.Split(strings.TrimSpace(string(first)), "\n") {
		if !slices.Contains(lines, line) {
			t.Errorf("version 1 had %s, which its readers now miss", line)
		}
	}
}

func describe(t reflect.Type, path string, lines *[]string) {
	switch t.Kind() {
	case reflect.Pointer:
		describe(t.Elem(), path, lines)
	case reflect.Slice, reflect.Array:
		describe(t.Elem(), path+"[]", lines)
	case reflect.Struct:
		for i := range t.NumField() {
			tag := t.Field(i).Tag.Get("json")
			name, options, _ := strings.Cut(tag, ",")
			suffix := ""
			if options == "omitempty" {
				suffix = "?"
			}
			describe(t.Field(i).Type, path+"."+name+suffix, lines)
		}
	default:
		*lines = append(*lines, strings.TrimPrefix(path, ".")+" "+t.Kind().String())
	}
}

// TestOnlyFinite checks that numbers that are not finite are left out, whatever
// the estimators return.
func TestOnlyFinite(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	bad := runs.Value{X: nan, SE: inf}
	half := runs.Value{X: 3, SE: nan}
	r := &runs.Result{Runs: []runs.Run{{ID: 1, Start: nan, End: inf, BearingDeg: nan, FromMPS: nan, ToMPS: -inf,
		Marks: []runs.Mark{{Name: "60 ft", Time: half, Rollout: bad, Speed: bad, Distance: bad}}}},
		RoadLoads: []runs.RoadLoad{{Mass: nan, CdA: bad, Crr: half, Cov: nan, DoF: inf, CdACI: [2]float64{0, inf}, Density: nan}}}
	var out bytes.Buffer
	if err := Write(&out, From(r)); err != nil {
		t.Fatal(err)
	}
	d, err := Read(&out, "x")
	if err != nil {
		t.Fatal(err)
	}
	m, l := d.Runs[0].Marks[0], d.RoadLoad[0]
	if *m.Time != 3 || m.TimeSE != nil || m.Rollout != nil || d.Runs[0].Start != nil || l.CdACI != nil || l.DoF != nil || *l.Crr != 3 {
		t.Errorf("read back %+v %+v", m, l)
	}
}

func TestRead(t *testing.T) {
	tests := []struct {
		name, text, says string
		line             int
	}{
		{"empty", "", "results.no_document", 1},
		{"cut off", "{\n\"version\": 1,\n\"runs\": [", "results.no_document", 3},
		{"a later version", `{"version": 3}`, "version=3", 0},
		{"no version", `{}`, "version=0", 0},
		{"text for a number", "{\"version\": 1,\n\"gnss_lag_s\": \"a\"}", "gnss_lag_s", 2},
	}
	for _, tt := range tests {
		_, err := Read(strings.NewReader(tt.text), "r.json")
		var input *sensors.InputError
		if !errors.As(err, &input) || !strings.Contains(err.Error(), tt.says) || input.Line != tt.line || input.Remedy.IsZero() {
			t.Errorf("%s: %v", tt.name, err)
		}
	}
	d, err := Read(strings.NewReader(`{"version": 1, "later": {"a": 1}, "runs": [{"id": 7, "new": true}]}`), "r.json")
	if err != nil || d.Runs[0].ID != 7 {
		t.Errorf("fields added later: %v", err)
	}
}

// FuzzRead checks that any bytes give an InputError or a document that is the
// same after writing and reading.
func FuzzRead(f *testing.F) {
	for _, name := range []string{"contract-v1.json", "invented.json"} {
		data, err := os.ReadFile("testdata/" + name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	f.Fuzz(mustWriteAlike)
}

// FuzzFields reads documents with changed lines and fields.
func FuzzFields(f *testing.F) {
	whole, err := os.ReadFile("testdata/contract-v1.json")
	if err != nil {
		f.Fatal(err)
	}
	f.Add([]byte{1, 2, 70, 9, 80, 90, 3, 3, 3})
	f.Add([]byte{0, 0, 20, 90, 0, 66, 200, 128, 69, 40, 100, 81})
	f.Fuzz(func(t *testing.T, ops []byte) { mustWriteAlike(t, []byte(spoil.Text(string(whole), ":", ops))) })
}

// mustWriteAlike checks that a document gives an InputError, or is the same after
// writing and reading.
func mustWriteAlike(t *testing.T, data []byte) {
	d, err := Read(bytes.NewReader(data), "any")
	if err != nil {
		var input *sensors.InputError
		if !errors.As(err, &input) {
			t.Fatal(err)
		}
		return
	}
	var out bytes.Buffer
	if err := Write(&out, d); err != nil {
		t.Fatal(err)
	}
	first := out.String()
	again, err := Read(&out, "again")
	if err != nil {
		t.Fatal(err)
	}
	var second bytes.Buffer
	if err := Write(&second, again); err != nil || second.String() != first {
		t.Fatal("written twice it differs: ", err)
	}
}
