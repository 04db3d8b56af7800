package main

import (
	"context"
	"crypto/sha256"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"github.com/spf13/pflag"

	"stillair/export/session"
	"stillair/export/words"
	"stillair/sensors/finding"
	"stillair/sensors/plain"
	"stillair/sensors/sim"
	"stillair/sensors/units"
)

// originSimulated marks the session file of a ride that nobody rode.
const originSimulated = "simulated"

// simulateFlags are the flags of simulate.
type simulateFlags struct {
	seed             uint64
	out, format      string
	ride, bike       string
	browser, nothing bool
	setups           []string
}

func simulateCommand() command {
	return command{
		Name: "simulate", Summary: "write a simulated ride, with its true values",
		Help: `
Simulates a ride and what a phone records of it: noise, vibration, a receiver
that lags, gusts, a road that is not quite level. The true values are written to
truth.json beside it, so that you can compare the results with them:

  desk simulate --ride coast-downs --seed 7 --out invented
  desk analyse invented/ride.jsonl.gz
  jq '.setups' invented/truth.json

The same ride, bike and seed always give the same files. With --setup, once for
each setup, the ride consists of coast-downs with these setups in turn and back
in reverse order, one week after the ride of the seed before: rides for desk
season.

  desk simulate --setup "short screen" --setup "tall screen + panniers" --seed 3

Parts, with what they add to the drag area:
  ` + partNames() + `

Rides:
` + presetLines() + `
Bikes: ` + strings.Join(bikeNames(), ", "),
		Flags: func(f *pflag.FlagSet) runner {
			s := &simulateFlags{}
			f.StringVar(&s.ride, "ride", "demo", "which ride")
			f.StringVar(&s.bike, "bike", bikeNames()[0], "which bike")
			f.Uint64Var(&s.seed, "seed", 1, "seed of the random numbers")
			f.StringVar(&s.out, "out", "out", "folder to write into")
			f.StringVar(&s.format, "format", "session", "session (one file), plain (a folder of CSV) or zip")
			f.BoolVar(&s.browser, "browser", false, "as a phone's browser records: 60 readings a second instead of 100")
			f.BoolVar(&s.nothing, "nothing-entered", false, "the rider entered nothing: neither mass nor air")
			f.StringArrayVar(&s.setups, "setup", nil, "a setup by its parts; may be repeated")
			return s.run
		},
	}
}

// bikeWord is what a simulated bike is called on the command line.
func bikeWord(b sim.Bike) string { return strings.TrimPrefix(b.Name, "invented ") }

func bikeNames() []string {
	var names []string
	for _, b := range sim.Bikes() {
		names = append(names, bikeWord(b))
	}
	return names
}

func presetLines() string {
	var b strings.Builder
	for _, p := range sim.Presets() {
		fmt.Fprintf(&b, "  %-11s %s\n", p.Name, words.ForMachines().Say(finding.New(p.About)))
	}
	return b.String()
}

// scenario finds what the flags ask for.
func (s *simulateFlags) scenario() (sim.Scenario, error) {
	var bike *sim.Bike
	for _, b := range sim.Bikes() {
		if bikeWord(b) == s.bike {
			bike = &b
		}
	}
	if bike == nil {
		return sim.Scenario{}, usage("there is no bike %q; the bikes are %s", s.bike, strings.Join(bikeNames(), ", "))
	}
	if len(s.setups) > 0 {
		return s.dressed(*bike)
	}
	for _, p := range sim.Presets() {
		if p.Name != s.ride {
			continue
		}
		sc := p.Scenario(*bike)
		if s.browser {
			sc.Phone = sim.BrowserPhone()
		}
		sc.Entered.Nothing = s.nothing
		return sc, nil
	}
	return sim.Scenario{}, usage("there is no ride %q; the rides are\n%s", s.ride, presetLines())
}

// partNames lists the parts of invented setups with what they add.
func partNames() string {
	var out []string
	for _, p := range sim.Parts() {
		out = append(out, fmt.Sprintf("%s (%g %%)", p.Name, 100*p.Drag))
	}
	return strings.Join(out, ",\n  ")
}

// dressed is a ride with the setups asked for, in turn.
func (s *simulateFlags) dressed(b sim.Bike) (sim.Scenario, error) {
	const from, to, pairs = 110 * units.KMH, 30 * units.KMH, 1
	sc := sim.DefaultScenario(b)
	var setups []sim.Setup
	for _, name := range s.setups {
		setup, ok := sim.Dressed(b, name)
		if !ok {
			return sc, usage("--setup %q has a part that is not invented yet; the parts are\n  %s", name, partNames())
		}
		setups = append(setups, setup)
	}
	sc.Plan = sim.Alternating(setups, pairs, from, to)
	sc.Start = sc.Start.AddDate(0, 0, 7*int(s.seed%52))
	if s.browser {
		sc.Phone = sim.BrowserPhone()
	}
	sc.Entered.Nothing = s.nothing
	return sc, nil
}

func (s *simulateFlags) run(ctx context.Context, w *world, args []string) error {
	if len(args) != 0 {
		return usage("it takes no arguments, only flags")
	}
	sc, err := s.scenario()
	if err != nil {
		return err
	}
	if s.format != "session" && s.format != "plain" && s.format != "zip" {
		return usage("there is no format %q; use session, plain or zip", s.format)
	}
	var ride *sim.Ride
	if err := w.during(ctx, "riding", func() (err error) { ride, err = sim.Run(sc, s.seed); return err }); err != nil {
		return err
	}
	recording, err := s.save(sc, ride)
	if err != nil {
		return err
	}
	truth := filepath.Join(s.out, "truth.json")
	if err := save(truth, func(out io.Writer) error { return writeTruth(out, sc, s.seed, ride) }); err != nil {
		return err
	}
	return w.print(fmt.Sprintf("An invented ride (%s, %s, seed %d):\n  %s\n  %s\n", s.ride, s.bike, s.seed, recording, truth))
}

// save writes the recording in the format asked for and returns its path.
func (s *simulateFlags) save(sc sim.Scenario, ride *sim.Ride) (string, error) {
	switch s.format {
	case "plain":
		dir := filepath.Join(s.out, "ride")
		return dir, plain.Write(dir, ride.Log)
	case "zip":
		path := filepath.Join(s.out, "ride.zip")
		return path, save(path, func(out io.Writer) error { return plain.WriteZip(out, ride.Log) })
	}
	path := filepath.Join(s.out, "ride.jsonl.gz")
	return path, saveSession(path, ride.Log, simulatedHeader(sc, fmt.Sprint(s.ride, s.bike, s.seed, s.browser, s.nothing, strings.Join(s.setups, ";"))))
}

// simulatedHeader is the header of an invented ride. Its identity comes from what
// the ride is made of, so that the same ride is the same file.
func simulatedHeader(sc sim.Scenario, made string) session.Header {
	sum := sha256.Sum256([]byte(program + ": " + made))
	return session.Header{ID: session.ID(sum[:8]), Start: sc.ClockZero, Started: sc.Start, Device: "simulated phone", Program: program, Origin: originSimulated}
}
