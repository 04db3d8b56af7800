package fusion

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/fusion/internal/motion"
	"stillair/fusion/mount"
	"stillair/sensors"
)

// TestSwingShares simulates starts with known parameters: two lines of 1.1 and
// 2.2 Hz in different directions from 0.7 s before the push, which builds up
// over 0.35 s, and white noise from then on. The shares of the swing along the
// road follow from the directions by hand; the fit must agree with them within
// its own covariance, and leave at most a tenth of the swing.
func TestSwingShares(t *testing.T) {
	starts := 60
	if testing.Short() {
		starts = 12
	}
	rng := rand.New(rand.NewPCG(3, 4))
	var square, left, before float64
	for range starts {
		// (left, up) of the lines are (1, 0) and (0, 1) turned by any angle
		sin, cos := math.Sincos(2 * math.Pi * rng.Float64())
		along := [2]float64{rng.NormFloat64(), rng.NormFloat64()}
		want := [2]float64{cos*along[0] - sin*along[1], sin*along[0] + cos*along[1]}
		phase := [2]float64{rng.Float64(), rng.Float64()}
		samples := make([]sensors.Motion, 1200)
		swung := make([]float64, len(samples))
		force := make([]float64, len(samples))
		for i := range samples {
			at := float64(i) / 100
			v := r3.Vec{Z: 9.81}
			noise := 0.02
			if at > 5.3 {
				a := 3 * math.Sin(2*math.Pi*(1.1*at+phase[0]))
				b := 2 * math.Sin(2*math.Pi*(2.2*at+phase[1]))
				swung[i] = along[0]*a + along[1]*b
				v = r3.Add(v, r3.Vec{X: swung[i], Y: cos*a - sin*b, Z: sin*a + cos*b})
			}
			if at > 6 {
				noise = 0.3
				v.X += 8 * math.Min(1, (at-6)/0.35)
			}
			v = r3.Add(v, r3.Vec{X: noise * rng.NormFloat64(), Y: noise * rng.NormFloat64(), Z: noise * rng.NormFloat64()})
			samples[i], force[i] = sensors.Motion{T: at, Force: v, Turn: r3.Vec{X: math.NaN(), Y: math.NaN(), Z: math.NaN()}}, v.X
		}
		s := motion.New(samples)
		st, ok := newStart(s, []mount.Mount{{To: 12, Forward: r3.Vec{X: 1}, Up: r3.Vec{Z: 1}}}, force, Span{From: 0, To: 5.2})
		if !ok || st.swings() < swingLeast {
			t.Fatalf("the swing is not seen: %v m/s³", st.swings())
		}
		sw, ok := st.fit()
		if !ok {
			t.Fatal("no fit")
		}
		for k := range want {
			square += math.Pow(sw.share[k]-want[k], 2) / sw.cov[k][k] / float64(2*starts)
		}
		swing := append([]float64(nil), force...)
		st.take(sw, force, make([]float64, len(force)), map[int]r3.Vec{})
		for i := 530; i < 600; i++ { // noise is small before the push
			left += force[i] * force[i]
			before += swing[i] * swing[i]
		}
	}
	t.Logf("errors of the shares %.2f of what is said; %.3f of the swing are left", math.Sqrt(square), math.Sqrt(left/before))
	if z := math.Sqrt(square); z > 1.4 {
		t.Errorf("the shares err by %.2f of what is said", z)
	}
	if r := math.Sqrt(left / before); r > 0.1 {
		t.Errorf("%.3f of the swing are left", r)
	}
}

// TestInverse compares the elimination with the identity matrix.
func TestInverse(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	var p products
	for range 20 {
		var v [references + 1]float64
		for i := range v {
			v[i] = rng.NormFloat64()
		}
		p.add(1, &v)
	}
	var m [references][references]float64
	for i := range m {
		copy(m[i][:], p[i][:references])
	}
	inv, ok := inverse(m)
	if !ok {
		t.Fatal("not inverted")
	}
	for i := range m {
		col := times(&m, &inv[i])
		for j, x := range col {
			if want := map[bool]float64{true: 1}[i == j]; math.Abs(x-want) > 1e-9 {
				t.Errorf("product has %v at %d, %d", x, i, j)
			}
		}
	}
	if _, ok := inverse([references][references]float64{}); ok {
		t.Error("a matrix of zeros was inverted")
	}
}
