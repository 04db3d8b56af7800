//go:build unix

package fusion

import (
	"math"
	"syscall"
	"testing"

	"stillair/fusion/internal/kalman"
)

// BenchmarkAgainstNumpy measures both on the same ride in one run; the ratio
// is how many times the processor's time numpy's recursions take. Each side
// counts with the best of several goes and by the time that its own process
// spent on a processor, so that others at work on the machine decide little.
func BenchmarkAgainstNumpy(b *testing.B) {
	nodes, x, p := lastPass(b, 8)
	_, numpy := numpySmooth(b, nodes, x, p)
	const goes = 20 // per measurement, with their share of the memory's care
	own := math.Inf(1)
	for b.Loop() {
		start := spent()
		for range goes {
			kalman.Smooth(nodes, x, p)
		}
		own = math.Min(own, (spent()-start)/goes)
	}
	b.ReportMetric(numpy/own, "times-faster")
	b.ReportMetric(float64(len(nodes)), "nodes")
	b.ReportMetric(own*1e9/float64(len(nodes)), "ns/node")
	b.Logf("numpy %.3f s, own %.5f s", numpy, own)
}

// spent are the seconds that this process spent on all processors.
func spent() float64 {
	var u syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &u) != nil {
		return math.NaN()
	}
	return float64(u.Utime.Nano()+u.Stime.Nano()) / 1e9
}
