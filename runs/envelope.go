package runs

import (
	"math"

	"stillair/runs/effect"
	"stillair/runs/power"
	"stillair/sensors/finding"
)

// The full-throttle force of a bike in one gear is the envelope of its pulls; a
// pull below it by more than wind and gusts explain was in another gear or at
// part throttle, and does not belong in the same curve.
const (
	leastBelow  = 0.08 // variation of the power from pull to pull by engine and rider, relative, with a margin (PullsVary in package plan is 0.02)
	windFactor  = 3.0  // standard deviations of the difference due to wind
	leastShared = 4.0  // m/s of common speeds below which two runs are not compared
)

// atFullThrottle separates the pulls of one curve into those on the envelope
// and those below it.
func atFullThrottle(group []power.Pull, bike power.Bike, day power.Day) (on, below []power.Pull) {
	for _, p := range group {
		if weaker(p, group, bike, day) {
			below = append(below, p)
			continue
		}
		on = append(on, p)
	}
	return on, below
}

// weaker reports whether another pull in the same direction had significantly
// more power at the common speeds.
func weaker(p power.Pull, among []power.Pull, bike power.Bike, day power.Day) bool {
	for _, q := range among {
		if q.Dir != p.Dir {
			continue
		}
		lo, hi := math.Max(p.V[0], q.V[0]), math.Min(p.V[len(p.V)-1], q.V[len(q.V)-1])
		if hi-lo < leastShared {
			continue
		}
		own, other := meanPower(p, lo, hi, bike), meanPower(q, lo, hi, bike)
		wind := windFactor * windShare(p, lo, hi, other, bike.Load, day)
		if own < other*(1-math.Max(leastBelow, wind)) {
			return true
		}
	}
	return false
}

// crossing is the time from one speed to another of an accelerating bike, s.
func crossing(t, v []float64, lo, hi float64) float64 {
	at := func(level float64) float64 {
		for i := 1; i < len(v); i++ {
			if v[i] >= level {
				share := (level - v[i-1]) / math.Max(v[i]-v[i-1], 1e-9)
				return t[i-1] + math.Max(share, 0)*(t[i]-t[i-1])
			}
		}
		return t[len(t)-1]
	}
	return math.Max(at(hi)-at(lo), 0.05)
}

// meanPower is the mean power at the road while a pull goes from lo to hi: gain
// of kinetic energy plus road load, W.
func meanPower(p power.Pull, lo, hi float64, bike power.Bike) float64 {
	gained := (bike.Load.Mass + bike.RotatingMass) * (hi*hi - lo*lo) / 2
	return gained/crossing(p.T, p.V, lo, hi) + overTime(p, lo, hi, func(v float64) float64 { return bike.Load.Power(v).X })
}

// windShare is the relative standard deviation of the difference of two powers
// due to wind: dP = ρ·CdA·v²·dw for each of the two, averaged over time, most
// of which is spent at the higher speeds.
func windShare(p power.Pull, lo, hi, watts float64, l effect.Load, day power.Day) float64 {
	wind := math.Hypot(day.WindSD, day.GustSD)
	return math.Sqrt2 * l.Density * l.CdA.X * wind / watts * overTime(p, lo, hi, func(v float64) float64 { return v * v })
}

// overTime is the mean of f over the time that a pull spends between two speeds.
func overTime(p power.Pull, lo, hi float64, f func(v float64) float64) float64 {
	sum, n := f((lo+hi)/2), 1.0
	for _, v := range p.V {
		if v >= lo && v <= hi {
			sum, n = sum+f(v), n+1
		}
	}
	return sum / n
}

// cautionWeakRollOns adds a caution to each roll-on if another of the same
// setup accelerated significantly harder through the same speeds: gear and
// throttle of a roll-on are unknown, so the two cannot be compared.
func cautionWeakRollOns(result *Result, bike power.Bike, day power.Day) {
	var all []power.Pull
	var of []*Run
	for i := range result.Runs {
		if r := &result.Runs[i]; r.Kind == RollOn && r.Accepted() {
			p := power.Pull{ID: r.ID, Dir: 1}
			for t := r.Start; t <= r.End; t += 0.1 {
				p.T, p.V = append(p.T, t), append(p.V, result.Track.At(t).V)
			}
			if len(p.T) > 1 {
				all, of = append(all, p), append(of, r)
			}
		}
	}
	for k, r := range of {
		var same []power.Pull
		for j, other := range of {
			if other.Setup == r.Setup && math.Abs(math.Remainder(other.BearingDeg-r.BearingDeg, 360)) < parallelWithin {
				same = append(same, all[j])
			}
		}
		if weaker(all[k], same, bike, day) {
			r.Cautions = append(r.Cautions, finding.New(codeWeakRollOn))
		}
	}
}
