package main

import (
	"context"
	"errors"
	"fmt"
	"time"
)

// patience is how long a command works in silence.
const patience = time.Second

// clearLine goes back to the beginning of a terminal's line and empties it
// (ECMA-48, EL).
const clearLine = "\r\033[K"

func (w *world) clear() { fmt.Fprint(raw(w.Err), clearLine) }

// progress shows the progress of slow work. What is done within a second says
// nothing.
type progress struct {
	w     *world
	began time.Time
	last  string // of what was drawn
}

func (w *world) progress() *progress { return &progress{w: w, began: w.Now()} }

// at reports the share of the work done, from 0 to 1.
func (p *progress) at(what string, share float64) {
	if p.w.Now().Sub(p.began) < patience {
		return
	}
	line := fmt.Sprintf("%s, %.0f %%", what, 100*share)
	if !p.w.Live {
		line = what // a log file gets each stage once, not each percent
	}
	if line == p.last {
		return
	}
	p.last = line
	if p.w.Live {
		p.w.clear()
		fmt.Fprint(p.w.Err, line)
		return
	}
	fmt.Fprintln(p.w.Err, line)
}

// during runs work of unknown progress, and names it if it takes long. An
// interrupt does not wait for it.
func (w *world) during(ctx context.Context, what string, work func() error) error {
	done := make(chan error, 1)
	go func() { done <- work() }()
	long := w.After(patience)
	for said := false; ; {
		select {
		case err := <-done:
			if said && w.Live {
				w.clear()
			}
			return errors.Join(err, ctx.Err())
		case <-ctx.Done():
			return ctx.Err()
		case <-long:
			said = true
			if fmt.Fprint(w.Err, what+" …"); !w.Live {
				fmt.Fprintln(w.Err)
			}
		}
	}
}

// end removes the line.
func (p *progress) end() {
	if p.last != "" && p.w.Live {
		p.w.clear()
	}
}
