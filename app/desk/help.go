package main

import (
	"fmt"
	"strings"

	"github.com/spf13/pflag"
)

// overview is the help of the program as a whole.
func overview() string {
	var b strings.Builder
	b.WriteString(`Stillair finds out whether a change to a motorcycle helps, and by how much. It
reads what a phone recorded on a ride (satellite speed, accelerometer,
gyroscope) and finds the launches, roll-ons, pulls and coast-downs in it on its
own. It computes times, drag area (CdA), rolling resistance (Crr) and power at
the road, each with its ±.

Usage:  desk COMMAND [flags]

`)
	for _, c := range commands() {
		fmt.Fprintf(&b, "  %-10s %s\n", c.Name, c.Summary)
	}
	b.WriteString(`
Begin with:

  desk demo                    a simulated ride through every step
  desk analyse RECORDING       your own ride
  desk COMMAND --help          what a command does and which flags it has

Exit codes: 0 done; 1 failed; 2 the command line makes no sense; 3 the recording
cannot be used, and the message says how to fix it; 130 stopped by you.

Full throttle and coasting are dangerous in traffic and illegal on many roads.
Local law comes first. Never touch or watch a phone while moving.
`)
	return b.String()
}

// explain is the help of one command.
func (c command) explain(flags *pflag.FlagSet) string {
	var b strings.Builder
	fmt.Fprintf(&b, "desk %s: %s\n\nUsage:  desk %s\n\n", c.Name, c.Summary, strings.TrimSpace(c.Name+" [flags] "+c.Args))
	b.WriteString(strings.TrimSpace(c.Help) + "\n\nFlags:\n")
	const yesNo = "[=true|false]" // says nothing to a newcomer
	b.WriteString(strings.ReplaceAll(flags.FlagUsagesWrapped(80), yesNo, strings.Repeat(" ", len(yesNo))))
	return b.String()
}
