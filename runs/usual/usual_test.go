package usual

import (
	"math"
	"testing"
)

// uniformSD is the standard deviation of a uniform distribution.
func uniformSD(low, high float64) float64 { return (high - low) / math.Sqrt(12) }

// rms is the root mean square of values about a mean.
func rms(mean float64, values ...float64) float64 {
	sum := 0.0
	for _, x := range values {
		sum += (x - mean) * (x - mean) / float64(len(values))
	}
	return math.Sqrt(sum)
}

// TestSpreads compares each spread with the sources named in its comment, to half of
// its last digit or a little more.
func TestSpreads(t *testing.T) {
	tests := []struct {
		name      string
		got, want float64
		within    float64
	}{
		{"drag area (Cossalter, Motorcycle Dynamics: 0.18 to 0.7 m²)", CdASD, uniformSD(0.18, 0.7), 0.005},
		{"drag area with luggage (up to 0.9 m²)", LadenCdASD, uniformSD(LeastCdA, MostCdA), 0.01},
		{"rolling resistance (Cossalter; Wong, from memory; textbook formula; 40 CFR 86.529-98, figure F98-9)", CrrSD,
			rms(Crr, 0.02, 0.0136, 0.0169, 0.006, 0.005+0.01/2.5, 0.0058), 0.0005},
		{"slope of a slowing: of the ride's roads and of the place", SlowingGrade, math.Hypot(RideGrade, PlaceGrade), 0.001},
	}
	for _, tt := range tests {
		if math.Abs(tt.got-tt.want) > tt.within {
			t.Errorf("%s: %g, want %.4g", tt.name, tt.got, tt.want)
		}
	}
}

// TestLimitStaysBelowAnEngine: the limit for a single coast-down is narrower than
// the prior for tyres, and its upper end is below coasting with the smallest
// engine drag, which adds 0.04 to the rolling resistance of tyres.
func TestLimitStaysBelowAnEngine(t *testing.T) {
	const improbable, engine = 3.3, 0.04 // as in package detect
	if end := TyresCrr + improbable*math.Hypot(TyresCrrSD, SlowingGrade); end > TyresCrr+engine || TyresCrrSD > CrrSD {
		t.Errorf("the limit reaches %.3f; tyres with an engine begin at %.3f", end, TyresCrr+engine)
	}
}
