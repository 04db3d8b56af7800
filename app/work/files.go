package work

import (
	"bytes"
	"context"
	"io"
	"math"
	"time"

	"stillair/app/formats"
	"stillair/export/results"
	"stillair/export/session"
	"stillair/export/share"
	"stillair/runs"
	"stillair/sensors"
	"stillair/sensors/replay"
)

const gzipType = "application/gzip"

func (h Here) file(ctx context.Context, ask *Ask, tell func(share float64)) (Made, error) {
	ride := ask.Rides[0]
	switch ask.File.Form {
	case AsRecorded:
		return h.asRecorded(ride.ID)
	case Elsewhere:
		return h.elsewhere(ctx, ride.ID)
	}
	rec, err := h.read(ride)
	if err != nil {
		return Made{}, err
	}
	rec.Log.Ride = ride.Values.Apply(rec.Log.Ride)
	if ask.File.Form == Results {
		return resultsFile(ctx, ask, rec, tell)
	}
	return inFormat(ctx, ask, rec.Log, tell)
}

// asRecorded is the session file without what the microphone heard, which stays on
// the phone.
func (h Here) asRecorded(id string) (Made, error) {
	name, data, err := h.Sessions.Bytes(id)
	if err != nil {
		return Made{}, err
	}
	rec, err := h.Sessions.Read(id)
	if err != nil {
		return Made{name, gzipType, data}, nil // spoilt: the recipient may save more of it
	}
	data, err = silent(data, rec, h.Random)
	return Made{name, gzipType, data}, err
}

// silent is a recording without sound.
func silent(data []byte, rec *session.Recording, random io.Reader) ([]byte, error) {
	if len(rec.Log.Sound) == 0 {
		return data, nil
	}
	log := *rec.Log
	log.Sound = nil
	without := *rec
	without.Log = &log
	id, err := session.NewID(random)
	if err != nil {
		return nil, err
	}
	without.Header.ID = id
	var b bytes.Buffer
	err = session.WriteRecording(session.ToFile(memory{&b}), &without)
	return b.Bytes(), err
}

// elsewhere is the recording moved elsewhere on Earth and without its ends.
func (h Here) elsewhere(ctx context.Context, id string) (Made, error) {
	rec, err := h.Sessions.Read(id)
	if err != nil {
		return Made{}, err
	}
	choice := share.Default()
	choice.Places = share.Moved
	log := share.Apply(rec.Log, choice)
	var b bytes.Buffer
	header := rec.Header
	header.Start, header.Started = share.WindowOf(rec.Log, choice).Began(beginning(rec), header.Started, choice.Date)
	if header.ID, err = session.NewID(h.Random); err != nil {
		return Made{}, err
	}
	w, err := session.NewWriter(session.ToFile(memory{&b}), header, log.Ride)
	if err != nil {
		return Made{}, err
	}
	if err := writeLog(ctx, log, w); err != nil {
		return Made{}, err
	}
	return Made{shareName(header.Started) + "-elsewhere.jsonl.gz", gzipType, b.Bytes()}, nil
}

func resultsFile(ctx context.Context, ask *Ask, rec *session.Recording, tell func(share float64)) (Made, error) {
	res, err := analyse(ctx, rec.Log, ask, tell)
	if err != nil {
		return Made{}, err
	}
	choice := share.Default()
	d := results.From(share.Result(res, rec.Log, choice))
	_, began := share.WindowOf(rec.Log, choice).Began(beginning(rec), rec.Header.Started, choice.Date)
	d.Began(began)
	var b bytes.Buffer
	err = results.Write(&b, d)
	return Made{shareName(began) + ".results.json", "application/json", b.Bytes()}, err
}

// inFormat is a ride in a format.
func inFormat(ctx context.Context, ask *Ask, log *sensors.Log, tell func(share float64)) (Made, error) {
	f, of := ask.File, formats.Of(ask.File.Format)
	var res *runs.Result
	if of.Computed {
		var err error
		if res, err = analyse(ctx, log, ask, tell); err != nil {
			return Made{}, err
		}
	}
	data, began, err := of.Make(formats.Ride{Title: ask.Rides[0].Title, Started: f.Started, Log: log, Result: res,
		Units: f.Units, Language: f.Language, Program: f.Program})
	return Made{shareName(began) + of.Ending, of.Media, data}, err
}

// beginning is when on its clock a recording was at the date of its header.
func beginning(rec *session.Recording) float64 {
	if math.IsNaN(rec.Header.Start) {
		return rec.Log.Begin()
	}
	return rec.Header.Start
}

// shareName is the name of a file that is given away without the ends of its
// ride: the name under which the ride is kept would tell when it began.
func shareName(began time.Time) string {
	if began.IsZero() {
		return "ride"
	}
	return "ride-" + began.Format("20060102-1504")
}

// memory is a session file that is never on a disk.
type memory struct{ *bytes.Buffer }

// Sync implements session.File.
func (memory) Sync() error { return nil }

// writeLog writes a whole log into a session.
func writeLog(ctx context.Context, log *sensors.Log, w *session.Writer) error {
	if err := replay.New(log).Run(ctx, w); err != nil {
		return err
	}
	return w.Close()
}
