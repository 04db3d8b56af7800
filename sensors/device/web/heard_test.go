package web

import (
	"encoding/binary"
	"math"
	"testing"

	"stillair/sensors"
	"stillair/sensors/device"
)

func packed(rows ...[]float64) (p []byte) {
	for _, r := range rows {
		for _, x := range r {
			p = binary.LittleEndian.AppendUint64(p, math.Float64bits(x))
		}
	}
	return p
}

// TestHeardRows checks the results for rows of listening.js.
func TestHeardRows(t *testing.T) {
	h := hearing{rate: 48000, factor: 40, latency: 0.01}
	var b device.Batch
	h.read(packed([]float64{3, -1, 1, 0}, []float64{6, 5000, 4800, 9600, 2, 0.5, -2}, []float64{3, -1, 9, 0}), &b)
	if len(b.Reports) != 1 || b.Reports[0].Sensor != sensors.SensorSound || b.Reports[0].Condition != sensors.Available || b.Lost != 1 {
		t.Errorf("reported %v, lost %d", b.Reports, b.Lost)
	}
	if len(b.Sound) != 1 {
		t.Fatalf("%d stretches", len(b.Sound))
	}
	s := b.Sound[0]
	if s.Rate != 1200 || s.Clipped != 2 || s.Level[0] != 16384 || s.Level[1] != -32768 || math.Abs(s.T-(5-0.1-0.01)) > 1e-9 {
		t.Errorf("heard %+v", s)
	}
	h.read(packed([]float64{math.NaN(), 1}), &b)
	h.read(packed([]float64{9, 1, 2}), &b)
	if b.Lost != 3 {
		t.Errorf("lost %d, want 3", b.Lost)
	}
}

// FuzzHeard reads arbitrary bytes.
func FuzzHeard(f *testing.F) {
	f.Add(packed([]float64{3, -1, 1, 0}, []float64{6, 5000, 4800, 9600, 2, 0.5, math.NaN()}))
	f.Fuzz(func(t *testing.T, p []byte) {
		h := hearing{rate: 48000, factor: 40}
		var b device.Batch
		h.read(p, &b)
	})
}
