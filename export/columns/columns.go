// Package columns writes rides and their results as Apache Parquet, the open
// columnar format that query engines load: samples of a ride, and one table
// each for runs, marks, flying passes, road loads, comparisons and power. Every table starts with the ride's name,
// and what was measured with the bike's, so that the files of many rides can be
// read as one. Reader reads them back, as far as a season needs.
//
// Column names are those of the results JSON, with the unit at the end.
// What was not measured is null.
package columns

import (
	"io"
	"math"
	"time"

	"github.com/parquet-go/parquet-go"
	"github.com/parquet-go/parquet-go/compress/zstd"

	"stillair/export/results"
	"stillair/export/words"
	"stillair/runs"
	"stillair/sensors/finding"
)

// Ride is what the rows of a ride say about it.
type Ride struct {
	Name    string
	Started time.Time // zero: not to be disclosed
}

// started is the date as the results have it, nil where there is none.
func (r Ride) started() *string {
	if r.Started.IsZero() {
		return nil
	}
	s := r.Started.UTC().Format(time.RFC3339)
	return &s
}

// Sample is one row of a ride's track.
type Sample struct {
	Ride    string   `parquet:"ride,dict"`
	T       float64  `parquet:"t_s"`
	Speed   float64  `parquet:"speed_mps"`
	SpeedSE float64  `parquet:"speed_se_mps"`
	Accel   float64  `parquet:"accel_mps2"`
	Dist    float64  `parquet:"distance_m"`
	Yaw     *float64 `parquet:"yaw_radps,optional"`
}

// Run is one row of the table of runs.
type Run struct {
	Ride     string   `parquet:"ride,dict"`
	Bike     string   `parquet:"bike,dict"`
	ID       int32    `parquet:"id"`
	Kind     string   `parquet:"kind,dict"`
	Setup    string   `parquet:"setup,dict"`
	Start    float64  `parquet:"start_s"`
	End      float64  `parquet:"end_s"`
	From     float64  `parquet:"from_mps"`
	To       float64  `parquet:"to_mps"`
	Bearing  *float64 `parquet:"bearing_deg,optional"`
	Accepted bool     `parquet:"accepted"`
	Reasons  []string `parquet:"reasons,list"`
	Pair     *int32   `parquet:"pair,optional"`
	Cautions []string `parquet:"cautions,list"`

	ReasonCodes  []string `parquet:"reason_codes,list"` // parallel to Reasons
	CautionCodes []string `parquet:"caution_codes,list"`
	Gear         *string  `parquet:"gear,optional,dict"`
	Started      *string  `parquet:"started,optional,dict"` // RFC 3339, of the ride
}

// Mark is one row of the table of marks.
type Mark struct {
	Ride      string   `parquet:"ride,dict"`
	Bike      string   `parquet:"bike,dict"`
	Run       int32    `parquet:"run"`
	Kind      string   `parquet:"kind,dict"`
	Setup     string   `parquet:"setup,dict"`
	Mark      string   `parquet:"mark,dict"`
	Time      *float64 `parquet:"s,optional"`
	TimeSE    *float64 `parquet:"se_s,optional"`
	Rollout   *float64 `parquet:"rollout_s,optional"`
	RolloutSE *float64 `parquet:"rollout_se_s,optional"`
	Speed     *float64 `parquet:"speed_mps,optional"`
	SpeedSE   *float64 `parquet:"speed_se_mps,optional"`
	Dist      *float64 `parquet:"distance_m,optional"`
	DistSE    *float64 `parquet:"distance_se_m,optional"`
}

// RoadLoad is one row of the table of road loads.
type RoadLoad struct {
	Ride    string  `parquet:"ride,dict"`
	Bike    string  `parquet:"bike,dict"`
	Setup   string  `parquet:"setup,dict"`
	Pairs   int32   `parquet:"pairs"`
	CdA     float64 `parquet:"cda_m2"`
	CdASE   float64 `parquet:"cda_se_m2"`
	CdALow  float64 `parquet:"cda_low95_m2"`
	CdAHigh float64 `parquet:"cda_high95_m2"`
	Crr     float64 `parquet:"crr"`
	CrrSE   float64 `parquet:"crr_se"`
	CrrLow  float64 `parquet:"crr_low95"`
	CrrHigh float64 `parquet:"crr_high95"`
	Cov     float64 `parquet:"cda_crr_cov"`
	Mass    float64 `parquet:"mass_kg"`
	Density float64 `parquet:"air_density_kgpm3"`
	A       float64 `parquet:"a_n"`
	C       float64 `parquet:"c_n_per_mps2"`

	CdANoise    *float64  `parquet:"cda_noise_se_m2,optional"`
	CrrNoise    *float64  `parquet:"crr_noise_se,optional"`
	BudgetCodes []string  `parquet:"cda_budget_codes,list"` // the components of the standard error of CdA
	Budget      []float64 `parquet:"cda_budget_se_m2,list"` // parallel to BudgetCodes
	Started     *string   `parquet:"started,optional,dict"` // RFC 3339, of the ride
}

// known is nil for what was not measured.
func known(x float64) *float64 {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return nil
	}
	return &x
}

// WriteSamples writes the track of a ride.
func WriteSamples(w io.Writer, ride Ride, res *runs.Result) error {
	tr := res.Track
	t := newTable[Sample](w)
	for i := range tr.T {
		s := Sample{Ride: ride.Name, T: tr.T[i], Speed: tr.V[i], SpeedSE: tr.VSD[i], Accel: tr.A[i], Dist: tr.S[i]}
		if i < len(tr.Yaw) {
			s.Yaw = known(tr.Yaw[i])
		}
		t.add(s)
	}
	return t.close()
}

// WriteRuns writes the runs of a ride, the rejected ones with their reasons.
func WriteRuns(w io.Writer, ride Ride, res *runs.Result) error {
	say := words.ForMachines()
	t := newTable[Run](w)
	for _, r := range res.Runs {
		row := Run{Ride: ride.Name, Bike: res.Ride.Bike, ID: int32(r.ID), Kind: string(r.Kind), Setup: r.Setup, Start: r.Start, End: r.End,
			From: r.FromMPS, To: r.ToMPS, Bearing: known(r.BearingDeg), Accepted: r.Accepted(), Reasons: say.Texts(r.Reasons),
			Cautions: say.Texts(r.Cautions), ReasonCodes: finding.Paths(r.Reasons), CautionCodes: finding.Paths(r.Cautions), Started: ride.started()}
		if r.Pair > 0 {
			p := int32(r.Pair)
			row.Pair = &p
		}
		if gear := results.GearOf(res, r); gear != "" {
			row.Gear = &gear
		}
		t.add(row)
	}
	return t.close()
}

// WriteMarks writes every mark of the accepted runs.
func WriteMarks(w io.Writer, ride Ride, res *runs.Result) error {
	t := newTable[Mark](w)
	for _, r := range res.Runs {
		if !r.Accepted() {
			continue
		}
		for _, m := range r.Marks {
			t.add(Mark{Ride: ride.Name, Bike: res.Ride.Bike, Run: int32(r.ID), Kind: string(r.Kind), Setup: r.Setup, Mark: m.Name,
				Time: known(m.Time.X), TimeSE: known(m.Time.SE), Rollout: known(m.Rollout.X), RolloutSE: known(m.Rollout.SE),
				Speed: known(m.Speed.X), SpeedSE: known(m.Speed.SE), Dist: known(m.Distance.X), DistSE: known(m.Distance.SE)})
		}
	}
	return t.close()
}

// WriteRoadLoads writes the road load of every setup.
func WriteRoadLoads(w io.Writer, ride Ride, res *runs.Result) error {
	t := newTable[RoadLoad](w)
	for _, l := range res.RoadLoads {
		row := RoadLoad{Ride: ride.Name, Bike: res.Ride.Bike, Setup: l.Setup, Pairs: int32(l.Pairs), CdA: l.CdA.X, CdASE: l.CdA.SE,
			CdALow: l.CdACI[0], CdAHigh: l.CdACI[1], Crr: l.Crr.X, CrrSE: l.Crr.SE, CrrLow: l.CrrCI[0], CrrHigh: l.CrrCI[1],
			Cov: l.Cov, Mass: l.Mass, Density: l.Density, A: l.A.X, C: l.C.X, CdANoise: known(l.CdANoise), CrrNoise: known(l.CrrNoise), Started: ride.started()}
		for _, p := range l.Budget {
			row.BudgetCodes, row.Budget = append(row.BudgetCodes, string(p.Code)), append(row.Budget, p.SE)
		}
		t.add(row)
	}
	return t.close()
}

// table collects rows and hands them to the Parquet writer in batches; the
// first error stops it and is returned by close.
type table[R any] struct {
	w    *parquet.GenericWriter[R]
	rows []R
	err  error
}

func newTable[R any](w io.Writer) *table[R] {
	return &table[R]{w: parquet.NewGenericWriter[R](w, parquet.Compression(&zstd.Codec{}))}
}

func (t *table[R]) add(r R) {
	if t.rows = append(t.rows, r); len(t.rows) == 1024 {
		t.flush()
	}
}

func (t *table[R]) flush() {
	if t.err == nil {
		_, t.err = t.w.Write(t.rows)
	}
	t.rows = t.rows[:0]
}

func (t *table[R]) close() error {
	t.flush()
	if err := t.w.Close(); t.err == nil {
		t.err = err
	}
	return t.err
}
