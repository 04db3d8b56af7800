package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"strings"
	"time"

	"github.com/spf13/pflag"

	"stillair/export/words"
	"stillair/sensors"
)

// world is the environment of a command.
type world struct {
	Out, Err io.Writer
	Now      func() time.Time
	After    func(time.Duration) <-chan time.Time
	Random   io.Reader
	Live     bool // Err is watched by a person
}

// command is one verb. Each has a file of its own; to add one, write its file
// and name it in commands.
type command struct {
	Name    string
	Args    string // what follows the name, for the help
	Summary string // one line
	Help    string // what a newcomer should know
	Flags   func(*pflag.FlagSet) runner
}

// runner does the command's work with the arguments that are not flags.
type runner func(ctx context.Context, w *world, args []string) error

// commands are all verbs, in the order of the help.
func commands() []command {
	return []command{demoCommand(), analyseCommand(), compareCommand(), seasonCommand(), setupsCommand(), planCommand(), exportCommand(), simulateCommand(), accuracyCommand(), phoneCommand(), androidCommand()}
}

// The exit codes.
const (
	exitDone        = 0
	exitFailed      = 1   // something went wrong that is not the input's fault
	exitUsage       = 2   // the command line makes no sense
	exitInput       = 3   // the recording cannot be used; the message says how to fix it
	exitInterrupted = 130 // stopped by the user
)

// usageError is a command line that makes no sense.
type usageError struct{ error }

func usage(format string, args ...any) error { return usageError{fmt.Errorf(format, args...)} }

// run runs the command line and returns the exit code.
func run(ctx context.Context, w *world, args []string) int {
	safe := *w
	safe.Out, safe.Err = escaped{w.Out}, escaped{w.Err}
	return safe.run(ctx, args)
}

func (w *world) run(ctx context.Context, args []string) int {
	if len(args) == 0 || args[0] == "help" && len(args) == 1 || args[0] == "--help" || args[0] == "-h" {
		fmt.Fprint(w.Out, overview())
		return exitDone
	}
	if args[0] == "help" {
		args = []string{args[1], "--help"}
	}
	for _, c := range commands() {
		if c.Name == args[0] {
			return c.start(ctx, w, args[1:])
		}
	}
	fmt.Fprintf(w.Err, "desk: there is no command %q; the commands are %s. See desk --help.\n", args[0], names())
	return exitUsage
}

func (c command) start(ctx context.Context, w *world, args []string) int {
	flags := pflag.NewFlagSet(c.Name, pflag.ContinueOnError)
	flags.SortFlags = false
	flags.SetOutput(io.Discard)
	flags.Usage = func() {}
	help := flags.BoolP("help", "h", false, "explain the command")
	work := c.Flags(flags)
	err := flags.Parse(args)
	if *help || errors.Is(err, pflag.ErrHelp) {
		fmt.Fprint(w.Out, c.explain(flags))
		return exitDone
	}
	if err != nil {
		err = usage("%w", err)
	} else {
		err = work(ctx, w, flags.Args())
	}
	return w.tell(c.Name, err)
}

// tell prints the error, if any, and returns the exit code.
func (w *world) tell(name string, err error) int {
	var input *sensors.InputError
	var use usageError
	say := words.ForMachines().Error
	switch {
	case err == nil:
		return exitDone
	case errors.Is(err, context.Canceled):
		fmt.Fprintln(w.Err, "desk: stopped.")
		return exitInterrupted
	case errors.As(err, &use):
		fmt.Fprintf(w.Err, "desk %s: %v. See desk %s --help.\n", name, say(use.error), name)
		return exitUsage
	case errors.As(err, &input):
		fmt.Fprintf(w.Err, "desk %s: %v\n", name, say(err))
		return exitInput
	case errors.Is(err, fs.ErrPermission):
		fmt.Fprintf(w.Err, "desk %s: %v; choose a folder you can write to, with --out or --report\n", name, say(err))
		return exitFailed
	}
	fmt.Fprintf(w.Err, "desk %s: %v\n", name, say(err))
	return exitFailed
}

func names() string {
	var all []string
	for _, c := range commands() {
		all = append(all, c.Name)
	}
	return strings.Join(all, ", ")
}
