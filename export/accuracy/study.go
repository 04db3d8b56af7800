package accuracy

import "fmt"

// Study asks one question in several cases.
type Study struct {
	Name  string // its name on the command line
	Title string
	About string // the rides and what is calculated from them, for the reader
	Unit  Unit   // of its values
	Cases []Case
}

// Case is one bike in one set of conditions.
type Case struct {
	Name   string
	Seeds  int // of a full measurement
	Limits []Limit
	Ride   func(seed uint64) (Record, error) // one seed; the runner names the record
}

// Unit is how values are shown.
type Unit struct {
	Name   string
	Factor float64 // shown value = factor × value
	Digits int
}

var (
	percent      = Unit{Name: "%", Factor: 100, Digits: 2}
	milliseconds = Unit{Name: "ms", Factor: 1000, Digits: 0}
)

// Studies are all that can be measured, in the order of the report.
func Studies() []Study {
	return []Study{
		smoothRoad(), roughRoad(), gustyDays(), spoiltRuns(), comparisons(), wrongModel(),
		wholeCoasts(), launches(), pulls(), mixed(), detection(), riders(),
	}
}

// Pick takes the named studies; none named are all.
func Pick(all []Study, names []string) ([]Study, error) {
	if len(names) == 0 {
		return all, nil
	}
	var out []Study
	for _, name := range names {
		found := false
		for _, s := range all {
			if s.Name == name {
				out, found = append(out, s), true
			}
		}
		if !found {
			return nil, fmt.Errorf("there is no study %q", name)
		}
	}
	return out, nil
}

// Scale is the studies with a share of their seeds, at least one each.
func Scale(studies []Study, share float64) []Study {
	out := make([]Study, len(studies))
	for i, s := range studies {
		out[i] = s
		out[i].Cases = append([]Case(nil), s.Cases...)
		for j := range out[i].Cases {
			c := &out[i].Cases[j]
			c.Seeds = max(1, int(float64(c.Seeds)*share+0.5))
		}
	}
	return out
}
