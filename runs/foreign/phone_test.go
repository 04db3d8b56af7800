package foreign

import (
	"math"
	"math/rand/v2"

	"gonum.org/v1/gonum/num/quat"
	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
)

// phone has a random attitude on the bike, and usually a gyroscope.
type phone struct {
	rng               *rand.Rand
	mount             r3.Rotation
	rate, next        float64
	gyro              bool
	bias              r3.Vec
	noise, shake      float64 // m/s²: its own, and of an engine at its limit
	rough             float64 // m/s² per m/s, of the road
	motion            []sensors.Motion
	fixes, lag, waits float64 // per second; s; s over which the receiver averages
	ahead, high       float64 // m, of where the rear tyre touches the road
}

const zero = 100.0 // s on the log's clock when the ride begins

func newPhone(rng *rand.Rand) phone {
	n := rng.NormFloat64
	q := quat.Number{Real: n(), Imag: n(), Jmag: n(), Kmag: n()}
	return phone{rng: rng, mount: r3.Rotation(quat.Scale(1/quat.Abs(q), q)), rate: []float64{50, 60, 100, 100, 200, 400}[rng.IntN(6)],
		gyro: rng.Float64() < 0.85, bias: r3.Scale(0.08, r3.Vec{X: n(), Y: n(), Z: n()}), noise: 0.01 + 0.04*rng.Float64(),
		shake: 0.3 + 3.7*rng.Float64(), rough: 0.02 + 0.04*rng.Float64(),
		fixes: []float64{1, 1, 1, 5, 10}[rng.IntN(5)], lag: 0.05 + 0.65*rng.Float64(), waits: 0.5 * rng.Float64()}
}

// feel takes a reading when it is due. The bike's axes are forward, left, up.
func (p *phone) feel(w *world, slope float64) {
	if w.t < p.next {
		return
	}
	n := p.rng.NormFloat64
	p.next += (1 + 0.01*n()) / p.rate
	shake, road := p.shake*math.Pow(w.rpm/w.limitRPM, 1.2), p.rough*w.v
	turn := func(order, phase float64) float64 { return shake * math.Sin(2*math.Pi*order*w.engineTurns+phase) }
	up := w.pitch + w.lift + math.Atan(slope)
	lean := math.Atan(w.v * w.yaw / gravity)
	ahead := w.a - p.high*w.liftingMore - p.ahead*w.lifting*w.lifting
	above := p.ahead*w.liftingMore - p.high*w.lifting*w.lifting
	force := r3.Vec{
		X: ahead*math.Cos(w.lift) + above*math.Sin(w.lift) + gravity*math.Sin(up) + turn(w.order, 0) + 0.3*turn(0.5, 1) + road*n(),
		Y: 0.6*turn(w.order, 2) + road*n(),
		Z: above*math.Cos(w.lift) - ahead*math.Sin(w.lift) + gravity*math.Cos(up)/math.Cos(lean) + 0.8*turn(w.order, 1) + 1.5*road*n(),
	}
	rates := r3.Vec{X: 4e-4 * w.v * n(), Y: -w.pitching - w.lifting + 0.002*n(), Z: -w.yaw}
	own := func(size float64) r3.Vec { return r3.Scale(size, r3.Vec{X: n(), Y: n(), Z: n()}) }
	m := sensors.Motion{T: zero + w.t, Force: r3.Add(r3.Add(p.mount.Rotate(force), p.bias), own(p.noise)),
		Turn: r3.Add(p.mount.Rotate(rates), own(0.003))}
	if !p.gyro {
		nan := math.NaN()
		m.Turn = r3.Vec{X: nan, Y: nan, Z: nan}
	}
	p.motion = append(p.motion, m)
}

// log is the phone's recording, with the rider's entries.
func (w *world) log() *sensors.Log {
	p, n := &w.phone, w.rng.NormFloat64
	ride := sensors.UnknownRide()
	ride.Bike, ride.Axes = "invented", "specific force up"
	ride.Mass, ride.MassSD, ride.RotatingMass = w.mass+3*n(), 4, w.rotating
	ride.Air.Temperature, ride.Air.Pressure, ride.Air.Humidity = 20, 100940, 0 // 1.2 kg/m³
	ride.WindSD = math.Max(0.5, w.gustSD)
	for _, setup := range w.setups {
		setup.Mass = ride.Mass // the rider enters the same weight
		ride.Setups = append(ride.Setups, setup)
	}
	log := &sensors.Log{Motion: p.motion, Ride: ride}
	own := 0.03 + 0.07*p.rng.Float64()
	var drift, north, east float64
	for t := 1.0; t < w.t-1; t += 1 / p.fixes {
		first, last := max(0, int((t-p.waits)/pastStep)), min(int(t/pastStep), len(w.past)-1)
		mean := 0.0
		for _, x := range w.past[first : last+1] {
			mean += x.v / float64(last+1-first)
		}
		now := w.past[last]
		step := func(x *float64, size, time float64) {
			*x += -*x/(time*p.fixes) + size*math.Sqrt(2/(time*p.fixes))*n()
		}
		step(&drift, 0.03, 20)
		step(&north, 1.5, 60)
		step(&east, 1.5, 60)
		f := sensors.NewFix(zero+t+p.lag+0.02*math.Abs(n()), math.Round(100*math.Abs(mean+drift+own*n()))/100)
		f.LatDeg, f.LonDeg = 40+(now.x+north)/111e3, -30+(now.y+east)/(111e3*math.Cos(40*math.Pi/180))
		f.Alt, f.HSD = 100+now.height+2*north, 3
		f.BearingDeg = math.Mod(now.heading*180/math.Pi+3600, 360)
		log.Fixes = append(log.Fixes, f)
	}
	return log
}
