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
	"stillair/sensors/finding"
	"stillair/sensors/sourcetest"
)

// activity is a FIT file with one record for each four bytes: time since the
// previous one in s, speed, a step to the north, and which fields are left out.
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

// TestRead writes a straight minute to the north at 15 m/s with different
// fields in the records.
func TestRead(t *testing.T) {
	const perDegree = 111_195.0 // m, on a sphere of 6371 km
	at := time.Date(2026, 6, 14, 12, 0, 0, 0, time.UTC)
	position := func(r *mesgdef.Record, i int) {
		r.SetPositionLatDegrees(48 + 15*float64(i)/perDegree).SetPositionLongDegrees(11)
	}
	for _, tt := range []struct {
		name   string
		record func(r *mesgdef.Record, i int)
		fixes  int
		noted  finding.Code
		alt    float64
		bare   bool // without positions
		failed finding.Code
	}{
		{name: "enhanced speed and altitude", record: func(r *mesgdef.Record, i int) {
			position(r, i)
			r.SetEnhancedSpeedScaled(15).SetEnhancedAltitudeScaled(512)
		}, fixes: 60, alt: 512},
		{name: "the fields of old devices", record: func(r *mesgdef.Record, i int) { position(r, i); r.SetSpeedScaled(15).SetAltitudeScaled(512) }, fixes: 60, alt: 512},
		{name: "the enhanced one counts", record: func(r *mesgdef.Record, i int) { position(r, i); r.SetSpeedScaled(3).SetEnhancedSpeedScaled(15) }, fixes: 60, alt: math.NaN()},
		{name: "km/h by mistake", record: func(r *mesgdef.Record, i int) { position(r, i); r.SetEnhancedSpeedScaled(54) }, fixes: 60, noted: "speed.converted", alt: math.NaN()},
		{name: "positions alone", record: position, fixes: 58, noted: "sheets.speed_from_way", alt: math.NaN()},
		{name: "a wheel's speed alone", record: func(r *mesgdef.Record, _ int) { r.SetEnhancedSpeedScaled(15) }, fixes: 60, noted: "speed.unchecked", alt: math.NaN(), bare: true},
		{name: "some without a speed", record: func(r *mesgdef.Record, i int) {
			position(r, i)
			if i%10 != 5 {
				r.SetEnhancedSpeedScaled(15)
			}
		}, fixes: 54, noted: "sheets.no_speed", alt: math.NaN()},
		{name: "each second twice", record: func(r *mesgdef.Record, i int) {
			position(r, i)
			r.SetEnhancedSpeedScaled(15).SetTimestamp(at.Add(time.Duration(i/2*2) * time.Second))
		}, fixes: 30, noted: "input.doubled", alt: math.NaN()},
		{name: "neither speed nor position", record: func(r *mesgdef.Record, _ int) { r.SetHeartRate(90) }, failed: "track.no_points"},
	} {
		a := filedef.NewActivity()
		for i := range 60 {
			r := mesgdef.NewRecord(nil).SetTimestamp(at.Add(time.Duration(i) * time.Second))
			tt.record(r, i)
			a.Records = append(a.Records, r)
		}
		file := a.ToFIT(nil)
		var out bytes.Buffer
		if err := encoder.New(&out).Encode(&file); err != nil {
			t.Fatal(err)
		}
		if !Is(out.Bytes()) {
			t.Errorf("%s: not taken for FIT", tt.name)
		}
		log, err := Read(&out, "ride.fit")
		if tt.failed != "" {
			var input *sensors.InputError
			if !errors.As(err, &input) || input.What.Code != tt.failed {
				t.Errorf("%s: %v", tt.name, err)
			}
			continue
		}
		if err != nil || len(log.Fixes) != tt.fixes {
			t.Errorf("%s: %v, %d fixes, want %d", tt.name, err, len(log.Fixes), tt.fixes)
			continue
		}
		f := log.Fixes[10]
		if math.Abs(f.Speed-15) > 0.05 || f.HasPosition() == tt.bare || f.UTC.Before(at) || f.Alt != tt.alt && !(math.IsNaN(f.Alt) && math.IsNaN(tt.alt)) {
			t.Errorf("%s: %+v", tt.name, f)
		}
		noted := tt.noted == ""
		for _, n := range log.Notes {
			noted = noted || n.What.Code == tt.noted
		}
		if !noted {
			t.Errorf("%s: notes %v", tt.name, log.Notes)
		}
	}
}

// FuzzRead reads activities with records of any kind in any order of time, whole,
// cut short, or with one byte changed: the result is an error with a remedy, or
// fixes that are in order and finite.
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
		sourcetest.Sound(t, log, err)
		if err != nil {
			return
		}
		for i, x := range log.Fixes {
			if math.IsInf(x.Alt, 0) {
				t.Errorf("fix %d: %+v", i, x)
			}
		}
	})
}
