package plain

import (
	"testing"
	"time"

	"stillair/sensors/internal/decimal"
)

func TestUTCMillis(t *testing.T) {
	for _, c := range []struct {
		text  string
		want  time.Time
		state decimal.Cell
	}{
		{"1533226488299", time.UnixMilli(1533226488299), decimal.Filled},
		{"1533226488299.123456", time.Unix(1533226488, 299123456), decimal.Filled},
		{"1533226488299.5", time.Unix(1533226488, 299500000), decimal.Filled},
		{"1.533226488299e12", time.UnixMilli(1533226488299), decimal.Filled},
		{"", time.Time{}, decimal.Empty},
		{"12345", time.Time{}, decimal.Broken},
		{"1533226488", time.Time{}, decimal.Broken}, // seconds
		{"1e300", time.Time{}, decimal.Broken},
		{"9223372036854775807", time.Time{}, decimal.Broken},
		{"1533226488299.x", time.Time{}, decimal.Broken},
	} {
		if got, state := utcMillis([]byte(c.text)); state != c.state || !got.Equal(c.want) {
			t.Errorf("%q: %v, %v; want %v, %v", c.text, got, state, c.want, c.state)
		}
	}
}
