// Package pile collects samples whose number is not known beforehand.
package pile

const chunk = 1 << 14 // samples

// Pile grows by pieces, so that what it holds is never copied while it grows
// and a stream without end is noticed before it has taken twice its memory, as
// append would.
type Pile[S any] struct{ chunks [][]S }

// Add puts a sample on the pile.
func (p *Pile[S]) Add(s S) {
	n := len(p.chunks)
	if n == 0 || len(p.chunks[n-1]) == chunk {
		p.chunks = append(p.chunks, make([]S, 0, chunk))
		n++
	}
	p.chunks[n-1] = append(p.chunks[n-1], s)
}

// Len returns how many samples there are.
func (p *Pile[S]) Len() int {
	n := len(p.chunks)
	if n == 0 {
		return 0
	}
	return (n-1)*chunk + len(p.chunks[n-1])
}

// Cut takes off all but the first n samples.
func (p *Pile[S]) Cut(n int) {
	whole := (n + chunk - 1) / chunk
	if whole >= len(p.chunks) && n >= p.Len() {
		return
	}
	clear(p.chunks[whole:])
	p.chunks = p.chunks[:whole]
	if whole > 0 {
		last := &p.chunks[whole-1]
		*last = (*last)[:n-(whole-1)*chunk]
	}
}

// Take returns all samples as one slice and leaves the pile empty.
func (p *Pile[S]) Take() []S {
	if p.Len() == 0 {
		return nil
	}
	all := make([]S, 0, p.Len())
	for i, c := range p.chunks {
		all = append(all, c...)
		p.chunks[i] = nil
	}
	p.chunks = nil
	return all
}
