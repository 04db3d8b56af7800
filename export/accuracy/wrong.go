package accuracy

import (
	"fmt"
	"math/rand/v2"

	"stillair/runs/measure"
	"stillair/runs/roadload"
	"stillair/runs/roadload/loadtest"
)

// wrongModel simulates tests whose physics differ from the fit's model, with a
// rider's entries of wind, mass and air.
func wrongModel() Study {
	s := Study{Name: "wrong-model", Title: "Coast-downs under other physical models", Unit: percent,
		About: "Tyres, yaw, posture, warming up, wind and road each by a law that the fit does not have. The bands of CdA and Crr, with what is assumed in them, must hold the truth, and so must those of the force at 50, 80 and 100 km/h. Rolling is all that drags at standstill, clutch and gearbox included."}
	for _, w := range loadtest.Worlds() {
		limits := []Limit{inside(cda, Coverage, 0.90, 1), inside(crr, Coverage, 0.90, 1)}
		for _, f := range forceSpeeds() {
			limits = append(limits, inside(forceAt(f), Coverage, 0.90, 1))
		}
		s.Cases = append(s.Cases, Case{Name: w.Name, Seeds: 60, Limits: limits,
			Ride: func(seed uint64) (Record, error) { return wrongRide(w, seed) }})
	}
	return s
}

func forceSpeeds() []float64 { return []float64{50, 80, 100} }

func forceAt(kmh float64) string { return fmt.Sprintf("force at %.0f km/h", kmh) }

func wrongRide(w loadtest.World, seed uint64) (Record, error) {
	runs := w.Ride(rand.New(rand.NewPCG(seed, 77)), 0, 0, 0)
	opts := roadload.DefaultOptions(0.5)
	opts.MassSD, opts.DensitySD = 0.015, 0.006
	e, err := roadload.Fit(runs, opts)
	if err != nil {
		return Record{}, err
	}
	l := e.Total(0)
	r := Record{Values: []Value{relative(cda, l.CdA, l.CdACI, w.CdA, 0), relative(crr, l.Crr, l.CrrCI, w.Rolls(), 0)}}
	for _, kmh := range forceSpeeds() {
		f := e.Force(0, kmh/3.6, w.Entries(opts))
		truth := w.Force(kmh / 3.6)
		r.Values = append(r.Values, relative(forceAt(kmh), f, band(f), truth, 0))
	}
	return r, nil
}

// band is the 95 % interval of a force, or 2 % either way where that is more.
func band(f measure.Value) [2]float64 {
	half := max(1.96*f.SE, 0.02*f.X)
	return [2]float64{f.X - half, f.X + half}
}
