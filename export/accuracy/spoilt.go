package accuracy

import (
	"math/rand/v2"

	"stillair/runs/compare"
	"stillair/runs/measure"
	"stillair/runs/roadload"
	"stillair/runs/roadload/loadtest"
)

// spoil is something that happens in the fourth of ten runs.
type spoil struct {
	name    string
	force   float64 // additional drag force, N
	perMPS  float64 // and per m/s
	air     float64 // additional air speed, m/s
	from, s float64 // when it begins and how long it lasts, s
	whole   bool    // the whole run is spoilt, and no other run may be named
}

const spoiltRun = 3 // index of the run

func (c spoil) act(run int, t, v float64) (force, air float64) {
	if run != spoiltRun || t < c.from || t > c.from+c.s {
		return 0, 0
	}
	return c.force + c.perMPS*v, c.air
}

// The figures of spoilt runs.
const (
	moved  = "CdA moved, in standard errors"
	named  = "the run is named"
	others = "no other run is named"
)

func spoiltRuns() Study {
	const forever = 1e9
	s := Study{Name: "spoilt", Title: "One of ten runs spoilt", Unit: Unit{Name: "se", Factor: 1, Digits: 2},
		About: "The same ten runs are fitted twice, once with something wrong in the fourth: how far does the drag area move, is the run named, and is any other?"}
	for i, c := range []spoil{
		{name: "brush of the brake", force: 150, from: 20.4, s: 3},
		{name: "short brake", force: 450, from: 12, s: 1},
		{name: "bow wave of a lorry", air: 10, from: 10, s: 1.5},
		{name: "gear left in", force: 60, perMPS: 4, s: forever, whole: true},
	} {
		bike := loadtest.Bikes[i%len(loadtest.Bikes)]
		limits := []Limit{inside(named, HitRate, 0.95, 1), inside(others, HitRate, 0.93, 1)}
		if !c.whole {
			limits = append(limits, atMost(moved, Spread, 0.5))
		}
		s.Cases = append(s.Cases, Case{Name: c.name + ", " + bike.Name, Seeds: 100, Limits: limits,
			Ride: func(seed uint64) (Record, error) { return c.ride(bike, seed, uint64(160+i)) }})
	}
	return s
}

func (c spoil) ride(bike loadtest.Bike, seed, draw uint64) (Record, error) {
	test := coastTest{Test: loadtest.Default(bike, 1.5), known: loadtest.Known(1.5), draw: draw}
	test.known.Noise.RoadSD = 0
	clean, err := roadload.Fit(test.roll(seed), test.known)
	if err != nil {
		return Record{}, err
	}
	test.Spoil = c.act
	spoilt, err := roadload.Fit(test.roll(seed), test.known)
	if err != nil {
		return Record{}, err
	}
	var r Record
	r.add(moved, (spoilt.Loads[0].CdA.X-clean.Loads[0].CdA.X)/clean.Loads[0].CdA.SE, 1, 0)
	found, wrong := false, false
	for i, f := range spoilt.Runs {
		off := !f.Reason.IsZero() || !c.whole && len(f.Cuts) > 0
		found = found || off && i == spoiltRun
		wrong = wrong || off && i != spoiltRun
	}
	r.once(named, found)
	r.once(others, !wrong)
	return r, nil
}

// The figures of comparisons.
const (
	change  = "difference of CdA"
	alarm   = "a difference is called"
	hasMore = "the difference is seen"
)

// comparisons rides setups in the order A, B, B, A, two pairs at a time.
func comparisons() Study {
	s := Study{Name: "comparing", Title: "Two setups, A, B, B, A, four pairs each", Unit: percent,
		About: "All sixteen runs are fitted at once, the tyres are the same, and the difference of the drag areas is judged as the rider would read it."}
	for i, c := range []struct {
		name   string
		wind   float64
		change float64
		limit  Limit
	}{
		{"no change, wind 1.5 m/s", 1.5, 0, inside(alarm, HitRate, 0.03, 0.07)},
		{"6.4 % more drag, wind 1.5 m/s", 1.5, 0.064, inside(hasMore, HitRate, 0.75, 1)},
		{"2.5 % more drag, calm", 0.5, 0.025, inside(hasMore, HitRate, 0.75, 1)},
	} {
		s.Cases = append(s.Cases, Case{Name: c.name, Seeds: 400,
			Limits: []Limit{c.limit, inside(change, Coverage, 0.92, 0.98)},
			Ride:   func(seed uint64) (Record, error) { return abba(c.wind, c.change, seed, uint64(180+i)) }})
	}
	return s
}

func abba(wind, more float64, seed, draw uint64) (Record, error) {
	var all []roadload.Run
	rng := rand.New(rand.NewPCG(seed, draw))
	base := loadtest.Bikes[0]
	for _, setup := range []int{0, 1, 1, 0} {
		test := loadtest.Default(base, wind)
		test.Setup, test.Pairs = setup, 2
		test.Bike.CdA *= 1 + more*float64(setup)
		all = loadtest.After(all, test.Ride(rng), 120)
	}
	for i := range all {
		all[i].Pos = nil
	}
	e, err := roadload.Fit(all, loadtest.Known(wind))
	if err != nil {
		return Record{}, err
	}
	d, _ := e.Alike(0, 1)
	v := compare.Judge([]compare.Difference{{Delta: d.CdA, Base: e.Loads[0].CdA.X, DoF: d.DoF, Pairs: 4}}, 0.05)[0]
	var r Record
	r.Values = append(r.Values, relativeTo(change, d.CdA, d.DoF, more*base.CdA, base.CdA))
	if more == 0 {
		r.once(alarm, v.Finding == compare.Differs)
	} else {
		r.once(hasMore, v.Finding == compare.Differs && v.Delta.X > 0)
	}
	return r, nil
}

// relativeTo is a figure's error as a share of something else.
func relativeTo(what string, v measure.Value, dof, truth, of float64) Value {
	ci := v.Interval(0.95, dof)
	return Value{What: what, Err: (v.X - truth) / of, SE: v.SE / of, Held: ci[0] <= truth && truth <= ci[1]}
}
