package repair

import (
	"math"
	"slices"

	"stillair/sensors"
)

// Scale is the ratio of speeds to the distance between positions.
type Scale struct {
	Ratio float64 // speed relative to the positions: 1 for m/s, 3.6 for km/h
	SE    float64 // its standard error
	N     int     // number of stretches of road
}

// Limits for a stretch of road to be compared.
const (
	stretchTime  = 6.0  // s, in which the noise of two positions is small relative to the distance
	longestFixes = 5.0  // s between two fixes
	leastWay     = 6.0  // m/s on average
	mostBow      = 0.03 // of the chord: a bend with this sagitta is 0.24 % longer than its chord (8/3 of its square)
)

// ScaleByWay compares the integral of the speeds over straight stretches with
// the chords between the positions at their ends. Ratio is the median, SE that
// of a median of normal errors, doubled, since neighbouring stretches share a
// position and the drift of the receiver.
func ScaleByWay(fixes []sensors.Fix) Scale {
	var ratios []float64
	from, sum := 0, 0.0
	for i := 1; i < len(fixes); i++ {
		dt := fixes[i].T - fixes[i-1].T
		if dt > longestFixes || !fixes[i].HasPosition() || !fixes[from].HasPosition() {
			from, sum = i, 0
			continue
		}
		sum += dt * (fixes[i].Speed + fixes[i-1].Speed) / 2
		span := fixes[i].T - fixes[from].T
		if span < stretchTime {
			continue
		}
		way, _, _ := apart(fixes[from], fixes[i])
		if way > leastWay*span && bow(fixes[from:i+1], way) < mostBow {
			ratios = append(ratios, sum/way)
		}
		from, sum = i, 0
	}
	if len(ratios) == 0 {
		return Scale{Ratio: math.NaN(), SE: math.NaN()}
	}
	s := Scale{Ratio: quantile(slices.Clone(ratios), 0.5), N: len(ratios)}
	for i, r := range ratios {
		ratios[i] = math.Abs(r - s.Ratio)
	}
	// 1.4826 makes a standard deviation of the median deviation, √(π/2) the
	// standard error of a median.
	s.SE = 2 * math.Sqrt(math.Pi/2) * 1.4826 * quantile(ratios, 0.5) / math.Sqrt(float64(s.N))
	return s
}

// bow is the distance of the middle of a stretch from its chord, as a share of
// the chord; large if there is no position in the middle.
func bow(fixes []sensors.Fix, chord float64) float64 {
	middle := fixes[len(fixes)/2]
	_, e, n := apart(fixes[0], fixes[len(fixes)-1])
	_, me, mn := apart(fixes[0], middle)
	if b := math.Abs(e*mn-n*me) / (chord * chord); b >= 0 {
		return b
	}
	return 1
}

// SpeedFromWay calculates speeds for fixes in order of time that only have
// positions, by central differences, and leaves out those without neighbours.
// The effect of the positions' noise is estimated from the third differences,
// whose variance for white noise is 20 times that of a position, and becomes
// each fix's SpeedSD.
func SpeedFromWay(fixes []sensors.Fix) []sensors.Fix {
	noise := positionNoise(fixes)
	var out []sensors.Fix
	for i := 1; i+1 < len(fixes); i++ {
		a, f, b := fixes[i-1], fixes[i], fixes[i+1]
		dt := b.T - a.T
		if !a.HasPosition() || !b.HasPosition() || dt > 2*longestFixes {
			continue
		}
		way, _, _ := apart(a, b)
		f.SpeedSD = math.Max(noise*math.Sqrt2/dt, 0.05)
		// The length of a vector with noise in both directions is too large.
		f.Speed = math.Sqrt(math.Max(0, way*way/(dt*dt)-2*f.SpeedSD*f.SpeedSD))
		out = append(out, f)
	}
	return out
}

// positionNoise is the standard deviation of a position, m, for the larger of
// north and east, of the part that changes from one fix to the next.
func positionNoise(fixes []sensors.Fix) float64 {
	var east, north []float64
	for i := 0; i+3 < len(fixes); i++ {
		if fixes[i+3].T-fixes[i].T > 3*longestFixes {
			continue
		}
		var e, n [3]float64
		for k := range 3 {
			_, e[k], n[k] = apart(fixes[i+k], fixes[i+k+1])
		}
		east = append(east, math.Abs(e[2]-2*e[1]+e[0]))
		north = append(north, math.Abs(n[2]-2*n[1]+n[0]))
	}
	if s := 1.4826 * math.Max(quantile(east, 0.5), quantile(north, 0.5)) / math.Sqrt(20); s > 0 {
		return s
	}
	return 1 // m: not known
}
