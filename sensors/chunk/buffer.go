// Package chunk collects samples whose number is not known beforehand.
package chunk

const size = 1 << 14 // samples

// Buffer grows by pieces, so that what it holds is never copied while it grows
// and a stream without end is noticed before it has taken twice its memory, as
// append would.
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

// Len returns how many samples there are.
func (b *Buffer[S]) Len() int {
	n := len(b.chunks)
	if n == 0 {
		return 0
	}
	return (n-1)*size + len(b.chunks[n-1])
}

// Last returns the last sample; nil where there is none.
func (b *Buffer[S]) Last() *S {
	if b.Len() == 0 {
		return nil
	}
	last := b.chunks[len(b.chunks)-1]
	return &last[len(last)-1]
}

// Cut takes off all but the first n samples.
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
