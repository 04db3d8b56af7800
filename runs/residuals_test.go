package runs

import (
	"math/rand/v2"
	"testing"

	"stillair/runs/roadload"
	"stillair/sensors/finding"
)

// leaving makes a result whose pairs have residuals of a given shape: out and
// back are functions of the position between the highest speed and the lowest.
func leaving(seed uint64, pairs int, out, back func(share float64) float64) *Result {
	rng := rand.New(rand.NewPCG(seed, 7))
	e := &roadload.Estimate{}
	for p := range pairs {
		for _, dir := range []float64{1, -1} {
			f := roadload.RunFit{ID: len(e.Runs) + 1, Pair: p + 1, Dir: dir}
			drift := 0.0
			for i := range 60 {
				share := float64(i) / 59
				drift = 0.9*drift + 0.04*rng.NormFloat64()
				left := out(share)
				if dir < 0 {
					left = back(share)
				}
				v := 30 - 20*share
				f.T, f.Fit, f.V = append(f.T, float64(i)), append(f.Fit, v), append(f.V, v+left+drift+0.05*rng.NormFloat64())
			}
			e.Runs = append(e.Runs, f)
		}
	}
	return &Result{Estimate: e}
}

// TestResidualsSeparated uses residuals of known shape: parts with opposite
// signs in the two directions are attributed to road and wind, common parts to
// the model.
func TestResidualsSeparated(t *testing.T) {
	none := func(float64) float64 { return 0 }
	wave := func(s float64) float64 { return 0.5 * (s - 0.5) }
	for _, c := range []struct {
		name      string
		out, back func(float64) float64
		want      finding.Code
		not       finding.Code
	}{
		{"opposite", wave, func(s float64) float64 { return -wave(s) }, codeOppositeLeft, codeAlikeLeft},
		{"alike", wave, wave, codeAlikeLeft, codeOppositeLeft},
		{"nothing", none, none, codeNothingLeft, codeAlikeLeft},
	} {
		got := leaving(3, 6, c.out, c.back).Residuals()
		if !finding.Any(got.Findings, c.want) || finding.Any(got.Findings, c.not) {
			t.Errorf("%s: %v", c.name, got.Findings)
		}
		if len(got.Bins) != residualBins {
			t.Errorf("%s: %d bins", c.name, len(got.Bins))
		}
	}
}

// TestResidualsByLuck counts how often correlated errors alone are taken for a
// common residual: the significance level is 5 % in total.
func TestResidualsByLuck(t *testing.T) {
	none := func(float64) float64 { return 0 }
	const tests = 400
	found := 0
	for seed := range uint64(tests) {
		if r := leaving(seed+100, 3+int(seed%6), none, none).Residuals(); !finding.Any(r.Findings, codeNothingLeft) {
			found++
		}
	}
	if found > tests*8/100 {
		t.Errorf("%d of %d by luck", found, tests)
	}
	t.Logf("%d of %d by luck", found, tests)
}
