// Package motion prepares the accelerometer's and gyroscope's samples for the
// smoother: one continuous series in time with gaps filled and marked, running
// integrals, and the spectral density of the vibration.
package motion

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
)

// Series is the motion of a ride on increasing times. Where samples are missing
// for longer than Hole, empty ones take their place.
type Series struct {
	T       []float64 // s on the log's clock
	HasTurn bool      // there is a gyroscope
	Missing []bool    // the sample replaces one that was not recorded
	Gaps    [][2]float64
	Step    float64 // usual interval between recorded samples, s

	read   []sensors.Motion // parallel to T; the log's own slice if nothing was corrected
	spares [][]float64
}

// Sheet returns scratch memory of one number for each sample; its contents are
// arbitrary. Only one goroutine may call Sheet and Spare.
func (s *Series) Sheet() []float64 {
	if n := len(s.spares); n > 0 {
		f := s.spares[n-1]
		s.spares = s.spares[:n-1]
		return f
	}
	return make([]float64, len(s.T))
}

// Spare returns sheets for reuse. For a ride of hours a few of them take tens
// of megabytes.
func (s *Series) Spare(sheets ...[]float64) {
	for _, f := range sheets {
		if len(f) == len(s.T) {
			s.spares = append(s.spares, f)
		}
	}
}

// Force is the specific force at a sample, m/s², phone axes; zero where
// Missing.
func (s *Series) Force(i int) r3.Vec { return s.read[i].Force }

// Turn is the turn rate at a sample, rad/s; of use only where HasTurn, and zero
// where Missing.
func (s *Series) Turn(i int) r3.Vec { return s.read[i].Turn }

// Axis is one of the three components of a vector.
func Axis(v r3.Vec, a int) float64 {
	switch a {
	case 0:
		return v.X
	case 1:
		return v.Y
	}
	return v.Z
}

// fillStep is the spacing of the samples that replace missing ones, s: coarse
// enough to cost little and fine enough for a speed curve.
const fillStep = 0.1

// maxFill limits the samples that fill one gap, so that a clock that jumps by a
// month does not exhaust the memory.
const maxFill = 20000

// Hole is the interval from which samples count as missing, s: three and a half
// times the usual one, more than two lost readings with their jitter, but at
// least a tenth of a second, in which no rider does anything sudden.
func (s *Series) Hole() float64 { return math.Max(0.1, 3.5*s.Step) }

// New builds the series. Readings that are not finite are left out, as are
// those that do not come later than the one before. The samples are read, never
// written, for as long as the series is used.
func New(samples []sensors.Motion) *Series {
	s := &Series{Step: usualStep(samples), HasTurn: hasTurn(samples)}
	gap := s.Hole()
	s.T = make([]float64, 0, len(samples))
	good := s.good(samples, gap)
	for i := range good {
		s.T = append(s.T, samples[i].T)
	}
	if good == len(samples) {
		s.read = samples
	} else {
		s.read = append(make([]sensors.Motion, 0, len(samples)), samples[:good]...)
	}
	for _, m := range samples[good:] {
		if !Finite(m.Force) || math.IsNaN(m.T) || math.IsInf(m.T, 0) {
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
	if s.Missing == nil {
		s.Missing = make([]bool, len(s.T))
	}
	return s
}

// Even is a series without readings at evenly spaced times.
func Even(from, to, step float64) *Series {
	n := max(2, int(math.Ceil((to-from)/step))+1)
	s := &Series{Step: (to - from) / float64(n-1), T: make([]float64, n), Missing: make([]bool, n)}
	for i := range s.T {
		s.T[i], s.Missing[i] = from+float64(i)*s.Step, true
	}
	return s
}

// hasTurn reports whether more than half of the samples hold a turn rate.
func hasTurn(samples []sensors.Motion) bool {
	n := 0
	for i := range samples {
		if samples[i].HasTurn() {
			n++
		}
	}
	return n > len(samples)/2
}

// good is the number of leading samples that need no correction.
func (s *Series) good(samples []sensors.Motion, gap float64) int {
	for i := range samples {
		m := &samples[i]
		if !Finite(m.Force) || math.IsNaN(m.T) || math.IsInf(m.T, 0) || s.HasTurn && !Finite(m.Turn) {
			return i
		}
		if i > 0 && (m.T <= samples[i-1].T || m.T-samples[i-1].T > gap) {
			return i
		}
	}
	return len(samples)
}

func (s *Series) add(m sensors.Motion) {
	if s.HasTurn && !Finite(m.Turn) {
		m.Turn = r3.Vec{}
		if n := len(s.read); n > 0 {
			m.Turn = s.read[n-1].Turn
		}
	}
	s.T = append(s.T, m.T)
	s.read = append(s.read, m)
	if s.Missing != nil {
		s.Missing = append(s.Missing, false)
	}
}

func (s *Series) fill(from, to float64) {
	s.Gaps = append(s.Gaps, [2]float64{from, to})
	if s.Missing == nil {
		s.Missing = make([]bool, len(s.T), cap(s.T))
	}
	n := int(math.Min((to-from)/fillStep, maxFill))
	for i := 1; i < n; i++ {
		at := from + (to-from)*float64(i)/float64(n)
		s.T = append(s.T, at)
		s.read = append(s.read, sensors.Motion{T: at})
		s.Missing = append(s.Missing, true)
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

// stepOver is the number of readings over which the usual interval is measured:
// more than a phone delivers in one burst with almost equal time stamps.
const stepOver = 64

// usualStep is the median over the ride of the mean interval of stepOver
// readings, s. It is robust to bursts, jitter and gaps.
func usualStep(samples []sensors.Motion) float64 {
	const most = 20000 // enough for the median
	over := max(1, min(stepOver, len(samples)/4))
	stride := max(1, len(samples)/most)
	steps := make([]float64, 0, most+1)
	for i := over; i < len(samples); i += stride {
		if h := samples[i].T - samples[i-over].T; h > 0 && !math.IsInf(h, 0) {
			steps = append(steps, h/float64(over))
		}
	}
	if len(steps) == 0 {
		return 0.01
	}
	slices.Sort(steps)
	return steps[len(steps)/2]
}

// Finite reports whether every component is a finite number.
func Finite(v r3.Vec) bool {
	sum := v.X + v.Y + v.Z
	return !math.IsNaN(sum) && !math.IsInf(sum, 0)
}
