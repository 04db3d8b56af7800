package runs

import (
	"math"
	"testing"

	"stillair/runs/pairing"
	"stillair/sensors"
)

// TestCrossWind: two coast-downs on a road that runs north and south, in the
// wind of a station. The wind at the road is half of that of a station at 10 m.
func TestCrossWind(t *testing.T) {
	north := pairing.Coast{Fixes: []sensors.Fix{{T: 0, LatDeg: 50, LonDeg: 8}, {T: 10, LatDeg: 50.003, LonDeg: 8}}}
	south := pairing.Coast{Fixes: []sensors.Fix{{T: 0, LatDeg: 50.003, LonDeg: 8}, {T: 10, LatDeg: 50, LonDeg: 8}}}
	nan := math.NaN()
	for _, c := range []struct {
		name    string
		station sensors.Wind
		want    float64
		strong  bool
	}{
		{"from the east", sensors.Wind{Speed: 3, FromDeg: 90}, 1.5, false},
		{"from the north, along the road", sensors.Wind{Speed: 3, FromDeg: 0}, 0, false},
		{"strong from the west", sensors.Wind{Speed: 8, FromDeg: 270}, 4, true},
		{"none entered", sensors.Wind{Speed: nan, FromDeg: nan}, nan, false},
	} {
		got := crossWind(c.station, []pairing.Coast{north, south})
		if math.IsNaN(c.want) != math.IsNaN(got.X) || math.Abs(got.X-c.want) > 0.01 {
			t.Errorf("%s: %.2f ± %.2f m/s, want %.2f", c.name, got.X, got.SE, c.want)
		}
		if !math.IsNaN(got.X) && (crossNote(got).Code == codeCrossWindStrong) != c.strong {
			t.Errorf("%s: said %s", c.name, crossNote(got).Code)
		}
	}
}
