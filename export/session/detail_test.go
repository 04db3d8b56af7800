package session

import (
	"math"
	"testing"

	"github.com/tidwall/gjson"

	"stillair/sensors/finding"
)

// TestDetail writes the detail of a state and reads it back; a sentence without
// a code, as older programs wrote, stays one.
func TestDetail(t *testing.T) {
	for _, c := range []struct {
		name, text string // the text that is written next to the code
		said       finding.Finding
	}{
		{"nothing", "", finding.Finding{}},
		{"an older program's sentence", "no satellites yet", finding.New("session.old_sentence", finding.Text("text", "no satellites yet"))},
		{"a code alone", "no more data from it", finding.New("sensor.nothing_more")},
		{"a number", "the phone's clock was set back by 2.5 s; times continue without the step", finding.New("recorder.clock_step", finding.Time("by", 2.5).With(0.1))},
		{"a text", "Android refused the location: \"no\"", finding.New("android.location_refused", finding.Text("why", `"no"`))},
		{"another finding", "this phone does not have this sensor: barometer", finding.New("sensor.none", finding.Of("what", finding.New("sensor.barometer")))},
	} {
		o := gjson.Parse(`{"type":"state"` + string(appendDetail(nil, c.said)) + "}")
		if got := o.Get("detail").String(); got != c.text {
			t.Errorf("%s: written as %q, want %q", c.name, got, c.text)
		}
		if got := detail(o); got.String() != c.said.String() || got.IsZero() != c.said.IsZero() {
			t.Errorf("%s: read as %v, want %v", c.name, got, c.said)
		}
	}
	odd := finding.New("recorder.clock_step", finding.Time("by", math.NaN()))
	if text := string(appendDetail(nil, odd)); !gjson.Valid(`{"a":1` + text + "}") {
		t.Errorf("an unknown number is written as %s", text)
	}
}
