package fusion

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
)

// openDrive is the real minute of testdata/open-drive: a car, a phone-class
// device, a 10 Hz receiver, and the four wheels as the truth.
type openDrive struct {
	log    sensors.Log
	wheelT []float64
	wheelV []float64 // mean of the four wheels, m/s
}

// readColumns reads a CSV file of numbers, column by column.
func readColumns(t testing.TB, name string) map[string][]float64 {
	t.Helper()
	f, err := os.Open(filepath.Join("..", "testdata", "open-drive", name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	out := map[string][]float64{}
	for c, head := range rows[0] {
		for _, row := range rows[1:] {
			x, err := strconv.ParseFloat(row[c], 64)
			if err != nil {
				t.Fatal(err)
			}
			out[head] = append(out[head], x)
		}
	}
	return out
}

func readOpenDrive(t testing.TB, everyFix int) openDrive {
	t.Helper()
	var d openDrive
	m := readColumns(t, "motion.csv")
	for i, at := range m["t_s"] {
		d.log.Motion = append(d.log.Motion, sensors.Motion{T: at,
			Force: r3.Vec{X: m["ax_mps2"][i], Y: m["ay_mps2"][i], Z: m["az_mps2"][i]},
			Turn:  r3.Vec{X: m["gx_radps"][i], Y: m["gy_radps"][i], Z: m["gz_radps"][i]}})
	}
	g := readColumns(t, "gnss.csv")
	for i := 0; i < len(g["t_s"]); i += everyFix {
		f := sensors.NewFix(g["t_s"][i], g["speed_mps"][i])
		f.LatDeg, f.LonDeg = g["lat_deg"][i], g["lon_deg"][i]
		d.log.Fixes = append(d.log.Fixes, f)
	}
	w := readColumns(t, "wheel_speed.csv")
	d.wheelT = w["t_s"]
	for i := range d.wheelT {
		d.wheelV = append(d.wheelV, (w["fl_mps"][i]+w["fr_mps"][i]+w["rl_mps"][i]+w["rr_mps"][i])/4)
	}
	return d
}

// against compares a track with the wheels between 3 and 57 s: the constant
// scale that fits best, and the rms that is left.
func (d openDrive) against(tr *Track) (scale, rms float64) {
	var vw, ww float64
	for i, at := range d.wheelT {
		if at < 3 || at > 57 {
			continue
		}
		v := tr.At(at).V
		vw += v * d.wheelV[i]
		ww += d.wheelV[i] * d.wheelV[i]
	}
	scale = vw / ww
	var sum, n float64
	for i, at := range d.wheelT {
		if at < 3 || at > 57 {
			continue
		}
		e := tr.At(at).V - scale*d.wheelV[i]
		sum += e * e
		n++
	}
	return scale, math.Sqrt(sum / n)
}

// wheelTime is how long the wheels took from one speed to another, each wheel
// speed times scale.
func (d openDrive) wheelTime(scale, from, to float64) float64 {
	cross := func(level float64) float64 {
		for i := 1; i < len(d.wheelV); i++ {
			a, b := scale*d.wheelV[i-1]-level, scale*d.wheelV[i]-level
			if a < 0 && b >= 0 {
				return d.wheelT[i-1] + (d.wheelT[i]-d.wheelT[i-1])*a/(a-b)
			}
		}
		return math.NaN()
	}
	return cross(to) - cross(from)
}

// TestOpenDrive checks the smoother on a real road against wheel speeds. The
// lag of 0.18 s is the one at which the receiver's speeds lie closest to the
// wheels', as testdata/open-drive/README.md says.
func TestOpenDrive(t *testing.T) {
	cases := []struct {
		name   string
		every  int
		rms    float64 // m/s
		lagOff float64 // s
	}{
		{name: "10 Hz", every: 1, rms: 0.07, lagOff: 0.06},
		{name: "thinned to 1 Hz", every: 10, rms: 0.10, lagOff: 0.06},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			d := readOpenDrive(t, c.every)
			tr, err := Smooth(&d.log, Options{})
			if err != nil {
				t.Fatal(err)
			}
			scale, rms := d.against(tr)
			t.Logf("lag %.3f ± %.3f s, receiver %+v, scale %.4f, rms %.3f m/s", tr.Lag.Seconds, tr.Lag.SE, tr.Receiver, scale, rms)
			if math.Abs(tr.Lag.Seconds-0.18) > c.lagOff {
				t.Errorf("lag %.3f s, want 0.18 ± %.2f", tr.Lag.Seconds, c.lagOff)
			}
			if rms > c.rms {
				t.Errorf("%.3f m/s rms off the wheels, want at most %.2f", rms, c.rms)
			}
			whole := Span{tr.T[0], tr.T[len(tr.T)-1]}
			a, ok1 := tr.TimeAtSpeed(9, whole)
			b, ok2 := tr.TimeAtSpeed(19, whole)
			if !ok1 || !ok2 {
				t.Fatal("9 or 19 m/s not reached")
			}
			dt, se := tr.Between(a, b)
			want := d.wheelTime(scale, 9, 19)
			t.Logf("9 to 19 m/s: %.3f ± %.3f s, wheels %.3f s", dt, se, want)
			if math.Abs(dt-want) > 0.15 {
				t.Errorf("9 to 19 m/s in %.3f s, the wheels say %.3f", dt, want)
			}
		})
	}
}
