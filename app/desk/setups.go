package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/pflag"

	"stillair/app/input"
	"stillair/app/relabel"
	"stillair/export/session"
	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/plain"
)

func setupsCommand() command {
	return command{
		Name: "setups", Args: "RIDE", Summary: "list a ride's setups; name, split and weigh them",
		Help: `
Without flags it lists the setups, each with its number, and the halts at which
one may have been changed. With flags it changes them and writes a copy beside
the recording (ride-setups.jsonl.gz), or where --out says. The recording itself
stays as it is, and no existing file is replaced.

Times count from the start of the recording: 12:30 is 12 minutes and 30 seconds.
Splits come first; numbers of setups count as they are listed after them. To go
back to an earlier setup, split with its name again.

Examples:
  desk setups ride.jsonl.gz
  desk setups ride.jsonl.gz --split-halt "3=tall screen" --name 1=bare
  desk setups ride.jsonl.gz --split "12:30=panniers" --mass 2=302
  desk setups ride.jsonl.gz --tyres "1=road, 2.5 bar" --notes "2=strap loose"`,
		Flags: func(f *pflag.FlagSet) runner {
			e, out := &setupEdits{}, ""
			f.StringArrayVar(&e.splits, "split", nil, "another setup from then on, as TIME=NAME; repeatable, like all flags except --out")
			f.StringArrayVar(&e.halts, "split-halt", nil, "another setup from a halt on, as HALT=NAME")
			f.StringArrayVar(&e.names, "name", nil, "name of a setup, as SETUP=NAME")
			f.StringArrayVar(&e.masses, "mass", nil, "bike, rider, fuel and luggage with a setup, as SETUP=KG")
			f.StringArrayVar(&e.tyres, "tyres", nil, "tyres and pressures of a setup, as SETUP=TEXT")
			f.StringArrayVar(&e.notes, "notes", nil, "anything else about a setup, as SETUP=TEXT")
			f.StringVar(&out, "out", "", "where to write the copy")
			return func(_ context.Context, w *world, args []string) error { return w.setups(args, e, out) }
		},
	}
}

func (w *world) setups(args []string, e *setupEdits, out string) error {
	if len(args) != 1 {
		return usage("it takes one recording")
	}
	ride, err := input.Open(args[0])
	if err != nil {
		return err
	}
	if len(ride.More) > 0 && !e.none() {
		return &sensors.InputError{File: args[0], What: finding.New("desk.several_recordings"),
			Remedy: finding.New("desk.give_one")}
	}
	t := relabel.TableOf(ride.Log)
	if e.none() {
		if out != "" {
			return usage("--out is for a copy, and nothing was changed")
		}
		return w.print(listSetups(t, args[0]))
	}
	if err := e.apply(t); err != nil {
		return err
	}
	ride.Log.Ride.Setups = t.Setups
	if out == "" {
		out = copyPath(args[0], ride.Kind)
	}
	if err := w.saveCopy(out, ride); err != nil {
		return err
	}
	return w.print(listSetups(t, args[0]) + fmt.Sprintf("\nWritten to %s; the recording itself is unchanged.\n", argument(out)))
}

// copyPath is where a copy goes: next to the recording, under its name.
func copyPath(path string, kind input.Kind) string {
	if strings.EqualFold(filepath.Ext(path), ".csv") { // one file of a plain folder
		path = filepath.Dir(path)
	}
	if abs, err := filepath.Abs(path); err == nil && filepath.Base(path) != filepath.Base(abs) { // "." is not a name
		path = abs
	}
	base, _ := stem(filepath.Base(path))
	end := ".jsonl.gz"
	if kind == input.PlainLog {
		end = ""
		if strings.EqualFold(filepath.Ext(path), ".zip") {
			end = ".zip"
		}
	}
	return filepath.Join(filepath.Dir(path), base+"-setups"+end)
}

// saveCopy writes a recording in its own format: plain logs as they came, all
// else as a session file. What is at the path already stays.
func (w *world) saveCopy(path string, ride *input.Ride) error {
	if _, err := os.Lstat(path); err == nil {
		return usage("%s already exists and is not replaced: give another place with --out", path)
	} else if !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	switch {
	case ride.Kind == input.PlainLog && strings.EqualFold(filepath.Ext(path), ".zip"):
		return save(path, func(out io.Writer) error { return plain.WriteZip(out, ride.Log) })
	case ride.Kind == input.PlainLog:
		return plain.Write(path, ride.Log)
	case ride.Session != nil:
		return save(path, func(out io.Writer) error { return session.WriteRecording(unsynced{out}, ride.Session) })
	}
	id, err := session.NewID(w.Random)
	if err != nil {
		return err
	}
	return saveSession(path, ride.Log, session.Header{ID: id, Device: program})
}

// list says which setups there are, asks what is open, and names the halts.
func listSetups(t *relabel.Table, name string) string {
	p := &page{}
	p.line("%s, %s long", name, clock(t.To-t.From))
	for i, s := range t.Setups {
		p.line("  setup %d, %s to %s: %s", i+1, clock(s.From-t.From), clock(t.End(i)-t.From), oneLine(named(s.Name)))
		p.line("    mass: %s", massWords(t, s))
		for _, x := range []struct{ what, text string }{{"tyres", s.Tyres}, {"notes", s.Notes}} {
			if x.text != "" {
				p.line("    %s: %s", x.what, oneLine(x.text))
			}
		}
	}
	for i, s := range t.Setups {
		if t.Weighs(i) {
			p.line("  Did the weight change at %s, from setup %d to %d? If so: --mass %d=KG", clock(s.From-t.From), i, i+1, i+1)
		}
	}
	if len(t.Halts) > 0 {
		p.title("Halts")
	}
	for i, h := range t.Halts {
		p.line("  halt %d, %s to %s", i+1, clock(h.From-t.From), clock(h.To-t.From))
	}
	return p.String()
}

func massWords(t *relabel.Table, s sensors.Setup) string {
	switch {
	case !math.IsNaN(s.Mass):
		return fmt.Sprintf("%g kg", s.Mass)
	case !math.IsNaN(t.Mass):
		return fmt.Sprintf("not entered, so the ride's %g kg", t.Mass)
	}
	return "not entered"
}

// oneLine keeps a text of several lines from passing for lines of the list.
func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }

// clock writes a time since the start as minutes and seconds, or hours too.
func clock(seconds float64) string {
	s := int(math.Round(max(0, seconds)))
	if s >= 3600 {
		return fmt.Sprintf("%d:%02d:%02d", s/3600, s/60%60, s%60)
	}
	return fmt.Sprintf("%d:%02d", s/60, s%60)
}
