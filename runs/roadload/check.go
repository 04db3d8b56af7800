package roadload

import (
	"math"

	"stillair/sensors/finding"
)

// Reasons why a fit is not possible.
var (
	ErrNoRuns       = finding.Fail("load.no_runs")
	ErrOneDirection = finding.Fail("load.one_direction")
	ErrMass         = finding.Fail("load.no_mass")
	ErrDensity      = finding.Fail("load.no_density")
	ErrSpeedRange   = finding.Fail("load.speed_range")
	ErrSamples      = finding.Fail("load.few_fixes")
	ErrNoFit        = finding.Fail("load.no_fit")
	ErrOptions      = finding.Fail("load.bad_options")
	errSingular     = finding.Fail("load.undetermined")
)

// about makes an error about a run or setup, counted from 1.
func about(err *finding.Error, code finding.Code, which finding.Arg) *finding.Error {
	return finding.Fail(code, which, finding.Of("why", err.Finding)).Because(err)
}

// Minimum data for a fit. The first fix of a run gives its starting speed, each
// later one a change of speed, and the two parameters of a road load need more
// than two changes. No more is required: the uncertainty covers what few
// changes leave undetermined.
const (
	minFixes      = 2
	minChanges    = 3
	minSpeedRatio = 1.1 // of the fastest fix to the slowest
)

// splitBare separates the runs without a change of speed: they contain no
// information, and must not prevent the fit of the others.
func splitBare(runs []Run) (usable, out []Run) {
	for _, r := range runs {
		if len(r.T) == len(r.V) && r.blocks() < minFixes {
			out = append(out, r)
		} else {
			usable = append(usable, r)
		}
	}
	return usable, out
}

// check separates bare runs and returns an error if the others cannot be
// fitted.
func check(all []Run, opts Options) (usable, out []Run, err error) {
	if len(all) == 0 {
		return nil, nil, ErrNoRuns
	}
	usable, out = splitBare(all)
	setups := 0
	for _, r := range all {
		setups = max(setups, r.Setup+1)
	}
	if err = checkUsable(usable, setups, opts); err != nil && len(out) > 0 {
		err = about(ErrSamples, codeOfRun, finding.Count("run", out[0].ID))
	}
	return usable, out, err
}

func checkUsable(runs []Run, setups int, opts Options) error {
	n := opts.Noise
	for _, x := range []float64{opts.WindSD, opts.GradeSD, opts.Gravity,
		n.GustSD, n.GustTime, n.WhiteSD, n.DriftSD, n.DriftTime} {
		if !(x > 0) || math.IsInf(x, 0) {
			return ErrOptions
		}
	}
	for _, r := range runs {
		if err := r.check(); err != nil {
			return about(err, codeOfRun, finding.Count("run", r.ID))
		}
	}
	return checkSetups(runs, setups)
}

func (r *Run) check() *finding.Error {
	switch {
	case !(r.Mass > 0) || !(r.Inertia >= r.Mass) || math.IsInf(r.Inertia, 0):
		return ErrMass
	case !(r.Density > 0) || math.IsInf(r.Density, 0):
		return ErrDensity
	case len(r.V) != len(r.T) || r.Pos != nil && len(r.Pos) != len(r.T),
		r.Height != nil && len(r.Height) != len(r.T), r.Alt != nil && len(r.Alt) != len(r.T):
		return ErrSamples
	case r.Setup < 0 || math.Abs(r.Dir) != 1:
		return ErrOneDirection
	}
	for i := range r.T {
		sum := r.T[i] + r.V[i]
		if r.Pos != nil {
			sum += r.Pos[i]
		}
		if math.IsNaN(sum) || math.IsInf(sum, 0) {
			return ErrSamples
		}
		if i > 0 && r.T[i] <= r.T[i-1] {
			return ErrSamples
		}
	}
	return nil
}

// checkSetups requires of every setup a pair, enough changes of speed and a
// range of speed.
func checkSetups(runs []Run, setups int) error {
	type pairOf struct{ setup, pair int }
	ways := map[pairOf][2]bool{}
	paired := map[int]bool{}
	slow, fast, changes := map[int]float64{}, map[int]float64{}, map[int]int{}
	for _, r := range runs {
		w := ways[pairOf{r.Setup, r.Pair}]
		w[way(r.Dir)] = true
		ways[pairOf{r.Setup, r.Pair}] = w
		paired[r.Setup] = paired[r.Setup] || r.Pair != 0 && w[0] && w[1]
		changes[r.Setup] += r.blocks() - 1
		if _, seen := slow[r.Setup]; !seen {
			slow[r.Setup] = math.Inf(1)
		}
		for _, v := range r.V {
			slow[r.Setup], fast[r.Setup] = math.Min(slow[r.Setup], v), math.Max(fast[r.Setup], v)
		}
	}
	for s := range setups {
		switch {
		case !paired[s]:
			return about(ErrOneDirection, codeOfSetup, finding.Count("setup", s+1))
		case changes[s] < minChanges:
			return about(ErrSamples, codeOfSetup, finding.Count("setup", s+1))
		case fast[s] < minSpeedRatio*slow[s]:
			return about(ErrSpeedRange, codeOfSetup, finding.Count("setup", s+1))
		}
	}
	return nil
}
