package sourcetest

import (
	"context"
	"errors"
	"testing"
	"time"

	"stillair/sensors"
)

// Option adapts Contract to a source.
type Option func(*config)

type config struct {
	samples  int           // a source is stopped after this number
	patience time.Duration // and after this time
	prompt   time.Duration // time within which Run must return after the end of its context
	silence  time.Duration // how long the sink is watched after the return
}

// Samples stops a source that does not end by itself after n samples; without
// it after 200 000.
func Samples(n int) Option { return func(c *config) { c.samples = n } }

// Patience stops a source that does not end by itself after d; without it
// after 20 s.
func Patience(d time.Duration) Option { return func(c *config) { c.patience = d } }

// Contract runs the suite. Each check opens a new source, since Run may be
// called once; the sources must all deliver the same kind of data.
func Contract(t *testing.T, open func() sensors.Source, options ...Option) {
	t.Helper()
	c := config{samples: 200_000, patience: 20 * time.Second, prompt: 2 * time.Second, silence: 50 * time.Millisecond}
	for _, o := range options {
		o(&c)
	}
	for _, check := range []struct {
		name string
		run  func(config, sensors.Source) []string
	}{
		{"what it delivers", delivery},
		{"context over before the start", overBefore},
		{"cancelled at the first sample", func(c config, s sensors.Source) []string { return cancelAt(c, s, 1) }},
		{"cancelled in the middle", func(c config, s sensors.Source) []string { return cancelAt(c, s, 100) }},
		{"deadline", deadline},
	} {
		t.Run(check.name, func(t *testing.T) {
			for _, problem := range check.run(c, open()) {
				t.Error(problem)
			}
		})
	}
}

// delivery runs a source to its end, or to a limit, and checks everything
// delivered.
func delivery(c config, s sensors.Source) []string {
	ctx, cancel := context.WithTimeout(context.Background(), c.patience)
	defer cancel()
	w := newWatch(func(n int) {
		if n == c.samples {
			cancel()
		}
	})
	err, back := runWithin(ctx, s, w, c.patience+c.prompt)
	if !back {
		return []string{"Run did not return after its context ended"}
	}
	problems := w.after(c.silence)
	if err != nil && !errors.Is(err, ctx.Err()) {
		problems = append(problems, "Run failed: "+err.Error())
	}
	if err == nil && ctx.Err() != nil && w.samples < c.samples {
		problems = append(problems, "Run returned nil although its context ended it")
	}
	return append(append(problems, inspect(w.calls)...), accounted(w.calls)...)
}

func overBefore(c config, s sensors.Source) []string {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	w := newWatch(nil)
	err, back := runWithin(ctx, s, w, c.prompt)
	if !back {
		return []string{"Run did not return although its context was over before the start"}
	}
	problems := w.after(c.silence)
	if !errors.Is(err, context.Canceled) {
		problems = append(problems, "Run returned "+text(err)+" for a cancelled context, want context.Canceled")
	}
	return problems
}

// cancelAt cancels from inside the sink, like a recorder with a full disk. A
// source that had just delivered its last sample may return nil.
func cancelAt(c config, s sensors.Source, sample int) []string {
	ctx, cancel := context.WithTimeout(context.Background(), c.patience)
	defer cancel()
	var at time.Time
	w := newWatch(func(n int) {
		if n == sample {
			at = time.Now()
			cancel()
		}
	})
	err, back := runWithin(ctx, s, w, c.patience+c.prompt)
	if !back {
		return []string{"Run did not return after it was cancelled"}
	}
	problems := w.after(c.silence)
	if w.samples < sample {
		return problems // the source is too short for this check
	}
	if late := time.Since(at) - c.silence; late > c.prompt {
		problems = append(problems, "Run took "+late.String()+" to return after it was cancelled")
	}
	if err != nil && !errors.Is(err, context.Canceled) {
		problems = append(problems, "Run returned "+text(err)+" after it was cancelled, want context.Canceled")
	}
	// A few samples may already be in transit; a source that sends more ignores the
	// context.
	if more := w.samples - sample; more > 64 {
		problems = append(problems, "the sink got more than 64 samples after the cancel")
	} else if err == nil && more > 0 {
		problems = append(problems, "Run went on to its end after it was cancelled and returned nil")
	}
	return problems
}

func deadline(c config, s sensors.Source) []string {
	ctx, cancel := context.WithDeadline(context.Background(), time.Unix(0, 0))
	defer cancel()
	w := newWatch(nil)
	err, back := runWithin(ctx, s, w, c.prompt)
	if !back {
		return []string{"Run did not return although its deadline was past"}
	}
	problems := w.after(c.silence)
	if !errors.Is(err, context.DeadlineExceeded) {
		problems = append(problems, "Run returned "+text(err)+" after its deadline, want context.DeadlineExceeded")
	}
	return problems
}

// runWithin runs a source and returns its error, and whether it returned in
// time; if not, its goroutine is left running.
func runWithin(ctx context.Context, s sensors.Source, sink sensors.Sink, d time.Duration) (error, bool) {
	done := make(chan error, 1)
	go func() { done <- s.Run(ctx, sink) }()
	select {
	case err := <-done:
		return err, true
	case <-time.After(d):
		return nil, false
	}
}

func text(err error) string {
	if err == nil {
		return "nil"
	}
	return err.Error()
}
