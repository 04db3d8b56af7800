package columns

import (
	"io"

	"stillair/export/words"
	"stillair/runs"
	"stillair/runs/pass"
	"stillair/sensors/finding"
)

// Pass is one row of the table of flying passes: one distance of one of them.
type Pass struct {
	Ride     string   `parquet:"ride,dict"`
	Bike     string   `parquet:"bike,dict"`
	Pass     int32    `parquet:"pass"` // from 1
	Setup    string   `parquet:"setup,dict"`
	Accepted bool     `parquet:"accepted"`
	Over     string   `parquet:"over,dict"`
	Distance float64  `parquet:"distance_m"`
	Apart    *float64 `parquet:"apart_s,optional"`
	There    *float64 `parquet:"there_mps,optional"`
	ThereSE  *float64 `parquet:"there_se_mps,optional"`
	Back     *float64 `parquet:"back_mps,optional"`
	BackSE   *float64 `parquet:"back_se_mps,optional"`
	Mean     *float64 `parquet:"mean_mps,optional"`
	MeanSE   *float64 `parquet:"mean_se_mps,optional"`
	Half     *float64 `parquet:"half_difference_mps,optional"`
	HalfSE   *float64 `parquet:"half_difference_se_mps,optional"`
	Reasons  []string `parquet:"reasons,list"`

	ReasonCodes []string `parquet:"reason_codes,list"` // parallel to Reasons
	Started     *string  `parquet:"started,optional,dict"`
}

// WritePasses writes the flying passes of a ride, those that do not count with their
// reasons.
func WritePasses(w io.Writer, ride Ride, res *runs.Result) error {
	say := words.ForMachines()
	t := newTable[Pass](w)
	for i, p := range res.Passes {
		for _, f := range p.Figures {
			t.add(Pass{Ride: ride.Name, Bike: res.Ride.Bike, Pass: int32(i + 1), Setup: p.Setup, Accepted: p.Accepted(), Over: f.Name, Distance: f.Distance,
				Apart: known(p.Apart()), There: known(f.There.X), ThereSE: known(f.There.SE), Back: known(f.Back.X), BackSE: known(f.Back.SE),
				Mean: known(f.Mean.X), MeanSE: known(f.Mean.SE), Half: known(f.Half.X), HalfSE: known(f.Half.SE),
				Reasons: say.Texts(p.Reasons), ReasonCodes: finding.Paths(p.Reasons), Started: ride.started()})
		}
	}
	return t.close()
}

func checkPass(p Pass) string {
	for _, c := range []struct {
		name string
		good bool
	}{{"distance_m", usable(&p.Distance)}, {"apart_s", usable(p.Apart)}, {"there_mps", usable(p.There)}, {"there_se_mps", spread(p.ThereSE)}, {"back_mps", usable(p.Back)},
		{"back_se_mps", spread(p.BackSE)}, {"mean_mps", usable(p.Mean)}, {"mean_se_mps", spread(p.MeanSE)},
		{"half_difference_mps", usable(p.Half)}, {"half_difference_se_mps", spread(p.HalfSE)}} {
		if !c.good {
			return c.name
		}
	}
	return ""
}

// addPass takes in a distance; those of one pass come in any order.
func (g *Reader) addPass(folder string, p Pass) {
	of := g.at(folder, p.Ride, p.Bike, p.Started)
	if !p.Accepted {
		return
	}
	if of.passes[p.Pass] == nil {
		one := &runs.Pass{Setup: p.Setup, Back: pass.Leg{Start: orUnknown(p.Apart)}}
		of.passes[p.Pass], of.passed = one, append(of.passed, one)
	}
	one := of.passes[p.Pass]
	one.Figures = append(one.Figures, pass.Figure{Name: p.Over, Distance: p.Distance, There: value(p.There, p.ThereSE), Back: value(p.Back, p.BackSE),
		Mean: value(p.Mean, p.MeanSE), Half: value(p.Half, p.HalfSE)})
}
