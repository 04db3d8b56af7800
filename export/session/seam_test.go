package session

import (
	"bytes"
	"context"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"stillair/runs"
	"stillair/sensors"
	"stillair/sensors/sim"
	"stillair/sensors/units"
)

// runsOf lists the runs found in a log, one per line.
func runsOf(t *testing.T, log *sensors.Log) string {
	t.Helper()
	res, err := runs.Analyse(context.Background(), log, runs.Options{Brief: true})
	if err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	for _, r := range res.Runs {
		fmt.Fprintf(&b, "%s %.3f to %.3f s, counted %t\n", r.Kind, r.Start, r.End, r.Accepted())
	}
	return b.String()
}

// TestNoRunCrossesASeam joins two recorded rides in one file in every way: the runs
// found are exactly those of each ride alone, so none begins in one and ends in the
// other. The first ends at speed in the middle of a coast-down and the second begins
// at rest, which could pass for the standstill before a launch.
func TestNoRunCrossesASeam(t *testing.T) {
	var logs [2]*sensors.Log
	for i := range logs {
		sc := sim.DefaultScenario(sim.Naked())
		sc.Plan = append(sim.Launches(1, 100*units.KMH, 300), sim.CoastPairs(1, 90*units.KMH, 40*units.KMH)...)
		ride, err := sim.Run(sc, uint64(90+i))
		if err != nil {
			t.Fatal(err)
		}
		logs[i] = ride.Log
	}
	last := logs[0].Motion[len(logs[0].Motion)-1].T - 25
	for i, m := range logs[0].Motion {
		if m.T > last {
			logs[0].Motion = logs[0].Motion[:i]
			break
		}
	}
	a, b := cutUp(t, writtenAs(t, ID{1}, logs[0])), cutUp(t, writtenAs(t, ID{2}, logs[1]))
	var alone [2]string
	for i, parts := range [][][]byte{a, b} {
		alone[i] = runsOf(t, read(t, bytes.Join(parts, nil)).Log)
		if !strings.Contains(alone[i], "launch") {
			t.Fatalf("no launch in ride %d:\n%s", i+1, alone[i])
		}
	}
	rng := rand.New(rand.NewPCG(17, 2001))
	for name, join := range joinings() {
		all, err := ReadAll(bytes.NewReader(bytes.Join(join(rng, a, b), nil)), name)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		for _, rec := range all {
			i := int(rec.Header.ID[0]) - 1
			if name == "stale behind" && i == 1 {
				continue // only its end is in the file
			}
			if got := runsOf(t, rec.Log); got != alone[i] {
				t.Errorf("%s: ride %d has\n%salone\n%s", name, i+1, got, alone[i])
			}
		}
	}
}
