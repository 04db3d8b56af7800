package sim

// begin starts recording an event at this instant.
func (p *player) begin(k Kind) Event {
	return Event{Kind: k, Start: p.time(), From: p.now.v, Dist: p.now.s, X: p.now.x, Out: p.now.cos > 0, Gear: p.gear, Setup: p.setup}
}

// end completes the event at this instant and stores it.
func (p *player) end(d Event) {
	d.End, d.To, d.Dist = p.time(), p.now.v, p.now.s-d.Dist
	p.keep(d)
}

// keep stores an event, with its times converted from time since the start to the log's
// clock.
func (p *player) keep(d Event) {
	d.Start, d.End = p.clock(d.Start), p.clock(d.End)
	if d.Rollout > 0 {
		d.Rollout = p.clock(d.Rollout)
	}
	p.truth.Events = append(p.truth.Events, d)
}
