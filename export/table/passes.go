package table

import (
	"io"
	"strconv"
	"strings"

	"stillair/export/words"
	"stillair/runs"
	"stillair/sensors/finding"
)

// Passes writes one row for each distance of each flying pass.
func Passes(w io.Writer, all []runs.Pass) error {
	say := words.ForMachines()
	header := []string{"pass", "setup", "accepted", "over", "distance_m", "there_start_s", "back_start_s", "there_bearing_deg", "back_bearing_deg",
		"there_mps", "there_se_mps", "back_mps", "back_se_mps", "mean_mps", "mean_se_mps", "half_difference_mps", "half_difference_se_mps", "reasons", "reason_codes"}
	return rows(w, header, func(row func(...string)) {
		for i, p := range all {
			for _, f := range p.Figures {
				row(strconv.Itoa(i+1), text(p.Setup), yes(p.Accepted()), f.Name, significant(f.Distance, 7), number(p.There.Start, 3), number(p.Back.Start, 3),
					number(p.There.BearingDeg, 1), number(p.Back.BearingDeg, 1), number(f.There.X, 5), number(f.There.SE, 5), number(f.Back.X, 5), number(f.Back.SE, 5),
					number(f.Mean.X, 5), number(f.Mean.SE, 5), number(f.Half.X, 5), number(f.Half.SE, 5),
					text(say.Join(p.Reasons)), strings.Join(finding.Paths(p.Reasons), "; "))
			}
		}
	})
}
