//go:build unix

package roadload

import (
	"math"
	"syscall"
	"testing"
)

// BenchmarkFitAgainstNumpy measures both on the same data; the ratio is the
// reference's processor time over ours.
func BenchmarkFitAgainstNumpy(b *testing.B) {
	runs, o := abba(), numpyOptions()
	numpy := numpyFit(b, runs, o, o.Noise)
	own := math.Inf(1)
	for b.Loop() {
		start := spent()
		if _, err := Fit(runs, o); err != nil {
			b.Fatal(err)
		}
		own = math.Min(own, spent()-start)
	}
	b.ReportMetric(numpy.Seconds/own, "times-faster")
	b.Logf("numpy %.3f s, own %.4f s", numpy.Seconds, own)
}

// spent is the processor time of this process, s.
func spent() float64 {
	var u syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &u) != nil {
		return math.NaN()
	}
	return float64(u.Utime.Nano()+u.Stime.Nano()) / 1e9
}
