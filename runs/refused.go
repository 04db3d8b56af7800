package runs

import (
	"math"
	"strings"

	"stillair/fusion"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// CodeDifferentBikes is what Across refuses different bikes with.
const CodeDifferentBikes = codeDifferentBikes

// refused returns an error where two of the rides cannot be compared: they are
// one recording, whose setups differ by nothing, or of different bikes, which
// differ by far more than a setup.
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

// differentBikes reports whether two rides name different bikes. Where one names
// none, it is not known, and anyone who compares them is believed.
func differentBikes(a, b *Result) bool {
	x, y := strings.TrimSpace(a.Ride.Bike), strings.TrimSpace(b.Ride.Bike)
	return x != "" && y != "" && !strings.EqualFold(x, y)
}

func bikesOf(a, b *Result) []finding.Arg {
	return []finding.Arg{finding.Text("a", a.Ride.Bike), finding.Text("b", b.Ride.Bike)}
}

// When two tracks are of one recording: as long as each other, and as fast at
// this many times. A file format rounds far below these; two rides that agree so
// well at every one of them are not ridden.
const (
	sameSeconds = 0.05 // s
	sameSpeed   = 0.05 // m/s
	sameTimes   = 200
)

// sameTrack reports whether two tracks are of the same samples, whatever was entered
// of the ride, and in whatever format they were kept.
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
	return fastest > sameSpeed // standing, all recordings are alike
}

// behind is the first sample, from i on, that is at least so long after the start.
func behind(t *fusion.Track, i int, since float64) int {
	for i+1 < len(t.T) && t.T[i]-t.T[0] < since {
		i++
	}
	return i
}
