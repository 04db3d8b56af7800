package report

import (
	"math"

	"stillair/export/shown"
	"stillair/runs"
	"stillair/sensors/finding"
)

// half returns half of the 95 % interval of a value with normal errors.
func half(v runs.Value) float64 { return shown.Normal95 * v.SE }

// seconds shows a time with half of its 95 % interval.
func (t *teller) seconds(v runs.Value) string { return t.style.Plain(v.X, half(v)) }

// best is one of the figures that the page begins with.
type best struct{ Label, Value, Unit, Beside string }

// bests picks what a rider asks first: the best of each headline mark.
func (t *teller) bests(r *runs.Result) []best {
	want := []string{"0-100 km/h", "1/4 mile"}
	switch t.style.System {
	case shown.Imperial:
		want = []string{"0-60 mph", "1/4 mile"}
	case shown.Both:
		want = []string{"0-100 km/h", "0-60 mph", "1/4 mile"}
	}
	var out []best
	for _, name := range want {
		m, run := fastest(r.Runs, runs.Launch, name)
		if run == 0 {
			continue
		}
		time, rolledOut := m.Headline()
		b := best{Label: name, Value: t.seconds(time), Unit: "s", Beside: t.fill("from_movement", finding.Count("run", run))}
		if rolledOut {
			b.Beside = t.fill("after_rollout", finding.Count("run", run), finding.Time("moving", m.Time.X).With(m.Time.SE))
		}
		if m.Speed.Known() {
			b.Beside += "; " + t.fill("through_at", finding.Speed("speed", m.Speed.X))
		}
		out = append(out, b)
	}
	if b, ok := t.bestRollOn(r); ok {
		out = append(out, b)
	}
	return out
}

// bestRollOn is the fastest roll-on through the first pair that was ridden.
func (t *teller) bestRollOn(r *runs.Result) (best, bool) {
	for _, run := range r.Runs {
		if run.Kind != runs.RollOn || !run.Accepted() || len(run.Marks) == 0 {
			continue
		}
		name := run.Marks[0].Name
		m, id := fastest(r.Runs, runs.RollOn, name)
		return best{Label: name, Value: t.seconds(m.Time), Unit: "s", Beside: t.fill("rolling", finding.Count("run", id))}, id > 0
	}
	return best{}, false
}

// fastest returns the shortest mark of that name among the accepted runs of a
// kind, and the run's ID, 0 where there is none.
func fastest(all []runs.Run, kind runs.Kind, name string) (runs.Mark, int) {
	var found runs.Mark
	id, least := 0, math.Inf(1)
	for _, run := range all {
		if run.Kind != kind || !run.Accepted() {
			continue
		}
		for _, m := range run.Marks {
			if time, _ := m.Headline(); m.Name == name && time.X < least {
				found, id, least = m, run.ID, time.X
			}
		}
	}
	return found, id
}
