package columns

import (
	"io"

	"stillair/export/words"
	"stillair/runs"
	"stillair/runs/compare"
)

// Comparison is one row of the table of comparisons: how two setups differ in
// one quantity, b − a: as measured, and in percent of a.
type Comparison struct {
	Ride      string   `parquet:"ride,dict"`
	Bike      string   `parquet:"bike,dict"`
	A         string   `parquet:"a,dict"`
	B         string   `parquet:"b,dict"`
	Quantity  string   `parquet:"quantity,dict"`
	Finding   string   `parquet:"finding,dict"`
	Delta     *float64 `parquet:"delta,optional"`
	DeltaSE   *float64 `parquet:"delta_se,optional"`
	Unit      string   `parquet:"unit,dict"`
	Change    *float64 `parquet:"delta_pct,optional"`
	Low       *float64 `parquet:"low95_pct,optional"`
	High      *float64 `parquet:"high95_pct,optional"`
	P         *float64 `parquet:"p,optional"`
	MorePairs *int32   `parquet:"more_pairs,optional"`
	Code      string   `parquet:"code,dict"` // of Finding
}

// quantityDrag is the quantity of a difference in drag area.
const quantityDrag = "drag area"

// WriteComparisons writes how every two setups differ, in each quantity that
// was compared.
func WriteComparisons(w io.Writer, ride Ride, res *runs.Result) error {
	say := words.ForMachines()
	t := newTable[Comparison](w)
	for _, c := range res.Compared {
		add := func(quantity, unit string, v *compare.Verdict) {
			if v == nil {
				return
			}
			row := Comparison{Ride: ride.Name, Bike: res.Ride.Bike, A: c.A, B: c.B, Quantity: quantity, Finding: say.Name(v.Finding), Code: string(v.Finding), Unit: unit,
				Delta: known(v.Delta.X), DeltaSE: known(v.Delta.SE), Change: known(v.Percent), Low: known(v.CIPercent[0]), High: known(v.CIPercent[1]), P: known(v.P)}
			if v.MorePairs > 0 {
				n := int32(v.MorePairs)
				row.MorePairs = &n
			}
			t.add(row)
		}
		add(quantityDrag, "m²", c.CdA)
		add("rolling resistance", "1", c.Crr)
		add("power", "1", c.Power)
		for i := range c.Times {
			add(c.Times[i].Mark, "s", &c.Times[i].Verdict)
		}
	}
	return t.close()
}

// Power is one row of the table of power: one point of a curve.
type Power struct {
	Ride       string   `parquet:"ride,dict"`
	Bike       string   `parquet:"bike,dict"`
	Setup      string   `parquet:"setup,dict"`
	Gear       string   `parquet:"gear,dict"`
	Runs       []int32  `parquet:"runs,list"`
	Speed      float64  `parquet:"speed_mps"`
	RPM        *float64 `parquet:"rpm,optional"`
	Power      *float64 `parquet:"power_w,optional"`
	PowerSE    *float64 `parquet:"power_se_w,optional"`
	Correction *float64 `parquet:"correction,optional"`
}

// WritePowers writes every curve of power at the road, as ridden.
func WritePowers(w io.Writer, ride Ride, res *runs.Result) error {
	t := newTable[Power](w)
	for _, p := range res.Powers {
		if p.Curve == nil {
			continue
		}
		var pulls []int32
		for _, id := range p.Curve.Pulls {
			pulls = append(pulls, int32(id))
		}
		rpm := p.RPM()
		for i, v := range p.Curve.Speed {
			row := Power{Ride: ride.Name, Bike: res.Ride.Bike, Setup: p.Setup, Gear: p.Gear, Runs: pulls, Speed: v,
				Power: known(p.Curve.Power[i].X), PowerSE: known(p.Curve.Power[i].SE), Correction: known(p.Correction)}
			if i < len(rpm) {
				row.RPM = known(rpm[i])
			}
			t.add(row)
		}
	}
	return t.close()
}

// Table is one table of a ride.
type Table struct {
	Name  string // of its file, without ending
	Write func(w io.Writer, ride Ride, res *runs.Result) error
}

// Tables are all there are.
func Tables() []Table {
	return []Table{{"samples", WriteSamples}, {"runs", WriteRuns}, {"marks", WriteMarks}, {"passes", WritePasses}, {"road-load", WriteRoadLoads},
		{"comparisons", WriteComparisons}, {"power", WritePowers}}
}
