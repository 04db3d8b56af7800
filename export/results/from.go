package results

import (
	"math"

	"stillair/export/words"
	"stillair/runs"
)

// From returns the document of a result.
func From(r *runs.Result) *Document {
	say := words.ForMachines()
	d := &Document{Version: Version, Bike: r.Ride.Bike, Defaults: list(r.Defaults), Warnings: say.Texts(r.Warnings),
		Runs: []Run{}, RoadLoad: []RoadLoad{}, Comparisons: []Comparison{}, Power: []Power{}}
	if t := r.Track; t != nil {
		d.GNSSLag, d.GNSSLagSE = value(runs.Value{X: t.Lag.Seconds, SE: t.Lag.SE})
		d.GNSSLagAssumed = !t.Lag.Found
		if t.Lag.Found {
			d.GNSSSmoothing, d.GNSSSmoothingSE = value(runs.Value{X: t.Receiver.Smoothing, SE: t.Receiver.SmoothingSE})
		}
		d.Notes = append(d.Notes, say.Texts(t.Notes)...)
	}
	for _, n := range r.Notes {
		d.Notes = append(d.Notes, say.Note(n))
	}
	d.Findings = rideFindings(say, r)
	for _, run := range r.Runs {
		out := fromRun(say, run)
		out.Gear = GearOf(r, run)
		d.Runs = append(d.Runs, out)
	}
	for _, p := range r.Passes {
		d.Passes = append(d.Passes, fromPass(say, p))
	}
	for _, l := range r.RoadLoads {
		d.RoadLoad = append(d.RoadLoad, fromRoadLoad(say, l))
	}
	for _, c := range r.Compared {
		d.Comparisons = append(d.Comparisons, fromComparison(say, c))
	}
	for _, p := range r.Powers {
		d.Power = append(d.Power, fromPower(say, p))
	}
	return d
}

// GearOf is the gear of a roll-on or pull, "" where it is not known.
func GearOf(r *runs.Result, run runs.Run) string {
	if run.Kind != runs.RollOn && run.Kind != runs.Pull {
		return ""
	}
	return r.Gear(run)
}

// list returns s, an empty list instead of none: null is harder to read.
func list(s []string) []string {
	if s == nil {
		return []string{}
	}
	return s
}

func fromRun(say *words.Book, r runs.Run) Run {
	out := Run{ID: r.ID, Kind: string(r.Kind), Start: moment(r.Start), End: moment(r.End),
		BearingDeg: number(r.BearingDeg, 4), Setup: r.Setup, Accepted: r.Accepted(), Reasons: list(say.Texts(r.Reasons)),
		Cautions: say.Texts(r.Cautions), Pair: r.Pair, From: number(r.FromMPS, digits), To: number(r.ToMPS, digits)}
	out.Findings = append(findingsOf(say, "reason", r.Reasons), findingsOf(say, "caution", r.Cautions)...)
	for _, m := range r.Marks {
		j := Mark{Mark: m.Name}
		j.Time, j.TimeSE = value(m.Time)
		j.Rollout, j.RolloutSE = value(m.Rollout)
		j.Speed, j.SpeedSE = value(m.Speed)
		j.Distance, j.DistanceSE = value(m.Distance)
		out.Marks = append(out.Marks, j)
	}
	if r.Revs != nil && r.Revs.From != runs.NoRevs {
		out.Engine = fromRevs(*r.Revs)
	}
	return out
}

func fromRevs(r runs.Revs) *Engine {
	out := &Engine{From: string(r.From), Gear: r.Gear, RPMPerMPS: number(r.RPMPerMPS, digits)}
	for i, t := range r.Speed.T {
		rpm, se := number(r.Speed.RPM[i], digits), number(r.Speed.SE[i], seDigits)
		if rpm == nil || se == nil {
			continue // parallel arrays cannot have missing values
		}
		out.T, out.RPM, out.SE = append(out.T, *moment(t)), append(out.RPM, *rpm), append(out.SE, *se)
	}
	return out
}

func fromRoadLoad(say *words.Book, l runs.RoadLoad) RoadLoad {
	out := RoadLoad{Setup: l.Setup, Pairs: l.Pairs, Runs: l.Runs, Mass: number(l.Mass, digits),
		CdACI: pair(l.CdACI), CrrCI: pair(l.CrrCI), Cov: number(l.Cov, seDigits), Budget: parts(say, l.Budget, seDigits), AirDensity: number(l.Density, digits),
		Notes: say.Texts(l.Notes), Findings: findingsOf(say, "note", l.Notes)}
	if out.Runs == nil {
		out.Runs = []int{}
	}
	if l.DoF > 0 && !math.IsInf(l.DoF, 1) {
		out.DoF = number(l.DoF, 4)
	}
	out.CdANoise, out.CdAAssumed = number(l.CdANoise, seDigits), number(l.CdAAssumed, seDigits)
	out.CrrNoise, out.CrrAssumed = number(l.CrrNoise, seDigits), number(l.CrrAssumed, seDigits)
	out.CdA, out.CdASE = value(l.CdA)
	out.Crr, out.CrrSE = value(l.Crr)
	out.A, out.ASE = value(l.A)
	out.C, out.CSE = value(l.C)
	return out
}
