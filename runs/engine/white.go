package engine

// whiteOrder is the order of the autoregression that whiten fits: enough for
// the springs' bounce and an anti-alias filter, too few to follow a line that
// sweeps through the frequencies as the bike gets faster.
const whiteOrder = 4

// whiten returns the prediction error of an autoregressive model fitted over
// the whole signal by the Yule-Walker equations and the Levinson-Durbin
// recursion (Box and Jenkins, Time Series Analysis, from memory). Noise that is
// stronger at some frequencies, as on a soft mount, would otherwise look like a
// line wherever an order passes or folds there.
func whiten(x []float64) []float64 {
	r := autocovariance(x, whiteOrder)
	if r[0] == 0 {
		return x
	}
	a, left := []float64{1}, r[0]
	for k := 1; k <= whiteOrder; k++ {
		sum := 0.0
		for j, c := range a {
			sum += c * r[k-j]
		}
		reflect := -sum / left
		next := make([]float64, k+1)
		for j := range next {
			if j < k {
				next[j] += a[j]
			}
			if j > 0 {
				next[j] += reflect * a[k-j]
			}
		}
		a, left = next, left*(1-reflect*reflect)
	}
	out := make([]float64, len(x))
	for i := range x {
		for j := 0; j <= min(i, whiteOrder); j++ {
			out[i] += a[j] * x[i-j]
		}
	}
	return out
}

// autocovariance is that of x about its mean for lags of 0 to most readings. A
// millionth more at lag 0 keeps the recursion from dividing by zero.
func autocovariance(x []float64, most int) []float64 {
	mean := 0.0
	for _, v := range x {
		mean += v / float64(len(x))
	}
	r := make([]float64, most+1)
	for k := range r {
		for i := k; i < len(x); i++ {
			r[k] += (x[i] - mean) * (x[i-k] - mean)
		}
	}
	r[0] *= 1 + 1e-6
	return r
}
