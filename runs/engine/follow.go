package engine

import (
	"math"

	"stillair/sensors/median"
)

// Speed is the engine's speed at times of a pull.
type Speed struct {
	T   []float64 // s
	RPM []float64 // 1/min
	SE  []float64 // standard uncertainty of RPM, 1/min
}

// Sure leaves out what is less certain than a relative standard uncertainty.
func (s Speed) Sure(relative float64) (sure Speed) {
	for i, rpm := range s.RPM {
		if s.SE[i] <= relative*rpm {
			sure.T, sure.RPM, sure.SE = append(sure.T, s.T[i]), append(sure.RPM, rpm), append(sure.SE, s.SE[i])
		}
	}
	return sure
}

// How an engine is followed.
const (
	followStep = 0.25   // s from one value to the next
	followSpan = 1      // frames on each side used for a value
	farthest   = 0.025  // maximum relative difference from the ratio times the speed
	fine       = 0.0005 // step of it
	shared     = 1.5    // frames per independent one
)

// Follow returns the engine speed from its own orders, given its ratio to road
// speed, which is only the centre of the search: the receiver's error of the
// road speed lasts for seconds, and so do the differences found here. Frames
// without visible orders are left out.
//
// For white noise the most likely frequency of a line is where the periodogram
// is highest (Rife and Boorstyn, Single-tone parameter estimation from
// discrete-time observations, 1974); each order counts by its power over the
// noise beside it, and neighbouring frames together.
func Follow(sig Signal, ratio Ratio, se Search) Speed {
	orders := se.Orders
	if len(orders) == 0 {
		orders = family(0)
	}
	f := follower{sig: sig, q: ratio.RPMPerMPS.X / 60, orders: orders}
	frames := sig.overlapping()
	likely := make([][]float64, len(frames))
	for k, frame := range frames {
		likely[k] = f.likely(frame)
	}
	var out Speed
	for k, frame := range frames {
		all := sum(likely[max(0, k-followSpan):min(len(frames), k+followSpan+1)])
		i := peak(all)
		if i == 0 || i == len(all)-1 {
			continue
		}
		a, b, c := all[i-1], all[i], all[i+1]
		bend := a - 2*b + c
		if !(bend < 0) {
			continue
		}
		at := float64(i) + 0.5*(a-c)/bend
		// The uncertainty follows from the curvature of the log-likelihood;
		// frames that overlap by half do not count in full.
		se := fine * math.Sqrt(-shared/bend)
		from, to := frame[0], frame[1]-1
		turns := f.q * (1 - farthest + fine*at) * (sig.S[to] - sig.S[from])
		out.T = append(out.T, (sig.T[from]+sig.T[to])/2)
		rpm := 60 * turns / (sig.T[to] - sig.T[from])
		out.RPM, out.SE = append(out.RPM, rpm), append(out.SE, se*rpm)
	}
	return out
}

type follower struct {
	sig    Signal
	q      float64 // turns per metre
	orders []float64
}

// likely is the log-likelihood of each difference of a fine grid in a frame, up
// to a constant.
func (f follower) likely(frame [2]int) []float64 {
	const (
		n    = 101 // 2·farthest/fine + 1
		wide = 120
	)
	x, s := windowed(f.sig.X[frame[0]:frame[1]]), f.sig.S[frame[0]:frame[1]]
	out, near, far := make([]float64, n), make([]float64, n), make([]float64, wide)
	for _, h := range f.orders {
		powers(far, x, s, h*f.q*0.7, h*f.q*0.6/wide)
		noise := median.In(far) / math.Ln2
		powers(near, x, s, h*f.q*(1-farthest), h*f.q*fine)
		for i, p := range near {
			out[i] += p / noise
		}
	}
	return out
}

// overlapping cuts the signal into frames that begin followStep apart.
func (s Signal) overlapping() [][2]int {
	var f [][2]int
	for from := 0; from < len(s.T); {
		to, next := from, from
		for to < len(s.T) && s.T[to] < s.T[from]+frameSeconds {
			to++
		}
		for next < len(s.T) && s.T[next] < s.T[from]+followStep {
			next++
		}
		if to == len(s.T) {
			break
		}
		if to-from >= 16 && s.S[to-1] > s.S[from] {
			f = append(f, [2]int{from, to})
		}
		from = next
	}
	return f
}
