package accuracy

import (
	"math"
	"slices"
)

// Summary is the statistics of the records of one case.
type Summary struct {
	Study, Case string
	Rides       int
	Failed      []string // what went wrong, ride by ride
	Values      map[string]*Tally
	Shares      map[string]*Rate
	names       []string // of values and shares, in order of appearance
}

// Rate adds up shares.
type Rate struct{ hits, of int }

// Hits and Of are how often something happened and how often it could have.
func (r Rate) Hits() int { return r.hits }

// Of is how often it could have happened.
func (r Rate) Of() int { return r.of }

// Tally collects the errors of one figure.
type Tally struct {
	n                         float64
	sum, square               float64 // of the errors
	said, bound, bounded, own float64 // squares: of the standard errors, of the bounds, of the errors that have one, of error over standard error
	held                      float64
	size                      []float64 // of each error
	z                         []float64 // each error over its standard error
	last                      uint64    // seed
	rides                     float64
}

// Summarise adds up the records of one case.
func Summarise(study, name string, records []Record) *Summary {
	s := &Summary{Study: study, Case: name, Values: map[string]*Tally{}, Shares: map[string]*Rate{}}
	for _, r := range records {
		if r.Study != study || r.Case != name {
			continue
		}
		s.Rides++
		if r.Failed != "" {
			s.Failed = append(s.Failed, r.Failed)
		}
		for _, v := range r.Values {
			t := s.Values[v.What]
			if t == nil {
				t = &Tally{}
				s.Values[v.What] = t
				s.names = append(s.names, v.What)
			}
			t.add(v, r.Seed)
		}
		for _, v := range r.Shares {
			t := s.Shares[v.What]
			if t == nil {
				t = &Rate{}
				s.Shares[v.What] = t
				s.names = append(s.names, v.What)
			}
			t.hits, t.of = t.hits+v.Hits, t.of+v.Of
		}
	}
	return s
}

func (t *Tally) add(v Value, seed uint64) {
	t.n++
	if t.rides == 0 || seed != t.last {
		t.rides, t.last = t.rides+1, seed
	}
	t.sum, t.square = t.sum+v.Err, t.square+v.Err*v.Err
	t.said += v.SE * v.SE
	t.own += v.Err * v.Err / (v.SE * v.SE)
	if v.Bound > 0 {
		t.bound, t.bounded = t.bound+v.Bound*v.Bound, t.bounded+v.Err*v.Err
	}
	if v.Held {
		t.held++
	}
	t.size, t.z = append(t.size, math.Abs(v.Err)), append(t.z, v.Err/v.SE)
}

// N is the number of figures.
func (t *Tally) N() int { return int(t.n) }

// clusters is the number of rides they came from, the independent units.
func (t *Tally) clusters() float64 { return t.rides }

// Figure computes one of the figures of values; NaN where it does not exist.
func (t *Tally) Figure(f Figure) float64 {
	switch f {
	case Bias:
		return t.sum / t.n
	case Spread:
		return math.Sqrt((t.square - t.sum*t.sum/t.n) / (t.n - 1))
	case OverBound:
		return math.Sqrt(t.bounded / t.bound)
	case Within95:
		return t.quantile(0.95)
	case Coverage:
		return t.held / t.n
	case Honesty:
		return math.Sqrt(t.own / t.n)
	}
	return math.NaN()
}

// Bound is the root mean square of the bounds; NaN where none is known.
func (t *Tally) Bound() float64 {
	if t.bound == 0 {
		return math.NaN()
	}
	return math.Sqrt(t.bound / t.n)
}

// Said is the root mean square of the stated standard errors.
func (t *Tally) Said() float64 { return math.Sqrt(t.said / t.n) }

// quantile is the size that a share of the errors stays under.
func (t *Tally) quantile(share float64) float64 {
	if t.n == 0 {
		return math.NaN()
	}
	sorted := slices.Clone(t.size)
	slices.Sort(sorted)
	return sorted[max(0, int(math.Ceil(share*t.n))-1)]
}

// doubt is the Monte Carlo standard error of a figure, for normal errors: of a
// mean sd/√n, of a spread sd/√(2n), of the 95 % point of the size √(p(1−p)/n)
// over the density there, which is 0.95 of the point over √n.
func (t *Tally) doubt(f Figure) float64 {
	root := math.Sqrt(t.clusters())
	switch f {
	case Bias:
		sd := t.Figure(Spread)
		if math.IsNaN(sd) {
			sd = t.Said()
		}
		return sd / root
	case Within95:
		return 0.95 * t.Figure(Within95) / root
	case Coverage:
		p := t.Figure(Coverage)
		return math.Sqrt(p*(1-p)) / root
	}
	return t.Figure(f) / (math.Sqrt2 * root)
}
