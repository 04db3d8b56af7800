package sensors

import (
	"math"
	"math/rand/v2"
	"testing"
)

func steady(from float64, n int) *Log {
	log := &Log{Ride: UnknownRide()}
	for i := range n {
		t := from + float64(i)/50
		log.Motion = append(log.Motion, Motion{T: t})
		if i%50 == 0 {
			log.Fixes = append(log.Fixes, NewFix(t, 20))
		}
	}
	return log
}

// TestStretch checks that the ride is kept and that samples far from it in time are
// left out.
func TestStretch(t *testing.T) {
	day := 86400.0
	for _, tt := range []struct {
		name          string
		wild          []float64 // stamps of single readings outside the ride
		other         float64   // when another ride begins; 0: none
		motion, notes int
	}{
		{name: "nothing wild", motion: 6000},
		{name: "Unix time among seconds", wild: []float64{1.7e9}, motion: 6000, notes: 1},
		{name: "beyond reason", wild: []float64{1e15, 1e300}, motion: 6000, notes: 1},
		{name: "before it", wild: []float64{-1e9}, motion: 6000, notes: 1},
		{name: "thirty days later", other: 30 * day, motion: 6000, notes: 1},
		{name: "after lunch", other: 5400, motion: 9000},
	} {
		log := steady(100, 6000)
		if tt.other > 0 {
			more := steady(tt.other, 3000)
			log.Motion, log.Fixes = append(log.Motion, more.Motion...), append(log.Fixes, more.Fixes...)
		}
		for _, w := range tt.wild {
			if w < 0 {
				log.Motion = append([]Motion{{T: w}}, log.Motion...)
			} else {
				log.Motion = append(log.Motion, Motion{T: w})
			}
		}
		got := Stretch(log)
		if len(got.Motion) != tt.motion || len(got.Notes) != tt.notes {
			t.Errorf("%s: %d readings, notes %v", tt.name, len(got.Motion), got.Notes)
		}
	}
}

// TestStretchBoundsEmptiness draws logs with arbitrary stamps: the result never
// has more empty time than the limit.
func TestStretchBoundsEmptiness(t *testing.T) {
	rng := rand.New(rand.NewPCG(12, 1))
	for range 200 {
		log := &Log{}
		at := 0.0
		for range 50 + rng.IntN(500) {
			at += math.Pow(10, 8*rng.Float64()-3)
			log.Motion = append(log.Motion, Motion{T: at})
		}
		got := Stretch(log)
		empty := 0.0
		for i := 1; i < len(got.Motion); i++ {
			if gap := got.Motion[i].T - got.Motion[i-1].T; gap > emptyFrom {
				empty += gap
			}
		}
		if len(got.Motion) == 0 || empty > mostEmpty {
			t.Fatalf("%d readings kept with %.0f s of nothing", len(got.Motion), empty)
		}
	}
}

// TestAWildStampEndsNothing plays a live recording with one reading stamped an
// hour ahead, one two hours ahead, and a real pause of five minutes.
func TestAWildStampEndsNothing(t *testing.T) {
	all := NewCollector()
	c := NewInOrder(all)
	n := 0
	for i := range 3000 {
		at := float64(i) / 50
		switch i {
		case 1000:
			c.Motion(Motion{T: at + 3600})
			continue
		case 1500:
			c.Motion(Motion{T: at + 7200})
			continue
		}
		if i >= 2000 {
			at += 300
		}
		c.Motion(Motion{T: at})
		n++
	}
	got := all.Log()
	if len(got.Motion) != n || c.Wild != 2 || c.Late != 0 {
		t.Errorf("%d of %d readings passed, %d wild, %d late", len(got.Motion), n, c.Wild, c.Late)
	}
}
