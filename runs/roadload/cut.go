package roadload

import "stillair/sensors/finding"

// cut lets the speed jump before a fix. A jump next to a cut extends the cut:
// the event took longer than one step.
func (c *coast) cut(fix int, jump float64) {
	next := cutAt{from: fix, to: fix, jump: jump}
	var keep []cutAt
	for _, old := range c.cuts {
		if old.to < next.from-1 || old.from > next.to+1 {
			keep = append(keep, old)
			continue
		}
		next.from, next.to = min(old.from, next.from), max(old.to, next.to)
		next.jump += old.jump
	}
	c.cuts = append(keep, next)
	for i := next.from; i < next.to; i++ {
		c.count[i] = 0
	}
}

// describeCuts describes the cuts of a run.
func (c *coast) describeCuts() []Cut {
	var out []Cut
	for _, k := range c.cuts {
		reason := codeEased
		if k.jump < 0 {
			reason = codeSlowed
		}
		out = append(out, Cut{From: c.t[max(k.from-1, 0)], To: c.t[k.to], Reason: finding.New(reason)})
	}
	return out
}
