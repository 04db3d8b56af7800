package main

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
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

// seasonFlags are what season takes.
type seasonFlags struct {
	base, system, at string
	within           time.Duration
	battery, drive   float64
	json             bool
}

func seasonCommand() command {
	return command{
		Name: "season", Args: "FOLDER...", Summary: "many rides together: what parts cost, what repeats and drifts",
		Help: `
Takes any number of recordings, results files (desk analyse --json) and folders
of them, and lists what each bike and setup measured: mean, best, typical, how
far it spreads from ride to ride, and its trend. Results files are read at once;
recordings are analysed first.

The drag budget says what each part costs, from all comparisons of all rides at
once. For that a setup is named by its parts with plus signs between them, such
as "tall screen + panniers"; parts that never rode side by side are compared by
way of others. Where the rides contradict each other, it says so and widens ±.

Two-way means pair launches and roll-ons of one setup and gear that were ridden
in opposite directions within --within of each other.

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
	docs, unread, err := w.documents(ctx, paths)
	if err != nil {
		return err
	}
	var rides []season.Ride
	for i, d := range docs {
		if d != nil {
			rides = append(rides, d.SeasonRideOf(shortName(paths[i], paths)))
		}
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
		p.electric(docs, speed, s.battery, drive)
	}
	if len(unread) > 0 {
		p.title("Left out")
		for _, u := range unread {
			p.wrapped(2, u)
		}
	}
	p.title("± is a 95 %% band: of 100 such bands 95 hold the true figure.")
	return w.print(p.String())
}

// seasonInputs lists recordings and results files at a path, whatever is within
// a folder.
func seasonInputs(path string) ([]string, error) {
	info, err := os.Stat(path)
	if err != nil || !info.IsDir() {
		return []string{path}, nil // what is wrong with it is told with its turn
	}
	found, err := recordingsAt(path)
	more, _ := filepath.Glob(filepath.Join(escapeGlob(path), "*.json"))
	found = append(found, more...)
	if len(found) == 0 {
		return nil, err
	}
	return found, nil
}

// escapeGlob takes the meaning from letters that a pattern would read.
func escapeGlob(path string) string {
	return strings.NewReplacer(`\`, `\\`, "*", `\*`, "?", `\?`, "[", `\[`).Replace(path)
}

// shortName is a file's own name, or its path where another has that name.
func shortName(path string, among []string) string {
	for _, o := range among {
		if o != path && filepath.Base(o) == filepath.Base(path) {
			return path
		}
	}
	return filepath.Base(path)
}

// documents gives the results of every file, analysing the recordings on all
// cores. A file that cannot be used leaves nil and a sentence.
func (w *world) documents(ctx context.Context, paths []string) ([]*results.Document, []string, error) {
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
	var unread []string
	for i, err := range errs {
		if err != nil {
			unread = append(unread, paths[i]+": "+words.ForMachines().Error(err))
		}
	}
	if len(unread) == len(paths) && ctx.Err() == nil {
		return nil, nil, errs[0]
	}
	return docs, unread, ctx.Err()
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
