package input

import (
	"bytes"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime"
	"sort"
	"strconv"
	"sync"
	"testing"

	"stillair/export/session"
	"stillair/runs"
	"stillair/sensors"
	"stillair/sensors/sim"
	"stillair/sensors/sim/batch"
)

// noisy is an invented ride with pulls in one gear. Its phone picks up the
// engine, wind that is as loud at 25 m/s and louder above, and a tone of the
// tyre, with automatic gain; all of it is redrawn for each seed.
func noisy(seed uint64) (sim.Scenario, int) {
	rng := rand.New(rand.NewPCG(seed, 21))
	bike := sim.Bikes()[rng.IntN(3)]
	gear := 2 + rng.IntN(4)
	sc := sim.DefaultScenario(bike)
	sc.Phone.Shake.RMS = 1 + 5*rng.Float64()
	mic := sim.DefaultMicrophone()
	mic.Latency = 0.12 * rng.Float64()
	mic.Engine.Orders = []sim.Order{{Multiple: 0.5, Weight: 0.4 * rng.Float64()}, {Multiple: 1, Weight: 1},
		{Multiple: 1.5, Weight: 0.4 * rng.Float64()}, {Multiple: 2, Weight: 0.6 + 0.6*rng.Float64()}, {Multiple: 3, Weight: 0.5 * rng.Float64()}}
	mic.Tread.PerMetre = 3 + 22*rng.Float64()
	mic.Tread.Size = 0.025 * rng.Float64()
	mic.GapsPerHour, mic.GapMean = 10, 0.3
	sc.Microphone = mic
	// From a speed so low that no engine pulls at half the engine speed.
	from := 0.15 * bike.Engine.ShiftRPM / bike.Gears[gear-1]
	sc.Plan = append(sim.Launches(1, 0, 200), pulls(4, gear, from)...)
	return sc, gear
}

func pulls(n, gear int, from float64) []sim.Act {
	var plan []sim.Act
	for range n {
		plan = append(plan, sim.Pull{Gear: gear, From: from}, sim.Reach{Speed: 12}, sim.TurnRound{})
	}
	return plan
}

// recorded writes a ride to a session file, as the phone does, and reads it.
func recorded(t *testing.T, folder string, seed uint64, log *sensors.Log) *sensors.Log {
	t.Helper()
	var b bytes.Buffer
	if err := session.Write(session.ToFile(unsynced{&b}), log, session.Header{ID: session.ID{1}, Origin: "simulated"}); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(folder, fmt.Sprintf("ride-%d.jsonl.gz", seed))
	if err := os.WriteFile(path, b.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	ride, err := Open(path)
	if err != nil {
		t.Fatal(err)
	}
	return ride.Log
}

type unsynced struct{ *bytes.Buffer }

func (unsynced) Sync() error { return nil }

// outcome counts the results for the engine speed in all pulls.
type outcome struct {
	mu             sync.Mutex
	pulls, locked  int
	frames, within int // values given, and those within 0.5 %
	from           map[runs.RevsFrom]int
}

// judge compares the result of a pull with the truth.
func (o *outcome) judge(t *testing.T, seed uint64, ratio float64, r runs.Run, truth *sim.Truth) {
	o.mu.Lock()
	defer o.mu.Unlock()
	o.pulls++
	if r.Revs.From == runs.NoRevs {
		return
	}
	o.locked++
	o.from[r.Revs.From]++
	if math.Abs(r.Revs.RPMPerMPS/ratio-1) > 0.02 {
		t.Errorf("seed %d, pull at %.0f s: a wrong lock by %s: %.1f/min for each m/s, want %.0f", seed, r.Start, r.Revs.From, r.Revs.RPMPerMPS, ratio)
	}
	for i, at := range r.Revs.Speed.T {
		o.frames++
		if math.Abs(r.Revs.Speed.RPM[i]/rpmAt(truth, at)-1) < 0.005 {
			o.within++
		}
	}
}

// rpmAt is the true engine speed.
func rpmAt(truth *sim.Truth, t float64) float64 {
	i := sort.Search(len(truth.Moments), func(i int) bool { return truth.Moments[i].T >= t })
	if i == 0 || i == len(truth.Moments) {
		return math.NaN()
	}
	a, b := truth.Moments[i-1], truth.Moments[i]
	return a.RPM + (b.RPM-a.RPM)*(t-a.T)/(b.T-a.T)
}

// hear simulates, records, analyses and judges one seed.
func (o *outcome) hear(t *testing.T, folder string, seed uint64) {
	sc, gear := noisy(seed)
	sc.Entered.NoGears = true
	ride, err := sim.Run(sc, seed)
	if err != nil {
		t.Error(err)
		return
	}
	log := recorded(t, folder, seed, ride.Log)
	log.Ride.LimitRPM = 1.05 * sc.Bike.Engine.ShiftRPM
	res, err := runs.Analyse(t.Context(), log, runs.Options{})
	if err != nil {
		t.Error(err)
		return
	}
	for _, r := range res.Runs {
		if r.Revs != nil {
			o.judge(t, seed, sc.Bike.Gears[gear-1], r, ride.Truth)
		}
	}
}

// TestEngineSpeedFromARecordingWithSound takes 200 pulls without known gears
// through the whole path: sound, recording, reading, analysis. The engine speed
// must be within 0.5 % for 95 % of the values, and no pull may get a wrong ratio.
func TestEngineSpeedFromARecordingWithSound(t *testing.T) {
	rides := uint64(batch.Size(50, 1))
	o := &outcome{from: map[runs.RevsFrom]int{}}
	folder := t.TempDir()
	var group sync.WaitGroup
	seeds := make(chan uint64)
	for range runtime.GOMAXPROCS(0) {
		group.Go(func() {
			for seed := range seeds {
				o.hear(t, folder, seed)
			}
		})
	}
	for seed := range rides {
		seeds <- seed
	}
	close(seeds)
	group.Wait()
	t.Logf("of %d pulls %d locked, by %v; of %d values %d within 0.5 %%", o.pulls, o.locked, o.from, o.frames, o.within)
	if o.pulls < int(rides)*3 || o.locked < o.pulls*8/10 || o.from[runs.FromSound]+o.from[runs.FromBoth] < o.locked/2 {
		t.Errorf("of %d pulls %d locked, by %v", o.pulls, o.locked, o.from)
	}
	if float64(o.within) < 0.95*float64(o.frames) || o.frames < 5*o.locked {
		t.Errorf("of %d values %d within 0.5 %%", o.frames, o.within)
	}
}

// TestSoundTellsTheGear checks that sound finds the right one of the entered gears
// or none, on a phone that senses only vibration from the road.
func TestSoundTellsTheGear(t *testing.T) {
	rides := uint64(12)
	if testing.Short() {
		rides = 1
	}
	right, pulls := 0, 0
	for seed := range rides {
		sc, gear := noisy(seed)
		sc.Phone.Shake.EngineShare = 0
		ride, err := sim.Run(sc, seed)
		if err != nil {
			t.Fatal(err)
		}
		res, err := runs.Analyse(t.Context(), recorded(t, t.TempDir(), seed, ride.Log), runs.Options{})
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range res.Runs {
			if r.Revs == nil {
				continue
			}
			pulls++
			switch {
			case r.Revs.Gear == strconv.Itoa(gear) && r.Revs.From == runs.FromSound:
				right++
			case r.Revs.From != runs.NoRevs:
				t.Errorf("seed %d, pull at %.0f s: gear %q by %q, want %d or none", seed, r.Start, r.Revs.Gear, r.Revs.From, gear)
			}
		}
	}
	t.Logf("of %d pulls %d in the right gear", pulls, right)
	if right < pulls*8/10 || pulls == 0 {
		t.Errorf("of %d pulls %d in the right gear", pulls, right)
	}
}
