// Package fit reads the stream of positions and speeds from an activity in FIT,
// the binary format of cycling computers and watches, using
// github.com/muktihari/fit. Of all its messages only "record" is read: time,
// position, speed (the enhanced one if present), altitude.
//
// Times are whole seconds in FIT, and a speed may come from a wheel or a
// receiver. The log has only fixes, on a clock that begins at the first of
// them.
package fit

import (
	"bytes"
	"io"
	"math"
	"time"

	"github.com/muktihari/fit/decoder"
	"github.com/muktihari/fit/profile/mesgdef"
	"github.com/muktihari/fit/profile/typedef"
	"github.com/muktihari/fit/proto"

	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/internal/repair"
)

// Limits for the memory of a malformed file.
const (
	mostRecords = 500_000
	mostBytes   = 256 << 20
)

// Is reports whether a file that begins with head is FIT, by the four letters
// in its header.
func Is(head []byte) bool { return len(head) >= 12 && bytes.Equal(head[8:12], []byte(".FIT")) }

// records collects the records of an activity from the decoder.
type records struct {
	fixes  []sensors.Fix
	spoken int
	lost   int // without a time
}

// OnMesg handles a message.
func (r *records) OnMesg(m proto.Message) {
	if m.Num != typedef.MesgNumRecord || len(r.fixes) > mostRecords {
		return
	}
	x := mesgdef.NewRecord(&m)
	if x.Timestamp.Year() < 1990 {
		r.lost++
		return
	}
	f := sensors.NewFix(float64(x.Timestamp.Unix()), first(x.EnhancedSpeedScaled(), x.SpeedScaled()))
	f.UTC = x.Timestamp.In(time.UTC)
	if lat, lon := x.PositionLatDegrees(), x.PositionLongDegrees(); math.Abs(lat) <= 90 && math.Abs(lon) <= 180 {
		f.LatDeg, f.LonDeg = lat, lon
	}
	f.Alt = first(x.EnhancedAltitudeScaled(), x.AltitudeScaled())
	if !math.IsNaN(f.Speed) {
		r.spoken++
	} else if !f.HasPosition() {
		r.lost++
		return
	}
	r.fixes = append(r.fixes, f)
}

func first(a, b float64) float64 {
	if math.IsNaN(a) {
		return b
	}
	return a
}

// Read reads an activity; name is for people.
func Read(in io.Reader, name string) (*sensors.Log, error) {
	r := &records{}
	d := decoder.New(io.LimitReader(in, mostBytes), decoder.WithMesgListener(r), decoder.WithBroadcastOnly())
	var damaged error
	for damaged == nil && d.Next() {
		_, damaged = d.Decode()
	}
	log := &sensors.Log{Ride: sensors.UnknownRide()}
	say := func(count int, what finding.Finding) {
		log.Notes = append(log.Notes, sensors.Note{File: name, Count: count, What: what})
	}
	switch {
	case damaged != nil && len(r.fixes) == 0:
		return nil, sensors.Unreadable(name, 0, damaged)
	case len(r.fixes) > mostRecords:
		return nil, &sensors.InputError{File: name, What: finding.New("input.too_many", finding.Count("most", mostRecords)), Remedy: finding.New("input.shorter")}
	case damaged != nil:
		say(1, sensors.Damaged(damaged))
	}
	if r.lost > 0 {
		say(r.lost, finding.New("track.no_time"))
	}
	if err := repair.Track(log, name, r.fixes, r.spoken); err != nil {
		return nil, err
	}
	return log, nil
}
