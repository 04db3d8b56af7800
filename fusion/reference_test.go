package fusion

import (
	"bytes"
	"encoding/csv"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"stillair/fusion/internal/kalman"
	"stillair/sensors/sim"
)

// python is an interpreter that has numpy (Debian: python3-numpy), or the test
// is left out.
func python(t testing.TB) string {
	t.Helper()
	for _, name := range []string{"/usr/bin/python3", "python3"} {
		if exec.Command(name, "-c", "import numpy").Run() == nil {
			return name
		}
	}
	t.Skip("no python3 with numpy here; Debian has it as python3-numpy")
	return ""
}

// lastPass prepares a ride up to its last pass.
func lastPass(t testing.TB, launches int) ([]kalman.Node, kalman.Vec, kalman.Sym) {
	t.Helper()
	sc := sim.DefaultScenario(sim.Naked())
	sc.Plan = sim.Launches(launches, 110/3.6, 0)
	ride, err := sim.Run(sc, 1)
	if err != nil {
		t.Fatal(err)
	}
	fixes, prior := usable(ride.Log.Fixes)
	r, _, err := prepare(ride.Log, fixes, prior, Options{})
	if err != nil {
		t.Fatal(err)
	}
	r.learn(Options{})
	x, p := r.first(0)
	return r.nodes(r.places(fineGrid, fineGrid)), x, p
}

// writeNodes writes the input of testdata/reference/smoother.py.
func writeNodes(t testing.TB, path string, nodes []kalman.Node, x kalman.Vec, p kalman.Sym) {
	t.Helper()
	var b bytes.Buffer
	b.WriteString("h,dv,ds,rv,q,qb,qc,qk,qd,phi_c,phi_k,blind,kind,z,r,accel,shape\n")
	row := func(v ...float64) {
		for i, f := range v {
			if i > 0 {
				b.WriteByte(',')
			}
			b.WriteString(strconv.FormatFloat(f, 'g', -1, 64))
		}
		b.WriteByte('\n')
	}
	row(x[:]...)
	var sd []float64
	for _, v := range p.Variances() {
		sd = append(sd, math.Sqrt(v))
	}
	row(sd...)
	for _, n := range nodes {
		s, o := n.Step, n.Observation
		var blind, kind float64
		if s.Blind {
			blind = 1
		}
		if n.Seen {
			kind = 1
			if o.Still {
				kind = 2
			}
		}
		row(s.H, s.DV, s.DS, s.RV, s.Q, s.QB, s.QC, s.QK, s.QD, s.PhiC, s.PhiK, blind, kind, o.Z, o.R, o.Accel, o.Shape)
	}
	if err := os.WriteFile(path, b.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
}

// numpySmooth runs the reference implementation and returns its states with
// their standard deviations, and the processor time of its recursions. It uses
// one thread: for 7 × 7 matrices more would only slow it down.
func numpySmooth(t testing.TB, nodes []kalman.Node, x kalman.Vec, p kalman.Sym) ([][]string, float64) {
	t.Helper()
	py, dir := python(t), t.TempDir()
	in, out := filepath.Join(dir, "nodes.csv"), filepath.Join(dir, "out.csv")
	writeNodes(t, in, nodes, x, p)
	var stderr bytes.Buffer
	cmd := exec.Command(py, filepath.Join("..", "testdata", "reference", "smoother.py"), in, out)
	cmd.Stderr = &stderr
	cmd.Env = append(os.Environ(), "OPENBLAS_NUM_THREADS=1", "OMP_NUM_THREADS=1")
	said, err := cmd.Output()
	if err != nil {
		t.Fatalf("%v: %s", err, stderr.String())
	}
	seconds, err := strconv.ParseFloat(strings.TrimSpace(string(said)), 64)
	if err != nil {
		t.Fatal(err)
	}
	f, err := os.Open(out)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows, seconds
}

// TestAgainstNumpy compares the smoother with a textbook implementation with
// numpy: standard deviations to 0.1 %, means to 0.1 % of their standard
// deviation.
func TestAgainstNumpy(t *testing.T) {
	if testing.Short() {
		t.Skip("needs another interpreter")
	}
	nodes, x, p := lastPass(t, 2)
	rows, _ := numpySmooth(t, nodes, x, p)
	got := kalman.Smooth(nodes, x, p)
	if len(rows) != len(nodes) {
		t.Fatalf("%d rows for %d nodes", len(rows), len(nodes))
	}
	for i, row := range rows {
		variances := got.P[i].Variances()
		for a := range kalman.N {
			mean, err1 := strconv.ParseFloat(row[a], 64)
			sd, err2 := strconv.ParseFloat(row[kalman.N+a], 64)
			if err1 != nil || err2 != nil {
				t.Fatal(err1, err2)
			}
			if own := math.Sqrt(variances[a]); math.Abs(own-sd) > 1e-3*sd {
				t.Fatalf("node %d, state %d: standard deviation %.9g, numpy %.9g", i, a, own, sd)
			}
			if math.Abs(got.X[i][a]-mean) > 1e-3*sd+1e-9*math.Abs(mean) {
				t.Fatalf("node %d, state %d: %.9g, numpy %.9g ± %.3g", i, a, got.X[i][a], mean, sd)
			}
		}
	}
}
