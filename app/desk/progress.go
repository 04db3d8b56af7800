package main

import (
	"fmt"
	"time"
)

// patience is how long a command works in silence.
const patience = time.Second

// progress tells a person how far something is that takes long. What is done
// within a second says nothing.
type progress struct {
	w     *world
	began time.Time
	last  string // of what was drawn
}

func (w *world) progress() *progress { return &progress{w: w, began: w.Now()} }

// at tells that share of the work is done, from 0 to 1.
func (p *progress) at(what string, share float64) {
	if p.w.Now().Sub(p.began) < patience {
		return
	}
	line := fmt.Sprintf("%s, %.0f %%", what, 100*share)
	if !p.w.Live {
		line = what // a log file wants each stage once, not each percent
	}
	if line == p.last {
		return
	}
	p.last = line
	if p.w.Live {
		fmt.Fprintf(p.w.Err, "\r\033[K%s", line)
		return
	}
	fmt.Fprintln(p.w.Err, line)
}

// end takes the line away again.
func (p *progress) end() {
	if p.last != "" && p.w.Live {
		fmt.Fprint(p.w.Err, "\r\033[K")
	}
}
