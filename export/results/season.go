package results

import (
	"cmp"
	"io"
	"math"
	"slices"
	"time"

	"stillair/export/words"
	"stillair/runs"
	"stillair/runs/air"
	"stillair/runs/measure"
	"stillair/runs/season"
	"stillair/sensors/finding"
)

// SeasonVersion is the version of the season document.
const SeasonVersion = 1

// SeasonDocument is the joint result of many rides, bike by bike.
type SeasonDocument struct {
	Version int          `json:"version"`
	Bikes   []SeasonBike `json:"bikes"`
}

// SeasonBike is the season of one bike.
type SeasonBike struct {
	Bike    string         `json:"bike"`
	Rides   []SeasonRide   `json:"rides"`
	Figures []SeasonFigure `json:"figures"`
	TwoWay  []SeasonTwoWay `json:"two_way"`
	Passes  []SeasonPass   `json:"passes,omitempty"`
	Budget  *SeasonBudget  `json:"drag_budget,omitempty"`
	Without *Finding       `json:"no_drag_budget,omitempty"` // why there is none
}

// SeasonRide is one ride in the list.
type SeasonRide struct {
	Ride            string       `json:"ride"`
	Started         *time.Time   `json:"started,omitempty"`
	AirDensity      *float64     `json:"air_density_kgpm3,omitempty"`
	DensityAltitude *float64     `json:"density_altitude_m,omitempty"`
	Loads           []SeasonLoad `json:"road_load"`
}

// SeasonLoad is one setup of a ride.
type SeasonLoad struct {
	Setup string   `json:"setup"`
	CdA   Measured `json:"cda_m2"`
	Crr   Measured `json:"crr"`
	// The part of the standard error of CdA that differs from ride to ride.
	CdAByRide *float64 `json:"cda_by_ride_se_m2"`
}

// SeasonFigure is how one figure of one setup repeated. Numbers are in SI.
type SeasonFigure struct {
	Figure  string      `json:"figure"`         // CdA, Crr, or the name of a mark
	Kind    string      `json:"kind,omitempty"` // of the runs, for a mark
	Setup   string      `json:"setup"`
	Gear    string      `json:"gear,omitempty"`
	Rollout bool        `json:"from_rollout,omitempty"`
	N       int         `json:"n"` // rides, or runs for a mark
	Mean    Measured    `json:"mean"`
	MeanCI  *[2]float64 `json:"mean_ci95"`
	Best    *float64    `json:"best"`
	Typical *float64    `json:"typical"` // median
	Spread  *float64    `json:"spread,omitempty"`
	Own     *float64    `json:"spread_by_noise,omitempty"`
	Trend   Measured    `json:"trend_in_30_days"`
	TrendCI *[2]float64 `json:"trend_ci95,omitempty"`
	TrendP  *float64    `json:"trend_p,omitempty"`
}

// SeasonTwoWay is the mean of two runs the opposite ways.
type SeasonTwoWay struct {
	Ride    string   `json:"ride"`
	Mark    string   `json:"mark"`
	Kind    string   `json:"kind"`
	Setup   string   `json:"setup"`
	Gear    string   `json:"gear,omitempty"`
	Rollout bool     `json:"from_rollout,omitempty"`
	Runs    [2]int   `json:"runs"`
	Apart   *float64 `json:"apart_s"` // between their starts
	Mean    Measured `json:"mean_s"`
}

// SeasonPass is the speed over one distance of a flying pass, both ways. Speeds are in
// m/s, as in a ride's results.
type SeasonPass struct {
	Ride     string   `json:"ride"`
	Setup    string   `json:"setup"`
	Over     string   `json:"over"`
	Distance *float64 `json:"distance_m"`
	Apart    *float64 `json:"apart_s"`
	There    Measured `json:"there_mps"`
	Back     Measured `json:"back_mps"`
	Mean     Measured `json:"mean_mps"`
	Half     Measured `json:"half_difference_mps"`
}

// SeasonBudget is the effect of each part, from all comparisons together.
type SeasonBudget struct {
	Base    string         `json:"base"`
	BaseCdA Measured       `json:"base_cda_m2"`
	Effects []SeasonEffect `json:"effects"`
	Cov     [][]float64    `json:"cov_m4"` // of the effects, in their order
	Chi2    *float64       `json:"chi2"`
	DoF     int            `json:"dof"`
	Widened *float64       `json:"widened"` // factor applied to all standard uncertainties
	Notes   []Finding      `json:"notes,omitempty"`
}

// SeasonEffect is one part. Its own interval is CI; what is found, and the
// interval in percent, hold for all parts together.
type SeasonEffect struct {
	Part      string      `json:"part"`
	Instead   string      `json:"instead_of,omitempty"`
	CdA       Measured    `json:"delta_cda_m2"`
	CI        *[2]float64 `json:"ci95_m2"`
	Rides     int         `json:"rides"`
	Finding   string      `json:"finding"` // as of a comparison
	Code      string      `json:"code"`    // of Finding
	P         *float64    `json:"p,omitempty"`
	Percent   *float64    `json:"delta_cda_pct,omitempty"` // of the base
	PercentCI *[2]float64 `json:"delta_cda_ci95_pct,omitempty"`
	MoreRides int         `json:"more_rides,omitempty"` // approximate number of further rides with it until it is clear
}

// SeasonRideOf extracts from a document what a season needs.
func (d *Document) SeasonRideOf(name string) season.Ride {
	out := season.Ride{Name: name, Bike: d.Bike}
	out.Started, _ = time.Parse(time.RFC3339, d.Started) // unknown if it cannot be parsed
	for _, l := range d.RoadLoad {
		if !isFinite(l.CdA, l.CdASE, l.Crr, l.CrrSE) {
			continue
		}
		load := season.Load{Setup: l.Setup, CdA: runs.Value{X: *l.CdA, SE: *l.CdASE}, Crr: runs.Value{X: *l.Crr, SE: *l.CrrSE}, Noise: *l.CdASE}
		load.CrrNoise = *l.CrrSE
		if isFinite(l.CdANoise, l.CrrNoise) {
			load.Noise, load.CrrNoise = *l.CdANoise, *l.CrrNoise
			load.Day = l.byDay()
		}
		if l.AirDensity != nil {
			out.Density = *l.AirDensity
		}
		out.Loads = append(out.Loads, load)
	}
	for _, c := range d.Comparisons {
		if isFinite(c.DeltaCdA, c.SE) {
			out.Apart = append(out.Apart, season.Difference{A: c.A, B: c.B, CdA: runs.Value{X: *c.DeltaCdA, SE: *c.SE}})
		}
	}
	for _, r := range d.Runs {
		if r.Accepted && r.Start != nil && (r.Kind == string(runs.Launch) || r.Kind == string(runs.RollOn)) {
			out.Times = append(out.Times, r.times()...)
		}
	}
	for _, p := range d.Passes {
		if p.Accepted && p.Apart != nil {
			out.Passes = append(out.Passes, p.forSeason()...)
		}
	}
	return out
}

// byDay is the part of a drag area's uncertainty that differs between days and
// is not noise: all that is assumed, where the document does not separate it.
func (l *RoadLoad) byDay() float64 {
	if len(l.Budget) == 0 {
		return math.Sqrt(math.Max(0, math.Pow(*l.CdASE, 2)-math.Pow(*l.CdANoise, 2)))
	}
	day := 0.0
	for _, p := range l.Budget {
		switch p.Code {
		case "budget.mass", "budget.air", "budget.yaw", "budget.air_across", "budget.cold_tyres", "budget.valley", "budget.load_not_entered":
			day = math.Hypot(day, *p.SE)
		}
	}
	return day
}

// times are the marks of a run, a launch's from the rollout where it has one.
func (r *Run) times() []season.Time {
	bearing := math.NaN()
	if r.BearingDeg != nil {
		bearing = *r.BearingDeg
	}
	var out []season.Time
	for _, m := range r.Marks {
		t, se := m.Rollout, m.RolloutSE
		rollout := isFinite(t, se)
		if !rollout {
			t, se = m.Time, m.TimeSE
		}
		if isFinite(t, se) {
			out = append(out, season.Time{Mark: m.Mark, Kind: r.Kind, Setup: r.Setup, Gear: r.Gear, Rollout: rollout, Run: r.ID, Start: *r.Start, Bearing: bearing, Time: measure.Value{X: *t, SE: *se}})
		}
	}
	return out
}

func isFinite(all ...*float64) bool { return !slices.Contains(all, nil) }

// NewSeason puts rides together, bike by bike. base is the setup that parts are
// counted from, "" for the one in most rides; within is how long after a run its
// opposite may begin.
func NewSeason(rides []season.Ride, base string, within time.Duration) *SeasonDocument {
	say := words.ForMachines()
	out := &SeasonDocument{Version: SeasonVersion, Bikes: []SeasonBike{}}
	var names []string
	of := map[string][]season.Ride{}
	for _, r := range rides {
		if of[r.Bike] == nil {
			names = append(names, r.Bike)
		}
		of[r.Bike] = append(of[r.Bike], r)
	}
	for _, name := range names {
		all := of[name]
		slices.SortStableFunc(all, func(a, b season.Ride) int { return cmp.Or(a.Started.Compare(b.Started), cmp.Compare(a.Name, b.Name)) })
		out.Bikes = append(out.Bikes, seasonOf(say, name, all, base, within))
	}
	return out
}

func seasonOf(say *words.Book, name string, rides []season.Ride, base string, within time.Duration) SeasonBike {
	out := SeasonBike{Bike: name, Rides: []SeasonRide{}, Figures: figuresOf(rides), TwoWay: []SeasonTwoWay{}}
	for _, r := range rides {
		out.Rides = append(out.Rides, listed(r))
		for _, t := range season.TwoWays(r.Times, within) {
			out.TwoWay = append(out.TwoWay, SeasonTwoWay{Ride: r.Name, Mark: t.There.Mark, Kind: t.There.Kind, Setup: t.There.Setup, Gear: t.There.Gear, Rollout: t.There.Rollout, Runs: [2]int{t.There.Run, t.Back.Run},
				Apart: number(math.Abs(t.Back.Start-t.There.Start), 4), Mean: measured(t.Mean)})
		}
	}
	out.Passes = passesOf(rides, within)
	b, err := season.NewBudget(rides, base)
	if failed, ok := err.(*finding.Error); ok {
		why := findingOf(say, "note", failed.Finding)
		out.Without = &why
	}
	if err == nil {
		out.Budget = budgetOf(say, b)
	}
	return out
}

func listed(r season.Ride) SeasonRide {
	out := SeasonRide{Ride: r.Name, Loads: []SeasonLoad{}}
	if !r.Started.IsZero() {
		out.Started = &r.Started
	}
	if r.Density > 0 {
		out.AirDensity, out.DensityAltitude = number(r.Density, digits), number(air.DensityAltitude(r.Density), 4)
	}
	for _, l := range r.Loads {
		out.Loads = append(out.Loads, SeasonLoad{l.Setup, measured(l.CdA), measured(l.Crr), number(math.Hypot(l.Noise, l.Day), exact)})
	}
	return out
}

// figureKey identifies a figure across rides.
type figureKey struct {
	figure, kind, setup, gear string
	rollout                   bool
}

func figuresOf(rides []season.Ride) []SeasonFigure {
	points := map[figureKey][]season.Point{}
	var order []figureKey
	add := func(k figureKey, p season.Point) {
		if points[k] == nil {
			order = append(order, k)
		}
		points[k] = append(points[k], p)
	}
	for _, r := range rides {
		for _, l := range r.Loads {
			add(figureKey{figure: "CdA", setup: l.Setup}, season.Point{Started: r.Started, Value: l.CdA, Noise: math.Hypot(l.Noise, l.Day), Common: l.Common()})
			add(figureKey{figure: "Crr", setup: l.Setup}, season.Point{Started: r.Started, Value: l.Crr, Noise: l.CrrNoise, Common: math.Sqrt(math.Max(0, l.Crr.SE*l.Crr.SE-l.CrrNoise*l.CrrNoise))})
		}
		for _, t := range r.Times {
			add(figureKey{t.Mark, t.Kind, t.Setup, t.Gear, t.Rollout}, season.Point{Started: r.Started, Value: t.Time, Noise: t.Time.SE})
		}
	}
	out := []SeasonFigure{}
	for _, k := range order {
		r := season.NewRepeat(points[k])
		f := SeasonFigure{Figure: k.figure, Kind: k.kind, Setup: k.setup, Gear: k.gear, Rollout: k.rollout, N: len(r.Points), Mean: measured(r.Mean), MeanCI: pair(r.MeanCI), Best: number(r.Least, exact), Typical: number(r.Typical, exact),
			Spread: number(r.Spread, 4), Own: number(r.Own, 4), TrendP: number(r.TrendP, 3)}
		if r.Trend.Known() {
			f.Trend, f.TrendCI = measured(r.Trend), pair(r.TrendCI)
		}
		out = append(out, f)
	}
	return out
}

func budgetOf(say *words.Book, b *season.Budget) *SeasonBudget {
	out := &SeasonBudget{Base: b.Base, BaseCdA: measured(b.BaseCdA), Effects: []SeasonEffect{}, Cov: [][]float64{}, Chi2: number(b.Chi2, digits), DoF: b.DoF, Widened: number(b.Widened, digits),
		Notes: findingsOf(say, "note", b.Notes)}
	verdicts := b.Verdicts(runs.DefaultMatters)
	for i, e := range b.Effects {
		v := verdicts[i]
		effect := SeasonEffect{Part: e.Part, Instead: e.Instead, CdA: measured(e.CdA), CI: pair(e.CI), Rides: e.Rides,
			Finding: say.Name(v.Finding), Code: string(v.Finding), P: number(v.P, 3), Percent: number(v.Percent, digits), PercentCI: pair(v.CIPercent)}
		if !v.Beyond {
			effect.MoreRides = v.MorePairs
		}
		out.Effects = append(out.Effects, effect)
		row := make([]float64, len(b.Effects))
		for j := range row {
			row[j] = *number(b.Cov.At(i, j), exact)
		}
		out.Cov = append(out.Cov, row)
	}
	return out
}

// WriteSeason writes the season, indented so that a person can read it too.
func WriteSeason(w io.Writer, d *SeasonDocument) error { return encode(w, d) }
