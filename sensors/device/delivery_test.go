package device

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
	"stillair/sensors/finding"
)

// paused is a port of a page that is frozen for a while: it delivers samples from
// just before, and a fix from the time in between, together with those from after.
type paused struct {
	bench
	busy bool // it was only busy, and does not report a gap
}

func (p *paused) Drain(to *Batch) {
	const frozen, woken = 2.0, 7.0
	motion := func(from, until float64) {
		for t := from; t < until; t += 0.02 {
			to.Motion = append(to.Motion, sensors.Motion{T: t, Force: r3.Vec{Z: 9.81}})
		}
	}
	if p.now < frozen || p.now > woken {
		motion(p.now, p.now+0.1)
		if math.Mod(p.now+0.01, 1) < 0.05 {
			to.Fixes = append(to.Fixes, sensors.NewFix(p.now, 20))
		}
		p.now += 0.1
		return
	}
	motion(p.now, p.now+0.08)
	to.Fixes = append(to.Fixes, sensors.NewFix(p.now+0.05, 20), sensors.NewFix(p.now+2.3, 20))
	to.Reports = append(to.Reports, Report{sensors.SensorFix, sensors.Silent, finding.New("browser.hidden")},
		Report{sensors.SensorTurn, sensors.Denied, finding.New("browser.no_motion_leave")})
	if !p.busy {
		to.Holes = append(to.Holes, sensors.Hole{From: p.now + 0.1, To: woken, Why: finding.New("browser.was_frozen")})
	}
	motion(woken+0.01, woken+0.4)
	to.Fixes = append(to.Fixes, sensors.NewFix(woken+0.2, 20))
	p.now = woken + 0.4
}

// backwards is a sink that records by how much times step back.
type backwards struct {
	latest, most float64
	motion       int
}

func (b *backwards) at(t float64) {
	b.most = max(b.most, b.latest-t)
	b.latest = max(b.latest, t)
}

func (b *backwards) Motion(m sensors.Motion)     { b.at(m.T); b.motion++ }
func (b *backwards) Fix(f sensors.Fix)           { b.at(f.T) }
func (b *backwards) Pressure(p sensors.Pressure) { b.at(p.T) }
func (b *backwards) Sound(s sensors.Sound)       { b.at(s.T) }
func (b *backwards) State(s sensors.State)       { b.at(s.T) }

// TestNoStepBackBehindAPause delivers samples from before, during and after a pause
// together: they are passed on in order of time except for the second within which
// kinds are interleaved, since a recorder takes more for a clock set back and moves
// all that follow.
func TestNoStepBackBehindAPause(t *testing.T) {
	for _, busy := range []bool{false, true} {
		p, sink := &paused{busy: busy}, &backwards{}
		d := delivery{watch: newWatch(0), ordered: sensors.NewInOrder(sink)}
		for p.now < 10 {
			d.batch.Clear()
			p.Drain(&d.batch)
			if err := d.pass(t.Context(), p.now); err != nil {
				t.Fatal(err)
			}
		}
		if sink.most > 1 || sink.motion < 240 {
			t.Errorf("busy %v: times step back by %.2f s, %d of motion", busy, sink.most, sink.motion)
		}
	}
}

// TestOddTimesArePassedOn delivers samples with times that are not numbers: all
// are passed on, for InOrder to count.
func TestOddTimesArePassedOn(t *testing.T) {
	d := delivery{watch: newWatch(0), ordered: sensors.NewInOrder(&backwards{})}
	for _, x := range []float64{math.Inf(-1), 1, math.NaN(), 2, math.Inf(1), 1e300, 3} {
		d.batch.Motion = append(d.batch.Motion, sensors.Motion{T: x, Force: r3.Vec{Z: 9.81}})
		d.batch.Fixes = append(d.batch.Fixes, sensors.NewFix(x, 3))
	}
	if err := d.pass(t.Context(), 4); err != nil {
		t.Fatal(err)
	}
	if n := d.ordered.Broken; n != 6 {
		t.Errorf("%d without a time, want 6", n)
	}
}
