package detect

import (
	"math"

	"stillair/runs/marks"
	"stillair/sensors/finding"
	"stillair/sensors/units"
)

// Limits of what counts as full throttle. They are set so that the smallest
// motorcycle allowed on a motorway passes and brisk town riding does not;
// common practice, tuned on simulated rides.
const (
	launchPower = 24.0 // W/kg of kinetic energy up to 60 km/h: 5.8 s
	launchShare = 0.6  // of the best launch of the ride; a slowly engaged clutch costs a quarter, a hill or head wind less
	launchSpeed = 60 * units.KMH
	rollPower   = 34.0           // W/kg of thrust
	rollShare   = 0.18           // of the best thrust power of the ride at that speed
	wholePower  = 60.0           // W/kg of thrust through several gears
	wholeShare  = 0.6            // of the best, through several gears
	pullGain    = 35 * units.KMH // least gain of speed of a pull
	leastCover  = 0.92           // share of a pair of speeds from which a push was intended as a roll-on
	pullShare   = 0.3            // of the best, for a pull
	strongPush  = 80.0           // W/kg; not reached in everyday riding through the gears
	pullRatio   = 1.5            // highest over lowest speed of a pull
	pullTime    = 3.0            // s
	steadiness  = 0.55           // minimum share of the trend that the acceleration may fall to
	eased       = 0.6            // and its minimum decrease when the throttle is eased, m/s²
)

// launches classifies the accelerations from standstill.
func launches(s *series, pushes []push) []Found {
	best := 0.0
	for _, p := range pushes {
		if p.standing {
			best = math.Max(best, launchHardness(s, p))
		}
	}
	enough := launchPower
	if machineLimited(s, pushes, best) {
		enough = math.Min(launchPower, slowLaunch)
	}
	var out []Found
	for _, p := range pushes {
		hard := launchHardness(s, p)
		if !p.standing || hard < 0.8*enough || hard < 0.3*best {
			continue
		}
		f := p.found(s, Launch)
		switch {
		case s.v[p.to] < launchSpeed && hard < enough:
			continue
		case s.v[p.to] < launchSpeed:
			f.Reasons = append(f.Reasons, finding.New(codeLaunchShort, finding.Speed("at", s.v[p.to]), finding.Speed("needed", launchSpeed)))
		case hard < enough || hard < launchShare*best:
			f.Reasons = append(f.Reasons, notFull(hard, best))
		}
		out = append(out, f)
	}
	return out
}

// Starts at part throttle repeat poorly: everyday starts differ by a quarter
// and more (common practice), so that of many about a third are within a fifth
// of the hardest. If at least this many reach launch speed and two thirds of
// them are within a fifth, the machine limits them, however slow it is. The
// fifth is the effect of a light head or tail wind on a scooter.
const (
	leastStarts = 3
	alikeStarts = 0.8 // of the hardest
	slowLaunch  = 8.0 // W/kg; 60 km/h in 17 s, as the slowest machine that reaches it (common practice)
)

// machineLimited reports whether the starts of a ride are as hard as the
// machine allows.
func machineLimited(s *series, pushes []push, best float64) bool {
	starts, alike := 0, 0
	for _, p := range pushes {
		if !p.standing || s.v[p.to] < launchSpeed {
			continue
		}
		starts++
		if launchHardness(s, p) >= alikeStarts*best {
			alike++
		}
	}
	return alike >= leastStarts && 3*alike >= 2*starts
}

// launchHardness is the kinetic energy gained per second and kilogram up to
// 60 km/h, or to the end of the push if that is sooner, W/kg.
func launchHardness(s *series, p push) float64 {
	v, t := s.v[p.to], s.seconds(p.from, p.to)
	if v > launchSpeed {
		v, t = launchSpeed, s.crossing(launchSpeed, p.from, p.to)-s.time(p.from)
	}
	return v * v / 2 / math.Max(t, step)
}

// load is the road load of an average motorcycle, m/s²: that of package usual,
// with rolling resistance as at 40 m/s, rounded up; accurate enough to convert
// acceleration to thrust.
func load(v float64) float64 { return 0.2 + 1.1e-3*v*v }

// thrustPower is the mean power at the wheel per kilogram between two grid
// points, W/kg.
func thrustPower(s *series, i, j int) float64 {
	if j <= i {
		return 0
	}
	sum := 0.0
	for k := i; k < j; k++ {
		sum += (s.quick[k] + load(s.v[k])) * s.v[k]
	}
	return sum / float64(j-i)
}

// bestPower is the highest thrust power of any push of the ride, W/kg, over a
// second, minus three standard deviations of the noise from vibration, since
// the maximum of many noisy values is biased upwards.
func bestPower(s *series, pushes []push) float64 {
	const second = 10 // grid points
	best := 0.0
	for _, p := range pushes {
		for i := p.from; i+second <= p.to; i += 5 {
			noise := s.v[i] * s.doubt[i] * math.Sqrt(doubtOver/s.seconds(i, i+second))
			best = math.Max(best, thrustPower(s, i, i+second)-3*noise)
		}
	}
	return best
}

// rollOns matches the accelerations from rolling with the requested speed
// pairs: each gear by itself and, if the acceleration is the hardest that the
// bike can do, the whole with its gear changes.
func rollOns(s *series, pushes []push, pairs []marks.SpeedPair, least float64) []Found {
	best := bestPower(s, pushes)
	var out []Found
	for _, p := range pushes {
		if p.standing {
			continue
		}
		if pair, _ := bestCovered(s, p, pairs); len(p.shifts) > 0 && allOut(s, p, pair, best) {
			out = append(out, judgeRollOn(s, p, pairs)...)
			continue
		}
		for _, g := range p.gears(s) {
			power := thrustPower(s, g.from, g.to)
			pair, _ := bestCovered(s, g, pairs)
			along := power < strongPush && g.interrupted(s, s.passing(pair.From, g), s.passing(pair.To, g))
			if power > math.Max(least, rollShare*best) && !along {
				out = append(out, judgeRollOn(s, g, pairs)...)
			}
		}
	}
	return out
}

// allOut reports whether a push through several gears has, over a speed pair,
// nearly all the power that the bike showed in this ride. A single gear may be
// too high for that even at full throttle; a rider who changes gear can choose.
func allOut(s *series, p push, pair marks.SpeedPair, best float64) bool {
	from, to := s.crossing(pair.From, p.from, p.to), s.crossing(pair.To, p.from, p.to)
	if math.IsNaN(from) || math.IsNaN(to) {
		return false
	}
	return thrustPower(s, s.index(from), s.index(to)) > math.Max(wholePower, wholeShare*best)
}

// passing is the grid point at which a push passes a speed, or its nearer end.
func (s *series) passing(v float64, p push) int {
	if t := s.crossing(v, p.from, p.to); !math.IsNaN(t) {
		return s.index(t)
	}
	if v > s.v[p.from] {
		return p.to
	}
	return p.from
}

// judgeRollOn makes a candidate of one push that is strong enough.
func judgeRollOn(s *series, p push, pairs []marks.SpeedPair) []Found {
	pair, cover := bestCovered(s, p, pairs)
	if cover < leastCover {
		return nil
	}
	f := p.found(s, RollOn)
	if cover < 1 {
		f.Reasons = append(f.Reasons, finding.New(codeRollOnShort,
			finding.Speed("from", s.v[p.from]), finding.Speed("to", s.v[p.to]), finding.Text("pair", pair.Name)))
	}
	if at, ok := unsteady(s, p, pair); ok {
		f.Reasons = append(f.Reasons, finding.New(codeEased, finding.Speed("at", s.v[at])))
	}
	return []Found{f}
}

// bestCovered returns the pair of which a push covers the largest fraction.
func bestCovered(s *series, p push, pairs []marks.SpeedPair) (marks.SpeedPair, float64) {
	const slack = 0.1 // m/s by which the ends may miss a speed because of smoothing
	best, share := marks.SpeedPair{}, 0.0
	for _, pair := range pairs {
		low, high := math.Max(s.v[p.from]-slack, pair.From), math.Min(s.v[p.to]+slack, pair.To)
		if c := (high - low) / (pair.To - pair.From); c > share {
			best, share = pair, c
		}
	}
	return best, share
}

// unsteady returns where, within a speed pair, the throttle was eased.
func unsteady(s *series, p push, pair marks.SpeedPair) (int, bool) {
	for _, g := range p.gears(s) {
		eased := easing(s, g)
		for i := g.from + 8; i < g.to-8; i++ {
			if s.v[i] > pair.From && s.v[i] < pair.To && eased(i) {
				return i, true
			}
		}
	}
	return 0, false
}

// easing reports whether the acceleration is well below its trend with speed:
// with the throttle held open it changes slowly.
func easing(s *series, p push) func(i int) bool {
	c0, c1 := lineFit(s.v[p.from:p.to], s.calm[p.from:p.to])
	return func(i int) bool {
		trend := c0 + c1*s.v[i]
		return s.calm[i] < math.Min(steadiness*trend, trend-math.Max(eased, 2.5*s.doubt[i]))
	}
}

// steady is the longest part of a push in which the throttle was held open.
// Doubt of less than a second is attributed to vibration.
func steady(s *series, p push) push {
	const patience = 10 // grid points
	eased := easing(s, p)
	best, from, doubts := push{}, p.from, 0
	keep := func(to int) {
		if to-from > best.to-best.from {
			best = push{from: from, to: to}
		}
	}
	for i := p.from; i < p.to; i++ {
		switch {
		case !eased(i) && doubts >= patience:
			from, doubts = i, 0
		case !eased(i):
			doubts = 0
		default:
			if doubts++; doubts == patience {
				keep(i - patience)
			}
		}
	}
	if doubts < patience {
		keep(p.to - doubts)
	}
	return best
}

// lineFit is the least-squares line y = c0 + c1·x.
func lineFit(x, y []float64) (c0, c1 float64) {
	n := float64(len(x))
	var sx, sy, sxx, sxy float64
	for i := range x {
		sx, sy, sxx, sxy = sx+x[i], sy+y[i], sxx+x[i]*x[i], sxy+x[i]*y[i]
	}
	if d := n*sxx - sx*sx; d > 1e-9*n*sxx {
		c1 = (n*sxy - sx*sy) / d
	}
	return (sy - c1*sx) / n, c1
}

// pulls classifies the single gears of the accelerations from rolling.
func pulls(s *series, pushes []push, least float64) []Found {
	need := math.Max(least, pullShare*bestPower(s, pushes))
	var out []Found
	for _, p := range pushes {
		if p.standing {
			continue
		}
		for _, g := range p.gears(s) {
			g = steady(s, g)
			wide := s.v[g.to] >= math.Max(pullRatio*s.v[g.from], s.v[g.from]+pullGain) && s.seconds(g.from, g.to) >= pullTime
			power := thrustPower(s, g.from, g.to)
			// A weak pull stays doubtful even if no speed seems to be lost:
			// part throttle would corrupt the power curve.
			if wide && power > need && (power > strongPush || len(drops(s, g.from, g.to)) == 0) {
				out = append(out, g.found(s, Pull))
			}
		}
	}
	return out
}

// notFull is the finding for a launch much slower than the best of the ride or,
// otherwise, than the slowest that counts.
func notFull(hard, best float64) finding.Finding {
	took := func(power float64) float64 { return launchSpeed * launchSpeed / 2 / power }
	speed := finding.Speed("speed", launchSpeed)
	if hard < launchShare*best {
		return finding.New(codeLaunchPartial, speed, finding.Time("took", took(hard)), finding.Time("best", took(best)))
	}
	return finding.New(codeLaunchSlow, speed, finding.Time("took", took(hard)), finding.Time("most", took(launchPower)))
}
