package main

import (
	"context"
	"fmt"
	"os"
	"runtime"
	"strings"
	"sync"
	"time"

	"github.com/spf13/pflag"

	"stillair/app/input"
	"stillair/export/results"
	"stillair/export/shown"
	"stillair/export/words"
	"stillair/runs"
	"stillair/runs/effect"
	"stillair/runs/measure"
	"stillair/runs/season"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// seasonFlags are the flags of season.
type seasonFlags struct {
	base, system, at string
	within           time.Duration
	battery, drive   float64
	json             bool
}

func seasonCommand() command {
	return command{
		Name: "season", Args: "FOLDER...", Summary: "many rides together: drag of each part, repeatability, trends",
		Help: `
Takes any number of recordings, results as JSON (desk analyse --json) or Parquet
(desk export --as parquet, or the zip that the phone makes) and folders of them,
and lists what each bike and setup measured: mean, best, typical, how far it
spreads from ride to ride, and its trend. Results are read directly; recordings
are analysed first. A ride that comes in two files counts once.

The drag budget lists the drag of each part, from all comparisons of all rides
at once. For that a setup is named by its parts with plus signs between them,
such as "tall screen + panniers"; parts that were never ridden on the same ride
are compared through others. Where the rides contradict each other, it says so
and widens ±.

Two-way means pair launches and roll-ons of one setup and gear that were ridden
in opposite directions within --within of each other. Flying passes, the same
road ridden both ways at a steady speed, have the mean of both directions; they
are looked for within an hour, so a longer --within finds no more of them.

For an electric bike give --battery: the energy per km at the steady speed --at
and the range follow from the road load.

Examples:
  desk season rides/
  desk season rides/ --base "short screen" --json
  desk season rides/ --battery 12.5 --at 90km/h`,
		Flags: func(f *pflag.FlagSet) runner {
			s := &seasonFlags{}
			f.StringVar(&s.base, "base", "", "setup that parts are counted from (default: the one in most rides)")
			f.DurationVar(&s.within, "within", time.Hour, "longest time between the runs of a two-way mean")
			f.Float64Var(&s.battery, "battery", 0, "usable energy of an electric bike's battery, kWh")
			f.Float64Var(&s.drive, "drive", 0, "share of it that reaches the road, % (default: 85 ± 5, assumed)")
			f.StringVar(&s.at, "at", "100km/h", "steady speed for energy and range")
			f.StringVar(&s.system, "units", string(shown.Metric), "metric, imperial or both")
			f.BoolVar(&s.json, "json", false, "print the season as JSON and nothing else")
			return s.run
		},
	}
}

func (s *seasonFlags) run(ctx context.Context, w *world, args []string) error {
	if len(args) == 0 {
		return usage("it takes a folder, or recordings and results files")
	}
	system, err := shown.ParseSystem(s.system)
	if err != nil {
		return usageError{err}
	}
	speed, err := parseSpeed("at", s.at)
	if err != nil {
		return err
	}
	drive := effect.AssumedDrive()
	if s.drive != 0 {
		drive = measure.Value{X: s.drive / 100, SE: 0.01}
	}
	if s.battery < 0 || s.battery > 200 || drive.X <= 0.3 || drive.X > 1 {
		return usage("--battery takes kWh up to 200, --drive per cent from 30 to 100")
	}
	var paths []string
	for _, arg := range args {
		found, err := seasonInputs(arg)
		if err != nil {
			return err
		}
		paths = append(paths, found...)
	}
	ridden, unread, err := w.ridden(ctx, paths)
	if err != nil {
		return err
	}
	rides := make([]season.Ride, len(ridden))
	for i, r := range ridden {
		rides[i] = r.doc.SeasonRideOf(r.name)
	}
	doc := results.NewSeason(rides, s.base, s.within)
	if s.json {
		for _, u := range unread {
			fmt.Fprintln(w.Err, u)
		}
		return results.WriteSeason(w.Out, doc)
	}
	p := &page{units: system}
	for _, b := range doc.Bikes {
		p.bike(b)
	}
	if s.battery > 0 {
		p.electric(ridden, speed, s.battery, drive)
	}
	if len(unread) > 0 {
		p.title("Left out")
		for _, u := range unread {
			p.wrapped(2, u)
		}
	}
	p.title("± is a 95 %% band: 95 of 100 such bands contain the true value.")
	return w.print(p.String())
}

// ridden gives the results of every ride in the files, analysing recordings on
// all cores, and a sentence for each that is not among them.
func (w *world) ridden(ctx context.Context, paths []string) ([]ridden, []string, error) {
	tables, paths := columnFiles(paths)
	docs, errs := w.documents(ctx, paths)
	if err := ctx.Err(); err != nil {
		return nil, nil, err
	}
	var out []ridden
	var unread []string
	for i, d := range docs {
		if d != nil {
			out = append(out, ridden{shortName(paths[i], paths), d})
			continue
		}
		unread = append(unread, words.ForMachines().Error(inFile(errs[i], paths[i])))
	}
	more, wrong := fromColumns(tables)
	out, errs = append(out, more...), append(errs, wrong...)
	for _, err := range wrong {
		unread = append(unread, words.ForMachines().Error(err))
	}
	if len(out) == 0 {
		for _, err := range errs {
			if err != nil {
				return nil, nil, err
			}
		}
	}
	out, twice := once(out)
	return out, append(unread, twice...), nil
}

// once leaves out rides that came in two files.
func once(all []ridden) (out []ridden, twice []string) {
	rides := make([]season.Ride, len(all))
	for i, r := range all {
		rides[i] = r.doc.SeasonRideOf(r.name)
	}
	for i, of := range season.Twice(rides) {
		if of < 0 {
			out = append(out, all[i])
			continue
		}
		twice = append(twice, fmt.Sprintf("%s: the same ride as %s; it counts once", all[i].name, all[of].name))
	}
	return out, twice
}

// documents gives the results of every file, analysing the recordings on all
// cores; a file that cannot be used leaves nil and an error.
func (w *world) documents(ctx context.Context, paths []string) ([]*results.Document, []error) {
	docs, errs := make([]*results.Document, len(paths)), make([]error, len(paths))
	bar := w.progress()
	defer bar.end()
	var mu sync.Mutex
	var group sync.WaitGroup
	next, done := make(chan int), 0
	for range min(len(paths), runtime.GOMAXPROCS(0)) {
		group.Go(func() {
			for i := range next {
				docs[i], errs[i] = documentOf(ctx, paths[i])
				mu.Lock()
				done++
				bar.at("analysing", float64(done)/float64(len(paths)))
				mu.Unlock()
			}
		})
	}
	for i := range paths {
		next <- i
	}
	close(next)
	group.Wait()
	return docs, errs
}

// documentOf reads a results file, or analyses a recording.
func documentOf(ctx context.Context, path string) (*results.Document, error) {
	if strings.HasSuffix(path, ".json") {
		f, err := os.Open(path)
		if err != nil {
			return nil, &sensors.InputError{File: path, What: finding.New("input.cannot_open", sensors.Cause(err)), Remedy: finding.New("input.check_name"), Err: err}
		}
		defer f.Close()
		return results.Read(f, path)
	}
	ride, err := input.Open(path)
	if err != nil {
		return nil, err
	}
	r, err := runs.Analyse(ctx, ride.Log, runs.Options{})
	if err != nil {
		return nil, err
	}
	return (&study{path: path, ride: ride, result: r}).document(), nil
}
