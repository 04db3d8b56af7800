package wire_test

import (
	"bytes"
	"encoding/binary"
	"errors"
	"math"
	"reflect"
	"runtime"
	"strings"
	"testing"
	"time"

	"stillair/app/wire"
	"stillair/runs"
	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/sim"
	"stillair/sensors/units"
)

// sent encodes and decodes a value.
func sent[T any](t *testing.T, from *T) *T {
	t.Helper()
	var b bytes.Buffer
	if err := wire.Write(&b, from); err != nil {
		t.Fatal(err)
	}
	to := new(T)
	if err := wire.Read(bytes.NewReader(b.Bytes()), b.Len(), to); err != nil {
		t.Fatal(err)
	}
	return to
}

// differ says where two values differ; NaN equals NaN.
func differ(a, b reflect.Value, at string) string {
	if a.Type() != b.Type() {
		return at + ": other types"
	}
	each := func(n int, of func(reflect.Value, int) reflect.Value) string {
		for i := range n {
			if d := differ(of(a, i), of(b, i), at+"."); d != "" {
				return d
			}
		}
		return ""
	}
	switch a.Kind() {
	case reflect.Float64:
		if math.Float64bits(a.Float()) != math.Float64bits(b.Float()) {
			return at + ": other numbers"
		}
	case reflect.Struct:
		for i := range a.NumField() {
			if d := differ(a.Field(i), b.Field(i), at+"."+a.Type().Field(i).Name); d != "" {
				return d
			}
		}
	case reflect.Slice, reflect.Array:
		if a.Len() != b.Len() || a.Kind() == reflect.Slice && a.IsNil() != b.IsNil() {
			return at + ": other lengths"
		}
		return each(a.Len(), reflect.Value.Index)
	case reflect.Pointer:
		if a.IsNil() || b.IsNil() {
			if a.IsNil() != b.IsNil() {
				return at + ": nil"
			}
			return ""
		}
		return differ(a.Elem(), b.Elem(), at)
	case reflect.Map:
		if a.Len() != b.Len() {
			return at + ": other keys"
		}
		for _, k := range a.MapKeys() {
			if v := b.MapIndex(k); !v.IsValid() || differ(a.MapIndex(k), v, at) != "" {
				return at + "[" + k.String() + "]"
			}
		}
	default:
		if !a.Equal(b) {
			return at
		}
	}
	return ""
}

func mustBeSame[T any](t *testing.T, want, got *T) {
	t.Helper()
	if d := differ(reflect.ValueOf(want), reflect.ValueOf(got), ""); d != "" {
		t.Errorf("it differs at %s", d)
	}
}

// rides are of all kinds: with two setups, with pulls and coast-downs, standing.
func rides(t *testing.T) map[string]*sensors.Log {
	t.Helper()
	coasts := sim.DefaultScenario(sim.Naked())
	coasts.Plan = sim.CoastPairs(2, 110*units.KMH, 40*units.KMH)
	out := map[string]*sensors.Log{}
	for name, sc := range map[string]sim.Scenario{"demo": sim.DemoScenario(sim.Naked()), "coasts": coasts} {
		if testing.Short() && name == "demo" {
			continue
		}
		ride, err := sim.Run(sc, 1)
		if err != nil {
			t.Fatal(err)
		}
		out[name] = ride.Log
	}
	return out
}

// TestResultsGoOverWhole sends the results of rides and checks the copies with the
// methods that screens use, including those on unexported fields.
func TestResultsGoOverWhole(t *testing.T) {
	for name, log := range rides(t) {
		t.Run(name, func(t *testing.T) {
			mustBeSame(t, log, sent(t, log))
			res, err := runs.Analyse(t.Context(), log, runs.Options{})
			if err != nil {
				t.Fatal(err)
			}
			got := sent(t, res)
			mustBeSame(t, res, got)
			prior, ok := res.Prior()
			if p, o := got.Prior(); !reflect.DeepEqual(p, prior) || o != ok || !ok {
				t.Errorf("the prior is %v", p)
			}
			if len(res.RoadLoads) == 0 {
				t.Fatal("nothing to ask for its force")
			}
			for i, l := range res.RoadLoads {
				if a, b := l.Force(25), got.RoadLoads[i].Force(25); a != b || !a.Known() {
					t.Errorf("force %v, sent %v", a, b)
				}
				if res.Weighed(l.Setup) != got.Weighed(l.Setup) {
					t.Errorf("%s: whether it was weighed", l.Setup)
				}
			}
		})
	}
}

// odd has fields of types that are rare or absent in results.
type odd struct {
	Nil, Empty []float64
	Numbers    [3]float64
	When       []time.Time
	By         map[string]*float64
	None       map[string]bool
	Small      int8
	Text       string
	A, B       *float64
	Deep       *odd
	Bytes      []byte
	hidden     []finding.Finding
}

func oddOne() *odd {
	x := 4.5
	return &odd{Empty: []float64{}, Numbers: [3]float64{math.NaN(), math.Inf(-1), math.Copysign(0, -1)},
		When: []time.Time{{}, time.Date(2026, 11, 29, 13, 0, 0, 5, time.UTC)}, By: map[string]*float64{"b": &x, "a": nil},
		Small: -128, Text: "Ä\x00\xff", A: &x, B: &x, Deep: &odd{}, Bytes: []byte{0, 255},
		hidden: []finding.Finding{finding.New("a.b", finding.Speed("at", math.NaN()))}}
}

func TestOddValuesGoOver(t *testing.T) {
	want := oddOne()
	got := sent(t, want)
	mustBeSame(t, want, got)
	if got.A != got.B || got.By["b"] != got.A {
		t.Error("what was shared is shared no more")
	}
}

func TestWhatCannotGoOverIsSaid(t *testing.T) {
	for name, v := range map[string]any{"function": &struct{ F func() }{}, "interface": &struct{ E error }{}, "channel": new(chan int),
		"map by number": &map[int]bool{1: true}, "no pointer": 3, "nil": (*int)(nil)} {
		if err := wire.Write(&bytes.Buffer{}, v); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}

// TestOtherProgramsAreRefused reads the output of a program with different fields.
func TestOtherProgramsAreRefused(t *testing.T) {
	type before struct{ A, B float64 }
	type after struct{ A, C float64 }
	var b bytes.Buffer
	if err := wire.Write(&b, &before{1, 2}); err != nil {
		t.Fatal(err)
	}
	if err := wire.Read(bytes.NewReader(b.Bytes()), b.Len(), &after{}); !errors.Is(err, wire.ErrOther) {
		t.Errorf("read with %v", err)
	}
}

func TestCutBytesAreRefused(t *testing.T) {
	var b bytes.Buffer
	if err := wire.Write(&b, oddOne()); err != nil {
		t.Fatal(err)
	}
	for n := range b.Len() {
		if err := wire.Read(bytes.NewReader(b.Bytes()[:n]), n, &odd{}); err == nil {
			t.Errorf("%d of %d bytes are read", n, b.Len())
		}
		if err := wire.Read(bytes.NewReader(b.Bytes()[:n]), b.Len(), &odd{}); err == nil {
			t.Errorf("%d of %d bytes are read as all", n, b.Len())
		}
	}
	if err := wire.Read(strings.NewReader(b.String()+"x"), b.Len()+1, &odd{}); err == nil {
		t.Error("a byte behind the value is read")
	}
}

// FuzzRead checks that no input crashes the reader or makes it use much more
// memory than its size.
func FuzzRead(f *testing.F) {
	var b bytes.Buffer
	if err := wire.Write(&b, oddOne()); err != nil {
		f.Fatal(err)
	}
	f.Add(b.Bytes()[8:])
	f.Add(binary.AppendUvarint(nil, 1<<60))
	f.Add(bytes.Repeat([]byte{1}, 3000))
	var head [8]byte
	copy(head[:], b.Bytes())
	const perByte, always = 64, 1 << 18
	f.Fuzz(func(t *testing.T, data []byte) {
		data = append(head[:8:8], data...)
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		var got odd
		err := wire.Read(bytes.NewReader(data), len(data), &got)
		runtime.ReadMemStats(&after)
		if took := after.TotalAlloc - before.TotalAlloc; took > always+perByte*uint64(len(data)) {
			t.Errorf("%d bytes took %d", len(data), took)
		}
		if err != nil {
			return
		}
		if err := wire.Write(&bytes.Buffer{}, &got); err != nil {
			t.Errorf("read, but not to be written: %v", err)
		}
	})
}
