package view

import (
	"fmt"

	"stillair/app/trial"
)

// Trial is the screen on which a phone is tested.
type Trial struct {
	Now   string // what to do while the test runs; empty: it does not run
	Lines []SenseLine
}

// Trial makes the screen from the last result, which may be nil, and from what
// the rider has to do now.
func (c Context) Trial(r *trial.Result, phase trial.Phase) Trial {
	v := Trial{Now: map[trial.Phase]string{trial.LieStill: c.Book.Trial.LieStill, trial.SwitchOff: c.Book.Trial.SwitchOff}[phase]}
	if r == nil || v.Now != "" {
		return v
	}
	for _, l := range r.Lines {
		v.Lines = append(v.Lines, c.trialLine(l))
	}
	return v
}

func (c Context) trialLine(l trial.Line) SenseLine {
	t, s := c.Book.Trial, c.Book.Senses
	out := SenseLine{Detail: join(". ", c.measured(l), l.Said)}
	out.Title = map[trial.Topic]string{trial.Storage: s.Storage, trial.Motion: s.Motion, trial.Turn: s.Turn, trial.Fixes: s.Satellites,
		trial.Pressure: c.named(nameBarometer), trial.Clocks: t.Clocks, trial.Axes: t.Axes, trial.Service: t.Service, trial.Dark: t.Dark}[l.Topic]
	switch l.Verdict {
	case trial.Works:
		out.Words, out.Grade = t.Works, Fine
	case trial.Differs:
		out.Words, out.Grade = t.Differs, Doubtful
	case trial.Fails:
		out.Words, out.Grade = t.Fails, Bad
	default:
		out.Words, out.Grade = t.Untried, Absent
	}
	return out
}

// digit is a number of a line, and its decimals.
type digit struct {
	name     string
	decimals int
}

// measured puts the numbers of a line into words.
func (c Context) measured(l trial.Line) string {
	t := c.Book.Trial
	with := func(format string, digits ...digit) string {
		var values []any
		for _, d := range digits {
			x, ok := l.Numbers[d.name]
			if !ok {
				return ""
			}
			values = append(values, c.Number(x, d.decimals))
		}
		return fmt.Sprintf(format, values...)
	}
	switch l.Topic {
	case trial.Storage:
		return join(", ", with(t.Stored, digit{trial.Seconds, 2}), with(t.Free, digit{trial.Megabytes, 0}))
	case trial.Motion, trial.Turn, trial.Fixes:
		return with(t.Rate, digit{trial.Rate, 1}, digit{trial.Longest, 2})
	case trial.Pressure:
		return with(t.Weather, digit{trial.Hectopascal, 0})
	case trial.Clocks:
		return join(", ", with(t.Late, digit{trial.LateSpread, 2}), with(t.Beside, digit{trial.FixBeside, 2}))
	case trial.Axes:
		return with(t.Force, digit{trial.X, 2}, digit{trial.Y, 2}, digit{trial.Z, 2})
	case trial.Service:
		return with(t.Took, digit{trial.Seconds, 1})
	case trial.Dark:
		return join(", ", with(t.Lasted, digit{trial.Seconds, 0}, digit{trial.Longest, 2}), with(t.FixPause, digit{trial.FixLongest, 1}))
	}
	return ""
}
