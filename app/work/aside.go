package work

import (
	"context"
	"io"

	"stillair/app/platform"
	"stillair/app/store"
	"stillair/app/wire"
)

// For gives what does work on a device.
func For(d *platform.Device) Doer {
	here := Here{store.NewSessions(d.Files, d.Clock), d.Random}
	if d.Aside == nil {
		return here
	}
	return Aside{d.Aside, here}
}

// Aside does work in the device's second program, and here where there is none or
// it fails.
type Aside struct {
	Second platform.Aside
	Here   Doer
}

// Do implements Doer.
func (a Aside) Do(ctx context.Context, ask *Ask, tell func(share float64)) (*Answer, error) {
	answer, err := a.aside(ctx, ask, tell)
	switch {
	case ctx.Err() != nil:
		return nil, ctx.Err()
	case err != nil:
		return a.Here.Do(ctx, ask, tell)
	case answer.wrong != nil:
		return answer, answer.wrong.error()
	}
	return answer, nil
}

func (a Aside) aside(ctx context.Context, ask *Ask, tell func(share float64)) (*Answer, error) {
	share := 0.0
	came, size, err := a.Second.Do(ctx, func(w io.Writer) error { return wire.Write(resting{w, nil, func() { tell(0) }}, ask) },
		func(now float64) { share = now; tell(share) })
	if err != nil {
		return nil, err
	}
	answer := new(Answer)
	return answer, wire.Read(resting{nil, came, func() { tell(share) }}, size, answer)
}

// resting calls rest between two parts that go over: where one thread does
// everything, tell lets it do something else.
type resting struct {
	w    io.Writer
	r    io.Reader
	rest func()
}

// Write implements io.Writer.
func (r resting) Write(p []byte) (int, error) {
	r.rest()
	return r.w.Write(p)
}

// Read implements io.Reader.
func (r resting) Read(p []byte) (int, error) {
	r.rest()
	return r.r.Read(p)
}

// Answering does in the second program what Aside asks for. What it returns writes
// the answer; an error means that the work is to be done over there.
func Answering(do Doer, asked io.Reader, size int, tell func(share float64)) (func(io.Writer) error, error) {
	var ask Ask
	if err := wire.Read(asked, size, &ask); err != nil {
		return nil, err
	}
	answer, err := do.Do(context.Background(), &ask, tell)
	if err != nil {
		wrong := troubleOf(err)
		if wrong == nil {
			return nil, err
		}
		if answer == nil {
			answer = new(Answer)
		}
		answer.wrong = wrong
	}
	return func(w io.Writer) error { return wire.Write(w, answer) }, nil
}
