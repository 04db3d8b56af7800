package runs

import (
	"math"
	"strings"

	"stillair/fusion"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// CodeDifferentBikes is the code of Across's error for different bikes.
const CodeDifferentBikes = codeDifferentBikes

// refused returns an error if two of the rides cannot be compared because they
// are the same recording or of different bikes.
func refused(rides []Named, a Asked) error {
	for i, x := range rides {
		for _, y := range rides[i+1:] {
			if sameTrack(x.Result.Track, y.Result.Track) {
				return &sensors.InputError{What: finding.New(codeSameRecording, finding.Text("a", x.Name), finding.Text("b", y.Name)),
					Remedy: finding.New(codeTwoRecordings)}
			}
			if !a.Bikes && differentBikes(x.Result, y.Result) {
				return &sensors.InputError{What: finding.New(codeDifferentBikes, bikesOf(x.Result, y.Result)...), Remedy: finding.New(codeOneBike)}
			}
		}
	}
	return nil
}

// differentBikes reports whether two rides name different bikes; false if one
// names none.
func differentBikes(a, b *Result) bool {
	x, y := strings.TrimSpace(a.Ride.Bike), strings.TrimSpace(b.Ride.Bike)
	return x != "" && y != "" && !strings.EqualFold(x, y)
}

func bikesOf(a, b *Result) []finding.Arg {
	return []finding.Arg{finding.Text("a", a.Ride.Bike), finding.Text("b", b.Ride.Bike)}
}

// Limits for two tracks of one recording: equal length, and equal speed at this
// many times. The rounding of file formats is far below these; no two rides
// agree so well at all of them.
const (
	sameSeconds = 0.05 // s
	sameSpeed   = 0.05 // m/s
	sameTimes   = 200
)

// sameTrack reports whether two tracks come from the same samples, whatever the
// entries and the file format.
func sameTrack(a, b *fusion.Track) bool {
	if a == nil || b == nil || len(a.T) < 2 || len(b.T) < 2 {
		return false
	}
	long := a.T[len(a.T)-1] - a.T[0]
	if math.Abs(long-(b.T[len(b.T)-1]-b.T[0])) > sameSeconds {
		return false
	}
	fastest := 0.0
	var ka, kb int
	for k := range sameTimes {
		since := long * float64(k) / sameTimes
		ka, kb = behind(a, ka, since), behind(b, kb, since)
		if math.Abs(a.V[ka]-b.V[kb]) > sameSpeed {
			return false
		}
		fastest = math.Max(fastest, a.V[ka])
	}
	return fastest > sameSpeed // at a standstill all recordings are alike
}

// behind is the first sample, from i on, at least since seconds after the
// start.
func behind(t *fusion.Track, i int, since float64) int {
	for i+1 < len(t.T) && t.T[i]-t.T[0] < since {
		i++
	}
	return i
}
