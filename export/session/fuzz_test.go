package session

import (
	"bytes"
	"errors"
	"math"
	"strconv"
	"strings"
	"testing"

	"stillair/sensors"
)

// FuzzRead reads files of any bytes: the result must be an InputError, or a log
// that is in order and the same after writing and reading.
func FuzzRead(f *testing.F) {
	whole := written(f, invented(2, 10))
	f.Add(whole)
	f.Add(whole[:len(whole)/2])
	f.Add(append(bytes.Clone(whole[:300]), whole[350:]...))
	f.Fuzz(checkAnyInput)
}

// FuzzLines reads valid parts with lines of any text.
func FuzzLines(f *testing.F) {
	f.Add(headerLine + `{"type":"motion","t_s":[1e300,1.5],"ax_mps2":[-0.5,1],"ay_mps2":[1,1],"az_mps2":[1,2]}`)
	f.Add(headerLine + `{"type":"fix","t_s":1,"speed_mps":1e999,"utc_ms":1e300}` + "\n" + `{"type":"ride","ride":{"setups":[{}]}}`)
	f.Add(`{"type":"pressure","t_s":[1],"pressure_pa":[null]}`)
	f.Add(headerLine + `{"type":"sound","t_s":1,"rate_hz":1200,"clipped":2,"level":[1,-32768,32767]}` + "\n" + `{"type":"sound","t_s":1.001,"rate_hz":5,"level":[0.4]}`)
	f.Fuzz(func(t *testing.T, text string) { checkAnyInput(t, packed(strings.NewReader(text))) })
}

// FuzzText reads any text as an unpacked session.
func FuzzText(f *testing.F) {
	f.Add(headerLine + `{"type":"motion","t_s":[1,1.5],"ax_mps2":[-0.5,1],"ay_mps2":[1,1],"az_mps2":[1,2]}` + "\n" + `{"type":"end"}`)
	f.Add(`{"type":"name","text":"x"}` + "\n" + `{"type":"remark","t_s":2,"text":"y"}`)
	f.Fuzz(func(t *testing.T, text string) {
		rec, err := ReadText(strings.NewReader(text), "any")
		checkSound(t, rec, err)
	})
}

func checkAnyInput(t *testing.T, data []byte) {
	rec, err := Read(bytes.NewReader(data), "any")
	checkSound(t, rec, err)
}

func checkSound(t *testing.T, rec *Recording, err error) {
	t.Helper()
	if err != nil {
		var input *sensors.InputError
		if !errors.As(err, &input) || input.What.IsZero() || input.Remedy.IsZero() {
			t.Fatalf("the error %v tells nobody what to do", err)
		}
		return
	}
	for i, m := range rec.Log.Motion {
		if math.IsNaN(m.T) || math.IsNaN(m.Force.X+m.Force.Y+m.Force.Z) && !math.IsInf(m.Force.X, 0) && !math.IsInf(m.Force.Y, 0) && !math.IsInf(m.Force.Z, 0) {
			t.Fatalf("motion %d: %v", i, m)
		}
		if i > 0 && m.T <= rec.Log.Motion[i-1].T {
			t.Fatalf("motion %d is not later than the one before", i)
		}
	}
	for i, s := range rec.Log.Sound {
		if math.IsNaN(s.T) || !(s.Rate > 0) || len(s.Level) == 0 || i > 0 && !s.Follows(rec.Log.Sound[i-1]) {
			t.Fatalf("sound %d: %v", i, s)
		}
	}
	m := &memory{}
	rec.Header.ID = testID // a file of version 1 has none
	if err := Write(m, rec.Log, rec.Header); err != nil {
		t.Fatal(err)
	}
	again := read(t, m.data)
	m2 := &memory{}
	if err := Write(m2, again.Log, again.Header); err != nil {
		t.Fatal(err)
	}
	if !sameSamples(again.Log, read(t, m2.data).Log) {
		t.Fatal("written and read twice it is not the same")
	}
}

// FuzzDecimal checks the fast number reader against strconv, which rounds
// correctly.
func FuzzDecimal(f *testing.F) {
	for _, s := range []string{"0", "-0.5", "12.345678", "9007199254740993", "123456789012345.6", "1e5", "1.", ".5", "-", "--1", "1e", "0x1p4", "nan", "null"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		got, ok := parseNumbers(nil, "["+s+"]")
		if !ok || len(got) != 1 {
			return
		}
		text := strings.TrimSpace(s)
		if text == "null" {
			if !math.IsNaN(got[0]) {
				t.Fatalf("null read as %v", got[0])
			}
			return
		}
		want, err := strconv.ParseFloat(text, 64)
		if err != nil || got[0] != want {
			t.Fatalf("%q read as %v, strconv says %v %v", s, got[0], want, err)
		}
	})
}
