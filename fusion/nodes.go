package fusion

import (
	"math"
	"slices"

	"stillair/fusion/internal/kalman"
	"stillair/fusion/internal/motion"
)

// ride is the smoother's working state for one ride.
type ride struct {
	s     *motion.Series
	fixes []fix
	rest  []Span
	cuts  []int // samples at which the mount changes
	yaw   []float64

	force    motion.Integral // of the forward force
	noisy    []float64       // running integral of its noise density, m²/s²
	blind    []float64       // running time without motion samples, s
	gnssOnly []float64       // running time in which the accelerometer is not used, s; nil: none
	stale    []bool          // far from any fix
	turned   []float64       // running angle turned about the vertical either way, rad; nil without a gyroscope

	raw     []float64 // forward force sample by sample, m/s²
	density []float64 // strength of its noise, m²/s³

	n            noise
	prior        noise      // its prior
	before       float64    // lag as first found, s
	lag          float64    // whole delay of the receiver, s
	lagSD        float64    // its prior standard deviation, s
	withoutAccel []GNSSOnly // the parts in which the accelerometer is not used
	alone        bool       // only the satellites' speeds are used
	halts        []Span     // standstills shown by these
	steps        []LagStep  // of the lag, removed from the fixes' times
	given        Lag        // the lag if known beforehand
	shape        float64    // square of its smoothing time, s²
	ref          reference
	filter       kalman.Filter // of the passes before the last
}

// forgetSteps releases the memory that only the making of nodes needs.
func (r *ride) forgetSteps() {
	r.s.Spare(r.ref.speed, r.ref.accel, r.ref.bent.read, r.ref.bent.more, r.noisy, r.blind, r.turned)
	r.ref, r.noisy, r.blind, r.turned = reference{}, nil, nil, nil
	r.filter = kalman.Filter{}
}

// reference is the motion about which the smoother is linearised: the result of
// the previous pass.
type reference struct {
	speed []float64 // m/s at each sample
	accel []float64 // m/s²
	bent  bent
}

func newReference(s *motion.Series) reference {
	return reference{speed: s.Sheet(), accel: s.Sheet()}
}

// place is a sample that becomes a node, with its fix if any.
type place struct {
	index int
	fix   int // -1: none
	still bool
}

// places lists the samples that become nodes: those nearest to the fixes, the
// ends of gaps, every rest seconds of a standstill, and every grid seconds.
func (r *ride) places(grid, rest float64) []place {
	s := r.s
	n := len(s.T)
	out := make([]place, 0, int(math.Min((s.T[n-1]-s.T[0])/grid, float64(n)))+len(r.fixes)+2*len(r.rest)+16)
	out = append(out, place{index: 0, fix: -1}, place{index: n - 1, fix: -1})
	for k, f := range r.fixes {
		t := f.t - r.lag
		if t < s.T[0] || t > s.T[len(s.T)-1] {
			continue
		}
		if r.inRest(t) {
			continue // the standstill itself is more accurate, and receivers round to zero
		}
		out = append(out, place{index: s.Index(t), fix: k})
	}
	for _, sp := range r.rest {
		n := max(1, int(math.Ceil((sp.To-sp.From)/rest)))
		for i := 0; i <= n; i++ {
			out = append(out, place{index: s.Index(sp.From + (sp.To-sp.From)*float64(i)/float64(n)), fix: -1, still: true})
		}
	}
	for _, g := range s.Gaps {
		out = append(out, place{index: s.Index(g[0]), fix: -1}, place{index: s.Index(g[1]), fix: -1})
	}
	for _, c := range r.cuts {
		out = append(out, place{index: c, fix: -1}, place{index: max(c-1, 0), fix: -1})
	}
	for _, d := range r.withoutAccel {
		out = append(out, place{index: s.Index(d.From), fix: -1}, place{index: s.Index(d.To), fix: -1})
	}
	next := s.T[0] + grid
	for i, t := range s.T {
		if t >= next {
			out = append(out, place{index: i, fix: -1})
			next = math.Max(next+grid, t+grid/2)
		}
	}
	return merge(out)
}

// merge sorts the places and keeps one for each sample: a standstill takes
// precedence over a fix, and a fix over neither.
func merge(p []place) []place {
	slices.SortFunc(p, func(a, b place) int {
		if a.index != b.index {
			return a.index - b.index
		}
		return b.precedence() - a.precedence()
	})
	return slices.CompactFunc(p, func(a, b place) bool { return a.index == b.index })
}

func (p place) precedence() int {
	switch {
	case p.still:
		return 2
	case p.fix >= 0:
		return 1
	}
	return 0
}

func (r *ride) inRest(t float64) bool {
	i, _ := slices.BinarySearchFunc(r.rest, t, func(s Span, t float64) int {
		if s.To < t {
			return -1
		}
		return 1
	})
	return i < len(r.rest) && r.rest[i].Contains(t)
}

// nodes makes the smoother's nodes from places, with the current noise.
func (r *ride) nodes(places []place) []kalman.Node {
	out, spans := r.skeleton(places)
	for i := range out {
		r.n.setNoise(&out[i], spans[i], r.fixes, places[i])
	}
	return out
}

// skeleton makes the nodes without their noise.
func (r *ride) skeleton(places []place) ([]kalman.Node, []span) {
	out := make([]kalman.Node, len(places))
	spans := make([]span, len(places))
	cut := 0
	for i, p := range places {
		nd := &out[i]
		nd.Index = p.index
		if i > 0 {
			nd.Step, spans[i] = r.step(places[i-1].index, p.index)
			for cut < len(r.cuts) && r.cuts[cut] <= p.index {
				if r.cuts[cut] > places[i-1].index {
					spans[i].extra += firstBiasSD * firstBiasSD
				}
				cut++
			}
			if i > 1 && (spans[i].gnssOnly > 0) != (spans[i-1].gnssOnly > 0) {
				spans[i].extra += aloneSD * aloneSD // from a bias to an acceleration, or back
			}
		}
		switch {
		case p.still:
			nd.Seen = true
			nd.Observation = kalman.Observation{R: restSD * restSD, Still: true}
		case p.fix >= 0:
			nd.Seen = true
			nd.Observation = r.observation(p)
		case i > 0 && r.stale[p.index]:
			nd.Seen = true
			nd.Observation = kalman.Observation{Still: true, Vague: true, Z: roughSpeedAt(r.s.T[p.index], r.fixes, r.before), R: vagueSD * vagueSD * vagueOver / nd.Step.H}
		}
	}
	return out, spans
}

// span is the part of a step that does not depend on the noise parameters.
type span struct {
	noisy    float64 // ∫ of the vibration's density as measured, m²/s²
	dark     float64 // s without motion samples
	gnssOnly float64 // s without the accelerometer
	way      float64 // m
	angle    float64 // rad turned
	extra    float64 // variance added to b where the mount changed, (m/s²)²
}

func (r *ride) step(i, j int) (kalman.Step, span) {
	s := r.s
	h := s.T[j] - s.T[i]
	st := kalman.Step{H: h}
	st.DV, st.DS = r.force.Over(i, j)
	st.RV = r.ref.speed[j] - r.ref.speed[i]
	sp := span{noisy: r.noisy[j] - r.noisy[i], dark: r.blind[j] - r.blind[i], way: (r.ref.speed[i] + r.ref.speed[j]) / 2 * h}
	if r.turned != nil {
		sp.angle = r.turned[j] - r.turned[i]
	}
	if r.gnssOnly != nil {
		sp.gnssOnly = r.gnssOnly[j] - r.gnssOnly[i]
	}
	st.Blind = sp.dark > h/2
	st.PhiK = math.Exp(-h / scaleMemory)
	st.QK = r.scaleSD() * r.scaleSD() * (1 - st.PhiK*st.PhiK)
	st.QD = lagWander * h
	return st, sp
}

// setNoise sets a node's noise.
func (n noise) setNoise(nd *kalman.Node, sp span, fixes []fix, p place) {
	st := &nd.Step
	st.Q = n.vibration*sp.noisy + blindDensity*sp.dark + n.jolt*sp.gnssOnly
	st.QB = standDensity*st.H + n.road*sp.way + turnDensity*sp.angle + n.walk*sp.gnssOnly + sp.extra
	st.PhiC = math.Exp(-st.H / n.memory)
	st.QC = n.drift * n.drift * (1 - st.PhiC*st.PhiC)
	if p.fix >= 0 && !p.still {
		f := fixes[p.fix]
		jitter := f.late * nd.Observation.Accel
		nd.Observation.R = n.white*n.white*f.said*f.said + f.extra + jitter*jitter
		if !f.halted {
			nd.Observation.R += crawlVariance(f.speed)
		}
	}
}

func (r *ride) scaleSD() float64 {
	switch {
	case r.alone:
		return aloneScaleSD
	case r.yaw != nil:
		return steadySD
	}
	return scaleSD
}

// observation is the measurement of a fix at its node. The time between the fix
// and the node's sample is bridged with the reference acceleration.
func (r *ride) observation(p place) kalman.Observation {
	f := r.fixes[p.fix]
	a := r.ref.accel[p.index]
	late := f.t - r.lag - r.s.T[p.index]
	curve, dcurve := r.ref.bent.at(r.s.T, r.ref.speed, p.index)
	return kalman.Observation{Z: f.speed - a*late - curve, Accel: a, Shape: dcurve}
}

// crawlVariance is the additional variance of a fix near standstill, m²/s². A
// receiver reports the magnitude of a velocity: near zero its noise, across the
// road as well as along it, appears as speed whatever its sign.
func crawlVariance(speed float64) float64 {
	short := math.Max(0, 1-speed/crawlSpeed)
	return crawlSD * crawlSD * short
}

// biasSD is the standard deviation of the initial bias or, without an
// accelerometer, of the initial acceleration, m/s².
func (r *ride) biasSD() float64 {
	if r.alone {
		return aloneSD
	}
	return firstBiasSD
}

// first is the initial state of a stretch that begins at a sample, with its
// covariance. Lag and shape are the prior values minus their current
// linearisation point, so that repeated passes do not count the same fixes
// twice.
func (r *ride) first(at int) (kalman.Vec, kalman.Sym) {
	var x, variance kalman.Vec
	x[kalman.V] = r.ref.speed[at]
	x[kalman.B] = 0
	x[kalman.D] = r.before - r.lag
	x[kalman.W] = -r.shape
	for i, sd := range [kalman.N]float64{1e-3, 2, r.biasSD(), r.n.drift, r.scaleSD(), r.lagSD, shapeSD} {
		variance[i] = sd * sd
	}
	return x, kalman.Diagonal(variance)
}
