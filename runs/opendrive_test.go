package runs

import (
	"context"
	"testing"

	"stillair/fusion/opendrive"
	"stillair/sensors"
)

// TestNoRunOnTheRoad: a real minute of a car in traffic, with any kind of
// motion stamps, contains no launch, pull, coast-down or stop.
func TestNoRunOnTheRoad(t *testing.T) {
	for _, c := range opendrive.Retimings() {
		t.Run(c.Name, func(t *testing.T) {
			d, err := opendrive.Read("../testdata", 1)
			if err != nil {
				t.Fatal(err)
			}
			d.Log.Ride = sensors.UnknownRide()
			c.Spoil(&d.Log)
			result, err := Analyse(context.Background(), &d.Log, Options{})
			if err != nil {
				t.Fatal(err)
			}
			for _, r := range result.Runs {
				if r.Accepted() {
					t.Errorf("%s from %.1f to %.1f s: %v", r.Kind, r.Start, r.End, r.Marks)
				}
			}
		})
	}
}
