package season

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"stillair/runs/measure"
)

// TestRepeat checks the spread, the trend, the best and the typical of given
// figures, and that false trends are not more frequent than p says.
func TestRepeat(t *testing.T) {
	start := time.Date(2026, 4, 1, 9, 0, 0, 0, time.UTC)
	at := func(days int, x float64) Point {
		return Point{Started: start.AddDate(0, 0, days), Value: measure.Value{X: x, SE: 0.1}, Noise: 0.1}
	}
	r := NewRepeat([]Point{at(60, 4.4), at(0, 4.0), at(30, 4.2), at(90, 4.7)})
	if r.Least != 4.0 || math.Abs(r.Typical-4.3) > 1e-12 || math.Abs(r.Spread-0.2986) > 1e-4 || r.Points[0].Value.X != 4.0 {
		t.Errorf("%+v", r)
	}
	// By hand: slope Σ(t−1.5)(x−4.325)/5 = 0.23 a month.
	if math.Abs(r.Trend.X-0.23) > 1e-9 || !(r.TrendP < 0.05) {
		t.Errorf("trend %+v, p %.3f", r.Trend, r.TrendP)
	}
	if one := NewRepeat([]Point{at(0, 5)}); !math.IsNaN(one.Spread) || one.Trend.Known() {
		t.Errorf("a spread or trend of one: %+v", one)
	}
	rng := rand.New(rand.NewPCG(1, 2))
	const seasons = 1000
	found := 0
	for range seasons {
		var points []Point
		for k := range 8 {
			points = append(points, at(10*k, 4+0.1*rng.NormFloat64()))
		}
		if NewRepeat(points).TrendP < 0.05 {
			found++
		}
	}
	if found < seasons*3/100 || found > seasons*7/100 {
		t.Errorf("%d of %d seasons without a trend have one at 5 %%", found, seasons)
	}
}

// TestMeanHolds: the band of a mean contains the rider's true mean in 95 % or
// more, whether the rider's spread is as small as the phone's or ten times
// larger, and not normal.
func TestMeanHolds(t *testing.T) {
	const seasons, own = 2000, 0.04
	for _, c := range []struct {
		name   string
		rider  float64 // maximum deviation of a run, s; a triangular distribution about the rider's mean
		runs   int
		common float64
	}{{"alike", 0, 3, 0}, {"by a little", 0.1, 4, 0}, {"of three runs", 0.5, 3, 0}, {"of eight", 0.5, 8, 0}, {"of two", 0.5, 2, 0}, {"all wrong alike", 0.1, 5, 0.1}} {
		t.Run(c.name, func(t *testing.T) {
			rng, held := rand.New(rand.NewPCG(5, uint64(c.runs))), 0
			for range seasons {
				var points []Point
				wrong := c.common * rng.NormFloat64()
				for range c.runs {
					x := 4 + wrong + c.rider*(rng.Float64()-rng.Float64()) + own*rng.NormFloat64()
					points = append(points, Point{Value: measure.Value{X: x, SE: math.Hypot(own, c.common)}, Noise: own, Common: c.common})
				}
				if ci := NewRepeat(points).MeanCI; ci[0] <= 4 && 4 <= ci[1] {
					held++
				}
			}
			if held < seasons*935/1000 {
				t.Errorf("%d of %d bands hold", held, seasons)
			}
		})
	}
}

// TestTwoWays checks that opposite runs are paired if close in time and in the same
// gear, each once.
func TestTwoWays(t *testing.T) {
	run := func(id int, start, bearing, x float64, gear string) Time {
		return Time{Mark: "60-100 km/h", Kind: "roll-on", Gear: gear, Run: id, Start: start, Bearing: bearing, Time: measure.Value{X: x, SE: 0.04}}
	}
	got := TwoWays([]Time{run(1, 0, 84, 5.0, "6"), run(2, 200, 266, 5.6, "6"), run(3, 400, 84, 5.1, "6"), run(4, 9000, 264, 5.5, "6"), run(5, 450, 264, 4, "4"), run(6, 460, 80, 5, "6")}, time.Hour)
	if len(got) != 1 || got[0].There.Run != 1 && got[0].There.Run != 3 || got[0].Back.Run != 2 && got[0].There.Run != 2 {
		t.Fatalf("%+v", got)
	}
	if m := got[0].Mean; math.Abs(m.X-5.3) > 0.06 || math.Abs(m.SE-0.04/math.Sqrt2) > 1e-9 {
		t.Errorf("mean %+v", m)
	}
	if none := TwoWays([]Time{run(1, 0, math.NaN(), 5, "6"), run(2, 10, 180, 5, "6")}, time.Hour); len(none) > 0 {
		t.Errorf("without a bearing: %+v", none)
	}
}
