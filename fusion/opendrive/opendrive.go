// Package opendrive reads testdata/open-drive, a real minute of driving with
// wheel speeds as the truth, for tests.
package opendrive

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"time"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
)

// Drive is a car, a phone-class device, a 10 Hz receiver, and the four wheels.
type Drive struct {
	Log    sensors.Log
	WheelT []float64 // s
	WheelV []float64 // mean of the four wheels, m/s
}

// Read reads the drive from the testdata folder with every n-th fix: 1 keeps 10
// Hz, 10 leaves 1 Hz.
func Read(testdata string, every int) (*Drive, error) {
	dir := filepath.Join(testdata, "open-drive")
	m, err := columns(filepath.Join(dir, "motion.csv"))
	if err != nil {
		return nil, err
	}
	g, err := columns(filepath.Join(dir, "gnss.csv"))
	if err != nil {
		return nil, err
	}
	w, err := columns(filepath.Join(dir, "wheel_speed.csv"))
	if err != nil {
		return nil, err
	}
	d := &Drive{WheelT: w["t_s"]}
	for i, at := range m["t_s"] {
		d.Log.Motion = append(d.Log.Motion, sensors.Motion{T: at,
			Force: r3.Vec{X: m["ax_mps2"][i], Y: m["ay_mps2"][i], Z: m["az_mps2"][i]},
			Turn:  r3.Vec{X: m["gx_radps"][i], Y: m["gy_radps"][i], Z: m["gz_radps"][i]}})
	}
	for i := 0; i < len(g["t_s"]); i += every {
		f := sensors.NewFix(g["t_s"][i], g["speed_mps"][i])
		f.LatDeg, f.LonDeg = g["lat_deg"][i], g["lon_deg"][i]
		f.UTC = time.UnixMilli(int64(g["utc_ms"][i]))
		d.Log.Fixes = append(d.Log.Fixes, f)
	}
	for i := range d.WheelT {
		d.WheelV = append(d.WheelV, (w["fl_mps"][i]+w["fr_mps"][i]+w["rl_mps"][i]+w["rr_mps"][i])/4)
	}
	return d, nil
}

// columns reads a CSV file of numbers, column by column.
func columns(path string) (map[string][]float64, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		return nil, err
	}
	out := map[string][]float64{}
	for c, head := range rows[0] {
		for i, row := range rows[1:] {
			x, err := strconv.ParseFloat(row[c], 64)
			if err != nil {
				return nil, fmt.Errorf("%s:%d: %w", path, i+2, err)
			}
			out[head] = append(out[head], x)
		}
	}
	return out, nil
}

// Against compares speeds with the wheels between two times: the best constant
// scale and the rms of the residual, m/s.
func (d *Drive) Against(speed func(t float64) float64, from, to float64) (scale, rms float64) {
	var vw, ww float64
	for i, at := range d.WheelT {
		if at >= from && at <= to {
			vw += speed(at) * d.WheelV[i]
			ww += d.WheelV[i] * d.WheelV[i]
		}
	}
	scale = vw / ww
	var sum, n float64
	for i, at := range d.WheelT {
		if at >= from && at <= to {
			e := speed(at) - scale*d.WheelV[i]
			sum += e * e
			n++
		}
	}
	return scale, math.Sqrt(sum / n)
}

// Time is how long the wheels first took from one speed to a higher one, each
// wheel speed times scale.
func (d *Drive) Time(scale, from, to float64) float64 {
	cross := func(level float64) float64 {
		for i := 1; i < len(d.WheelV); i++ {
			a, b := scale*d.WheelV[i-1]-level, scale*d.WheelV[i]-level
			if a < 0 && b >= 0 {
				return d.WheelT[i-1] + (d.WheelT[i]-d.WheelT[i-1])*a/(a-b)
			}
		}
		return math.NaN()
	}
	return cross(to) - cross(from)
}
