package loadtest

import "math"

// Worlds are tests that each differ in one respect from the model of the fit.
func Worlds() []World {
	with := func(name string, w World, f func(*World)) World {
		f(&w)
		w.Name = name
		return w
	}
	n, s := Naked(), Sport()
	return []World{
		with("model right", n, func(w *World) {}),
		with("v² tyres", n, func(w *World) { w.Rolling = TyresSquare(2.5) }),
		with("v² tyres, sport", s, func(w *World) { w.Rolling = TyresSquare(2.5) }),
		with("cross-wind 3 m/s", n, func(w *World) { w.Cross, w.Yaw = 3, 0.015 }),
		with("steady wind 3 m/s", n, func(w *World) { w.Along = 3 }),
		with("steady wind 5 m/s", n, func(w *World) { w.Along = 5 }),
		with("sits up, below 60 km/h", n, func(w *World) { w.SitsUp = 0.1 }),
		with("tyres 15 % stiffer, cold", n, func(w *World) { w.Cold, w.CoolsIn = 0.15, 1200 }),
		with("gearbox drag, growing", n, func(w *World) { w.Further = func(v float64) float64 { return 2 + 0.2*v } }),
		with("clutch drag 5 N", n, func(w *World) { w.Further = func(float64) float64 { return 5 } }),
		with("grade 2 %", n, func(w *World) { w.Grade = 0.02 }),
		with("valley", n, func(w *World) { w.Slope = func(x float64) float64 { return 0.001 * (x - 500) / 500 } }),
		with("mass 5 % off", n, func(w *World) { w.Entered = 1.05 * w.Mass }),
		with("CdA 0.12, 200 to 60 km/h", s, func(w *World) { w.CdA = 0.12 }),
		with("CdA 1.3, 700 kg", n, func(w *World) { w.CdA, w.Mass = 1.3, 700 }),
		with("90 kg, 60 to 20 km/h", n, func(w *World) { w.CdA, w.Mass, w.From, w.To = 0.4, 90, 60/3.6, 20/3.6 }),
		with("300 to 60 km/h", s, func(w *World) { w.From = 300 / 3.6 }),
		with("wind, partly sheltered", n, func(w *World) {
			w.Along = 2
			w.Sheltered = func(x float64) float64 { return 1 / (1 + math.Exp(-(x-500)/100)) }
		}),
	}
}
