package runs

import (
	"context"
	"math"
	"runtime"
	"sort"
	"sync"

	"stillair/fusion"
	"stillair/runs/detect"
	"stillair/runs/marks"
	"stillair/runs/pairing"
	"stillair/runs/power"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// Analyse is the whole analysis of a ride: it smooths the motion, finds the
// runs, measures their marks, pairs the coast-downs and fits the road load of
// each setup. The log is not changed. An error means that the log contains no
// ride at all; anything less is reported in the result.
func Analyse(ctx context.Context, log *sensors.Log, opts Options) (*Result, error) {
	const smoothingShare = 0.7
	log, _, scaleSE := sensors.ToScale(sensors.Spread(sensors.Stretch(log)))
	log = sensors.WithoutFalseZeros(sensors.WithoutStale(log))
	track, err := fusion.Smooth(log, fusion.Options{Progress: func(share float64) {
		opts.progress(Smoothing, smoothingShare*share)
	}})
	if err != nil {
		return nil, err
	}
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	return analyse(ctx, log, track, scaleSE, opts)
}

// analyse is everything after the smoothing. scaleSE is the relative standard
// uncertainty of a corrected scale of all speeds.
func analyse(ctx context.Context, log *sensors.Log, track *fusion.Track, scaleSE float64, opts Options) (*Result, error) {
	known := settle(log)
	known.scaleSE = scaleSE
	result := &Result{Track: track, Ride: known.ride, Defaults: known.defaults, Notes: log.Notes,
		Warnings: append(known.warnings, aboutRecording(log, track)...)}
	result.Gravity, result.weighed, result.Air = gravityAt(log), known.weighed, known.air
	opts.progress(Finding, 0.7)
	mass := log.Ride.Mass // as entered: detection does not rely on a default
	listening := ear{log: log, track: track}
	ride := detect.Ride{Track: track, Fixes: log.Fixes, Mass: mass, RollOns: opts.pairs(), LeastPower: slowPower}
	if known.ride.Drive.RollsFree() {
		ride.EngineTurns = listening.turning
	}
	found := result.rejectFixedDrive(detect.Find(ride))
	found = result.judgeThrottle(found, log, listening.rolling(found))
	for i, f := range found {
		result.Runs = append(result.Runs, newRun(i+1, f, track, log))
	}
	opts.progress(Measuring, 0.75)
	var mu sync.Mutex
	measured := 0
	parallel(len(result.Runs), func(i int) {
		if ctx.Err() != nil {
			return
		}
		result.Runs[i].measure(track, found[i].Breaks, opts.pairs())
		result.Runs[i].allowForScale(track, found[i].Breaks, opts.pairs(), scaleSE)
		if r := &result.Runs[i]; r.Kind == Launch && r.Accepted() {
			r.allowForAntics(log, track, found[i].Gears, known.ride.Mass)
		}
		mu.Lock()
		defer mu.Unlock()
		measured++
		opts.progress(Measuring, 0.75+0.1*float64(measured)/float64(len(result.Runs)))
	})
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	if opts.Brief {
		opts.progress(Measuring, 1)
		return result, nil
	}
	opts.progress(Fitting, 0.85)
	fitRoadLoad(result, log, known)
	result.findPasses(log, scaleSE)
	measurePowers(result, log, known)
	load, _ := loadOf(result, log, known, "")
	cautionWeakRollOns(result, power.Bike{Load: load, RotatingMass: known.ride.RotatingMass}, dayOf(result, known))
	result.Compared = compareSetups(result, opts.matters())
	opts.progress(Fitting, 1)
	return result, ctx.Err()
}

// newRun makes a Run of a candidate.
func newRun(id int, f detect.Found, track *fusion.Track, log *sensors.Log) Run {
	middle := (f.From + f.To) / 2
	return Run{
		ID: id, Kind: f.Kind, Start: f.From, End: f.To,
		FromMPS: track.At(f.From).V, ToMPS: track.At(f.To).V,
		BearingDeg: pairing.Coast{Fixes: fixesWithin(log, track, f.From, f.To)}.BearingDeg(),
		Setup:      log.Ride.SetupAt(middle).Name,
		Reasons:    f.Reasons, Cautions: f.Cautions,
	}
}

// measure computes the marks of a run, and the exact start of a launch. A
// rejected run has marks too, as far as it reaches them.
func (r *Run) measure(track *fusion.Track, breaks []fusion.Span, pairs []marks.SpeedPair) {
	switch r.Kind {
	case Launch:
		var start marks.Start
		r.Marks, start = marks.OfLaunch(track, track, r.Start, r.End, breaks, pairs)
		if start.First.Known() {
			r.Start, r.FromMPS = start.First.X, start.Creep
		}
		if start.Creep > 0 {
			r.Cautions = append(r.Cautions, finding.New(codeCreep, finding.Speed("at", start.Creep)))
		}
	case RollOn:
		r.Marks = marks.OfRollOn(track, track, r.Start, r.End, breaks, pairs)
	case Stop:
		r.Marks = marks.OfStop(track, track, r.Start, r.End, breaks)
	}
}

// fixesWithin are the fixes that describe the bike between two times.
func fixesWithin(log *sensors.Log, track *fusion.Track, a, b float64) []sensors.Fix {
	lag := func(i int) float64 { return track.Lag.At(log.Fixes[i].T) }
	i := sort.Search(len(log.Fixes), func(i int) bool { return log.Fixes[i].T-lag(i) >= a })
	j := sort.Search(len(log.Fixes), func(i int) bool { return log.Fixes[i].T-lag(i) > b })
	return log.Fixes[i:max(i, j)]
}

// parallel calls f for 0 to n-1 on all cores.
func parallel(n int, f func(i int)) {
	var group sync.WaitGroup
	next := make(chan int)
	for range min(n, runtime.GOMAXPROCS(0)) {
		group.Go(func() {
			for i := range next {
				f(i)
			}
		})
	}
	for i := range n {
		next <- i
	}
	close(next)
	group.Wait()
}

// aboutRecording are the findings about the recording as a whole.
func aboutRecording(log *sensors.Log, track *fusion.Track) []finding.Finding {
	var out []finding.Finding
	if !track.Lag.Found {
		out = append(out, finding.New(codeUsualLag))
	}
	positions, directed := false, false
	for _, f := range log.Fixes {
		positions = positions || f.HasPosition()
		directed = directed || !math.IsNaN(f.BearingDeg)
	}
	if len(log.Fixes) > 0 && !positions && !directed {
		out = append(out, finding.New(codeNoCourse))
	}
	for _, h := range log.Holes() {
		out = append(out, h.Finding())
	}
	return out
}
