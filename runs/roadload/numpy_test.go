package roadload

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"stillair/runs/measure"
)

// numpyRun and numpyTask are the input of testdata/reference/roadload.py.
type numpyRun struct {
	Setup   int       `json:"setup"`
	Pair    int       `json:"pair"`
	Dir     float64   `json:"dir"`
	Mass    float64   `json:"mass"`
	Inertia float64   `json:"inertia"`
	Density float64   `json:"density"`
	T       []float64 `json:"t"`
	V       []float64 `json:"v"`
}

type numpyTask struct {
	Runs    []numpyRun `json:"runs"`
	Slope   float64    `json:"slope"`
	WindSD  float64    `json:"wind_sd"`
	GradeSD float64    `json:"grade_sd"`
	Wind    float64    `json:"common_wind_sd"`
	Grade   float64    `json:"common_grade_sd"`
	Gravity float64    `json:"gravity"`
	Noise   [5]float64 `json:"noise"`
	Prior   [5]float64 `json:"prior"`
	Learned [5]float64 `json:"learned"`
}

// numpyAnswer is its output.
type numpyAnswer struct {
	Loads   [][2]float64 `json:"loads"`
	Cov     [][]float64  `json:"cov"`
	Noise   [5]float64   `json:"noise"`
	Seconds float64      `json:"seconds"`
}

// five are the noise parameters that both learn.
func five(n Noise) [5]float64 {
	return [5]float64{n.GustSD, n.GustTime, n.WhiteSD, n.DriftSD, n.DriftTime}
}

// abba makes four pairs of each of two invented setups by simple Euler
// integration: the results of the programs are compared with each other, not
// with the truth.
func abba() []Run {
	rng := rand.New(rand.NewPCG(3, 14))
	var runs []Run
	clock := 0.0
	for pair := range 8 {
		setup := [...]int{0, 0, 1, 1, 1, 1, 0, 0}[pair]
		wind := 1.5 * rng.NormFloat64()
		for _, dir := range []float64{1, -1} {
			const h = 0.01
			r := Run{ID: len(runs) + 1, Setup: setup, Pair: pair + 1, Dir: dir, Mass: 290, Inertia: 301.6, Density: 1.2}
			v, gust, drift := 31.0, 0.48*rng.NormFloat64(), 0.07*rng.NormFloat64()
			for i := 0; v > 8.5; i++ {
				if i%100 == 0 {
					r.T, r.V = append(r.T, clock), append(r.V, v+drift+0.06*rng.NormFloat64())
				}
				u := v + dir*wind + gust
				v -= h * (0.6*(0.55+0.03*float64(setup))*u*math.Abs(u) + 290*9.80665*0.018*(1+0.004*v)) / r.Inertia
				gust += -gust*h/8 + 0.48*math.Sqrt(2*h/8)*rng.NormFloat64()
				drift += -drift*h/4 + 0.07*math.Sqrt(2*h/4)*rng.NormFloat64()
				clock += h
			}
			runs = append(runs, r)
			clock += 40
		}
	}
	return runs
}

func numpyOptions() Options {
	o := DefaultOptions(1.5)
	o.Slope = measure.Value{X: 0.004}
	o.Noise.RoadSD = 0
	return o
}

// numpyFit runs the reference implementation, in one thread: more would only
// slow it down with matrices of this size.
func numpyFit(t testing.TB, runs []Run, o Options, learned Noise) numpyAnswer {
	t.Helper()
	python := ""
	for _, name := range []string{"/usr/bin/python3", "python3"} {
		if exec.Command(name, "-c", "import scipy").Run() == nil {
			python = name
			break
		}
	}
	if python == "" {
		t.Skip("no python3 with scipy here; Debian has it as python3-scipy")
	}
	task := numpyTask{Slope: o.Slope.X, WindSD: o.WindSD, GradeSD: o.GradeSD, Wind: commonWindSD, Grade: commonGradeSD, Gravity: o.Gravity, Noise: five(o.Noise), Learned: five(learned)}
	for i, d := range dials(layout{posture: -1, press: -1}) {
		task.Prior[i] = d.sd
	}
	for _, r := range runs {
		task.Runs = append(task.Runs, numpyRun{r.Setup, r.Pair, r.Dir, r.Mass, r.Inertia, r.Density, r.T, r.V})
	}
	dir := t.TempDir()
	in, out := filepath.Join(dir, "in.json"), filepath.Join(dir, "out.json")
	text, err := json.Marshal(task)
	if err == nil {
		err = os.WriteFile(in, text, 0o600)
	}
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(python, filepath.Join("..", "..", "testdata", "reference", "roadload.py"), in, out)
	cmd.Env = append(os.Environ(), "OPENBLAS_NUM_THREADS=1", "OMP_NUM_THREADS=1")
	if said, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, said)
	}
	var answer numpyAnswer
	text, err = os.ReadFile(out)
	if err == nil {
		err = json.Unmarshal(text, &answer)
	}
	if err != nil {
		t.Fatal(err)
	}
	return answer
}

// TestFitAgainstNumpy compares the fit with the same model written with numpy
// and scipy: dense covariances instead of a filter, another optimiser. Road
// loads agree to 0.1 %, and so do the standard errors for the same noise.
func TestFitAgainstNumpy(t *testing.T) {
	if testing.Short() {
		t.Skip("needs another interpreter")
	}
	runs, o := abba(), numpyOptions()
	e, err := Fit(runs, o)
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range e.Runs {
		if !r.Reason.IsZero() || len(r.Cuts) > 0 {
			t.Fatalf("run %d was cut, which the reference does not do", r.ID)
		}
	}
	want := numpyFit(t, runs, o, e.Noise)
	near := func(what string, got, want float64) {
		t.Logf("%s: %.6g, numpy %.6g (%+.4f %%)", what, got, want, 100*(got/want-1))
		if math.Abs(got/want-1) > 1e-3 {
			t.Errorf("%s: %.6g, numpy %.6g", what, got, want)
		}
	}
	for i, l := range e.Loads {
		near("CdA", l.CdA.X, want.Loads[i][0])
		near("Crr", l.Crr.X, want.Loads[i][1])
	}
	known := o
	known.Noise = e.Noise
	s := newSystem(coasts(runs), known)
	for i, l := range e.Loads {
		s.state.beta[cdaAt(i)], s.state.beta[crrAt(i)] = l.CdA.X, l.Crr.X
	}
	if _, err := s.fitAt(e.Noise); err != nil {
		t.Fatal(err)
	}
	s.linearise(e.Noise)
	if _, err := s.evaluate(e.Noise); err != nil {
		t.Fatal(err)
	}
	cov, err := s.loadCov()
	if err != nil {
		t.Fatal(err)
	}
	for i := range 2 * len(e.Loads) {
		near("standard error", math.Sqrt(cov.At(i, i)), math.Sqrt(want.Cov[i][i]))
	}
	t.Logf("noise learned: %.4g, numpy %.4g", five(e.Noise), want.Noise)
}
