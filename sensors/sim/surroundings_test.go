package sim

import (
	"math"
	"testing"

	"stillair/sensors/units"

	"gonum.org/v1/gonum/stat"
)

// TestGusts: an Ornstein-Uhlenbeck process has the autocorrelation exp(−Δ/τ).
func TestGusts(t *testing.T) {
	set := DefaultWind()
	set.CrossSD = 0.5
	w := newWind(set, 1)
	w.goal, w.mean = [2]float64{2, -1}, [2]float64{2, -1}
	const n = 4_000_000
	along, cross := make([]float64, n), make([]float64, n)
	for i := range along {
		w.advance()
		along[i], cross[i] = w.at(1, 1, 0)
	}
	near(t, "mean along", stat.Mean(along, nil), 2, 0.05)
	near(t, "mean across", stat.Mean(cross, nil), -1, 0.03)
	near(t, "sd along", stat.StdDev(along, nil), set.GustRatio*set.SD, 0.02*set.GustRatio*set.SD)
	near(t, "sd across", stat.StdDev(cross, nil), set.GustRatio*set.CrossSD, 0.02*set.GustRatio*set.CrossSD)
	for _, lag := range []float64{1, 5, 10} {
		k := int(lag / tick)
		near(t, "autocorrelation", stat.Correlation(along[:n-k], along[k:], nil), math.Exp(-lag/set.GustTau), 0.02)
	}
	head, side := w.at(1, -1, 0)
	out, outSide := w.at(1, 1, 0)
	if head != -out || side != -outSide {
		t.Errorf("turning round makes head wind %g into %g and cross-wind %g into %g", out, head, outSide, side)
	}
}

// TestMeanWind checks that pairs draw winds with the given sd, and that the truth
// contains them.
func TestMeanWind(t *testing.T) {
	sc := DefaultScenario(Naked())
	for range 400 {
		sc.Plan = append(sc.Plan, NewWind{}, Stand{Seconds: 30})
	}
	sc.Wind.GustRatio, sc.Phone.Rate, sc.Baro.Rate = 0, 1, 0
	tr := mustRun(t, sc, 2).Truth
	var drawn []float64
	for i, w := range tr.Winds {
		drawn = append(drawn, w.Along)
		if i+1 < len(tr.Winds) && tr.Winds[i+1].From-w.From > 20 {
			near(t, "wind at the end of its spell", tr.Moments[tr.at(tr.Winds[i+1].From-0.1)].Head, w.Along, 0.02)
		}
	}
	near(t, "sd of the mean wind", stat.StdDev(drawn, nil), sc.Wind.SD, 3.5*sc.Wind.SD/math.Sqrt(2*400))
}

// TestRoad: a Matérn 3/2 process has the correlation (1 + √3·d/ℓ)·exp(−√3·d/ℓ).
func TestRoad(t *testing.T) {
	rd := DefaultRoad()
	rd.Grade, rd.RoughSD = 0.01, 0.002
	p := newProfile(rd, 3)
	const reach = 2e6
	var slope []float64
	for x := -reach; x < reach; x += 2 * profileStep {
		slope = append(slope, p.slope(x))
	}
	near(t, "mean slope", stat.Mean(slope, nil), rd.Grade, 0.0001)
	near(t, "sd of the slope", stat.StdDev(slope, nil), rd.RoughSD, 0.03*rd.RoughSD)
	for _, d := range []float64{50, 150, 300} {
		k := int(d / (2 * profileStep))
		x := math.Sqrt(3) * d / rd.RoughLength
		near(t, "correlation", stat.Correlation(slope[:len(slope)-k], slope[k:], nil), (1+x)*math.Exp(-x), 0.03)
	}
	for _, x := range []float64{-1234.5, -0.1, 0, 7.3, 4321} {
		rise := (p.height(x+0.01) - p.height(x-0.01)) / 0.02
		near(t, "height's derivative", rise, p.slope(x), 1e-5)
	}
	again := newProfile(rd, 3)
	if a, b := again.slope(777), p.slope(777); a != b {
		t.Errorf("asked for in another order the slope is %g, not %g", a, b)
	}
}

// TestSamePlace checks that a pair's runs cover one stretch, and that the slope
// on the way back is that of the way out with the opposite sign.
func TestSamePlace(t *testing.T) {
	sc := withPlan(Naked(), CoastPairs(2, 90*units.KMH, 40*units.KMH)...)
	sc.Road.RoughSD = 0.004
	tr := mustRun(t, sc, 3).Truth
	runs := tr.Of(KindCoastDown)
	if len(runs) != 4 {
		t.Fatalf("%d runs", len(runs))
	}
	for i, d := range runs {
		first := runs[i%2]
		near(t, "start", d.X, first.X, 0.2)
		if d.Out != (i%2 == 0) || d.Pair != i/2+1 {
			t.Errorf("run %d heads out: %v, pair %d", i, d.Out, d.Pair)
		}
	}
	slope := map[int]float64{} // on the way out, every 20 m
	seen := 0
	for _, m := range tr.Moments {
		switch node := int(math.Round(m.X / 20)); {
		case math.Abs(m.X-float64(node)*20) > 0.2 || m.V < 10:
		case math.Cos(m.Heading) > 0:
			slope[node] = m.Slope
		default:
			if out, ok := slope[node]; ok {
				near(t, "slope on the way back", m.Slope, -out, 1e-4)
				seen++
			}
		}
	}
	if seen < 20 {
		t.Errorf("only %d places were seen both ways", seen)
	}
}

// TestPosition: one degree of latitude and of longitude at 40° on WGS 84,
// 111 035 and 85 394 m (handbook values, from memory).
func TestPosition(t *testing.T) {
	rd := DefaultRoad()
	rd.BearingDeg = 0
	pl := newPlane(rd)
	lat, _ := pl.position(1110.35, 0, 0, 0)
	_, lon := pl.position(0, -853.94, 0, 0)
	near(t, "latitude", lat, 40.01, 1e-6)
	near(t, "longitude", lon, -29.99, 1e-6)
	for _, c := range []struct{ out, heading, want float64 }{{84, 0, 84}, {84, math.Pi, 264}, {84, math.Pi / 2, 354}, {10, -math.Pi / 2, 100}, {0, 1e-18, 0}} {
		near(t, "bearing", bearing(c.out, c.heading), c.want, 1e-9)
	}
}

// TestTown checks that nothing in town looks like a run: no full throttle, no
// speed beyond town's, and much stopping.
func TestTown(t *testing.T) {
	for _, b := range Bikes() {
		t.Run(b.Name, func(t *testing.T) {
			t.Parallel()
			tr := mustRun(t, withPlan(b, Town{Minutes: 40}, Stand{Seconds: 2}), 5).Truth
			stops, last := 0, tr.Moments[0]
			for _, m := range tr.Moments[1:] {
				if m.V > 70*units.KMH || m.A > 3 || m.Clutch == 1 && m.Throttle > 0.85 {
					t.Fatalf("at %.1f s: %.0f km/h, %.1f m/s², throttle %.2f", m.T, m.V/units.KMH, m.A, m.Throttle)
				}
				if m.V == 0 && last.V > 0 {
					stops++
				}
				last = m
			}
			if stops < 15 || last.S < 10e3 || last.Heading != 0 {
				t.Errorf("%d stops, %.0f m, heading %.3f rad", stops, last.S, last.Heading)
			}
		})
	}
}
