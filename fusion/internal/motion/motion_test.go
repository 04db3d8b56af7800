package motion

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
)

func even(n int, step float64) []sensors.Motion {
	nan := math.NaN()
	m := make([]sensors.Motion, n)
	for i := range m {
		m[i] = sensors.Motion{T: float64(i) * step, Force: r3.Vec{Z: 9.8}, Turn: r3.Vec{X: nan, Y: nan, Z: nan}}
	}
	return m
}

func TestNew(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	cases := []struct {
		name    string
		spoil   func([]sensors.Motion) []sensors.Motion
		samples int
		gaps    int
	}{
		{name: "as it is", spoil: func(m []sensors.Motion) []sensors.Motion { return m }, samples: 1000},
		{name: "one lost", spoil: func(m []sensors.Motion) []sensors.Motion { return append(m[:500:500], m[501:]...) }, samples: 999},
		{name: "two seconds lost", spoil: func(m []sensors.Motion) []sensors.Motion { return append(m[:500:500], m[700:]...) }, samples: 800 + 19, gaps: 1},
		{name: "a clock that leaps by a month", spoil: func(m []sensors.Motion) []sensors.Motion {
			for i := 500; i < len(m); i++ {
				m[i].T += 30 * 86400
			}
			return m
		}, samples: 1000 + maxFill - 1, gaps: 1},
		{name: "not finite", spoil: func(m []sensors.Motion) []sensors.Motion {
			m[3].Force.X, m[4].T, m[5].Force.Z = nan, nan, inf
			return m
		}, samples: 997},
		{name: "a clock that steps back", spoil: func(m []sensors.Motion) []sensors.Motion {
			m[10].T = m[3].T
			return m
		}, samples: 999},
		{name: "nothing", spoil: func([]sensors.Motion) []sensors.Motion { return nil }},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			s := New(c.spoil(even(1000, 0.01)))
			if len(s.T) != c.samples || len(s.Gaps) != c.gaps {
				t.Errorf("%d samples and %d gaps, want %d and %d", len(s.T), len(s.Gaps), c.samples, c.gaps)
			}
			if s.HasTurn {
				t.Error("a gyroscope was made up")
			}
			for i := 1; i < len(s.T); i++ {
				if s.T[i] <= s.T[i-1] {
					t.Fatalf("time does not rise at %d", i)
				}
			}
		})
	}
}

// TestIntegrate: straight lines between samples are integrated exactly.
func TestIntegrate(t *testing.T) {
	s := New(even(400, 0.01))
	f := make([]float64, len(s.T))
	for i, at := range s.T {
		f[i] = 3 + 2*at
	}
	g := s.Integrate(f)
	for _, c := range [][2]int{{0, 399}, {10, 20}, {250, 300}} {
		a, b := s.T[c[0]], s.T[c[1]]
		h := b - a
		once, twice := g.Over(c[0], c[1])
		wantOnce := 3*h + b*b - a*a
		wantTwice := (3+2*a)*h*h/2 + h*h*h/3
		if math.Abs(once-wantOnce) > 1e-9 || math.Abs(twice-wantTwice) > 1e-9 {
			t.Errorf("samples %v: %.9f and %.9f, want %.9f and %.9f", c, once, twice, wantOnce, wantTwice)
		}
	}
}

// TestDensity: white noise of variance σ² sampled every h has the density σ²·h.
// The minimum of three bands lies a little below; a line in between the bands'
// edges must not raise it.
func TestDensity(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for _, rate := range []float64{60, 100, 200, 400} {
		s := New(even(int(120*rate), 1/rate))
		white, line := make([]float64, len(s.T)), make([]float64, len(s.T))
		for i, at := range s.T {
			white[i] = 2 * rng.NormFloat64()
			line[i] = white[i] + 5*math.Sin(2*math.Pi*11*at)
		}
		want := 4 / rate
		got, with := mean(s.Density(white)), mean(s.Density(line))
		t.Logf("%3.0f Hz: density %.4f of %.4f, with a line at 11 Hz %.4f", rate, got, want, with)
		if got < 0.5*want || got > 1.1*want {
			t.Errorf("%v Hz: density %.4f, want %.4f", rate, got, want)
		}
		if with > 2*want {
			t.Errorf("%v Hz: a line at 11 Hz makes it %.4f", rate, with)
		}
	}
}

func TestMeanKeepsTheLevel(t *testing.T) {
	f := []float64{1, 2, 3, 4, 5, 6, 7}
	for half := range 5 {
		got := Mean(make([]float64, len(f)), f, half)
		if math.Abs(got[3]-4) > 1e-12 {
			t.Errorf("half %d: middle %v", half, got[3])
		}
		if want := mean(f[:half+1]); math.Abs(got[0]-want) > 1e-12 {
			t.Errorf("half %d: first %v, want %v", half, got[0], want)
		}
	}
}

func mean(x []float64) float64 {
	var sum float64
	for _, v := range x {
		sum += v
	}
	return sum / float64(len(x))
}
