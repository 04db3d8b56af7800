package session

import (
	"bytes"
	"testing"
)

// BenchmarkReadHour reads one hour at 100 Hz with 1 Hz fixes.
func BenchmarkReadHour(b *testing.B) {
	data := written(b, invented(3600, 100))
	b.SetBytes(int64(len(data)))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Read(bytes.NewReader(data), "hour"); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(len(data))/1e6, "MB/file")
}

// BenchmarkWriteHour writes the same hour.
func BenchmarkWriteHour(b *testing.B) {
	log := invented(3600, 100)
	b.ReportAllocs()
	for b.Loop() {
		if err := Write(&memory{}, log, Header{ID: testID}); err != nil {
			b.Fatal(err)
		}
	}
}
