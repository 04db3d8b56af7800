package sim

import (
	"math"
	"math/rand/v2"
	"time"

	"stillair/sensors"
)

// receiver is the satellite receiver.
type receiver struct {
	set    *Receiver
	sc     *Scenario
	rng    *rand.Rand
	period float64
	phase  float64 // of the epochs, s
	n      int
	smooth float64        // smoothed speed, m/s
	keep   float64        // coefficient of the smoothing per step
	errV   [2]gaussMarkov // along and across
	errP   [3]gaussMarkov // east, north, up
	drops  *lapses
	plane  plane
	log    []sensors.Fix
}

func newReceiver(sc *Scenario, seed uint64) *receiver {
	r := &receiver{set: &sc.Receiver, sc: sc, rng: stream(seed, streamReceiver), plane: newPlane(sc.Road)}
	if sc.Receiver.Rate == 0 {
		r.period = math.Inf(1)
		return r
	}
	r.period = 1 / sc.Receiver.Rate
	r.phase = r.period * (0.05 + 0.9*r.rng.Float64())
	if tau := sc.Receiver.SmoothTau; tau > 0 {
		r.keep = math.Exp(-dt / tau)
	}
	for i := range r.errV {
		r.errV[i] = newGaussMarkov(r.rng, sc.Receiver.CorrSD, sc.Receiver.CorrTau, r.period)
	}
	for i, sd := range [3]float64{sc.Receiver.PosSD, sc.Receiver.PosSD, sc.Receiver.AltSD} {
		r.errP[i] = newGaussMarkov(r.rng, sd, sc.Receiver.PosTau, r.period)
	}
	r.drops = newLapses(stream(seed, streamReceiver+100), sc.Receiver.DropsPerHour, sc.Receiver.DropMean)
	return r
}

// step smooths the speed and takes the fixes whose instant falls into the
// step that began at t.
func (r *receiver) step(t float64, from, to *motion, p *player) {
	last := r.smooth
	r.smooth = to.v + r.keep*(r.smooth-to.v)
	for at := r.epoch(); at < t+dt; at = r.epoch() {
		u := (at - t) / dt
		v := last + u*(r.smooth-last)
		if r.keep == 0 {
			v = from.v + u*(to.v-from.v)
		}
		r.take(at, v, to, p.road.height(to.x))
		r.n++
	}
}

// epoch is the instant that the next fix will describe.
func (r *receiver) epoch() float64 { return r.phase + float64(r.n)*r.period }

// take makes one fix. All errors are drawn even if the fix is then lost, so
// that a drop-out changes nothing else.
func (r *receiver) take(at, v float64, n *motion, height float64) {
	along := v + r.errV[0].advance(r.rng) + r.set.WhiteSD*r.rng.NormFloat64()
	across := r.errV[1].advance(r.rng) + r.set.WhiteSD*r.rng.NormFloat64()
	late := r.set.Latency + r.set.ArrivalJitterSD*r.rng.NormFloat64()
	east, north, up := r.errP[0].advance(r.rng), r.errP[1].advance(r.rng), r.errP[2].advance(r.rng)
	speed := math.Hypot(along, across)
	if q := r.set.SpeedQuantum; q > 0 {
		speed = math.Round(speed/q) * q
	}
	if speed < r.set.HoldBelow {
		speed = 0
	}
	f := sensors.NewFix(at+late+r.sc.ClockZero, speed)
	course := n.heading + math.Atan2(across, along)
	f.BearingDeg = bearing(r.sc.Road.BearingDeg, course)
	f.LatDeg, f.LonDeg = r.plane.position(n.x, n.y, east, north)
	f.Alt = r.sc.Road.Altitude + height + up
	f.UTC = r.sc.Start.Add(time.Duration(math.Round(at*1000)) * time.Millisecond)
	if r.set.SaysSD {
		f.SpeedSD = math.Hypot(r.set.WhiteSD, r.set.CorrSD)
		f.HSD = r.set.PosSD * math.Sqrt2
	}
	k := len(r.log)
	if r.drops.in(at) || k > 0 && f.T <= r.log[k-1].T {
		return
	}
	r.log = append(r.log, f)
}

// bearing is the compass course of a heading relative to the way out, left
// positive, in degrees, at least 0 and below 360.
func bearing(outDeg, heading float64) float64 {
	b := math.Mod(outDeg-heading*180/math.Pi, 360)
	if b < 0 {
		b += 360
	}
	if b >= 360 { // a tiny negative angle rounds to 360
		return 0
	}
	return b
}

// plane is the tangent plane of the WGS 84 ellipsoid at x = 0.
type plane struct {
	lat, lon       float64 // degrees
	perLat, perLon float64 // m per degree
	sinOut, cosOut float64 // of the bearing out
}

func newPlane(rd Road) plane {
	const a, e2 = 6378137.0, 6.69437999014e-3 // WGS 84
	sinLat, cosLat := math.Sincos(rd.LatDeg * math.Pi / 180)
	w := math.Sqrt(1 - e2*sinLat*sinLat)
	pl := plane{lat: rd.LatDeg, lon: rd.LonDeg}
	pl.perLat = a * (1 - e2) / (w * w * w) * math.Pi / 180
	pl.perLon = a / w * cosLat * math.Pi / 180
	pl.sinOut, pl.cosOut = math.Sincos(rd.BearingDeg * math.Pi / 180)
	return pl
}

// position returns latitude and longitude of a place, x along the way out and
// y to its left, moved by an error in m.
func (pl *plane) position(x, y, east, north float64) (latDeg, lonDeg float64) {
	east += x*pl.sinOut - y*pl.cosOut
	north += x*pl.cosOut + y*pl.sinOut
	return pl.lat + north/pl.perLat, pl.lon + east/pl.perLon
}
