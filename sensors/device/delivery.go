package device

import (
	"context"
	"math"

	"stillair/sensors"
)

// delivery passes batches on to a sink.
type delivery struct {
	batch   Batch
	watch   *watch
	ordered *sensors.InOrder

	lostSaid float64 // when the sink last heard of lost samples, s
}

// tellLostEvery is how often lost samples are reported to the log, s: a phone
// may end the program silently.
const tellLostEvery = 60.0

// few is the number of samples passed on between two checks of the context.
const few = 16

// slice is how much of a batch is passed on kind by kind, s. Usually that is all of
// it; after a pause a batch holds samples from before and after it, and a sink that
// gets an earlier fix after later motion takes that for a clock set back.
const slice = 1.0

// pass passes a batch on: samples in slices of time, the states of a gap at its end,
// and the present states after all samples.
func (d *delivery) pass(ctx context.Context, now float64) error {
	d.ordered.Present(now)
	if now-d.lostSaid > tellLostEvery {
		d.ordered.TellLost(now)
		d.lostSaid = now
	}
	var marks []sensors.State
	for _, h := range d.batch.Holes {
		if h.Seconds() <= shortest {
			continue
		}
		marks = append(marks, d.watch.hole(h)...)
	}
	var changes []Report
	for _, t := range d.batch.Reports {
		changes = append(changes, d.watch.heard(t)...)
	}
	rest := d.batch
	for _, m := range marks {
		d.samples(ctx, &rest, m.T)
		d.ordered.State(m)
	}
	d.samples(ctx, &rest, math.Inf(1))
	d.tell(now, changes)
	d.tell(now, d.watch.saw(&d.batch, now))
	return ctx.Err()
}

// samples passes on what is left of a batch up to a time.
func (d *delivery) samples(ctx context.Context, rest *Batch, until float64) {
	for ctx.Err() == nil {
		to := rest.earliest() + slice
		if !(to < until) {
			to = until
		}
		front(ctx, &rest.Motion, to, func(m sensors.Motion) float64 { return m.T }, d.ordered.Motion)
		front(ctx, &rest.Pressure, to, func(p sensors.Pressure) float64 { return p.T }, d.ordered.Pressure)
		front(ctx, &rest.Sound, to, func(s sensors.Sound) float64 { return s.T }, d.ordered.Sound)
		front(ctx, &rest.Fixes, to, func(f sensors.Fix) float64 { return f.T }, d.ordered.Fix)
		if to == until {
			return
		}
	}
}

// earliest is the earliest time among the remaining samples; +Inf if none is left.
func (b *Batch) earliest() float64 {
	t := math.Inf(1)
	if len(b.Motion) > 0 {
		t = math.Min(t, b.Motion[0].T)
	}
	if len(b.Pressure) > 0 {
		t = math.Min(t, b.Pressure[0].T)
	}
	if len(b.Sound) > 0 {
		t = math.Min(t, b.Sound[0].T)
	}
	if len(b.Fixes) > 0 {
		t = math.Min(t, b.Fixes[0].T)
	}
	return t
}

// front passes on samples up to a time, and those without a time.
func front[T any](ctx context.Context, list *[]T, to float64, at func(T) float64, pass func(T)) {
	n := 0
	for ; n < len(*list) && !(at((*list)[n]) > to); n++ {
		if n%few == 0 && ctx.Err() != nil {
			break
		}
		pass((*list)[n])
	}
	*list = (*list)[n:]
}

func (d *delivery) tell(now float64, changes []Report) {
	for _, c := range changes {
		d.ordered.State(sensors.State{T: now, Sensor: c.Sensor, Condition: c.Condition, Detail: c.Detail})
	}
}
