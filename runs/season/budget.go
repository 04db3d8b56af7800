package season

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"

	"stillair/runs/measure"
	"stillair/sensors/finding"
)

// Codes of the findings about a season.
const (
	codeFew      finding.Code = "season.one_setup"
	codeDisagree finding.Code = "season.disagree"
	codeNoBase   finding.Code = "season.no_base"
)

// dayToDay is the relative standard deviation of the drag area of an unchanged
// bike between days, from unmeasured effects: cross-wind, clothing, posture
// (common practice).
const dayToDay = 0.015

// surely is the significance level of the χ² test below which all uncertainties
// are widened (Birge ratio).
const surely = 0.01

// Budget is the effect of each part of a bike on its drag area.
type Budget struct {
	Bike    string
	Base    string        // the setup that parts are compared with
	BaseCdA measure.Value // m²
	Effects []Effect
	Cov     *mat.SymDense // of the effects, m⁴, in the same order
	Rides   int           // number of rides used
	Chi2    float64
	DoF     int
	Widened float64 // factor on all uncertainties; 1: none
	Notes   []finding.Finding
}

// Effect is the effect of a part on the drag area, with the parts that it
// replaces.
type Effect struct {
	Part    string
	Instead string // part of the base that it replaces; "": additional
	CdA     measure.Value
	CI      [2]float64 // 95 %
	Rides   int        // number of rides with it
}

// equations are the rows of the least-squares problem.
type equations struct {
	parts []string
	base  []float64
	x     [][]float64
	y     []float64
	cov   []*mat.SymDense // block by block
}

// NewBudget fits the effects of the parts of one bike from its rides. base is
// the reference setup; "": the one in most rides. It returns an error unless
// there are two setups.
func NewBudget(rides []Ride, base string) (*Budget, error) {
	base, err := chooseBase(rides, base)
	if err != nil {
		return nil, err
	}
	e := newEquations(rides, base)
	if len(e.parts) == 0 {
		return nil, finding.Fail(codeFew)
	}
	out := &Budget{Base: base, Widened: 1}
	for i := range rides {
		if len(rides[i].Loads) > 0 {
			e.add(&rides[i])
			out.Rides++
			out.Bike = rides[i].Bike
		}
	}
	s, err := e.solve()
	if err != nil {
		return nil, err
	}
	out.Chi2, out.DoF = s.chi2, s.dof
	if s.dof > 0 && (distuv.ChiSquared{K: float64(s.dof)}).Survival(s.chi2) < surely {
		out.Widened = math.Sqrt(s.chi2 / float64(s.dof))
		out.Notes = append(out.Notes, finding.New(codeDisagree, finding.Num("times", out.Widened)))
	}
	out.fill(e, s, rides)
	return out, nil
}

// chooseBase is the setup in most rides, the first of them, or the one asked
// for.
func chooseBase(rides []Ride, asked string) (string, error) {
	count := map[string]int{}
	var order []string
	for _, r := range rides {
		for _, l := range r.Loads {
			if count[l.Setup] == 0 {
				order = append(order, l.Setup)
			}
			count[l.Setup]++
		}
	}
	if len(order) < 2 {
		return "", finding.Fail(codeFew)
	}
	if asked != "" {
		if count[asked] == 0 {
			return "", finding.Fail(codeNoBase, finding.Text("setup", asked))
		}
		return asked, nil
	}
	return slices.MaxFunc(order, func(a, b string) int { return cmp.Compare(count[a], count[b]) }), nil
}

func newEquations(rides []Ride, base string) *equations {
	e := &equations{}
	for _, r := range rides {
		for _, l := range r.Loads {
			for _, p := range Parts(l.Setup) {
				if !slices.Contains(e.parts, p) {
					e.parts = append(e.parts, p)
				}
			}
		}
	}
	e.base = make([]float64, len(e.parts))
	for _, p := range Parts(base) {
		e.base[slices.Index(e.parts, p)] = 1
	}
	return e
}

// row is the row of the design matrix: the parts of a setup relative to the
// base, and a one for the base itself.
func (e *equations) row(setup string, base float64) []float64 {
	row := make([]float64, len(e.parts)+1)
	for i, b := range e.base {
		row[i] = -b
	}
	for _, p := range Parts(setup) {
		row[slices.Index(e.parts, p)]++
	}
	row[len(e.parts)] = base
	return row
}

// add adds a ride: the differences of its setups to the first, and its mean.
func (e *equations) add(r *Ride) {
	n := len(r.Loads)
	mean, level, noise, day := make([]float64, len(e.parts)+1), 0.0, 0.0, 0.0
	for _, l := range r.Loads {
		for i, x := range e.row(l.Setup, 1) {
			mean[i] += x / float64(n)
		}
		level += l.CdA.X / float64(n)
		day = math.Max(day, l.Day)
		noise += l.Noise * l.Noise / float64(n*n)
	}
	e.x, e.y = append(e.x, mean), append(e.y, level)
	whole := noise + day*day + math.Pow(dayToDay*level, 2)
	e.cov = append(e.cov, mat.NewSymDense(1, []float64{whole}))
	if n < 2 {
		return
	}
	first := r.Loads[0]
	block := mat.NewSymDense(n-1, nil)
	for i, b := range r.Loads[1:] {
		d := r.apart(first, b)
		row := e.row(b.Setup, 0)
		for k, x := range e.row(first.Setup, 0) {
			row[k] -= x
		}
		e.x, e.y = append(e.x, row), append(e.y, d.X)
		for j := range i + 1 {
			other := r.apart(first, r.Loads[1+j])
			between := r.apart(r.Loads[1+j], b)
			if i == j {
				between.SE = 0
			}
			block.SetSym(i, j, (d.SE*d.SE+other.SE*other.SE-between.SE*between.SE)/2)
		}
	}
	e.cov = append(e.cov, block)
}
