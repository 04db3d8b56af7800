package repair

import (
	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/units"
)

// ForceSize returns the size in the file's unit of the specific force without
// its vibration: the median over the ride of its mean over a second. It is
// close to gravity, since a bike's own acceleration is perpendicular to it and
// rarely large.
func ForceSize(motion []sensors.Motion) float64 {
	bs := blocks(motion)
	var sizes []float64
	const second = int(1 / blockLength)
	for i := 0; i < len(bs); i += second {
		var sum r3.Vec
		n := 0.0
		for _, b := range bs[i:min(i+second, len(bs))] {
			sum, n = r3.Add(sum, r3.Scale(b.n, b.force)), n+b.n
		}
		sizes = append(sizes, r3.Norm(sum)/n)
	}
	return quantile(sizes, 0.5)
}

// ForceUnit returns the name of the unit in which a specific force has the given
// size, and its value in m/s²; "" if the force does not contain gravity. The
// bounds are 0.7 and 1.4 times gravity.
func ForceUnit(size float64) (name string, inMPS2 float64) {
	for _, u := range []struct {
		name string
		mps2 float64
	}{{"m/s²", 1}, {"g", units.StandardGravity}, {"mg", units.StandardGravity / 1000}} {
		if s := size * u.mps2 / units.StandardGravity; s > 0.7 && s < 1.4 {
			return u.name, u.mps2
		}
	}
	return "", 0
}

// mostForce in m/s²; the accelerometers of phones end at 16 g (common practice).
const mostForce = 1000

// SpikesDropped is the finding about n samples dropped by DropSpikes.
func SpikesDropped(file string, n int) sensors.Note {
	return sensors.Note{File: file, Count: n, What: finding.New("force.impossible", finding.Acceleration("most", mostForce))}
}

// DropSpikes removes, in place, samples beyond the range of a phone's
// accelerometer, and returns their number.
func DropSpikes(motion []sensors.Motion) ([]sensors.Motion, int) {
	kept := motion[:0]
	for _, m := range motion {
		if r3.Norm(m.Force) < mostForce {
			kept = append(kept, m)
		}
	}
	return kept, len(motion) - len(kept)
}
