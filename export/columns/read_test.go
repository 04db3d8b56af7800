package columns

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/parquet-go/parquet-go"

	"stillair/export/exporttest"
	"stillair/export/results"
	"stillair/export/words"
	"stillair/runs"
	"stillair/runs/pass"
	"stillair/runs/roadload"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// seasonable is an invented result with everything that a season reads.
func seasonable() *runs.Result {
	res := *exporttest.Result()
	res.Ride.Bike = "blue"
	res.RoadLoads = slices.Clone(res.RoadLoads)
	l := &res.RoadLoads[0]
	l.CdANoise, l.CrrNoise, l.Budget = 0.004, 0.0003, []roadload.Part{{Code: "budget.noise", SE: 0.004}, {Code: "budget.mass", SE: 0.006}}
	res.Compared = judgedResult().Compared
	over := func(name string, far float64) pass.Figure {
		v := runs.Value{X: 50 + far/1000, SE: 0.02}
		return pass.Figure{Name: name, Distance: far, There: v, Back: v, Mean: v, Half: v}
	}
	res.Passes = []runs.Pass{{Setup: "bare", There: pass.Leg{Start: 3}, Back: pass.Leg{Start: 120}, Figures: []pass.Figure{over("1 km", 1000), over("200 m", 200)}},
		{Setup: "bare", Figures: []pass.Figure{over("200 m", 200)}, Reasons: []finding.Finding{finding.New("pass.eased")}}}
	return &res
}

func tableBytes(t testing.TB, write func(io.Writer, Ride, *runs.Result) error, ride Ride, res *runs.Result) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := write(&b, ride, res); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// TestReadBack reads the tables of two rides in a different order than they were
// written in, and compares the results with JSON.
func TestReadBack(t *testing.T) {
	began := time.Date(2026, 5, 1, 9, 30, 0, 0, time.UTC)
	first, second := seasonable(), seasonable()
	second.Ride.Bike, second.RoadLoads = "green", nil
	g := NewReader()
	for _, r := range []struct {
		name string
		res  *runs.Result
	}{{"b", first}, {"a", second}} {
		tables := Tables()
		slices.Reverse(tables)
		for _, table := range tables {
			data := tableBytes(t, table.Write, Ride{r.name, began}, r.res)
			if err := g.Add(bytes.NewReader(data), int64(len(data)), "folder", table.Name+"/"+r.name+".parquet"); err != nil {
				t.Fatal(err)
			}
		}
	}
	rides := g.Rides()
	if len(rides) != 2 || rides[0].Ride != "b" || rides[1].Ride != "a" {
		t.Fatalf("%+v", rides)
	}
	for i, res := range []*runs.Result{first, second} {
		want := results.From(res).ForSeason()
		want.Started = "2026-05-01T09:30:00Z"
		for _, d := range []*results.Document{want, rides[i].Results} { // a season does not use these
			for k := range d.Runs {
				d.Runs[k].Pair = 0
			}
			for k := range d.RoadLoad {
				d.RoadLoad[k].Runs, d.RoadLoad[k].DoF = nil, nil
				d.RoadLoad[k].CdAAssumed, d.RoadLoad[k].CrrAssumed = nil, nil
				d.RoadLoad[k].A, d.RoadLoad[k].ASE, d.RoadLoad[k].C, d.RoadLoad[k].CSE = nil, nil, nil, nil
			}
		}
		a, _ := json.MarshalIndent(want, "", " ")
		b, _ := json.MarshalIndent(rides[i].Results, "", " ")
		if !bytes.Equal(a, b) {
			t.Errorf("ride %d: JSON has\n%s\nParquet\n%s", i, a, b)
		}
	}
	if len(rides[0].Results.RoadLoad) != 1 || len(rides[0].Results.Comparisons) != 1 || len(rides[0].Results.Runs) == 0 || len(rides[0].Results.Passes) != 1 {
		t.Errorf("hardly anything was read: %+v", rides[0].Results)
	}
}

// TestRidesOfTwoFolders: one name in two folders is two rides.
func TestRidesOfTwoFolders(t *testing.T) {
	g := NewReader()
	data := tableBytes(t, WriteRoadLoads, Ride{Name: "ride"}, seasonable())
	for _, folder := range []string{"may", "june", "may"} {
		if err := g.Add(bytes.NewReader(data), int64(len(data)), folder, folder); err != nil {
			t.Fatal(err)
		}
	}
	if n := len(g.Rides()); n != 2 {
		t.Errorf("%d rides", n)
	}
}

func TestFaultyTables(t *testing.T) {
	good := tableBytes(t, WriteRoadLoads, Ride{Name: "ride"}, seasonable())
	made := func(write func(w io.Writer) error) []byte {
		var b bytes.Buffer
		if err := write(&b); err != nil {
			t.Fatal(err)
		}
		return b.Bytes()
	}
	notANumber := seasonable()
	notANumber.RoadLoads[0].CdA.X = math.NaN()
	type other struct {
		Name string  `parquet:"name"`
		X    float64 `parquet:"x"`
	}
	type old struct {
		Ride string  `parquet:"ride"`
		Bike string  `parquet:"bike"`
		CdA  float64 `parquet:"cda_m2"`
		Crr  float64 `parquet:"crr"`
	}
	type wrongKind struct {
		Ride string   `parquet:"ride"`
		A    []string `parquet:"a,list"`
		B    bool     `parquet:"b"`
		Q    float64  `parquet:"quantity"`
		Bike int64    `parquet:"bike"`
		D    string   `parquet:"delta"`
		SE   string   `parquet:"delta_se"`
	}
	flipped := bytes.Clone(good)
	flipped[40] ^= 0x55
	for _, c := range []struct {
		name, says, remedy string
		data               []byte
	}{
		{"empty", "not a complete Parquet file", "export it again", nil},
		{"text", "not a complete Parquet file", "export it again", []byte(strings.Repeat("ride,cda_m2\n", 40))},
		{"cut off", "not a complete Parquet file", "export it again", good[:len(good)/2]},
		{"a byte changed", "row", "export it again", flipped},
		{"of somebody else", "not one of Stillair's tables", "runs, marks, road-load and comparisons", made(func(w io.Writer) error { return parquet.Write(w, []other{{"a", 1}}) })},
		{"of an older version", "road-load has no column setup", "export it again", made(func(w io.Writer) error { return parquet.Write(w, []old{{"a", "b", 0.5, 0.02}}) })},
		{"not a number", "column cda_m2, row 1", "export it again", tableBytes(t, WriteRoadLoads, Ride{Name: "ride"}, notANumber)},
		{"other kinds of columns", "", "export it again", made(func(w io.Writer) error {
			return parquet.Write(w, []wrongKind{{Ride: "a", A: []string{"x", "y"}, D: "three"}})
		})},
	} {
		t.Run(c.name, func(t *testing.T) {
			g := NewReader()
			err := g.Add(bytes.NewReader(c.data), int64(len(c.data)), "", "season/x.parquet")
			var input *sensors.InputError
			if !errors.As(err, &input) {
				t.Fatalf("%v", err)
			}
			if said := words.ForMachines().Error(err); !strings.Contains(said, "season/x.parquet") || !strings.Contains(said, c.says) || !strings.Contains(said, c.remedy) {
				t.Error(said)
			}
			if len(g.Rides()) > 0 {
				t.Error("rows of a faulty table are kept")
			}
		})
	}
}

// FuzzReader: any bytes are read or refused with an InputError.
func FuzzReader(f *testing.F) {
	for _, table := range Tables() {
		f.Add(tableBytes(f, table.Write, Ride{Name: "ride"}, seasonable()))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		g := NewReader()
		err := g.Add(bytes.NewReader(data), int64(len(data)), "", "x.parquet")
		var input *sensors.InputError
		if err != nil && !errors.As(err, &input) {
			t.Fatal(err)
		}
		g.Rides()
	})
}
