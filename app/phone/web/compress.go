package web

import (
	"bytes"
	"compress/gzip"
	"io"

	"github.com/andybalholm/brotli"
)

// Effort is how hard to compress.
type Effort int

// Quick takes a second or two, for a laptop that serves a phone next to it;
// Thorough a minute or two, for a public host.
const (
	Quick Effort = iota
	Thorough
)

// leastSize is the size from which a file is compressed, in bytes.
const leastSize = 1400

// Compress adds a brotli copy (.br, RFC 7932) and a gzip copy (.gz, RFC 1952)
// of each file that compression makes smaller.
func (p Page) Compress(e Effort) error {
	out := Page{}
	for name, data := range p {
		if len(data) < leastSize || !shrinks(name) {
			continue
		}
		for suffix, pack := range map[string]func(io.Writer) (io.WriteCloser, error){
			".br": e.brotli, ".gz": e.gzip,
		} {
			var b bytes.Buffer
			w, err := pack(&b)
			if err != nil {
				return err
			}
			if _, err := w.Write(data); err != nil {
				return err
			}
			if err := w.Close(); err != nil {
				return err
			}
			out[name+suffix] = b.Bytes()
		}
	}
	for name, data := range out {
		p[name] = data
	}
	return nil
}

func (e Effort) brotli(w io.Writer) (io.WriteCloser, error) {
	o := brotli.WriterOptions{Quality: 6, LGWin: 24}
	if e == Thorough {
		o = brotli.WriterOptions{Quality: 11, LGWin: 24}
	}
	return brotli.NewWriterOptions(w, o), nil
}

func (e Effort) gzip(w io.Writer) (io.WriteCloser, error) {
	if e == Thorough {
		return gzip.NewWriterLevel(w, gzip.BestCompression)
	}
	return gzip.NewWriterLevel(w, gzip.BestSpeed)
}
