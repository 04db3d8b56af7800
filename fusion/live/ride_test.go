package live

import (
	"math"
	"testing"

	"stillair/sensors/sim"
)

// TestInventedRide follows invented rides from a cold start, phone at a random
// attitude, lag unknown. The limits are this filter's own, for a screen.
func TestInventedRide(t *testing.T) {
	cases := []struct {
		name   string
		change func(*sim.Scenario)
		rms    float64 // m/s
	}{
		{name: "as it comes", change: func(*sim.Scenario) {}, rms: 0.35},
		{name: "no gyroscope", change: func(sc *sim.Scenario) { sc.Phone.Gyro.Absent = true }, rms: 0.5},
		{name: "browser", change: func(sc *sim.Scenario) { sc.Phone = sim.BrowserPhone() }, rms: 0.5},
		{name: "late receiver", change: func(sc *sim.Scenario) { sc.Receiver.Latency = 0.8 }, rms: 0.5},
		{name: "10 Hz fixes", change: func(sc *sim.Scenario) { sc.Receiver.Rate = 10 }, rms: 0.35},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			sc := sim.DefaultScenario(sim.Naked())
			sc.Plan = append([]sim.Act{sim.Town{Minutes: 3}}, sim.Launches(2, 110/3.6, 0)...)
			c.change(&sc)
			ride, err := sim.Run(sc, 3)
			if err != nil {
				t.Fatal(err)
			}
			begin := ride.Log.Motion[0].T
			var e2, a2, n, aligned float64
			i := 0
			f := follow(ride.Log, func(s State) {
				if s.Aligned && aligned == 0 {
					aligned = s.T - begin
				}
				if i++; i%10 != 0 || s.T < begin+90 {
					return
				}
				e := s.Speed - ride.Truth.V(s.T)
				e2 += e * e
				m := ride.Truth.Moments[min(int((s.T-begin)*100), len(ride.Truth.Moments)-1)]
				a2 += (s.Accel - m.A) * (s.Accel - m.A)
				n++
			})
			s := f.State()
			last := ride.Truth.Moments[len(ride.Truth.Moments)-1]
			t.Logf("aligned after %.0f s, lag %.2f s of %.2f, speed off by %.2f m/s rms, acceleration by %.2f m/s², distance %.0f of %.0f m",
				aligned, s.Lag, ride.Truth.Lag, math.Sqrt(e2/n), math.Sqrt(a2/n), s.Distance, last.S)
			if rms := math.Sqrt(e2 / n); !(rms < c.rms) {
				t.Errorf("speed off by %.2f m/s rms, want at most %.1f", rms, c.rms)
			}
			if math.Abs(s.Distance-last.S) > 0.02*last.S+10 {
				t.Errorf("distance %.0f m, truth %.0f", s.Distance, last.S)
			}
			if !s.Aligned || aligned > 90 {
				t.Errorf("aligned %v after %.0f s", s.Aligned, aligned)
			}
		})
	}
}
