package input

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"runtime"
	"runtime/debug"
	"runtime/metrics"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"stillair/export/report"
	"stillair/export/results"
	"stillair/fusion/opendrive"
	"stillair/runs"
	"stillair/sensors"
	"stillair/sensors/sim"
	"stillair/sensors/units"
)

var (
	mutatedLogs = flag.Int("mutated", 16, "how many mutated logs to analyse")
	mutatedFrom = flag.Int("mutated-from", 0, "the first of them")
)

// The limits for one log.
const (
	mutatedTime   = 10 * time.Second // of a processor
	mutatedMemory = 500              // MB
)

// TestMutatedLogs changes rides in the ways of mutations, one to three at once,
// passes them in through every reader, a live source and memory, and analyses them:
// no panic, no long run time or large memory, no NaN in a figure, no negative
// standard error. All in one process:
//
//	go test ./app/input -run TestMutatedLogs -mutated 3000 -timeout 4h
func TestMutatedLogs(t *testing.T) {
	count := *mutatedLogs
	if testing.Short() {
		count = min(count, 6)
	}
	bases := mutatedRides(t)
	path := filepath.Join(t.TempDir(), "log")
	refused, analysed, found := 0, 0, 0
	var slowest time.Duration
	var largest float64
	for i := *mutatedFrom; i < *mutatedFrom+count; i++ {
		what, door, log := mutated(bases, i)
		took, held, err := judged(t, what, func() error {
			rides, err := door.open(path, log)
			for _, r := range rides {
				var result *runs.Result
				if result, err = runs.Analyse(context.Background(), r, runs.Options{}); err != nil {
					continue
				}
				analysed++
				found += len(result.Runs)
				mustBeFigures(t, what, result)
			}
			return err
		})
		if err != nil {
			refused++
			var input *sensors.InputError
			if !errors.As(err, &input) || input.What.IsZero() || input.Remedy.IsZero() {
				t.Errorf("%s: the error %v tells nobody what to do", what, err)
			}
		}
		if took > mutatedTime || held > mutatedMemory {
			t.Errorf("%s: %v, %.0f MB", what, took, held)
		}
		slowest, largest = max(slowest, took), max(largest, held)
	}
	t.Logf("%d logs, %d refused, %d rides analysed, %d runs; %v and %.0f MB at most", count, refused, analysed, found, slowest.Round(time.Millisecond), largest)
	if 4*refused > 3*count || found == 0 {
		t.Error("too few of the logs are analysed for this test to say anything")
	}
}

// mutatedRides are what is mutated: invented rides of ordinary phones, and a real
// minute of a car.
func mutatedRides(t *testing.T) (all []*sensors.Log) {
	t.Helper()
	for i, plan := range [][]sim.Act{
		append(sim.Launches(2, 100*units.KMH, 0), sim.Stand{Seconds: 4}),
		sim.CoastPairs(1, 100*units.KMH, 40*units.KMH),
		append([]sim.Act{sim.Stand{Seconds: 3}}, sim.RollOns(1, 4, 60*units.KMH, 110*units.KMH)...),
	} {
		sc := sim.DefaultScenario(sim.Bikes()[i])
		sc.Plan = plan
		if i == 1 {
			sc.Phone = sim.BrowserPhone()
		}
		ride, err := sim.Run(sc, uint64(40+i))
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, ride.Log)
	}
	d, err := opendrive.Read("../../testdata", 1)
	if err != nil {
		t.Fatal(err)
	}
	d.Log.Ride = sensors.UnknownRide()
	return append(all, &d.Log)
}

// mutated is log i, and its mutations.
func mutated(bases []*sensors.Log, i int) (what string, d door, log *sensors.Log) {
	rng := rand.New(rand.NewPCG(uint64(i), 3000))
	base := bases[i%len(bases)]
	log = &sensors.Log{Motion: slices.Clone(base.Motion), Fixes: slices.Clone(base.Fixes), Pressure: slices.Clone(base.Pressure), Ride: base.Ride}
	m := &mutator{rng: rng, log: log, other: bases[rng.IntN(len(bases))]}
	d = doors()[i/len(bases)%len(doors())]
	what = fmt.Sprintf("log %d, by %s", i, d.name)
	all := mutations()
	for range 1 + rng.IntN(3) {
		x := all[rng.IntN(len(all))]
		what += ", " + x.name
		x.do(m)
	}
	return what, d, log
}

// door is a way to pass a log to the program.
type door struct {
	name string
	open func(path string, log *sensors.Log) ([]*sensors.Log, error)
}

func doors() (all []door) {
	write := writers()
	write["table with motion.csv"] = wideTable
	for name, write := range write {
		all = append(all, door{name, func(path string, log *sensors.Log) ([]*sensors.Log, error) {
			path = filepath.Join(filepath.Dir(path), name)
			if err := os.WriteFile(path, write(log, 1), 0o600); err != nil {
				return nil, err
			}
			ride, err := Open(path)
			if err != nil {
				return nil, err
			}
			var logs []*sensors.Log
			for _, r := range ride.All() {
				logs = append(logs, r.Log)
			}
			return logs, nil
		}})
	}
	slices.SortFunc(all, func(a, b door) int { return strings.Compare(a.name, b.name) })
	return append(all, door{"a live source", live}, door{"memory", func(_ string, log *sensors.Log) ([]*sensors.Log, error) {
		return []*sensors.Log{log}, nil
	}})
}

// live delivers the samples as a phone does, behind the guard of live sources.
func live(_ string, log *sensors.Log) ([]*sensors.Log, error) {
	all := sensors.NewCollector()
	o := sensors.NewInOrder(all)
	k, l := 0, 0
	for i, m := range log.Motion {
		for ; k < len(log.Fixes) && k*len(log.Motion) <= i*len(log.Fixes); k++ {
			o.Fix(log.Fixes[k])
		}
		for ; l < len(log.Pressure) && l*len(log.Motion) <= i*len(log.Pressure); l++ {
			o.Pressure(log.Pressure[l])
		}
		o.Motion(m)
	}
	for ; k < len(log.Fixes); k++ {
		o.Fix(log.Fixes[k])
	}
	o.TellLost(0)
	all.Log().Ride = log.Ride
	return []*sensors.Log{all.Log()}, nil
}

// wideTable is a logger's table with a row for each reading, in which the newest
// fix is repeated.
func wideTable(log *sensors.Log, _ float64) []byte {
	var b bytes.Buffer
	b.WriteString("time,ax,ay,az,gx,gy,gz,latitude,longitude,speed\n")
	k := 0
	for _, m := range log.Motion {
		for k+1 < len(log.Fixes) && log.Fixes[k+1].T <= m.T {
			k++
		}
		fmt.Fprintf(&b, "%.4f,%.4f,%.4f,%.4f,%.5f,%.5f,%.5f", m.T, m.Force.X, m.Force.Y, m.Force.Z, m.Turn.X, m.Turn.Y, m.Turn.Z)
		if k < len(log.Fixes) {
			fmt.Fprintf(&b, ",%.8f,%.8f,%.4f\n", log.Fixes[k].LatDeg, log.Fixes[k].LonDeg, log.Fixes[k].Speed)
		} else {
			b.WriteString(",,,\n")
		}
	}
	return b.Bytes()
}

// judged runs a function and returns its processor time and the memory of the
// whole process meanwhile, MB. A panic is an error of the test.
func judged(t *testing.T, what string, do func() error) (took time.Duration, held float64, err error) {
	debug.FreeOSMemory()
	sample := []metrics.Sample{{Name: "/memory/classes/total:bytes"}, {Name: "/memory/classes/heap/released:bytes"}}
	stop, stopped := make(chan struct{}), make(chan struct{})
	go func() {
		defer close(stopped)
		for {
			metrics.Read(sample)
			held = math.Max(held, float64(sample[0].Value.Uint64()-sample[1].Value.Uint64())/1e6)
			select {
			case <-stop:
				return
			case <-time.After(5 * time.Millisecond):
			}
		}
	}()
	began := processor()
	func() {
		defer func() {
			if p := recover(); p != nil {
				stack := make([]byte, 8<<10)
				t.Errorf("%s: %v\n%s", what, p, stack[:runtime.Stack(stack, false)])
			}
		}()
		err = do()
	}()
	took = processor() - began
	close(stop)
	<-stopped
	return took, held, err
}

// processor is the processor time of this process.
func processor() time.Duration {
	var r syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &r); err != nil {
		return 0
	}
	return time.Duration(r.Utime.Nano() + r.Stime.Nano())
}

// mustBeFigures checks every figure of a result, and its written forms.
func mustBeFigures(t *testing.T, what string, r *runs.Result) {
	t.Helper()
	for _, x := range r.Runs {
		for _, m := range x.Marks {
			mustBeValues(t, fmt.Sprintf("%s: %s %d, %s", what, x.Kind, x.ID, m.Name), m)
		}
	}
	mustBeValues(t, what+": road load", r.RoadLoads)
	mustBeValues(t, what+": power", r.Powers)
	mustBeValues(t, what+": comparison", r.Compared)
	for i := range r.Track.T {
		for _, x := range [...]float64{r.Track.T[i], r.Track.V[i], r.Track.A[i], r.Track.S[i], r.Track.VSD[i], r.Track.ASD[i]} {
			if math.IsNaN(x) || math.IsInf(x, 0) {
				t.Errorf("%s: the track is not finite at %v s", what, r.Track.T[i])
				return
			}
		}
		if r.Track.VSD[i] < 0 || r.Track.ASD[i] < 0 || r.Track.V[i] < 0 {
			t.Errorf("%s: the track is negative at %v s", what, r.Track.T[i])
			return
		}
	}
	var page bytes.Buffer
	if err := report.Write(&page, r, report.Options{}); err != nil {
		t.Errorf("%s: the report: %v", what, err)
	}
	if at := notANumber.FindIndex(page.Bytes()); at != nil {
		t.Errorf("%s: the report says %q", what, page.Bytes()[max(0, at[0]-60):min(page.Len(), at[1]+20)])
	}
	if err := json.NewEncoder(io.Discard).Encode(results.From(r)); err != nil {
		t.Errorf("%s: the document: %v", what, err)
	}
}

// notANumber matches a figure that is not a number; words quoted from a file
// have an entity before them.
var notANumber = regexp.MustCompile(`(^|[^;&\w+-])[+-]?(NaN|Inf)\b|%!`)

// mustBeValues checks every measured value within x.
func mustBeValues(t *testing.T, what string, x any) {
	t.Helper()
	var walk func(v reflect.Value, at string)
	walk = func(v reflect.Value, at string) {
		switch {
		case v.Type() == reflect.TypeFor[runs.Value]():
			mustBeValue(t, at, v.Interface().(runs.Value))
		case v.Kind() == reflect.Pointer && !v.IsNil():
			walk(v.Elem(), at)
		case v.Kind() == reflect.Slice:
			for i := range v.Len() {
				walk(v.Index(i), fmt.Sprintf("%s %d", at, i))
			}
		case v.Kind() == reflect.Struct:
			for i := range v.NumField() {
				if f := v.Type().Field(i); f.IsExported() {
					walk(v.Field(i), at+" "+f.Name)
				}
			}
		}
	}
	walk(reflect.ValueOf(x), what)
}

func mustBeValue(t *testing.T, what string, v runs.Value) {
	t.Helper()
	if v.Known() && (math.IsInf(v.X, 0) || !(v.SE >= 0) || math.IsInf(v.SE, 1)) {
		t.Errorf("%s is %v ± %v", what, v.X, v.SE)
	}
}
