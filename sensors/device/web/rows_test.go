package web

import (
	"encoding/binary"
	"math"
	"testing"
	"time"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
	"stillair/sensors/device"
)

var nan = math.NaN()

// pack writes rows as sensing.js does; missing values are NaN.
func pack(rows ...[]float64) []byte {
	var p []byte
	for _, r := range rows {
		for i := range rowWidth {
			x := nan
			if i < len(r) {
				x = r[i]
			}
			p = binary.LittleEndian.AppendUint64(p, math.Float64bits(x))
		}
	}
	return p
}

func read(sign float64, rows ...[]float64) device.Batch {
	var b device.Batch
	r := reader{sign: sign}
	r.read(pack(rows...), &b)
	return b
}

func near(a, b float64) bool {
	return math.IsNaN(a) && math.IsNaN(b) || math.Abs(a-b) < 1e-12
}

func nearVec(a, b r3.Vec) bool { return near(a.X, b.X) && near(a.Y, b.Y) && near(a.Z, b.Z) }

// TestMotion: a phone flat on a table, screen up. The standard says that
// accelerationIncludingGravity.z is then +9.8 and that rotationRate is in
// degrees a second (W3C, Device Orientation and Motion). The rates were seen
// in Chromium, into whose gyroscope 0.1, 0.2 and 0.5 rad/s about x, y and z
// were played: alpha 5.7, beta 11.5, gamma 28.6.
func TestMotion(t *testing.T) {
	for _, c := range []struct {
		name  string
		sign  float64
		row   []float64
		force r3.Vec
		turn  r3.Vec
	}{
		{"as the standard says", 1, []float64{1, 2500, 0.1, 0.2, 9.8, 5.7, 11.5, 28.6},
			r3.Vec{X: 0.1, Y: 0.2, Z: 9.8}, r3.Vec{X: 5.7 * math.Pi / 180, Y: 11.5 * math.Pi / 180, Z: 28.6 * math.Pi / 180}},
		{"forces the other way round", -1, []float64{1, 2500, -0.1, -0.2, -9.8, 180, 0, 0},
			r3.Vec{X: 0.1, Y: 0.2, Z: 9.8}, r3.Vec{X: math.Pi}},
		{"no gyroscope", 1, []float64{1, 2500, 0, 0, 9.8}, r3.Vec{Z: 9.8}, r3.Vec{X: nan, Y: nan, Z: nan}},
		{"half a gyroscope", 1, []float64{1, 2500, 0, 0, 9.8, 1, nan, 3}, r3.Vec{Z: 9.8}, r3.Vec{X: nan, Y: nan, Z: nan}},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := read(c.sign, c.row)
			if len(b.Motion) != 1 {
				t.Fatalf("batch = %+v", b)
			}
			m := b.Motion[0]
			if m.T != 2.5 || !nearVec(m.Force, c.force) || !nearVec(m.Turn, c.turn) {
				t.Errorf("motion = %+v, want force %v and turn %v", m, c.force, c.turn)
			}
		})
	}
}

func TestFix(t *testing.T) {
	utc := time.Date(2026, 5, 3, 10, 0, 0, 0, time.UTC)
	b := read(1,
		[]float64{2, 4000, float64(utc.UnixMilli()), 12.5, 48.1, 11.5, 4.8954, 520, 360},
		[]float64{2, 5080, float64(utc.UnixMilli() + 1000), nan, 48.1, 11.5, 10})
	if len(b.Fixes) != 2 {
		t.Fatalf("batch = %+v", b)
	}
	f := b.Fixes[0]
	if f.T != 4 || f.Speed != 12.5 || f.LatDeg != 48.1 || f.LonDeg != 11.5 || f.Alt != 520 || f.BearingDeg != 0 || !f.UTC.Equal(utc) {
		t.Errorf("fix = %+v", f)
	}
	if math.Abs(f.HSD-2) > 1e-4 {
		t.Errorf("standard deviation %g m from a 95 %% radius of 4.8954 m, want 2", f.HSD)
	}
	bare := b.Fixes[1]
	if math.Abs(bare.T-5) > 1e-6 {
		t.Errorf("second fix at %g s: its wait of 80 ms was left in", bare.T)
	}
	if !math.IsNaN(bare.Speed) || !math.IsNaN(bare.Alt) || !math.IsNaN(bare.BearingDeg) || !math.IsNaN(bare.SpeedSD) {
		t.Errorf("what is null is not NaN: %+v", bare)
	}
}

func TestToldAndUnknownRows(t *testing.T) {
	b := read(1, []float64{3, 0, 2, 2, 1}, []float64{3, 0, 0, 4, 4}, []float64{3, 0, 9, 0, 0}, []float64{3, 0, nan, 0, 0}, []float64{7, 0})
	if len(b.Reports) != 2 || b.Lost != 3 {
		t.Fatalf("batch = %+v", b)
	}
	if b.Reports[0].Sensor != sensors.SensorFix || b.Reports[0].Condition != sensors.Denied || b.Reports[0].Detail.IsZero() {
		t.Errorf("reported %+v", b.Reports[0])
	}
	if b.Reports[1].Sensor != sensors.SensorMotion || b.Reports[1].Condition != sensors.Silent {
		t.Errorf("reported %+v", b.Reports[1])
	}
}

func TestHoleRows(t *testing.T) {
	b := read(1, []float64{4, 52000, 13000, 1}, []float64{4, 52000, 53000, 1}, []float64{4, 52000, 13000, 9})
	if len(b.Holes) != 1 || b.Lost != 2 {
		t.Fatalf("batch = %+v", b)
	}
	if h := b.Holes[0]; h.From != 13 || h.To != 52 || h.Why.Code != "browser.was_frozen" {
		t.Errorf("hole %+v", h)
	}
}

// TestHiddenPage: after the page was hidden a gap is pending, however often the
// program polls, until the row of the gap.
func TestHiddenPage(t *testing.T) {
	r := reader{sign: 1}
	for _, c := range []struct {
		name string
		rows [][]float64
		away bool
	}{
		{"seen", [][]float64{{1, 12900, 0, 0, 9.8}}, false},
		{"hidden", [][]float64{{3, 13000, 0, 4, 4}, {3, 13000, 2, 4, 4}}, true},
		{"nothing new", nil, true},
		{"the receiver speaks", [][]float64{{3, 14000, 2, 4, 2}}, true},
		{"seen again", [][]float64{{4, 52000, 13000, 1}, {1, 52010, 0, 0, 9.8}}, false},
	} {
		var b device.Batch
		if r.read(pack(c.rows...), &b); b.Away != c.away {
			t.Errorf("%s: away %v, want %v", c.name, b.Away, c.away)
		}
	}
}

// FuzzRows: any bytes from the page are read without a panic, and give no more
// samples than they can hold.
func FuzzRows(f *testing.F) {
	f.Add(pack([]float64{1, 2500, 0, 0, 9.8, 1, 2, 3}, []float64{2, 1, 2, 3}, []float64{3, 0, 1, 2, 3}))
	f.Add([]byte{1, 2, 3})
	f.Fuzz(func(t *testing.T, p []byte) {
		var b device.Batch
		r := reader{sign: 1}
		r.read(p, &b)
		if n := len(b.Motion) + len(b.Fixes) + len(b.Reports) + len(b.Holes) + b.Lost; n != len(p)/(8*rowWidth) {
			t.Fatalf("%d rows gave %d events", len(p)/(8*rowWidth), n)
		}
	})
}
