//go:build js

package web

import (
	"bufio"
	"context"
	"errors"
	"io"
	"syscall/js"

	"stillair/sensors/finding"
)

// Aside is a second instance of the program, in a worker, for work that takes
// long and much memory: analysing.js starts it from the module that the page
// compiled.
type Aside struct{}

var errNoAside = finding.Fail("browser.script_missing", finding.Text("script", "analysing.js"))

// Do starts a worker for the request that ask writes and returns its answer and the size of
// that in bytes. tell is called meanwhile with the share that is done. The worker ends with
// the context or after its answer, which frees its memory. Do must not be called from
// inside a JavaScript callback.
func (Aside) Do(ctx context.Context, ask func(io.Writer) error, tell func(share float64)) (answer io.Reader, size int, err error) {
	page := js.Global().Get("stillairAnalysing")
	if page.IsUndefined() {
		return nil, 0, errNoAside
	}
	shares, over := make(chan float64, 1), make(chan outcome, 1)
	onShare := js.FuncOf(func(_ js.Value, args []js.Value) any {
		select {
		case shares <- args[0].Float():
		default: // the previous one was not read yet
		}
		return nil
	})
	defer onShare.Release()
	onOver := js.FuncOf(func(_ js.Value, args []js.Value) any {
		over <- outcome{args[0], args[1]}
		return nil
	})
	defer onOver.Release()
	work := page.Call("begin", onShare, onOver)
	if err := toParts(work, ask); err != nil {
		work.Call("stop")
		return nil, 0, err
	}
	work.Call("go")
	for {
		select {
		case <-ctx.Done():
			work.Call("stop")
			return nil, 0, ctx.Err()
		case share := <-shares:
			tell(share)
		case o := <-over:
			if o.answer.IsNull() {
				return nil, 0, errors.New(o.why.String())
			}
			parts, size := partsOf(o.answer)
			return parts, size, nil
		}
	}
}

// outcome is the answer of a worker, or null, and the reason.
type outcome struct{ answer, why js.Value }

// Asked reports whether this program was started in a worker, to answer there.
func Asked() bool { return !js.Global().Get("stillairWork").IsUndefined() }

// Answer handles the request of the page in the worker. The function that do returns
// writes the answer.
func Answer(do func(asked io.Reader, size int, tell func(share float64)) (func(io.Writer) error, error)) {
	work := js.Global().Get("stillairWork")
	asked, size := partsOf(work.Get("parts"))
	write, err := do(asked, size, func(share float64) { work.Call("tell", share) })
	if err == nil {
		err = toParts(work, write)
	}
	if err != nil {
		work.Call("fail", err.Error())
		return
	}
	work.Call("done")
}

// piece is the number of bytes passed to JavaScript at a time.
const piece = 1 << 18

// adder passes what is written to JavaScript, part by part.
type adder struct{ work js.Value }

// Write implements io.Writer.
func (a adder) Write(p []byte) (int, error) {
	a.work.Call("add", toJS(p))
	return len(p), nil
}

func toParts(work js.Value, write func(io.Writer) error) error {
	b := bufio.NewWriterSize(adder{work}, piece)
	if err := write(b); err != nil {
		return err
	}
	return b.Flush()
}

// fromParts reads a list of byte arrays and releases each after reading.
type fromParts struct {
	list js.Value
	held []byte
}

func partsOf(list js.Value) (parts io.Reader, size int) {
	for i := range list.Length() {
		size += list.Index(i).Length()
	}
	return &fromParts{list: list}, size
}

// Read implements io.Reader.
func (f *fromParts) Read(p []byte) (int, error) {
	for len(f.held) == 0 {
		next := f.list.Call("shift")
		if next.IsUndefined() {
			return 0, io.EOF
		}
		f.held = bytesOf(next)
	}
	n := copy(p, f.held)
	f.held = f.held[n:]
	return n, nil
}
