package columns

import (
	"bytes"
	"io"
	"math"
	"testing"

	"github.com/parquet-go/parquet-go"

	"stillair/runs"
	"stillair/runs/compare"
	"stillair/runs/measure"
	"stillair/runs/power"
)

// judgedResult is an invented ride of two setups with a difference in drag, one
// in a time that is not clear yet, and a curve of power in an unknown gear.
func judgedResult() *runs.Result {
	res := &runs.Result{}
	res.Ride.Bike = "blue"
	drag := compare.Verdict{Finding: compare.Differs, Delta: measure.Value{X: 0.05, SE: 0.01}, Percent: 9, CIPercent: [2]float64{5, 13}, P: 0.001}
	time := compare.Verdict{Finding: compare.CannotTell, Delta: measure.Value{X: 0.1, SE: 0.1}, Percent: 2, CIPercent: [2]float64{-3, 7}, P: 0.4, MorePairs: 3}
	res.Compared = []runs.Comparison{{A: "bare", B: "boxes", CdA: &drag, Times: []runs.TimeComparison{{Mark: "60-100 km/h", Verdict: time}}}}
	curve := &power.Curve{Pulls: []int{3, 4}, Speed: []float64{20, 21}, Power: []measure.Value{{X: 30e3, SE: 300}, measure.Unknown()}}
	res.Powers = []runs.PowerCurve{{Setup: "bare", RPMPerMPS: math.NaN(), Correction: 1.012, Curve: curve}, {Setup: "boxes"}}
	return res
}

func rowsOf[R any](t *testing.T, write func(io.Writer, Ride, *runs.Result) error) []R {
	t.Helper()
	var b bytes.Buffer
	if err := write(&b, Ride{Name: "loop"}, judgedResult()); err != nil {
		t.Fatal(err)
	}
	rows, err := parquet.Read[R](bytes.NewReader(b.Bytes()), int64(b.Len()))
	if err != nil {
		t.Fatal(err)
	}
	return rows
}

func TestComparisons(t *testing.T) {
	rows := rowsOf[Comparison](t, WriteComparisons)
	if len(rows) != 2 {
		t.Fatalf("%d rows", len(rows))
	}
	if r := rows[0]; r.Ride != "loop" || r.Bike != "blue" || r.A != "bare" || r.B != "boxes" || r.Quantity != "drag area" || r.Unit != "m²" ||
		r.Finding != "differs" || r.Code != "compare.differs" || *r.Delta != 0.05 || *r.DeltaSE != 0.01 || *r.Change != 9 || *r.Low != 5 || *r.High != 13 || *r.P != 0.001 || r.MorePairs != nil {
		t.Errorf("drag: %+v", r)
	}
	if r := rows[1]; r.Quantity != "60-100 km/h" || r.Unit != "s" || *r.MorePairs != 3 {
		t.Errorf("time: %+v", r)
	}
}

func TestPowers(t *testing.T) {
	rows := rowsOf[Power](t, WritePowers)
	if len(rows) != 2 {
		t.Fatalf("%d rows", len(rows))
	}
	if r := rows[0]; r.Setup != "bare" || r.Gear != "" || len(r.Runs) != 2 || r.Runs[1] != 4 || r.Speed != 20 || r.RPM != nil || *r.Power != 30e3 || *r.PowerSE != 300 || *r.Correction != 1.012 {
		t.Errorf("first point: %+v", r)
	}
	if rows[1].Power != nil {
		t.Errorf("what was not measured: %+v", rows[1])
	}
}

// TestEveryTableHasItsRide checks that the files of many rides can be read as
// one: each table starts with the ride.
func TestEveryTableHasItsRide(t *testing.T) {
	for _, table := range Tables() {
		var b bytes.Buffer
		if table.Name == "samples" {
			continue // it needs a track, and has its own test
		}
		if err := table.Write(&b, Ride{Name: "loop"}, judgedResult()); err != nil {
			t.Fatal(err)
		}
		f, err := parquet.OpenFile(bytes.NewReader(b.Bytes()), int64(b.Len()))
		if err != nil {
			t.Fatal(err)
		}
		if first := f.Schema().Fields()[0].Name(); first != "ride" {
			t.Errorf("%s begins with %s", table.Name, first)
		}
	}
}
