package sim

import (
	"math"
	"testing"

	"stillair/sensors/units"

	"gonum.org/v1/gonum/stat"
)

// TestLag checks that a fix without errors gives the truth of Latency earlier.
func TestLag(t *testing.T) {
	sc := withPlan(Naked(), Launch{ToSpeed: 40}, Brake{})
	sc.Receiver = Receiver{Rate: 10, Latency: 0.37, PosTau: 1}
	r := mustRun(t, sc, 1)
	for _, f := range r.Log.Fixes {
		near(t, "speed", f.Speed, r.Truth.V(f.T-0.37), 0.005)
		near(t, "UTC", f.UTC.Sub(sc.Start).Seconds(), f.T-0.37-sc.ClockZero, 0.001)
	}
	near(t, "lag in the truth", r.Truth.Lag, 0.37, 0)
}

// TestSmoothing: a first-order lag answers a ramp a·t with a·(t − τ·(1 − exp(−t/τ))), textbook.
func TestSmoothing(t *testing.T) {
	const a, tau = 4.0, 0.4
	sc := vacuum(Push{Force: a * (290 + 11.6), ToSpeed: 30})
	sc.Receiver = Receiver{Rate: 10, Latency: 0.2, SmoothTau: tau, PosTau: 1}
	r := mustRun(t, sc, 1)
	start, n := r.Truth.Of(KindPush)[0].Start, 0
	for _, f := range r.Log.Fixes {
		if u := f.T - 0.2 - start; u > 0 {
			near(t, "smoothed speed", f.Speed, a*(u-tau*(1-math.Exp(-u/tau))), 0.01)
			n++
		}
	}
	if n < 50 {
		t.Errorf("only %d fixes", n)
	}
}

// TestReceiverNoise checks the size and correlation of the errors at speed.
func TestReceiverNoise(t *testing.T) {
	sc := vacuum(Push{Force: 2000, ToSpeed: 30}, Hold{Speed: 30, Seconds: 4000})
	sc.Rider.SpeedWander, sc.Receiver.ArrivalJitterSD = 0, 0
	sc.Phone.Rate, sc.Baro.Rate = 1, 0
	r := mustRun(t, sc, 3)
	var e []float64
	for _, f := range r.Log.Fixes[40:] {
		e = append(e, f.Speed-r.Truth.V(f.T-r.Truth.Lag))
	}
	white, corr := sc.Receiver.WhiteSD, sc.Receiver.CorrSD
	near(t, "sd", stat.StdDev(e, nil), math.Hypot(white, corr), 0.006)
	k := 4
	want := corr * corr / (corr*corr + white*white) * math.Exp(-float64(k)/sc.Receiver.CorrTau)
	near(t, "correlation after 4 s", stat.Correlation(e[:len(e)-k], e[k:], nil), want, 0.09)
}

// TestStandstill checks that a receiver at rest reports a small positive speed
// (the length of a vector of two errors) and an arbitrary course.
func TestStandstill(t *testing.T) {
	sc := withPlan(Naked(), Stand{Seconds: 1500})
	r := mustRun(t, sc, 1)
	var square float64
	quarter := map[int]bool{}
	for _, f := range r.Log.Fixes {
		square += f.Speed * f.Speed / float64(len(r.Log.Fixes))
		quarter[int(f.BearingDeg/90)] = true
	}
	near(t, "rms speed", math.Sqrt(square), math.Sqrt2*math.Hypot(sc.Receiver.WhiteSD, sc.Receiver.CorrSD), 0.02)
	if len(quarter) != 4 {
		t.Errorf("courses only in quarters %v", quarter)
	}
	sc.Receiver.HoldBelow = 1
	for _, f := range mustRun(t, sc, 1).Log.Fixes {
		near(t, "held speed", f.Speed, 0, 0)
	}
}

// TestDropouts checks the share of lost fixes.
func TestDropouts(t *testing.T) {
	sc := withPlan(Naked(), Stand{Seconds: 7200})
	sc.Phone.Rate, sc.Baro.Rate = 1, 0
	sc.Receiver.DropsPerHour, sc.Receiver.DropMean = 30, 20
	n := len(mustRun(t, sc, 1).Log.Fixes)
	near(t, "share received", float64(n)/7200, 1-20.0/(120+20), 0.06)
}

// TestPressure checks that the barometer responds to height and air flow.
func TestPressure(t *testing.T) {
	sc := withPlan(Naked(), Reach{Speed: 30}, Hold{Speed: 30, Seconds: 60})
	sc.Road.Grade = 0.03
	sc.Baro = Barometer{Rate: 10, DynamicCoef: 0.2, DriftTau: 1}
	r := mustRun(t, sc, 1)
	if len(r.Log.Pressure) < 600 {
		t.Fatalf("%d readings", len(r.Log.Pressure))
	}
	for _, p := range r.Log.Pressure {
		m := r.Truth.Moments[r.Truth.at(p.T+1e-6)]
		u := m.V + m.Head
		near(t, "height", m.Height, 0.03*m.X, 1e-6)
		want := sc.Air.Pressure - sc.Air.Density*sc.Road.Gravity*m.Height + 0.2*sc.Air.Density/2*u*math.Abs(u)
		near(t, "pressure", p.Pa, want, 1)
	}
}

// TestStops compares the truth of stops with v²/(2a), the brake building up
// evenly within 0.3 s, which adds 0.15 s of riding except for small terms.
func TestStops(t *testing.T) {
	sc := vacuum(Reach{Speed: 31}, Brake{Decel: 6})
	tr := mustRun(t, sc, 1).Truth
	d := tr.Of(KindStop)[0]
	const v, a = 100 * units.KMH, 6.0
	near(t, "stopping distance from 100 km/h", tr.StopDist(d, v), v*v/(2*a), 0.05)
	near(t, "time from 80 to 40 km/h", tr.Through(d, 80*units.KMH, 40*units.KMH), 40*units.KMH/a, 0.001)
	if math.IsNaN(tr.StopDist(d, 20)) || !math.IsNaN(tr.StopDist(d, 40)) {
		t.Error("a stop from 31 m/s has a distance from 20 m/s and none from 40 m/s")
	}
}
