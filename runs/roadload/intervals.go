package roadload

import (
	"math"

	"stillair/runs/measure"
)

// Stepwise computes the road load of each setup by the method of the
// regulations: the force over each interval of speed from Δv/Δt, and a
// regression line through those forces. It is meant for comparison with figures
// made that way and is no substitute for Fit: it is biased by the square of the
// wind, and its intervals are too narrow because it treats neighbouring
// intervals as independent. width is the interval of speed in m/s (10 km/h is
// usual).
func Stepwise(runs []Run, opts Options, width float64) ([]Load, error) {
	runs, _, err := check(runs, opts)
	if err != nil {
		return nil, err
	}
	lines := map[int]*line{}
	setups := 0
	for _, r := range runs {
		setups = max(setups, r.Setup+1)
		if lines[r.Setup] == nil {
			lines[r.Setup] = &line{}
		}
		r.steps(width, func(v, dvdt float64) {
			lines[r.Setup].add(r.Density/2*v*v, r.Mass*opts.Gravity*(1+opts.Slope.X*v), -r.Inertia*dvdt)
		})
	}
	out := make([]Load, setups)
	for i := range out {
		var ok bool
		if out[i], ok = lines[i].solve(); !ok {
			return nil, ErrSpeedRange
		}
	}
	return out, nil
}

// steps calls f for every whole interval of speed that the run falls through.
func (r *Run) steps(width float64, f func(v, dvdt float64)) {
	top := math.Floor(r.V[0]/width) * width
	last := math.NaN()
	for v := top; ; v -= width {
		t, ok := r.crossing(v)
		if !ok {
			return
		}
		if !math.IsNaN(last) {
			f(v+width/2, -width/(t-last))
		}
		last = t
	}
}

// crossing is when the speed first falls through v, by linear interpolation
// between fixes.
func (r *Run) crossing(v float64) (float64, bool) {
	for i := 1; i < len(r.V); i++ {
		if r.V[i-1] >= v && r.V[i] < v {
			return r.T[i-1] + (r.V[i-1]-v)/(r.V[i-1]-r.V[i])*(r.T[i]-r.T[i-1]), true
		}
	}
	return 0, false
}

// line holds the sums of a linear regression on two columns.
type line struct{ n, xx, xy, yy, xf, yf, ff float64 }

func (s *line) add(x, y, f float64) {
	s.n++
	s.xx, s.xy, s.yy = s.xx+x*x, s.xy+x*y, s.yy+y*y
	s.xf, s.yf, s.ff = s.xf+x*f, s.yf+y*f, s.ff+f*f
}

func (s *line) solve() (Load, bool) {
	det := s.xx*s.yy - s.xy*s.xy
	if s.n < 3 || !(det > 1e-12*s.xx*s.yy) {
		return Load{}, false
	}
	cda := (s.yy*s.xf - s.xy*s.yf) / det
	crr := (s.xx*s.yf - s.xy*s.xf) / det
	variance := math.Max(s.ff-cda*s.xf-crr*s.yf, 0) / (s.n - 2)
	l := Load{
		CdA: measure.Value{X: cda, SE: math.Sqrt(variance * s.yy / det)},
		Crr: measure.Value{X: crr, SE: math.Sqrt(variance * s.xx / det)},
		Cov: -variance * s.xy / det, DoF: s.n - 2, CrrDoF: s.n - 2,
	}
	l.CdACI, l.CrrCI = l.CdA.Interval(0.95, l.DoF), l.Crr.Interval(0.95, l.CrrDoF)
	return l, true
}
