package sim

// pileBlock is how many elements of a pile lie together.
const pileBlock = 8192

// pile collects a long series without ever moving what it has, which a
// growing slice does again and again.
type pile[T any] struct {
	full [][]T
	last []T
}

func (p *pile[T]) add(x T) {
	if len(p.last) == cap(p.last) {
		if p.last != nil {
			p.full = append(p.full, p.last)
		}
		p.last = make([]T, 0, pileBlock)
	}
	p.last = append(p.last, x)
}

// top returns the last element; nil where there is none.
func (p *pile[T]) top() *T {
	if len(p.last) == 0 {
		return nil
	}
	return &p.last[len(p.last)-1]
}

// all returns the whole series in one slice and empties the pile.
func (p *pile[T]) all() []T {
	out := make([]T, 0, len(p.full)*pileBlock+len(p.last))
	for _, b := range p.full {
		out = append(out, b...)
	}
	out = append(out, p.last...)
	*p = pile[T]{}
	return out
}
