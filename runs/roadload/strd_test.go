package roadload

import (
	"bufio"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// NIST's Statistical Reference Datasets are regression problems with certified
// answers (https://www.itl.nist.gov/div898/strd/, in the public domain). The
// files in testdata/strd are NIST's own, from the directory NIST_STRD of the
// repository lmfit/lmfit-py. Norris is as quoted in SciPy's test of linregress.

// strd is one of them.
type strd struct {
	starts           [2][]float64
	certified, sd    []float64
	residual, y, x   []float64
	lines, dataLines [2]int
}

// readSTRD reads one of NIST's files; its header lists the lines of each section.
func readSTRD(t *testing.T, name string) strd {
	t.Helper()
	file, err := os.Open("testdata/strd/" + name + ".dat")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	var d strd
	lines := bufio.NewScanner(file)
	for n := 1; lines.Scan(); n++ {
		line := lines.Text()
		d.head(line)
		switch numbers := numbersIn(line); {
		case n >= d.lines[0] && n <= d.lines[1] && len(numbers) == 4:
			d.starts[0], d.starts[1] = append(d.starts[0], numbers[0]), append(d.starts[1], numbers[1])
			d.certified, d.sd = append(d.certified, numbers[2]), append(d.sd, numbers[3])
		case strings.HasPrefix(line, "Residual Standard Deviation:"):
			d.residual = numbers
		case d.dataLines[0] > 0 && n >= d.dataLines[0] && n <= d.dataLines[1] && len(numbers) == 2:
			d.y, d.x = append(d.y, numbers[0]), append(d.x, numbers[1])
		}
	}
	if len(d.certified) == 0 || len(d.y) != 1+d.dataLines[1]-d.dataLines[0] || len(d.residual) != 1 {
		t.Fatalf("%s: %d parameters, %d observations, residual %v", name, len(d.certified), len(d.y), d.residual)
	}
	return d
}

// head reads the ranges of lines from the file's header.
func (d *strd) head(line string) {
	for _, part := range []struct {
		name string
		to   *[2]int
	}{{"Starting Values", &d.lines}, {"Data", &d.dataLines}} {
		name, rest, found := strings.Cut(strings.TrimSpace(strings.TrimPrefix(line, "File Format:")), "(lines")
		if found && strings.EqualFold(strings.TrimSpace(name), part.name) {
			ends := numbersIn(strings.NewReplacer("to", " ", ")", " ").Replace(rest))
			*part.to = [2]int{int(ends[0]), int(ends[1])}
		}
	}
}

func numbersIn(line string) []float64 {
	var out []float64
	for _, word := range strings.Fields(line) {
		if x, err := strconv.ParseFloat(word, 64); err == nil {
			out = append(out, x)
		}
	}
	return out
}

// strdFit is a fit of a model that is not a coast-down's, by the equations of
// one: the first parameter is a run's own and is eliminated from its rows, the
// others are those of setups.
type strdFit struct {
	s *system
	c *coast
}

func newSTRDFit(start []float64) *strdFit {
	setups := (len(start) - 1) / 2
	c := &coast{own: 1, channels: 1, start: start[0]}
	for i := range start[1:] {
		c.cols = append(c.cols, i)
	}
	c.norm = make([]float64, c.width()*c.width())
	s := &system{runs: []*coast{c}, lay: layout{setups: setups, posture: -1, size: 2 * setups}}
	s.state.beta = append([]float64(nil), start[1:]...)
	s.a = mat.NewSymDense(s.lay.size, nil)
	s.g, s.x = mat.NewVecDense(s.lay.size, nil), mat.NewVecDense(s.lay.size, nil)
	return &strdFit{s, c}
}

func (f *strdFit) at() []float64 { return append([]float64{f.c.start}, f.s.state.beta...) }

// step is a Gauss-Newton step, as in fitAt.
func (f *strdFit) step(d strd, model func(b []float64, x float64) float64, share float64) float64 {
	w, b := f.c.width(), f.at()
	clear(f.c.norm)
	row := make([]float64, w)
	for i, x := range d.x {
		row[w-1] = d.y[i] - model(b, x)
		for j := range b {
			row[j] = gradient(func(v float64) float64 {
				moved := append([]float64(nil), b...)
				moved[j] = v
				return model(moved, x)
			}, b[j])
		}
		for j := range w {
			for k := j; k < w; k++ {
				f.c.norm[j*w+k] += row[j] * row[k]
			}
		}
	}
	f.s.a.Zero()
	f.s.g.Zero()
	f.c.eliminate()
	f.s.scatter(f.c)
	if !f.s.chol.Factorize(f.s.a) || f.s.chol.SolveVecTo(f.s.x, f.s.g) != nil {
		return math.NaN()
	}
	return f.s.improve(share)
}

// gradient is the derivative by central differences of fourth order.
func gradient(f func(float64) float64, x float64) float64 {
	h := 1e-4 * math.Max(math.Abs(x), 1e-9)
	return (8*(f(x+h)-f(x-h)) - (f(x+2*h) - f(x-2*h))) / (12 * h)
}

// TestCertifiedRegressions fits nonlinear problems of NIST's by the elimination,
// the equations and the steps of the road load's fit, and compares parameters
// and standard deviations with the certified ones. Six digits are required:
// normal equations lose half of the digits of a float.
func TestCertifiedRegressions(t *testing.T) {
	cubic := func(b []float64, x float64) float64 {
		return (b[0] + x*(b[1]+x*(b[2]+x*b[3]))) / (1 + x*(b[4]+x*(b[5]+x*b[6])))
	}
	for _, p := range []struct {
		name  string
		model func(b []float64, x float64) float64
	}{
		{"Rat42", func(b []float64, x float64) float64 { return b[0] / (1 + math.Exp(b[1]-b[2]*x)) }},
		{"Eckerle4", func(b []float64, x float64) float64 {
			return b[0] / b[1] * math.Exp(-0.5*math.Pow((x-b[2])/b[1], 2))
		}},
		{"MGH17", func(b []float64, x float64) float64 {
			return b[0] + b[1]*math.Exp(-x*b[3]) + b[2]*math.Exp(-x*b[4])
		}},
		{"Thurber", cubic},
	} {
		t.Run(p.name, func(t *testing.T) {
			d := readSTRD(t, p.name)
			f := newSTRDFit(d.starts[1])
			moved, loops := math.Inf(1), 0
			for ; loops < settleLoops && !(moved <= 1e-12); loops++ {
				share := 1.0
				if loops >= fullSteps {
					share = 0.5
				}
				moved = f.step(d, p.model, share)
			}
			t.Logf("%d steps, the last by %.1g", loops, moved)
			for i, b := range f.at() {
				if off := math.Abs(b/d.certified[i] - 1); !(off < 1e-6) {
					t.Errorf("parameter %d: %.10g, certified %.10g", i+1, b, d.certified[i])
				}
			}
			cov, err := f.s.loadCov()
			if err != nil {
				t.Fatal(err)
			}
			for i, sd := range d.sd[1:] {
				if got := d.residual[0] * math.Sqrt(cov.At(i, i)); !(math.Abs(got/sd-1) < 1e-5) {
					t.Errorf("standard deviation %d: %.10g, certified %.10g", i+2, got, sd)
				}
			}
		})
	}
}

// TestNorris is the linear part: the regression that the fit starts from and
// that Stepwise gives.
func TestNorris(t *testing.T) {
	x := []float64{0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0, 447.5, 11.6,
		556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5}
	y := []float64{0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3, 448.9, 10.8,
		557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2}
	var l line
	for i := range x {
		l.add(x[i], 1, y[i])
	}
	got, ok := l.solve()
	if !ok {
		t.Fatal("no answer")
	}
	for _, c := range []struct {
		what           string
		got, certified float64
	}{
		{"slope", got.CdA.X, 1.00211681802045},
		{"its standard deviation", got.CdA.SE, 0.429796848199937e-03},
		{"intercept", got.Crr.X, -0.262323073774029},
		{"its standard deviation", got.Crr.SE, 0.232818234301152},
	} {
		if !(math.Abs(c.got/c.certified-1) < 1e-9) {
			t.Errorf("%s: %.15g, certified %.15g", c.what, c.got, c.certified)
		}
	}
}
