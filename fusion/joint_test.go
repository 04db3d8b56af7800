package fusion_test

import (
	"math"
	"math/rand/v2"
	"sync"
	"testing"

	"gonum.org/v1/gonum/mat"

	"stillair/fusion"
)

// launchTrack is one smoothed ride of a few launches, shared by the tests that
// only read it.
var launchTrack = sync.OnceValues(func() (*fusion.Track, error) {
	ride, err := runFewLaunches()
	if err != nil {
		return nil, err
	}
	return fusion.Smooth(ride.Log, fusion.Options{})
})

func sharedTrack(t *testing.T) *fusion.Track {
	t.Helper()
	tr, err := launchTrack()
	if err != nil {
		t.Fatal(err)
	}
	return tr
}

func TestTrackIsWhole(t *testing.T) {
	tr := sharedTrack(t)
	n := len(tr.T)
	for name, x := range map[string][]float64{"V": tr.V, "A": tr.A, "S": tr.S, "VSD": tr.VSD, "ASD": tr.ASD,
		"Force": tr.Force, "Noise": tr.Noise, "Yaw": tr.Yaw, "Shake": tr.Shake} {
		if len(x) != n {
			t.Errorf("%s has %d entries, T %d", name, len(x), n)
		}
		for i := range x {
			if math.IsNaN(x[i]) || math.IsInf(x[i], 0) {
				t.Fatalf("%s[%d] is %v", name, i, x[i])
			}
		}
	}
	for i := 1; i < n; i++ {
		if tr.T[i] <= tr.T[i-1] {
			t.Fatalf("time does not rise at %d", i)
		}
		if tr.V[i] < 0 || tr.VSD[i] <= 0 || tr.ASD[i] <= 0 {
			t.Fatalf("sample %d: speed %v ± %v, acceleration ± %v", i, tr.V[i], tr.VSD[i], tr.ASD[i])
		}
		// distance is the integral of the speed: by the trapezium rule, to the
		// accuracy of the smoother within one interval
		if d := tr.S[i] - tr.S[i-1] - (tr.V[i]+tr.V[i-1])/2*(tr.T[i]-tr.T[i-1]); math.Abs(d) > 0.01 {
			t.Fatalf("at %.2f s distance and speed part by %.3f m in one sample", tr.T[i], d)
		}
	}
}

// TestJointAgrees compares the different ways to get a covariance.
func TestJointAgrees(t *testing.T) {
	tr := sharedTrack(t)
	rng := rand.New(rand.NewPCG(1, 2))
	for range 200 {
		i := rng.IntN(len(tr.T))
		j := min(i+rng.IntN(800), len(tr.T)-1)
		a, b := tr.Joint(i, j), tr.Joint(j, i)
		for x := range 4 {
			for y := range 4 {
				if d := a.Cov[x][y] - a.Cov[y][x]; math.Abs(d) > 1e-9*(1+math.Abs(a.Cov[x][y])) {
					t.Fatalf("samples %d, %d: covariance is not symmetric", i, j)
				}
				if d := a.Cov[x][y] - b.Cov[(x+2)%4][(y+2)%4]; math.Abs(d) > 1e-9*(1+math.Abs(a.Cov[x][y])) {
					t.Fatalf("samples %d, %d: exchanged, the covariance differs by %g", i, j, d)
				}
			}
		}
		if d := math.Sqrt(a.Cov[1][1]) - tr.VSD[i]; math.Abs(d) > 1e-9 {
			t.Fatalf("sample %d: speed's uncertainty differs by %g", i, d)
		}
		terms := []fusion.Term{{T: tr.T[i], S: -1, V: 0.5}, {T: tr.T[j], S: 1, V: 2}}
		w := [4]float64{-1, 0.5, 1, 2}
		var want float64
		for x := range 4 {
			for y := range 4 {
				want += w[x] * w[y] * a.Cov[x][y]
			}
		}
		if got := tr.Cov(terms, terms); math.Abs(got-want) > 1e-6*(math.Abs(want)+1e-3) {
			t.Fatalf("samples %d, %d: variance of a combination %g, want %g", i, j, got, want)
		}
	}
}

// TestSpeedCovIsACovariance checks that the matrix for a fit is symmetric,
// positive definite and consists of the same numbers as Joint.
func TestSpeedCovIsACovariance(t *testing.T) {
	tr := sharedTrack(t)
	var times []float64
	for at := tr.T[0] + 20; at < tr.T[0]+50; at += 0.37 {
		times = append(times, at)
	}
	c := tr.SpeedCov(times)
	sym := mat.NewSymDense(len(times), nil)
	for i := range times {
		for j := range i + 1 {
			sym.SetSym(i, j, c[i][j])
			if c[i][j] != c[j][i] {
				t.Fatalf("%d, %d: not symmetric", i, j)
			}
			if want := tr.JointAt(times[j], times[i]).Cov[1][3]; math.Abs(c[i][j]-want) > 1e-12+1e-6*math.Abs(want) {
				t.Fatalf("%d, %d: %g, Joint says %g", i, j, c[i][j], want)
			}
		}
	}
	var eigen mat.EigenSym
	if !eigen.Factorize(sym, false) {
		t.Fatal("no eigenvalues")
	}
	if least := eigen.Values(nil)[0]; least < -1e-12 {
		t.Errorf("smallest eigenvalue %g is negative", least)
	}
}

// TestDistanceBetweenMarks: over a launch nearly all of the distance's
// uncertainty is common and cancels; the two variances alone would say metres.
func TestDistanceBetweenMarks(t *testing.T) {
	tr := sharedTrack(t)
	last := tr.T[len(tr.T)-1]
	alone := tr.SD([]fusion.Term{{T: last, S: 1}})
	way := tr.SD([]fusion.Term{{T: last - 10, S: -1}, {T: last, S: 1}})
	if way > alone/2 {
		t.Errorf("way of the last 10 s ± %.2f m, whole ride ± %.2f m", way, alone)
	}
}
