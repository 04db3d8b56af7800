package sim

// begin opens the record of an event at this instant.
func (p *player) begin(k Kind) Event {
	return Event{Kind: k, Start: p.time(), From: p.now.v, Dist: p.now.s, X: p.now.x, Out: p.now.cos > 0, Gear: p.gear, Setup: p.setup}
}

// end closes the record at this instant and keeps it.
func (p *player) end(d Event) {
	d.End, d.To, d.Dist = p.time(), p.now.v, p.now.s-d.Dist
	p.keep(d)
}

// keep puts an event whose times count from the start of the ride on the log's clock.
func (p *player) keep(d Event) {
	d.Start, d.End = p.clock(d.Start), p.clock(d.End)
	if d.Rollout > 0 {
		d.Rollout = p.clock(d.Rollout)
	}
	p.truth.Events = append(p.truth.Events, d)
}
