package motion

import (
	"runtime"
	"sync"
)

// blockLength is how many samples are worked on at a time: enough that what
// blocks share at their edges costs little, few enough to stay in a
// processor's cache.
const blockLength = 8192

// Blocks calls work for stretches from:to that cover n places, on all cores.
// The stretches do not depend on how many there are.
func Blocks(n int, work func(from, to int)) {
	shared(n, func(_ *Paper, from, to int) { work(from, to) })
}

// Local fills dst with what depends on the samples within reach to either side
// alone, such as a running mean. For every block work is given the neighbourhood
// lo:hi to look at, paper to write on, and returns what belongs there, right
// wherever the neighbourhood reaches far enough or the series ends.
func Local(dst []float64, reach int, work func(p *Paper, lo, hi int) []float64) {
	shared(len(dst), func(p *Paper, from, to int) {
		lo, hi := max(from-reach, 0), min(to+reach, len(dst))
		copy(dst[from:to], work(p, lo, hi)[from-lo:])
	})
}

func shared(n int, work func(p *Paper, from, to int)) {
	blocks := (n + blockLength - 1) / blockLength
	workers := min(runtime.GOMAXPROCS(0), blocks)
	var group sync.WaitGroup
	for w := range workers {
		group.Go(func() {
			var p Paper
			for b := w; b < blocks; b += workers {
				p.used = 0
				work(&p, b*blockLength, min((b+1)*blockLength, n))
			}
		})
	}
	group.Wait()
}

// Paper is room for what is needed only while a block is worked on.
type Paper struct {
	sheets [][]float64
	used   int
}

// Sheet gives a slice of n numbers that nobody else uses during this block.
// What stands in it is left over from others.
func (p *Paper) Sheet(n int) []float64 {
	if p.used == len(p.sheets) {
		p.sheets = append(p.sheets, nil)
	}
	s := &p.sheets[p.used]
	p.used++
	if cap(*s) < n {
		*s = make([]float64, n)
	}
	return (*s)[:n]
}

// Copy is a sheet with the same numbers.
func (p *Paper) Copy(f []float64) []float64 {
	out := p.Sheet(len(f))
	copy(out, f)
	return out
}
