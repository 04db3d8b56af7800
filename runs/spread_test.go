package runs

import (
	"context"
	"fmt"
	"math"
	"sort"
	"sync"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"

	"stillair/runs/measure"
	"stillair/sensors/sim"
)

// errorsOf collects measured minus true values, under a name, from many
// goroutines.
type errorsOf struct {
	mu sync.Mutex
	of map[string][]measure.Value
}

func newErrors() *errorsOf { return &errorsOf{of: map[string][]measure.Value{}} }

func (e *errorsOf) add(name string, v measure.Value, truth float64) {
	e.mu.Lock()
	defer e.mu.Unlock()
	e.of[name] = append(e.of[name], measure.Value{X: v.X - truth, SE: v.SE})
}

// spread summarises errors and their stated standard errors.
type spread struct {
	n        int
	mean, sd float64
	p95      float64 // 95 % are smaller
	said     float64 // rms of the standard errors
	ratio    float64 // rms of error over standard error
	covered  float64 // share within 1.96 standard errors
}

func (e *errorsOf) spread(name string) spread {
	v := e.of[name]
	n := float64(len(v))
	s := spread{n: len(v)}
	var abs []float64
	for _, x := range v {
		abs = append(abs, math.Abs(x.X))
		s.mean += x.X / n
		s.said += x.SE * x.SE / n
		s.ratio += x.X * x.X / (x.SE * x.SE) / n
		if math.Abs(x.X) < 1.96*x.SE {
			s.covered += 1 / n
		}
	}
	for _, x := range v {
		s.sd += (x.X - s.mean) * (x.X - s.mean) / (n - 1)
	}
	sort.Float64s(abs)
	s.p95 = abs[int(math.Ceil(0.95*n))-1]
	s.sd, s.said, s.ratio = math.Sqrt(s.sd), math.Sqrt(s.said), math.Sqrt(s.ratio)
	return s
}

// coveredLess reports whether such a low coverage would occur by chance in at
// most one of a hundred tries.
func (s spread) coveredLess(share float64) bool {
	hits := math.Round(s.covered * float64(s.n))
	return distuv.Binomial{N: float64(s.n), P: share}.CDF(hits) < 0.01
}

func (s spread) String() string {
	return fmt.Sprintf("n %d, mean %+.4f, sd %.4f, 95 %% within %.4f, said %.4f, error/said %.2f, covered %.1f %%",
		s.n, s.mean, s.sd, s.p95, s.said, s.ratio, 100*s.covered)
}

// rideAndResult simulates a scenario and analyses its log.
func rideAndResult(t testing.TB, sc sim.Scenario, seed uint64) (*sim.Ride, *Result) {
	t.Helper()
	ride, err := sim.Run(sc, seed)
	if err != nil {
		t.Errorf("seed %d: %v", seed, err)
		return nil, nil
	}
	result, err := Analyse(context.Background(), ride.Log, Options{})
	if err != nil {
		t.Errorf("seed %d: %v", seed, err)
		return nil, nil
	}
	return ride, result
}
