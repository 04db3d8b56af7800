package marks

import (
	"math"
	"math/rand/v2"
	"testing"

	"stillair/fusion"
)

// shared is the covariance of a speed with a constant error.
type shared float64

func (s shared) SD(terms []fusion.Term) float64 {
	sum := 0.0
	for _, t := range terms {
		sum += t.V
	}
	return math.Abs(sum) * float64(s)
}

func (s shared) SpeedCov(times []float64) [][]float64 {
	c := make([][]float64, len(times))
	for i := range c {
		c[i] = make([]float64, len(times))
		for j := range c[i] {
			c[i][j] = float64(s * s)
		}
	}
	return c
}

// shifting is a speed that rises by 3 m/s each second except for a gear change
// from 4 to 4.4 s, in which the bike slows by 0.8 m/s each second.
func shifting(t float64) float64 {
	return 3*math.Min(t, 4) - 0.8*clamped(t-4, 0.4) + 3*clamped(t-4.4, 1e9)
}

func clamped(x, high float64) float64 { return math.Max(0, math.Min(x, high)) }

// TestSpeedsNearAGearChange: a speed error of 0.2 m/s moves the time of a speed
// passed well before or after a gear change by 0.07 s, and that of one passed just
// under it by 0.6 s or not at all. The speeds lie anywhere around the change; 95 %
// intervals must have their nominal coverage, and no error may reach five standard
// errors, as it would if the change were ignored.
func TestSpeedsNearAGearChange(t *testing.T) {
	const sd, n = 0.2, 4000
	rng := rand.New(rand.NewPCG(1, 2))
	held, square, worst := 0.0, 0.0, 0.0
	for range n {
		level, e := 10+3.5*rng.Float64(), sd*rng.NormFloat64()
		exactly := trace{}
		recorded := trace{}
		for i := range 700 {
			at := float64(i) / 100
			exactly.t, exactly.v = append(exactly.t, at), append(exactly.v, shifting(at))
			recorded.t, recorded.v = append(recorded.t, at), append(recorded.v, shifting(at)+e)
		}
		truth := exactly.whenSpeed(shared(1e-6), level, 0, 1).x
		got := recorded.whenSpeed(shared(sd), level, 0, 1)
		z := (got.x - truth) / got.value(shared(sd)).SE
		square += z * z / n
		worst = math.Max(worst, math.Abs(z))
		if math.Abs(z) < 1.96 {
			held += 1. / n
		}
	}
	t.Logf("intervals hold %.1f %%, errors %.2f of what is said, %.1f at worst", 100*held, math.Sqrt(square), worst)
	if held < 0.93 || held > 0.985 || math.Abs(math.Sqrt(square)-1) > 0.1 {
		t.Errorf("intervals hold %.1f %%, errors are %.2f of what is said", 100*held, math.Sqrt(square))
	}
	if worst > 5 {
		t.Errorf("an error is %.1f of what is said", worst)
	}
}
