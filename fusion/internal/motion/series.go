// Package motion prepares the accelerometer's and gyroscope's samples for the
// smoother: one unbroken series in time, gaps filled and marked, running
// integrals, and how strong the vibration is.
package motion

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
)

// Series is the motion of a ride as parallel slices on increasing times.
// Where samples are missing for longer than a moment, empty ones stand in.
type Series struct {
	T       []float64 // s on the log's clock
	Force   []r3.Vec  // specific force, m/s², phone axes; zero where Missing
	Turn    []r3.Vec  // turn rate, rad/s; nil without a gyroscope, zero where Missing
	Missing []bool    // the sample stands in for one that was not recorded
	Gaps    [][2]float64
	Step    float64 // median interval between recorded samples, s
}

// fillStep is the spacing of the samples that stand in for missing ones, s. It
// is wide enough to cost nothing and fine enough for a speed curve.
const fillStep = 0.1

// maxFill bounds how many samples stand in for one gap, so that a clock that
// jumps by a month does not fill the memory.
const maxFill = 20000

// New builds the series. Readings that are not finite are left out, as are
// those that do not come later than the one before.
func New(samples []sensors.Motion) *Series {
	s := &Series{}
	s.Step = medianStep(samples)
	gap := math.Max(0.1, 3.5*s.Step)
	withTurn := 0
	for _, m := range samples {
		if m.HasTurn() {
			withTurn++
		}
	}
	hasTurn := withTurn > len(samples)/2
	s.reserve(len(samples), hasTurn)
	for _, m := range samples {
		if !finite(m.Force) || math.IsNaN(m.T) || math.IsInf(m.T, 0) {
			continue
		}
		if n := len(s.T); n > 0 {
			if m.T <= s.T[n-1] {
				continue
			}
			if m.T-s.T[n-1] > gap {
				s.fill(s.T[n-1], m.T)
			}
		}
		s.add(m)
	}
	return s
}

func (s *Series) reserve(n int, hasTurn bool) {
	s.T = make([]float64, 0, n)
	s.Force = make([]r3.Vec, 0, n)
	s.Missing = make([]bool, 0, n)
	if hasTurn {
		s.Turn = make([]r3.Vec, 0, n)
	}
}

func (s *Series) add(m sensors.Motion) {
	s.T = append(s.T, m.T)
	s.Force = append(s.Force, m.Force)
	s.Missing = append(s.Missing, false)
	if s.Turn == nil {
		return
	}
	turn := m.Turn
	if !finite(turn) {
		turn = s.lastTurn()
	}
	s.Turn = append(s.Turn, turn)
}

func (s *Series) lastTurn() r3.Vec {
	if n := len(s.Turn); n > 0 {
		return s.Turn[n-1]
	}
	return r3.Vec{}
}

func (s *Series) fill(from, to float64) {
	s.Gaps = append(s.Gaps, [2]float64{from, to})
	n := int(math.Min((to-from)/fillStep, maxFill))
	for i := 1; i < n; i++ {
		s.T = append(s.T, from+(to-from)*float64(i)/float64(n))
		s.Force = append(s.Force, r3.Vec{})
		s.Missing = append(s.Missing, true)
		if s.Turn != nil {
			s.Turn = append(s.Turn, r3.Vec{})
		}
	}
}

// Index returns the sample nearest to t.
func (s *Series) Index(t float64) int {
	i, _ := slices.BinarySearch(s.T, t)
	switch {
	case i == 0:
		return 0
	case i == len(s.T):
		return i - 1
	case t-s.T[i-1] < s.T[i]-t:
		return i - 1
	}
	return i
}

func medianStep(samples []sensors.Motion) float64 {
	const most = 20000 // enough to know the median
	stride := max(1, len(samples)/most)
	steps := make([]float64, 0, most+1)
	for i := 1; i < len(samples); i += stride {
		if h := samples[i].T - samples[i-1].T; h > 0 {
			steps = append(steps, h)
		}
	}
	if len(steps) == 0 {
		return 0.01
	}
	slices.Sort(steps)
	return steps[len(steps)/2]
}

func finite(v r3.Vec) bool {
	sum := v.X + v.Y + v.Z
	return !math.IsNaN(sum) && !math.IsInf(sum, 0)
}
