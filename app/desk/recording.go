package main

import (
	"context"
	"errors"
	"fmt"
	"math"
	"path/filepath"
	"slices"

	"github.com/spf13/pflag"

	"stillair/app/input"
	"stillair/export/words"
	"stillair/runs"
	"stillair/runs/marks"
	"stillair/sensors"
	"stillair/sensors/sheets"
	"stillair/sensors/units"
)

// given holds values from the command line that replace those of ride.json.
// NaN: not given.
type given struct {
	bike, drive                  string
	mass, massSD, rotating, wind float64
	station, stationFrom         float64
	temperature, temperatureEnd  float64
	hectopascals, humidity       float64
	columns                      []string
}

// open reads a recording with what was said about its columns.
func (t *given) open(path string) (*input.Ride, error) {
	var asked []sheets.Ask
	for _, text := range t.columns {
		a, err := sheets.ParseAsk(text)
		if err != nil {
			return nil, usageError{err}
		}
		asked = append(asked, a)
	}
	return input.Open(path, asked...)
}

// addGiven adds the flags.
func addGiven(f *pflag.FlagSet) *given {
	t, nan := &given{}, math.NaN()
	number := func(p *float64, name, explain string) {
		*p = nan
		f.Var((*optional)(p), name, explain)
	}
	f.StringVar(&t.bike, "bike", "", "name of the bike")
	number(&t.mass, "mass", "bike, rider, fuel and luggage as ridden, kg")
	number(&t.massSD, "mass-sd", "standard deviation of that mass, kg")
	number(&t.rotating, "rotating-mass", "what the wheels add to the inertia, kg")
	f.StringVar(&t.drive, "drive", "", "clutch, variator (the belt of a scooter) or electric; the last two never roll free")
	number(&t.temperature, "temperature", "of the air, °C")
	number(&t.temperatureEnd, "temperature-end", "of the air at the end of the ride, °C; --temperature is then that at its start")
	number(&t.hectopascals, "pressure", "of the air where you rode, not reduced to sea level, hPa")
	number(&t.humidity, "humidity", "of the air, %")
	number(&t.wind, "wind-sd", "how much the wind differs from pair to pair, m/s")
	number(&t.station, "station-wind", "wind at a weather station nearby, m/s")
	number(&t.stationFrom, "station-from", "where that wind comes from, degrees clockwise from north")
	return t
}

// withColumns adds the flag of commands that read recordings.
func (t *given) withColumns(f *pflag.FlagSet) *given {
	f.StringArrayVar(&t.columns, "column", nil, "what a column of a logger's table is, as speed=NAME or \"speed=NAME as km/h\"; repeatable")
	return t
}

// apply puts what was given into the ride.
func (t *given) apply(r *sensors.Ride) error {
	checks := []struct {
		name      string
		value     float64
		low, high float64
		to        *float64
		factor    float64
	}{
		{"mass", t.mass, 30, 2000, &r.Mass, 1},
		{"mass-sd", t.massSD, 0, 500, &r.MassSD, 1},
		{"rotating-mass", t.rotating, 0, 200, &r.RotatingMass, 1},
		{"temperature", t.temperature, -60, 60, &r.Air.Temperature, 1},
		{"temperature-end", t.temperatureEnd, -60, 60, &r.Air.TemperatureEnd, 1},
		{"pressure", t.hectopascals, 300, 1100, &r.Air.Pressure, units.Hectopascal},
		{"humidity", t.humidity, 0, 100, &r.Air.Humidity, 0.01},
		{"wind-sd", t.wind, 0, 30, &r.WindSD, 1},
		{"station-wind", t.station, 0, 60, &r.Station.Speed, 1},
		{"station-from", t.stationFrom, 0, 360, &r.Station.FromDeg, 1},
	}
	for _, c := range checks {
		if math.IsNaN(c.value) {
			continue
		}
		if c.value < c.low || c.value > c.high {
			return usage("--%s %v is not possible; it must be from %v to %v", c.name, c.value, c.low, c.high)
		}
		*c.to = c.value * c.factor
	}
	if !math.IsNaN(t.mass) {
		for i := range r.Setups { // the mass given here is of all setups
			r.Setups[i].Mass = math.NaN()
		}
	}
	if t.drive != "" {
		if !slices.Contains(sensors.Drives(), sensors.Drive(t.drive)) {
			return usage("--drive %s is not known; it must be one of %v", t.drive, sensors.Drives())
		}
		r.Drive = sensors.Drive(t.drive)
	}
	if t.bike != "" {
		r.Bike = t.bike
	}
	return nil
}

// optional is a number that may not have been given.
type optional float64

func (o *optional) String() string { return "" }
func (o *optional) Type() string   { return "number" }
func (o *optional) Set(s string) error {
	var x float64
	if n, err := fmt.Sscanf(s+"\n", "%g\n", &x); err != nil || n != 1 || math.IsNaN(x) || math.IsInf(x, 0) {
		return fmt.Errorf("%q is not a number", s)
	}
	*o = optional(x)
	return nil
}

// study is a ride with everything computed from it.
type study struct {
	path   string // of the recording
	ride   *input.Ride
	result *runs.Result
}

// name calls the study by its file, or by its whole path where another of them
// has a file of that name.
func (s *study) name(among []*study) string {
	for _, o := range among {
		if o != s && filepath.Base(o.path) == filepath.Base(s.path) {
			return s.path
		}
	}
	return filepath.Base(s.path)
}

// analyse computes a ride's results and shows how far it is.
func (w *world) analyse(ctx context.Context, ride *input.Ride, name string, rollOns []marks.SpeedPair) (*study, error) {
	return w.study(ctx, ride, name, runs.Options{RollOns: rollOns})
}

// study is analyse with all its options.
func (w *world) study(ctx context.Context, ride *input.Ride, name string, opts runs.Options) (*study, error) {
	p := w.progress()
	defer p.end()
	book := words.ForMachines()
	opts.Progress = func(stage runs.Stage, share float64) { p.at(book.Name(stage), share) }
	result, err := runs.Analyse(ctx, ride.Log, opts)
	var input *sensors.InputError
	if errors.As(err, &input) && input.File == "" {
		named := *input
		named.File = name
		err = &named
	}
	if err != nil {
		return nil, err
	}
	return &study{path: name, ride: ride, result: result}, nil
}

// speedPairs reads the pairs asked for, nil where none was.
func speedPairs(asked []string) ([]marks.SpeedPair, error) {
	var pairs []marks.SpeedPair
	for _, text := range asked {
		p, err := marks.ParseSpeedPair(text)
		if err != nil {
			return nil, usageError{err}
		}
		pairs = append(pairs, p)
	}
	return pairs, nil
}
