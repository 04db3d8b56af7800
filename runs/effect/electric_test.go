package effect

import (
	"math"
	"testing"

	"stillair/runs/measure"
)

// TestElectric compares with a calculation by hand: 0.5·1.2·0.5·900 +
// 250·9.81·0.02 = 319 N at 30 m/s, with a drive efficiency of 0.8 399 J/m, that
// is 110.8 Wh/km and 90 km from 10 kWh.
func TestElectric(t *testing.T) {
	l := Load{CdA: measure.Value{X: 0.5, SE: 0.02}, Crr: measure.Value{X: 0.02}, Mass: 250, Density: 1.2, Gravity: 9.81}
	e := l.Electric(30, measure.Value{X: 0.8, SE: 0.04})
	if math.Abs(e.X-398.8) > 0.1 || math.Abs(e.SE/e.X-math.Hypot(0.02*540/319.05, 0.05)) > 1e-4 {
		t.Errorf("%+v", e)
	}
	if r := Range(10e3*3600, e); math.Abs(r.X/1e3-90.3) > 0.1 {
		t.Errorf("range %+v", r)
	}
}
