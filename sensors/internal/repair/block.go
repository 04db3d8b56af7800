package repair

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
)

// blockLength in seconds is short compared with a bend or a change of speed and
// long compared with a turn of the engine: the mean over a block keeps the
// motion and removes the vibration.
const blockLength = 0.25

// block is the mean of the motion samples in a quarter of a second.
type block struct {
	t     float64 // middle
	n     float64 // samples
	force r3.Vec
	turn  r3.Vec // NaN if a sample had none
}

func blocks(motion []sensors.Motion) []block {
	var out []block
	for i := 0; i < len(motion); {
		end := motion[i].T + blockLength
		b := block{t: motion[i].T + blockLength/2}
		for ; i < len(motion) && motion[i].T < end; i++ {
			b.n++
			b.force = r3.Add(b.force, motion[i].Force)
			b.turn = r3.Add(b.turn, motion[i].Turn)
		}
		if b.n == 0 { // times too large to resolve a quarter of a second
			return nil
		}
		b.force, b.turn = r3.Scale(1/b.n, b.force), r3.Scale(1/b.n, b.turn)
		out = append(out, b)
	}
	return out
}

// mean returns the mean force and turn rate of the blocks in [from, to), and
// whether there are any that have both.
func mean(bs []block, from, to float64) (force, turn r3.Vec, ok bool) {
	i, _ := slices.BinarySearchFunc(bs, from, func(b block, t float64) int {
		if b.t < t {
			return -1
		}
		return 1
	})
	n := 0.0
	for ; i < len(bs) && bs[i].t < to; i++ {
		n += bs[i].n
		force = r3.Add(force, r3.Scale(bs[i].n, bs[i].force))
		turn = r3.Add(turn, r3.Scale(bs[i].n, bs[i].turn))
	}
	return r3.Scale(1/n, force), r3.Scale(1/n, turn), n > 0
}

// quantile returns the q-quantile of v, NaN for none; it sorts v.
func quantile(v []float64, q float64) float64 {
	v = slices.DeleteFunc(v, math.IsNaN)
	if len(v) == 0 {
		return math.NaN()
	}
	slices.Sort(v)
	return v[int(q*float64(len(v)-1))]
}
