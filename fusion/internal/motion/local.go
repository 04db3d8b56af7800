package motion

import (
	"runtime"
	"sync"
)

// blockLength is the number of samples processed at a time: enough that the
// overlap of blocks costs little, few enough to stay in a processor's cache.
const blockLength = 8192

// Blocks calls work for ranges from:to that cover n elements, on all cores. The
// ranges do not depend on the number of cores.
func Blocks(n int, work func(from, to int)) {
	shared(n, func(_ *Paper, from, to int) { work(from, to) })
}

// Local fills dst with a quantity that depends only on the samples within reach
// to either side, such as a running mean. For every block, work receives the
// neighbourhood lo:hi and scratch memory, and returns the values over lo:hi;
// they must be right wherever the neighbourhood reaches far enough or the
// series ends.
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

// Paper is scratch memory for the processing of one block.
type Paper struct {
	sheets [][]float64
	used   int
}

// Sheet returns a slice of n numbers for exclusive use during this block. Its
// contents are arbitrary.
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

// Copy returns a sheet with a copy of f.
func (p *Paper) Copy(f []float64) []float64 {
	out := p.Sheet(len(f))
	copy(out, f)
	return out
}
