//go:build unix

package fusion

import (
	"math"
	"syscall"
	"testing"

	"stillair/fusion/internal/kalman"
)

// BenchmarkAgainstNumpy measures both on the same ride; the ratio is numpy's
// processor time over ours. The best of several repetitions counts, in
// processor time of the process, so that other load on the machine has little
// effect.
func BenchmarkAgainstNumpy(b *testing.B) {
	nodes, x, p := lastPass(b, 8)
	_, numpy := numpySmooth(b, nodes, x, p)
	const goes = 20 // per measurement, including their share of garbage collection
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

// spent is the processor time of this process, s.
func spent() float64 {
	var u syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &u) != nil {
		return math.NaN()
	}
	return float64(u.Utime.Nano()+u.Stime.Nano()) / 1e9
}
