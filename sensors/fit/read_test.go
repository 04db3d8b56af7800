package fit

import (
	"bytes"
	"errors"
	"math"
	"testing"
	"time"

	"github.com/muktihari/fit/encoder"
	"github.com/muktihari/fit/profile/filedef"
	"github.com/muktihari/fit/profile/mesgdef"

	"stillair/sensors"
)

// activity is a FIT file with one record for each four bytes: how many seconds
// later it is, speed, a step to the north, and what is left out of it.
func activity(t testing.TB, records []byte) []byte {
	t.Helper()
	a := filedef.NewActivity()
	at, lat := time.Date(2026, 6, 14, 12, 0, 0, 0, time.UTC), 48.0
	for ; len(records) >= 4; records = records[4:] {
		at = at.Add(time.Duration(int8(records[0])) * time.Second)
		lat += float64(int8(records[2])) / 1e5
		r := mesgdef.NewRecord(nil).SetTimestamp(at)
		if records[3]&1 == 0 {
			r.SetPositionLatDegrees(lat).SetPositionLongDegrees(11)
		}
		if records[3]&2 == 0 {
			r.SetEnhancedSpeedScaled(float64(records[1]) / 4)
		}
		a.Records = append(a.Records, r)
	}
	fit := a.ToFIT(nil)
	var out bytes.Buffer
	if err := encoder.New(&out).Encode(&fit); err != nil {
		t.Skip("nothing that the format can hold")
	}
	return out.Bytes()
}

// FuzzRead gives the reader activities with records of any kind in any order of
// time, whole, cut short, or with one byte changed: it ends in an error that says
// what to do, or in fixes that are in order and finite.
func FuzzRead(f *testing.F) {
	f.Add([]byte{1, 40, 10, 0, 1, 44, 11, 0, 1, 48, 12, 0, 1, 52, 13, 0}, uint16(0), uint16(0), byte(0))
	f.Add([]byte{1, 40, 10, 1, 255, 44, 11, 2, 0, 48, 12, 3, 100, 52, 13, 0}, uint16(30), uint16(60), byte(7))
	f.Fuzz(func(t *testing.T, records []byte, cut, at uint16, changed byte) {
		if len(records) > 4000 {
			t.Skip()
		}
		data := activity(t, records)
		data[int(at)%len(data)] ^= changed
		log, err := Read(bytes.NewReader(data[:len(data)-int(cut)%len(data)]), "any.fit")
		if err != nil {
			var input *sensors.InputError
			if !errors.As(err, &input) || input.What.IsZero() || input.Remedy.IsZero() {
				t.Fatalf("the error %v tells nobody what to do", err)
			}
			return
		}
		for i, x := range log.Fixes {
			if i > 0 && !(x.T > log.Fixes[i-1].T) || !(x.Speed >= 0) || math.IsInf(x.Speed, 0) || math.IsInf(x.Alt, 0) {
				t.Errorf("fix %d: %+v", i, x)
			}
		}
	})
}
