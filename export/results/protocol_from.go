package results

import (
	"math"
	"time"

	"stillair/export/words"
	"stillair/runs"
	"stillair/runs/air"
	"stillair/runs/roadload"
	"stillair/sensors/finding"
	"stillair/sensors/units"
)

// exact is how many significant digits a protocol keeps.
const exact = 9

// Tested is a ride with the recording that it was computed from.
type Tested struct {
	Result    *runs.Result
	Recording string // file name
	SHA256    string // of the file, hexadecimal; "": a folder
	Bytes     int64
	Started   time.Time // zero: not known
	Invented  bool
}

// HasTest reports whether there is anything to write a protocol of.
func HasTest(r *runs.Result) bool { return r.Estimate != nil && len(r.RoadLoads) > 0 }

// NewProtocol puts together the protocol of rides and of the comparisons across
// them. Rides without a road load have inputs and no results.
func NewProtocol(program string, rides []Tested, across []runs.Comparison) *Protocol {
	say := words.ForMachines()
	p := &Protocol{Version: ProtocolVersion, Of: "coast-down test", Program: program, Method: method(), Rides: []ProtocolRide{}, Across: []ProtocolChange{}}
	for i, t := range rides {
		ride := protocolRide(say, t)
		for _, c := range t.Result.Compared {
			if c.CdA != nil {
				ride.Differences = append(ride.Differences, protocolChange(say, c, baseOf(t.Result, c.A), [2]int{i, i}))
			}
		}
		p.Rides = append(p.Rides, ride)
	}
	for _, c := range across {
		if c.CdA != nil && c.Base != nil {
			p.Across = append(p.Across, protocolChange(say, c, c.Base.CdA.X, ridesOf(c, rides)))
		}
	}
	return p
}

func method() ProtocolMethod {
	return ProtocolMethod{
		Motion:    "equivalent inertia * dv/dt = -(density/2 * CdA * (u*|u| + sign(u) * air-speed variance) + mass * gravity * Crr * (1 + growth * v) + mass * gravity * slope), u = v + wind against the run; equivalent inertia = mass + rotating mass",
		Density:   "moist air after CIPM-2007 (Picard, Davis, Glaeser, Fujii, Metrologia 45 (2008) 149) with 400 umol/mol of CO2, run by run: pressure by the phone's barometer, else by altitude as in the standard atmosphere (ISO 2533), temperature by altitude as there",
		Fit:       "generalised least squares of all speed curves at once (Gauss-Newton), noise by restricted maximum likelihood, wind and slope of each pair and the road's profile as random effects (Henderson's mixed model)",
		Assumed:   "consider covariance analysis (Schmidt 1966): what the fit holds without knowing it, each with its prior",
		Intervals: "95 %, Student's t with Satterthwaite's degrees of freedom; se is the standard uncertainty (GUM, JCGM 100:2008), the root of the sum of the squares of its budget",
		Reference: ProtocolReference{20, 98210, 0, *number(air.ReferenceDensity(), exact), 15 * units.KMH, 115 * units.KMH},
	}
}

func measured(v runs.Value) Measured {
	x := number(v.X, exact)
	if x == nil {
		return Measured{}
	}
	return Measured{x, number(v.SE, exact)}
}

func protocolRide(say *words.Book, t Tested) ProtocolRide {
	r := t.Result
	out := ProtocolRide{Recording: t.Recording, SHA256: t.SHA256, Bytes: t.Bytes, Bike: r.Ride.Bike, Invented: t.Invented,
		Inputs: inputs(r), Setups: []ProtocolSetup{}, Pairs: []ProtocolPair{}, Runs: []ProtocolRun{}, Road: []ProtocolKnot{},
		Differences: []ProtocolChange{}, LeftOut: leftOut(say, r), Findings: rideFindings(say, r)}
	if !t.Started.IsZero() {
		out.Started = &t.Started
	}
	out.Residuals = residuals(say, r)
	if !HasTest(r) {
		return out
	}
	n := r.Estimate.Noise
	out.Noise = ProtocolNoise{number(n.GustSD, exact), number(n.GustTime, exact), number(n.WhiteSD, exact), number(n.DriftSD, exact), number(n.DriftTime, exact), number(n.ShiftSD, exact), number(n.PostureSD, exact), number(n.RoadSD, exact)}
	for i, l := range r.RoadLoads {
		out.Setups = append(out.Setups, protocolSetup(say, r, i, l))
	}
	out.Pairs, out.Runs = protocolPairs(r), protocolRuns(r)
	for _, k := range r.Estimate.Fitted.Profile {
		out.Road = append(out.Road, ProtocolKnot{number(k.At, exact), measured(k.Slope)})
	}
	return out
}

func inputs(r *runs.Result) ProtocolInputs {
	a := r.Air
	out := ProtocolInputs{Temperature: measured(a.Temperature), Pressure: measured(a.Pressure), Humidity: measured(a.Humidity), Density: measured(a.Density()),
		Gravity: *number(r.Gravity, exact), Mass: measured(runs.Value{X: r.Ride.Mass, SE: r.Ride.MassSD}), RotatingMass: *number(r.Ride.RotatingMass, exact),
		Defaults: list(r.Defaults)}
	if opts, ok := r.Prior(); ok {
		out.Growth, out.GrowthFitted = measured(opts.Slope), measured(r.Estimate.Fitted.Growth)
		out.WindSD, out.GradeSD = opts.WindSD, opts.GradeSD
	}
	return out
}

func protocolSetup(say *words.Book, r *runs.Result, i int, l runs.RoadLoad) ProtocolSetup {
	out := ProtocolSetup{Setup: l.Setup, Mass: number(l.Mass, exact), MassEntered: r.Weighed(l.Setup) || i == 0 && !contains(r.Defaults, "mass_kg"),
		Inertia: number(l.Mass+r.Ride.RotatingMass, exact), Pairs: l.Pairs, Runs: l.Runs, CdA: measured(l.CdA), CdACI: pair(l.CdACI), Crr: measured(l.Crr), CrrCI: pair(l.CrrCI),
		Cov: number(l.Cov, exact), A: measured(l.A), C: measured(l.C), Budget: parts(say, l.Budget, exact)}
	if l.DoF > 0 {
		out.DoF = number(l.DoF, exact)
	}
	curve := r.Estimate.Fitted.Curves[i]
	out.CurveCdA, out.CurveCrr = number(curve[0], exact), number(curve[1], exact)
	for _, s := range r.Ride.Setups {
		if s.Name == l.Setup {
			out.Tyres = s.Tyres
		}
	}
	for _, c := range l.Limits {
		out.Limits = append(out.Limits, ProtocolPart{Code: string(c.Cause), SE: number(c.SE, exact), Text: say.Name(c.Cause)})
	}
	return out
}

func contains(all []string, one string) bool {
	for _, s := range all {
		if s == one {
			return true
		}
	}
	return false
}

// parts leaves out parts that are zero.
func parts(say *words.Book, all []roadload.Part, digits int) []ProtocolPart {
	out := []ProtocolPart{}
	for _, p := range all {
		if p.SE > 0 {
			out = append(out, ProtocolPart{Code: string(p.Code), SE: number(p.SE, digits), Text: say.Say(finding.New(p.Code))})
		}
	}
	return out
}

func protocolPairs(r *runs.Result) []ProtocolPair {
	out := []ProtocolPair{}
	for _, f := range r.Estimate.Pairs {
		p := ProtocolPair{Pair: f.Pair, Runs: []int{}, Wind: measured(f.Wind), Grade: measured(f.Grade), CdA: measured(f.CdA), Crr: measured(f.Crr),
			MoveCdA: number(f.MoveCdA, exact), MoveCrr: number(f.MoveCrr, exact)}
		if f.Shift.SE > 0 {
			p.Shift = measured(f.Shift)
		}
		for _, run := range r.Estimate.Runs {
			if run.Pair == f.Pair && run.Reason.IsZero() {
				p.Runs, p.Setup = append(p.Runs, run.ID), r.RoadLoads[run.Setup].Setup
			}
		}
		out = append(out, p)
	}
	return out
}

func protocolRuns(r *runs.Result) []ProtocolRun {
	out := []ProtocolRun{}
	for _, f := range r.Estimate.Runs {
		if !f.Reason.IsZero() {
			continue
		}
		l, last, there := r.RoadLoads[f.Setup], len(f.T)-1, r.Runs[f.ID-1].Air
		square := 0.0
		for i := range f.V {
			square += math.Pow(f.V[i]-f.Fit[i], 2)
		}
		out = append(out, ProtocolRun{Run: f.ID, Setup: l.Setup, Pair: f.Pair, Direction: f.Dir, Start: moment(f.T[0]), From: number(f.V[0], exact), To: number(f.V[last], exact),
			CoastTime: number(f.T[last]-f.T[0], exact), Mass: number(l.Mass, exact), Inertia: number(l.Mass+r.Ride.RotatingMass, exact), Temperature: number(there.Temperature.X, exact), Pressure: number(there.Pressure.X, exact), Density: number(there.Density().X, exact),
			Against: number(f.Against, exact), DragFactor: number(f.Posture, exact), Misfit: number(f.Misfit, exact), Residual: number(math.Sqrt(square/float64(last+1)), exact), MoveCdA: number(f.MoveCdA, exact), MoveCrr: number(f.MoveCrr, exact),
			Cuts: len(f.Cuts), T: array(f.T), Measured: array(f.V), Fitted: array(f.Fit), Slope: array(f.Road), AirSpread: array(f.AirSpread)})
	}
	return out
}

func array(x []float64) []float64 {
	out := make([]float64, len(x))
	for i, v := range x {
		if n := number(v, exact); n != nil {
			out[i] = *n
		}
	}
	return out
}

func residuals(say *words.Book, r *runs.Result) ProtocolResiduals {
	left := r.Residuals()
	out := ProtocolResiduals{RMS: number(left.RMS, exact), Bins: []ProtocolBin{}, Findings: findingsOf(say, "note", left.Findings)}
	for _, b := range left.Bins {
		out.Bins = append(out.Bins, ProtocolBin{number(b.From, exact), number(b.To, exact), b.Pairs, number(b.Out, exact), number(b.Back, exact), measured(b.Opposite), measured(b.Alike)})
	}
	return out
}

func leftOut(say *words.Book, r *runs.Result) []ProtocolRejected {
	out := []ProtocolRejected{}
	for _, run := range r.Runs {
		if run.Kind == runs.CoastDown && !run.Accepted() {
			out = append(out, ProtocolRejected{run.ID, run.Setup, findingsOf(say, "reason", run.Reasons)})
		}
	}
	return out
}

func baseOf(r *runs.Result, setup string) float64 {
	for _, l := range r.RoadLoads {
		if l.Setup == setup {
			return l.CdA.X
		}
	}
	return math.NaN()
}

func protocolChange(say *words.Book, c runs.Comparison, base float64, rides [2]int) ProtocolChange {
	v := c.CdA
	out := ProtocolChange{A: c.A, B: c.B, CdA: measured(v.Delta), TakenBack: number(c.TakenBack, exact), WarmCdA: number(c.WarmCdA, exact), WarmCrr: number(c.WarmCrr, exact), CI: pair(v.CI), P: number(v.P, exact), Percent: number(v.Percent, exact), PercentCI: pair(v.CIPercent),
		Budget: parts(say, c.Budget, exact), Findings: append([]Finding{findingOf(say, "verdict", words.Verdict(c.B, words.Drag(), *v))}, findingsOf(say, "note", c.Notes)...), BaseCdA: number(base, exact), InOneRide: rides[0] == rides[1], Recordings: rides}
	if c.Crr != nil {
		out.Crr = measured(c.Crr.Delta)
	}
	return out
}

// ridesOf finds the rides of a comparison by what runs.Named calls their setups.
func ridesOf(c runs.Comparison, rides []Tested) [2]int {
	find := func(name string) int {
		for i, t := range rides {
			for _, l := range t.Result.RoadLoads {
				if (runs.Named{Name: t.Recording, Result: t.Result}).Call(l.Setup) == name {
					return i
				}
			}
		}
		return -1
	}
	return [2]int{find(c.A), find(c.B)}
}
