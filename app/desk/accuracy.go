package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"runtime/debug"
	"strings"

	"github.com/spf13/pflag"

	"stillair/export/accuracy"
)

// accuracyFlags are the flags of accuracy.
type accuracyFlags struct {
	studies         []string
	share           float64
	records, report string
	strict          bool
}

func accuracyCommand() command {
	return command{
		Name: "accuracy", Summary: "measure how accurate Stillair is, on simulated rides",
		Help: `
Simulates tests with known true values many times, with different bikes, winds,
roads, phones and receivers, and compares the results with the true values, with
the theoretical bound and with the limits that the project has set itself. The
report has tables and plots.

  desk accuracy --share 0.02         a first look, a few minutes
  desk accuracy                      the full measurement, several hours
  desk accuracy --study launches     one study only

Stop it at any time with Ctrl-C: every finished ride is kept, one line of JSON
each, and the same command continues where it stopped. Rides measured by another
version of the program are kept but not counted.

Studies:
` + studyLines(),
		Flags: func(f *pflag.FlagSet) runner {
			a := &accuracyFlags{}
			f.StringArrayVar(&a.studies, "study", nil, "which study; may be given more than once (default: all)")
			f.Float64Var(&a.share, "share", 1, "part of the full number of seeds to ride, above 0 and up to 1")
			f.StringVar(&a.records, "records", "out/accuracy.jsonl", "file for the finished rides")
			f.StringVar(&a.report, "report", "out/accuracy.html", "page to write")
			f.BoolVar(&a.strict, "strict", false, "fail when a limit is missed")
			return a.run
		},
	}
}

func studyLines() string {
	var b strings.Builder
	for _, s := range accuracy.Studies() {
		fmt.Fprintf(&b, "  %-18s %s\n", s.Name, s.Title)
	}
	return b.String()
}

func (a *accuracyFlags) run(ctx context.Context, w *world, args []string) error {
	if len(args) != 0 {
		return usage("it takes no arguments, only flags")
	}
	if !(a.share > 0 && a.share <= 1) {
		return usage("--share is %v; it must be above 0 and at most 1", a.share)
	}
	studies, err := accuracy.Pick(accuracy.Studies(), a.studies)
	if err != nil {
		return usage("%w; the studies are\n%s", err, studyLines())
	}
	studies = accuracy.Scale(studies, a.share)
	version := versionOf(debug.ReadBuildInfo())
	all, file, err := openRecords(a.records)
	if err != nil {
		return err
	}
	defer file.Close()
	records := accuracy.Of(all, version)
	stopped := a.measure(ctx, w, file, studies, version, &records)
	if stopped != nil && !errors.Is(stopped, context.Canceled) {
		return stopped
	}
	report := accuracy.NewReport(studies, records, accuracy.Made{Version: version, By: a.commandLine()})
	if err := save(a.report, report.Write); err != nil {
		return err
	}
	if err := w.print(a.summary(report, len(all)-len(accuracy.Of(all, version)))); err != nil {
		return err
	}
	if stopped == nil && a.strict && len(report.Missed()) > 0 {
		return errors.New("limits are missed")
	}
	return stopped
}

// measure simulates the missing rides and adds them to file and records.
func (a *accuracyFlags) measure(ctx context.Context, w *world, file io.Writer, studies []accuracy.Study, version string, records *[]accuracy.Record) error {
	plan := accuracy.NewPlan(studies, *records)
	p := w.progress()
	defer p.end()
	done := plan.Total - plan.Left()
	return plan.Run(ctx, runtime.GOMAXPROCS(0), version, func(r accuracy.Record) error {
		done++
		*records = append(*records, r)
		p.at("riding", float64(done)/float64(plan.Total))
		return accuracy.Save(file, r)
	})
}

// openRecords reads the finished rides and opens their file for more. An
// incomplete last line is removed first.
func openRecords(path string) ([]accuracy.Record, *os.File, error) {
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return nil, nil, err
	}
	if err := replaceable(path); err != nil {
		return nil, nil, err
	}
	f, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE, 0o644)
	if err != nil {
		return nil, nil, err
	}
	records, whole, err := accuracy.Load(f)
	if err == nil {
		err = f.Truncate(whole)
	}
	if err == nil {
		_, err = f.Seek(whole, io.SeekStart)
	}
	if err != nil {
		return nil, nil, errors.Join(fmt.Errorf("%s: %w", path, err), f.Close())
	}
	return records, f, nil
}

// commandLine is the command that repeats the measurement. The share is left
// out, since the report states the number of rides of each case.
func (a *accuracyFlags) commandLine() string {
	line := "desk accuracy"
	for _, s := range a.studies {
		line += " --study " + s
	}
	return line
}

// versionOf names the version of the program: the commit that it was built
// from, where the build noted that.
func versionOf(info *debug.BuildInfo, ok bool) string {
	if !ok {
		return "unknown"
	}
	commit, changed := "", ""
	for _, s := range info.Settings {
		switch {
		case s.Key == "vcs.revision":
			commit = s.Value
		case s.Key == "vcs.modified" && s.Value == "true":
			changed = " with changes"
		}
	}
	if commit == "" {
		return info.Main.Version
	}
	return commit[:min(len(commit), 12)] + changed
}

func (a *accuracyFlags) summary(r *accuracy.Report, foreign int) string {
	p := &page{}
	p.title("%d limits met, %d unclear, %d missed", r.Count(accuracy.Met), r.Count(accuracy.Unclear), r.Count(accuracy.Missed))
	for _, m := range r.Missed() {
		p.wrapped(2, m)
	}
	if foreign > 0 {
		p.line("  %d rides in %s were measured by another version and are not counted.", foreign, a.records)
	}
	p.title("Written")
	p.line("  %s  tables and plots", a.report)
	p.line("  %s  every ride, one line each", a.records)
	return p.String()
}
