package session

// pile is a slice that grows without copying: append would leave several times
// its size behind as garbage, which a hostile file makes use of.
type pile[S any] struct {
	full [][]S // each of pileChunk
	open []S
}

const pileChunk = 1 << 14

func (p *pile[S]) len() int { return len(p.full)*pileChunk + len(p.open) }

func (p *pile[S]) add(s S) {
	if len(p.open) == pileChunk {
		p.full = append(p.full, p.open)
		p.open = make([]S, 0, pileChunk)
	}
	p.open = append(p.open, s)
}

// cut takes off all but the first n.
func (p *pile[S]) cut(n int) {
	for n < len(p.full)*pileChunk {
		last := len(p.full) - 1
		p.open, p.full = p.full[last], p.full[:last]
	}
	p.open = p.open[:n-len(p.full)*pileChunk]
}

// all returns everything as one slice, nil where there is nothing.
func (p *pile[S]) all() []S {
	if p.len() == 0 {
		return nil
	}
	out := make([]S, 0, p.len())
	for _, c := range p.full {
		out = append(out, c...)
	}
	return append(out, p.open...)
}
