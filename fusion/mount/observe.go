package mount

import (
	"math"
	"runtime"
	"slices"
	"sync"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/fusion/internal/motion"
	"stillair/sensors"
	"stillair/sensors/units"
)

// observation is one row of the regression: about a second between two fixes.
type observation struct {
	from, to float64 // s on the log's clock, corrected for the lag
	accel    float64 // change of satellite speed per second, m/s²
	force    r3.Vec  // mean specific force over the same time, m/s²
	speed    float64 // mean satellite speed, m/s
	moving   bool    // false: a standstill, which only shows up
	turning  bool    // too much of a turn to be used
}

const (
	assumedLag = 0.2  // s, until it is estimated
	shortest   = 0.95 // s between the fixes of an observation, at least
	longest    = 2.6  // s, at most, but where fixes are rare:
	rarest     = 12.0 // s between fixes that still contribute to the mount
	atRest     = 0.3  // m/s of satellite speed below which the bike may stand
	inTurn     = 1.2  // m/s² across the road above which a second counts as a turn
	byHand     = 6.0  // m/s² of mean force beyond g that riding does not cause
	gravity    = units.StandardGravity
)

// gauge computes the mean force between two fixes, for any lag.
type gauge struct {
	s     *motion.Series
	fixes []sensors.Fix
	axes  [3][]float64 // running integrals of the force
	holes []float64    // running count of missing samples
	turn  []float64    // running integral of the turn rate about up, or nil
	pairs [][2]int     // the pairs of fixes of the observations
}

func newGauge(s *motion.Series, fixes []sensors.Fix) *gauge {
	g := &gauge{s: s, fixes: fixes, pairs: pairs(fixes)}
	for a := range g.axes {
		g.axes[a] = s.Once(func(i int) float64 { return motion.Axis(s.Force(i), a) })
	}
	g.holes = s.Sheet()
	g.holes[0] = 0
	for i := 1; i < len(s.T); i++ {
		g.holes[i] = g.holes[i-1]
		if s.Missing[i] || s.T[i]-s.T[i-1] > s.Hole() {
			g.holes[i]++
		}
	}
	if !s.HasTurn {
		return g
	}
	half := s.Half(1)
	g.turn = s.Once(func(i int) float64 {
		a, b := max(i-half, 0), min(i+half, len(s.T)-1)
		up := r3.Vec{X: g.axes[0][b] - g.axes[0][a], Y: g.axes[1][b] - g.axes[1][a], Z: g.axes[2][b] - g.axes[2][a]}
		if n := r3.Norm(up); n > 0 {
			return r3.Dot(s.Turn(i), up) / n
		}
		return 0
	})
	return g
}

// at interpolates a running integral at a time inside the series.
func (g *gauge) at(once []float64, i int, t float64) float64 {
	share := (t - g.s.T[i]) / (g.s.T[i+1] - g.s.T[i])
	return once[i] + share*(once[i+1]-once[i])
}

// done releases the gauge's scratch memory.
func (g *gauge) done() { g.s.Spare(g.axes[0], g.axes[1], g.axes[2], g.holes, g.turn) }

// pairs pairs every fix with the first that comes a second later.
func pairs(fixes []sensors.Fix) [][2]int {
	most := longest
	if n := len(fixes); n > 1 {
		const over = 1.3 // times the usual interval
		most = math.Max(longest, math.Min(over*(fixes[n-1].T-fixes[0].T)/float64(n-1), rarest))
	}
	var out [][2]int
	j := 0
	for i := 0; i < len(fixes); {
		for j = max(j, i+1); j < len(fixes) && fixes[j].T-fixes[i].T < shortest; {
			j++
		}
		if j == len(fixes) {
			break
		}
		if fixes[j].T-fixes[i].T < most {
			out = append(out, [2]int{i, j})
		}
		i += max(1, (j-i)/2)
	}
	return out
}

// observe appends the observation of each pair at a lag to out.
func (g *gauge) observe(out []observation, lag float64) []observation {
	n := len(g.s.T)
	for _, p := range g.pairs {
		a, b := g.fixes[p[0]], g.fixes[p[1]]
		t0, t1 := a.T-lag, b.T-lag
		if t0 >= g.s.T[0] && t1 <= g.s.T[n-1] {
			if o, ok := g.between(t0, t1, a.Speed, b.Speed); ok {
				out = append(out, o)
			}
		}
	}
	return out
}

func (g *gauge) between(t0, t1, v0, v1 float64) (observation, bool) {
	i, _ := slices.BinarySearch(g.s.T, t0)
	j, _ := slices.BinarySearch(g.s.T, t1)
	i, j = max(i-1, 0), max(j-1, 0)
	if g.holes[j+1] != g.holes[i] {
		return observation{}, false
	}
	h := t1 - t0
	mean := func(once []float64) float64 { return (g.at(once, j, t1) - g.at(once, i, t0)) / h }
	o := observation{from: t0, to: t1, accel: (v1 - v0) / h, speed: (v0 + v1) / 2,
		force: r3.Vec{X: mean(g.axes[0]), Y: mean(g.axes[1]), Z: mean(g.axes[2])}}
	o.moving = math.Max(v0, v1) > atRest
	if g.turn != nil {
		o.turning = math.Abs(mean(g.turn))*o.speed > inTurn
	}
	off := math.Abs(r3.Norm(o.force) - gravity)
	return o, off < byHand && math.Abs(o.accel) < 15
}

const (
	firstLag, lastLag = -0.4, 5.0 // s, range of trial lags
	lagStep           = 0.1       // s, at first; half of it around the best
)

// bestLag is the lag with the smallest residual, with axes of its own for each
// stretch between slips.
func (g *gauge) bestLag(cuts []cut) (float64, bool) {
	steps := int(math.Round((lastLag - firstLag) / lagStep))
	tried := make([]misfit, steps+1)
	var wg sync.WaitGroup
	workers := runtime.GOMAXPROCS(0)
	for w := range workers {
		wg.Go(func() {
			room := make([]observation, 0, len(g.fixes))
			for k := w; k <= steps; k += workers {
				tried[k] = g.misfit(room, cuts, firstLag+float64(k)*lagStep)
			}
		})
	}
	wg.Wait()
	best := 0
	for k, m := range tried {
		if m.n < 8 {
			return assumedLag, false
		}
		if m.rss < tried[best].rss {
			best = k
		}
	}
	least, spread := tried[best].rss, tried[best].saa
	if best == 0 || best == steps || spread < 4*least || spread < 1 {
		return assumedLag, false
	}
	at := firstLag + float64(best)*lagStep
	a, c := g.misfit(nil, cuts, at-lagStep/2).rss, g.misfit(nil, cuts, at+lagStep/2).rss
	if bend := a - 2*least + c; bend > 0 {
		at += lagStep / 2 * math.Max(-1, math.Min(1, (a-c)/(2*bend)))
	}
	return at, true
}

// misfit is the residual at a lag.
type misfit struct {
	rss float64 // mean square, (m/s²)²
	saa float64 // Σ(a-ā)², (m/s²)²
	n   int     // observations
}

func (g *gauge) misfit(room []observation, cuts []cut, lag float64) misfit {
	var m misfit
	obs := g.observe(room[:0], lag)
	for _, c := range cuts {
		f := robustFit(inside(obs, c.start-assumedLag+lag, c.end))
		m.rss += f.rss
		m.saa += f.saa
		m.n += f.n
	}
	m.rss /= float64(max(m.n, 1))
	return m
}

// inside are the observations between two times.
func inside(obs []observation, from, to float64) []observation {
	lo := 0
	for lo < len(obs) && obs[lo].from < from {
		lo++
	}
	hi := lo
	for hi < len(obs) && obs[hi].to <= to {
		hi++
	}
	return obs[lo:hi]
}
