package live

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
)

const (
	firstLag  = 0.2 // s, until it is estimated
	lagStep   = 0.1 // s between trial lags
	lags      = 16  // 0 to 1.5 s
	pairOver  = 0.9 // s of fixes for one observation, at least
	pairMost  = 2.6 // s, at most
	remember  = 900 // s over which old observations lose their weight
	enoughSaa = 6.0 // Σ(a-ā)² from which forward is used, (m/s²)²
	bend      = 1.2 // m/s² across the road above which nothing is learned
	slipAngle = 0.3 // rad between learned and measured up that indicates a slip
)

// axes estimates up and forward by the regression of package mount, recursively
// and for several lags of the receiver at once.
type axes struct {
	up, forward, left r3.Vec
	known             bool
	lag               float64 // s
	turning           float64 // recent m/s² across the road
	bank              [lags]sums
	start             [lags]moment
	from              sensors.Fix // start of the current observation
	begun             bool
	tilted            int // consecutive observations with a different up
	farOff            int // consecutive fixes that were far off
}

// sums are the exponentially weighted sums of the regression of force on
// acceleration.
type sums struct {
	n, a, aa, ff float64
	f, af        r3.Vec
}

func (s *sums) fade(k float64) {
	s.n *= k
	s.a *= k
	s.aa *= k
	s.ff *= k
	s.f, s.af = r3.Scale(k, s.f), r3.Scale(k, s.af)
}

func (s *sums) add(a float64, f r3.Vec) {
	s.n++
	s.a += a
	s.aa += a * a
	s.ff += r3.Norm2(f)
	s.f = r3.Add(s.f, f)
	s.af = r3.Add(s.af, r3.Scale(a, f))
}

// fit returns intercept, slope, Σ(a-ā)² and the residual sum of squares.
func (s *sums) fit() (rise, slope r3.Vec, saa, rss float64) {
	mean := r3.Scale(1/s.n, s.f)
	saa = math.Max(s.aa-s.a*s.a/s.n, 0)
	cross := r3.Sub(s.af, r3.Scale(s.a, mean))
	slope = r3.Scale(1/(saa+0.05), cross)
	rise = r3.Sub(mean, r3.Scale(s.a/s.n, slope))
	rss = math.Max(s.ff-s.n*r3.Norm2(mean)-r3.Dot(slope, cross), 0)
	return rise, slope, saa, rss
}

// restart begins a new observation at a fix after a gap.
func (x *axes) restart() { x.begun = false }

// learn takes in a fix; with the fix a second before, it makes an observation.
func (x *axes) learn(f sensors.Fix, past *history) {
	if !x.begun || f.T-x.from.T > pairMost {
		x.begin(f, past)
		return
	}
	dt := f.T - x.from.T
	if dt < pairOver {
		return
	}
	a := (f.Speed - x.from.Speed) / dt
	usable := x.turning < bend && math.Abs(a) < 15 && f.Speed+x.from.Speed > 0.6
	for i := range x.bank {
		end := past.at(f.T - float64(i)*lagStep)
		h := end.t - x.start[i].t
		ok := usable && past.covers(x.start[i].t) && math.Abs(h-dt) < 0.02
		if ok {
			x.bank[i].fade(math.Exp(-dt / remember))
			x.bank[i].add(a, r3.Scale(1/h, r3.Sub(end.sum, x.start[i].sum)))
		}
	}
	if usable {
		x.slip(a, past, f)
		x.settle()
	}
	x.begin(f, past)
}

func (x *axes) begin(f sensors.Fix, past *history) {
	x.begun = true
	x.from = f
	for i := range x.start {
		x.start[i] = past.at(f.T - float64(i)*lagStep)
	}
}

// slip resets the axes when up has pointed elsewhere for a while.
func (x *axes) slip(a float64, past *history, f sensors.Fix) {
	if !x.known {
		return
	}
	end := past.at(f.T - x.lag)
	begin := past.at(x.from.T - x.lag)
	if end.t <= begin.t {
		return
	}
	felt := r3.Sub(r3.Scale(1/(end.t-begin.t), r3.Sub(end.sum, begin.sum)), r3.Scale(a, x.forward))
	angle := math.Atan2(r3.Norm(r3.Cross(felt, x.up)), r3.Dot(felt, x.up))
	if angle < slipAngle {
		x.tilted = 0
		return
	}
	if x.tilted++; x.tilted < 6 {
		return
	}
	x.tilted = 0
	x.known = false
	for i := range x.bank {
		x.bank[i] = sums{}
	}
}

// settle takes the axes from the lag with the smallest residual.
func (x *axes) settle() {
	best, least := -1, math.Inf(1)
	var rss [lags]float64
	for i := range x.bank {
		s := &x.bank[i]
		if s.n < 6 {
			return
		}
		_, _, _, r := s.fit()
		rss[i] = r / s.n
		if rss[i] < least {
			best, least = i, rss[i]
		}
	}
	rise, slope, saa, _ := x.bank[best].fit()
	size := r3.Norm(slope)
	if saa < enoughSaa || size < 0.4 || size > 2 || saa < 12*least {
		return
	}
	x.lag = float64(best) * lagStep
	if best > 0 && best < lags-1 {
		if c := rss[best-1] - 2*rss[best] + rss[best+1]; c > 0 {
			x.lag += lagStep * math.Max(-0.5, math.Min(0.5, (rss[best-1]-rss[best+1])/(2*c)))
		}
	}
	x.up = r3.Unit(rise)
	d := r3.Sub(slope, r3.Scale(r3.Dot(slope, x.up), x.up))
	x.forward = r3.Unit(d)
	x.left = r3.Cross(x.up, x.forward)
	x.known = true
}

// lost reports whether fixes have been far off for so long that the filter must
// be wrong.
func (x *axes) lost(float64) bool {
	x.farOff++
	return x.farOff > 3
}

func (x *axes) found() { x.farOff = 0 }
