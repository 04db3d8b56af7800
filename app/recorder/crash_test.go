//go:build unix

package recorder_test

import (
	"context"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"sync"
	"testing"
	"time"

	"stillair/app/platform"
	"stillair/app/recorder"
	"stillair/app/store"
	"stillair/export/session"
	"stillair/sensors"
	"stillair/sensors/replay"
	"stillair/sensors/sim"
)

// The environment of a recording process.
const (
	recordInto = "STILLAIR_TEST_RECORD_INTO" // a folder; set only in the processes that are to be killed
	recordFrom = "STILLAIR_TEST_RECORD_FROM" // a session file with the ride
)

func TestMain(m *testing.M) {
	if dir := os.Getenv(recordInto); dir != "" {
		if err := recordUntilKilled(dir, os.Getenv(recordFrom)); err != nil {
			os.Stderr.WriteString(err.Error())
			os.Exit(1)
		}
		os.Exit(0)
	}
	os.Exit(m.Run())
}

// recordUntilKilled records the ride in real time, as the phone app does, and
// reports every sample on standard output before the recorder gets it.
func recordUntilKilled(dir, from string) error {
	f, err := os.Open(from)
	if err != nil {
		return err
	}
	ride, err := session.Read(f, from)
	if err != nil {
		return err
	}
	files, err := platform.NewDir(dir)
	if err != nil {
		return err
	}
	clock := platform.NewSystemClock()
	live, err := replay.At(ride.Log, 1, replay.Wall{})
	if err != nil {
		return err
	}
	w := &witness{}
	go w.beat()
	rec, err := recorder.Start(context.Background(), recorder.Config{Sessions: store.NewSessions(files, clock), Clock: clock,
		Source: witnessed{live, w}, Filter: &fixFilter{}, Ride: ride.Log.Ride, Header: session.Header{ID: session.ID{1}, Device: "test"}})
	if err != nil {
		return err
	}
	<-rec.Done()
	return errors.New("the ride ended before the kill")
}

// A word of a witness is nine bytes and eight: kind and time on the log's
// clock, and the time of the report on the machine's.
const wordSize = 17

const (
	saidMotion = 'm'
	saidFix    = 'f'
	saidAlive  = 'a' // every beatEvery
)

const beatEvery = 40 * time.Millisecond

type witness struct{ mu sync.Mutex }

func (w *witness) say(what byte, t float64) {
	var b [wordSize]byte
	b[0] = what
	binary.LittleEndian.PutUint64(b[1:], math.Float64bits(t))
	binary.LittleEndian.PutUint64(b[9:], uint64(time.Now().UnixNano()))
	w.mu.Lock()
	defer w.mu.Unlock()
	_, _ = os.Stdout.Write(b[:]) // the reader notices what is missing
}

func (w *witness) beat() {
	for {
		w.say(saidAlive, 0)
		time.Sleep(beatEvery)
	}
}

// witnessed is a source whose samples are announced before they are delivered.
type witnessed struct {
	sensors.Source
	w *witness
}

func (s witnessed) Run(ctx context.Context, to sensors.Sink) error {
	return s.Source.Run(ctx, witnessedSink{to, s.w})
}

type witnessedSink struct {
	sensors.Sink
	w *witness
}

func (s witnessedSink) Motion(m sensors.Motion) { s.w.say(saidMotion, m.T); s.Sink.Motion(m) }
func (s witnessedSink) Fix(f sensors.Fix)       { s.w.say(saidFix, f.T); s.Sink.Fix(f) }

// word is a report of a witness.
type word struct {
	what byte
	t    float64
	at   time.Time
}

func words(b []byte) (all []word) {
	for ; len(b) >= wordSize; b = b[wordSize:] {
		all = append(all, word{b[0], math.Float64frombits(binary.LittleEndian.Uint64(b[1:])),
			time.Unix(0, int64(binary.LittleEndian.Uint64(b[9:])))})
	}
	return all
}

// rideForKills writes a launch, the liveliest part of a ride, and returns its path.
func rideForKills(t *testing.T) string {
	t.Helper()
	sc := sim.DefaultScenario(sim.Naked())
	sc.Plan = sim.Launches(1, 30, 0)
	ride, err := sim.Run(sc, 1)
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "ride.jsonl.gz")
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(session.Write(session.ToFile(f), ride.Log, session.Header{ID: session.ID{1}}), f.Close()); err != nil {
		t.Fatal(err)
	}
	return path
}

// killed is the outcome of one kill.
type killed struct {
	given   int           // samples that the recorder was given
	read    int           // and those that came back
	oldest  time.Duration // age, at the kill, of the oldest that did not
	starved bool          // the process got no processor time before the kill
	file    bool          // there was a session to read
}

// killOne starts a recording, kills it after a while, and reads what is there
// as the app does at its next start.
func killOne(from, dir string, after time.Duration) (killed, error) {
	child := exec.Command(os.Args[0])
	child.Env = append(os.Environ(), recordInto+"="+dir, recordFrom+"="+from)
	out, err := child.StdoutPipe()
	if err != nil {
		return killed{}, err
	}
	if err := child.Start(); err != nil {
		return killed{}, err
	}
	time.Sleep(after)
	at := time.Now()
	if err := child.Process.Kill(); err != nil { // SIGKILL
		return killed{}, err
	}
	said, err := io.ReadAll(out)
	if err != nil {
		return killed{}, err
	}
	_ = child.Wait() // its error is the kill
	return whatIsLeft(dir, words(said), at)
}

func whatIsLeft(dir string, said []word, at time.Time) (k killed, err error) {
	files, err := platform.NewDir(dir)
	if err != nil {
		return k, err
	}
	sessions := store.NewSessions(files, platform.NewSystemClock())
	if _, err := sessions.Recover(); err != nil {
		return k, err
	}
	list, problems := sessions.List()
	if len(problems) > 0 {
		return k, problems[0]
	}
	there := map[int64]bool{}
	for _, s := range list {
		k.file = true
		rec, err := sessions.Read(s.ID)
		if err != nil {
			return k, err
		}
		if s.About.Stage != store.CutOff {
			return k, errors.New("the session is not marked as cut off but as " + string(s.About.Stage))
		}
		for _, m := range rec.Log.Motion {
			there[key(saidMotion, m.T)] = true
		}
		for _, f := range rec.Log.Fixes {
			there[key(saidFix, f.T)] = true
		}
	}
	k.read = len(there)
	lastBeat := at.Add(-time.Hour)
	for _, w := range said {
		switch {
		case w.what == saidAlive:
			if w.at.Sub(lastBeat) > starvedFor && at.Sub(w.at) < 2*time.Second && !lastBeat.Equal(at.Add(-time.Hour)) {
				k.starved = true
			}
			lastBeat = w.at
			continue
		case !there[key(w.what, w.t)]:
			k.oldest = max(k.oldest, at.Sub(w.at))
		}
		k.given++
	}
	k.starved = k.starved || len(said) > 0 && at.Sub(lastBeat) > starvedFor
	return k, nil
}

// key is one sample at the resolution of the session file.
func key(what byte, t float64) int64 { return int64(math.Round(t*1e6))<<8 | int64(what) }

// starvedFor is how late a process that sleeps for beatEvery may wake before
// the machine, not the recorder, is to blame.
const starvedFor = 200 * time.Millisecond

// TestKilledAtAnyInstant kills recording processes at random instants, from
// before their first file on. Every sample older than a second must be there
// afterwards, and every file must be readable. If the process had got no
// processor time for a while before the kill, the file must be readable but the
// second is not checked, and the kill is repeated.
func TestKilledAtAnyInstant(t *testing.T) {
	t.Parallel()
	kills, atOnce := 1000, 24
	if testing.Short() {
		kills, atOnce = 30, 10
	}
	from, base := rideForKills(t), t.TempDir()
	todo, done, enough := make(chan time.Duration), make(chan killed), make(chan struct{})
	go func() {
		defer close(todo)
		rng := rand.New(rand.NewPCG(6, 1000))
		for {
			select {
			case todo <- time.Duration(rng.Float64() * 2.4 * float64(time.Second)):
			case <-enough:
				return
			}
		}
	}()
	var workers sync.WaitGroup
	for n := range atOnce {
		workers.Go(func() {
			i := 0
			for after := range todo {
				k, err := killOne(from, filepath.Join(base, fmt.Sprintf("%d-%d", n, i)), after)
				if err != nil {
					t.Errorf("killed after %v: %v", after, err)
				}
				done <- k
				i++
			}
		})
	}
	go func() {
		workers.Wait()
		close(done)
	}()
	countKills(t, kills, done)
	close(enough)
	for range done { // those still running
	}
}

func countKills(t *testing.T, kills int, done <-chan killed) {
	t.Helper()
	var ages []time.Duration
	starved, without, given, read := 0, 0, 0, 0
	for len(ages) < kills {
		k := <-done
		given, read = given+k.given, read+k.read
		if k.starved {
			if starved++; starved > 2*kills {
				t.Errorf("%d kills of processes that had no time for %v: this machine is too busy to measure a second", starved, starvedFor)
				return
			}
			continue
		}
		if !k.file {
			without++
		}
		ages = append(ages, k.oldest)
	}
	slices.Sort(ages)
	t.Logf("%d kills, %d of them before there was a file; %d samples given, %d read back; oldest sample lost: median %v, 99 %% %v, worst %v; %d more kills left out because the machine was busy",
		len(ages), without, given, read, ages[kills/2], ages[kills*99/100], ages[kills-1], starved)
	if worst := ages[kills-1]; worst > time.Second {
		t.Errorf("a sample was lost that was %v old, want at most 1 s", worst)
	}
	if read == 0 {
		t.Error("no sample was read back at all: this test looks at nothing")
	}
}
