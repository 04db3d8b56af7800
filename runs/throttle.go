package runs

import (
	"math"
	"slices"

	"stillair/runs/detect"
	"stillair/runs/engine"
	"stillair/runs/pairing"
	"stillair/runs/usual"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// A single push cannot distinguish a half-open throttle from a taller gear or a
// weaker bike; comparison with other pushes of the same bike can. At full
// throttle an engine has one torque at each engine speed, whatever the gear:
// the highest in the ride, or in a launch, is its envelope, and a push
// significantly below it was at part throttle. Full throttle is also
// repeatable, whereas everyday pushes differ by a quarter and more (common
// practice): so the strongest pushes are the envelope only if several agree. If
// the gear is unknown pushes are compared at the same road speed, and a
// stronger one may have been in a lower gear.
//
// Chosen on simulated rides of the seeds from 1003 on; judged in the accuracy
// report on those from 1 on, with machines of which five were not there when the
// limits of package detect were chosen.
const (
	repeats      = 0.035 // part of the thrust by which full throttle differs from push to push
	gearing      = 0.04  // and beyond that between gears, for the engine's own inertia, which is not known
	farthestGear = 1.7   // ratio of two gears up to which they are compared
	windCosts    = 0.25  // pairs of pushes that must agree more for each m/s of steady wind
	windPairs    = 4     // of opposite pairs; fewer must agree more by their share of that, since they cannot outvote it
	windVaries   = 0.7   // m/s by which the wind along the road may differ between two pushes
	mostWind     = 8.0   // m/s that a steady wind is looked for up to
	sureParts    = 2.0   // standard deviations of the recording that are allowed for
	mostLoose    = 0.25  // part of the thrust that may be allowed where two that agree are to prove anything: a hand differs by as much
	sameTorque   = 0.12  // part by which torque in two gears may differ: less than a hand does by
	mostAcross   = 0.45  // part of the thrust that may be allowed between gears, and beside a whole gear
	wholeGear    = 2.5   // of the ends of a push through most of what a gear reaches: nobody rides so by chance
	shareParts   = 3     // into how many parts common speeds are cut: gear and throttle change the shape
	sameShape    = 2.5   // times as much that a part may differ in one gear where launches show that the rider means it: lines that fold shake a part for a while
	looseShape   = 2.0   // times as much that a part may differ from one at full throttle in another gear, where the whole agrees
	leastCommon  = 5.0   // m/s that two pushes need in common
	commonShare  = 0.4   // and as a part of the narrower
	acrossShare  = 0.45  // between gears, as a part of the push that is judged
	oneRoad      = 15.0  // degrees by which the bearings of two pushes on one straight road may differ
	twinAgrees   = 0.5   // share of what is allowed that two pushes use which alone bear each other out: nine pairs of ten at full throttle do
	alikeEnds    = 0.11  // part by which the ends of two pushes differ that were meant alike: 0.3 s of a hard push at 50 km/h
	meantRatio   = 1.9   // of the ends of a push that was meant as a run; overtaking gains less
	ridingOff    = 5.0   // m/s; a push that begins slower is riding off, as out of a turn
	slowStart    = 7.0   // m/s; and one in a gear that is not known that begins slower than this, unless several repeat it closely, and its thrust is steady
	mostTight    = 0.1   // part of the thrust that may be allowed there: a hand differs by more
	oneGear      = 5.0   // of the ends of a push in one gear where another pulled harder, so in a lower one: no engine pulls cleanly below a sixth of its limit (common practice)
	crowd        = 3     // others alike from which on nothing else is asked
	bigCrowd     = 5     // the same where as much is allowed as between gears
	meantCrowd   = 2     // and where a launch shows that the rider means it
)

// relation is the comparison of one push with another.
type relation struct {
	known  bool    // at the same engine speed, whatever the gear
	across bool    // from one gear to another
	common bool    // they have something in common
	off    float64 // difference over the whole, as a part of what is allowed: above 0 the other pulls harder
	most   float64 // and the largest over any part
	whole  bool    // both went through most of what a gear reaches
	loose  float64 // what is allowed over the whole, as a part of the thrust
	meant  bool    // in one gear of a ride whose launches show that the rider means it
}

// torque is the ratio of the torques of two pushes, above 1.
func (r relation) torque() float64 {
	d := math.Abs(r.off) * r.loose / 2
	return (1 + d) / math.Max(1-d, 1e-3)
}

// agrees reports whether two pushes do not differ significantly.
func (r relation) agrees() bool {
	return r.common && r.most < 1 && (r.loose < mostAcross || r.meant)
}

// alike reports whether two pushes agree in a test that has power.
func (r relation) alike() bool {
	return r.agrees() && (r.loose < mostLoose || r.whole || r.meant)
}

// closely reports whether they are as alike as nine pairs of ten at full throttle.
func (r relation) closely() bool { return r.alike() && (r.most < twinAgrees || r.whole) }

func (r relation) harder() bool { return r.common && r.off > 1 }

// gives reports whether two pushes in different gears have the same torque. The
// tolerance is wide there, for the engine's inertia and the drag at two speeds,
// so the difference itself has to be small as well.
func (r relation) gives() bool {
	return r.common && r.across && r.known && math.Abs(r.off) < 1 && math.Abs(r.off)*r.loose < sameTorque && r.most < looseShape && r.loose < mostAcross
}

// throttles compares all pushes of a ride.
type throttles struct {
	drives []drive
	wind   float64 // along the way of the first drive, m/s
	meant  bool    // there are launches
	with   [][]relation
}

// compare compares a with b over their common speeds, of the engine or else of
// the bike.
func (o *throttles) compare(a, b drive) relation {
	scale, known, across := a.gearing(b)
	r := o.over(a, b, scale, known, across)
	if known && across && !(a.ratio > 0) && r.torque() > orderApart {
		return o.over(a, b, 1, false, across)
	}
	return r
}

// over is compare where b's engine turns as fast as a's at a scale times its road
// speed, in the same gear or another.
func (o *throttles) over(a, b drive, scale float64, known, across bool) relation {
	if len(a.v) < 2 || len(b.v) < 2 {
		return relation{}
	}
	lo, hi := math.Max(a.low(), b.low()/scale), math.Min(a.high(), b.high()/scale)
	if math.Abs(math.Log(scale)) > math.Log(farthestGear) {
		return relation{}
	}
	need := commonShare * math.Min(a.high()-a.low(), (b.high()-b.low())/scale)
	if across {
		need = acrossShare * (a.high() - a.low())
	}
	if hi-lo < math.Max(leastCommon*math.Min(1, 1/scale), need) {
		return relation{}
	}
	r := relation{known: known, across: across, common: true, meant: o.meant && !across, whole: math.Min(a.high()/a.low(), b.high()/b.low()) > wholeGear}
	r.off, r.loose = o.off(a, b, lo, hi, scale)
	for k := range shareParts {
		from, to := lo+(hi-lo)*float64(k)/shareParts, lo+(hi-lo)*float64(k+1)/shareParts
		part, _ := o.off(a, b, from, to, scale)
		part = math.Abs(part)
		if o.meant && known && !across {
			part /= sameShape
		}
		r.most = math.Max(r.most, part)
	}
	r.most = math.Max(r.most, math.Abs(r.off))
	return r
}

// off is the excess of b's thrust over a's between two speeds of a, relative to
// the tolerance, and the tolerance relative to the thrust.
func (o *throttles) off(a, b drive, from, to, scale float64) (off, loose float64) {
	x, xsd, xwind := a.thrust(from, to)
	y, ysd, ywind := b.thrust(from*scale, to*scale)
	x, y = x+xwind*o.wind*a.way, y+ywind*o.wind*b.way
	// Torque is thrust over ratio: to the gear of a.
	y, ysd, ywind = y*scale, ysd*scale, ywind*scale
	most := repeats*(x+y)/2 + windVaries*math.Max(xwind, ywind) + sureParts*math.Hypot(xsd, ysd)
	if math.Abs(scale-1) > sameGear {
		// The road load at the two speeds is uncertain by the spread of drag
		// areas.
		drag := usual.CdASD / usual.CdA * math.Abs(xwind-ywind*scale) * (from + to) / 4
		most += gearing*(x+y)/2 + drag
	}
	return (y - x) / most, 2 * most / (x + y)
}

// look compares all pushes.
func (o *throttles) look() {
	o.meant = slices.ContainsFunc(o.drives, func(d drive) bool { return d.start })
	o.find()
}

// find looks for the steady wind with which most pushes agree best, and compares
// all of them in it.
func (o *throttles) find() {
	best, most := 0.0, math.Inf(-1)
	cost := windCosts * math.Min(1, float64(o.opposite())/windPairs)
	for k := range 2*int(mostWind) + 1 { // from 0 on, so that no wind is found where the pushes do not depend on it
		w := float64((k + 1) / 2 * (1 - 2*(k%2)))
		o.wind = w
		agree := -cost * math.Abs(w)
		for i, a := range o.drives {
			for _, b := range o.drives[:i] {
				if a.way*b.way >= 0 {
					continue
				}
				if r := o.compare(a, b); r.alike() {
					agree += 1 - r.most
				}
			}
		}
		if agree > most {
			best, most = w, agree
		}
	}
	o.wind = best
	o.with = make([][]relation, len(o.drives))
	for i, a := range o.drives {
		o.with[i] = make([]relation, len(o.drives))
		for j, b := range o.drives {
			if i != j {
				o.with[i][j] = o.compare(a, b)
			}
		}
	}
}

// opposite is how many pairs of pushes were ridden in opposite directions.
func (o *throttles) opposite() int {
	n := [2]int{}
	for _, d := range o.drives {
		switch {
		case d.way > 0:
			n[0]++
		case d.way < 0:
			n[1]++
		}
	}
	return n[0] * n[1]
}

// alongPower is a thrust power per kilogram above that of ordinary riding: a
// weaker push, not shown to be at full throttle, was not meant as a run.
const alongPower = 34.0 // W/kg

// slowPower is the thrust power per kilogram from which a push is considered:
// the weakest machine on a motorway has 20 in its top gear (common practice).
const slowPower = 15.0 // W/kg

// judgeThrottle rejects the candidates that the ride does not show to be at
// full throttle, and stores the gears found. rolling is the vibration felt
// while the bike coasted.
func (result *Result) judgeThrottle(found []detect.Found, log *sensors.Log, rolling []engine.Spectrum) []detect.Found {
	track := result.Track
	bearing := func(from, to float64) float64 {
		return pairing.Coast{Fixes: fixesWithin(log, track, from, to)}.BearingDeg()
	}
	all, of := drivesOf(found, track, newTachometer(log, track, result.Ride, nil), rolling, bearing)
	result.pushes = all
	o := throttles{drives: all}
	o.look()
	found, of = o.judgeLaunches(found, of)
	why := o.all()
	var out []detect.Found
	for i, f := range found {
		if k := of[i]; k >= 0 && f.Kind != Launch {
			if why := why[k]; why != "" {
				if f.Power < alongPower {
					continue
				}
				f.Reasons = append(f.Reasons, finding.New(why))
			}
		}
		out = append(out, f)
	}
	return out
}
