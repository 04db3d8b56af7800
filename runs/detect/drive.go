package detect

import (
	"math"

	"stillair/sensors"
)

// How a push is looked at.
const (
	bandWidth   = 1.5 // m/s
	openingTime = 0.3 // s after the first movement of the throttle that are not compared
	proofParts  = 3   // into how many parts common speeds are cut: gear and throttle change the shape
	oneGear     = 4.1 // ratio of speeds that only a machine with one gear passes in one
	manyGears   = 2.5 // and over which the thrust falls where the gear is changed
	hardlyFalls = 0.9 // share of its first thrust that is not left then
)

// drive is a push with what it shows of the throttle: when it passes the edges
// of the bands of speed, from the first whole band on.
type drive struct {
	push
	bearing float64 // degrees; NaN: not known
	way     float64 // +1 or −1, against the ride's first; 0: not known
	proven  bool    // at full throttle for another reason
	first   int     // its first edge lies at first·bandWidth
	edges   []float64
	cov     [][]float64 // of the speed at the edges; nil: not known
}

func (s *series) newDrive(p push, fixes []sensors.Fix, proven bool) drive {
	d := drive{push: p, proven: proven, bearing: bearingOf(fixes, (s.time(p.from)+s.time(p.to))/2)}
	begin := min(p.from+int(openingTime/step), p.to)
	d.first = int(math.Ceil(s.v[begin] / bandWidth))
	for k := d.first; ; k++ {
		t := s.crossing(float64(k)*bandWidth, begin, p.to)
		if math.IsNaN(t) {
			break
		}
		d.edges = append(d.edges, t)
	}
	if s.errs != nil && len(d.edges) > 0 {
		d.cov = s.errs.SpeedCov(d.edges)
	}
	return d
}

// last is one beyond the number of its last edge.
func (d drive) last() int { return d.first + len(d.edges) }

// thrust is the mean thrust between two edges, m/s², with its standard deviation.
func (d drive) thrust(from, to int) estimate {
	i, j := from-d.first, to-d.first
	gain, took := float64(to-from)*bandWidth, math.Max(d.edges[j]-d.edges[i], 0.05)
	out := estimate{x: gain/took + load((float64(from)*bandWidth+float64(to)*bandWidth)/2)}
	if d.cov != nil {
		out.sd = math.Sqrt(math.Max(0, d.cov[i][i]+d.cov[j][j]-2*d.cov[i][j])) / took
	}
	return out
}

// possible reports whether an engine can give a push at full throttle. Through
// so wide a range of speeds only a machine with one gear goes without a change;
// its thrust falls as its power is used up. A hand that keeps an acceleration
// raises it.
func (d drive) possible() bool {
	n, wide := len(d.edges)-1, oneGear
	if len(d.shifts) > 0 {
		wide = manyGears
	}
	if n < 2*proofParts || float64(d.last()-1) < wide*float64(d.first) {
		return true
	}
	part := n / proofParts
	low, high := d.thrust(d.first, d.first+part), d.thrust(d.last()-1-part, d.last()-1)
	return high.x < hardlyFalls*low.x
}

// bearingOf is the course of the fixes in the middle of a push, degrees.
func bearingOf(fixes []sensors.Fix, t float64) float64 {
	best, near := math.NaN(), 3.0
	for _, f := range fixes {
		if d := math.Abs(f.T - t); d < near && !math.IsNaN(f.BearingDeg) {
			best, near = f.BearingDeg, d
		}
	}
	return best
}
