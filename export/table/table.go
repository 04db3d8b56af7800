// Package table writes a ride and its results as CSV (RFC 4180): comma, CRLF,
// a header row, a full stop in decimals, an empty field where a number is not
// known. Column names end in their unit; _se stands for one standard error.
// Numbers have at least three digits more than their uncertainty supports, so
// that anyone who rounds them as package shown does gets what screens and pages show.
package table

import (
	"encoding/csv"
	"io"
	"math"
	"strconv"
	"strings"

	"stillair/export/words"
	"stillair/fusion"
	"stillair/runs"
	"stillair/runs/compare"
	"stillair/sensors/finding"
)

// Table is one table of a ride.
type Table struct {
	Name  string // of its file
	Write func(w io.Writer) error
}

// Tables are all there are of a ride.
func Tables(r *runs.Result) []Table {
	return []Table{
		{"track.csv", func(w io.Writer) error { return Track(w, r.Track) }},
		{"runs.csv", func(w io.Writer) error { return Runs(w, r.Runs) }},
		{"marks.csv", func(w io.Writer) error { return Marks(w, r.Runs) }},
		{"passes.csv", func(w io.Writer) error { return Passes(w, r.Passes) }},
		{"road-load.csv", func(w io.Writer) error { return RoadLoads(w, r.RoadLoads) }},
		{"comparisons.csv", func(w io.Writer) error { return Comparisons(w, r.Compared) }},
		{"power.csv", func(w io.Writer) error { return Powers(w, r.Powers) }},
	}
}

// number returns x with the decimals, empty where it is not finite.
func number(x float64, decimals int) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return ""
	}
	return strconv.FormatFloat(x, 'f', decimals, 64)
}

// significant returns x with that many significant digits, empty where it is
// not finite.
func significant(x float64, digits int) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return ""
	}
	return strconv.FormatFloat(x, 'g', digits, 64)
}

func yes(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}

// text guards words from being mistaken for a formula by a spreadsheet, which
// would run what a stranger's file says.
func text(s string) string {
	if s != "" && strings.ContainsRune("=+-@\t\r", rune(s[0])) {
		return "'" + s
	}
	return s
}

// rows writes a header and what each gives.
func rows(w io.Writer, header []string, each func(row func(...string))) error {
	out := csv.NewWriter(w)
	out.UseCRLF = true
	err := out.Write(header)
	each(func(fields ...string) {
		if err == nil {
			err = out.Write(fields)
		}
	})
	out.Flush()
	if err == nil {
		err = out.Error()
	}
	return err
}

// at returns s[i], NaN where s is shorter: parts of a track may be absent.
func at(s []float64, i int) float64 {
	if i >= len(s) {
		return math.NaN()
	}
	return s[i]
}

// Track writes the smoothed ride, one row a sample.
func Track(w io.Writer, t *fusion.Track) error {
	header := []string{"t_s", "speed_mps", "speed_se_mps", "accel_mps2", "accel_se_mps2", "distance_m", "turn_radps", "shake_mps2"}
	return rows(w, header, func(row func(...string)) {
		for i := range t.T {
			row(number(t.T[i], 4), number(t.V[i], 4), number(at(t.VSD, i), 4), number(t.A[i], 4), number(at(t.ASD, i), 4),
				number(at(t.S, i), 3), number(at(t.Yaw, i), 5), number(at(t.Shake, i), 3))
		}
	})
}

// Runs writes one row for each run, the rejected ones with their reasons.
func Runs(w io.Writer, all []runs.Run) error {
	say := words.ForMachines()
	header := []string{"id", "kind", "start_s", "end_s", "from_mps", "to_mps", "bearing_deg", "setup", "accepted", "pair", "reasons", "cautions",
		"reason_codes", "caution_codes"}
	return rows(w, header, func(row func(...string)) {
		for _, r := range all {
			pair := ""
			if r.Pair > 0 {
				pair = strconv.Itoa(r.Pair)
			}
			row(strconv.Itoa(r.ID), string(r.Kind), number(r.Start, 3), number(r.End, 3), number(r.FromMPS, 3), number(r.ToMPS, 3),
				number(r.BearingDeg, 1), text(r.Setup), yes(r.Accepted()), pair, text(say.Join(r.Reasons)), text(say.Join(r.Cautions)),
				strings.Join(finding.Paths(r.Reasons), "; "), strings.Join(finding.Paths(r.Cautions), "; "))
		}
	})
}

// Marks writes one row for each mark of each run.
func Marks(w io.Writer, all []runs.Run) error {
	header := []string{"run", "kind", "setup", "accepted", "mark", "s", "se_s", "rollout_s", "rollout_se_s",
		"speed_mps", "speed_se_mps", "distance_m", "distance_se_m"}
	return rows(w, header, func(row func(...string)) {
		for _, r := range all {
			for _, m := range r.Marks {
				row(strconv.Itoa(r.ID), string(r.Kind), text(r.Setup), yes(r.Accepted()), m.Name, number(m.Time.X, 6), number(m.Time.SE, 6),
					number(m.Rollout.X, 6), number(m.Rollout.SE, 6), number(m.Speed.X, 5), number(m.Speed.SE, 5),
					number(m.Distance.X, 4), number(m.Distance.SE, 4))
			}
		}
	})
}

// RoadLoads writes one row for each setup.
func RoadLoads(w io.Writer, all []runs.RoadLoad) error {
	header := []string{"setup", "pairs", "mass_kg", "cda_m2", "cda_se_m2", "cda_low95_m2", "cda_high95_m2",
		"crr", "crr_se", "crr_low95", "crr_high95", "cda_crr_cov", "air_density_kgpm3", "a_n", "c_n_per_mps2"}
	return rows(w, header, func(row func(...string)) {
		for _, l := range all {
			row(text(l.Setup), strconv.Itoa(l.Pairs), significant(l.Mass, 6), significant(l.CdA.X, 8), significant(l.CdA.SE, 6),
				significant(l.CdACI[0], 8), significant(l.CdACI[1], 8), significant(l.Crr.X, 8), significant(l.Crr.SE, 6),
				significant(l.CrrCI[0], 8), significant(l.CrrCI[1], 8), significant(l.Cov, 3), significant(l.Density, 6),
				significant(l.A.X, 6), significant(l.C.X, 6))
		}
	})
}

// Powers writes one row for each point of each power curve.
func Powers(w io.Writer, all []runs.PowerCurve) error {
	header := []string{"setup", "gear", "speed_mps", "rpm", "power_w", "power_se_w", "correction"}
	return rows(w, header, func(row func(...string)) {
		for _, p := range all {
			if p.Curve == nil {
				continue
			}
			rpm := p.RPM()
			for i, v := range p.Curve.Speed {
				row(text(p.Setup), text(p.Gear), number(v, 3), number(at(rpm, i), 0), number(p.Curve.Power[i].X, 2), number(p.Curve.Power[i].SE, 2), significant(p.Correction, 5))
			}
		}
	})
}

// Comparisons writes one row for each quantity of each two setups, b − a in
// percent of a.
func Comparisons(w io.Writer, all []runs.Comparison) error {
	say := words.ForMachines()
	header := []string{"a", "b", "quantity", "finding", "delta_pct", "low95_pct", "high95_pct", "p", "code"}
	return rows(w, header, func(row func(...string)) {
		for _, c := range all {
			add := func(quantity string, v *compare.Verdict) {
				if v != nil {
					row(text(c.A), text(c.B), quantity, say.Name(v.Finding), number(v.Percent, 2), number(v.CIPercent[0], 2), number(v.CIPercent[1], 2), significant(v.P, 3), string(v.Finding))
				}
			}
			add("drag area", c.CdA)
			add("rolling resistance", c.Crr)
			add("power", c.Power)
			for _, t := range c.Times {
				add(t.Mark, &t.Verdict)
			}
		}
	})
}
