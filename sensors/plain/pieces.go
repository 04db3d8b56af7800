package plain

import (
	"bytes"
	"io"
	"runtime"
	"sync"
)

// pieceLength is the part of a file that is parsed at a time, bytes.
const pieceLength = 256 << 10

// piece is a part of a file that ends with a line, unless no line ends in it.
type piece[S any] struct {
	raw  []byte
	err  error         // of the file, after raw
	read chan struct{} // closed once the rest is known

	// The samples of the rows, if none of them is unusual.
	plain   bool
	rows    int
	lines   int
	samples []S
}

// pieces reads a file ahead and parses its pieces on all cores, so that only
// unusual ones have to be read row by row. It implements io.Reader for that
// file.
type pieces[S any] struct {
	order   chan *piece[S] // in the order of the file
	free    chan *piece[S]
	now     *piece[S] // current piece; nil: not fetched yet
	at      int       // bytes of it that were read
	stopped chan struct{}
	running sync.WaitGroup
}

// split begins to read in. parse parses a piece and must be safe for concurrent
// calls.
func split[S any](in io.Reader, parse func(*piece[S])) *pieces[S] {
	workers := runtime.GOMAXPROCS(0)
	q := &pieces[S]{order: make(chan *piece[S], 2*workers), free: make(chan *piece[S], 2*workers), stopped: make(chan struct{})}
	for range cap(q.free) {
		q.free <- &piece[S]{}
	}
	work := make(chan *piece[S], cap(q.free))
	q.running.Go(func() {
		defer close(work)
		q.cut(in, work)
	})
	for range workers {
		q.running.Go(func() {
			for p := range work {
				parse(p)
				close(p.read)
			}
		})
	}
	return q
}

// cut reads in to its end.
func (q *pieces[S]) cut(in io.Reader, work chan<- *piece[S]) {
	var begun []byte // beginning of a line whose end has not been read
	for {
		var p *piece[S]
		select {
		case p = <-q.free:
		case <-q.stopped:
			return
		}
		p.fill(begun, in)
		begun = begun[:0]
		if end := bytes.LastIndexByte(p.raw, '\n') + 1; end > 0 && p.err == nil {
			begun = append(begun, p.raw[end:]...)
			p.raw = p.raw[:end]
		}
		p.read, p.plain = make(chan struct{}), false
		q.order <- p // never full: there are no more pieces than it holds
		if p.err != nil {
			close(p.read)
			return
		}
		work <- p
	}
}

// fill reads until the piece is full.
func (p *piece[S]) fill(begun []byte, in io.Reader) {
	if p.raw == nil {
		p.raw = make([]byte, pieceLength)
	}
	p.raw = p.raw[:pieceLength]
	n := copy(p.raw, begun)
	for n < pieceLength && p.err == nil {
		var got int
		got, p.err = in.Read(p.raw[n:])
		n += got
	}
	p.raw = p.raw[:n]
}

// stop ends reading ahead. The file is not read any further.
func (q *pieces[S]) stop() {
	close(q.stopped)
	q.running.Wait()
}

// whole returns the next piece if it is plain and none of it was read; done
// returns it.
func (q *pieces[S]) whole() *piece[S] {
	if q.now == nil {
		q.now, q.at = <-q.order, 0
	}
	<-q.now.read
	if q.at > 0 || !q.now.plain {
		return nil
	}
	return q.now
}

func (q *pieces[S]) done() {
	q.free <- q.now
	q.now = nil
}

// Read continues where the last whole piece or the last Read ended.
func (q *pieces[S]) Read(b []byte) (int, error) {
	for {
		if q.now == nil {
			q.now, q.at = <-q.order, 0
		}
		<-q.now.read
		n := copy(b, q.now.raw[q.at:])
		q.at += n
		err := q.now.err
		switch {
		case q.at < len(q.now.raw):
			return n, nil
		case err == nil:
			q.done()
		}
		if n > 0 || err != nil {
			return n, err
		}
	}
}
