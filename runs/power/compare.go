package power

import (
	"math"

	"stillair/runs/measure"
	"stillair/sensors/finding"
)

// Difference is the power of setup b minus that of setup a, over the speeds
// that all pairs of pulls of both went through, or else the speeds common to
// both curves.
type Difference struct {
	Speed []float64       // m/s
	Power []measure.Value // b − a, W
	Mean  measure.Value   // mean of b − a over the speeds as a fraction of a's mean
	DoF   float64         // of Mean's t interval
	// BandSE is Mean's standard error from the bands of the two curves, fully
	// correlated along each curve; it includes the road load of each setup.
	BandSE float64
	Pairs  int // pairs of pulls of the setup that has fewer
	// Repeated reports that Mean's uncertainty comes from the scatter of
	// repeated pairs and not from the bands of the two curves.
	Repeated bool
}

// Compare computes the difference of two curves. Common errors (the mass of the
// bike, its road load if the same was used for both) cancel.
func Compare(a, b *Curve) (Difference, error) {
	ia, ib, n := overlap(a.Speed, b.Speed)
	if n < 3 {
		return Difference{}, finding.Fail(codeSetupsApart)
	}
	repeated := false
	if from, to := pairedOver(a, b, ia, n); to-from >= 3 {
		ia, ib, n, repeated = ia+from, ib+from, to-from, true
	}
	d := Difference{Speed: a.Speed[ia : ia+n], Power: make([]measure.Value, n)}
	sameLoad := a.bike.Load == b.bike.Load
	for k := range n {
		i, j := ia+k, ib+k
		v := a.own.At(i, i) + b.own.At(j, j) + square(a.mass[i]-b.mass[j])
		for _, part := range [2]int{0, 1} {
			x, y := a.load[part][i], b.load[part][j]
			if sameLoad {
				v += square(x - y)
			} else {
				v += x*x + y*y
			}
		}
		d.Power[k] = measure.Value{X: b.Power[j].X - a.Power[i].X, SE: math.Sqrt(v)}
	}
	d.Pairs = min(len(a.Pulls), len(b.Pulls)) / 2
	d.mean(a, b, ia, ib, repeated)
	return d, nil
}

func square(x float64) float64 { return x * x }

// overlap finds where two even grids of the same step coincide.
func overlap(a, b []float64) (ia, ib, n int) {
	shift := int(math.Round((b[0] - a[0]) / gridStep))
	ia, ib = max(0, shift), max(0, -shift)
	return ia, ib, max(0, min(len(a)-ia, len(b)-ib))
}

// pairedOver is the range, among n points from point i of a, that all pairs of
// pulls of both curves went through; empty if one of them has fewer than two
// pairs.
func pairedOver(a, b *Curve, i, n int) (from, to int) {
	if len(a.pairs) < 2 || len(b.pairs) < 2 {
		return 0, 0
	}
	low, high := math.Max(a.both[0], b.both[0]), math.Min(a.both[1], b.both[1])
	for from < n && a.Speed[i+from] < low {
		from++
	}
	for to = from; to < n && a.Speed[i+to] <= high; {
		to++
	}
	return from, to
}

// mean compares the mean power over the common speeds. With at least two pairs
// of both setups its uncertainty is the scatter of the pairs, pooled over the
// setups, which includes whatever differs from pull to pull.
func (d *Difference) mean(a, b *Curve, ia, ib int, repeated bool) {
	n := len(d.Speed)
	base := meanOf(a.Power[ia : ia+n])
	d.Mean.X = meanOf(d.Power) / base
	for _, p := range d.Power {
		d.BandSE += p.SE / float64(n) / base // neighbouring points are correlated over much of a pull
	}
	if !repeated {
		d.Mean.SE, d.DoF = d.BandSE, math.Inf(1)
		return
	}
	na, nb := len(a.pairs), len(b.pairs)
	ma, ssa := scatter(a.pairs, ia, n)
	mb, ssb := scatter(b.pairs, ib, n)
	d.DoF = float64(na + nb - 2)
	d.Mean = measure.Value{
		X:  (mb - ma) / ma,
		SE: math.Sqrt((ssa+ssb)/d.DoF*(1/float64(na)+1/float64(nb))) / ma,
	}
	d.Repeated = true
}

func meanOf(v []measure.Value) float64 {
	var s float64
	for _, x := range v {
		s += x.X
	}
	return s / float64(len(v))
}

// scatter is the mean over n points from i on of each pair's power: their mean
// and the sum of squares about it.
func scatter(pairs [][]float64, i, n int) (mean, ss float64) {
	x := make([]float64, len(pairs))
	for k, p := range pairs {
		for _, w := range p[i : i+n] {
			x[k] += w / float64(n)
		}
		mean += x[k] / float64(len(pairs))
	}
	for _, v := range x {
		ss += square(v - mean)
	}
	return mean, ss
}
