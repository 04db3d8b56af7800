package runs

import (
	"math"
	"slices"

	"stillair/runs/power"
	"stillair/sensors"
)

// Limits for opposite pulls: directions within so many degrees of one line, and
// so many seconds apart.
const (
	parallelWithin = 25.0
	pairWithin     = 30 * 60.0
)

// Time during which the throttle may still be opening at the start of a
// detected pull, and closing at its end, s.
const opening, closing = 0.3, 0.2

// gearedPull is a pull with its setup and gear.
type gearedPull struct {
	pull    power.Pull
	setup   string
	bearing float64 // degrees; NaN: not known
	drive   drive
	Revs
}

// pullsOf extracts the accepted pulls from the track, in order of time, and
// sets the engine speed of each run.
func pullsOf(result *Result, log *sensors.Log, ride sensors.Ride) []gearedPull {
	var accepted []*Run
	for i := range result.Runs {
		if r := &result.Runs[i]; r.Kind == Pull && r.Accepted() {
			accepted = append(accepted, r)
		}
	}
	tacho := newTachometer(log, result.Track, ride, accepted)
	out := make([]gearedPull, len(accepted))
	parallel(len(accepted), func(i int) {
		r := accepted[i]
		out[i] = gearedPull{setup: r.Setup, bearing: r.BearingDeg, pull: power.OfTrack(result.Track, r.Start+opening, r.End-closing)}
		out[i].pull.ID = r.ID
		out[i].Revs = tacho.revs(*r)
		r.Revs = &out[i].Revs
		out[i].drive = newDrive(result.Track, r.Start, r.End, math.NaN(), ride.Mass, false)
		for _, push := range result.pushes {
			if push.beside(r.Start, r.End) {
				out[i].drive.lines = push.lines
			}
		}
	})
	for i := range out {
		out[i].drive.way = wayOf(out[i].bearing, out[0].bearing)
	}
	return out
}

// pairPulls sets the directions of the pulls of one curve, and numbers
// consecutive opposite ones as pairs.
func pairPulls(group []gearedPull) []power.Pull {
	var out []power.Pull
	pairs, open := 0, -1
	for _, g := range group {
		p := g.pull
		p.Dir = 1 // also if it is not known: as if all had the same direction, which gives the wide band
		if turn := math.Remainder(g.bearing-group[0].bearing, 360); math.Abs(turn) > 180-parallelWithin {
			p.Dir = -1
		}
		if open >= 0 && out[open].Dir != p.Dir && p.T[0]-out[open].T[0] < pairWithin {
			pairs++
			out[open].Pair, p.Pair = pairs, pairs
			open = -1
		} else {
			open = len(out)
		}
		out = append(out, p)
	}
	return out
}

// bySetupAndGear groups pulls that belong in one curve.
func bySetupAndGear(pulls []gearedPull) [][]gearedPull {
	o := throttles{}
	groups := make([][]int, len(pulls))
	for i, p := range pulls {
		o.drives, groups[i] = append(o.drives, p.drive), []int{i}
	}
	o.find()
	for merged := true; merged; {
		merged = false
		for i := 0; i < len(groups); i++ {
			for j := len(groups) - 1; j > i; j-- {
				if oneCurve(pulls, &o, groups[i], groups[j]) {
					groups[i], merged = append(groups[i], groups[j]...), true
					groups = slices.Delete(groups, j, j+1)
				}
			}
		}
	}
	out := make([][]gearedPull, len(groups))
	for k, group := range groups {
		slices.Sort(group)
		for _, i := range group {
			out[k] = append(out[k], pulls[i])
		}
	}
	return out
}

// oneCurve reports whether the pulls of two groups belong in one curve: at
// least one pull of each belongs with the other group, and none contradicts it.
func oneCurve(pulls []gearedPull, o *throttles, a, b []int) bool {
	any := false
	for _, i := range a {
		for _, j := range b {
			one, apart := belong(pulls[i], pulls[j], o.with[i][j])
			if apart {
				return false
			}
			any = any || one
		}
	}
	return any
}

// belong reports whether two pulls belong in one curve, or certainly do not. In
// the same gear they do if they have common speeds. If the gear of one is
// unknown, they do if they have the same force at all common speeds, and do not
// if one has more anywhere.
func belong(a, b gearedPull, r relation) (one, apart bool) {
	if a.setup != b.setup {
		return false, true
	}
	if a.known() && b.known() {
		same := math.Abs(a.RPMPerMPS/b.RPMPerMPS-1) < sameGear
		lo := math.Max(a.pull.V[0], b.pull.V[0])
		hi := math.Min(a.pull.V[len(a.pull.V)-1], b.pull.V[len(b.pull.V)-1])
		return same && hi-lo > leastShared, !same
	}
	if _, _, two := a.drive.gearing(b.drive); two {
		return false, true
	}
	return r.alike(), r.common && !r.alike()
}

// outdoneBy is the group of the same setup with a pull of significantly more
// power than the only pull of a group in an unknown gear, which may have been
// at part throttle; −1 if there is none.
func outdoneBy(groups [][]gearedPull, lone int, bike power.Bike, day power.Day) int {
	one := groups[lone]
	if len(one) > 1 || one[0].known() {
		return -1
	}
	return slices.IndexFunc(groups, func(g []gearedPull) bool {
		if g[0].setup != one[0].setup || g[0].pull.ID == one[0].pull.ID {
			return false
		}
		all := pairPulls(append(slices.Clone(one), g...))
		return weaker(all[0], all[1:], bike, day)
	})
}

// sameGear is the largest relative difference of two ratios found in one gear.
const sameGear = 0.04

// revsOfGroup is the most certain engine speed of a group. If there is none, it
// tells whether vibration and sound contradict each other.
func revsOfGroup(group []gearedPull) Revs {
	best := noRevs()
	for _, p := range group {
		switch {
		case p.Gear != "":
			return p.Revs
		case p.known():
			best = p.Revs
		case !best.known():
			best.Split = best.Split || p.Split
		}
	}
	return best
}
