// Package work does what costs a phone much time and memory: it measures rides and
// makes files of them. Requests and answers are plain values, so that the program
// can do the work where it runs (Here) or, in a browser, in a second copy of itself
// in a worker (Aside), whose memory is freed when it ends: a page's own memory
// never shrinks.
//
// Results are passed on without most of their track: of an hour's ride at 60
// readings a second that is 20 MB, and screens show the speed in its runs. A file
// that needs more is made from the recording, measured again.
package work

import (
	"context"
	"io"
	"time"

	"stillair/app/formats"
	"stillair/app/recorder"
	"stillair/app/relabel"
	"stillair/app/store"
	"stillair/export/results"
	"stillair/export/session"
	"stillair/export/shown"
	"stillair/fusion"
	"stillair/runs"
	"stillair/runs/marks"
	"stillair/sensors"
	"stillair/sensors/sim"
)

// Browser is what a recording from a browser says about its device.
const Browser = "browser"

// Ask is what is to be done: measure rides, one leg of a ride, make a file of the one
// ride, or look how much there is of it.
type Ask struct {
	Rides   []Ride
	Across  bool // compare them
	Leg     *sensors.Log
	Brief   bool // as in runs.Options
	RollOns []marks.SpeedPair
	File    *File
	Look    bool
}

// Ride is a recording that is kept, and how it is to be measured.
type Ride struct {
	ID       string
	Invented bool // not a stored one
	Title    string
	Values   *store.Values
}

// File is the file that is to be made.
type File struct {
	Form     Form
	Format   formats.Kind // of one InFormat
	Started  time.Time
	Units    shown.System
	Language shown.Language
	Program  string
}

// Form says what a file holds.
type Form string

// The forms of a file.
const (
	AsRecorded Form = "as recorded" // except for sound
	Elsewhere  Form = "elsewhere"   // the recording moved elsewhere on Earth and without its ends
	Results    Form = "results"
	InFormat   Form = "in a format" // of package formats
)

// Answer is the result.
type Answer struct {
	Rides  []Measured // in their order; one for a leg
	Across []runs.Comparison
	File   Made
	Look   store.Recovered
	wrong  *trouble // instead of everything else, from a worker
}

// Measured is a ride or leg that was measured.
type Measured struct {
	Result   *runs.Result // with the speed in its runs only
	Recorded sensors.Ride // as recorded, before values that were changed
	Coarse   bool         // its times are coarser than those of a phone's own sensors
	Found    store.Found
	Metres   float64
	Season   *results.Document // what a season needs
	Senses   []recorder.Sense
	Table    *relabel.Table // the setups it was measured with, and the halts
}

// Made is a file to hand over.
type Made struct {
	Name, Media string
	Data        []byte
}

// Doer does work. tell is called in between with the share that is done, by the
// goroutine that called Do.
type Doer interface {
	Do(ctx context.Context, ask *Ask, tell func(share float64)) (*Answer, error)
}

// Here does work where it is.
type Here struct {
	Sessions *store.Sessions
	Random   io.Reader // for the ID of a shared recording
}

// Do implements Doer. Of a recording that was read and could not be measured the
// answer tells what was read, beside the error.
func (h Here) Do(ctx context.Context, ask *Ask, tell func(share float64)) (*Answer, error) {
	switch {
	case ask.Look:
		found, err := h.Sessions.Look(ask.Rides[0].ID)
		if err != nil {
			return nil, Unreadable{err}
		}
		return &Answer{Look: found}, nil
	case ask.File != nil:
		made, err := h.file(ctx, ask, tell)
		return &Answer{File: made}, err
	case ask.Leg != nil:
		res, err := analyse(ctx, ask.Leg, ask, tell)
		if err != nil {
			return nil, err
		}
		return &Answer{Rides: []Measured{{Result: slim(res)}}}, nil
	}
	return h.measure(ctx, ask, tell)
}

func analyse(ctx context.Context, log *sensors.Log, ask *Ask, tell func(share float64)) (*runs.Result, error) {
	return runs.Analyse(ctx, log, runs.Options{RollOns: ask.RollOns, Brief: ask.Brief, Progress: func(_ runs.Stage, share float64) { tell(share) }})
}

// measure measures rides one after another.
func (h Here) measure(ctx context.Context, ask *Ask, tell func(share float64)) (*Answer, error) {
	var out Answer
	var named []runs.Named
	for i, ride := range ask.Rides {
		m, err := h.measureOne(ctx, ride, ask, func(share float64) { tell((float64(i) + share) / float64(len(ask.Rides))) })
		out.Rides, named = append(out.Rides, m), append(named, runs.Named{Name: ride.Title, Result: m.Result})
		if err != nil {
			return &Answer{Rides: []Measured{m}}, ofSeveral(ask, ride, err)
		}
	}
	if ask.Across && len(named) > 1 {
		var err error
		if out.Across, err = runs.Across(named, runs.Asked{}); err != nil {
			return nil, err
		}
	}
	for i := range out.Rides {
		out.Rides[i].letGo(ask.Across)
	}
	return &out, nil
}

// ofSeveral says about which ride an error is, where there are several.
func ofSeveral(ask *Ask, ride Ride, err error) error {
	if ask.Across {
		return ofRide{ride.Title, err}
	}
	return err
}

func (h Here) measureOne(ctx context.Context, ride Ride, ask *Ask, tell func(share float64)) (Measured, error) {
	rec, err := h.read(ride)
	if err != nil {
		return Measured{}, err
	}
	m := Measured{Recorded: rec.Log.Ride, Coarse: rec.Header.Device == Browser}
	rec.Log.Ride = ride.Values.Apply(m.Recorded)
	m.Senses, m.Table = recorder.Sensed(rec.Log), relabel.TableOf(rec.Log)
	res, err := analyse(ctx, rec.Log, ask, tell)
	if err != nil {
		return m, err
	}
	if n := len(res.Track.S); n > 0 {
		m.Metres = res.Track.S[n-1]
	}
	m.Found, m.Season = foundIn(res), results.From(res).ForSeason()
	m.Result = res
	m.Result.Track = res.Track.Speeds(nil)
	return m, nil
}

// read reads a recording as it was recorded.
func (h Here) read(ride Ride) (*session.Recording, error) {
	if ride.Invented {
		invented, err := sim.Run(sim.DemoScenario(sim.Naked()), 1)
		if err != nil {
			return nil, err
		}
		return &session.Recording{Log: invented.Log}, nil
	}
	rec, err := h.Sessions.Read(ride.ID)
	if err != nil {
		return nil, Unreadable{err}
	}
	return rec, nil
}

// margin is how much of the ride before and after a run a screen may show, s.
const margin = 5.0

// letGo keeps only what screens show, since a phone has little memory: of
// rides that were compared, no single runs.
func (m *Measured) letGo(compared bool) {
	m.Result = slim(m.Result)
	if compared {
		m.Result.Track, m.Result.Estimate, m.Result.Runs = nil, nil, nil
	}
}

// slim keeps only the speed in the runs of a result's track.
func slim(res *runs.Result) *runs.Result {
	spans := make([]fusion.Span, len(res.Runs))
	for i, r := range res.Runs {
		spans[i] = fusion.Span{From: r.Start - margin, To: r.End + margin}
	}
	out := *res
	out.Track = res.Track.Speeds(spans)
	return &out
}

// foundIn counts what was found.
func foundIn(res *runs.Result) store.Found {
	var f store.Found
	for _, r := range res.Runs {
		switch {
		case !r.Accepted():
			f.Rejected++
		case r.Kind == runs.Launch:
			f.Launches++
		case r.Kind == runs.RollOn:
			f.RollOns++
		case r.Kind == runs.CoastDown:
			f.CoastDowns++
		}
	}
	for _, l := range res.RoadLoads {
		f.Pairs += l.Pairs
	}
	for _, p := range res.Passes {
		if p.Accepted() {
			f.Passes++
		}
	}
	return f
}
