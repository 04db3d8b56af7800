package runs

import (
	"math"
	"slices"

	"stillair/fusion"
	"stillair/runs/air"
	"stillair/runs/pairing"
	"stillair/runs/roadload"
	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/units"
)

// fitRoadLoad pairs the coast-downs of a result, fits the road loads of all
// setups at once and stores in each run how it was used.
func fitRoadLoad(result *Result, log *sensors.Log, known conditions) {
	coasts, where := coastDowns(result, log)
	if len(coasts) == 0 {
		return
	}
	for i, a := range known.airs(log, coasts) {
		result.Runs[where[i]].Air = a
	}
	names, input, used := roadRuns(result, coasts, pairUp(result, coasts, where), where, known)
	if len(input) == 0 {
		result.Warnings = append(result.Warnings, finding.New(codeNoPairs))
		return
	}
	opts := known.options(result.Gravity, names)
	across := crossWind(known.ride.Station, used)
	if across.Known() {
		opts.CrossRMS = math.Hypot(across.X, across.SE)
	}
	for i := range input {
		input[i].Height = roadload.Heights(input[i].T, log.Pressure, input[i].Density, opts.Gravity)
	}
	est, f, err := fitPossible(result, fitted{names, input, used}, opts)
	if err != nil {
		result.noRoadLoad(err)
		return
	}
	names, input, used = f.names, f.runs, f.places
	if across.Known() {
		est.Notes = append(est.Notes, crossNote(across))
	}
	result.Estimate = est
	result.coasts = &coastData{places: used, runs: input, opts: opts}
	storeFits(result, est)
	steps, causes := stepwise(input, opts), limits(input, est, opts)
	for i, name := range names {
		load := newRoadLoad(result, name, i, est, known, opts)
		if causes != nil {
			load.Limits = causes[i]
		}
		if steps != nil {
			load.Stepwise = &steps[i]
		}
		result.RoadLoads = append(result.RoadLoads, load)
	}
}

// options returns the prior knowledge for the fit of these setups.
func (c conditions) options(gravity float64, setups []string) roadload.Options {
	density := c.air.Density()
	opts := roadload.DefaultOptions(c.ride.WindSD)
	opts.MassSD = c.ride.MassSD / c.ride.Mass
	opts.DensitySD = math.Hypot(density.SE/density.X, c.scaleSE) // the drag area is proportional to both
	opts.Gravity = gravity
	for i, name := range setups {
		sd := 0.0
		if i > 0 && !c.weighed[name] {
			sd = plausibleLoad / c.ride.Mass
		}
		opts.LoadSD = append(opts.LoadSD, sd)
	}
	return opts
}

// coastDowns are the coast-downs with their fixes, rejected ones too, and the
// index of each in the result.
func coastDowns(result *Result, log *sensors.Log) (coasts []pairing.Coast, where []int) {
	for i, r := range result.Runs {
		if r.Kind != CoastDown {
			continue
		}
		coasts = append(coasts, pairing.Coast{ID: r.ID, Setup: r.Setup, Start: r.Start, End: r.End,
			Fixes: fixesWithin(log, result.Track, r.Start+settling(result.Track.Receiver), r.End)})
		where = append(where, i)
	}
	return coasts, where
}

// pairUp pairs the accepted coast-downs. Rejected ones are paired first, which
// removes their counterparts, since the two were ridden as a pair in the same
// wind; the rest are then paired among themselves.
func pairUp(result *Result, coasts []pairing.Coast, where []int) []pairing.Placed {
	placed := pairing.Pair(coasts)
	last, spoilt := 0, map[int]bool{}
	for i, p := range placed {
		last = max(last, p.Pair)
		if !result.Runs[where[i]].Accepted() {
			spoilt[p.Pair] = true
		}
	}
	var again []pairing.Coast
	var index []int
	for i := range placed {
		if spoilt[placed[i].Pair] {
			placed[i].Pair, placed[i].Why = 0, finding.New(codeOtherRejected)
		}
		if placed[i].Pair == 0 && result.Runs[where[i]].Accepted() {
			again, index = append(again, coasts[i]), append(index, i)
		}
	}
	for k, p := range pairing.Pair(again) {
		if p.Pair > 0 {
			placed[index[k]].Pair = last + p.Pair
		}
	}
	return placed
}

// settling is the time that a receiver's smoothing takes to settle after the
// clutch was pulled, s; 0 if no smoothing was detected.
func settling(r fusion.Receiver) float64 {
	const memory = 4 // time constants, after which 2 % remain
	if !(r.Smoothing > 2*r.SmoothingSE) {
		return 0
	}
	return memory * r.Smoothing
}

// roadRuns converts the paired coast-downs to the input of the fit, with the
// names of their setups in order and the index of each run; the others get a
// reason.
func roadRuns(result *Result, coasts []pairing.Coast, placed []pairing.Placed, where []int,
	known conditions) (names []string, input []roadload.Run, used []pairing.Coast) {
	number := map[string]int{}
	for i, c := range coasts {
		run := &result.Runs[where[i]]
		if !run.Accepted() {
			continue
		}
		if placed[i].Pair == 0 {
			run.Cautions = append(run.Cautions, finding.New(codeNotPaired, finding.Of("why", placed[i].Why)))
			continue
		}
		run.Pair = placed[i].Pair
		if _, seen := number[c.Setup]; !seen {
			number[c.Setup] = len(names)
			names = append(names, c.Setup)
		}
		mass := massAt(known.ride, c.MiddleTime())
		r := roadload.Run{ID: c.ID, Setup: number[c.Setup], Pair: placed[i].Pair, Dir: placed[i].Dir, Pos: placed[i].Pos,
			Mass: mass, Inertia: mass + known.ride.RotatingMass, Density: run.Air.Density().X}
		for _, f := range c.Fixes {
			r.T = append(r.T, f.T-result.Track.Lag.At(f.T))
			r.V = append(r.V, f.Speed)
			r.Alt = append(r.Alt, f.Alt)
		}
		input, used = append(input, r), append(used, c)
	}
	return names, input, used
}

// massAt is the mass as ridden at a time, kg.
func massAt(ride sensors.Ride, t float64) float64 {
	if m := ride.SetupAt(t).Mass; !math.IsNaN(m) {
		return m
	}
	return ride.Mass
}

// storeFits stores in each run its result of the fit.
func storeFits(result *Result, est *roadload.Estimate) {
	byID := map[int]*Run{}
	for i := range result.Runs {
		byID[result.Runs[i].ID] = &result.Runs[i]
	}
	shifts := map[int]roadload.PairFit{}
	for _, p := range est.Pairs {
		shifts[p.Pair] = p
	}
	for _, f := range est.Runs {
		run := byID[f.ID]
		if !f.Reason.IsZero() {
			run.Reasons = append(run.Reasons, f.Reason)
			continue
		}
		run.Curve = &Curve{T: f.T, V: f.V, Fit: f.Fit}
		if p := shifts[run.Pair]; p.WindChanged() {
			run.Cautions = append(run.Cautions, finding.New(codeWindChanged, finding.Wind("by", math.Abs(p.Shift.X)).With(p.Shift.SE)).OfRun(run.ID))
		}
		for _, c := range f.Cuts {
			run.Cautions = append(run.Cautions, finding.New(codeLeftOut, finding.Time("for", c.To-c.From),
				finding.Speed("at", result.Track.At((c.From+c.To)/2).V), finding.Of("why", c.Reason)).OfRun(run.ID).Within(c.From, c.To))
		}
	}
}

// newRoadLoad assembles the road load of one setup.
func newRoadLoad(result *Result, name string, setup int, est *roadload.Estimate, known conditions, opts roadload.Options) RoadLoad {
	load, noise := est.Total(setup), est.Loads[setup]
	out := RoadLoad{
		Setup: name, Pairs: load.Pairs, Mass: known.ride.Mass, CdA: load.CdA, Crr: load.Crr, Cov: load.Cov,
		DoF: load.DoF, CdACI: load.CdACI, CrrCI: load.CrrCI, Notes: est.Notes,
	}
	scale := math.Hypot(opts.MassSD, opts.DensitySD) * load.CdA.X // already in the fit's own standard error
	out.CdANoise = math.Sqrt(math.Max(0, noise.CdA.SE*noise.CdA.SE-scale*scale))
	out.CdAAssumed = math.Sqrt(math.Max(0, load.CdA.SE*load.CdA.SE-out.CdANoise*out.CdANoise))
	out.CrrNoise, out.CovNoise = noise.Crr.SE, noise.Cov
	noisy := finding.Area("noise", out.CdA.X).With(out.CdANoise)
	out.Notes = append(slices.Clone(est.Notes), finding.New(codeTwoParts, noisy, finding.Area("assumed", out.CdA.X).With(out.CdAAssumed)).OfSetup(name))
	out.CrrAssumed = math.Sqrt(math.Max(0, load.Crr.SE*load.Crr.SE-noise.Crr.SE*noise.Crr.SE))
	var ridden []Run
	for _, f := range est.Runs {
		run := result.Runs[f.ID-1]
		if f.Reason.IsZero() && run.Setup == name {
			out.Runs, ridden = append(out.Runs, f.ID), append(ridden, run)
			out.Mass = massAt(known.ride, run.Start)
		}
	}
	there := known.air
	if len(ridden) > 0 {
		there = meanAir(ridden)
	}
	out.Density = there.Density().X
	out.Budget, _ = est.Budget(setup)
	if gearIn(noise.Crr) > gearMentioned {
		out.Notes = append(out.Notes, finding.New(codeHighCrr, finding.Num("crr", out.Crr.X).With(out.Crr.SE)).OfSetup(name))
	}
	c := load.At(reference(out.Mass, opts))
	out.A, out.C = c.A, c.C
	out.CrrAt20, out.AAt20 = at20(out.Crr, there.Temperature), at20(out.A, there.Temperature)
	if apart := math.Abs(there.Temperature.X - tyreReference); apart > tellApart && !slices.Contains(known.defaults, "air.temperature_c") {
		out.Notes = append(out.Notes, finding.New(codeAt20, finding.Temperature("reference", tyreReference), finding.Temperature("at", there.Temperature.X),
			finding.Num("crr", out.CrrAt20.X).With(out.CrrAt20.SE), finding.Force("a", out.AAt20.X).With(out.AAt20.SE)).OfSetup(name))
	}
	out.fit, out.setup = est, setup
	out.vehicle = roadload.Vehicle{Mass: out.Mass, Inertia: out.Mass + known.ride.RotatingMass, Density: out.Density, Gravity: opts.Gravity, Slope: opts.Slope.X}
	return out
}

// tyreCooling is the relative fall of rolling resistance per kelvin: the
// correction factor K0 of coast-down standards (from memory), towards their
// reference of 20 °C. Tyres were found between 0.6 and 0.9 %.
const (
	tyreCooling   = 0.0086 // 1/K
	tyreCoolingSD = 0.002  // 1/K
	tyreReference = 20.0   // °C
	tellApart     = 3.0    // K, whose effect equals the uncertainty of five pairs: 2.6 %
)

// at20 corrects a rolling resistance from the air's temperature to 20 °C.
func at20(rolling, air Value) Value {
	apart := air.X - tyreReference
	factor := 1 + tyreCooling*apart
	own := rolling.X * math.Hypot(tyreCooling*air.SE, tyreCoolingSD*apart)
	return Value{X: rolling.X * factor, SE: math.Hypot(rolling.SE*factor, own)}
}

// reference is the state at which force coefficients are quoted: dry air of
// 20 °C and 98.21 kPa, between 15 and 115 km/h (SAE J2263, its public abstract
// and summaries), and the mass as ridden.
func reference(mass float64, opts roadload.Options) roadload.Reference {
	return roadload.Reference{
		Mass:    Value{X: mass, SE: mass * opts.MassSD},
		Density: air.ReferenceDensity(), Gravity: opts.Gravity, Slope: opts.Slope.X,
		From: 15 * units.KMH, To: 115 * units.KMH,
	}
}

// stepwise computes the road loads by the method of the regulations, for
// comparison; the fit does not depend on it.
func stepwise(input []roadload.Run, opts roadload.Options) []roadload.Load {
	const width = 10 * units.KMH
	loads, err := roadload.Stepwise(input, opts, width)
	if err != nil {
		return nil
	}
	return loads
}
