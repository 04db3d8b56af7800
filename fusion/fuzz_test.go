package fusion_test

import (
	"encoding/binary"
	"errors"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/fusion"
	"stillair/fusion/live"
	"stillair/sensors"
)

// wildLog makes a log of any bytes: each pair of bytes is a number of some
// size, some of them not finite. Samples are in order of time, as a Log
// promises, but come in any rhythm.
func wildLog(data []byte) *sensors.Log {
	next := func() float64 {
		if len(data) < 2 {
			return 0
		}
		u := binary.LittleEndian.Uint16(data)
		data = data[2:]
		switch u {
		case 0xffff:
			return math.NaN()
		case 0xfffe:
			return math.Inf(1)
		}
		return (float64(u) - 32768) / 1024
	}
	log := &sensors.Log{}
	t := 0.0
	for len(data) >= 2 {
		t += math.Abs(next())/100 + 1e-4
		m := sensors.Motion{T: t, Force: r3.Vec{X: next(), Y: next(), Z: next()}, Turn: r3.Vec{X: next(), Y: next(), Z: next()}}
		for k := range 20 { // repeated readings, so that a short input makes a ride
			m.T = t + float64(k)*0.01
			log.Motion = append(log.Motion, m)
		}
		t = m.T
		log.Fixes = append(log.Fixes, sensors.NewFix(t, math.Abs(next())))
	}
	return log
}

// FuzzSmooth checks that any input gives an input error or a valid track.
func FuzzSmooth(f *testing.F) {
	f.Add([]byte{})
	seed := make([]byte, 4000)
	for i := range seed {
		seed[i] = byte(i*i*7 + i>>3)
	}
	f.Add(seed)
	f.Add(append(seed, 0xff, 0xff, 0xfe, 0xff, 0, 0, 1, 2))
	f.Fuzz(func(t *testing.T, data []byte) {
		log := wildLog(data)
		tr, err := fusion.Smooth(log, fusion.Options{})
		var input *sensors.InputError
		switch {
		case err != nil && !errors.As(err, &input):
			t.Fatalf("not an input error: %v", err)
		case err == nil:
			for i := range tr.T {
				if i > 0 && tr.T[i] <= tr.T[i-1] {
					t.Fatalf("time does not rise at %d", i)
				}
				for _, x := range [...]float64{tr.V[i], tr.A[i], tr.S[i], tr.VSD[i], tr.ASD[i]} {
					if math.IsNaN(x) || math.IsInf(x, 0) {
						t.Fatalf("sample %d is not finite: %v %v %v %v %v", i, tr.V[i], tr.A[i], tr.S[i], tr.VSD[i], tr.ASD[i])
					}
				}
			}
		}
	})
}

// FuzzLive checks that the live filter gives finite figures for any input.
func FuzzLive(f *testing.F) {
	f.Add([]byte{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 0xff, 0xff, 0xfe, 0xff})
	f.Fuzz(func(t *testing.T, data []byte) {
		log := wildLog(data)
		filter := live.New()
		k := 0
		for _, m := range log.Motion {
			filter.Motion(m)
			for k < len(log.Fixes) && log.Fixes[k].T <= m.T {
				filter.Fix(log.Fixes[k])
				k++
			}
			s := filter.State()
			if sum := s.Speed + s.Accel + s.Distance + s.Lag; math.IsNaN(sum) || math.IsInf(sum, 0) || s.Speed < 0 {
				t.Fatalf("at %.3f s: %+v", s.T, s)
			}
		}
	})
}
