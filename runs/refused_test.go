package runs

import (
	"errors"
	"math"
	"testing"

	"stillair/fusion"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// swung is an invented track of 300 s without repetition of its speeds.
func swung(clock, faster, noise float64) *fusion.Track {
	t := &fusion.Track{}
	for i := range 6000 {
		at := float64(i) / 20
		t.T = append(t.T, clock+at)
		t.V = append(t.V, 15+0.04*at+8*math.Sin(at/11)+faster+noise*math.Sin(13*at))
	}
	return t
}

// TestRefusals checks what Across refuses, and that it compares the rest.
func TestRefusals(t *testing.T) {
	t.Parallel()
	ride := func(bike string, track *fusion.Track) *Result {
		r := invented("bare", 0.55)
		r.Ride.Bike, r.Track = bike, track
		return r
	}
	still := &fusion.Track{T: []float64{0, 100}, V: []float64{0, 0}}
	tests := []struct {
		name string
		a, b *Result
		ask  Asked
		want finding.Code // "": compared
		note bool         // the comparison says that the bikes differ
	}{
		{"two rides", ride("naked", swung(0, 0, 0)), ride("naked", swung(0, 0.3, 0)), Asked{}, "", false},
		{"one file twice", ride("naked", swung(0, 0, 0)), ride("naked", swung(0, 0, 0)), Asked{}, codeSameRecording, false},
		{"its copy on another clock, rounded", ride("naked", swung(0, 0, 0)), ride("", swung(4711, 0, 0.001)), Asked{}, codeSameRecording, false},
		{"its copy of another name, bikes asked for", ride("naked", swung(0, 0, 0)), ride("tourer", swung(0, 0, 0)), Asked{Bikes: true}, codeSameRecording, false},
		{"two bikes", ride("naked", swung(0, 0, 0)), ride("tourer", swung(0, 2, 0)), Asked{}, codeDifferentBikes, false},
		{"two bikes asked for", ride("naked", swung(0, 0, 0)), ride("tourer", swung(0, 2, 0)), Asked{Bikes: true}, "", true},
		{"one bike written twice", ride("Naked ", swung(0, 0, 0)), ride("naked", swung(0, 2, 0)), Asked{}, "", false},
		{"a bike not known", ride("", swung(0, 0, 0)), ride("naked", swung(0, 2, 0)), Asked{Bikes: true}, "", false},
		{"never moved", ride("naked", still), ride("naked", still), Asked{}, "", false},
		{"without a track", ride("naked", nil), ride("naked", nil), Asked{}, "", false},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, err := Across([]Named{{"May", tt.a}, {"June", tt.b}}, tt.ask)
			var input *sensors.InputError
			switch {
			case tt.want != "" && (!errors.As(err, &input) || !input.What.Is(tt.want) || input.Remedy.IsZero()):
				t.Errorf("%v, want %s with a remedy", err, tt.want)
			case tt.want == "" && (err != nil || len(got) != 1):
				t.Errorf("%d comparisons, %v", len(got), err)
			case tt.want == "" && got[0].Notes[0].Is(codeOtherBike) != tt.note:
				t.Errorf("notes %v", got[0].Notes)
			}
		})
	}
}
