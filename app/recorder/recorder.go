package recorder

import (
	"context"
	"errors"
	"fmt"
	"math"
	"sync"
	"time"

	"stillair/app/platform"
	"stillair/app/store"
	"stillair/export/session"
	"stillair/runs"
	"stillair/sensors"
)

// Times and sizes of a recorder.
const (
	FlushEvery  = 400 * time.Millisecond // between syncs; a browser can take as long again, and at most a second may be lost
	CloseAfter  = 15 * 60.0              // s of standing after a ride before the recording ends by itself
	GiveUpAfter = 60 * 60.0              // s without any movement at all
	MinRoom     = 30 << 20               // bytes free to begin: about two hours at 200 Hz
	LowRoom     = 10 << 20               // bytes free below which the rider is warned
	LastRoom    = 2 << 20                // bytes free at which the recording closes while it still can
)

// ErrNoRoom is returned by Start where the storage is nearly full already.
var ErrNoRoom = errors.New("there is too little room left to record a ride")

// Filter is what the recorder needs of the live filter. Its methods are
// called from one goroutine.
type Filter interface {
	Motion(sensors.Motion)
	Fix(sensors.Fix)
	Estimate() Estimate
}

// Estimate is the live filter's estimate at its last sample.
type Estimate struct {
	Speed    float64 // m/s; NaN while unknown
	Accel    float64 // forward, m/s²; NaN while unknown
	Distance float64 // m since the start
}

// Config is what a recording is made of.
type Config struct {
	Sessions *store.Sessions
	Clock    platform.Clock
	Awake    platform.Awake // nil: nothing to keep awake
	Source   sensors.Source
	Filter   Filter
	Ride     sensors.Ride
	About    store.About
	Header   session.Header

	// Analyse measures a leg of the ride while the bike stands; nil: it waits
	// until after the ride.
	Analyse func(ctx context.Context, leg *sensors.Log) (*runs.Result, error)

	// Together measures the coast-downs of the ride so far, all together; nil: that
	// waits until after the ride.
	Together func(ctx context.Context, coasts *sensors.Log) (*runs.Result, error)
}

// Recording is a ride being recorded.
type Recording struct {
	cfg    Config
	id     string
	unlock func()
	stop   context.CancelFunc
	done   chan struct{}
	queue  *queue

	mu        sync.Mutex // guards all below
	rideState rideState
	kept      Kept
	ride      sensors.Ride
	why       Ending
	err       error
	leg       *runs.Result
	soFar     *runs.Result // joint result of the coast-downs
	busy      bool         // a leg is being analysed

	coasts soFar // used by the goroutine that analyses

	unstored []byte // see Unstored
}

// Ending is the reason why a recording ended.
type Ending string

// The ways a recording ends.
const (
	Running      Ending = ""
	ByRider      Ending = "stopped by the rider"
	SourceEnded  Ending = "the source has no more"
	SourceFailed Ending = "the sensors failed"
	Stood        Ending = "the bike stood for long"
	NeverMoved   Ending = "nothing moved"
	NoRoom       Ending = "the storage is full"
)

// Start begins a recording, or says why it cannot: platform.ErrBusy where
// another one runs on the same storage, ErrNoRoom, or what the storage says.
// The recording continues until it ends in one of the ways of Ending; ctx ends
// it as the rider would.
func Start(ctx context.Context, cfg Config) (*Recording, error) {
	unlock, err := cfg.Sessions.Files().Lock(store.RecorderLock)
	if err != nil {
		return nil, fmt.Errorf("another recording is running: %w", err)
	}
	r, err := begin(cfg)
	if err != nil {
		unlock()
		return nil, err
	}
	r.unlock = unlock
	ctx, r.stop = context.WithCancel(ctx)
	go r.run(ctx)
	return r, nil
}

func begin(cfg Config) (*Recording, error) {
	free, err := cfg.Sessions.Files().Free()
	if err == nil && free < MinRoom {
		return nil, ErrNoRoom
	}
	id, file, err := cfg.Sessions.Begin(cfg.About)
	if err != nil {
		return nil, err
	}
	r := &Recording{cfg: cfg, id: id, done: make(chan struct{}), ride: cfg.Ride, queue: newQueue(cfg.Clock)}
	r.rideState = newRideState(cfg.Filter)
	w, err := session.NewWriter(session.ToFile(file), cfg.Header, cfg.Ride)
	if err != nil {
		return nil, errors.Join(err, file.Close(), cfg.Sessions.Discard(id))
	}
	r.kept = Kept{Free: -1, Until: math.Inf(-1)}
	go r.keep(w, file)
	return r, nil
}

// ID names the session in the store.
func (r *Recording) ID() string { return r.id }

// Done is closed once the recording has ended and its file is closed.
func (r *Recording) Done() <-chan struct{} { return r.done }

// Unstored is what the storage had not confirmed when the recording ended, as
// parts of its session file; nil where it confirmed all. Put behind the file, in
// whatever state that is, they make it whole.
func (r *Recording) Unstored() []byte {
	r.mu.Lock()
	defer r.mu.Unlock()
	return r.unstored
}

// Stop ends the recording as the rider does and waits until the file is
// closed.
func (r *Recording) Stop() {
	r.end(ByRider, nil)
	<-r.done
}

// SetSetup notes that the bike is ridden with another setup from now on.
func (r *Recording) SetSetup(s sensors.Setup) {
	r.mu.Lock()
	s.From = r.rideState.now
	r.ride.Setups = append(r.ride.Setups[:len(r.ride.Setups):len(r.ride.Setups)], s)
	ride := r.ride
	r.mu.Unlock()
	r.queue.put(item{other: func(w *session.Writer) { w.SetRide(ride) }})
}

// Remark records a rider's remark about this moment.
func (r *Recording) Remark(text string) {
	r.mu.Lock()
	t := r.rideState.now
	r.mu.Unlock()
	r.queue.put(item{other: func(w *session.Writer) { w.Remark(session.Remark{T: t, Text: text}) }})
}

// end notes the first reason there is to end, and ends.
func (r *Recording) end(why Ending, err error) {
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.why == Running {
		r.why, r.err = why, err
	}
	if r.stop != nil {
		r.stop()
	}
}

// run drives the source until the recording ends.
func (r *Recording) run(ctx context.Context) {
	release := r.holdAwake()
	err := r.cfg.Source.Run(ctx, sink{r})
	switch {
	case ctx.Err() != nil:
		r.end(ByRider, nil)
	case err != nil:
		r.end(SourceFailed, err)
	default:
		r.end(SourceEnded, nil)
	}
	release()
	r.queue.close()
}

// Unheld records that the device no longer keeps the recording awake.
func (r *Recording) Unheld(why error) {
	r.mu.Lock()
	defer r.mu.Unlock()
	r.kept.AwakeErr = why
}

func (r *Recording) holdAwake() (release func()) {
	if r.cfg.Awake == nil {
		return func() {}
	}
	release, err := r.cfg.Awake.Hold()
	if err != nil {
		r.Unheld(err)
		return func() {}
	}
	return release
}
