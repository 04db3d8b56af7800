package main

import (
	"context"
	"fmt"
	"math"
	"path/filepath"

	"github.com/spf13/pflag"

	"stillair/app/input"
	"stillair/export/shown"
	"stillair/runs"
	"stillair/sensors/sim"
)

// demoFlags are the flags of demo.
type demoFlags struct {
	out, system string
	seed        uint64
}

func demoCommand() command {
	return command{
		Name: "demo", Summary: "take a simulated ride through every step, to see what comes out",
		Help: `
Simulates a ride of an invented bike with two windscreens, writes what its phone
records as a session file, reads that file back and analyses it like any other
ride. Because the ride is simulated, the true values are known, and the summary
shows them beside what was measured.`,
		Flags: func(f *pflag.FlagSet) runner {
			d := &demoFlags{}
			f.StringVar(&d.out, "out", "out", "folder to write into")
			f.StringVar(&d.system, "units", string(shown.Metric), "metric, imperial or both")
			f.Uint64Var(&d.seed, "seed", 1, "seed of the random numbers: another number, another day")
			return d.run
		},
	}
}

func (d *demoFlags) run(ctx context.Context, w *world, args []string) error {
	if len(args) != 0 {
		return usage("it takes no arguments, only flags")
	}
	system, err := shown.ParseSystem(d.system)
	if err != nil {
		return usageError{err}
	}
	sc := sim.DemoScenario(sim.Naked())
	var ride *sim.Ride
	if err := w.during(ctx, "riding", func() (err error) { ride, err = sim.Run(sc, d.seed); return err }); err != nil {
		return err
	}
	file := func(name string) string { return filepath.Join(d.out, name) }
	if err := saveSession(file("ride.jsonl.gz"), ride.Log, simulatedHeader(sc, fmt.Sprintf("demo %d", d.seed))); err != nil {
		return err
	}
	opened, err := input.Open(file("ride.jsonl.gz"))
	if err != nil {
		return err
	}
	s, err := w.analyse(ctx, opened, file("ride.jsonl.gz"), nil)
	if err != nil {
		return err
	}
	if err := saveResults(file("results.json"), s); err != nil {
		return err
	}
	if err := saveReport(file("report.html"), s, shown.Style{System: system}); err != nil {
		return err
	}
	if _, err := saveTables(d.out, s.result); err != nil {
		return err
	}
	return w.print(summary(s, system) + besideTruth(s.result, sc, ride, system) + d.written())
}

// written prints the paths of all files.
func (d *demoFlags) written() string {
	p := &page{}
	p.title("Written into %s", d.out)
	for _, f := range [][2]string{
		{"report.html", "open it in a browser: plots, every run, what the figures mean"},
		{"ride.jsonl.gz", "the recording; zcat and jq read it"},
		{"results.json", "everything measured, for other programs"},
		{"track.csv", "speed, acceleration and distance over time"},
		{"runs.csv", "every run; marks.csv, road-load.csv, power.csv and comparisons.csv"},
		{"", "hold what was measured in them"},
	} {
		p.line("  %-15s %s", f[0], f[1])
	}
	p.title("Next:  desk analyse %s --report my.html --units both", argument(filepath.Join(d.out, "ride.jsonl.gz")))
	return p.String()
}

// besideTruth prints measured figures beside the simulation's true values.
func besideTruth(r *runs.Result, sc sim.Scenario, ride *sim.Ride, system shown.System) string {
	p := &page{units: system}
	p.title("Compared with the true values, which only a simulation knows")
	p.line("  %-30s %-18s %-9s %s", "", "measured", "true", "within the band")
	row := func(what, measured string, truth float64, decimals int, x, half float64) {
		p.line("  %-30s %-18s %-9s %s", what, measured, shown.Fixed(truth, decimals), yes(math.Abs(x-truth) <= half))
	}
	for _, l := range r.RoadLoads {
		for _, t := range trueSetups(sc) {
			if t.Name != l.Setup {
				continue
			}
			half := (l.CdACI[1] - l.CdACI[0]) / 2
			row("CdA, "+l.Setup+", m²", shown.PlusMinus(l.CdA.X, half), t.CdA, 3, l.CdA.X, half)
			half = (l.CrrCI[1] - l.CrrCI[0]) / 2
			row("Crr, "+l.Setup, shown.PlusMinus(l.Crr.X, half), t.Crr, 4, l.Crr.X, half)
		}
	}
	for _, run := range r.Runs {
		if run.Kind != runs.Launch || !run.Accepted() {
			continue
		}
		for _, t := range trueMarks(ride.Truth, run) {
			for _, m := range run.Marks {
				if m.Name == t.Name && (m.Name == "0-100 km/h" || m.Name == "1/4 mile") {
					row(fmt.Sprintf("%s, run %d, rollout, s", m.Name, run.ID), band(m.Rollout), t.Rollout, 2, m.Rollout.X, shown.Normal95*m.Rollout.SE)
				}
			}
		}
	}
	p.wrapped(2, "About 95 of a hundred such rows should say yes: that is what a 95 % band means. Try --seed 2, 3, 4 …")
	return p.String()
}

// trueMarks are the marks of the launch that run was found from.
func trueMarks(t *sim.Truth, run runs.Run) []sim.Mark {
	for _, d := range t.Events {
		if d.Kind == sim.KindLaunch && d.Start < run.End && d.End > run.Start {
			return t.Marks(d)
		}
	}
	return nil
}

func yes(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}
