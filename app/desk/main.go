// Command desk is Stillair on a computer: it analyses recordings, simulates
// rides and writes reports. It is pure Go and needs nothing but Go to build.
package main

import (
	"context"
	"crypto/rand"
	"os"
	"os/signal"
	"time"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	w := &world{Out: os.Stdout, Err: os.Stderr, Now: time.Now, After: time.After, Random: rand.Reader, Live: isTerminal(os.Stderr)}
	code := run(ctx, w, os.Args[1:])
	stop()
	os.Exit(code)
}

// isTerminal reports whether a person watches f, so that progress may be drawn
// over itself.
func isTerminal(f *os.File) bool {
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}
