package marks

import (
	"math"
	"testing"

	"stillair/fusion"
)

// TestCreep: a bike that stands, rolls up at 0.26 m/s² for two seconds, which the
// smoother took for standing, and pushes off, is distinguished from one that stood, from one
// whose rider shook it, and from one that had stopped again.
func TestCreep(t *testing.T) {
	tests := []struct {
		name string
		a    func(t float64) float64 // before the push at 8 s, m/s²
		want float64                 // m/s; 0: it stood
	}{
		{"stood", func(float64) float64 { return 0 }, 0},
		{"leaned forward and back", func(t float64) float64 { return 0.3 * math.Sin(2*math.Pi*2*t) }, 0},
		{"crept up", func(t float64) float64 { return 0.26 * clamped(math.Ceil(t-6), 1) }, 0.52},
		{"crept up and let the clutch out", func(t float64) float64 {
			if t > 7.7 {
				return 0
			}
			return 0.26 * clamped(math.Ceil(t-6), 1)
		}, 0.44},
		{"had stopped again", func(t float64) float64 {
			if t > 4 {
				return 0
			}
			return 0.26 * clamped(math.Ceil(t-2), 1)
		}, 0},
	}
	for _, tt := range tests {
		tr := &fusion.Track{}
		for i := range 1200 {
			at := float64(i) / 100
			v, s, a := 0.0, 0.0, tt.a(at)
			if at > 8 {
				v, s, a = 5*(at-8), 2.5*(at-8)*(at-8), 5
			}
			tr.T, tr.V, tr.S, tr.A, tr.Noise = append(tr.T, at), append(tr.V, v), append(tr.S, s), append(tr.A, a), append(tr.Noise, 1e-4)
		}
		marks, start := OfLaunch(tr, sure{}, 8, 11.9, nil, nil)
		near(t, tt.name, start.Creep, tt.want, 0.08)
		if len(marks) == 0 || marks[0].Rollout.SE > 0.1 != (tt.want > 0) {
			t.Errorf("%s: rollout %+v", tt.name, marks[0].Rollout)
		}
	}
}
