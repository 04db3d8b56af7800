// Package chunk is a chunked buffer for samples of unknown number.
package chunk

const size = 1 << 14 // samples

// Buffer grows by chunks, so that samples are never copied while it grows, and
// memory does not double as with append.
type Buffer[S any] struct{ chunks [][]S }

// Add appends a sample.
func (b *Buffer[S]) Add(s S) {
	n := len(b.chunks)
	if n == 0 || len(b.chunks[n-1]) == size {
		b.chunks = append(b.chunks, make([]S, 0, size))
		n++
	}
	b.chunks[n-1] = append(b.chunks[n-1], s)
}

// Len returns the number of samples.
func (b *Buffer[S]) Len() int {
	n := len(b.chunks)
	if n == 0 {
		return 0
	}
	return (n-1)*size + len(b.chunks[n-1])
}

// Last returns the last sample; nil if there is none.
func (b *Buffer[S]) Last() *S {
	if b.Len() == 0 {
		return nil
	}
	last := b.chunks[len(b.chunks)-1]
	return &last[len(last)-1]
}

// Cut keeps only the first n samples.
func (b *Buffer[S]) Cut(n int) {
	whole := (n + size - 1) / size
	if whole >= len(b.chunks) && n >= b.Len() {
		return
	}
	clear(b.chunks[whole:])
	b.chunks = b.chunks[:whole]
	if whole > 0 {
		last := &b.chunks[whole-1]
		*last = (*last)[:n-(whole-1)*size]
	}
}

// Take returns all samples as one slice and leaves the buffer empty.
func (b *Buffer[S]) Take() []S {
	if b.Len() == 0 {
		return nil
	}
	all := make([]S, 0, b.Len())
	for i, c := range b.chunks {
		all = append(all, c...)
		b.chunks[i] = nil
	}
	b.chunks = nil
	return all
}
