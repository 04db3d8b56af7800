package device

import (
	"math"
	"math/cmplx"
	"testing"
	"time"

	"stillair/sensors"
	"stillair/sensors/sourcetest"
)

// gotest.mjs plays a tone of 200 Hz and one of 2900 Hz, each a quarter of full
// scale, into the microphone.

func TestBrowserHearsTheContract(t *testing.T) {
	d, err := Open()
	if err != nil {
		t.Fatal(err)
	}
	sourcetest.Contract(t, d.Hear, sourcetest.Samples(400), sourcetest.Patience(8*time.Second))
}

// TestBrowserHears checks that the sound arrives complete and with even timing,
// and that nothing above the band aliases into it: 2900 Hz would appear at 500.
func TestBrowserHears(t *testing.T) {
	d, err := Open()
	if err != nil {
		t.Fatal(err)
	}
	if !d.PermitHearing() {
		t.Fatal("the microphone was refused")
	}
	ctx, cancel := contextFor(t, 8*time.Second)
	defer cancel()
	log, _ := sensors.Collect(ctx, d.Hear())
	if len(log.Sound) < 40 || len(log.Motion) < 300 {
		t.Fatalf("%d stretches of sound, %d readings of motion in 8 s; %v", len(log.Sound), len(log.Motion), log.States)
	}
	var at, x []float64
	gaps := 0
	for i, s := range log.Sound[10:] {
		if i > 0 && math.Abs(s.T-log.Sound[9+i].End()) > 0.002 {
			gaps++
		}
		for k, level := range s.Level {
			at, x = append(at, s.T+float64(k)/s.Rate), append(x, float64(level)/sensors.FullScale)
		}
	}
	tone, folded := amplitude(at, x, 200), amplitude(at, x, 500)
	t.Logf("%d stretches at %.1f/s, %d gaps; 200 Hz %.4f, 500 Hz %.6f", len(log.Sound), log.Sound[0].Rate, gaps, tone, folded)
	if tone < 0.15 || tone > 0.3 || folded > tone/300 {
		t.Errorf("200 Hz came out as %.4f, and 2900 Hz as %.6f at 500 Hz", tone, folded)
	}
	if gaps > len(log.Sound)/10 {
		t.Errorf("%d gaps in %d stretches", gaps, len(log.Sound))
	}
}

// amplitude is the mean amplitude of a line over pieces of half a second, in
// which clock drift does not matter.
func amplitude(at, x []float64, hz float64) float64 {
	const piece = 600
	sum, n := 0.0, 0.0
	for i := 0; i+piece <= len(x); i += piece {
		var z complex128
		for k := i; k < i+piece; k++ {
			w := 1 - math.Cos(2*math.Pi*(float64(k-i)+0.5)/piece)
			z += complex(w*x[k], 0) * cmplx.Rect(1, -2*math.Pi*hz*(at[k]-at[i]))
		}
		sum, n = sum+2*cmplx.Abs(z)/piece, n+1
	}
	return sum / n
}
