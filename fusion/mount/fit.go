package mount

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// sums are the running sums of a regression of force on acceleration.
type sums struct {
	n, a, aa float64
	f, af    r3.Vec
	ff       float64
}

func (s *sums) add(o observation, w float64) {
	s.n += w
	s.a += w * o.accel
	s.aa += w * o.accel * o.accel
	s.f = r3.Add(s.f, r3.Scale(w, o.force))
	s.af = r3.Add(s.af, r3.Scale(w*o.accel, o.force))
	s.ff += w * r3.Norm2(o.force)
}

func (s sums) minus(o sums) sums {
	return sums{n: s.n - o.n, a: s.a - o.a, aa: s.aa - o.aa, ff: s.ff - o.ff,
		f: r3.Sub(s.f, o.f), af: r3.Sub(s.af, o.af)}
}

// fit is force = rise + slope·acceleration over a stretch.
type fit struct {
	n           int
	rise, slope r3.Vec
	saa         float64 // Σ(a - mean a)², (m/s²)²
	rss         float64 // residual sum of squares of all three axes, (m/s²)²
}

// ridge regularises the slope of a stretch without changes of speed (ridge
// regression), (m/s²)²: a fifth of a second's gentle acceleration.
const ridge = 0.05

func (s sums) fit() fit {
	out := fit{n: int(s.n + 0.5)}
	if s.n <= 0 {
		return out
	}
	mean := r3.Scale(1/s.n, s.f)
	out.saa = math.Max(s.aa-s.a*s.a/s.n, 0)
	cross := r3.Sub(s.af, r3.Scale(s.a, mean))
	out.slope = r3.Scale(1/(out.saa+ridge), cross)
	out.rise = r3.Sub(mean, r3.Scale(s.a/s.n, out.slope))
	total := s.ff - s.n*r3.Norm2(mean)
	out.rss = math.Max(total-2*r3.Dot(out.slope, cross)+out.saa*r3.Norm2(out.slope), 0)
	return out
}

// robustFit fits the observations that are neither at standstill nor in turns,
// and again with less weight on outliers. If there are none it uses all.
func robustFit(obs []observation) fit {
	var s sums
	for _, o := range obs {
		if o.moving && !o.turning {
			s.add(o, 1)
		}
	}
	if s.n < 8 {
		s = sums{}
		for _, o := range obs {
			s.add(o, 1)
		}
		return s.fit()
	}
	f := s.fit()
	scale := 2.5 * math.Sqrt(f.rss/math.Max(s.n-2, 1))
	n := f.n
	s = sums{}
	for _, o := range obs {
		if !o.moving || o.turning {
			continue
		}
		e := r3.Norm(r3.Sub(o.force, r3.Add(f.rise, r3.Scale(o.accel, f.slope))))
		w := 1.0
		if e > scale {
			w = scale / e
		}
		s.add(o, w)
	}
	f = s.fit()
	f.n = n
	return f
}

func (f fit) up() r3.Vec { return r3.Unit(f.rise) }

func (f fit) forward() r3.Vec {
	u := f.up()
	d := r3.Sub(f.slope, r3.Scale(r3.Dot(f.slope, u), u))
	if r3.Norm(d) == 0 {
		return d
	}
	return r3.Unit(d)
}

// tilt is the systematic uncertainty of up, rad, which more observations do not
// reduce: the accelerometer's bias and the mean slope of the ride.
const tilt = 0.01

// se is the standard uncertainty of an angle of forward, rad: the scatter of
// one axis over the leverage of the accelerations.
func (f fit) se() float64 {
	if f.n < 3 || f.saa == 0 {
		return math.Pi
	}
	sigma := math.Sqrt(f.rss / 3 / float64(f.n-2))
	// Half-overlapping seconds and slow changes of slope make the effective
	// number of independent observations smaller.
	chance := math.Sqrt2 * sigma / math.Sqrt(f.saa) / math.Max(r3.Norm(f.slope), 0.1)
	return math.Min(math.Hypot(chance, tilt), math.Pi)
}

// sure reports whether forward is known well enough to project on.
func (f fit) sure() bool {
	size := r3.Norm(f.slope)
	return f.n >= 5 && f.se() < 0.3 && size > 0.4 && size < 2
}
