package columns

import (
	"stillair/export/results"
	"stillair/runs"
	"stillair/runs/compare"
	"stillair/runs/measure"
	"stillair/runs/roadload"
	"stillair/sensors/finding"
)

// at is the ride of a row.
func (g *Reader) at(folder, ride, bike string, started *string) *gathered {
	k := rideKey{folder, ride}
	r := g.rides[k]
	if r == nil {
		r = &gathered{gears: map[int]string{}, marks: map[int][]runs.Mark{}, passes: map[int32]*runs.Pass{}}
		g.rides[k], g.order = r, append(g.order, k)
	}
	r.result.Ride.Bike = bike
	if started != nil {
		r.started = *started
	}
	return r
}

// value makes a value of two columns, unknown if either is null.
func value(x, se *float64) measure.Value {
	if x == nil || se == nil {
		return measure.Unknown()
	}
	return measure.Value{X: *x, SE: *se}
}

func checkRun(r Run) string {
	switch {
	case !usable(&r.Start):
		return "start_s"
	case !usable(r.Bearing):
		return "bearing_deg"
	}
	return ""
}

func (g *Reader) addRun(folder string, r Run) {
	of := g.at(folder, r.Ride, r.Bike, r.Started)
	if !r.Accepted {
		return
	}
	run := runs.Run{ID: int(r.ID), Kind: runs.Kind(r.Kind), Setup: r.Setup, Start: r.Start, End: r.End, FromMPS: r.From, ToMPS: r.To, BearingDeg: measure.Unknown().X}
	if r.Bearing != nil {
		run.BearingDeg = *r.Bearing
	}
	of.result.Runs = append(of.result.Runs, run)
	if r.Gear != nil {
		of.gears[run.ID] = *r.Gear
	}
}

func checkMark(m Mark) string {
	switch {
	case !usable(m.Time):
		return "s"
	case !spread(m.TimeSE):
		return "se_s"
	case !usable(m.Rollout):
		return "rollout_s"
	case !spread(m.RolloutSE):
		return "rollout_se_s"
	}
	return ""
}

func (g *Reader) addMark(folder string, m Mark) {
	of := g.at(folder, m.Ride, m.Bike, nil)
	id := int(m.Run)
	of.marks[id] = append(of.marks[id], runs.Mark{Name: m.Mark, Time: value(m.Time, m.TimeSE), Rollout: value(m.Rollout, m.RolloutSE),
		Speed: value(m.Speed, m.SpeedSE), Distance: value(m.Dist, m.DistSE)})
}

func checkLoad(l RoadLoad) string {
	if len(l.Budget) != len(l.BudgetCodes) {
		return "cda_budget_se_m2"
	}
	for i := range l.Budget {
		if !spread(&l.Budget[i]) {
			return "cda_budget_se_m2"
		}
	}
	for _, c := range []struct {
		name string
		good bool
	}{{"cda_m2", usable(&l.CdA)}, {"cda_se_m2", spread(&l.CdASE)}, {"crr", usable(&l.Crr)}, {"crr_se", spread(&l.CrrSE)},
		{"cda_noise_se_m2", spread(l.CdANoise)}, {"crr_noise_se", spread(l.CrrNoise)}, {"air_density_kgpm3", spread(&l.Density)}} {
		if !c.good {
			return c.name
		}
	}
	return ""
}

func (g *Reader) addLoad(folder string, l RoadLoad) {
	of := g.at(folder, l.Ride, l.Bike, l.Started)
	load := runs.RoadLoad{Setup: l.Setup, Pairs: int(l.Pairs), Mass: l.Mass, CdA: measure.Value{X: l.CdA, SE: l.CdASE}, Crr: measure.Value{X: l.Crr, SE: l.CrrSE},
		Cov: l.Cov, CdACI: [2]float64{l.CdALow, l.CdAHigh}, CrrCI: [2]float64{l.CrrLow, l.CrrHigh}, Density: l.Density,
		CdANoise: orUnknown(l.CdANoise), CrrNoise: orUnknown(l.CrrNoise), A: measure.Unknown(), C: measure.Unknown(), CdAAssumed: measure.Unknown().X, CrrAssumed: measure.Unknown().X}
	for i, code := range l.BudgetCodes {
		load.Budget = append(load.Budget, roadload.Part{Code: finding.Code(code), SE: l.Budget[i]})
	}
	of.result.RoadLoads = append(of.result.RoadLoads, load)
}

func orUnknown(x *float64) float64 { return value(x, x).X }

func checkComparison(c Comparison) string {
	switch {
	case !usable(c.Delta):
		return "delta"
	case !spread(c.DeltaSE):
		return "delta_se"
	}
	return ""
}

func (g *Reader) addComparison(folder string, c Comparison) {
	of := g.at(folder, c.Ride, c.Bike, nil)
	if c.Quantity == quantityDrag { // only the difference is compared
		of.result.Compared = append(of.result.Compared, runs.Comparison{A: c.A, B: c.B, CdA: &compare.Verdict{Finding: compare.CannotTell, Delta: value(c.Delta, c.DeltaSE)}})
	}
}

// Read is one ride as read from its tables.
type Read struct {
	Ride    string // its name in the tables
	Results *results.Document
}

// Rides are those gathered, in the order in which they came: results as From
// makes them of a result, with what a season needs (results.Document.ForSeason).
func (g *Reader) Rides() []Read {
	var out []Read
	for _, k := range g.order {
		r := g.rides[k]
		res := r.result
		res.Runs = nil
		for _, run := range r.result.Runs {
			run.Marks = r.marks[run.ID]
			res.Runs = append(res.Runs, run)
		}
		for _, p := range r.passed {
			res.Passes = append(res.Passes, *p)
		}
		d := results.From(&res).ForSeason()
		d.Started = r.started
		for i := range d.Runs {
			d.Runs[i].Gear = r.gears[d.Runs[i].ID]
		}
		out = append(out, Read{k.ride, d})
	}
	return out
}
