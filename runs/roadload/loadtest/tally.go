package loadtest

import (
	"fmt"
	"math"

	"stillair/runs/roadload"
)

// Tally accumulates the results of the fits of a world.
type Tally struct {
	N                        int
	CdAHeld, CrrHeld         int        // number of bands including assumptions that contain the truth
	NoiseHeld                int        // number of intervals of CdA from noise alone that do
	ForceHeld                int        // number of tests with all forces within 2 % or their band
	CdABias, CrrBias         float64    // relative, summed
	Force                    [3]float64 // relative error at 50, 80, 100 km/h, summed
	CdANoise, CdASE, ForceSE float64    // relative, summed
}

// Add accumulates a fit of one setup.
func (c *Tally) Add(w World, e *roadload.Estimate) {
	l := e.Loads[0]
	c.N++
	cda, crr := l.CdA.X-w.CdA, l.Crr.X-w.Rolls()
	all := [2]float64{math.Hypot(l.CdA.SE, e.Assumed.SE([]float64{1, 0})), math.Hypot(l.Crr.SE, e.Assumed.SE([]float64{0, 1}))}
	c.CdABias += cda / w.CdA
	c.CrrBias += crr / w.Rolls()
	c.CdANoise += l.CdA.SE / w.CdA
	c.CdASE += all[0] / w.CdA
	if math.Abs(cda) < 1.96*all[0] {
		c.CdAHeld++
	}
	if math.Abs(crr) < 1.96*all[1] {
		c.CrrHeld++
	}
	if l.CdACI[0] < w.CdA && w.CdA < l.CdACI[1] {
		c.NoiseHeld++
	}
	held := true
	for i, kmh := range []float64{50, 80, 100} {
		f := e.Force(0, kmh/3.6, w.Entries(roadload.DefaultOptions(0.5)))
		off := f.X/w.Force(kmh/3.6) - 1
		c.Force[i] += off
		c.ForceSE += f.SE / f.X / 3
		held = held && (math.Abs(off) < 0.02 || math.Abs(off) < 1.96*f.SE/f.X)
	}
	if held {
		c.ForceHeld++
	}
}

func (c *Tally) String() string {
	n := float64(c.N) / 100
	return fmt.Sprintf("n %d: CdA %+.1f %% held %.0f (noise alone %.0f; se %.1f, %.1f with assumed); Crr %+.1f %% held %.0f; force %+.1f %+.1f %+.1f %% se %.1f held %.0f", c.N,
		c.CdABias/n, float64(c.CdAHeld)/n, float64(c.NoiseHeld)/n, c.CdANoise/n, c.CdASE/n, c.CrrBias/n, float64(c.CrrHeld)/n,
		c.Force[0]/n, c.Force[1]/n, c.Force[2]/n, c.ForceSE/n, float64(c.ForceHeld)/n)
}
