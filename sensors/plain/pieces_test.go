package plain

import (
	"errors"
	"fmt"
	"io"
	"math/rand/v2"
	"reflect"
	"strings"
	"sync/atomic"
	"testing"
	"testing/iotest"

	"stillair/sensors"
)

// spoilt writes the rows of some pieces of motion.csv with irregularities.
func spoilt(rng *rand.Rand, rows int) string {
	odd := []string{"\n", "\r\n", "5,x,3,4,5,6,7\n", "5,\"1\",2,3,4,5,6\n", "5,1,\"2\n2\",3,4,5,6\n", "5,1\n", "5,1,2,3,,,\n",
		"5,1,2,3,0.1,,\n", ",,,,,,\n", "5,1,2,3,NaN,NaN,NaN\n", "1,2,3,4,5,6,7," + strings.Repeat("x", 40<<10) + "\n"}
	var b strings.Builder
	b.WriteString("t_s,ax_mps2,ay_mps2,az_mps2,gx_radps,gy_radps,gz_radps\n")
	for i := range rows {
		fmt.Fprintf(&b, "%.2f,%.17g,%.6f,9.81,%.3f,%.17g,0\n", float64(i)/100, rng.NormFloat64(), rng.NormFloat64(), rng.Float64(), rng.Float64())
		if rng.IntN(rows/4) == 0 {
			b.WriteString(odd[rng.IntN(len(odd))])
		}
	}
	return b.String()
}

// TestPieces: reading in pieces gives the same samples and notes as reading row by
// row, wherever irregularities are, and wherever the file is split or breaks off.
func TestPieces(t *testing.T) {
	seeds := 12
	if testing.Short() {
		seeds = 3
	}
	for seed := range uint64(seeds) {
		rng := rand.New(rand.NewPCG(seed, 1))
		text := spoilt(rng, 20_000)
		text = text[:len(text)-rng.IntN(200)]
		broken := errors.New("the disk has a scratch")
		for name, in := range map[string]func() io.Reader{
			"whole":    func() io.Reader { return strings.NewReader(text) },
			"in drops": func() io.Reader { return iotest.HalfReader(strings.NewReader(text)) },
			"with a flaw": func() io.Reader {
				return io.MultiReader(strings.NewReader(text[:len(text)/2]), iotest.ErrReader(broken))
			},
			"end at once": func() io.Reader { return iotest.DataErrReader(strings.NewReader(text)) },
		} {
			f := func() file { return file{name: "motion.csv", size: int64(len(text)), in: in()} }
			want, y, err := readRows(f(), motionColumns, mostMotion, takeMotion)
			got, z, err2 := readPieces(f(), motionColumns, mostMotion, takeMotion)
			if fmt.Sprint(err) != fmt.Sprint(err2) || y.rows != z.rows || y.skipped != z.skipped || !reflect.DeepEqual(y.notes, z.notes) {
				t.Fatalf("seed %d, %s: %v, %d rows, %d skipped, %v; row by row %v, %d, %d, %v", seed, name, err2, z.rows, z.skipped, z.notes, err, y.rows, y.skipped, y.notes)
			}
			if fmt.Sprint(got) != fmt.Sprint(want) || len(want) < 5000 {
				t.Fatalf("seed %d, %s: %d samples, row by row %d, or others", seed, name, len(got), len(want))
			}
		}
	}
}

// TestPiecesAreUsed: regular pieces are not read a second time.
func TestPiecesAreUsed(t *testing.T) {
	text := spoilt(rand.New(rand.NewPCG(1, 1)), 100_000)
	var taken atomic.Int64
	_, y, err := readPieces(file{name: "motion.csv", size: int64(len(text)), in: strings.NewReader(text)}, motionColumns, mostMotion,
		func(r row) (sensors.Motion, bool) {
			taken.Add(1)
			return takeMotion(r)
		})
	if again := int(taken.Load()) - y.rows; err != nil || again > y.rows/4 {
		t.Errorf("%d of %d rows were read a second time, %v", again, y.rows, err)
	}
}
