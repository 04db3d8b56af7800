package sensors

import (
	"math"
	"slices"

	"stillair/sensors/finding"
	"stillair/sensors/median"
)

// Limits for comparing speeds with the distance between positions.
const (
	scaleOver   = 8.0   // s between the ends of a piece
	scaleWay    = 60.0  // m between them, at least, since positions have errors of metres
	scaleHole   = 2.5   // s between two fixes, at most
	scaleBend   = 0.1   // rad between the two halves of a piece, at most
	scalePieces = 6     // of them at least
	scaleFar    = 4.0   // standard deviations, beyond which a piece has jumped
	scaleItself = 0.001 // relative uncertainty of a scale from positions (bends within a piece, the slope of the road)
)

// SpeedScale is the factor by which the speeds of fixes are larger than those
// from the distance between their positions, with its standard error. It uses
// straight pieces of road: the integral of the speed over the distance of their
// ends, corrected for gentle bends by θ²/24. Receivers measure speed by the
// Doppler shift and need no scale; a factor is due to a wrong unit or
// conversion. ok is false if there is too little data.
func SpeedScale(fixes []Fix) (scale, se float64, ok bool) {
	var by, way []float64
	for i := 0; i < len(fixes); {
		j, travelled := pieceFrom(fixes, i)
		if j < 0 {
			i++
			continue
		}
		if chord, straight := chordOf(fixes, i, j); straight && chord > scaleWay {
			by, way = append(by, travelled), append(way, chord)
		}
		i = j
	}
	if len(by) < scalePieces {
		return 1, math.NaN(), false
	}
	by, way = withoutJumps(by, way)
	n := float64(len(by))
	var sumBy, sumWay, off float64
	for k := range by {
		sumBy, sumWay = sumBy+by[k], sumWay+way[k]
	}
	scale = sumBy / sumWay
	for k := range by {
		e := by[k] - scale*way[k]
		off += e * e
	}
	se = math.Sqrt(off*n/math.Max(n-1, 1)) / sumWay
	return scale, math.Hypot(se, scaleItself*scale), len(by) >= scalePieces
}

// pieceFrom is the end of a piece that begins at a fix, and the integral of the
// speed up to there; -1 if none begins.
func pieceFrom(fixes []Fix, i int) (end int, travelled float64) {
	if !fixes[i].HasPosition() {
		return -1, 0
	}
	for j := i + 1; j < len(fixes); j++ {
		h := fixes[j].T - fixes[j-1].T
		leaps := math.Abs(fixes[j].Speed-fixes[j-1].Speed) > hardest*math.Max(h, leastSpan)
		if !(h > 0 && h < scaleHole) || !fixes[j].HasPosition() || !(fixes[j].Speed >= 0) || leaps {
			return -1, 0
		}
		travelled += h * (fixes[j-1].Speed + fixes[j].Speed) / 2
		if fixes[j].T-fixes[i].T >= scaleOver {
			return j, travelled
		}
	}
	return -1, 0
}

// chordOf is the length of a piece by its positions, m, and whether it is
// straight enough.
func chordOf(fixes []Fix, i, j int) (way float64, straight bool) {
	mid := (i + j) / 2
	e1, n1 := between(fixes[i], fixes[mid])
	e2, n2 := between(fixes[mid], fixes[j])
	bend := math.Abs(math.Atan2(e1*n2-n1*e2, e1*e2+n1*n2))
	chord := math.Hypot(e1+e2, n1+n2)
	whole := 2 * bend // of the arc; the chords of its halves differ by half of it
	return chord * (1 + whole*whole/24), bend < scaleBend
}

// between is the position of b east and north of a, m.
func between(a, b Fix) (east, north float64) {
	// Lengths of a degree of latitude and of longitude on the WGS 84 ellipsoid, as
	// widely published.
	lat := a.LatDeg * math.Pi / 180
	perLat := 111132.954 - 559.822*math.Cos(2*lat) + 1.175*math.Cos(4*lat)
	perLon := 111412.84*math.Cos(lat) - 93.5*math.Cos(3*lat) + 0.118*math.Cos(5*lat)
	return (b.LonDeg - a.LonDeg) * perLon, (b.LatDeg - a.LatDeg) * perLat
}

// withoutJumps leaves out pieces whose ratio is far from the median.
func withoutJumps(by, way []float64) (b, w []float64) {
	ratio := make([]float64, len(by))
	for k := range by {
		ratio[k] = by[k] / way[k]
	}
	middle := median.Of(ratio)
	off := make([]float64, len(by))
	for k := range ratio {
		off[k] = math.Abs(ratio[k] - middle)
	}
	const perMedian = 1.48 // standard deviation over the median size of normal numbers
	limit := scaleFar * perMedian * math.Max(median.Of(off), 1e-4)
	for k := range by {
		if off[k] <= limit {
			b, w = append(b, by[k]), append(w, way[k])
		}
	}
	return b, w
}

const (
	codeSpeedScale finding.Code = "log.speed_scale"

	leastOff  = 0.008 // from which a scale is corrected
	surelyOff = 5.0   // standard errors from one
)

// ToScale returns the log with speeds scaled to its positions, if the two differ
// significantly, and the factor by which the speeds were too large: 1 with a
// standard error of zero if nothing was changed. A note says so; log itself is
// not changed.
func ToScale(log *Log) (out *Log, scale, se float64) {
	scale, se, ok := SpeedScale(log.Fixes)
	if !ok || math.Abs(scale-1) < math.Max(leastOff, surelyOff*se) {
		return log, 1, 0
	}
	changed := *log
	changed.Fixes = slices.Clone(log.Fixes)
	for i := range changed.Fixes {
		f := &changed.Fixes[i]
		f.Speed, f.SpeedSD = f.Speed/scale, f.SpeedSD/scale
	}
	changed.Notes = append(slices.Clone(log.Notes), Note{Count: 1, What: finding.New(codeSpeedScale, finding.Num("factor", scale).With(se))})
	return &changed, scale, se
}
