package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"

	"stillair/app/input"
	"stillair/export/session"
	"stillair/export/words"
	"stillair/runs"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// outcome is the result of exporting one recording.
type outcome struct {
	input exportInput
	text  string // what was written
	bytes int64
	err   error
}

// all exports every input, several at a time, and reports each as it is done.
func (o *order) all(ctx context.Context, w *world, inputs []exportInput, atOnce int) error {
	if err := os.MkdirAll(o.into, 0o755); err != nil {
		return fmt.Errorf("the folder for the exports cannot be created: %w", err)
	}
	for _, in := range inputs {
		if info, err := os.Stat(in.path); err == nil {
			o.originals = append(o.originals, info)
		}
	}
	todo, done := make(chan exportInput), make(chan outcome)
	var workers sync.WaitGroup
	for range min(atOnce, len(inputs)) {
		workers.Go(func() {
			for in := range todo {
				done <- o.one(ctx, in)
			}
		})
	}
	go func() {
		defer close(todo)
		for _, in := range inputs {
			select {
			case todo <- in:
			case <-ctx.Done():
				return
			}
		}
	}()
	go func() {
		workers.Wait()
		close(done)
	}()
	return o.tellAll(ctx, w, len(inputs), done)
}

func (o *order) tellAll(ctx context.Context, w *world, count int, done <-chan outcome) error {
	p := w.progress()
	var written int64
	var failed []error
	n := 0
	for r := range done {
		n++
		written += r.bytes
		p.end()
		if r.err != nil {
			if !errors.Is(r.err, context.Canceled) {
				fmt.Fprintf(w.Err, "desk export: %s\n", words.ForMachines().Error(r.err))
			}
			failed = append(failed, r.err)
		} else if err := w.print(fmt.Sprintf("%s: %s\n", r.input.path, r.text)); err != nil {
			failed = append(failed, err)
		}
		if w.Live { // a log file has a line of each already
			p.at(fmt.Sprintf("exporting, %d of %d", n, count), float64(n)/float64(count))
		}
	}
	p.end()
	if err := ctx.Err(); err != nil {
		return err
	}
	if len(failed) > 0 {
		return exportFailure(failed, count)
	}
	return w.print(fmt.Sprintf("%d exported into %s, %.1f MB\n", count, o.into, float64(written)/1e6))
}

// exportFailure sums up: it is the input's fault only where each failure is.
func exportFailure(failed []error, count int) error {
	sum := finding.New("desk.not_exported", finding.Count("failed", len(failed)), finding.Count("of", count))
	for _, err := range failed {
		var input *sensors.InputError
		if !errors.As(err, &input) {
			return &finding.Error{Finding: sum}
		}
	}
	return &sensors.InputError{What: sum, Remedy: finding.New("desk.listed_above")}
}

// one exports the recording of a file, and any others that came into it.
func (o *order) one(ctx context.Context, in exportInput) outcome {
	r := outcome{input: in}
	ride, err := o.given.open(in.path)
	if err != nil {
		r.err = err
		return r
	}
	var texts []string
	for i, ride := range ride.All() {
		if i > 0 {
			in.name = fmt.Sprintf("%s-recording-%d", r.input.name, i+1)
		}
		bytes, text, err := o.export(ctx, in, ride)
		r.bytes += bytes
		if texts = append(texts, text); err != nil {
			r.err = errors.Join(r.err, err)
		}
	}
	r.text = strings.Join(texts, "; and of another recording in the file ")
	return r
}

// export exports one recording.
func (o *order) export(ctx context.Context, in exportInput, ride *input.Ride) (bytes int64, text string, err error) {
	if err := o.given.apply(&ride.Log.Ride); err != nil {
		return 0, "", err
	}
	for i := range ride.Log.Notes { // its path is private
		ride.Log.Notes[i].File = filepath.Base(ride.Log.Notes[i].File)
	}
	var result *runs.Result
	if o.needsResults() {
		if result, err = runs.Analyse(ctx, ride.Log, runs.Options{RollOns: o.rollOns}); err != nil {
			return 0, "", inFile(err, in.path)
		}
	}
	id, err := session.NewID(o.random)
	if err != nil {
		return 0, "", err
	}
	x := o.give(in.name, ride, result)
	x.id = id
	bytes, err = o.write(x, in.path)
	return bytes, x.counts(), err
}

func (o *order) needsResults() bool {
	for _, f := range o.formats {
		if f.results {
			return true
		}
	}
	return false
}

// inFile names the file in an error that does not.
func inFile(err error, path string) error {
	var input *sensors.InputError
	if errors.As(err, &input) && input.File == "" {
		named := *input
		named.File = path
		return &named
	}
	return fmt.Errorf("%s: %w", path, err)
}

// write writes every format asked for. A format that the ride has nothing for
// is an error, after the others are written.
func (o *order) write(x *exported, from string) (bytes int64, err error) {
	var errs []error
	for _, f := range o.formats {
		if err := o.lacks(f, x, from); err != nil {
			errs = append(errs, err)
			continue
		}
		for _, file := range f.files(x) {
			path := filepath.Join(o.into, file.path)
			if err := o.save(path, from, file); err != nil {
				return bytes, err
			}
			if info, err := os.Stat(path); err == nil {
				bytes += info.Size()
			}
		}
	}
	if len(errs) > 0 {
		return bytes, errs[0]
	}
	return bytes, nil
}

// lacks says why a format would be empty.
func (o *order) lacks(f format, x *exported, from string) error {
	if f.ride && len(x.log.Motion)+len(x.log.Fixes) == 0 && o.choice.EndsCut > 0 {
		return &sensors.InputError{File: from, What: finding.New("desk.nothing_left", finding.Distance("ends", o.choice.EndsCut)),
			Remedy: finding.New("desk.less_ends")}
	}
	for _, fix := range x.log.Fixes {
		if fix.HasPosition() {
			return nil
		}
	}
	if f.places {
		return &sensors.InputError{File: from, What: finding.New("desk.no_places", finding.Text("format", f.name)),
			Remedy: finding.New("desk.other_format")}
	}
	return nil
}

// save writes a file, but never over a recording.
func (o *order) save(path, from string, f file) error {
	there, err := os.Stat(path)
	if err == nil {
		for _, original := range o.originals {
			if os.SameFile(there, original) {
				return &sensors.InputError{File: from, What: finding.New("desk.would_replace", finding.Text("path", path)), Remedy: finding.New("desk.other_folder")}
			}
		}
	}
	return save(path, f.write)
}

// counts says what there is, for a person and for anyone who checks the files.
func (x *exported) counts() string {
	places := 0
	for _, f := range x.log.Fixes {
		if f.HasPosition() {
			places++
		}
	}
	text := fmt.Sprintf("%d motion samples, %d fixes, %d with a place", len(x.log.Motion), len(x.log.Fixes), places)
	if r := x.result; r != nil {
		text += fmt.Sprintf(", %d track entries, %d runs, %d road loads", len(r.Track.T), len(r.Runs), len(r.RoadLoads))
	}
	return text
}
