package columns

import (
	"bytes"
	"io"
	"slices"
	"testing"

	"github.com/parquet-go/parquet-go"

	"stillair/export/exporttest"
	"stillair/runs"
)

func readBack[R any](t *testing.T, write func(io.Writer, Ride, *runs.Result) error) []R {
	t.Helper()
	var b bytes.Buffer
	if err := write(&b, Ride{Name: "loop"}, exporttest.Result()); err != nil {
		t.Fatal(err)
	}
	rows, err := parquet.Read[R](bytes.NewReader(b.Bytes()), int64(b.Len()))
	if err != nil {
		t.Fatal(err)
	}
	return rows
}

func TestSamples(t *testing.T) {
	rows := readBack[Sample](t, WriteSamples)
	want := exporttest.Result().Track
	if len(rows) != len(want.T) {
		t.Fatalf("%d rows, want %d", len(rows), len(want.T))
	}
	for i, r := range rows {
		if r.Ride != "loop" || r.T != want.T[i] || r.Speed != want.V[i] || r.Dist != want.S[i] || r.Yaw != nil {
			t.Fatalf("row %d: %+v", i, r)
		}
	}
}

func TestRuns(t *testing.T) {
	rows := readBack[Run](t, WriteRuns)
	if len(rows) != 3 {
		t.Fatalf("%d rows", len(rows))
	}
	if rows[1].Kind != "coast-down" || *rows[1].Pair != 1 || !rows[1].Accepted || rows[1].From != 29 {
		t.Errorf("accepted run: %+v", rows[1])
	}
	if rows[2].Accepted || rows[2].Bearing != nil || len(rows[2].Reasons) != 1 || !slices.Equal(rows[2].ReasonCodes, []string{"coast.braked"}) || len(rows[1].ReasonCodes) > 0 {
		t.Errorf("rejected run: %+v", rows[2])
	}
}

func TestMarks(t *testing.T) {
	rows := readBack[Mark](t, WriteMarks)
	if len(rows) != 1 || rows[0].Mark != "0-100 km/h" || *rows[0].Time != 4.31 || rows[0].Speed != nil {
		t.Errorf("marks: %+v", rows)
	}
}

func TestRoadLoads(t *testing.T) {
	rows := readBack[RoadLoad](t, WriteRoadLoads)
	if len(rows) != 1 || rows[0].CdA != 0.551 || rows[0].CrrHigh != 0.019 || rows[0].Pairs != 5 {
		t.Errorf("road loads: %+v", rows)
	}
}
